"""Leak rates, in throughput, moles and grams, and from one gas to another."""

from functools import partial

from calculators.physics import leak_rate
from calculators.physics.constants import STANDARD_ATMOSPHERE
from calculators.physics.gases import GASES
from published_values.checks import Published, Subject

ROOM = 293.15  # K
HELIUM = GASES["helium"]
TWO_TO_ONE = (2e5, 1e5)
SHORT_YEAR = 365 * 86400.0  # s, as these sources count it

# A table that leak-detector manuals print, factors from a helium leak rate to that of another
# gas, same leak and pressures: gas, viscous flow, molecular flow.
HELIUM_TABLE = [
    ("nitrogen", "1.12", "0.374"),
    ("air", "1.08", "0.374"),
    ("water vapor", "2.09", "0.469"),
]


def grams(gas: str, throughput: float) -> float:
    """Mass in a year of 365 days, the gas counted at 0 degC [kg]."""
    flow = leak_rate.mass_flow(
        throughput=throughput, molar_mass=GASES[gas].molar_mass, temperature=273.15
    )
    return flow * SHORT_YEAR


def molecular(name: str) -> float:
    return leak_rate.molecular_ratio(
        from_gas=HELIUM, to_gas=GASES[name], from_pressures=TWO_TO_ONE, to_pressures=TWO_TO_ONE
    )


def laminar(name: str, before=TWO_TO_ONE, after=TWO_TO_ONE) -> float:
    return leak_rate.laminar_ratio(
        from_gas=HELIUM,
        to_gas=GASES[name],
        from_pressures=before,
        to_pressures=after,
        temperature=ROOM,
    )


SUBJECT = Subject(
    title="Leak rates",
    published=(
        Published(
            what="2 L that rise from 25.3 to 50.6 kPa in 70 s",
            printed="0.00030",
            unit="mol/s",
            ours=lambda: leak_rate.molar_leak_rate(
                volume=0.002,
                first_pressure=25300.0,
                last_pressure=50600.0,
                first_temperature=ROOM,
                last_temperature=ROOM,
                duration=70.0,
            ),
            source="40-CFR-1065",
            locator="section 1065.644, the example; its last line from memory",
            from_memory=True,
        ),
        Published(
            what="A 4 L tube that loses 1 bar in 30 days",
            printed="1.5e-4",
            unit="Pa·m³/s",
            ours=lambda: leak_rate.leak_rate(
                volume=0.004, rate_of_pressure_rise=1e5 / (30 * 86400.0)
            ),
            source="A vacuum textbook's chapter on leak detection",
        ),
        Published(
            what="10 g of R-134a in ten years",
            printed="7.1e-7",
            unit="Pa·m³/s",
            ours=lambda: 0.001 / grams("R-134a", 1.0),
            source="A vacuum textbook's chapter on leak detection",
        ),
        Published(
            what="1 oz of air in a year",
            printed="6.96e-4",
            unit="atm·cm³/s",
            ours=lambda: 0.028349523 / grams("air", STANDARD_ATMOSPHERE * 1e-6),
            source="A table of leak rate conversions for leak testing",
        ),
        Published(
            what="A helium leak from 10 to 20 atm upstream grows",
            printed="4.03",
            unit="times",
            ours=lambda: laminar("helium", (10.0, 1.0), (20.0, 1.0)),
            source="A table of leak rate conversions for leak testing",
        ),
        *(
            Published(
                what=f"From helium to {name}, viscous flow",
                printed=printed,
                unit="times",
                ours=partial(laminar, name),
                source="A table that leak-detector manuals print",
                within=0.02,
                because="the table follows older viscosities",
            )
            for name, printed, _ in HELIUM_TABLE
        ),
        *(
            Published(
                what=f"From helium to {name}, molecular flow",
                printed=printed,
                unit="times",
                ours=partial(molecular, name),
                source="A table that leak-detector manuals print",
                within=0.012,
                because="the table gives nitrogen and air one factor",
            )
            for name, _, printed in HELIUM_TABLE
        ),
    ),
)
