"""Lists of units, and inputs, that several cards share.

An input in capitals is a pattern: a card takes it with ``replace(VACUUM,
name="first_pressure", label="First reading")`` from :mod:`dataclasses`.
"""

from collections.abc import Mapping
from dataclasses import replace

from calculators.card import Input, Quantity
from calculators.errors import OutOfRange

VACUUM_UNITS = (
    "micron",
    "mTorr",
    "Torr",
    "mmHg",
    "Pa",
    "hPa",
    "kPa",
    "mbar",
    "bar",
    "inHg",
    "psia",
    "atm",
)
BAROMETER_UNITS = ("inHg", "hPa", "mbar", "kPa", "mmHg", "Torr", "psia", "Pa", "atm")
EVERY_PRESSURE = (
    "micron",
    "mTorr",
    "Torr",
    "mmHg",
    "inHg",
    "inHg-vac",
    "Pa",
    "hPa",
    "kPa",
    "mbar",
    "bar",
    "psia",
    "psig",
    "atm",
)
GAUGE_PRESSURE_UNITS = ("psig", "barg", "psia", "bar", "kPa", "MPa", "Pa", "mbar", "inHg", "atm")
TEMPERATURE_UNITS = ("°F", "°C", "K")
LENGTH_UNITS = ("ft", "in", "m", "cm", "mm")
BORE_UNITS = ("in", "mm", "cm")
VOLUME_UNITS = ("L", "ft³", "gal", "m³", "in³", "mL")
TIME_UNITS = ("min", "s", "h", "d")
FLOW_UNITS = ("CFM", "L/s", "L/min", "m³/h", "m³/s")
LEAK_UNITS = ("micron·L/s", "Pa·m³/s", "mbar·L/s", "Torr·L/s", "atm·cm³/s", "micron·CFM")
RISE_UNITS = ("micron/min", "micron/h", "Pa/s", "Pa/min", "mbar/min", "Torr/min")
MASS_UNITS = ("g", "oz", "lb", "kg", "mg")

VACUUM = Quantity(
    name="pressure",
    label="Gauge reading",
    symbol="p",
    si_unit="Pa",
    us="micron",
    si="Pa",
    units=VACUUM_UNITS,
    minimum=1e-3,
    maximum=110_000.0,
    default="500 micron",
)
GAUGE_STEP = Quantity(
    name="resolution",
    label="Step of the gauge",
    symbol="r",
    si_unit="Pa",
    us="micron",
    si="Pa",
    units=("micron", "mTorr", "Torr", "mmHg", "Pa", "hPa", "mbar"),
    minimum=1e-4,
    maximum=1000.0,
    default="1 micron",
    help="The smallest change its display shows at these readings.",
)
BAROMETER = Quantity(
    name="barometer",
    label="Barometer",
    symbol="p_b",
    si_unit="Pa",
    us="inHg",
    si="hPa",
    units=BAROMETER_UNITS,
    minimum=50_000.0,
    maximum=110_000.0,
    default="29.92 inHg",
)
TEMPERATURE = Quantity(
    name="temperature",
    label="Temperature of the system",
    symbol="T",
    si_unit="K",
    us="°F",
    si="°C",
    units=TEMPERATURE_UNITS,
    minimum=233.15,
    maximum=338.15,
    default="68 °F",
)
VOLUME = Quantity(
    name="volume",
    label="Inside volume",
    symbol="V",
    si_unit="m³",
    us="L",
    si="L",
    units=VOLUME_UNITS,
    minimum=1e-5,
    maximum=1000.0,
    default="10 L",
)
DURATION = Quantity(
    name="duration",
    label="Time between",
    symbol="t",
    si_unit="s",
    us="min",
    si="min",
    units=TIME_UNITS,
    minimum=1.0,
    maximum=30 * 86_400.0,
    default="10 min",
)


def as_it_is(words: str) -> str:
    """Text of a person's own, safe inside a template: its braces stand for themselves."""
    return words.replace("{", "{{").replace("}", "}}")


def all_or_none(entries: Mapping[str, float | None], *, else_say: str) -> dict[str, float] | None:
    """Entries that only mean something together: all of them, or None if all are blank."""
    given = {name: value for name, value in entries.items() if value is not None}
    if not given:
        return None
    for name in entries:
        if name not in given:
            raise OutOfRange(else_say, input=name)
    return given


def fold(inputs: tuple[Input, ...], *names: str) -> tuple[Input, ...]:
    """Fold away the inputs that few people change, so that a phone shows the rest."""
    return tuple(replace(each, folded=each.name in names) for each in inputs)
