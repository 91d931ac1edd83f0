"""Problem sheets and answer keys as HTML: for a page, for a file of their own, for paper."""

import string
from pathlib import Path

from calculators import units, wording
from calculators.outputs.element import Child, Element, tag, text_of
from calculators.outputs.problem import deciding, solution, told
from calculators.outputs.question import asks_text
from calculators.teaching.asking import answered
from calculators.teaching.assignment import Assignment
from calculators.teaching.bank import LESSON_OF
from calculators.teaching.marking import (
    answer_text,
    bare_unit,
    item_text,
    option_text,
    output_of,
    right_option,
    right_order,
    shown_options,
    shown_order,
    tolerance,
)
from calculators.teaching.problem import KINDS, Problem
from calculators.teaching.question import Asked, Choice, Numeric, Order

STYLE = (Path(__file__).parent / "sheet.css").read_text(encoding="utf-8")
PAGE = (
    "body { margin: 0; padding: 1.5rem 0; background: #f2efe8; }\n"
    "@page { size: auto; margin: 16mm 15mm; }\n"
    "@media print { body { padding: 0; background: none; } }\n"
)
LETTERS = string.ascii_uppercase
SAFETY = (
    "Problems on paper only. On a job, local codes, the equipment maker's instructions and "
    "licensed practice come first."
)


def sheet(assignment: Assignment, number: int) -> Element:
    """The problems of one variant, with room to answer."""
    problems = assignment.variant(number)
    system = assignment.system
    return tag(
        "section",
        _head(assignment, number, "Problems"),
        tag("ol", [_asked(each, system) for each in problems], class_="sheet-problems"),
        tag("p", SAFETY, class_="sheet-foot"),
        class_="sheet", data_kind="problems", data_variant=number,
    )  # fmt: skip


def key(assignment: Assignment, number: int) -> Element:
    """The answers of one variant, with the whole working and the usual mistakes."""
    problems = assignment.variant(number)
    system = assignment.system
    return tag(
        "section",
        _head(assignment, number, "Answer key"),
        _at_a_glance(problems, system),
        tag("ol", [_answered(each, system) for each in problems], class_="sheet-problems"),
        class_="sheet", data_kind="key", data_variant=number,
    )  # fmt: skip


def document(title: str, *parts: Element) -> str:
    """A file of its own that holds these sheets: nothing else is needed to read or print it."""
    head = tag(
        "head",
        tag("meta", charset="utf-8"),
        tag("meta", name="viewport", content="width=device-width,initial-scale=1"),
        tag("title", title),
    )
    # A style sheet is no text to escape; our own holds no "</".
    style = f"<style>{STYLE}{PAGE}</style>"
    top = text_of(head).replace("</head>", f"{style}</head>")
    return f'<!doctype html>\n<html lang="en">{top}<body>{text_of(*parts)}</body></html>\n'


def short_answer(problem: Problem, *, system: str = "us") -> str:
    """The right answer as it is written down: a number with its unit, a letter, letters."""
    question = problem.question
    if isinstance(question, Numeric):
        text, unit = answer_text(question, system=system), bare_unit(question, system)
        if output_of(question.asked).us == "duration" and not question.in_unit:
            text = f"{answer_text_in(question, unit)} ({text})"
        return text
    if isinstance(question, Choice):
        return LETTERS[shown_options(question).index(right_option(question))]
    shown = shown_order(question)
    return ", ".join(LETTERS[shown.index(name)] for name in right_order(question))


def answer_text_in(question: Numeric, unit: str) -> str:
    """The right answer in a unit of its kind."""
    return answered(question.asked).say(f"{{{question.asked.output}:{unit}}}")


def accepted(question: Numeric, *, system: str = "us") -> tuple[float, float, str]:
    """The lowest and highest number that is still right, and the unit they are in."""
    unit = bare_unit(question, system)
    right = float(answered(question.asked).answer.outputs[question.asked.output])  # type: ignore[arg-type]
    allowed = tolerance(question)
    ends = [units.from_si(right + way * allowed, unit) for way in (-1.0, 1.0)]
    return min(ends), max(ends), unit


def _head(assignment: Assignment, number: int, what: str) -> Element:
    name = assignment.name(number)
    return tag(
        "header",
        tag("h2", assignment.title),
        tag("p", f"Set {assignment.seed} · variant {number}", class_="sheet-code"),
        tag("p", what),
        tag("p", "Name", tag("b", name), class_="sheet-name")
        if name or what == "Problems"
        else None,
        class_="sheet-head",
    )


def _at_a_glance(problems: tuple[Problem, ...], system: str) -> Element:
    """All answers in a few lines, to mark by."""
    lines = [tag("li", short_answer(problem, system=system)) for problem in problems]
    return tag("ol", lines, class_="at-a-glance")


def _asked(problem: Problem, system: str) -> Element:
    question = problem.question
    asks = tag("p", asks_text(question, question.asks, system=system), class_="asked")
    blank: list[Child] = []
    if isinstance(question, Numeric):
        unit = wording.with_unit("", bare_unit(question, system)).strip()
        blank = [tag("p", "Answer", tag("i"), unit or None, class_="blank")]
    elif isinstance(question, Choice):
        texts = [option_text(question, o, o.text, system=system) for o in shown_options(question)]
        blank = [_lettered(texts)]
    else:
        by_key = {item.key: item_text(item, system=system) for item in question.items}
        blank = [
            _lettered([by_key[name] for name in shown_order(question)]),
            tag("p", "In order", tag("i"), class_="blank"),
        ]
    return tag("li", told(problem, system=system), log_table(problem), asks, blank)


def _lettered(texts: list[str]) -> Element:
    lines = [
        tag("li", tag("b", letter), tag("span", text))
        for letter, text in zip(LETTERS, texts, strict=False)
    ]
    return tag("ul", lines, class_="lettered")


def log_table(problem: Problem) -> Element | None:
    """The readings of a decay test, where they are what is judged."""
    question = problem.question
    if problem.figure or not (isinstance(question, Choice) and isinstance(question.right, Asked)):
        return None
    log = answered(question.right).entered.get("readings")
    if log is None:
        return None
    rows = []
    for head, values, unit in (("Minutes", log.times, "min"), ("Micron", log.pressures, "micron")):
        cells = [tag("td", wording.number(units.from_si(value, unit))) for value in values]
        rows.append(tag("tr", tag("th", head, scope="row"), cells))
    return tag("div", tag("table", tag("tbody", rows), class_="log"), class_="scroll")


def _answered(problem: Problem, system: str) -> Element:
    question, template = problem.question, problem.template
    lesson = LESSON_OF[template.objective]
    about = (
        f"{lesson.title} · level {template.level} · {KINDS[template.kind].lower()} · "
        f"{template.name}, seed {problem.seed}"
    )
    line = short_answer(problem, system=system)
    if isinstance(question, Numeric):
        low, high, unit = accepted(question, system=system)
        ends = [wording.number(end, figures=4) for end in (low, high)]
        line += f"   (accept {ends[0]} to {wording.with_unit(ends[1], unit)})"
    return tag(
        "li",
        tag(
            "div",
            tag("p", line, class_="key-answer"),
            tag("p", asks_text(question, question.asks, system=system)),
            class_="key-head",
        ),
        solution(problem, system=system),
        _roads(problem, system),
        tag("p", about, class_="key-about"),
    )


def _roads(problem: Problem, system: str) -> Element | None:
    """The usual wrong answers, with what each one means."""
    lines = [f"{where}: {says}" for where, says in wrong_answers(problem, system=system)]
    return tag("ul", [tag("li", line) for line in lines], class_="roads") if lines else None


def wrong_answers(problem: Problem, *, system: str = "us") -> list[tuple[str, str]]:
    """What a learner on each wrong road writes down, and the feedback it earns."""
    question = problem.question
    if isinstance(question, Order):
        return []
    if isinstance(question, Choice):
        right = right_option(question)
        return [
            (LETTERS[index], option_text(question, option, option.says, system=system))
            for index, option in enumerate(shown_options(question))
            if option is not right
        ]
    evaluation, unit = answered(question.asked, system=system), bare_unit(question, system)
    found = []
    for road in question.wrong_roads:
        where = road.method(evaluation, question.asked.output)
        if where is not None:
            text = wording.quantity(where, unit, figures=3)
            found.append((text, evaluation.say(road.says)))
    return found


def deciding_card(problem: Problem) -> str:
    """The slug of the card that gives the answer, or nothing."""
    asked = deciding(problem)
    return asked.card if asked else ""
