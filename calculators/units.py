"""Units at the boundary: one pint registry behind a closed list of names.

A reader's text never reaches pint, which reads "micron" as a length and
"cfm" as a centifermi. :mod:`calculators.unit_list` says what each accepted
name means; pint does the conversion.
"""

import math
import re
from fractions import Fraction
from functools import cache
from typing import Any

from calculators.errors import CalculatorError, UnitError
from calculators.unit_list import SI, UNIT_LIST, Unit

try:  # what pint says of every name, asked once when the browser's archive is made
    from calculators.unit_lines import LINES  # type: ignore[import-not-found,unused-ignore]
except ImportError:
    LINES = {}

UNITS = {unit.name: unit for unit in UNIT_LIST}
_BY_ALIAS = {alias: unit for unit in UNIT_LIST for alias in (unit.name, *unit.aliases)}
_BY_LOWER = {
    alias.lower(): unit
    for alias, unit in _BY_ALIAS.items()
    # Case carries meaning here: mPa and MPa differ; so such names must match as written.
    if alias.lower() not in {"mpa", "k difference"}
}
_AMBIGUOUS = {
    "psi": "Say psia for absolute pressure or psig for a gauge reading.",
    "mpa": "Write MPa for megapascal.",
}

_NUMBER = re.compile(
    r"""\s*(?P<number>
        [+\-−–]?
        (?: \d{1,3}(?:[, \u2009\u202f]\d{3})+(?:\.\d*)? | \d+(?:\.\d*)? | \.\d+ )
        (?: \s*(?:[eE]|[x×·*]\s*10\^?)\s*[+\-−]?\d+ | \s*[x×·*]\s*10⁻?[⁰¹²³⁴-⁹]+ )?
        | [+\-−–]?\s*(?:nan|inf(?:inity)?)\b
        )
        \s*(?P<unit>[^\W\d_].*?|[°%"'].*?)?\s*$""",
    re.VERBOSE | re.IGNORECASE,
)
_RAISED = str.maketrans("⁻⁰¹²³⁴⁵⁶⁷⁸⁹", "-0123456789")
_FRACTION = re.compile(
    r"""\s*(?P<whole>\d+[\s-])?\s*(?P<part>\d+/\d+)\s*(?P<unit>[^\W\d_].*?|["'].*?)?\s*$"""
)


def find(name: str) -> Unit:
    """Look up an accepted unit by its name or an alias.

    Parameters
    ----------
    name : str
        The unit as a person types it.

    Returns
    -------
    Unit
        The accepted unit.

    Raises
    ------
    UnitError
        If the name is not on the list, with what to write instead where
        the name is one that people confuse.
    """
    name = " ".join(name.split())
    unit = _BY_ALIAS.get(name) or _BY_LOWER.get(name.lower())
    if unit is None:
        raise UnitError(
            _AMBIGUOUS.get(name.lower()) or f"The unit “{name[:30]}” is not known here."
        )
    return unit


@cache
def _registry() -> Any:
    """Make the one pint registry, when a conversion first needs it."""
    import pint

    return pint.UnitRegistry()


@cache
def _line(name: str) -> tuple[float, float]:
    """Slope and offset that take a number in this unit to SI, asked of pint."""
    if name in LINES:
        return LINES[name]
    unit = UNITS[name]
    base = UNITS[SI[unit.dimension]].pint
    quantity = _registry().Quantity
    if unit.dimension == "temperature":
        step = unit.pint.replace("deg", "delta_deg")
        offset = quantity(0.0, unit.pint).to(base).magnitude
        return quantity(1.0, step).to(base).magnitude, offset
    return (1.0 * _registry().parse_expression(unit.pint)).to(base).magnitude, 0.0


def to_si(number: float, unit: str, *, barometer: float | None = None) -> float:
    """Convert a number in an accepted unit to SI.

    Parameters
    ----------
    number : float
        The number, in ``unit``.
    unit : str
        Name of an accepted unit.
    barometer : float, optional
        Pressure of the open air [Pa]; needed by gauge and vacuum readings.

    Returns
    -------
    float
        The value in the SI unit of its dimension; gauge readings come back
        as absolute pressure.

    Raises
    ------
    UnitError
        If a gauge or vacuum reading comes without a barometer.
    """
    slope, offset = _line(unit)
    gauge = UNITS[unit].gauge
    if not gauge:
        return number * slope + offset
    if barometer is None:
        raise UnitError(
            f"{unit} is measured from the barometer: enter an absolute pressure here, "
            "or convert the reading first."
        )
    return barometer + gauge * number * slope


def from_si(value: float, unit: str, *, barometer: float | None = None) -> float:
    """Convert an SI value to a number in an accepted unit; see :func:`to_si`."""
    slope, offset = _line(unit)
    gauge = UNITS[unit].gauge
    if not gauge:
        return (value - offset) / slope
    if barometer is None:
        raise UnitError(f"{unit} is measured from the barometer.")
    return gauge * (value - barometer) / slope


def read(text: str, *, bare: str) -> tuple[float, str, str]:
    """Read "500 micron", "1,500", "3/8 in" or "-10 °F" as a number and a unit.

    Parameters
    ----------
    text : str
        What a person typed.
    bare : str
        Name of the unit that a number on its own is taken in.

    Returns
    -------
    tuple
        The number, the name of its unit, and the number as it was typed.

    Raises
    ------
    CalculatorError
        If there is no number to read, or it is not finite.
    UnitError
        If the unit is not on the list.
    """
    shown = text.strip()[:40]
    match = _FRACTION.match(text)
    if match:
        whole = (match["whole"] or "").strip(" -")
        try:
            number = float((int(whole) if whole else 0) + Fraction(match["part"]))
        except ZeroDivisionError:
            raise CalculatorError(
                f"“{shown}” divides by zero: type a number such as 3/8."
            ) from None
        typed = f"{match['whole'] or ''}{match['part']}".strip()
    else:
        match = _NUMBER.match(text)
        if not match:
            raise CalculatorError(f"“{shown}” is not a number: type one such as 500 or 0.5.")
        typed = match["number"].strip()
        plain = re.sub(r"[, \u2009\u202f]", "", typed).replace("−", "-").replace("–", "-")
        plain = plain.translate(_RAISED)
        number = float(re.sub(r"[x×·*]10\^?", "e", plain))
    if not math.isfinite(number):
        raise CalculatorError(f"“{shown}” is not a finite number: type one such as 500 or 0.5.")
    unit = find(match["unit"]).name if match["unit"] else bare
    return number, unit, typed
