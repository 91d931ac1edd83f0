"""A problem: a template as data, and a seed that gives it its numbers.

A template is a question whose texts and entries hold ``$names``. The seed
draws a text for each name, and what comes out is a question like those of the
lessons: asked of a card, marked alike, with the card's working as solution.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

from calculators.teaching.draw import Draw, draw_all, shuffled
from calculators.teaching.question import Asked, Order, Question, filled

KINDS = {
    "number": "Work out a number",
    "curve": "Read a curve",
    "order": "Put in order",
    "log": "Judge a decay log",
    "fault": "Find the fault",
    "choice": "Choose",
}
LEVELS = {1: "first look", 2: "on the job", 3: "think it through"}


@dataclass(frozen=True, kw_only=True)
class Template:
    """A kind of problem: what is drawn, what is told, what is asked.

    ``take`` asks to order only so many of an order's items, drawn by the seed.
    ``figure`` names the card and the entries whose chart is to be read, and
    ``line`` which of its series is shown.
    """

    level: int
    kind: str
    situation: str
    question: Question
    draws: Mapping[str, Draw] = field(default_factory=dict)
    take: int = 0
    figure: Asked | None = None
    line: str = "reading"

    @property
    def name(self) -> str:
        """The name that links, files and records know it by."""
        return self.question.name

    @property
    def objective(self) -> str:
        """The name of the objective it checks."""
        return self.question.objective

    def __post_init__(self) -> None:
        """Refuse a template that no page could show."""
        if self.kind not in KINDS or self.level not in LEVELS:
            raise TypeError(f"{self.name}: kind {self.kind!r}, level {self.level!r}")


@dataclass(frozen=True, kw_only=True)
class Problem:
    """A template with its numbers in."""

    template: Template
    seed: str
    situation: str
    question: Question
    drawn: Mapping[str, str]
    figure: Asked | None = None

    @cached_property
    def signature(self) -> tuple[object, ...]:
        """What tells two problems of a template apart: all that was drawn but the place."""
        told = tuple(sorted((k, v) for k, v in self.drawn.items() if k != "place"))
        keys = tuple(i.key for i in self.question.items) if isinstance(self.question, Order) else ()
        return self.template.name, told, keys


def make(template: Template, seed: object) -> Problem:
    """Make the problem that a seed gives.

    Parameters
    ----------
    template : Template
        The kind of problem.
    seed : object
        Any number or short text; its text is the seed.

    Returns
    -------
    Problem
        The same everywhere: in the shell, in a browser, on paper.
    """
    path = (template.name, str(seed))
    drawn = draw_all(template.draws, *path)
    question: Question = filled(template.question, drawn)
    if template.take and isinstance(question, Order):
        keys = shuffled(tuple(item.key for item in question.items), *path, "take")
        kept = set(keys[: template.take])
        items = tuple(item for item in question.items if item.key in kept)
        question = replace(question, items=items)
    # The name carries the seed, so that options are shuffled anew for every problem.
    question = replace(question, name=f"{template.name}-{seed}")
    return Problem(
        template=template,
        seed=str(seed),
        situation=filled(template.situation, drawn),
        question=question,
        drawn=drawn,
        figure=filled(template.figure, drawn),
    )
