"""Tables of water: where it leaves, how deep to pull, what it weighs as vapor."""

from collections.abc import Sequence

from calculators.outputs.reference_table import Ask, ReferenceTable, Row, asking, heading

READINGS = (
    *range(50, 100, 10), *range(100, 200, 20), *range(200, 1_000, 50), *range(1_000, 2_000, 100),
    *range(2_000, 4_500, 250), 4_587, *range(4_600, 5_001, 100),
)  # fmt: skip
PASCALS = (
    *range(5, 20, 1), *range(20, 50, 2), *range(50, 100, 5), *range(100, 260, 10), 270,
    *range(280, 400, 20), *range(400, 600, 25), 611, *range(620, 681, 20),
)  # fmt: skip


HOW_TO_READ = (
    "Find your reading. Water leaves wherever the system is warmer than the temperature beside it."
)


def _leaves(readings: Sequence[int], unit: str, first: str, second: str) -> tuple[Row, ...]:
    rows: list[Row] = []
    for reading in readings:
        ask = asking("boiling-point", pressure=f"{reading} {unit}")
        rows.append(
            (
                heading(reading),
                ask(output="temperature", unit=first, decimals=1),
                ask(output="temperature", unit=second, decimals=1),
                ask(output="phase"),
            )
        )
    return tuple(rows)


def _vapor_pressure() -> tuple[Row, ...]:
    rows: list[Row] = []
    for fahrenheit in (*range(-40, 30, 5), 32, *range(35, 125, 5)):
        ask = asking("saturation-pressure", temperature=f"{fahrenheit} °F")
        rows.append(
            (
                heading(fahrenheit),
                ask(output="temperature", unit="°C", decimals=1),
                ask(output="pressure", unit="micron", figures=3),
                ask(output="pressure", unit="Pa", figures=3),
                ask(output="phase"),
            )
        )
    return tuple(rows)


def _vapor_mass() -> tuple[Row, ...]:
    def mass(micron: int, liters: int) -> Ask:
        ask = asking("moisture", pressure=f"{micron} micron", volume=f"{liters} L", water="1 g")
        return ask(output="vapor_mass", unit="mg", figures=3)

    def volume(micron: int, unit: str) -> Ask:
        ask = asking("moisture", pressure=f"{micron} micron", water="1 g")
        return ask(output="vapor_volume", unit=unit, figures=3)

    return tuple(
        (
            heading(micron),
            *(mass(micron, liters) for liters in (5, 10, 50, 500)),
            volume(micron, "ft³"),
            volume(micron, "L"),
        )
        for micron in (100, 200, 500, 1_000, 1_500, 2_000, 3_000, 4_600, 10_000, 17_500)
    )


TABLES = (
    ReferenceTable(
        id="boiling-point",
        caption="Where water leaves, by reading in micron",
        says=HOW_TO_READ,
        heads=("Reading, micron", "°F", "°C", "Water is"),
        made=lambda: _leaves(READINGS, "micron", "°F", "°C"),
        parts=2,
    ),
    ReferenceTable(
        id="boiling-point-si",
        caption="Where water leaves, by reading in pascal",
        says=HOW_TO_READ,
        heads=("Reading, Pa", "°C", "°F", "Water is"),
        made=lambda: _leaves(PASCALS, "Pa", "°C", "°F"),
        parts=2,
    ),
    ReferenceTable(
        id="vapor-pressure",
        caption="How deep to pull, by the coldest part",
        says=(
            "Find the temperature of the coldest part. Below the pressure beside it, water there "
            "turns to vapor; a sealed system with free water in it levels off there."
        ),
        heads=("Coldest part, °F", "°C", "micron", "Pa", "Water is"),
        made=_vapor_pressure,
        parts=2,
    ),
    ReferenceTable(
        id="vapor-mass",
        caption="Water in a system as vapor",
        says=(
            "At {temperature}, if all the reading is water vapor: milligrams in systems of four "
            "sizes, and the room that one gram takes. Above the vapor pressure at that temperature "
            "there is liquid, too."
        ),
        heads=(
            "Reading, micron",
            "5 L, mg",
            "10 L, mg",
            "50 L, mg",
            "500 L, mg",
            "1 g in ft³",
            "1 g in L",
        ),
        made=_vapor_mass,
    ),
)
