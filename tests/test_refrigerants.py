"""Refrigerant pressures and molar masses against libraries; a chart is in published_values."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.errors import OutOfRange
from calculators.physics import refrigerants
from calculators.physics.gases import GASES

PSI = 6894.757293168
ATMOSPHERE = 101325.0

# CoolProp 8.0.0: our name, its name.
FLUIDS = [
    ("R-22", "R22"),
    ("R-32", "R32"),
    ("R-134a", "R134a"),
    ("R-290", "R290"),
    ("R-404A", "R404A.mix"),
    ("R-410A", "R410A.mix"),
    ("R-454B", "R454B.mix"),
    ("R-744", "CO2"),
]


@pytest.mark.parametrize(
    ("name", "fluid", "celsius"),
    [
        (name, fluid, celsius)
        for name, fluid in FLUIDS
        for celsius in (-40.0, -25.0, 0.0, 20.0, 30.0, 40.0, 65.0)
        if name != "R-744" or celsius <= 30.0  # its critical point
    ],
)
def test_vapor_pressure_is_coolprops_dew_point(name, fluid, celsius):
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    published = coolprop.PropsSI("P", "T", 273.15 + celsius, "Q", 1, fluid)

    ours = refrigerants.vapor_pressure(refrigerant=name, temperature=273.15 + celsius)

    assert ours == pytest.approx(published, rel=2.2e-3)


@pytest.mark.parametrize(("name", "fluid"), FLUIDS)
def test_molar_mass_is_coolprops(name, fluid):
    coolprop = pytest.importorskip("CoolProp.CoolProp")

    assert GASES[name].molar_mass == pytest.approx(coolprop.PropsSI("M", fluid), rel=3e-4)


@pytest.mark.parametrize(
    ("name", "formula"),
    [
        ("R-22", "CHClF2"),
        ("R-32", "CH2F2"),
        ("R-134a", "C2H2F4"),
        ("R-290", "C3H8"),
        ("R-744", "CO2"),
        ("water vapor", "H2O"),
        ("nitrogen", "N2"),
        ("helium", "He"),
    ],
)
def test_molar_mass_is_the_sum_of_the_atoms_by_chemicals(name, formula):
    chemicals = pytest.importorskip("chemicals")
    atoms = chemicals.elements.simple_formula_parser(formula)

    assert GASES[name].molar_mass * 1e3 == pytest.approx(
        chemicals.elements.molecular_weight(atoms), rel=1e-4
    )


@given(
    name=st.sampled_from([name for name in refrigerants.NAMES if name != "R-744"]),
    temperature=st.floats(233.15, 337.0),
)
def test_warmer_is_more_pressure(name, temperature):
    here = refrigerants.vapor_pressure(refrigerant=name, temperature=temperature)
    warmer = refrigerants.vapor_pressure(refrigerant=name, temperature=temperature + 1.0)

    assert warmer > here


def test_the_curve_of_r744_meets_its_critical_point():
    curve = refrigerants.SATURATION["R-744"]

    ours = refrigerants.vapor_pressure(
        refrigerant="R-744", temperature=curve.critical_temperature - 1e-6
    )

    assert ours == pytest.approx(curve.critical_pressure, rel=1e-6)


def test_a_supercritical_refrigerant_is_refused_in_words():
    with pytest.raises(OutOfRange, match="no liquid above 31"):
        refrigerants.vapor_pressure(refrigerant="R-744", temperature=313.15)


def test_an_unknown_refrigerant_is_refused_in_words():
    with pytest.raises(OutOfRange, match="no refrigerant called"):
        refrigerants.vapor_pressure(refrigerant="R-0", temperature=293.15)


def test_too_cold_is_refused_in_words():
    with pytest.raises(OutOfRange, match="−40 °C"):
        refrigerants.vapor_pressure(refrigerant="R-22", temperature=200.0)
