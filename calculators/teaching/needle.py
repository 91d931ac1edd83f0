"""Reading a needle on a logarithmic scale: each needle is decided by a number."""

import math
from dataclasses import dataclass

from calculators import units, wording
from calculators.errors import CalculatorError
from calculators.teaching.draw import pick

# A fair reading: within two degrees of the arc, about the width of the needle and its shadow.
FAIR = 0.03  # decades, about 7 %
UNITS = {"us": "micron", "si": "Pa"}
SCALES = {"us": ((10.0, 3), (1.0, 3), (100.0, 3)), "si": ((1.0, 3), (0.1, 3), (10.0, 3))}


@dataclass(frozen=True)
class Dial:
    """A scale from ``first`` over so many decades, in ``unit``."""

    first: float
    decades: int
    unit: str

    def share(self, value: float) -> float:
        """Where a value stands, from 0 at the first mark to 1 at the last."""
        return math.log10(value / self.first) / self.decades

    @property
    def last(self) -> float:
        """The value of the last mark."""
        return self.first * 10.0**self.decades


@dataclass(frozen=True)
class Needle:
    """A dial and where its needle stands, in the dial's unit."""

    dial: Dial
    value: float

    @property
    def decade(self) -> float:
        """The long mark below the needle."""
        return 10.0 ** math.floor(math.log10(self.value) + 1e-9)


def needle_of(number: int, system: str) -> Needle:
    """The needle with a number.

    Parameters
    ----------
    number : int
        Which needle.
    system : str
        "us" for micron, "si" for Pa.

    Returns
    -------
    Needle
        A dial, and a value of two figures clear of its ends.
    """
    scales = SCALES[system]
    first, decades = scales[pick(len(scales), "needle", number, "scale", system)]
    dial = Dial(first, decades, UNITS[system])
    place = 0.04 + 0.92 * pick(1001, "needle", number, "place", system) / 1000.0
    value = float(f"{first * 10.0 ** (place * decades):.1e}")
    return Needle(dial, value)


@dataclass(frozen=True, kw_only=True)
class NeedleMark:
    """What a reading or a choice earned, in words."""

    correct: bool
    says: str
    road: str = ""


def mark_reading(number: int, typed: str, system: str) -> NeedleMark:
    """Mark a reading of a needle.

    Parameters
    ----------
    number : int
        Which needle.
    typed : str
        A pressure as typed; a bare number is taken in the dial's unit.
    system : str
        "us" or "si".

    Returns
    -------
    NeedleMark
        Right within 0.03 of a decade; a usual misreading is named.

    Raises
    ------
    CalculatorError
        If what was typed is not a pressure above zero.
    """
    needle = needle_of(number, system)
    unit = needle.dial.unit
    given = _pressure(typed, unit)
    stands = _say(needle.value, unit)
    if abs(math.log10(given / needle.value)) <= FAIR:
        return NeedleMark(correct=True, says=f"Right: it stands at {stands}.")
    low = needle.decade
    high = 10.0 * low
    along = math.log10(needle.value / low)
    middle = _say(low * math.sqrt(10.0), unit)
    roads = {
        "ruler": (
            low * (1.0 + 9.0 * along),
            f"You shared the way from {_say(low, unit)} to {_say(high, unit)} evenly, as on a "
            f"ruler. Here halfway is {middle}: read it by the marks. It stands at {stands}.",
        ),
        "one mark up": (
            needle.value + low,
            f"One mark too far. Past {_say(low, unit)} the first short mark is "
            f"{_say(2.0 * low, unit)}. It stands at {stands}.",
        ),
        "one mark down": (
            needle.value - low,
            f"One mark short. Past {_say(low, unit)} the first short mark is "
            f"{_say(2.0 * low, unit)}. It stands at {stands}.",
        ),
    }
    near = {
        name: abs(math.log10(given / value)) for name, (value, _) in roads.items() if value > 0.0
    }
    best = min(near, key=lambda name: near[name])
    if near[best] <= FAIR:
        return NeedleMark(correct=False, says=roads[best][1], road=best)
    tens = math.log10(given / needle.value)
    if round(tens) and abs(tens - round(tens)) <= FAIR:
        says = (
            f"Right figure, wrong decade: the needle is between {_say(low, unit)} and "
            f"{_say(high, unit)}. It stands at {stands}."
        )
        return NeedleMark(correct=False, says=says, road="decade")
    way = "high" if given > needle.value else "low"
    return NeedleMark(correct=False, says=f"Too {way}. It stands at {stands}.")


def _pressure(typed: str, bare: str) -> float:
    """A typed pressure in the unit ``bare``."""
    text = typed.strip()
    if not text:
        raise CalculatorError(f"Type where the needle stands, in {bare}.", input="reading")
    number, unit, _ = units.read(text[:200], bare=bare)
    if units.UNITS[unit].dimension != units.UNITS[bare].dimension or units.UNITS[unit].gauge:
        raise CalculatorError(
            f"{unit} does not fit here: give an absolute pressure, such as in {bare}.",
            input="reading",
        )
    value = units.from_si(units.to_si(number, unit), bare)
    if not 0.0 < value < 1e12:
        raise CalculatorError("Type a reading above zero.", input="reading")
    return value


def _say(value: float, unit: str) -> str:
    return wording.with_unit(wording.number(value, figures=2), unit)
