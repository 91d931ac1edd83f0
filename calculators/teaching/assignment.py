"""An assignment: which problems, how many, and a variant of its own for every learner.

All variants of an assignment ask the same kinds of problems in the same order,
each with its own numbers. A variant is known by the assignment and its number
alone, so a link, a sheet and a key made on different machines agree.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import Any

from calculators.errors import Complaints
from calculators.teaching.bank import BY_NAME, LESSON_OF, TEMPLATES
from calculators.teaching.draw import shuffled
from calculators.teaching.lessons import BY_LESSON, LESSONS
from calculators.teaching.problem import LEVELS, Problem, Template, make

MOST_PROBLEMS = 60
MOST_VARIANTS = 5000
LONGEST_SEED = 40  # characters
LONGEST_NAME = 60
LONGEST_TITLE = 80

_NUMBERS = {  # name: what it is called, least, most
    "problems": ("Number of problems", 1, MOST_PROBLEMS),
    "variants": ("Number of variants", 1, MOST_VARIANTS),
}


@dataclass(frozen=True, kw_only=True)
class Assignment:
    """What is set: empty ``objectives`` or ``levels`` mean all of them.

    ``names`` is a class list; with one, there are as many variants as names.
    """

    seed: str = "1"
    problems: int = 12
    variants: int = 1
    objectives: tuple[str, ...] = ()
    levels: tuple[int, ...] = ()
    names: tuple[str, ...] = ()
    title: str = "Evacuation problems"
    system: str = "us"

    @property
    def count(self) -> int:
        """How many variants there are."""
        return len(self.names) or self.variants

    def name(self, number: int) -> str:
        """The learner a variant is for, or nothing."""
        return self.names[number - 1] if self.names else ""

    @cached_property
    def fitting(self) -> tuple[Template, ...]:
        """The templates that fit the objectives and levels."""
        return fitting(self.objectives, self.levels)

    @cached_property
    def templates(self) -> tuple[Template, ...]:
        """One template per problem, spread over the lessons, in the order of the course."""
        names = tuple(template.name for template in self.fitting)
        by_lesson: dict[str, list[str]] = {}
        for name in shuffled(names, "assignment", self.seed):
            by_lesson.setdefault(LESSON_OF[BY_NAME[name].objective].slug, []).append(name)
        # One from each lesson in turn, then a second from each, and from the start again.
        rounds: list[str] = []
        for turn in range(max(map(len, by_lesson.values()))):
            rounds += [each[turn] for each in by_lesson.values() if turn < len(each)]
        chosen = [rounds[index % len(rounds)] for index in range(self.problems)]
        place = {template.name: index for index, template in enumerate(TEMPLATES)}
        return tuple(BY_NAME[name] for name in sorted(chosen, key=place.__getitem__))

    def variant(self, number: int) -> tuple[Problem, ...]:
        """The problems of one variant, counted from 1."""
        return _problems(self, number)


@lru_cache(maxsize=4)  # sheet, key, table and package of one variant follow each other
def _problems(assignment: Assignment, number: int) -> tuple[Problem, ...]:
    turns: dict[str, int] = {}
    problems = []
    for template in assignment.templates:
        turn = turns[template.name] = turns.get(template.name, 0) + 1
        again = f"-{turn}" if turn > 1 else ""
        problems.append(make(template, f"{assignment.seed}-{number}{again}"))
    return tuple(problems)


def fitting(objectives: Iterable[str], levels: Iterable[int]) -> tuple[Template, ...]:
    """The templates for these objectives and levels; none named means all."""
    wanted, heights = set(objectives), set(levels)
    return tuple(
        template
        for template in TEMPLATES
        if (not wanted or template.objective in wanted)
        and (not heights or template.level in heights)
    )


def read(given: Mapping[str, Any]) -> Assignment:
    """Read an assignment as a page or a shell gives it: texts by name.

    Parameters
    ----------
    given : mapping
        ``seed``, ``problems``, ``variants``, ``title`` and ``system`` as
        text; ``objectives`` (names of objectives or lessons), ``levels`` and
        ``names`` (one a line) as text or lists.

    Returns
    -------
    Assignment
        What was asked for.

    Raises
    ------
    Complaints
        One sentence per entry that cannot be used.
    """
    complaints: list[tuple[str, str]] = []
    numbers = {}
    for name, (label, least, most) in _NUMBERS.items():
        text = str(given.get(name, "")).strip().replace(",", "")
        if not text:
            continue
        if not (text.isascii() and text.isdigit() and least <= int(text) <= most):
            complaints.append((name, f"{label}: type a whole number from {least} to {most:,}."))
        else:
            numbers[name] = int(text)
    names = tuple(" ".join(line.split()) for line in _listed(given.get("names"), "\n"))
    if len(names) > MOST_VARIANTS:
        complaints.append(("names", f"Class list: keep to {MOST_VARIANTS:,} names."))
    if any(len(name) > LONGEST_NAME for name in names):
        complaints.append(("names", f"Class list: keep each name to {LONGEST_NAME} characters."))
    title = " ".join(str(given.get("title") or "Evacuation problems").split())
    if len(title) > LONGEST_TITLE:
        complaints.append(("title", f"Title: keep to {LONGEST_TITLE} characters."))
    seed = str(given.get("seed", "") or "1").strip()
    if len(seed) > LONGEST_SEED or not seed.replace("-", "").replace("_", "").isalnum():
        complaints.append(
            ("seed", f"Seed: use letters and digits, {LONGEST_SEED} characters at most.")
        )
    objectives = _objectives(_listed(given.get("objectives"), ","), complaints)
    levels = _levels(_listed(given.get("levels"), ","), complaints)
    if not complaints and not fitting(objectives, levels):
        complaints.append(("levels", "No problem fits: choose more objectives or more levels."))
    if complaints:
        raise Complaints(complaints)
    return Assignment(
        seed=seed,
        objectives=objectives,
        levels=levels,
        names=names,
        title=title,
        system="si" if given.get("system") == "si" else "us",
        **numbers,
    )


def _listed(given: Any, mark: str) -> list[str]:
    items = str(given or "").split(mark) if not isinstance(given, (list, tuple)) else given
    return [str(each).strip() for each in items if str(each).strip()]


def _objectives(names: list[str], complaints: list[tuple[str, str]]) -> tuple[str, ...]:
    """Names of objectives; the name of a lesson stands for all of its own."""
    wanted: set[str] = set()
    for name in names:
        if name in BY_LESSON:
            wanted.update(each.name for each in BY_LESSON[name].objectives)
        elif name in LESSON_OF:
            wanted.add(name)
        else:
            known = ", ".join(lesson.slug for lesson in LESSONS)
            sentence = f"Objectives: “{name[:40]}” is none. Name objectives, or lessons: {known}."
            complaints.append(("objectives", sentence))
    return tuple(name for name in LESSON_OF if name in wanted)


def _levels(texts: list[str], complaints: list[tuple[str, str]]) -> tuple[int, ...]:
    wrong = [text for text in texts if text not in map(str, LEVELS)]
    if wrong:
        complaints.append(("levels", f"Levels: “{wrong[0][:20]}” is none of 1, 2 and 3."))
    return tuple(sorted({int(text) for text in texts if text not in wrong}))
