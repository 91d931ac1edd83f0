"""Leak rates against CoolProp, and what must hold for all; examples in published_values."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from published import agrees

from calculators.errors import OutOfRange
from calculators.physics import leak_rate, refrigerants
from calculators.physics.constants import STANDARD_ATMOSPHERE, YEAR
from calculators.physics.gases import GASES

ROOM = 293.15  # K
HELIUM = GASES["helium"]


@pytest.mark.parametrize(
    ("name", "fluid"), [("R-134a", "R134a"), ("R-290", "R290"), ("R-744", "CO2")]
)
def test_service_loss_is_coolprops_poiseuille_and_effusion(name, fluid):
    """Both ends of the range, put together from CoolProp's molar masses and viscosities."""
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    pressure = coolprop.PropsSI("P", "T", ROOM, "Q", 1, fluid)
    mass = coolprop.PropsSI("M", fluid)
    air = coolprop.PropsSI("V", "T", ROOM, "Dmolar", 1e-3, "Air")
    thin = coolprop.PropsSI("V", "T", ROOM, "Dmolar", 1e-3, fluid)
    one = 1e-6 * mass / (8.31446261815324 * ROOM)
    atmosphere = STANDARD_ATMOSPHERE

    loss = leak_rate.service_loss(
        leak_rate=1e-6, refrigerant=GASES[name], service_pressure=pressure, temperature=ROOM
    )

    effusion = math.sqrt(coolprop.PropsSI("M", "Air") / mass) * (pressure / atmosphere - 1.0)
    poiseuille = air / thin * ((pressure / atmosphere) ** 2 - 1.0)
    assert loss.molecular == pytest.approx(one * effusion, rel=1e-4)
    assert loss.laminar == pytest.approx(one * poiseuille, rel=1e-3)


positive = st.floats(1e-9, 1e-3)
above_air = st.floats(1.2e5, 6e6)


@given(leak=positive, pressure=above_air, name=st.sampled_from(refrigerants.NAMES))
def test_molecular_is_the_least_and_laminar_the_most(leak, pressure, name):
    loss = leak_rate.service_loss(
        leak_rate=leak, refrigerant=GASES[name], service_pressure=pressure, temperature=ROOM
    )

    assert 0.0 < loss.molecular < loss.laminar


@given(leak=positive, pressure=above_air, name=st.sampled_from(refrigerants.NAMES))
def test_more_pressure_loses_more(leak, pressure, name):
    low, high = (
        leak_rate.service_loss(
            leak_rate=leak, refrigerant=GASES[name], service_pressure=each, temperature=ROOM
        )
        for each in (pressure, 1.1 * pressure)
    )

    assert high.molecular > low.molecular
    assert high.laminar > low.laminar


@given(
    volume=st.floats(1e-3, 5.0),
    rate=st.floats(1e-6, 10.0),
    temperature=st.floats(240.0, 340.0),
    duration=st.floats(10.0, 1e6),
)
def test_molar_form_is_the_leak_rate_over_rt_at_one_temperature(
    volume, rate, temperature, duration
):
    moles = leak_rate.molar_leak_rate(
        volume=volume,
        first_pressure=10.0,
        last_pressure=10.0 + rate * duration,
        first_temperature=temperature,
        last_temperature=temperature,
        duration=duration,
    )
    throughput = leak_rate.leak_rate(volume=volume, rate_of_pressure_rise=rate)

    assert moles == pytest.approx(throughput / (8.31446261815324 * temperature), rel=1e-6)


def test_warming_gas_is_not_a_leak():
    """The same gas, 10 K warmer: pressure up by 3.4 %, no mole gained."""
    moles = leak_rate.molar_leak_rate(
        volume=0.01,
        first_pressure=100.0,
        last_pressure=100.0 * 303.15 / 293.15,
        first_temperature=293.15,
        last_temperature=303.15,
        duration=600.0,
    )

    assert moles == pytest.approx(0.0, abs=1e-18)


def test_smallest_detectable_leak_moves_the_gauge_by_its_steps():
    smallest = leak_rate.smallest_detectable_leak(resolution=0.1, volume=0.01, duration=600.0)

    rise = smallest / 0.01 * 600.0
    assert rise == pytest.approx(5 * 0.1)


def test_a_system_below_the_open_air_loses_nothing():
    with pytest.raises(OutOfRange, match="air leaks in"):
        leak_rate.service_loss(
            leak_rate=1e-6, refrigerant=GASES["R-134a"], service_pressure=9e4, temperature=ROOM
        )


def test_no_time_is_no_test():
    with pytest.raises(OutOfRange, match="later"):
        leak_rate.molar_leak_rate(
            volume=1.0,
            first_pressure=1.0,
            last_pressure=2.0,
            first_temperature=ROOM,
            last_temperature=ROOM,
            duration=0.0,
        )


def test_one_gram_a_year_of_r134a():
    """An inverse of the textbook row, at 20 degC and a year of 365.25 days: 7.57e-7 Pa m3/s."""
    one = leak_rate.mass_flow(
        throughput=1.0, molar_mass=GASES["R-134a"].molar_mass, temperature=ROOM
    )

    # 0.001 kg / 0.102032 kg/mol * 8.31446 J/(mol K) * 293.15 K / 31,557,600 s, by hand.
    assert agrees(0.001 / YEAR / one, "7.57e-7")
