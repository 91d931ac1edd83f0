"""Ask the worker's entry point all that cards and lessons suggest; print the replies.

Runs natively and inside Pyodide alike: the build asks to find out which modules answering
needs, the tests ask to compare the two.
"""

import json
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from calculators.card import Card
from calculators.cards import CARDS
from calculators.job.schema import FORMAT, VERSION
from calculators.outputs.browser import reply
from calculators.teaching import bench_session
from calculators.teaching.bank import LESSON_OF, TEMPLATES
from calculators.teaching.bench_actions import Action
from calculators.teaching.bench_case import case_of
from calculators.teaching.bench_faults import FAULTS
from calculators.teaching.lesson import Lesson
from calculators.teaching.lessons import LESSONS
from calculators.teaching.needle_motion import MOTIONS
from calculators.teaching.question import Choice, Order

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


def bench() -> Iterator[tuple[str, dict]]:
    """Yield a name and a question: a case of every fault pulled, shut in and named."""
    for fault in FAULTS:
        number = next(n for n in range(1, 300) if case_of(n).fault == fault.key)
        case, name = case_of(number), f"bench: {fault.key}"
        yield f"{name}, set up", _bench(number, give="case")
        first = bench_session.begin(case)
        run = {"give": "run", "moment": first.as_data(), "actions": [], "act": None, "ticks": 450}
        done = [[0, "pump", "on"], [200, "valve", "shut"]]
        yield f"{name}, run", _bench(number, **{**run, "actions": done})
        refused = {**run, "act": [0, "hose", "hose-1/2"], "ticks": 5}
        yield f"{name}, hose", _bench(number, **refused)
        actions = [Action(*each) for each in done]
        _, pressures = bench_session.run(case, first, actions, run["ticks"])
        gauge = [bench_session.shown(each, "micron") for each in (first.state.gauge, *pressures)]
        mark = {"give": "mark", "actions": done, "readings": gauge, "froze": False}
        yield f"{name}, named", _bench(number, **mark, named=fault.key)
    for named in ("none", ""):
        yield f"{name}, named {named!r}", _bench(number, **mark, named=named)
    for text in NONSENSE:
        yield f"bench: case {text!r}", _bench(text, give="case")


def _bench(number: object, **given: object) -> dict:
    return {"do": "bench", "case": number, "system": "us", **given}


def needle() -> Iterator[tuple[str, dict]]:
    """Yield a name and a question: needles to read, and needles that move."""
    for number in range(1, 9):
        for system in ("us", "si"):
            asked = {"do": "needle", "number": number, "system": system}
            name = f"needle: {number}, {system}"
            yield name, {**asked, "give": "needle"}
            yield f"{name}, moving", {**asked, "give": "motion"}
            for text in ("5", "500 Pa", *NONSENSE):
                yield f"{name}, {text!r}", {**asked, "give": "reading", "answer": text}
            for part in ("does", "tells"):
                for text in (*(motion.key for motion in MOTIONS), ""):
                    moved = {**asked, "give": "moved", "part": part, "answer": text}
                    yield f"{name}, {part} {text!r}", moved


def job() -> Iterator[tuple[str, dict]]:
    """Yield a name and a question: a job with a result of every card, and one that is none."""
    when = "2026-11-25T10:00:00Z"
    results = [
        {"id": f"result-{card.slug}", "card": card.slug, "entries": {}, "system": "us",
         "when": when, "said": "Said then."}
        for card in CARDS
    ]  # fmt: skip
    record = {"format": FORMAT, "version": VERSION, "id": "job-00000001", "created": when,
              "changed": when, "facts": {"site": "A dairy"}, "results": results}  # fmt: skip
    for what, one in {"full": record, "empty": {**record, "results": []}, "none": {}}.items():
        for give in ("check", "sheet", "csv"):
            yield f"job: {what}, {give}", {"do": "job", "give": give, "job": one}
    for card in CARDS:
        asked = {"do": "job", "give": "feeds", "card": card.slug, "job": record}
        yield f"job: feeds {card.slug}", asked


@dataclass(frozen=True)
class Tool:
    """A page that asks for something else than a card's answer or a lesson's mark."""

    slug: str
    asks: Callable[[], Iterator[tuple[str, dict]]]


Askable = Card | Lesson | Tool
TOOLS = (Tool("bench", bench), Tool("needle", needle), Tool("job", job))
ASKABLE: tuple[Askable, ...] = (*CARDS, *LESSONS, *TOOLS)


def questions(asked: Askable) -> Iterator[tuple[str, dict]]:
    """Yield every question about a card, of a lesson or to a tool, by its name."""
    if isinstance(asked, Tool):
        yield from asked.asks()
    elif isinstance(asked, Lesson):
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


def replies(asked: Askable) -> dict[str, dict]:
    """Answer all the questions about a card, of a lesson or to a tool."""
    return {name: json.loads(reply(json.dumps(question))) for name, question in questions(asked)}


if __name__ == "__main__":
    everything = {name: said for each in ASKABLE for name, said in replies(each).items()}
    print(json.dumps(everything))
