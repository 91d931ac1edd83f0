"""The usual wrong roads: methods that a learner's mistake follows, each by its name.

Each function here makes a method for :class:`calculators.teaching.question.WrongRoad`:
given the answered card and the output that was asked, it computes where the
mistake leads [SI], or gives ``None`` where these numbers do not allow it.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from calculators import units
from calculators.errors import CalculatorError
from calculators.evaluate import Evaluation
from calculators.physics.constants import (
    MOLAR_GAS_CONSTANT,
    WATER_MOLAR_MASS,
    WATER_TRIPLE_PRESSURE,
    WATER_TRIPLE_TEMPERATURE,
)
from calculators.teaching.asking import answered
from calculators.teaching.question import Asked, Method
from calculators.wording import Entered

HEAT_OF_BOILING_AT_TRIPLE = 2.5009e6  # J/kg, IAPWS-95 at 273.16 K


def times(factor: float) -> Method:
    """The right number, off by a factor: minutes for hours, a radius for a diameter."""

    def method(evaluation: Evaluation, output: str) -> float | None:
        value = evaluation.answer.outputs[output]
        return value * factor if isinstance(value, (int, float)) else None

    return method


def other_output(name: str) -> Method:
    """The right card, read at the wrong line."""

    def method(evaluation: Evaluation, output: str) -> float | None:
        value = evaluation.answer.outputs[name]
        return value if isinstance(value, (int, float)) else None

    return method


@dataclass(frozen=True)
class Instead:
    """The right card, with these entries instead; data, so that a seed can draw them."""

    entries: Mapping[str, Any]

    def __call__(self, evaluation: Evaluation, output: str) -> float | None:
        """Ask the card again."""
        return _again(evaluation, output, self.entries)


def other_times(name: str, factor: float) -> Method:
    """Another line of the card, times a plain factor."""

    def method(evaluation: Evaluation, output: str) -> float | None:
        value = evaluation.answer.outputs[name]
        return value * factor if isinstance(value, (int, float)) else None

    return method


def entered(**entries: Any) -> Method:
    """The right card, with these entries instead."""
    return Instead(entries)


def unit_taken_as(name: str, unit: str) -> Method:
    """The number of one input, read as if it were in another unit."""

    def method(evaluation: Evaluation, output: str) -> float | None:
        value = evaluation.entered[name]
        if not isinstance(value, Entered):
            return None
        return _again(evaluation, output, {name: f"{value.text} {unit}"})

    return method


@dataclass(frozen=True)
class Scaled:
    """The answer at another entry, scaled in step with the entry."""

    name: str
    text: str

    def __call__(self, evaluation: Evaluation, output: str) -> float | None:
        """Ask at the other entry and scale what comes back."""
        value = evaluation.entered[self.name]
        there = _again(evaluation, output, {self.name: self.text})
        if not isinstance(value, Entered) or there is None:
            return None
        number, unit, _ = units.read(self.text, bare=value.unit)
        return there * value.si / units.to_si(number, unit)


def scaled_from(name: str, text: str) -> Method:
    """The answer at another entry, scaled in step with the entry."""
    return Scaled(name, text)


def divided_by(name: str, factor: str) -> Method:
    """An input divided by a factor that the card gives, where it should be multiplied."""

    def method(evaluation: Evaluation, output: str) -> float | None:
        value, by = evaluation.entered[name], evaluation.answer.outputs[factor]
        if not isinstance(value, Entered) or not isinstance(by, (int, float)):
            return None
        return value.si / by

    return method


def scaled_by(upper: str, lower: str) -> Method:
    """The answer, had one output been used where another belongs."""

    def method(evaluation: Evaluation, output: str) -> float | None:
        outputs = evaluation.answer.outputs
        value, top, bottom = outputs[output], outputs[upper], outputs[lower]
        if not all(isinstance(each, (int, float)) for each in (value, top, bottom)):
            return None
        return float(value) * float(top) / float(bottom)  # type: ignore[arg-type]

    return method


def sign_left_out(unit: str) -> Method:
    """The size of the answer in this unit, without its sign."""

    def method(evaluation: Evaluation, output: str) -> float | None:
        value = evaluation.answer.outputs[output]
        if not isinstance(value, (int, float)):
            return None
        return units.to_si(-units.from_si(value, unit), unit)

    return method


def input_itself(name: str) -> Method:
    """What was given, handed back as the answer."""

    def method(evaluation: Evaluation, output: str) -> float | None:
        value = evaluation.entered[name]
        return value.si if isinstance(value, Entered) else None

    return method


def number_kept(name: str) -> Method:
    """The number of an input, handed back in the unit of the answer."""

    def method(evaluation: Evaluation, output: str) -> float | None:
        value = evaluation.entered[name]
        if not isinstance(value, Entered):
            return None
        unit = next(out.us for out in evaluation.card.outputs if out.name == output)
        return units.to_si(units.read(value.text, bare=unit)[0], unit)

    return method


def boiling_curve_carried_on(evaluation: Evaluation, output: str) -> float | None:
    """The curve of liquid water, carried on below the triple point, where there is only ice."""
    pressure = evaluation.entered["pressure"].si
    if pressure >= WATER_TRIPLE_PRESSURE:
        return None
    per_kelvin = MOLAR_GAS_CONSTANT / (WATER_MOLAR_MASS * HEAT_OF_BOILING_AT_TRIPLE)
    fall = math.log(pressure / WATER_TRIPLE_PRESSURE)
    return 1.0 / (1.0 / WATER_TRIPLE_TEMPERATURE - per_kelvin * fall)


def _again(evaluation: Evaluation, output: str, entries: Mapping[str, Any]) -> float | None:
    """Ask the same card again with some entries changed."""
    typed = {name: _typed(entry) for name, entry in evaluation.entered.items()}
    asked = Asked(evaluation.card.slug, output, typed | dict(entries))
    try:
        value = answered(asked).answer.outputs[output]
    except CalculatorError:
        return None
    return value if isinstance(value, (int, float)) else None


def _typed(entry: Any) -> Any:
    """Turn what was entered back into what a person types."""
    if isinstance(entry, Entered):
        return f"{entry.text} {entry.unit}"
    if isinstance(entry, tuple):
        return [{name: _typed(cell) for name, cell in row.items()} for row in entry]
    return "" if entry is None else entry
