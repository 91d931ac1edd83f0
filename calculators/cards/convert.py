"""What is this pressure in every other unit, and could a dial have shown it?"""

from calculators.card import Answer, Card, Cite, Column, Example, Output, Quantity, Step, Table
from calculators.cards.common import BAROMETER_UNITS, EVERY_PRESSURE
from calculators.physics.constants import MICRON

DIAL_DIVISION = 3386.388640341  # Pa, one inch of mercury, the finest mark of a usual dial


def compute(*, pressure: float, barometer: float) -> Answer:
    """Absolute pressure in every unit, and what an inch-of-mercury dial shows [Pa]."""
    vacuum = barometer - pressure
    division = DIAL_DIVISION / MICRON
    if vacuum >= 0:
        dial = (
            "A compound dial would show {dial_reading:inHg;.2} of vacuum. One inch on it is "
            "{division:1;5} micron, so it cannot tell 500 micron from 1,500: that is "
            "{hair:inHg;1} of needle travel."
        )
    else:
        dial = (
            "This is above the barometer: a compound dial would show {above:psia;.1} of pressure."
        )
    return Answer(
        outputs={"absolute_pressure": pressure, "dial_reading": vacuum},
        headline="Absolute pressure",
        notes=(
            dial,
            "The dial measures down from the barometer, which weather and altitude move by more "
            "than the whole of an evacuation.",
        ),
        working=(
            Step(
                "The entry as absolute pressure. A gauge or vacuum reading is counted from the "
                "barometer.",
                "p = p_baro − p_vac   or   p = p_baro + p_gauge",
                "{pressure} = {absolute_pressure:Pa;7}   (barometer {barometer:Pa;7})",
            ),
            Step(
                "One micron is a thousandth of a Torr, and 760 Torr are one atmosphere.",
                "1 micron = 101,325 Pa / 760,000",
                "{absolute_pressure:Pa;7} / 0.133322 Pa = {absolute_pressure:micron;6}",
            ),
            Step(
                "What a vacuum dial shows.",
                "p_vac = p_baro − p",
                "{barometer:inHg;5} − {absolute_pressure:inHg;5} = {dial_reading:inHg;5}",
            ),
        ),
        tables=(
            Table(
                caption="The same pressure in every unit",
                columns=(Column("Unit"), Column("Absolute pressure")),
                rows=tuple(
                    (unit, f"{{absolute_pressure:{unit};6}}")
                    for unit in EVERY_PRESSURE
                    if unit not in ("inHg-vac", "psig")
                ),
                open=True,
            ),
        ),
        values={
            "division": division,
            "hair": 1000 * MICRON,
            "above": max(0.0, -vacuum),
        },
    )


CARD = Card(
    slug="convert",
    title="Convert a pressure",
    question="What is this pressure in other units?",
    lede="Absolute or gauge, in any unit the trade uses. Gauge readings need the barometer.",
    inputs=(
        Quantity(
            name="pressure",
            label="Pressure",
            symbol="p",
            si_unit="Pa",
            us="micron",
            si="Pa",
            units=EVERY_PRESSURE,
            minimum=1e-4,
            maximum=1e8,
            default="500 micron",
        ),
        Quantity(
            name="barometer",
            label="Barometer",
            symbol="p_baro",
            hint="at the site, not from a weather report",
            si_unit="Pa",
            us="inHg",
            si="hPa",
            units=BAROMETER_UNITS,
            minimum=20_000.0,
            maximum=110_000.0,
            default="29.92 inHg",
            help="Used for readings that count from it: inHg-vac and psig.",
        ),
    ),
    outputs=(
        Output(
            name="absolute_pressure",
            label="Absolute pressure",
            symbol="p",
            si_unit="Pa",
            us="micron",
            si="Pa",
            figures=5,
        ),
        Output(
            name="dial_reading",
            label="A vacuum dial would show",
            symbol="p_vac",
            si_unit="Pa",
            us="inHg",
            si="kPa",
            figures=4,
        ),
    ),
    compute=compute,
    primary="absolute_pressure",
    sources=(
        Cite("NIST-SP811", "appendix B.8, conversion factors"),
        Cite("BIPM-SI-9", "table 8 and text on the torr"),
    ),
    assumptions=(
        "An inch of mercury is the conventional one at 32 °F; the one at 60 °F is 0.28 % smaller.",
        "The barometer is the true pressure at the site.",
    ),
    cautions=("stored-pressure",),
    examples=(
        Example(
            title="A deep vacuum in every unit",
            entries={"pressure": "500 micron"},
            shows="On a dial this is the end of the scale; on a vacuum gauge it is a reading.",
        ),
        Example(
            title="A dial at 24 inches at a mountain dairy",
            entries={"pressure": "24 inHg-vac", "barometer": "24.9 inHg"},
            shows="A dial that looks finished is still over 20,000 micron.",
        ),
    ),
)
