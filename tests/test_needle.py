"""Needles: where they stand, how a reading is marked, what a motion is."""

import json
import math
from itertools import pairwise

import pytest

from calculators.errors import CalculatorError
from calculators.outputs import needle as page
from calculators.outputs.browser import reply
from calculators.physics.constants import MICRON
from calculators.teaching.needle import FAIR, Dial, mark_reading, needle_of
from calculators.teaching.needle_motion import MOTIONS, POINTS, mark_motion, motion_of, track

NUMBER_OF = {m.key: next(n for n in range(1, 200) if motion_of(n).key == m.key) for m in MOTIONS}


def needle_with(test, system="us"):
    return next(n for n in range(1, 500) if test(needle_of(n, system)))


def test_equal_factors_take_equal_parts_of_the_scale():
    # Source: the definition of a logarithmic scale; half a decade is a factor of 3.162.
    dial = Dial(10.0, 3, "micron")

    assert dial.share(10.0) == 0.0
    assert dial.share(10_000.0) == pytest.approx(1.0)
    assert dial.share(316.2278) == pytest.approx(0.5)
    assert dial.share(200.0) - dial.share(100.0) == pytest.approx(math.log10(2.0) / 3)


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_needle_stands_on_its_dial_and_reads_right(system):
    for number in range(1, 200):
        needle = needle_of(number, system)
        assert 0.02 < needle.dial.share(needle.value) < 0.98
        assert mark_reading(number, f"{needle.value:g}", system).correct


def test_a_reading_is_fair_within_seven_percent():
    number = needle_with(lambda needle: 3.0 < needle.value / needle.decade < 5.0)
    value = needle_of(number, "us").value

    assert mark_reading(number, f"{value * 10 ** (0.9 * FAIR):.6g}", "us").correct
    assert not mark_reading(number, f"{value * 10 ** (1.2 * FAIR):.6g}", "us").correct


def test_any_unit_of_pressure_will_do():
    value = needle_of(3, "us").value * MICRON

    assert mark_reading(3, f"{value:.6g} Pa", "us").correct
    assert mark_reading(3, f"{value / 100:.6g} mbar", "us").correct


def test_usual_misreadings_are_named():
    number = needle_with(lambda needle: 2.5 < needle.value / needle.decade < 4.5)
    needle = needle_of(number, "us")
    low, along = needle.decade, math.log10(needle.value / needle.decade)

    assert mark_reading(number, f"{needle.value * 10:g}", "us").road == "decade"
    assert mark_reading(number, f"{low * (1 + 9 * along):.4g}", "us").road == "ruler"
    assert mark_reading(number, f"{needle.value + low:g}", "us").road == "one mark up"
    assert mark_reading(number, f"{needle.value - low:g}", "us").road == "one mark down"


@pytest.mark.parametrize("typed", ["", "some", "-5", "0", "5 °F", "5 furlong", "28 inHg vac"])
def test_what_is_no_pressure_is_told_in_a_sentence(typed):
    with pytest.raises(CalculatorError) as told:
        mark_reading(1, typed, "us")
    assert str(told.value).endswith(".")


# --- motions -------------------------------------------------------------------------


def rates(key):
    """Fall of the logarithm in each of ten minutes."""
    logs = [math.log10(p) for p in track(NUMBER_OF[key])][::12]
    return [later - earlier for earlier, later in pairwise(logs)]


def test_each_motion_does_what_its_words_say():
    steady, slowing, stalled = rates("steady"), rates("slowing"), rates("stalled")
    assert all(len(track(number)) == POINTS for number in NUMBER_OF.values())
    assert max(steady[:7]) / min(steady[:7]) == pytest.approx(1.0, abs=0.1)
    assert slowing[0] < 3 * slowing[4] < 0 and slowing[-1] < -0.02
    assert all(abs(each) < 0.01 for each in stalled[4:])
    jumps = [later / earlier for earlier, later in pairwise(track(NUMBER_OF["jumping"]))]
    assert sum(each > 1.3 for each in jumps) >= 3


def test_a_leak_climbs_by_the_same_number_and_gas_from_inside_comes_to_rest():
    climbing, leveling = (track(NUMBER_OF[key])[::12] for key in ("climbing", "leveling"))
    steps = [later - earlier for earlier, later in pairwise(climbing)]

    assert max(steps[1:]) / min(steps[1:]) == pytest.approx(1.0, abs=0.02)
    assert leveling[-1] - leveling[-2] < 0.02 * (leveling[1] - leveling[0])
    # Though on the scale the leak, too, slows down.
    assert rates("climbing")[-1] < 0.3 * rates("climbing")[0]


@pytest.mark.parametrize("part", ["does", "tells"])
def test_a_motion_is_marked(part):
    number = NUMBER_OF["stalled"]

    assert mark_motion(number, part, "stalled").correct
    wrong = mark_motion(number, part, "steady")
    assert not wrong.correct
    assert "stand" in wrong.says or "as fast as the pump" in wrong.says
    with pytest.raises(CalculatorError, match="Choose one first"):
        mark_motion(number, part, "")


# --- across to the page ------------------------------------------------------------------


def ask(**question):
    return json.loads(reply(json.dumps({"do": "needle", "system": "us", "number": 1, **question})))


def test_the_drawing_says_where_the_needle_is_but_not_what_it_reads():
    answer = ask(give="needle")
    needle = needle_of(1, "us")

    assert f"{needle.value:g}" not in answer["svg"].split("aria-label")[1].split('"')[1]
    assert "style=" not in answer["svg"]


def test_a_motion_comes_as_turns_and_as_numbers():
    answer = ask(give="motion", number=NUMBER_OF["climbing"])

    assert len(answer["turns"]) == POINTS
    assert answer["turns"] == sorted(answer["turns"])
    assert answer["table"].count("<tr>") == 12


def test_marks_and_complaints_cross_over():
    value = needle_of(1, "us").value
    assert ask(give="reading", answer=f"{value:g}")["correct"]
    assert ask(give="moved", part="does", answer=motion_of(1).key)["correct"]
    assert "not a number" in ask(give="reading", answer="x")["complaints"][0]["text"]
    assert not ask(give="needle", number="x")["ok"]


def test_ends_of_the_dial_are_where_the_arc_ends():
    assert page.turn(0.0) == -82.0
    assert page.turn(1.0) == 82.0
