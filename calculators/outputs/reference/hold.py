"""Tables of the hold: how long, what a leak costs, what the gas does to the gauge."""

from calculators.outputs.reference_table import Ask, ReferenceTable, Row, asking, heading
from calculators.physics.leak_rate import STEPS_TO_BE_SEEN
from calculators.physics.refrigerants import SATURATION


def _hold_times() -> tuple[Row, ...]:
    def cell(liters: int, step: int) -> Ask:
        ask = asking("hold-time", system="other", volume=f"{liters} L", resolution=f"{step} micron")
        return ask(output="hold_time", unit="duration")

    return tuple(
        (f"{heading(liters)} L", *(cell(liters, step) for step in (1, 5, 10, 25)))
        for liters in (3, 5, 10, 20, 50, 100, 300, 1_000, 3_000)
    )


def _refrigerants() -> tuple[Row, ...]:
    rows: list[Row] = []
    for name in SATURATION:
        ask = asking("leak-rate", refrigerant=name, temperature="68 °F")
        rows.append(
            (
                name,
                ask(output="service", unit="psia", figures=3),
                ask(output="service", unit="bar", figures=3),
                ask(output="least_loss", unit="oz/yr", figures=2),
                ask(output="greatest_loss", unit="lb/yr", figures=2),
                ask(output="least_loss", unit="g/yr", figures=2),
                ask(output="greatest_loss", unit="kg/yr", figures=2),
            )
        )
    return tuple(rows)


def _gas_factors() -> tuple[Row, ...]:
    rows: list[Row] = []
    for name in ("nitrogen", "air", "water vapor", *SATURATION):
        ask = asking("gauge-check", reference="500 micron", gas=name)
        rows.append(
            (
                name,
                ask(output="gas_factor", unit="1", decimals=2),
                ask(output="reading_in_gas", unit="micron", figures=3),
            )
        )
    return tuple(rows)


TABLES = (
    ReferenceTable(
        id="hold-times",
        caption="How long to hold, by volume and gauge step",
        says=(
            "Time until a leak of {leak_rate} ({leak_rate:Pa·m³/s;2}) has moved the gauge by "
            "{steps:1} of its steps: the gauge steps by what stands above each column."
        ),
        heads=("Volume", "1 micron", "5 micron", "10 micron", "25 micron"),
        made=_hold_times,
        values={"steps": STEPS_TO_BE_SEEN},
    ),
    ReferenceTable(
        id="refrigerants",
        caption="What a small leak costs, by refrigerant",
        says=(
            "Pressure of the saturated vapor at {temperature} ({temperature:°C}), and what a leak "
            "that raises {volume} from {first_pressure} to {last_pressure} in {duration} lets out "
            "per year in service: from the least to the most, by how the leak is shaped."
        ),
        heads=(
            "Refrigerant",
            "psia",
            "bar",
            "oz/yr, least",
            "lb/yr, most",
            "g/yr, least",
            "kg/yr, most",
        ),
        made=_refrigerants,
    ),
    ReferenceTable(
        id="gas-factors",
        caption="What a heat-loss gauge reads in another gas",
        says=(
            "Such a gauge, set for nitrogen, over the true pressure, in a thin gas; and what it "
            "shows where the truth is {reference}. By theory, for a clean sensor: see the card."
        ),
        heads=("Gas", "Reads, times", "Shows, micron"),
        made=_gas_factors,
    ),
)
