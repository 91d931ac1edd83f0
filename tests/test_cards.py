"""The same questions to every card, and each card against its own function."""

import inspect
import json
import math

import pytest

from calculators import units
from calculators.card import Card, Choice, Quantity, Readings, Rows, Words
from calculators.cards import BY_SLUG, CARDS
from calculators.cautions import CAUTIONS
from calculators.errors import Complaints
from calculators.evaluate import evaluate
from calculators.outputs import browser, html
from calculators.outputs.data import as_data
from calculators.sources import BIBLIOGRAPHY

every_card = pytest.mark.parametrize("card", CARDS, ids=lambda card: card.slug)
QUANTITIES = [(card, each) for card in CARDS for each in card.inputs if isinstance(each, Quantity)]
every_quantity = pytest.mark.parametrize(
    ("card", "each"), QUANTITIES, ids=[f"{card.slug}-{each.name}" for card, each in QUANTITIES]
)


def columns(card: Card):
    for each in card.inputs:
        yield from each.columns if isinstance(each, Rows) else (each,)


@every_card
def test_inputs_are_the_parameters_of_the_function(card):
    parameters = inspect.signature(card.compute).parameters

    assert [each.name for each in card.inputs] == list(parameters)
    assert all(p.kind is inspect.Parameter.KEYWORD_ONLY for p in parameters.values())


@every_card
def test_every_unit_is_accepted_and_of_one_dimension(card):
    for each in columns(card):
        if isinstance(each, Quantity):
            dimension = units.UNITS[each.si_unit].dimension
            assert {each.us, each.si} <= set(each.units), each.name
            assert {units.UNITS[u].dimension for u in each.units} == {dimension}, each.name
            assert units.SI[dimension] == each.si_unit, each.name
    for out in card.outputs:
        if out.si_unit is not None:
            for unit in (out.us, out.si):
                assert unit == "duration" or (
                    units.UNITS[unit].dimension == units.UNITS[out.si_unit].dimension
                ), out.name


@every_card
def test_a_default_can_be_entered(card):
    for each in columns(card):
        if isinstance(each, Choice):
            assert each.default in dict(each.options), each.name
        elif isinstance(each, Quantity) and each.required:
            assert each.default, each.name


@every_card
def test_sources_and_cautions_exist(card):
    assert card.sources
    assert all(cite.key in BIBLIOGRAPHY for cite in card.sources)
    assert all(key in CAUTIONS for key in card.cautions)


@every_card
def test_it_has_a_worked_example_and_says_what_it_assumes(card):
    assert len(card.examples) >= 2
    assert card.assumptions


@every_card
@pytest.mark.parametrize("system", ["us", "si"])
def test_default_and_examples_are_answered_with_working(card, system):
    for entries in ({}, *(example.entries for example in card.examples)):
        evaluation = evaluate(card, entries, system=system)
        data = as_data(evaluation)

        assert data["working"], "an answer shows its working"
        assert all(step["says"] for step in data["working"])
        assert data["answer"]
        text = json.dumps(data, allow_nan=False)
        assert "{" not in data["answer"]
        assert "nan" not in text.split()


@every_card
def test_a_page_and_a_worker_say_the_same(card):
    page = html.whole_card(card)
    reply = json.loads(
        browser.reply(
            json.dumps({"do": "answer", "card": card.slug, "entries": {}, "system": "us"})
        )
    )

    assert reply["ok"]
    assert reply["html"]["working"] in page
    assert reply["say"]


@every_quantity
def test_an_entry_may_stand_at_either_end_of_its_range(card, each):
    for end in (each.minimum, each.maximum):
        text = f"{end!r} {each.si_unit}"
        try:
            evaluate(card, {each.name: text})
        except Complaints as complaint:
            # The physics may refuse a combination, never the entry by itself.
            assert all("outside" not in sentence for _, sentence in complaint.items), complaint


@every_quantity
def test_an_entry_outside_its_range_is_refused(card, each):
    span = each.maximum - each.minimum
    for value in (each.minimum - 0.01 * span - 1e-9, each.maximum * 1.01 + 1e-9):
        with pytest.raises(Complaints) as complaint:
            evaluate(card, {each.name: f"{value!r} {each.si_unit}"})

        assert each.name in dict(complaint.value.items)


@every_quantity
@pytest.mark.parametrize("text", ["abc", "nan", "inf", "-inf", "5 parsec", "1,50", "9 psi"])
def test_nonsense_gets_one_sentence_under_its_own_input(card, each, text):
    with pytest.raises(Complaints) as complaint:
        evaluate(card, {each.name: text})

    ((name, sentence),) = complaint.value.items
    assert name == each.name
    assert sentence.startswith(each.label)
    assert "\n" not in sentence


@every_quantity
def test_a_blank_is_missed_only_where_it_is_needed(card, each):
    if each.required:
        with pytest.raises(Complaints, match="type a number"):
            evaluate(card, {each.name: "  "})
    else:
        try:
            assert evaluate(card, {each.name: ""}).entered[each.name] is None
        except Complaints as complaint:
            assert complaint.items  # the physics may need one of several blanks


@every_quantity
def test_the_same_quantity_in_another_unit_gives_the_same_answer(card, each):
    default = evaluate(card, {})
    entered = default.entered[each.name]
    for unit in each.units:
        if entered is None or units.UNITS[unit].gauge:
            continue
        text = f"{units.from_si(entered.si, unit)!r} {unit}"
        other = evaluate(card, {each.name: text})
        for name, value in default.answer.outputs.items():
            if isinstance(value, float):
                assert math.isclose(
                    other.answer.outputs[name], value, rel_tol=1e-9, abs_tol=1e-12
                ), (unit, name)
            else:
                assert other.answer.outputs[name] == value, (unit, name)


@every_card
def test_an_unknown_input_is_refused(card):
    with pytest.raises(Complaints, match="There is no input"):
        evaluate(card, {"no_such_thing": "1"})


@every_card
def test_every_input_has_a_label_and_every_kind_is_known(card):
    for each in card.inputs:
        assert each.label
        assert isinstance(each, (Quantity, Choice, Words, Readings, Rows))


def test_slugs_are_unique():
    assert len(BY_SLUG) == len(CARDS)
