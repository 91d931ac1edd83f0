"""Ask the worker's entry point all that cards and lessons suggest; print the replies.

Runs natively and inside Pyodide alike: the build asks to find out which modules answering
needs, the tests ask to compare the two.
"""

import json
from collections.abc import Iterator

from calculators.card import Card
from calculators.cards import CARDS
from calculators.outputs.browser import reply
from calculators.teaching.bank import LESSON_OF, TEMPLATES
from calculators.teaching.lesson import Lesson
from calculators.teaching.lessons import LESSONS
from calculators.teaching.question import Choice, Order

ASKABLE: tuple[Card | Lesson, ...] = (*CARDS, *LESSONS)

NONSENSE = ("", "many", "-1", "0", "nan", "inf", "1e400", "5 furlong", "1,2,3", "é\x00")


def marks(lesson: Lesson) -> Iterator[tuple[str, dict]]:
    """Yield a name and a question: every option and order, numbers right, wrong and unreadable."""
    for each in lesson.questions:
        if isinstance(each, Choice):
            answers = [option.key for option in each.options]
        elif isinstance(each, Order):
            answers = [",".join(item.key for item in each.items)]
        else:
            answers = ["500", "1e-3", "12.5 Pa", "-12 °F", *NONSENSE]
        for system in ("us", "si"):
            for answer in ("", *answers):
                asked = {"do": "mark", "lesson": lesson.slug, "question": each.name}
                name = f"{lesson.slug}: {each.name}, {answer!r}, {system}"
                yield name, {**asked, "answer": answer, "system": system}


def problems(lesson: Lesson) -> Iterator[tuple[str, dict]]:
    """Yield a name and a question: every problem of the bank on the lesson, and a set of them."""
    for template in TEMPLATES:
        if LESSON_OF[template.objective] is not lesson:
            continue
        for seed, system in (("1", "si"),):
            asked = {"template": template.name, "seed": seed, "system": system}
            name = f"{lesson.slug}: {template.name}, seed {seed}, {system}"
            yield name, {"do": "problem", **asked}
            yield f"{name}, marked", {"do": "mark", "answer": "12.5", **asked}
    given = {"objectives": lesson.slug, "problems": "3", "variants": "2", "seed": "5"}
    for give in ("check", "set", "sheets"):
        asked = {"do": "assignment", "give": give, "assignment": given, "variant": 2}
        yield f"{lesson.slug}: assignment, {give}", asked
    bad = {"do": "assignment", "give": "check", "assignment": {**given, "problems": "many"}}
    yield f"{lesson.slug}: assignment, many problems", bad
    yield f"{lesson.slug}: packed", {"do": "pack", "files": {"a.txt": "YQ=="}}
    yield f"{lesson.slug}: page", {"do": "pack", "title": "Sheets", "parts": ["<p>1</p>"]}


def questions(asked: Card | Lesson) -> Iterator[tuple[str, dict]]:
    """Yield every question about a card or of a lesson, by its name."""
    if isinstance(asked, Lesson):
        yield from marks(asked)
        yield from problems(asked)
    else:
        yield from entries(asked)


def entries(card: Card) -> Iterator[tuple[str, dict]]:
    """Yield a name and a question: defaults, examples, conversions and bad entries."""
    filled = {"default": {}}
    filled |= {f"example {n}": dict(e.entries) for n, e in enumerate(card.examples, 1)}
    for what, typed in filled.items():
        for system in ("us", "si"):
            for do in ("answer", "convert"):
                question = {"do": do, "card": card.slug, "entries": typed, "system": system}
                yield f"{card.slug}: {do}, {what}, {system}", {**question, "data": True}
    for each in card.inputs:
        for text in NONSENSE:
            question = {"do": "answer", "card": card.slug, "entries": {each.name: text}}
            yield f"{card.slug}: {each.name} = {text!r}", {**question, "system": "us"}


def replies(asked: Card | Lesson) -> dict[str, dict]:
    """Answer all the questions about a card or of a lesson."""
    return {name: json.loads(reply(json.dumps(question))) for name, question in questions(asked)}


if __name__ == "__main__":
    everything = {name: said for each in ASKABLE for name, said in replies(each).items()}
    print(json.dumps(everything))
