"""Boiling point, vapor pressure, conversion and altitude, against what is published."""

import pytest
from published import agrees

from calculators import units
from calculators.cards import BY_SLUG
from calculators.errors import Complaints
from calculators.evaluate import evaluate


def outputs(slug, **entries):
    return evaluate(BY_SLUG[slug], entries).answer.outputs


# Source: IAPWS R14-08 (ice) and SR1-86 (liquid), as computed by CoolProp 8.0.0 and iapws 1.5.5,
# one digit beyond what a screen shows: reading [micron], boiling or sublimation point [°C].
@pytest.mark.parametrize(
    ("micron", "celsius", "phase"),
    [
        (50, "-45.65", "ice"),
        (100, "-39.67", "ice"),
        (500, "-24.48", "ice"),
        (1000, "-17.31", "ice"),
        (2000, "-9.71", "ice"),
        (5000, "1.20", "liquid"),
        (10000, "11.23", "liquid"),
        (20000, "22.13", "liquid"),
        (760000, "99.974", "liquid"),
    ],
)
def test_boiling_point(micron, celsius, phase):
    answer = outputs("boiling-point", pressure=f"{micron} micron")

    assert agrees(answer["temperature"] - 273.15, celsius)
    assert answer["phase"] == phase


@pytest.mark.parametrize(
    ("pressure", "system", "behavior"),
    [
        ("500 micron", "50 °F", "boils"),
        ("500 micron", "20 °F", "sublimes"),
        ("2,500 micron", "5 °F", "stays"),
        ("20,000 micron", "50 °F", "stays"),
    ],
)
def test_what_water_in_the_system_does(pressure, system, behavior):
    answer = outputs("boiling-point", pressure=pressure, system_temperature=system)

    assert answer["behavior"] == behavior


# Source: IAPWS releases as above: temperature [°C], vapor pressure [micron].
@pytest.mark.parametrize(
    ("celsius", "micron"),
    [(-40, "96"), (-20, "774"), (-10, "1949"), (5, "6545"), (10, "9212"), (30, "31855")],
)
def test_saturation_pressure(celsius, micron):
    answer = outputs("saturation-pressure", temperature=f"{celsius} °C")

    assert agrees(units.from_si(answer["pressure"], "micron"), micron)


def test_500_micron_in_every_unit():
    # Source: NIST SP 811 factors: 66.661 Pa, 0.66661 mbar, 0.019685 inHg, 0.0096684 psia.
    pressure = outputs("convert", pressure="500 micron")["absolute_pressure"]

    assert agrees(pressure, "66.661")
    assert agrees(units.from_si(pressure, "mbar"), "0.66661")
    assert agrees(units.from_si(pressure, "inHg"), "0.019685")
    assert agrees(units.from_si(pressure, "psia"), "0.0096684")


def test_a_dial_reading_needs_the_barometer_it_hangs_from():
    low = outputs("convert", pressure="24 inHg-vac", barometer="24.9 inHg")["absolute_pressure"]
    high = outputs("convert", pressure="24 inHg-vac", barometer="29.92 inHg")["absolute_pressure"]

    # 0.9 in and 5.92 in of mercury left, at 25,400 micron (conventional) an inch.
    assert units.from_si(low, "micron") == pytest.approx(0.9 * 25400, rel=1e-5)
    assert units.from_si(high, "micron") == pytest.approx(5.92 * 25400, rel=1e-5)


def test_a_vacuum_deeper_than_the_barometer_is_refused():
    with pytest.raises(Complaints, match="deeper than the barometer"):
        outputs("convert", pressure="31 inHg-vac")


def test_altitude():
    answer = outputs("altitude", altitude="5,280 ft")

    # Source: U.S. Standard Atmosphere 1976 by ambiance and fluids: 83,431.8 Pa.
    assert agrees(answer["barometer"], "83431.8")
    # Source: CoolProp 8.0.0, saturation temperature of water at that pressure: 94.62 °C.
    assert agrees(answer["boiling_point"] - 273.15, "94.62")
    assert answer["deepest_dial_reading"] == answer["barometer"]
