"""One cell of a log of readings: what kind of column it stands in, and its value in SI.

A column of times holds plain numbers, clock times or dated stamps, and is
read as one of these as a whole; a column of pressures holds numbers, with a
unit of their own or without.
"""

import math
import re
from collections.abc import Callable, Sequence
from datetime import datetime
from itertools import pairwise

from calculators import units
from calculators.errors import CalculatorError, UnitError

DAY = 86400.0  # s
LONGEST_TIME = 1e10  # s; three centuries, either way
HIGHEST_PRESSURE = 200_000.0  # Pa; above it no gauge of this work is meant

_CLOCK = re.compile(r"(\d{1,3}):([0-5]?\d)(?::([0-5]?\d(?:[.,]\d+)?))?\Z")
_DATED = re.compile(r"\d{4}[-/]\d\d?[-/]\d\d?|\d\d?[/.]\d\d?[/.]\d{4}|\d{8}T")
_THOUSANDS = re.compile(r"[+-]?[1-9]\d{0,2}(?:,\d{3})+\Z")
_VALUE = re.compile(r"[+\-−–]?(?:[.,]?\d|nan\b|inf(?:inity)?\b)", re.IGNORECASE)
_WRITTEN_DATES = (
    "%m/%d/%Y %I:%M:%S %p",
    "%m/%d/%Y %I:%M %p",
    "%m/%d/%Y %H:%M:%S",
    "%m/%d/%Y %H:%M",
    "%d.%m.%Y %H:%M:%S",
    "%d.%m.%Y %H:%M",
)

Reader = Callable[[str], float]


def is_a_value(cell: str) -> bool:
    """Tell a number, clock time or date from a word of a header."""
    return bool(_VALUE.match(cell.strip()))


def unit_named(title: str) -> str | None:
    """Find the unit of time or pressure that a column's title names.

    "Time [s]", "p / mbar", "elapsed_min" and "microns" each name one.
    """
    in_brackets = re.findall(r"[(\[]([^)\]]*)[)\]]", title)
    words = [word for word in re.split(r"[\s_()\[\]/,;:]+", title) if word]
    for candidate in (*in_brackets, title, *reversed(words)):
        try:
            unit = units.find(candidate)
        except CalculatorError:
            continue
        if unit.dimension in ("time", "pressure"):
            return unit.name
    return None


def quantity_named(title: str) -> str | None:
    """Say whether a column's title means time or pressure, by its unit or its words."""
    unit = unit_named(title)
    if unit is not None:
        return units.UNITS[unit].dimension
    words = title.lower()
    for dimension, clues in (
        ("time", ("time", "elapsed", "clock", "date", "stamp", "minute", "second")),
        ("pressure", ("press", "vac", "reading", "gauge", "gage", "level")),
    ):
        if any(clue in words for clue in clues):
            return dimension
    return None


def decimal_commas(cells: Sequence[str], *, unit: str) -> bool:
    """Decide whether a comma inside these numbers marks decimals, not thousands."""
    with_comma = [cell for cell in cells if "," in cell and "." not in cell]
    if not with_comma:
        return False
    looks_like_thousands = all(_THOUSANDS.match(cell.strip()) for cell in with_comma)
    return not (looks_like_thousands and unit in ("micron", "mTorr", "Pa"))


def number_reader(*, unit: str, decimal_comma: bool) -> Reader:
    """Make a reader of one number, in ``unit`` unless the cell names its own."""
    dimension = units.UNITS[unit].dimension

    def read(cell: str) -> float:
        text = cell.strip()
        if decimal_comma:
            text = text.replace(".", "").replace(",", ".")
        number, own_unit, _ = units.read(text, bare=unit)
        if units.UNITS[own_unit].dimension != dimension:
            raise UnitError(f"“{cell.strip()[:30]}” is not a {dimension}.")
        value = units.to_si(number, own_unit)
        if abs(value) > LONGEST_TIME:
            raise UnitError(f"“{cell.strip()[:30]}” is too large.")
        return value

    return read


def pressure_reader(*, unit: str, decimal_comma: bool) -> Reader:
    """Make a reader of one absolute pressure [Pa]."""
    read_number = number_reader(unit=unit, decimal_comma=decimal_comma)

    def read(cell: str) -> float:
        pressure = read_number(cell)
        if not 0.0 < pressure <= HIGHEST_PRESSURE:
            raise UnitError(
                f"“{cell.strip()[:30]}” is not an absolute pressure between zero and 2 bar."
            )
        return pressure

    return read


def is_dated(cells: Sequence[str]) -> bool:
    """Say whether a column of times holds dates."""
    return sum(1 for cell in cells if _DATED.match(cell.strip())) * 2 > len(cells)


def is_clock(cells: Sequence[str]) -> bool:
    """Say whether a column of times holds clock times such as 8:05 or 00:05:30."""
    return sum(1 for cell in cells if _CLOCK.match(cell.strip())) * 2 > len(cells)


def read_date(cell: str) -> float:
    """Read a dated stamp as seconds since an epoch that all rows share."""
    text = " ".join(cell.split())
    year_first = text[:4].isdigit()
    try:
        return _seconds(datetime.fromisoformat(text.replace("/", "-") if year_first else text))
    except ValueError:
        pass
    for form in _WRITTEN_DATES:
        try:
            return _seconds(datetime.strptime(text, form))
        except ValueError:
            continue
    raise UnitError(f"“{text[:30]}” is not a date and time such as 2026-05-04 08:30:00.")


def _seconds(stamp: datetime) -> float:
    epoch = datetime(2000, 1, 1, tzinfo=stamp.tzinfo)
    return (stamp - epoch).total_seconds()


def clock_reader(cells: Sequence[str], *, in_minutes: bool) -> tuple[Reader, str]:
    """Make a reader of clock times [s], and say how two-part times were taken.

    A time of two parts is hours and minutes, unless the column is headed in
    minutes, counts past 23, or would then leave half-hour gaps from zero on.
    """
    parts = [match for match in (_CLOCK.match(cell.strip()) for cell in cells[:500]) if match]
    two = [match for match in parts if match[3] is None]
    minutes_first = in_minutes or any(int(match[1]) > 23 for match in two)
    if two and not minutes_first and int(two[0][1]) == 0 == int(two[0][2]):
        counted = [int(match[1]) * 60 + int(match[2]) for match in two]
        steps = sorted(b - a for a, b in pairwise(counted))
        minutes_first = bool(steps) and steps[len(steps) // 2] >= 30
    note = ""
    if two:
        meaning = "minutes and seconds" if minutes_first else "hours and minutes"
        note = f"Times such as {two[-1][0]} were read as {meaning}."
    day = 0.0
    previous = -math.inf

    def read(cell: str) -> float:
        nonlocal day, previous
        match = _CLOCK.match(cell.strip())
        if not match:
            raise UnitError(f"“{cell.strip()[:30]}” is not a time such as 08:30:00.")
        big, small = float(match[1]), float(match[2])
        if match[3] is not None:
            time = big * 3600.0 + small * 60.0 + float(match[3].replace(",", "."))
        elif minutes_first:
            time = big * 60.0 + small
        else:
            time = big * 3600.0 + small * 60.0
        if time + day < previous - DAY / 2.0:
            day += DAY  # past midnight
        previous = time + day
        return previous

    return read, note
