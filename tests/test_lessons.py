"""Every lesson: sound questions, right answers from cards, a page that shows them."""

import json
import re
from pathlib import Path

import pytest

from calculators import units
from calculators.cards import BY_SLUG
from calculators.outputs import lesson as pieces
from calculators.outputs.browser import reply
from calculators.teaching.lessons import BY_LESSON, LESSONS
from calculators.teaching.marking import (
    answered,
    bare_unit,
    mark,
    right_number,
    right_option,
    right_order,
    shown_options,
    shown_order,
    tolerance,
)
from calculators.teaching.question import Choice, Numeric, Order

ROOT = Path(__file__).resolve().parents[1]
LEARN = ROOT / "docs" / "learn"
ASKED = [(lesson, question) for lesson in LESSONS for question in lesson.questions]
BY_KIND = {
    kind: [each for each in ASKED if isinstance(each[1], kind)] for kind in (Numeric, Choice, Order)
}


def named(pair):
    return f"{pair[0].slug}/{pair[1].name}"


every_lesson = pytest.mark.parametrize("lesson", LESSONS, ids=lambda lesson: lesson.slug)
every_question = pytest.mark.parametrize("pair", ASKED, ids=named)
every_number = pytest.mark.parametrize("pair", BY_KIND[Numeric], ids=named)
every_choice = pytest.mark.parametrize("pair", BY_KIND[Choice], ids=named)
every_order = pytest.mark.parametrize("pair", BY_KIND[Order], ids=named)


def right_answer(question) -> str:
    """What a learner who is right types."""
    if isinstance(question, Choice):
        return right_option(question).key
    if isinstance(question, Order):
        return ",".join(right_order(question))
    unit = bare_unit(question, "us")
    return f"{units.from_si(right_number(question), unit):.5g} {unit}".removesuffix(" 1")


# --- the course ----------------------------------------------------------------


def test_there_are_fourteen_lessons_or_more_from_the_micron_to_what_cannot_be_proved():
    assert len(LESSONS) >= 14
    assert LESSONS[0].slug == "what-a-micron-is"
    assert LESSONS[-1].slug == "what-a-decay-test-cant-prove"


def test_names_are_used_once():
    for names in (
        [lesson.slug for lesson in LESSONS],
        [objective.name for lesson in LESSONS for objective in lesson.objectives],
        [question.name for _, question in ASKED],
    ):
        assert len(names) == len(set(names))


@every_lesson
def test_a_lesson_asks_three_to_five_questions_that_cover_its_objectives(lesson):
    assert 3 <= len(lesson.questions) <= 5
    assert {question.objective for question in lesson.questions} == {
        objective.name for objective in lesson.objectives
    }


@every_lesson
def test_a_lesson_has_a_number_to_work_out(lesson):
    assert any(isinstance(question, Numeric) for question in lesson.questions)


# --- questions -------------------------------------------------------------------


@every_question
def test_the_right_answer_is_marked_right(pair):
    _, question = pair

    for system in ("us", "si"):
        given = mark(question, right_answer(question), system=system)
        assert given.correct is True
        assert given.message.startswith("Right")


@every_question
def test_a_blank_is_not_marked(pair):
    given = mark(pair[1], "")

    assert given.correct is None
    assert given.message.endswith(".")


@every_number
def test_a_number_is_right_in_any_unit_of_its_kind(pair):
    _, question = pair
    value = right_number(question)
    dimension = units.UNITS[bare_unit(question, "us")].dimension

    for unit in units.UNITS.values():
        if unit.dimension == dimension and not unit.gauge and unit.name not in ("1", "%"):
            text = f"{units.from_si(value, unit.name):.7g} {unit.name}"
            want = None if question.in_unit and unit.name != question.in_unit else True
            assert mark(question, text).correct is want, text


@every_number
def test_a_number_beyond_the_tolerance_is_not_right(pair):
    _, question = pair
    unit, value, allowed = bare_unit(question, "us"), right_number(question), tolerance(question)

    for off in (1.2, -1.2):
        text = f"{units.from_si(value + off * allowed, unit):.8g} {unit}".removesuffix(" 1")
        assert mark(question, text).correct is False, text


@every_number
def test_each_wrong_road_is_recognized_as_people_would_type_it(pair):
    _, question = pair
    asked, unit = question.asked, bare_unit(question, "us")
    evaluation = answered(asked)

    for road in question.wrong_roads:
        value = units.from_si(road.method(evaluation, asked.output), unit)
        for digits in (3, 5, 9):
            text = f"{value:.{digits}g} {unit}".removesuffix(" 1")
            given = mark(question, text)
            assert (given.correct, given.road) == (False, road.name), text
            assert given.message == f"Not yet. {evaluation.say(road.says)}"


@every_number
def test_wrong_roads_lie_apart_from_the_answer_and_from_each_other(pair):
    _, question = pair
    evaluation, allowed = answered(question.asked), tolerance(question)
    values = [right_number(question)]
    values += [road.method(evaluation, question.asked.output) for road in question.wrong_roads]

    for i, one in enumerate(values):
        for other in values[i + 1 :]:
            apart = abs(one - other)
            near = allowed if question.absolute else question.relative * max(abs(one), abs(other))
            assert apart > 2 * near


@every_choice
def test_one_option_is_right_and_every_option_says_why(pair):
    _, question = pair
    right = right_option(question)

    assert len({option.key for option in question.options}) == len(question.options) >= 2
    for option in question.options:
        given = mark(question, option.key)
        assert given.correct is (option is right)
        assert len(given.message) > len("Not that. ")


def test_the_right_option_is_not_always_in_the_same_place():
    places = [
        shown_options(question).index(right_option(question)) for _, question in BY_KIND[Choice]
    ]

    assert all(places.count(place) <= len(places) * 0.5 for place in set(places))


@every_order
def test_an_order_starts_out_wrong(pair):
    _, question = pair

    assert mark(question, ",".join(shown_order(question))).correct is False


@every_question
def test_the_worker_marks_it(pair):
    lesson, question = pair
    asked = {"do": "mark", "lesson": lesson.slug, "question": question.name, "system": "si"}

    for answer, correct in ((right_answer(question), True), ("", None), ("nonsense", None)):
        given = json.loads(reply(json.dumps(asked | {"answer": answer})))
        assert given["ok"] is True
        assert given["mark"]["correct"] is correct
        assert given["mark"]["message"]


def texts(question):
    yield question.asks
    yield question.hint
    if isinstance(question, Numeric):
        yield question.because
        yield from (road.says for road in question.wrong_roads)
    elif isinstance(question, Choice):
        yield from (text for option in question.options for text in (option.text, option.says))
    else:
        yield question.because
        yield from (item.text for item in question.items)


@every_question
def test_no_number_is_typed_into_a_question(pair):
    for text in texts(pair[1]):
        assert not re.search(r"\d", re.sub(r"\{[^}]*\}", "", text)), text


# --- pages ---------------------------------------------------------------------------


@every_lesson
def test_the_page_has_every_part_in_order(lesson):
    page = (LEARN / f"{lesson.slug}.md").read_text(encoding="utf-8")

    parts = [
        f"# <!-- lesson: {lesson.slug} -->",
        f"<!-- aim: {lesson.slug} -->",
        f"<!-- worked: {lesson.slug} -->",
        "## Common mistakes",
        f"<!-- quiz: {lesson.slug} -->",
    ]
    places = [page.index(part) for part in parts]
    assert places == sorted(places)
    assert page.startswith("---\ndescription: ")


def test_every_page_has_a_figure():
    without = [
        lesson.slug
        for lesson in LESSONS
        if "<!-- figure: " not in (LEARN / f"{lesson.slug}.md").read_text(encoding="utf-8")
    ]

    assert without == []


def test_every_page_of_the_folder_is_a_lesson_and_in_the_menu():
    menu = (ROOT / "mkdocs.yml").read_text(encoding="utf-8")
    listed = re.findall(r"^ +- '?(.+?)'?: learn/(.+)\.md$", menu, re.M)

    assert listed == [("All lessons", "index"), *((each.title, each.slug) for each in LESSONS)]
    assert {path.stem for path in LEARN.glob("*.md")} == {"index", *BY_LESSON}


@every_lesson
def test_the_questions_read_without_script(lesson):
    block = pieces.quiz(lesson.slug)

    assert block.count("<details") >= len(lesson.questions)
    assert block.count('<output class="quiz-mark"') == len(lesson.questions)
    assert "style=" not in block
    for question in lesson.questions:
        assert f'data-question="{question.name}"' in block


@every_lesson
def test_the_worked_example_shows_its_working(lesson):
    assert '<ol class="work"><li>' in pieces.worked(lesson.slug)
    assert lesson.worked.card in BY_SLUG


def test_the_list_names_every_lesson_and_question():
    listed = pieces.lesson_list("./")

    for lesson in LESSONS:
        assert f'href="./{lesson.slug}/"' in listed
        assert " ".join(question.name for question in lesson.questions) in listed
