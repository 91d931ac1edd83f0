"""Rate of rise and hold time, against printed values and their own definitions."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from published import agrees

from calculators.errors import OutOfRange
from calculators.physics.leak_rate import leak_rate, smallest_detectable_leak
from calculators.physics.pressure_rise import hold_time, rate_of_pressure_rise

MICRON = 101_325.0 / 760_000.0  # Pa
positive = st.floats(1e-6, 1e6)


def test_rate_of_rise_is_the_worked_example_of_40_cfr():
    # Source: 40 CFR 1065.644, inputs as printed: 25.300 to 50.600 kPa in 70 s, 2.0000 L.
    # Its rise per second is 361.43 Pa/s, and through the volume 0.72286 Pa m3/s (computed by hand).
    rate = rate_of_pressure_rise(first_pressure=25_300.0, last_pressure=50_600.0, duration=70.0)

    assert agrees(rate, "361.43")
    assert agrees(leak_rate(volume=2e-3, rate_of_pressure_rise=rate), "0.72286")


# Source: computed by hand from t = k r V / Q with k = 5, r in micron of 0.133322 Pa: 10 L in
# 10 min at 1.1110e-5 Pa m3/s; 3,000 L at the same leak takes 300 times as long, 50 h.
@pytest.mark.parametrize(("liters", "printed"), [(10.0, "600.0"), (3000.0, "180000")])
def test_hold_time_grows_with_the_volume(liters, printed):
    hold = hold_time(volume=liters * 1e-3, resolution=MICRON, leak_rate=1.11102e-5)

    assert agrees(hold, printed)


@given(volume=positive, resolution=positive, leak=positive)
def test_hold_time_and_smallest_leak_are_inverses(volume, resolution, leak):
    hold = hold_time(volume=volume, resolution=resolution, leak_rate=leak)

    smallest = smallest_detectable_leak(resolution=resolution, volume=volume, duration=hold)
    assert smallest == pytest.approx(leak)


@given(first=positive, last=positive, duration=positive)
def test_rate_times_time_is_the_rise(first, last, duration):
    rate = rate_of_pressure_rise(first_pressure=first, last_pressure=last, duration=duration)

    assert first + rate * duration == pytest.approx(last, rel=1e-9, abs=1e-9 * first)


def test_no_time_and_no_leak_are_refused():
    with pytest.raises(OutOfRange):
        rate_of_pressure_rise(first_pressure=1.0, last_pressure=2.0, duration=0.0)
    with pytest.raises(OutOfRange):
        hold_time(volume=1.0, resolution=1.0, leak_rate=0.0)
