"""Gas properties against the libraries and standards that they claim to follow."""

import math

import pytest

from calculators.errors import OutOfRange
from calculators.physics import gases

TEMPERATURES = (233.15, 253.15, 273.15, 293.15, 323.15, 373.15)  # K
DILUTE = 1e-3  # mol/m3, thin enough that density no longer counts

# CoolProp 8.0.0: our name, its name, largest deviation of the viscosity allowed (the
# "fit" column of the module table, rounded up).
COOLPROP_VISCOSITY = [
    ("air", "Air", 1e-4),
    ("nitrogen", "Nitrogen", 1e-4),
    ("water vapor", "Water", 5e-3),
    ("helium", "Helium", 1e-4),
    ("R-134a", "R134a", 2e-4),
    ("R-290", "R290", 5e-4),
    ("R-744", "CO2", 5e-4),
]
COOLPROP_GAS = [*COOLPROP_VISCOSITY, ("R-22", "R22", 0.0), ("R-32", "R32", 0.0)]

# thermo 0.6.1, ViscosityGas(...).calculate(T, "REFPROP_FIT"): the transport coefficients it
# carries for the pure refrigerants. Fluid, molar mass [g/mol], then the viscosity [uPa s] at
# 233.15, 293.15 and 373.15 K, digits as it printed them.
THERMO = {
    "R22": (86.468, ("9.745", "12.411", "15.799")),
    "R32": (52.024, ("9.772", "12.398", "15.761")),
    "R125": (120.0214, ("10.082", "12.748", "16.032")),
    "R143a": (84.041, ("8.640", "11.018", "14.058")),
    "R134a": (102.032, ("9.268", "11.622", "14.704")),
    "R1234yf": (114.0416, ("8.231", "11.243", "14.543")),
}
THERMO_TEMPERATURES = (233.15, 293.15, 373.15)  # K

# Composition by mass, ASHRAE 34 (from memory).
BLENDS = [
    ("R-404A", {"R125": 0.44, "R143a": 0.52, "R134a": 0.04}),
    ("R-410A", {"R32": 0.5, "R125": 0.5}),
    ("R-454B", {"R32": 0.689, "R1234yf": 0.311}),
]


@pytest.mark.native
@pytest.mark.parametrize("temperature", TEMPERATURES)
@pytest.mark.parametrize(("name", "fluid", "tolerance"), COOLPROP_VISCOSITY)
def test_viscosity_is_coolprops(name, fluid, tolerance, temperature):
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    published = coolprop.PropsSI("V", "T", temperature, "Dmolar", DILUTE, fluid)

    ours = gases.viscosity(gas=gases.named(name), temperature=temperature)

    assert ours == pytest.approx(published, rel=tolerance)


@pytest.mark.native
@pytest.mark.parametrize("column", [0, 1, 2])
@pytest.mark.parametrize(("name", "parts"), BLENDS)
def test_viscosity_of_blends_follows_wilke(name, parts, column):
    chemicals = pytest.importorskip("chemicals")
    masses = [THERMO[fluid][0] for fluid in parts]
    moles = [part / mass for part, mass in zip(parts.values(), masses, strict=True)]
    fractions = [each / sum(moles) for each in moles]
    viscosities = [float(THERMO[fluid][1][column]) * 1e-6 for fluid in parts]
    wilke = chemicals.viscosity.Wilke(fractions, viscosities, masses)

    ours = gases.viscosity(gas=gases.named(name), temperature=THERMO_TEMPERATURES[column])

    assert ours == pytest.approx(wilke, rel=3e-3)  # libraries differ by 0.6 % on R-125 at -40 degC


@pytest.mark.native
@pytest.mark.parametrize(("name", "fluid", "_tolerance"), COOLPROP_GAS)
def test_molar_mass_and_heat_capacity_ratio_are_coolprops(name, fluid, _tolerance):
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    heat = coolprop.PropsSI("CP0MOLAR", "T", 293.15, "Dmolar", DILUTE, fluid)
    gas = gases.named(name)

    assert gas.molar_mass == pytest.approx(molar_mass(fluid), rel=1e-5)
    assert gas.heat_capacity_ratio == pytest.approx(heat / (heat - 8.314462618), abs=6e-5)


@pytest.mark.native
@pytest.mark.parametrize(("name", "parts"), BLENDS)
def test_molar_mass_and_heat_capacity_ratio_of_blends_follow_their_composition(name, parts):
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    moles = {fluid: part / molar_mass(fluid) for fluid, part in parts.items()}
    heat = sum(
        amount * coolprop.PropsSI("CP0MOLAR", "T", 293.15, "Dmolar", DILUTE, fluid)
        for fluid, amount in moles.items()
    ) / sum(moles.values())
    gas = gases.named(name)

    assert gas.molar_mass == pytest.approx(1.0 / sum(moles.values()), rel=2e-5)
    assert gas.heat_capacity_ratio == pytest.approx(heat / (heat - 8.314462618), abs=6e-5)


@pytest.mark.native
def test_molar_masses_are_chemicals_own():
    chemicals = pytest.importorskip("chemicals")

    for name, formula in [("nitrogen", "N2"), ("water vapor", "H2O"), ("helium", "He")]:
        grams = chemicals.molecular_weight(chemicals.elements.nested_formula_parser(formula))
        assert gases.named(name).molar_mass == pytest.approx(grams * 1e-3, rel=2e-5)


@pytest.mark.parametrize("name", gases.NAMES)
def test_viscosity_rises_with_temperature(name):
    gas = gases.named(name)
    values = [gases.viscosity(gas=gas, temperature=t) for t in range(234, 374, 5)]

    assert values == sorted(values)


def test_mean_speed_of_nitrogen_follows_from_the_molecule():
    # sqrt(8 k T / (pi m)) with m = 28.0134 u, CODATA 2018 u = 1.66053906660e-27 kg.
    molecule = 28.0134 * 1.66053906660e-27
    expected = math.sqrt(8.0 * 1.380649e-23 * 293.15 / (math.pi * molecule))

    speed = gases.mean_speed(gas=gases.named("nitrogen"), temperature=293.15)

    assert speed == pytest.approx(expected, rel=1e-8)


@pytest.mark.parametrize("temperature", [233.0, 374.0, math.nan, math.inf])
def test_temperatures_outside_the_table_are_refused(temperature):
    with pytest.raises(OutOfRange, match="−40 °C to 100 °C"):
        gases.viscosity(gas=gases.named("air"), temperature=temperature)


def test_an_unknown_gas_is_refused_with_the_list():
    with pytest.raises(OutOfRange, match="choose air, nitrogen"):
        gases.named("phlogiston")


def molar_mass(fluid):
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    return coolprop.PropsSI("M", fluid)
