"""The usual wrong roads: each computes what its name says."""

import pytest

from calculators.cards import BY_SLUG
from calculators.evaluate import evaluate
from calculators.physics.water import boiling_temperature
from calculators.teaching import wrong_roads
from calculators.units import from_si, to_si

BOILING = evaluate(BY_SLUG["boiling-point"], {"pressure": "500 micron"})
DIAL = evaluate(BY_SLUG["convert"], {"pressure": "24 inHg-vac", "barometer": "29.92 inHg"})


def test_off_by_a_factor():
    value = wrong_roads.times(60)(DIAL, "absolute_pressure")

    assert value == pytest.approx(60 * DIAL.answer.outputs["absolute_pressure"])


def test_the_wrong_line_of_the_right_card():
    assert wrong_roads.other_output("dial_reading")(DIAL, "absolute_pressure") == pytest.approx(
        to_si(24, "inHg")
    )


def test_other_entries_keep_the_rest_as_it_was():
    lower = wrong_roads.entered(barometer="25.92 inHg")(DIAL, "absolute_pressure")

    assert from_si(lower, "inHg") == pytest.approx(1.92)


def test_a_vacuum_reading_taken_as_absolute():
    value = wrong_roads.unit_taken_as("pressure", "inHg")(DIAL, "absolute_pressure")

    assert from_si(value, "inHg") == pytest.approx(24)


def test_what_was_given_handed_back():
    assert wrong_roads.input_itself("barometer")(DIAL, "absolute_pressure") == pytest.approx(
        to_si(29.92, "inHg")
    )


def test_the_boiling_curve_carried_on_is_below_the_curve_of_ice():
    # Clausius-Clapeyron from the triple point with the heat of boiling: liquid water is
    # supercooled there, and boils some kelvin below where ice sublimes.
    value = wrong_roads.boiling_curve_carried_on(BOILING, "temperature")

    assert 2.0 < boiling_temperature(pressure=to_si(500, "micron")) - value < 4.0


def test_the_boiling_curve_is_no_wrong_road_above_the_triple_point():
    above = evaluate(BY_SLUG["boiling-point"], {"pressure": "10,000 micron"})

    assert wrong_roads.boiling_curve_carried_on(above, "temperature") is None


def test_the_sign_left_out():
    value = wrong_roads.sign_left_out("°F")(BOILING, "temperature")

    assert from_si(value, "°F") == pytest.approx(12.06, abs=0.01)


def test_scaled_in_step_from_another_entry():
    value = wrong_roads.scaled_from("pressure", "1 Torr")(BOILING, "temperature")

    assert value == pytest.approx(boiling_temperature(pressure=to_si(1, "Torr")) / 2)


def test_an_entry_that_the_card_refuses_leads_nowhere():
    assert wrong_roads.entered(pressure="1e9 Pa")(BOILING, "temperature") is None


def test_rows_stay_as_they_were_when_another_entry_changes():
    pulls = [{"evacuated_to": "1,500 micron", "broken_to": "0 psig"}] * 2
    asked = evaluate(BY_SLUG["triple-evacuation"], {"pulls": pulls, "volume": "10 L"})

    value = wrong_roads.entered(volume="20 L")(asked, "vapor_per_break")

    assert value == pytest.approx(2 * asked.answer.outputs["vapor_per_break"])
