"""Gauges: uncertainty, agreement, and what the gas does to them."""

from functools import partial

from calculators.physics import gauges, thermal_gauge
from calculators.physics.gases import GASES
from published_values.checks import Published, Subject

# NIST Dataplot reference manual, ISO 13528 EN SCORE, its example on gear diameters: X as
# printed, expanded U of the row (2 s of its batch: printed 0.009, here with one more digit from
# NIST's batch s of 0.00435), En as printed. The reference is 1, its U is 2 s of all hundred
# rows, 0.01256. The two s are from memory of NIST's own data page.
DATAPLOT = [(1.006, 0.0087, "0.393"), (0.996, 0.0087, "-0.262"), (0.998, 0.0087, "-0.131")]

# Instructions of a laboratory thermal-conductivity gauge, 0.01 to 1 mbar, true pressure = factor
# x reading, "mean values" with one digit. Helium is known to stand apart from the theory.
FACTORS = [("R-744", "0.9", 0.12), ("water vapor", "0.5", 0.45), ("air", "1.0", 0.03)]


def dataplot_score(reading: float, expanded: float) -> float:
    return gauges.en_score(
        reading=reading, reference=1.0, expanded_reading=expanded, expanded_reference=0.01256
    )


def factor(name: str) -> float:
    return 1 / thermal_gauge.thin_gas_reading(gas=GASES[name])


SUBJECT = Subject(
    title="Gauges",
    published=(
        Published(
            what="Standard uncertainty that a step of 1 leaves",
            printed="0.29",
            unit="1",
            ours=lambda: gauges.resolution_uncertainty(step=1.0),
            source="GUM",
            locator="F.2.2.1",
        ),
        Published(
            what="Standard uncertainty behind ±1",
            printed="0.577",
            unit="1",
            ours=lambda: gauges.limits_uncertainty(limit=1.0),
            source="GUM",
            locator="4.3.7",
        ),
        *(
            Published(
                what=f"En score of a gear diameter of {reading}",
                printed=printed,
                unit="1",
                ours=partial(dataplot_score, reading, expanded),
                source="NIST Dataplot reference manual",
                locator="ISO 13528 EN SCORE, its example",
                from_memory=True,
            )
            for reading, expanded, printed in DATAPLOT
        ),
        *(
            Published(
                what=f"Factor of a thermal-conductivity gauge in {name}",
                printed=printed,
                unit="1",
                ours=partial(factor, name),
                source="Instructions of a laboratory thermal-conductivity gauge",
                within=within,
                because="one digit, a mean of gauges; ours is the theory of a clean sensor",
            )
            for name, printed, within in FACTORS
        ),
    ),
)
