"""Solve every template of the problem bank on many seeds and say what is wrong with it.

    python scripts/check_bank.py [--seeds 1000] [TEMPLATE ...]

Checks that every seed can be solved, that the answer lies inside the physical range, that the
answer's own text is marked right, that each wrong road is recognized and lies apart from the
answer and from the others by more than the tolerance, that choices have one right option by a
clear margin, and that no two variants of a set are alike. Lists objectives with fewer than two
templates and templates with few different problems. The status is 1 when anything failed.
"""

from __future__ import annotations

import argparse
import sys
import time
from collections import Counter
from dataclasses import dataclass, field
from itertools import pairwise
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from calculators import units
from calculators.errors import CalculatorError
from calculators.teaching import marking
from calculators.teaching.asking import answered
from calculators.teaching.assignment import Assignment
from calculators.teaching.bank import BY_NAME, LESSON_OF, TEMPLATES
from calculators.teaching.problem import Problem, Template, make
from calculators.teaching.question import Choice, Numeric, Order, Rank

SEEDS = 1000
FEW = 12  # different problems, places aside
CLEAR = 1.01  # the best option beats the next one by at least this factor

# What an answer of each dimension can be in this trade, SI.
PHYSICAL = {
    "pressure": (1e-3, 1e7),
    "temperature": (173.15, 647.096),
    "length": (1e-9, 100.0),
    "volume": (1e-7, 1e4),
    "time": (0.1, 3.2e7),
    "volume flow": (1e-9, 1.0),
    "throughput": (1e-12, 10.0),
    "rate of pressure rise": (1e-6, 1e3),
    "mass": (1e-9, 1e3),
    "mass flow": (1e-15, 1e-2),
    "energy": (1.0, 1e8),
    "ratio": (1e-6, 1e4),
}


@dataclass
class Report:
    """What was found about one template."""

    template: Template
    problems: Counter[str] = field(default_factory=Counter)
    first: dict[str, str] = field(default_factory=dict)
    different: int = 0

    def note(self, what: str, seed: object) -> None:
        """Count a failure and keep the first seed that shows it."""
        self.problems[what] += 1
        self.first.setdefault(what, str(seed))


def check(template: Template, seeds: range) -> Report:
    """Check one template on these seeds."""
    report, seen = Report(template), set()
    for seed in seeds:
        try:
            problem = make(template, seed)
            for wrong in faults(problem):
                report.note(wrong, seed)
            seen.add(problem.signature)
        except (CalculatorError, StopIteration, KeyError, ValueError, TypeError) as error:
            report.note(f"cannot be solved: {type(error).__name__}: {error}", seed)
    report.different = len(seen)
    return report


def faults(problem: Problem) -> list[str]:
    """What is wrong with one problem."""
    question = problem.question
    if isinstance(question, Numeric):
        return _of_number(question)
    if isinstance(question, Choice):
        return _of_choice(question)
    return _of_order(question)


def _typed(value: float, unit: str, digits: int = 5) -> str:
    return f"{units.from_si(value, unit):.{digits}g} {unit}".removesuffix(" 1")


def _of_number(question: Numeric) -> list[str]:
    found = []
    right = marking.right_number(question)
    unit = marking.bare_unit(question, "us")
    low, high = PHYSICAL[units.UNITS[unit].dimension]
    if not low <= right <= high:
        found.append("the answer is outside the physical range")
    if marking.mark(question, _typed(right, unit)).correct is not True:
        found.append("the answer is not marked right")
    evaluation = answered(question.asked)
    places = [
        (road.name, where)
        for road in question.wrong_roads
        if (where := road.method(evaluation, question.asked.output)) is not None
    ]
    if len(places) < len(question.wrong_roads):
        found.append("a wrong road leads nowhere")
    spots = [("the answer", right), *places]
    for index, (one, here) in enumerate(spots):
        for other, there in spots[index + 1 :]:
            around = question.relative * max(abs(here), abs(there))
            if abs(here - there) <= (question.absolute or around):
                found.append(f"“{other}” lies within the tolerance of {one}")
    for name, where in places:
        if marking.mark(question, _typed(where, unit, 6)).road != name:
            found.append(f"“{name}” is not recognized")
    return found


def _of_choice(question: Choice) -> list[str]:
    found = []
    right = marking.right_option(question)
    if isinstance(question.right, Rank):
        values = sorted(marking.asked_value(option.asked) for option in question.options)
        best, next_to = values[:2] if question.right is Rank.SMALLEST else values[:-3:-1]
        if max(best, next_to) < CLEAR * min(best, next_to):
            found.append("two options are nearly alike")
    texts = [marking.option_text(question, option, option.text) for option in question.options]
    if len(set(texts)) < len(texts):
        found.append("two options read alike")
    if marking.mark(question, right.key).correct is not True:
        found.append("the right option is not marked right")
    return found


def _of_order(question: Order) -> list[str]:
    if all(item.asked for item in question.items):
        values = sorted(marking.asked_value(item.asked) for item in question.items)
        if any(b < CLEAR * a for a, b in pairwise(values)):
            return ["two lines are nearly alike"]
    if marking.mark(question, ",".join(marking.right_order(question))).correct is not True:
        return ["the right order is not marked right"]
    return []


def alike_variants(variants: int = 60, sets: int = 20) -> list[str]:
    """Sets of twelve problems in which two variants have the same numbers."""
    found = []
    for seed in range(sets):
        one = Assignment(seed=str(seed), problems=12, variants=variants)
        told = Counter(
            tuple(problem.signature for problem in one.variant(n)) for n in range(1, variants + 1)
        )
        if len(told) < variants:
            found.append(f"set {seed}: only {len(told)} of {variants} variants differ")
    return found


def thin() -> list[str]:
    """Objectives with fewer than two templates."""
    count = Counter(template.objective for template in TEMPLATES)
    return [name for name in LESSON_OF if count[name] < 2]


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, usage="check_bank.py [options]")
    parser.add_argument("templates", nargs="*", metavar="TEMPLATE")
    parser.add_argument("--seeds", type=int, default=SEEDS)
    options = parser.parse_args()
    chosen = [BY_NAME[name] for name in options.templates] or TEMPLATES
    started, failed = time.perf_counter(), 0
    for template in chosen:
        begun = time.perf_counter()
        report = check(template, range(1, options.seeds + 1))
        took = time.perf_counter() - begun
        failed += bool(report.problems)
        mark = "NO" if report.problems else "ok"
        print(f"{mark:3}{template.name:34}{report.different:6} different {took:7.1f} s", flush=True)
        for what, count in report.problems.items():
            print(f"     {count} times, first at seed {report.first[what]}: {what}")
        if report.different < min(FEW, options.seeds):
            print(f"     few: only {report.different} different problems")
    alike = alike_variants()
    print(*alike, sep="\n", end="\n" if alike else "")
    took = time.perf_counter() - started
    print(
        f"{len(chosen)} templates on {options.seeds} seeds in {took:.0f} s: "
        f"{failed} with a fault, {len(alike)} sets with variants alike."
    )
    covered = Counter(template.objective for template in TEMPLATES)
    print(f"{len(covered)} of {len(LESSON_OF)} objectives have a template.")
    for name in thin():
        print(f"     thin: {name} has {covered[name]}")
    return 1 if failed or alike else 0


if __name__ == "__main__":
    sys.exit(main())
