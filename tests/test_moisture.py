"""Water vapor, heats and freezing against IAPWS libraries; tables are in published_values."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from published import agrees

from calculators.errors import OutOfRange
from calculators.physics import moisture
from calculators.physics.constants import MICRON
from calculators.physics.water import saturation_pressure


def test_heat_of_sublimation_is_vaporization_and_fusion_together():
    below = moisture.heat_of_evaporation(temperature=273.16)
    above = moisture.heat_of_evaporation(temperature=273.1601)

    assert below - above == pytest.approx(moisture.HEAT_OF_FUSION, rel=1e-3)


@pytest.mark.parametrize("celsius", [-50.0, -20.0, -1.0, 5.0, 20.0])
def test_heat_is_the_slope_of_the_saturation_curve(celsius):
    """Clausius and Clapeyron, the vapor ideal: h = (R T^2/M) d(ln p)/dT."""
    temperature, step = 273.15 + celsius, 0.01
    slope = math.log(
        saturation_pressure(temperature=temperature + step)
        / saturation_pressure(temperature=temperature - step)
    ) / (2 * step)

    computed = moisture.heat_of_evaporation(temperature=temperature)

    ideal = 8.31446261815324 * temperature**2 / 0.018015268 * slope
    assert computed == pytest.approx(ideal, rel=2e-3)


def test_heat_capacity_is_iapws():
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    warm = coolprop.PropsSI("H", "T", 313.15, "Q", 0, "Water")
    cold = coolprop.PropsSI("H", "T", 273.16, "Q", 0, "Water")

    mean = (warm - cold) / (313.15 - 273.16)
    assert moisture.LIQUID_HEAT_CAPACITY == pytest.approx(mean, rel=3e-3)


@pytest.mark.parametrize("celsius", [5.0, 10.0, 20.0, 30.0, 45.0])
def test_adiabatic_freezing_is_the_energy_balance_of_iapws_enthalpies(celsius):
    """Stepwise balance with CoolProp's liquid and vapor and IAPWS ice, no formula of ours."""
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    iapws = pytest.importorskip("iapws")
    left, steps = 1.0, 400
    for step in range(steps):
        here = 273.15 + celsius - (celsius - 0.01) * step / steps
        there = here - (celsius - 0.01) / steps
        middle = 0.5 * (here + there)
        cooling = coolprop.PropsSI("H", "T", here, "Q", 0, "Water") - coolprop.PropsSI(
            "H", "T", there, "Q", 0, "Water"
        )
        latent = coolprop.PropsSI("H", "T", middle, "Q", 1, "Water") - coolprop.PropsSI(
            "H", "T", middle, "Q", 0, "Water"
        )
        left -= left * cooling / latent
    ice = iapws._iapws._Ice(273.16, 611.657e-6)["h"] * 1e3
    liquid = coolprop.PropsSI("H", "T", 273.16, "Q", 0, "Water")
    vapor = coolprop.PropsSI("H", "T", 273.16, "Q", 1, "Water")
    frozen = left * (vapor - liquid) / (vapor - ice)
    temperature = 273.15 + celsius

    cooled = moisture.share_evaporated_to_freezing_point(temperature=temperature)
    iced = moisture.share_evaporated_to_ice(temperature=temperature)

    assert cooled == pytest.approx(1.0 - left, rel=5e-3)
    assert iced == pytest.approx(1.0 - frozen, rel=2e-3)


def test_removal_rate_is_density_times_speed():
    """2.36 L/s of vapor at 500 micron and 20 degC, its density by CoolProp: 1 g in 14.3 min."""
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    density = coolprop.PropsSI("D", "T", 293.15, "P", 500 * MICRON, "Water")

    rate = moisture.removal_rate(
        pumping_speed=2.36e-3, vapor_pressure=500 * MICRON, temperature=293.15
    )

    assert rate == pytest.approx(2.36e-3 * density, rel=1e-3)
    assert agrees(1e-3 / rate / 60.0, "14.3")


def test_heat_to_stay_liquid_is_rate_times_vaporization():
    """1 L/s at the triple point: density 4.8546e-3 kg/m3 (IAPWS-95) times 2,500.9 kJ/kg."""
    power = moisture.heat_to_stay_liquid(pumping_speed=1e-3, temperature=273.16)

    assert power == pytest.approx(1e-3 * 4.8546e-3 * 2500.9e3, rel=3e-3)


temperatures = st.floats(273.17, 333.0)


@given(temperature=temperatures)
def test_vapor_mass_and_volume_are_inverse(temperature):
    mass = moisture.vapor_mass(pressure=500.0, volume=0.02, temperature=temperature)

    volume = moisture.vapor_volume(mass=mass, pressure=500.0, temperature=temperature)

    assert volume == pytest.approx(0.02, rel=1e-12)


@given(temperature=temperatures)
def test_warmer_water_boils_off_more_before_it_freezes(temperature):
    here = moisture.share_evaporated_to_freezing_point(temperature=temperature)
    cooler = moisture.share_evaporated_to_freezing_point(temperature=temperature - 0.01)

    assert 0.0 <= cooler < here < moisture.share_evaporated_to_ice(temperature=temperature) < 1.0


def test_water_at_the_triple_point_has_no_cooling_to_do():
    assert moisture.share_evaporated_to_freezing_point(temperature=273.16) == 0.0


@pytest.mark.parametrize("temperature", [150.0, 334.0])
def test_heats_outside_the_range_are_refused_in_words(temperature):
    with pytest.raises(OutOfRange, match="60 °C"):
        moisture.heat_of_evaporation(temperature=temperature)


def test_ice_cannot_freeze():
    with pytest.raises(OutOfRange, match="liquid here"):
        moisture.share_evaporated_to_ice(temperature=263.15)
