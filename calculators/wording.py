"""Numbers set as numbers, and templates filled with them.

The one place that turns an SI number into text: digits, thin details such as
the true minus sign, the unit, and the reader's system (US or SI).
"""

import math
import string
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from calculators import units
from calculators.card import Line, Text

_SUPERSCRIPT = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")
_ON_SCREEN = {"Δ°F": "°F", "Δ°C": "°C", "K difference": "K", "1": ""}
_DURATION = "duration"  # a time in whichever unit reads best


@dataclass(frozen=True)
class Entered:
    """A number as a person typed it, and what it means in SI."""

    text: str
    unit: str
    si: float

    def __str__(self) -> str:
        """Show the entry with its unit, as typed."""
        return with_unit(self.text, self.unit)


def number(value: float, *, figures: int = 4, decimals: int | None = None) -> str:
    """Set a number: significant figures or fixed decimals, commas, a true minus.

    Whole digits are never rounded away: 101325 stays 101,325 at 4 figures.
    Very large and very small numbers are set as powers of ten.
    """
    if not math.isfinite(value):
        raise ValueError("a number on its way to a reader is not finite")
    if decimals is not None:
        text = f"{value:,.{decimals}f}"
        if float(text.replace(",", "")) == 0.0:
            text = text.lstrip("-")
    elif value == 0.0:
        text = "0"
    elif not 1e-3 <= abs(value) < 1e7:
        mantissa, exponent = f"{value:.{max(figures, 1) - 1}e}".split("e")
        if "." in mantissa:
            mantissa = mantissa.rstrip("0").rstrip(".")
        power = f"10{str(int(exponent)).translate(_SUPERSCRIPT)}"
        text = power if mantissa == "1" else f"{mantissa} × {power}"
    else:
        places = max(0, figures - 1 - math.floor(math.log10(abs(value))))
        text = f"{value:,.{places}f}"
        if "." in text:
            text = text.rstrip("0").rstrip(".")
    return text.replace("-", "−")


def with_unit(text: str, unit: str) -> str:
    """Put a number and its unit together as they stand on screen."""
    sign = _ON_SCREEN.get(unit, unit)
    if not sign:
        return text
    return f"{text}{sign}" if sign == "%" else f"{text} {sign}"


def duration(seconds: float) -> str:
    """Say a length of time in the unit that reads best."""
    for limit, size, name in ((90, 1, "s"), (120 * 60, 60, "min"), (48 * 3600, 3600, "h")):
        if abs(seconds) < limit:
            return f"{number(seconds / size, figures=3 if size > 1 else 2)} {name}"
    if abs(seconds) < 2 * 365.25 * 86400:
        return f"{number(seconds / 86400, figures=3)} days"
    return f"{number(seconds / units.to_si(1.0, 'yr'), figures=2)} years"


def quantity(value: float, unit: str, *, figures: int = 4, decimals: int | None = None) -> str:
    """Show an SI value in an accepted unit, or as a "duration"."""
    if unit == _DURATION:
        return duration(value)
    shown = units.from_si(value, unit)
    return with_unit(number(shown, figures=figures, decimals=decimals), unit)


def pick(pair: str, system: str) -> str:
    """Choose from "us|si" by the reader's system."""
    us, _, si = pair.partition("|")
    return si if si and system == "si" else us


class Scope(string.Formatter):
    """Fills templates from inputs, outputs and values, in the reader's system.

    ``shown`` maps an output's name to how it is shown when the template does
    not say: (us unit, si unit, figures, decimals).
    """

    def __init__(
        self,
        values: Mapping[str, object],
        shown: Mapping[str, tuple[str, str, int, int | None]],
        system: str,
    ) -> None:
        self._values = values
        self._shown = shown
        self._system = system
        self._own: Mapping[str, object] = {}

    def fill(self, text: Text, own: Mapping[str, object] | None = None) -> str:
        """Fill one template; its own values win over those of the answer."""
        line = text if isinstance(text, Line) else Line(text)
        self._own = {**(own or {}), **line.values}
        return self.format(line.text)

    def get_value(self, key: int | str, args: object, kwargs: object) -> object:
        """Find a placeholder's value and, for an output, how it is shown."""
        key = str(key)
        if key in self._own:
            return self._own[key]
        value = self._values[key]
        if key in self._shown and isinstance(value, (int, float)):
            return _Output(float(value), self._shown[key])
        return value

    def format_field(self, value: object, spec: str) -> str:
        """Show a value by its placeholder's "unit|unit;figures"."""
        unit, _, digits = spec.partition(";")
        settings: dict[str, Any] = {}
        if digits.startswith("."):
            settings["decimals"] = int(digits[1:])
        elif digits:
            settings["figures"] = int(digits)
        if isinstance(value, Entered):
            return quantity(value.si, pick(unit, self._system), **settings) if unit else str(value)
        if isinstance(value, _Output):
            if unit:
                return quantity(value.si, pick(unit, self._system), **settings)
            us, si, figures, decimals = value.shown
            settings = settings or {"figures": figures, "decimals": decimals}
            return quantity(value.si, si if self._system == "si" else us, **settings)
        if isinstance(value, str):
            return value
        if isinstance(value, (int, float)) and unit:
            return quantity(float(value), pick(unit, self._system), **settings)
        raise ValueError(f"no unit says how to show {value!r}")


@dataclass(frozen=True)
class _Output:
    si: float
    shown: tuple[str, str, int, int | None]
