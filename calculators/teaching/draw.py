"""Numbers and words drawn by a seed, the same on every machine and in every version.

The chance is our own: SHA-256 over the seed, the template and the name of the
draw. So one draw never moves another, and nothing hangs on how a library's
generator is made. All drawn numbers are counted in whole steps, such as a
person reads off a gauge or a tape, and come as text.
"""

import hashlib
import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from string import Template as Text
from typing import Any

from calculators.teaching.question import filled

Pick = Callable[[int], int]

# Two figures, about evenly spread over a decade.
ROUND = (10, 12, 14, 16, 18, 20, 22, 25, 28, 32, 36, 40, 45, 50, 56, 63, 70, 80, 90)


def pick(count: int, *path: object) -> int:
    """A whole number from 0 to ``count`` - 1, decided by the path alone.

    The path is any words and numbers; what is left of 2⁶⁴ divided by
    ``count`` favors the low ones by less than one part in 10¹⁵.
    """
    digest = hashlib.sha256("/".join(map(str, path)).encode()).digest()
    return int.from_bytes(digest[:8], "big") % count


def shuffled(keys: tuple[str, ...], *path: object) -> tuple[str, ...]:
    """The keys in an order decided by the path alone."""
    return tuple(
        sorted(
            keys, key=lambda key: hashlib.sha256("/".join(map(str, (*path, key))).encode()).digest()
        )
    )


@dataclass(frozen=True)
class Between:
    """A number from ``low`` to ``high`` in whole steps."""

    low: str
    high: str
    step: str

    def draw(self, pick: Pick, drawn: Mapping[str, str]) -> str:
        """Draw the number as text."""
        low, high, step = Decimal(self.low), Decimal(self.high), Decimal(self.step)
        return as_typed(low + step * pick(int((high - low) / step) + 1))


@dataclass(frozen=True)
class Round:
    """A round number of two figures from ``low`` to ``high``, even over the decades."""

    low: str
    high: str

    def draw(self, pick: Pick, drawn: Mapping[str, str]) -> str:
        """Draw the number as text."""
        low, high = Decimal(self.low), Decimal(self.high)
        first, last = math.floor(low.log10()) - 1, math.floor(high.log10())
        places = range(first, last + 1)
        all_of_them = [Decimal(m).scaleb(place) for place in places for m in ROUND]
        among = [each for each in all_of_them if low <= each <= high]
        return as_typed(among[pick(len(among))])


@dataclass(frozen=True)
class OneOf:
    """One of these texts."""

    texts: tuple[str, ...]

    def draw(self, pick: Pick, drawn: Mapping[str, str]) -> str:
        """Draw one."""
        return self.texts[pick(len(self.texts))]


def one_of(*texts: str) -> OneOf:
    """One of these texts."""
    return OneOf(texts)


@dataclass(frozen=True)
class Sum:
    """Numbers drawn before, or plain ones, added up; a leading minus takes away."""

    parts: tuple[str, ...]

    def draw(self, pick: Pick, drawn: Mapping[str, str]) -> str:
        """Add them up."""
        total = Decimal(0)
        for part in self.parts:
            sign, name = (-1, part[1:]) if part.startswith("-") else (1, part)
            total += sign * number(drawn.get(name, name))
        return as_typed(total)


def total_of(*parts: str) -> Sum:
    """Numbers drawn before, or plain ones, added up."""
    return Sum(parts)


@dataclass(frozen=True)
class Times:
    """A number drawn before, times a plain one."""

    name: str
    factor: str

    def draw(self, pick: Pick, drawn: Mapping[str, str]) -> str:
        """Multiply."""
        return as_typed(number(drawn[self.name]) * Decimal(self.factor))


@dataclass(frozen=True)
class Case:
    """One of several situations: each names several texts or draws at once."""

    cases: tuple[Mapping[str, Any], ...]

    def draw(self, pick: Pick, drawn: Mapping[str, str]) -> Mapping[str, Any]:
        """Draw one; what it holds is drawn next."""
        return self.cases[pick(len(self.cases))]


def case(*cases: Mapping[str, Any]) -> Case:
    """One of several situations."""
    return Case(cases)


@dataclass(frozen=True)
class Log:
    """Readings of a decay test: minutes and micron, as a gauge with whole steps shows them.

    ``start`` + ``slope`` · t + ``height`` · (1 - exp(-t / ``bend``)), each the
    name of a number drawn before or a plain one; micron and minutes.
    """

    every: str
    count: str
    start: str
    slope: str = "0"
    height: str = "0"
    bend: str = "1"

    def draw(self, pick: Pick, drawn: Mapping[str, str]) -> str:
        """Write the log, one reading on a line."""
        names = (self.every, self.start, self.slope, self.height, self.bend, self.count)
        values = [float(number(drawn.get(name, name))) for name in names]
        every, start, slope, height, bend, count = values
        lines = []
        for index in range(int(count)):
            time = index * every
            pressure = start + slope * time + height * (1.0 - math.exp(-time / bend))
            lines.append(f"{time:g} {pressure:.0f}")
        return "\n".join(lines)


Draw = Between | Round | OneOf | Sum | Times | Case | Log | str


def draw_all(draws: Mapping[str, Draw], *path: object) -> dict[str, str]:
    """Draw every name in turn; a text may use what was drawn before it as ``$name``."""
    drawn: dict[str, str] = {}
    waiting = list(draws.items())
    while waiting:
        name, draw = waiting.pop(0)
        if isinstance(draw, str):
            drawn[name] = filled(draw, drawn)
            continue
        result = draw.draw(lambda count, name=name: pick(count, *path, name), drawn)  # type: ignore[misc]
        if isinstance(result, str):
            drawn[name] = Text(result).substitute(drawn) if "$" in result else result
        else:
            waiting[:0] = result.items()
    return drawn


def number(text: str) -> Decimal:
    """A drawn number as a number again."""
    return Decimal(text.replace(",", "").replace("−", "-"))


def as_typed(value: Decimal) -> str:
    """A number as a person types it: 1,500 or 0.25 or -4."""
    text = f"{value:,f}"
    return text.rstrip("0").rstrip(".") if "." in text else text
