"""What a learner is asked, as frozen data on top of cards.

No right answer is typed where a calculator can give it: a question names a
card, an output and what to enter, and :mod:`calculators.teaching.marking`
asks the card. Texts are templates of that answer, as in :mod:`calculators.card`,
so the numbers a learner reads are the ones that were entered.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, fields, is_dataclass, replace
from enum import Enum
from string import Template as Text
from typing import Any

from calculators.evaluate import Evaluation


@dataclass(frozen=True)
class Asked:
    """One output of one card for given entries: where a right answer comes from."""

    card: str
    output: str
    entries: Mapping[str, Any] = field(default_factory=dict)


Method = Callable[[Evaluation, str], float | None]


@dataclass(frozen=True, kw_only=True)
class WrongRoad:
    """A usual mistake: what it computes, and what the learner who made it is told.

    ``method`` takes the answered card and the name of the output that was
    asked, and gives the value [SI] this mistake leads to, or ``None`` where
    these numbers do not allow it.
    """

    name: str
    method: Method
    says: str


@dataclass(frozen=True, kw_only=True)
class Numeric:
    """Asks for a number. It is right within the tolerance, in any unit.

    ``absolute`` [SI, a difference] holds where it is given, such as for
    temperatures; ``relative`` holds otherwise. ``in_unit`` is for a question
    about the unit itself: the answer has to come in that one.
    """

    name: str
    objective: str
    asks: str
    asked: Asked
    because: str
    in_unit: str = ""
    relative: float = 0.02
    absolute: float | None = None
    wrong_roads: tuple[WrongRoad, ...] = ()
    hint: str = ""


class Rank(Enum):
    """Which option is right, by the value its own card gives."""

    LARGEST = "largest"
    SMALLEST = "smallest"


@dataclass(frozen=True, kw_only=True)
class Option:
    """One answer to choose; ``says`` is what the learner who chooses it is told."""

    key: str
    text: str
    says: str
    asked: Asked | None = None


@dataclass(frozen=True, kw_only=True)
class Choice:
    """Asks to pick one option.

    ``right`` is an option's key, or a card's word output whose code is the
    key, or the rank among the options' own values.
    """

    name: str
    objective: str
    asks: str
    options: tuple[Option, ...]
    right: str | Asked | Rank
    hint: str = ""


@dataclass(frozen=True)
class Item:
    """One thing to put in order, with the value that decides where there is one."""

    key: str
    text: str
    asked: Asked | None = None


@dataclass(frozen=True, kw_only=True)
class Order:
    """Asks to put items in order: by their values, lowest first, or else as listed here."""

    name: str
    objective: str
    asks: str
    items: tuple[Item, ...]
    because: str
    hint: str = ""


Question = Numeric | Choice | Order


def filled(thing: Any, drawn: Mapping[str, str]) -> Any:
    """Put what was drawn in the place of each ``$name``, wherever a text stands in the data."""
    if isinstance(thing, str):
        return Text(thing).substitute(drawn) if "$" in thing else thing
    if isinstance(thing, (tuple, list)):
        return type(thing)(filled(each, drawn) for each in thing)
    if isinstance(thing, Mapping):
        return {name: filled(each, drawn) for name, each in thing.items()}
    if is_dataclass(thing) and not isinstance(thing, type):
        named = {each.name: getattr(thing, each.name) for each in fields(thing)}
        return replace(thing, **{name: filled(each, drawn) for name, each in named.items()})
    return thing
