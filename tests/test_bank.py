"""The problem bank: every template sound, the same problem from the same seed everywhere."""

import json
import re

import pytest

from calculators.outputs.browser import reply
from calculators.teaching import draw
from calculators.teaching.bank import BY_NAME, LESSON_OF, TEMPLATES
from calculators.teaching.lessons import LESSONS
from calculators.teaching.marking import mark
from calculators.teaching.problem import KINDS, LEVELS, make
from calculators.teaching.question import Choice, Numeric

every_template = pytest.mark.parametrize("template", TEMPLATES, ids=lambda each: each.name)


# --- the bank ----------------------------------------------------------------------


def test_there_are_seventy_templates_or_more_over_every_objective():
    objectives = {objective.name for lesson in LESSONS for objective in lesson.objectives}

    assert len(TEMPLATES) >= 70
    assert {template.objective for template in TEMPLATES} == objectives == set(LESSON_OF)


def test_every_objective_has_two_templates_at_least():
    check_bank = pytest.importorskip("check_bank", reason="scripts are run natively only")

    assert check_bank.thin() == []


def test_names_are_used_once():
    assert len(BY_NAME) == len(TEMPLATES)


def test_every_kind_and_level_is_there():
    assert {template.kind for template in TEMPLATES} == set(KINDS)
    assert {template.level for template in TEMPLATES} == set(LEVELS)


@pytest.mark.native
@every_template
def test_a_template_is_sound_on_many_seeds(template):
    check_bank = pytest.importorskip("check_bank")

    report = check_bank.check(template, range(20_000, 20_008))

    assert dict(report.problems) == {}


@every_template
def test_a_number_knows_its_usual_mistakes(template):
    if isinstance(template.question, Numeric):
        assert template.question.wrong_roads
        assert template.question.hint


def texts(thing):
    """Every text of a question that a learner reads, placeholders and all."""
    yield thing.asks
    yield thing.hint
    if isinstance(thing, Choice):
        yield from (text for option in thing.options for text in (option.text, option.says))
    elif isinstance(thing, Numeric):
        yield thing.because
        yield from (road.says for road in thing.wrong_roads)
    else:
        yield from (item.text for item in thing.items)


TYPED = {"half-again-the-pump": "1.6"}  # the card's own ratio, which is no entry


@every_template
def test_no_number_is_typed_into_a_question(template):
    for text in texts(template.question):
        plain = re.sub(r"\{[^}]*\}|\$\w+", "", text).replace(TYPED.get(template.name, "\0"), "")
        assert not re.search(r"\d", plain), text


@every_template
def test_the_worker_sets_and_marks_it_in_either_system(template):
    for system in ("us", "si"):
        asked = {"template": template.name, "seed": "8", "system": system}
        told = json.loads(reply(json.dumps({"do": "problem", **asked})))
        marked = json.loads(reply(json.dumps({"do": "mark", "answer": "", **asked})))

        assert told["ok"] and marked["ok"]
        words = re.sub(r"<[^>]*>", " ", told["html"])
        assert not re.search(r"[{}$]", words)
        assert "style=" not in told["html"]
        assert 'class="quiz-solution"' in told["html"]


def test_an_unknown_problem_is_one_sentence():
    asked = {"do": "problem", "template": "no-such", "seed": "1", "system": "us"}
    given = json.loads(reply(json.dumps(asked)))

    assert given["ok"] is False
    assert given["complaints"][0]["text"].endswith(".")


# --- seeds ---------------------------------------------------------------------------


def test_the_chance_is_sha256_of_the_path():
    # The first eight bytes of SHA-256 of "a/b", as sha256sum prints them, modulo 1000.
    assert draw.pick(1000, "a", "b") == 0xC14CDDC033F64B9D % 1000


def test_problems_are_these_for_good():
    # Written down on the day the bank was made: a change here breaks sheets in the field.
    assert dict(make(BY_NAME["micron-to-torr"], 1).drawn)["p"] == FROZEN["micron-to-torr"]
    assert make(BY_NAME["judge-a-log"], "7-1").drawn["log"] == FROZEN["judge-a-log"]


FROZEN = {
    "micron-to-torr": "560",
    "judge-a-log": "0 250\n3 298\n6 346\n9 394\n12 442\n15 490\n18 538",
}


def test_a_seed_may_be_any_text_and_decides_all():
    template = BY_NAME["boils-at-reading"]

    assert make(template, 12).signature == make(template, "12").signature
    assert make(template, "12").drawn == make(template, "12").drawn
    assert len({make(template, seed).signature for seed in range(200)}) > 15


def test_one_draw_does_not_move_another():
    alone = draw.draw_all({"b": draw.Between("1", "1000", "1")}, "t", "s")
    both = {"a": draw.Between("1", "9", "1"), "b": draw.Between("1", "1000", "1")}

    assert draw.draw_all(both, "t", "s")["b"] == alone["b"]


@pytest.mark.parametrize(
    ("one", "low", "high"),
    [(draw.Between("0.2", "0.5", "0.05"), 0.2, 0.5), (draw.Round("160", "9000"), 160, 9000),
     (draw.Between("-4", "12", "1"), -4, 12)],
)  # fmt: skip
def test_numbers_stay_in_their_range_and_reach_its_ends(one, low, high):
    drawn = {float(draw.number(draw.draw_all({"n": one}, "t", s)["n"])) for s in range(3000)}

    assert min(drawn) == low
    assert max(drawn) == high


def test_draws_build_on_each_other():
    draws = {
        "a": "1,200",
        "b": draw.total_of("a", "-200"),
        "c": draw.Times("b", "0.5"),
        "d": draw.case({"e": "$c micron"}),
    }

    assert draw.draw_all(draws, "t", 1) == {
        "a": "1,200", "b": "1,000", "c": "500", "e": "500 micron",
    }  # fmt: skip


def test_numbers_are_as_a_person_types_them():
    assert [draw.as_typed(draw.number(text)) for text in ("1500", "0.250", "-4", "20")] == [
        "1,500", "0.25", "-4", "20",
    ]  # fmt: skip


# --- an apprentice who makes the usual mistakes -------------------------------------------


@pytest.mark.parametrize(
    ("name", "seed", "answer", "road"),
    [
        ("gauge-to-absolute", 1, "{g} psia", "gauge reading taken as absolute"),
        ("needle-width", 1, "{p} mmHg", "inches taken as millimeters"),
        ("dial-to-absolute", 1, "{p} inHg", "vacuum reading taken as absolute"),
        ("micron-to-torr", 1, "{p} Torr", "micron handed back"),
    ],
)
def test_a_known_mistake_is_named(name, seed, answer, road):
    problem = make(BY_NAME[name], seed)
    typed = answer.format(**problem.drawn)
    if problem.question.in_unit == "micron":
        typed = f"{float(problem.drawn['p']) * 1000:.0f} micron"

    given = mark(problem.question, typed)

    assert given.correct is False
    assert given.road == road
