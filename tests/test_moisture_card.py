"""The moisture card, each of its outputs against something outside the project."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from published import agrees

from calculators.cards.moisture import CARD
from calculators.errors import Complaints
from calculators.evaluate import evaluate

MICRON = 101_325.0 / 760_000.0
GAS_CONSTANT, WATER = 8.31446261815324, 0.018015268
WIDE = {"hose_bore": "4 in", "hose_length": "0 ft", "ultimate_pressure": "0.01 Pa"}


def outputs(**entries):
    return evaluate(CARD, entries).answer.outputs


def test_with_nothing_in_the_way_the_pump_takes_its_volume_of_coolprops_vapor():
    """5 CFM at the vessel, 20 degC, 500 micron: 1 g in 14.3 min by CoolProp's density."""
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    density = coolprop.PropsSI("D", "T", 293.15, "P", 500 * MICRON, "Water")

    result = outputs(**WIDE, pressure="500 micron", water="1 g", temperature="20 °C")

    assert result["effective_speed"] == pytest.approx(5 * 0.3048**3 / 60, rel=3e-3)
    assert result["removal_rate"] == pytest.approx(5 * 0.3048**3 / 60 * density, rel=4e-3)
    assert result["removal_time"] / 60 == pytest.approx(14.3, abs=0.1)


@pytest.mark.parametrize("micron", [300, 1000, 4500, 15000])
def test_effective_speed_is_knudsens_formula_solved_by_scipy(micron):
    """Knudsen (1909) for a long tube, up to 6 % above kinetic theory; viscosity by CoolProp."""
    optimize = pytest.importorskip("scipy.optimize")
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    viscosity = coolprop.PropsSI("V", "T", 293.15, "Dmolar", 1e-3, "Water")
    bore, length, speed, floor = 0.25 * 0.0254, 6 * 0.3048, 5 * 0.3048**3 / 60, 20 * MICRON
    thermal = GAS_CONSTANT * 293.15 / WATER
    system = micron * MICRON

    def conductance(mean):
        x = bore * mean / (viscosity * math.sqrt(thermal))
        viscous = math.pi * bore**4 * mean / (128 * viscosity * length)
        slip = math.sqrt(8 * thermal / math.pi) * math.pi / 12 * bore**3 / length
        return viscous + slip * (1 + x) / (1 + 1.24 * x)

    pump = optimize.brentq(
        lambda p: speed * (p - floor) - conductance((p + system) / 2) * (system - p),
        floor,
        system,
    )

    result = outputs(
        pressure=f"{micron} micron", ultimate_pressure="20 micron", temperature="20 °C"
    )

    assert result["effective_speed"] == pytest.approx(speed * (pump - floor) / system, rel=0.07)


# Source: table of saturated water: 20 degC, 57.79 m3/kg (older scale, 0.1 %).
def test_vapor_volume_and_vapor_mass_are_the_steam_tables():
    result = outputs(
        pressure="2.339 kPa", temperature="20 °C", water="1 g", volume="57.79 L", **WIDE
    )

    assert result["vapor_volume"] == pytest.approx(0.05779, rel=3e-3)
    assert result["vapor_mass"] == pytest.approx(1e-3, rel=3e-3)


def test_water_temperature_is_iapws():
    # Source: IAPWS R14-08 and SR1-86: 500 micron, -24.48 degC; 10,000 micron, 11.23 degC.
    assert agrees(outputs(pressure="500 micron")["water_temperature"] - 273.15, "-24.48")
    assert agrees(outputs(pressure="10000 micron")["water_temperature"] - 273.15, "11.23")


@pytest.mark.parametrize("celsius", [1.0, 10.0, 20.0])
def test_heat_needed_and_its_rate_are_iapws_vaporization(celsius):
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    temperature = 273.15 + celsius
    pressure = coolprop.PropsSI("P", "T", temperature, "Q", 0, "Water")
    latent = coolprop.PropsSI("H", "T", temperature, "Q", 1, "Water") - coolprop.PropsSI(
        "H", "T", temperature, "Q", 0, "Water"
    )

    result = outputs(pressure=f"{pressure!r} Pa", temperature="25 °C", water="50 g")

    assert result["heat_needed"] == pytest.approx(0.050 * latent, rel=2e-4)
    assert result["heat_rate"] == pytest.approx(result["removal_rate"] * latent, rel=2e-4)


def test_heat_of_ice_is_the_ice_tables():
    # Source: table of saturated ice: -20 degC, ice -374.1, vapor 2463.6 kJ/kg. Vapor over it
    # by IAPWS R14-08, 103.26 Pa.
    result = outputs(pressure="103.26 Pa", water="1 kg", temperature="20 °C")

    assert result["heat_needed"] / 1e3 == pytest.approx(2463.6 + 374.1, rel=3e-4)


def test_heat_to_stay_liquid_is_density_speed_and_vaporization_at_the_triple_point():
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    latent = coolprop.PropsSI("H", "T", 273.16, "Q", 1, "Water")  # that of the liquid is zero
    density = 611.657 * WATER / (GAS_CONSTANT * 293.15)  # of the vapor, at the pump's 20 degC

    result = outputs(**WIDE, temperature="20 °C")

    assert result["heat_to_stay_liquid"] == pytest.approx(
        5 * 0.3048**3 / 60 * density * latent, rel=3e-3
    )


# Energy balance with CoolProp's liquid and vapor and IAPWS ice in test_moisture.py: from 20 degC
# 3.33 % to reach freezing and 14.7 % until all is ice.
def test_shares_are_the_energy_balance():
    result = outputs(temperature="20 °C")

    assert agrees(100 * result["share_to_cool"], "3.33")
    assert agrees(100 * result["share_to_ice"], "14.7")


@pytest.mark.parametrize(
    ("entries", "word"),
    [
        ({"temperature": "20 °F"}, "ice"),
        ({"pressure": "500 micron"}, "can"),
        ({"pressure": "8,000 micron"}, "not-yet"),
        ({"heat": "1 W"}, "freezes"),
        ({"heat": "500 W"}, "stays"),
        ({"ultimate_pressure": "4,700 micron"}, "cannot"),
    ],
)
def test_freezing(entries, word):
    assert outputs(**entries)["freezing"] == word


def test_a_pump_that_cannot_freeze_has_no_heat_to_beat():
    assert outputs(ultimate_pressure="4,700 micron")["heat_to_stay_liquid"] == 0.0


def test_a_reading_below_ice_with_heat_enough_is_said_to_be_elsewhere():
    evaluation = evaluate(CARD, {"pressure": "500 micron", "heat": "100 W"})

    assert any("not at the water" in evaluation.say(note) for note in evaluation.answer.notes)


def test_little_heat_decides_the_time():
    result = outputs(pressure="10,000 micron", heat="1 W", water="1 g")

    assert result["removal_time"] == pytest.approx(result["heat_needed"], rel=1e-9)  # at 1 W


@settings(max_examples=30, deadline=None)
@given(micron=st.floats(100.0, 15_000.0))
def test_a_lower_reading_removes_less(micron):
    here, lower = (outputs(pressure=f"{each!r} micron") for each in (micron, 0.9 * micron))

    # Faster than in proportion: the hose passes thin gas worse.
    assert lower["removal_rate"] < 0.9 * here["removal_rate"]


@settings(max_examples=20, deadline=None)
@given(bore=st.floats(0.1, 1.0))
def test_a_wider_hose_removes_more_and_freezes_sooner(bore):
    here, wider = (outputs(hose_bore=f"{each!r} in") for each in (bore, 1.2 * bore))

    assert wider["removal_rate"] > here["removal_rate"]
    assert wider["heat_to_stay_liquid"] > here["heat_to_stay_liquid"]


def test_more_hoses_remove_more_but_never_more_than_the_pump():
    one, two, three = (outputs(hoses=each)["effective_speed"] for each in ("1", "2", "3"))

    assert one < two < three < 5 * 0.3048**3 / 60


def test_above_its_vapor_pressure_water_only_rides_along():
    """At 1 atm of wet air the share of vapor is p_sat/p: 2.3 % of what the pump moves."""
    result = outputs(pressure="1 atm", temperature="20 °C", **WIDE)

    assert result["removal_rate"] / (
        101_325.0 * result["effective_speed"] * WATER / (GAS_CONSTANT * 293.15)
    ) == pytest.approx(2339.2 / 101_325.0, rel=1e-3)


@pytest.mark.parametrize(
    ("entries", "name", "sentence"),
    [
        ({"pressure": "40 micron"}, "pressure", "removes nothing"),
        ({"hose_bore": "0 in"}, "hose_bore", "above zero"),
        ({"hose_length": "-6 ft"}, "hose_length", "outside"),
        ({"water": "10 L"}, "water", "measures volume"),
        ({"temperature": "200 °F"}, "temperature", "outside"),
    ],
)
def test_what_cannot_be_gets_a_sentence(entries, name, sentence):
    with pytest.raises(Complaints) as complaint:
        evaluate(CARD, entries)

    assert sentence in dict(complaint.value.items)[name]
