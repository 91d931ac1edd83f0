"""Nitrogen breaks: one worked example, and what must hold for all; see published_values."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.errors import OutOfRange
from calculators.physics import dilution
from calculators.physics.constants import STANDARD_ATMOSPHERE

ATMOSPHERE = STANDARD_ATMOSPHERE


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
