"""What a lesson is, as frozen data. Its prose stands in docs/learn/<slug>.md."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from calculators.card import Example
from calculators.teaching.question import Question


@dataclass(frozen=True)
class Objective:
    """Something a learner can do afterwards; problems and the syllabus key on its name."""

    name: str
    says: str


@dataclass(frozen=True)
class Worked:
    """A worked example of the lesson's own: a card and what to enter."""

    card: str
    title: str
    entries: Mapping[str, Any]
    shows: str = ""

    @property
    def example(self) -> Example:
        """The same as an example of the card."""
        return Example(title=self.title, entries=self.entries, shows=self.shows)


@dataclass(frozen=True, kw_only=True)
class Lesson:
    """A lesson: its place on the site, its aim, what it teaches and what it asks."""

    slug: str
    title: str
    aim: str
    objectives: tuple[Objective, ...]
    worked: Worked
    questions: tuple[Question, ...]

    def question(self, name: str) -> Question:
        """Find a question by its name."""
        return next(each for each in self.questions if each.name == name)
