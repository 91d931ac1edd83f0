"""Tables of pressure: the same in other units, and the barometer by altitude."""

from calculators.outputs.reference_table import ReferenceTable, Row, asking, heading

READINGS = (
    10, 20, 50, 100, 200, 250, 300, 400, 500, 600, 750, 1_000, 1_500, 2_000, 2_500, 4_600, 5_000,
    10_000, 25_400, 50_000, 100_000, 250_000, 500_000, 760_000,
)  # fmt: skip
SHOWN = {"Pa": None, "mbar": None, "Torr": None, "inHg": 4, "psia": 4}  # unit: decimals


def _equivalents() -> tuple[Row, ...]:
    rows: list[Row] = []
    for micron in READINGS:
        ask = asking("convert", pressure=f"{micron} micron")
        absolute = [
            ask(output="absolute_pressure", unit=unit, figures=4, decimals=decimals)
            for unit, decimals in SHOWN.items()
        ]
        rows.append(
            (
                heading(micron),
                *absolute,
                ask(output="dial_reading", unit="inHg", decimals=2),
            )
        )
    return tuple(rows)


def _altitudes() -> tuple[Row, ...]:
    rows: list[Row] = []
    for feet in (0, 500, *range(1_000, 5_001, 1_000), 5_280, *range(6_000, 12_001, 1_000)):
        ask = asking("altitude", altitude=f"{feet} ft")
        rows.append(
            (
                heading(feet),
                ask(output="altitude", unit="m", decimals=0),
                ask(output="barometer", unit="inHg", decimals=2),
                ask(output="barometer", unit="hPa", decimals=0),
                ask(output="barometer", unit="micron", figures=4),
                ask(output="boiling_point", unit="°F", decimals=1),
            )
        )
    return tuple(rows)


TABLES = (
    ReferenceTable(
        id="equivalents",
        caption="The same pressure in other units",
        says=(
            "Absolute pressures, and what a vacuum dial would show with the barometer at "
            "{barometer}. Where two rows end alike, a dial "
            "cannot tell them apart."
        ),
        heads=("micron", "Pa", "mbar", "Torr", "inHg absolute", "psia", "Dial, inHg"),
        made=_equivalents,
    ),
    ReferenceTable(
        id="altitude",
        caption="Barometer by altitude",
        says=(
            "The standard atmosphere, without weather. A vacuum dial cannot go past the barometer; "
            "a target in micron stays the same at any altitude."
        ),
        heads=("Altitude, ft", "m", "inHg", "hPa", "micron", "Open water boils, °F"),
        made=_altitudes,
    ),
)
