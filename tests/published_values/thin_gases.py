"""Gases and refrigerants: molar mass, viscosity, vapor pressure."""

from functools import partial

from calculators import units
from calculators.physics import gases, refrigerants
from published_values.checks import AgainstLibrary, Published, Subject

# thermo 0.6.1, ViscosityGas(...).calculate(T, "REFPROP_FIT"): viscosity [uPa s] at 233.15,
# 293.15 and 373.15 K, digits as it printed them.
VISCOSITY_TEMPERATURES = (233.15, 293.15, 373.15)  # K
VISCOSITY = {"R-22": ("9.745", "12.411", "15.799"), "R-32": ("9.772", "12.398", "15.761")}

# A pressure-temperature chart computed with NIST REFPROP: bubble point, degF and psig.
CHART = [
    ("R-410A", 0, "48.4"),
    ("R-410A", 70, "201.7"),
    ("R-410A", 120, "419.5"),
    ("R-22", 0, "24.0"),
    ("R-22", 70, "121.4"),
    ("R-22", 120, "260.0"),
    ("R-134a", 0, "6.5"),
    ("R-134a", 70, "71.1"),
    ("R-134a", 120, "171.2"),
]
ATMOSPHERE = 14.696  # psi, of the chart's gauge readings

# Our name and CoolProp's; the largest deviation of the viscosity that our fit may have.
FLUIDS = {
    "R-22": "R22", "R-32": "R32", "R-134a": "R134a", "R-290": "R290", "R-404A": "R404A.mix",
    "R-410A": "R410A.mix", "R-454B": "R454B.mix", "R-744": "CO2",
}  # fmt: skip
VISCOSITY_FIT = {
    "air": ("Air", 1e-4), "nitrogen": ("Nitrogen", 1e-4), "water vapor": ("Water", 5e-3),
    "helium": ("Helium", 1e-4), "R-134a": ("R134a", 2e-4), "R-290": ("R290", 5e-4),
    "R-744": ("CO2", 5e-4),
}  # fmt: skip


def viscosity(name: str, temperature: float) -> float:
    """Viscosity [uPa s]."""
    return 1e6 * gases.viscosity(gas=gases.GASES[name], temperature=temperature)


def vapor_psia(name: str, temperature: float) -> float:
    pressure = refrigerants.vapor_pressure(refrigerant=name, temperature=temperature)
    return units.from_si(pressure, "psia")


def vapor_bar(name: str, temperature: float) -> float:
    return refrigerants.vapor_pressure(refrigerant=name, temperature=temperature) / 1e5


def coolprop_bar(fluid: str, temperature: float, coolprop) -> float:
    return coolprop.PropsSI("P", "T", temperature, "Q", 1, fluid) / 1e5


def coolprop_viscosity(fluid: str, coolprop) -> float:
    return 1e6 * coolprop.PropsSI("V", "T", 293.15, "Dmolar", 1e-3, fluid)


SUBJECT = Subject(
    title="Gases and refrigerants",
    published=(
        *(
            Published(
                what=f"Viscosity of {name} vapor at {temperature} K",
                printed=printed,
                unit="µPa·s",
                ours=partial(viscosity, name, temperature),
                source="THERMO",
                locator="REFPROP_FIT coefficients",
                within=1e-3,
                because="our curve is fitted over 140 K",
            )
            for name, row in VISCOSITY.items()
            for temperature, printed in zip(VISCOSITY_TEMPERATURES, row, strict=True)
        ),
        *(
            Published(
                what=f"Vapor pressure of {name} at {fahrenheit} °F",
                printed=f"{float(gauge) + ATMOSPHERE:.1f}",
                unit="psia",
                ours=partial(vapor_psia, name, (fahrenheit + 459.67) / 1.8),
                source="A pressure-temperature chart computed with NIST REFPROP",
                locator=f"{gauge} psig as printed",
                within=5e-3,
                because="the chart gives the bubble point, we the dew point",
            )
            for name, fahrenheit, gauge in CHART
        ),
    ),
    libraries=(
        *(
            AgainstLibrary(
                what=f"Vapor pressure of {name} at {celsius} °C",
                unit="bar",
                ours=partial(vapor_bar, name, 273.15 + celsius),
                theirs=partial(coolprop_bar, fluid, 273.15 + celsius),
                module="CoolProp.CoolProp",
                within=2.2e-3,
                because="our curve is fitted from −40 °C to 65 °C",
            )
            for name, fluid in FLUIDS.items()
            for celsius in (0.0, 20.0)
        ),
        *(
            AgainstLibrary(
                what=f"Viscosity of {name} at 20 °C",
                unit="µPa·s",
                ours=partial(viscosity, name, 293.15),
                theirs=partial(coolprop_viscosity, fluid),
                module="CoolProp.CoolProp",
                within=within,
                because="our curve is fitted over 140 K",
            )
            for name, (fluid, within) in VISCOSITY_FIT.items()
        ),
    ),
)
