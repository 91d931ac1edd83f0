"""Saturation of water where its two curves meet, its inverse and its ends; see published_values."""

import math

import pytest
from published import agrees

from calculators.errors import OutOfRange
from calculators.physics import water
from calculators.physics.constants import MICRON, WATER_TRIPLE_PRESSURE, WATER_TRIPLE_TEMPERATURE


def test_the_curves_meet_at_the_triple_point():
    ice = water.sublimation_pressure(temperature=WATER_TRIPLE_TEMPERATURE)
    liquid = water.boiling_pressure(temperature=WATER_TRIPLE_TEMPERATURE)

    assert ice == pytest.approx(WATER_TRIPLE_PRESSURE, rel=1e-12)
    assert liquid == pytest.approx(WATER_TRIPLE_PRESSURE, rel=2e-7)


def test_the_slope_jumps_there_because_melting_takes_heat():
    # d ln p / d(1/T) is -h M / R: 2,834 kJ/kg to vapor from ice and 2,501 from liquid,
    # from memory of the steam tables; the ratio is what the guide relies on.
    step = 0.01
    low, middle, high = (
        math.log(water.saturation_pressure(temperature=WATER_TRIPLE_TEMPERATURE + k * step))
        for k in (-1, 0, 1)
    )

    assert (middle - low) / (high - middle) == pytest.approx(2834 / 2501, rel=0.003)


@pytest.mark.parametrize(
    "pressure", [1e-3, 0.1, 66.7, 611.6, 611.657, 611.7, 2339.0, 101325.0, 2e7]
)
def test_boiling_temperature_undoes_saturation_pressure(pressure):
    temperature = water.boiling_temperature(pressure=pressure)

    assert water.saturation_pressure(temperature=temperature) == pytest.approx(pressure, rel=2e-7)


def test_500_micron_is_ice_at_minus_24_5_celsius():
    # The commonest question of the trade, by IAPWS R14-08: -24.48 °C, -12.06 °F.
    temperature = water.boiling_temperature(pressure=500 * MICRON)

    assert agrees(temperature - 273.15, "-24.48")
    assert water.phase_at_pressure(pressure=500 * MICRON) == "ice"


@pytest.mark.parametrize("micron", [4587.8, 4588.0, 4600.0])
def test_the_triple_point_divides_ice_from_liquid(micron):
    assert water.phase_at_pressure(pressure=micron * MICRON) == (
        "ice" if micron < 4587.81 else "liquid"
    )


@pytest.mark.parametrize("pressure", [0.0, -1.0, 22.0641e6, 1e-40, float("nan")])
def test_boiling_temperature_refuses_what_the_equations_do_not_cover(pressure):
    with pytest.raises(OutOfRange):
        water.boiling_temperature(pressure=pressure)


@pytest.mark.parametrize("temperature", [49.9, 647.1, float("nan")])
def test_saturation_pressure_refuses_what_the_equations_do_not_cover(temperature):
    with pytest.raises(OutOfRange):
        water.saturation_pressure(temperature=temperature)
