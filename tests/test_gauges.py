"""Gauge uncertainty, agreement and gas factors; printed values are in published_values."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.errors import OutOfRange
from calculators.physics import gauges, thermal_gauge
from calculators.physics.gases import GASES

readings = st.floats(1.0, 1e5)
uncertainties = st.floats(0.1, 1e4)


@given(one=readings, other=readings, u_one=uncertainties, u_other=uncertainties)
def test_en_score_changes_sign_with_the_roles(one, other, u_one, u_other):
    there = gauges.en_score(
        reading=one, reference=other, expanded_reading=u_one, expanded_reference=u_other
    )
    back = gauges.en_score(
        reading=other, reference=one, expanded_reading=u_other, expanded_reference=u_one
    )

    assert there == pytest.approx(-back)


@given(one=readings, other=readings, u_one=uncertainties, u_other=uncertainties)
def test_a_coarser_gauge_never_agrees_less(one, other, u_one, u_other):
    fine = gauges.en_score(
        reading=one, reference=other, expanded_reading=u_one, expanded_reference=u_other
    )
    coarse = gauges.en_score(
        reading=one, reference=other, expanded_reading=2 * u_one, expanded_reference=u_other
    )

    assert abs(coarse) <= abs(fine)


@given(step=st.floats(0.0, 1e3), limit=st.floats(0.0, 1e3))
def test_uncertainty_combines_by_root_sum_of_squares(step, limit):
    both = gauges.gauge_uncertainty(step=step, limit=limit)

    assert both == pytest.approx(math.sqrt(step**2 / 12 + limit**2 / 3))
    assert gauges.expanded_uncertainty(standard_uncertainty=both) == 2.0 * both


def test_two_perfect_gauges_are_refused_in_words():
    with pytest.raises(OutOfRange, match="cannot be perfect"):
        gauges.en_score(reading=1.0, reference=2.0, expanded_reading=0.0, expanded_reference=0.0)


def test_drift_is_change_over_time():
    assert gauges.drift_rate(earlier_error=2.0, later_error=5.0, elapsed=10.0) == 0.3
    with pytest.raises(OutOfRange, match="some time back"):
        gauges.drift_rate(earlier_error=2.0, later_error=5.0, elapsed=0.0)


@pytest.mark.parametrize(
    ("name", "fluid"),
    [("water vapor", "Water"), ("R-134a", "R134a"), ("R-32", "R32"), ("R-290", "R290")],
)
def test_thin_gas_reading_is_free_molecule_conduction_by_coolprop(name, fluid):
    """Heat per hit by CoolProp's heat capacity: (cv + R/2)/sqrt(M), against nitrogen."""
    coolprop = pytest.importorskip("CoolProp.CoolProp")

    def heat(gas):
        cp = coolprop.PropsSI("CP0MOLAR", "T", 293.15, "Dmolar", 1e-3, gas)
        return (cp - 0.5 * 8.314462618) / math.sqrt(coolprop.PropsSI("M", gas))

    ratio = thermal_gauge.thin_gas_reading(gas=GASES[name])

    assert ratio == pytest.approx(heat(fluid) / heat("Nitrogen"), rel=2e-3)


@pytest.mark.parametrize(
    ("name", "fluid"),
    [
        ("air", "Air"),
        ("nitrogen", "Nitrogen"),
        ("water vapor", "Water"),
        ("helium", "Helium"),
        ("R-22", "R22"),
        ("R-32", "R32"),
        ("R-134a", "R134a"),
        ("R-290", "R290"),
        ("R-744", "CO2"),
    ],
)
def test_thermal_conductivity_is_coolprops(name, fluid):
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    published = coolprop.PropsSI("L", "T", 293.15, "Dmolar", 1e-3, fluid)

    assert thermal_gauge.THERMAL_CONDUCTIVITY[name] == pytest.approx(published, rel=5e-4)


@pytest.mark.parametrize(
    ("name", "parts"),
    [
        ("R-404A", {"R125": 0.44, "R143a": 0.52, "R134a": 0.04}),
        ("R-410A", {"R32": 0.5, "R125": 0.5}),
        ("R-454B", {"R32": 0.689, "R1234yf": 0.311}),
    ],
)
def test_thermal_conductivity_of_blends_is_the_mole_average(name, parts):
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    moles = {fluid: share / coolprop.PropsSI("M", fluid) for fluid, share in parts.items()}
    published = sum(
        amount * coolprop.PropsSI("L", "T", 293.15, "Dmolar", 1e-3, fluid)
        for fluid, amount in moles.items()
    ) / sum(moles.values())

    assert thermal_gauge.THERMAL_CONDUCTIVITY[name] == pytest.approx(published, rel=5e-3)


@pytest.mark.parametrize("name", ["water vapor", "R-410A", "R-134a", "R-290"])
def test_the_order_turns_over_between_thin_and_dense(name):
    gas = GASES[name]

    assert thermal_gauge.thin_gas_reading(gas=gas) > 1.0
    assert thermal_gauge.dense_gas_response(gas=gas) < 1.0


def test_nitrogen_is_read_as_it_is():
    assert thermal_gauge.thin_gas_reading(gas=GASES["nitrogen"]) == 1.0
    assert thermal_gauge.dense_gas_response(gas=GASES["nitrogen"]) == 1.0
