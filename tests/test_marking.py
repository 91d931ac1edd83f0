"""Marking: any unit, fair rounding, the wrong road named, one sentence for what can't be read."""

import pytest

from calculators.teaching import wrong_roads
from calculators.teaching.marking import (
    answer_text,
    mark,
    right_number,
    right_option,
    right_order,
    shown_order,
)
from calculators.teaching.question import (
    Asked,
    Choice,
    Item,
    Numeric,
    Option,
    Order,
    Rank,
    WrongRoad,
)

ICE = Numeric(
    name="ice",
    objective="ice",
    asks="A gauge reads {pressure}. At what temperature does ice sublime there?",
    asked=Asked("boiling-point", "temperature", {"pressure": "500 micron"}),
    because="It is ice at {pressure}.",
    absolute=0.5,
    wrong_roads=(
        WrongRoad(
            name="boiling curve carried on",
            method=wrong_roads.boiling_curve_carried_on,
            says="That is the curve of liquid water. Below {triple:micron;4} there is only ice.",
        ),
    ),
    hint="Look at the phase first.",
)
DIAL = Numeric(
    name="dial",
    objective="dial",
    asks="A dial reads {pressure} with the barometer at {barometer}. What is that?",
    asked=Asked(
        "convert", "absolute_pressure", {"pressure": "24 inHg-vac", "barometer": "29.92 inHg"}
    ),
    because="The dial counts down from {barometer}.",
    wrong_roads=(
        WrongRoad(
            name="vacuum reading taken as absolute",
            method=wrong_roads.unit_taken_as("pressure", "inHg"),
            says="You took {pressure} as absolute.",
        ),
    ),
)
TORR = Numeric(
    name="torr",
    objective="micron",
    asks="How many Torr is {pressure}?",
    asked=Asked("convert", "absolute_pressure", {"pressure": "1,500 micron"}),
    because="A Torr is a thousand micron.",
    in_unit="Torr",
)
PHASE = Choice(
    name="phase",
    objective="ice",
    asks="Is it ice or liquid?",
    options=(
        Option(key="ice", text="Ice", says="It is ice."),
        Option(key="liquid", text="Liquid", says="No liquid is left."),
    ),
    right=Asked("boiling-point", "phase", {"pressure": "500 micron"}),
)
DEEPEST = Choice(
    name="deepest",
    objective="micron",
    asks="Which is deepest?",
    options=tuple(
        Option(
            key=key,
            text="{pressure}",
            says="That is {absolute_pressure:micron;3}.",
            asked=Asked("convert", "absolute_pressure", {"pressure": pressure}),
        )
        for key, pressure in (("a", "500 micron"), ("b", "1 mbar"), ("c", "50 Pa"))
    ),
    right=Rank.SMALLEST,
)
LADDER = Order(
    name="ladder",
    objective="micron",
    asks="Lowest first.",
    items=tuple(
        Item(
            key=key,
            text="{pressure}",
            asked=Asked("convert", "absolute_pressure", {"pressure": pressure}),
        )
        for key, pressure in (
            ("atm", "1 atm"),
            ("torr", "1 Torr"),
            ("pa", "1 Pa"),
            ("bar", "0.1 bar"),
        )
    ),
    because="Put them all in micron.",
)


# 500 micron is -24.48 degC, -12.06 degF: physics of the card, IAPWS R14-08.
@pytest.mark.parametrize(
    "text",
    [
        "-12.1",
        "−12.1 °F",
        "-12",
        "-12.06 F",
        "-24.5 °C",
        "-24.48C",
        "248.67 K",
        " -12.3 ",
        "-24.5C",
    ],
)
def test_any_unit_and_fair_rounding_is_right(text):
    assert mark(ICE, text).correct is True


def test_a_bare_number_is_in_the_readers_own_unit():
    assert mark(ICE, "-24.5", system="si").correct is True
    assert mark(ICE, "-24.5", system="us").correct is False


@pytest.mark.parametrize("text", ["-10", "-14", "12.1", "0", "1e3"])
def test_outside_the_tolerance_is_wrong(text):
    assert mark(ICE, text).correct is False


@pytest.mark.parametrize(
    "text",
    ["", "   ", "cold", "5 g", "5 furlong", "nan", "inf", "1e400", "1/0", "-12 F or so", "9" * 300],
)
def test_what_cannot_be_read_gets_one_sentence_and_no_mark(text):
    given = mark(ICE, text)

    assert given.correct is None
    assert given.message.endswith(".")
    assert "Traceback" not in given.message


def test_a_blank_says_what_to_type():
    assert mark(ICE, "").message == ("Type a number in °F or any other unit of temperature first.")


def test_a_known_wrong_road_is_named_and_explained():
    given = mark(ICE, "-27.4 °C")

    assert given.correct is False
    assert given.road == "boiling curve carried on"
    assert given.message == (
        "Not yet. That is the curve of liquid water. Below 4,588 micron there is only ice."
    )


def test_the_wrong_road_is_recognized_in_any_unit():
    assert mark(DIAL, "24 inHg").road == "vacuum reading taken as absolute"
    assert mark(DIAL, "609,600").road == "vacuum reading taken as absolute"
    assert mark(DIAL, "8.127 mbar").road == ""


def test_an_unknown_wrong_answer_says_which_way_it_is_off_and_gives_the_hint():
    assert mark(ICE, "20 °F").message == "Not yet: that is too high. Look at the phase first."
    assert mark(DIAL, "1,000").message == "Not yet: that is about 200 times too low."


def test_a_number_in_another_unit_is_told_so():
    assert mark(DIAL, "5.92").message == (
        "That number is right in inHg, not in micron. Say the unit."
    )


def test_a_slipped_decimal_point_is_told_so():
    assert "decimal point" in mark(DIAL, "1,503,680").message


# 24 inHg below 29.92 inHg is 5.92 inHg, 150,368 micron.
@pytest.mark.parametrize(
    ("text", "correct"),
    [
        ("150,000", True),
        ("0.15e6", True),
        ("1.5e5 micron", True),
        ("200,000", False),
        ("100,000", False),
        ("5.9 inHg", True),
        ("6 inHg", True),
        ("6.2 inHg", False),
        ("24 inHg-vac", True),
        ("0.2 bar", True),
        ("0.19 bar", False),
    ],
)
def test_rounding_is_fair_when_two_digits_say_something(text, correct):
    assert mark(DIAL, text).correct is correct


def test_one_digit_is_no_rounding():
    # 0.79 Torr is within half of the one digit of "1"; one digit says too little to be an answer.
    question = Numeric(
        name="n", objective="o", asks="", because="",
        asked=Asked("convert", "absolute_pressure", {"pressure": "0.79 Torr"}),
    )  # fmt: skip

    assert mark(question, "1 Torr").correct is False
    assert mark(question, "0.79 Torr").correct is True
    assert mark(question, "0.8 Torr").correct is True


def test_a_gauge_unit_counts_from_the_barometer_of_the_question():
    given = mark(DIAL, "23.9 inHg-vac")

    assert given.correct is True
    assert mark(ICE, "5 psig").correct is None


def test_a_question_about_a_unit_takes_that_unit_only():
    assert mark(TORR, "1.5").correct is True
    assert mark(TORR, "1.5 Torr").message == "Right: 1.5 Torr. A Torr is a thousand micron."
    assert mark(TORR, "1,500 micron").correct is None
    assert mark(TORR, "1500").correct is False


def test_the_right_answer_is_shown_in_the_unit_that_was_used_too():
    assert answer_text(ICE) == "−12.1 °F"
    assert mark(ICE, "-24.5 °C").message.startswith("Right: −12.1 °F, or −24.48 °C.")


def test_a_choice_is_decided_by_the_card():
    assert right_option(PHASE).key == "ice"
    assert mark(PHASE, "ice").message == "Right. It is ice."
    assert mark(PHASE, "liquid").correct is False
    assert mark(PHASE, "").correct is None
    assert mark(PHASE, "steam").correct is None


def test_a_choice_by_rank_is_decided_by_each_options_card():
    assert right_option(DEEPEST).key == "c"
    assert mark(DEEPEST, "b").message == "Not that. That is 750 micron."


def test_an_order_is_decided_by_the_values():
    assert right_order(LADDER) == ("pa", "torr", "bar", "atm")
    assert mark(LADDER, "pa, torr, bar, atm").correct is True
    assert mark(LADDER, "pa,torr,atm,bar").message.startswith("Not yet: the first two are right")
    assert mark(LADDER, "atm,torr,pa,bar").message == "Not yet: another line comes first."
    assert mark(LADDER, "pa,torr").correct is None
    assert mark(LADDER, "pa,pa,torr,atm").correct is None


def test_the_shown_order_is_the_same_every_time_and_not_the_right_one():
    assert sorted(shown_order(LADDER)) == sorted(right_order(LADDER))
    assert shown_order(LADDER) == shown_order(LADDER) != right_order(LADDER)


def test_a_question_that_asks_for_a_word_as_a_number_is_a_bug():
    question = Numeric(
        name="n", objective="o", asks="", because="", asked=Asked("boiling-point", "phase", {})
    )

    with pytest.raises(TypeError, match="not a number"):
        right_number(question)
