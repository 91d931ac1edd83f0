"""The leak-rate card, each of its outputs against something outside the project."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from published import agrees

from calculators.cards.leak_rate import CARD
from calculators.errors import Complaints
from calculators.evaluate import evaluate

YEAR = 31_557_600.0  # s
PSI = 6894.757293168


def outputs(**entries):
    return evaluate(CARD, entries).answer.outputs


def test_molar_flow_is_the_worked_example_of_40_cfr():
    # Source: 40 CFR 1065.644: 2.0000 L, 25.300 to 50.600 kPa at 293.15 K in 70 s; printed
    # 0.00030 mol/s (result from memory, inputs as printed).
    result = outputs(
        first_pressure="25.3 kPa",
        last_pressure="50.6 kPa",
        duration="70 s",
        volume="2 L",
        temperature="293.15 K",
    )

    assert agrees(result["molar_flow"], "0.00030")


def test_leak_rate_is_a_textbooks_bicycle_tube():
    # Source: a vacuum textbook on leak detection: 4 L, 1 bar in 30 days, 1.5e-4 Pa m3/s.
    result = outputs(first_pressure="0 Pa", last_pressure="1 bar", duration="30 d", volume="4 L")

    assert agrees(result["leak_rate"], "1.5e-4")


def test_air_mass_flow_is_a_leak_tables_ounce():
    # Source: a table of leak rate conversions: 1 oz/yr of air is 6.96e-4 atm cm3/s (0 degC,
    # year of 365 days). Rise chosen to give that leak in 1 L.
    leak = 6.96e-4 * 0.101325
    result = outputs(
        first_pressure="0 Pa",
        last_pressure=f"{leak * 600.0 / 0.001!r} Pa",
        duration="600 s",
        volume="1 L",
        temperature="0 °C",
    )

    ounces = result["air_mass_flow"] * 365 * 86_400 / 0.028349523125
    assert agrees(ounces, "1.00")


@pytest.mark.parametrize(
    ("refrigerant", "fahrenheit", "gauge"),
    [("R-410A", 70, "201.7"), ("R-22", 70, "121.4"), ("R-134a", 120, "171.2")],
)
def test_service_pressure_is_a_charts(refrigerant, fahrenheit, gauge):
    # Source: a pressure-temperature chart computed with NIST REFPROP, psig as printed; held to
    # 0.5 % of the absolute pressure.
    result = outputs(refrigerant=refrigerant, temperature=f"{fahrenheit} °F")

    assert result["service"] == pytest.approx(float(gauge) * PSI + 101_325.0, rel=5e-3)


@pytest.mark.parametrize(
    ("refrigerant", "fluid"), [("R-134a", "R134a"), ("R-290", "R290"), ("R-744", "CO2")]
)
def test_losses_are_coolprops_effusion_and_poiseuille_flow(refrigerant, fluid):
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    mass, air_mass = coolprop.PropsSI("M", fluid), coolprop.PropsSI("M", "Air")
    thin, air = (
        coolprop.PropsSI("V", "T", 293.15, "Dmolar", 1e-3, each) for each in (fluid, "Air")
    )
    pressure = coolprop.PropsSI("P", "T", 293.15, "Q", 1, fluid)

    result = outputs(refrigerant=refrigerant, temperature="20 °C", barometer="1013.25 hPa")

    for leak, least, greatest in [
        ("leak_rate", "least_loss", "greatest_loss"),
        ("smallest_leak", "smallest_least_loss", "smallest_greatest_loss"),
    ]:
        one = result[leak] * mass / (8.31446261815324 * 293.15)
        ratio = pressure / 101_325.0
        # The pressure is ours within 0.22 % of CoolProp's; the stream has it squared.
        assert result[least] == pytest.approx(
            one * math.sqrt(air_mass / mass) * (ratio - 1.0), rel=3e-3
        )
        assert result[greatest] == pytest.approx(one * air / thin * (ratio**2 - 1.0), rel=5e-3)


def test_the_smallest_leak_is_one_that_moves_the_gauge_five_steps():
    result = outputs(first_pressure="300 micron", last_pressure="305 micron", resolution="1 micron")

    assert result["smallest_leak"] == pytest.approx(result["leak_rate"], rel=1e-9)


def test_uncertainty_is_that_of_many_rounded_readings():
    """20,000 pairs rounded to the step (GUM supplement 1 in spirit), seeded; k = 2."""
    numpy = pytest.importorskip("numpy")
    noise = numpy.random.default_rng(11)
    true = noise.uniform(30.0, 40.0, (2, 20_000))
    read = numpy.round(true / 0.5) * 0.5
    spread = 2.0 * ((read[1] - read[0]) - (true[1] - true[0])).std()

    result = outputs(resolution="0.5 Pa", volume="10 L", duration="10 min")

    assert result["uncertainty"] == pytest.approx(0.010 * spread / 600.0, rel=0.02)


rises = st.floats(1.0, 5000.0)


@given(rise=rises)
def test_twice_the_rise_is_twice_the_leak_and_the_loss(rise):
    one, two = (
        outputs(first_pressure="10 Pa", last_pressure=f"{10.0 + factor * rise!r} Pa")
        for factor in (1, 2)
    )

    for name in ("leak_rate", "least_loss", "greatest_loss", "molar_flow", "air_mass_flow"):
        assert two[name] == pytest.approx(2 * one[name], rel=1e-9)


@given(hours=st.floats(0.1, 48.0))
def test_a_longer_hold_sees_a_smaller_leak(hours):
    here, longer = (outputs(duration=f"{each!r} h") for each in (hours, 1.5 * hours))

    assert longer["smallest_leak"] < here["smallest_leak"]


def test_a_gauge_and_an_absolute_service_pressure_are_one():
    gauge = outputs(service_pressure="200 psig", barometer="1013.25 hPa")
    absolute = outputs(service_pressure=f"{200 * PSI + 101_325.0!r} Pa", barometer="1013.25 hPa")

    assert gauge["greatest_loss"] == pytest.approx(absolute["greatest_loss"], rel=1e-12)


def test_no_rise_is_no_leak_but_the_test_still_has_its_limit():
    result = outputs(first_pressure="300 micron", last_pressure="300 micron")

    assert result["leak_rate"] == 0.0
    assert result["greatest_loss"] == 0.0
    assert result["smallest_leak"] > 0.0


@pytest.mark.parametrize(
    ("entries", "name", "sentence"),
    [
        ({"last_pressure": "200 micron"}, "last_pressure", "lost gas"),
        ({"last_temperature": "120 °F"}, "last_pressure", "lost gas"),
        ({"service_pressure": "-1 psig"}, "service_pressure", "air leaks in"),
        ({"refrigerant": "R-744", "temperature": "100 °F"}, "service_pressure", "no liquid above"),
        ({"duration": "0 min"}, "duration", "above zero"),
        ({"volume": "-3 L"}, "volume", "above zero"),
    ],
)
def test_what_cannot_be_gets_a_sentence_under_its_input(entries, name, sentence):
    with pytest.raises(Complaints) as complaint:
        evaluate(CARD, entries)

    assert sentence in dict(complaint.value.items)[name]
