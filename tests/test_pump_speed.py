"""Pumping speed from a pull-down, and water in pump oil."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.errors import OutOfRange
from calculators.physics import pump_speed


def test_speed_is_the_exact_decay_of_one_time_constant():
    """Falling to 1/e above the ultimate takes V/S, by definition of the exponential."""
    speed = pump_speed.pull_down_speed(
        volume=0.01,
        duration=5.0,
        first_pressure=10.0 + 1000.0,
        last_pressure=10.0 + 1000.0 / math.e,
        ultimate_pressure=10.0,
    )

    assert speed == pytest.approx(0.01 / 5.0)


def test_speed_of_an_independent_integration():
    """scipy empties 50 L with 2.36 L/s and a 20 micron floor; we read its curve."""
    integrate = pytest.importorskip("scipy.integrate")
    true, floor = 2.36e-3, 2.666
    run = integrate.solve_ivp(
        lambda _, p: -true / 0.05 * (p - floor),
        (0.0, 150.0),
        [101325.0],
        rtol=1e-10,
        atol=1e-8,
        dense_output=True,
    )
    start, end = run.sol(0.0)[0], run.sol(120.0)[0]

    speed = pump_speed.pull_down_speed(
        volume=0.05,
        duration=120.0,
        first_pressure=start,
        last_pressure=end,
        ultimate_pressure=floor,
    )

    assert speed == pytest.approx(true, rel=1e-6)


falls = st.floats(1.1, 1e3)


@given(volume=st.floats(1e-3, 1.0), time=st.floats(1.0, 1e4), fall=falls)
def test_twice_the_time_is_half_the_pump(volume, time, fall):
    there = {
        "volume": volume,
        "first_pressure": 100.0 * fall,
        "last_pressure": 100.0,
        "ultimate_pressure": 1.0,
    }

    fast = pump_speed.pull_down_speed(duration=time, **there)
    slow = pump_speed.pull_down_speed(duration=2 * time, **there)

    assert fast == pytest.approx(2 * slow)


def test_uncertainty_is_that_of_many_trials():
    """Monte Carlo (GUM supplement 1 in spirit), seeded: 20,000 noisy pull-downs."""
    numpy = pytest.importorskip("numpy")
    noise = numpy.random.default_rng(7)
    shape = 20_000
    volume = 0.05 * (1 + 0.02 * noise.standard_normal(shape))
    time = 60.0 + 1.0 * noise.standard_normal(shape)
    first = 5e4 + 500.0 * noise.standard_normal(shape)
    last = 500.0 + 15.0 * noise.standard_normal(shape)
    trials = volume / time * numpy.log((first - 5.0) / (last - 5.0))

    relative = pump_speed.pull_down_speed_uncertainty(
        duration=60.0,
        first_pressure=5e4,
        last_pressure=500.0,
        ultimate_pressure=5.0,
        volume_error=0.02,
        duration_error=1.0,
        first_error=500.0,
        last_error=15.0,
    )

    assert relative == pytest.approx(trials.std() / trials.mean(), rel=0.03)


@pytest.mark.parametrize(
    ("changed", "sentence"),
    [
        ({"duration": 0.0}, "took some time"),
        ({"last_pressure": 2e3}, "must fall"),
        ({"ultimate_pressure": 150.0}, "never gets below"),
    ],
)
def test_an_impossible_pull_down_is_refused_in_words(changed, sentence):
    possible = {
        "volume": 0.05,
        "duration": 60.0,
        "first_pressure": 1e3,
        "last_pressure": 100.0,
        "ultimate_pressure": 1.0,
    }

    with pytest.raises(OutOfRange, match=sentence):
        pump_speed.pull_down_speed(**(possible | changed))
