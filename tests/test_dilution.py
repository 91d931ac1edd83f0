"""Nitrogen breaks against worked examples of vacuum purging in chemical engineering."""

import itertools
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from published import agrees

from calculators.errors import OutOfRange
from calculators.physics import dilution
from calculators.physics.constants import MICRON, STANDARD_ATMOSPHERE, TORR

ATMOSPHERE = STANDARD_ATMOSPHERE


def test_number_of_purges_is_a_worked_example():
    # Source: a worked problem after C. Branan, Rules of Thumb for Chemical Engineers: air (21 %
    # oxygen) to 5 ppm with a vacuum of 6 mmHg takes n = 2.20 cycles. From our own two cycles:
    # the fraction left falls by one factor per cycle.
    two = dilution.pulls(
        start_pressure=ATMOSPHERE, evacuated_to=[6 * TORR, 6 * TORR], broken_to=[ATMOSPHERE]
    )[1].fraction_left

    cycles = math.log(5e-4 / 21.0) / (0.5 * math.log(two))

    assert agrees(cycles, "2.20")


def test_purging_to_half_an_atmosphere_is_a_worked_example():
    # Source: a dilution purging sheet after the same book: 21 % to 1 % at 0.5 atm, n = 4.4, so
    # five cycles, 2.5 vessel volumes of nitrogen.
    low, cycles = 0.5 * ATMOSPHERE, 5
    states = dilution.pulls(
        start_pressure=ATMOSPHERE,
        evacuated_to=[low] * (cycles + 1),
        broken_to=[ATMOSPHERE] * cycles,
    )
    nitrogen = dilution.nitrogen_amount(
        volume=1.0,
        temperature=293.15,
        evacuated_to=[low] * cycles,
        broken_to=[ATMOSPHERE] * cycles,
    )

    # The share of oxygen in the gas after break n is 21 % times partial/total there.
    after_four, after_five = (states[n].partial_pressure / ATMOSPHERE * 21.0 for n in (3, 4))
    assert after_five < 1.0 < after_four
    assert nitrogen * 8.31446261815324 * 293.15 / ATMOSPHERE == pytest.approx(2.5)


def test_nitrogen_is_a_textbooks_vessel():
    # Source: Crowl and Louvar, Chemical Process Safety, example on vacuum purging (from
    # memory): 1,000 gal at 75 degF, 20 mmHg, four purges: 1.33 lb mol of nitrogen (37.2 lb,
    # from the rounded 1.33 and 28 lb per lb mol).
    nitrogen = dilution.nitrogen_amount(
        volume=1000 * 3.785411784e-3,
        temperature=(75 + 459.67) / 1.8,
        evacuated_to=[20 * TORR] * 4,
        broken_to=[ATMOSPHERE] * 4,
    )

    assert agrees(nitrogen / 453.59237, "1.33")


def test_three_pulls_to_1500_micron_by_hand():
    """By hand: 1500 x (1500/760,000)^2 micron = 0.005843 micron; over 760,000: 7.69e-9."""
    last = dilution.pulls(
        start_pressure=ATMOSPHERE,
        evacuated_to=[1500 * MICRON] * 3,
        broken_to=[ATMOSPHERE] * 2,
    )[-1]

    assert agrees(last.partial_pressure / MICRON, "0.005843")
    assert agrees(last.fraction_left, "7.69e-9")


lows = st.lists(st.floats(1.0, 5e3), min_size=1, max_size=6)


@given(lows=lows)
def test_every_pull_leaves_less(lows):
    states = dilution.pulls(
        start_pressure=ATMOSPHERE, evacuated_to=lows, broken_to=[ATMOSPHERE] * (len(lows) - 1)
    )

    fractions = [1.0] + [state.fraction_left for state in states]
    assert all(later < sooner for sooner, later in itertools.pairwise(fractions))


@given(lows=lows, share=st.floats(0.0, 1.0))
def test_gases_leave_in_proportion(lows, share):
    """The fraction left does not depend on how much there was."""
    breaks = [ATMOSPHERE] * (len(lows) - 1)
    whole = dilution.pulls(start_pressure=ATMOSPHERE, evacuated_to=lows, broken_to=breaks)

    assert whole[-1].partial_pressure * share == pytest.approx(
        share * ATMOSPHERE * whole[-1].fraction_left
    )


def test_one_pull_without_a_break_keeps_only_the_old_gas():
    (only,) = dilution.pulls(start_pressure=ATMOSPHERE, evacuated_to=[100.0], broken_to=[])

    assert only.partial_pressure == pytest.approx(100.0)


def test_vapor_carried_is_saturated_nitrogen():
    """10 L of nitrogen over water at 20 degC: 0.17 g by CoolProp's saturated vapor."""
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    density = coolprop.PropsSI("D", "T", 293.15, "Q", 1, "Water")
    pressure = coolprop.PropsSI("P", "T", 293.15, "Q", 1, "Water")

    carried = dilution.vapor_carried(
        volume=0.01,
        temperature=293.15,
        vapor_pressure=pressure,
        high_pressure=ATMOSPHERE,
        low_pressure=200.0,
    )

    assert carried == pytest.approx(density * 0.01 * (1 - 200.0 / ATMOSPHERE), rel=2e-3)


@pytest.mark.parametrize(
    ("lows", "highs", "sentence"),
    [
        ([200.0, 200.0], [], "one break"),
        ([2e5], [], "Pull 1 must end"),
        ([200.0, 300.0], [100.0], "Break 1 must raise"),
        ([0.0], [], "Pull 1 must end"),
    ],
)
def test_an_impossible_sequence_is_refused_in_words(lows, highs, sentence):
    with pytest.raises(OutOfRange, match=sentence):
        dilution.pulls(start_pressure=ATMOSPHERE, evacuated_to=lows, broken_to=highs)


def test_a_pull_that_rises_is_refused_in_words():
    with pytest.raises(OutOfRange, match="must lower"):
        dilution.vapor_carried(
            volume=0.01,
            temperature=293.15,
            vapor_pressure=2339.0,
            high_pressure=100.0,
            low_pressure=200.0,
        )
