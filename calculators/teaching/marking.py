"""Marking: an answer as a person types it, against what the card gives.

A number may come in any unit of its kind. It is right within the question's
tolerance, or when it is the right answer rounded to the digits typed. A wrong
one that lies on a known wrong road is told which; any other is told as much
as can be said.
"""

import hashlib
import math
import re
from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal

from calculators import units, wording
from calculators.card import Output
from calculators.cards import BY_SLUG
from calculators.errors import CalculatorError
from calculators.evaluate import LONGEST_ENTRY, Evaluation
from calculators.teaching.asking import answered
from calculators.teaching.question import (
    Asked,
    Choice,
    Item,
    Numeric,
    Option,
    Order,
    Question,
    Rank,
)

NEAREST_TELLING = 3.0  # times too high or low, from where on it is worth saying how many


@dataclass(frozen=True, kw_only=True)
class Mark:
    """What an answer earned. ``correct`` is ``None`` where it could not be read.

    ``road`` names the wrong road that was recognized.
    """

    correct: bool | None
    message: str
    road: str = ""


def mark(question: Question, answer_text: str, *, system: str = "us") -> Mark:
    """Mark an answer.

    Parameters
    ----------
    question : Numeric, Choice or Order
        What was asked.
    answer_text : str
        A number with or without a unit; an option's key; or the keys of the
        items in order, with commas between.
    system : str
        "us" or "si": which unit a bare number and the message take.

    Returns
    -------
    Mark
        Right, wrong or not read, with a message of a sentence or two.
    """
    text = answer_text.strip()
    if isinstance(question, Numeric):
        return _mark_number(question, text, system)
    if isinstance(question, Choice):
        return _mark_choice(question, text, system)
    return _mark_order(question, text, system)


# --- numbers -----------------------------------------------------------------


def output_of(asked: Asked) -> Output:
    """The card's output that is asked."""
    return next(out for out in BY_SLUG[asked.card].outputs if out.name == asked.output)


def bare_unit(question: Numeric, system: str) -> str:
    """The unit a number on its own is taken in."""
    if question.in_unit:
        return question.in_unit
    out = output_of(question.asked)
    unit = out.si if system == "si" else out.us
    return "min" if unit == "duration" else unit


def right_number(question: Numeric) -> float:
    """The right answer [SI], asked of the card."""
    value = answered(question.asked).answer.outputs[question.asked.output]
    if not isinstance(value, (int, float)):
        raise TypeError(f"{question.name}: {question.asked.output} is {value!r}, not a number")
    return float(value)


def answer_text(question: Numeric, *, system: str = "us", unit: str = "") -> str:
    """The right answer in the reader's unit, and in the one they used where that differs."""
    evaluation, out = answered(question.asked, system=system), output_of(question.asked)
    if question.in_unit:
        return evaluation.say(f"{{{out.name}:{question.in_unit}}}")
    first = evaluation.say(f"{{{out.name}}}")
    if not unit or unit == bare_unit(question, system) or units.UNITS[unit].gauge:
        return first
    return f"{first}, or " + evaluation.say(f"{{{out.name}:{unit}}}")


def tolerance(question: Numeric) -> float:
    """How far from the right answer is still right [SI]."""
    if question.absolute is not None:
        return question.absolute
    return question.relative * abs(right_number(question))


def _mark_number(question: Numeric, text: str, system: str) -> Mark:
    bare = bare_unit(question, system)
    evaluation = answered(question.asked, system=system)
    try:
        number, unit, typed, given = _read(text, bare, evaluation)
        if question.in_unit and unit != bare:
            raise CalculatorError(f"Give it in {bare} this time, not in {unit}.")
    except CalculatorError as error:
        return Mark(correct=None, message=str(error))
    right, allowed = right_number(question), tolerance(question)
    miss = abs(given - right)
    answer = answer_text(question, system=system, unit=unit)
    if miss <= allowed:
        return Mark(correct=True, message=f"Right: {answer}. {evaluation.say(question.because)}")
    roads = [
        (road, where)
        for road in question.wrong_roads
        if (where := road.method(evaluation, question.asked.output)) is not None
    ]
    nearest = min((abs(given - where) for _, where in roads), default=math.inf)
    rounding = _rounding(typed, unit)
    if miss <= rounding and miss < nearest:
        said = f"Right, to the digits you gave: {answer}. {evaluation.say(question.because)}"
        return Mark(correct=True, message=said)
    for road, where in roads:
        around = max(allowed, rounding)
        if question.absolute is None:
            around = max(question.relative * abs(where), rounding)
        if abs(given - where) <= around and abs(given - where) == nearest:
            said = f"Not yet. {evaluation.say(road.says)}"
            return Mark(correct=False, message=said, road=road.name)
    said = _unknown_road(number, unit, given, right, allowed)
    hint = f" {evaluation.say(question.hint)}" if question.hint else ""
    return Mark(correct=False, message=said + hint)


def _read(text: str, bare: str, evaluation: Evaluation) -> tuple[float, str, str, float]:
    """Number, unit, the number as typed, and its value [SI]."""
    dimension = units.UNITS[bare].dimension
    if not text:
        such = "" if dimension == "ratio" else f" in {bare} or any other unit of {dimension}"
        raise CalculatorError(f"Type a number{such} first.")
    if len(text) > LONGEST_ENTRY:
        raise CalculatorError("That is too long for a number: type one such as 500 or 0.5.")
    if dimension == "ratio":
        text = re.sub(r"\s*(times|fold|x|×)\s*$", "", text)
    number, unit, typed = units.read(text, bare=bare)
    measured = units.UNITS[unit].dimension
    if measured != dimension:
        raise CalculatorError(
            f"{unit} measures {measured}: this asks for a {dimension}, in {bare} or any other unit "
            f"of {dimension}."
            if dimension != "ratio"
            else f"{unit} measures {measured}: this asks for a plain number or a percentage."
        )
    barometer = evaluation.entered.get("barometer")
    given = units.to_si(number, unit, barometer=barometer.si if barometer else None)
    return number, unit, typed, given


def _rounding(typed: str, unit: str) -> float:
    """Half the last digit typed [SI], when there are two digits or more that say something."""
    plain = re.sub(r"[, \u2009\u202f+]", "", typed).replace("−", "-").replace("–", "-")
    try:
        digits = Decimal(re.sub(r"[x×·*]10\^?", "e", plain))
    except ArithmeticError:  # a fraction such as 3/8 is not rounded
        return 0.0
    figures, exponent = digits.as_tuple().digits, digits.as_tuple().exponent
    if not isinstance(exponent, int):
        return 0.0
    if "." not in plain:  # the noughts of 4,600 only hold the place
        noughts = len(figures) - len("".join(map(str, figures)).rstrip("0"))
        figures, exponent = figures[: len(figures) - noughts], exponent + noughts
    if len(figures) < 2:
        return 0.0
    slope = units.to_si(1.0, unit, barometer=0.0) - units.to_si(0.0, unit, barometer=0.0)
    return 0.5000001 * abs(slope) * 10.0**exponent


def _unknown_road(number: float, unit: str, given: float, right: float, allowed: float) -> str:
    dimension = units.UNITS[unit].dimension
    for other in units.UNITS.values():
        if other.dimension != dimension or other.gauge or other.name == unit:
            continue
        if abs(units.to_si(number, other.name) - right) <= allowed:
            return f"That number is right in {other.name}, not in {unit}. Say the unit."
    if dimension != "temperature" and given * right < 0:
        return "The size may be right, but not the sign."
    if dimension != "temperature" and given * right > 0:
        ratio = given / right
        tens = round(math.log10(ratio))
        if tens and abs(ratio / 10.0**tens - 1.0) <= 0.02:
            return "The digits are right, but the decimal point is in the wrong place."
        if ratio > NEAREST_TELLING or ratio < 1.0 / NEAREST_TELLING:
            most = max(ratio, 1.0 / ratio)
            way = "high" if ratio > 1.0 else "low"
            about = wording.number(float(f"{most:.1g}"))
            return f"Not yet: that is about {about} times too {way}."
    return f"Not yet: that is too {'high' if given > right else 'low'}."


# --- choices and orders ------------------------------------------------------


def right_option(question: Choice) -> Option:
    """The option that is right, asked of a card where one decides."""
    if isinstance(question.right, Rank):
        best = max if question.right is Rank.LARGEST else min
        return best(question.options, key=lambda option: asked_value(option.asked))
    key = question.right
    if isinstance(key, Asked):
        key = str(answered(key).answer.outputs[key.output])
    return next(option for option in question.options if option.key == key)


def shown_options(question: Choice) -> list[Option]:
    """The options as the learner sees them: shuffled, alike every time."""
    by_key = {option.key: option for option in question.options}
    return [by_key[key] for key in _shuffled(question.name, by_key)]


def _shuffled(salt: str, keys: Iterable[str]) -> list[str]:
    return sorted(keys, key=lambda key: hashlib.sha256(f"{salt} {key}".encode()).digest())


def option_text(question: Choice, option: Option, text: str, *, system: str = "us") -> str:
    """Fill a text of an option from its own card, or from the question's."""
    if "{" not in text:
        return text
    asked = option.asked or (question.right if isinstance(question.right, Asked) else None)
    return answered(asked, system=system).say(text) if asked else text


def item_text(item: Item, *, system: str = "us") -> str:
    """A line to be put in order, with its numbers in."""
    return answered(item.asked, system=system).say(item.text) if item.asked else item.text


def asked_value(asked: Asked | None) -> float:
    """The number [SI] by which an option or an item is ranked."""
    if asked is None:
        raise TypeError("to be ranked, each one needs a card that gives its value")
    return float(answered(asked).answer.outputs[asked.output])  # type: ignore[arg-type]


def _mark_choice(question: Choice, text: str, system: str) -> Mark:
    chosen = next((option for option in question.options if option.key == text), None)
    if chosen is None:
        return Mark(correct=None, message="Pick one of the answers first.")
    correct = chosen is right_option(question)
    said = option_text(question, chosen, chosen.says, system=system)
    return Mark(correct=correct, message=f"{'Right' if correct else 'Not that'}. {said}")


def right_order(question: Order) -> tuple[str, ...]:
    """The keys in the right order."""
    if all(item.asked for item in question.items):
        ranked = sorted(question.items, key=lambda item: asked_value(item.asked))
        return tuple(item.key for item in ranked)
    return tuple(item.key for item in question.items)


def shown_order(question: Order) -> tuple[str, ...]:
    """The keys as the learner first sees them: shuffled alike every time, and not yet right."""
    right = right_order(question)
    shuffled = tuple(_shuffled(question.name, right))
    return shuffled[1:] + shuffled[:1] if shuffled == right else shuffled


def _mark_order(question: Order, text: str, system: str) -> Mark:
    keys = tuple(key.strip() for key in text.split(",") if key.strip())
    right = right_order(question)
    if sorted(keys) != sorted(right):
        return Mark(correct=None, message="Put every line in its place first.")
    if keys == right:
        return Mark(correct=True, message=f"Right. {question.because}")
    good = next(n for n, (key, want) in enumerate(zip(keys, right, strict=True)) if key != want)
    if good == 0:
        said = "Not yet: another line comes first."
    elif good == 1:
        said = "Not yet: the first line is right, the next is not."
    else:
        said = (
            f"Not yet: the first {_COUNT[min(good, len(_COUNT) - 1)]} are right, the next is not."
        )
    return Mark(correct=False, message=f"{said} {question.hint}".strip())


_COUNT = ("none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine")
