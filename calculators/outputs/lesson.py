"""Lessons as HTML: the aim, the worked example, the questions, the list of all lessons.

Everything reads without script: each question has its answer and working one
tap away. Script turns it into a question that marks itself.
"""

from calculators import units, wording
from calculators.cards import BY_SLUG
from calculators.outputs.answer import working
from calculators.outputs.element import Child, Element, tag, text_of
from calculators.outputs.html import example_section
from calculators.teaching.lesson import Lesson
from calculators.teaching.lessons import BY_LESSON, LESSONS
from calculators.teaching.marking import (
    answer_text,
    answered,
    bare_unit,
    option_text,
    right_option,
    right_order,
    shown_order,
)
from calculators.teaching.question import Asked, Choice, Numeric, Order, Question


def aim(slug: str) -> str:
    """Where a lesson stands, what it is for, and what you can do after it."""
    lesson = BY_LESSON[slug]
    can = [tag("li", objective.says) for objective in lesson.objectives]
    return text_of(
        tag(
            "div",
            tag("p", f"Lesson {number(lesson)} of {len(LESSONS)}", class_="kicker"),
            tag("p", lesson.aim, class_="aim-says"),
            tag("p", "After this you can:", class_="aim-can"),
            tag("ul", can),
            class_="aim",
        )
    )


def number(lesson: Lesson) -> int:
    """The lesson's place in the course, from 1."""
    return LESSONS.index(lesson) + 1


def worked(slug: str) -> str:
    """The lesson's own worked example, every step shown."""
    example = BY_LESSON[slug].worked
    return text_of(example_section(BY_SLUG[example.card], example.example))


def quiz(slug: str) -> str:
    """The questions of a lesson."""
    lesson = BY_LESSON[slug]
    asked = [
        tag("li", question_block(question, lesson.slug), class_="quiz-question",
            id=f"question-{question.name}", data_question=question.name, data_kind=kind(question))
        for question in lesson.questions
    ]  # fmt: skip
    return text_of(
        tag(
            "lesson-quiz",
            tag("ol", asked, class_="quiz-questions"),
            tag("p", class_="quiz-score", role="status"),
            lesson=lesson.slug, state="static", data_search_exclude=True,
        )
    )  # fmt: skip


def lesson_list(folder: str) -> str:
    """Every lesson in order, linked from a page beside them; script adds how far you are."""
    items = []
    for lesson in LESSONS:
        count = len(lesson.questions)
        items.append(
            tag(
                "li",
                tag("a", lesson.title, href=f"{folder}{lesson.slug}/"),
                tag("p", lesson.aim),
                tag("p", f"{count} questions", class_="lesson-done"),
                data_lesson=lesson.slug,
                data_questions=" ".join(question.name for question in lesson.questions),
            )
        )
    return text_of(
        tag(
            "lesson-progress",
            tag("p", class_="progress-says", role="status"),
            tag("ol", items, class_="lessons"),
        )
    )


# --- one question ------------------------------------------------------------


def kind(question: Question) -> str:
    """The kind of a question, as the page names it."""
    return type(question).__name__.lower()


def question_block(question: Question, prefix: str, *, system: str = "us") -> list[Element]:
    """A question as a form, with its hint, and its answer and working one tap away."""
    identity = f"{prefix}-{question.name}"
    if isinstance(question, Numeric):
        blank = _number_blank(question, identity, system)
    elif isinstance(question, Choice):
        blank = _options(question, identity, system)
    else:
        blank = _items(question, system)
    done = tag("output", class_="quiz-mark", aria_live="polite")
    check = tag("button", "Check", type="submit", class_="quiz-check")
    hint = tag("details", tag("summary", "Hint"), tag("p", asks_text(question, question.hint)),
               class_="quiz-hint") if question.hint else None  # fmt: skip
    solution = tag(
        "details",
        tag("summary", "Answer" if _explained(question) is None else "Answer and working"),
        tag("p", solution_text(question, system=system)),
        _explained(question, system),
        class_="quiz-solution",
    )
    parts = [tag("form", blank, tag("div", check, done, class_="quiz-marking"), novalidate=True)]
    return [*parts, *([hint] if hint is not None else []), solution]


def asks_text(question: Question, text: str, *, system: str = "us") -> str:
    """Fill a text of a question from its own card, where it has one."""
    if "{" not in text:
        return text
    if isinstance(question, Numeric):
        return answered(question.asked, system=system).say(text)
    if isinstance(question, Choice) and not isinstance(question.right, str):
        option = right_option(question)
        return option_text(question, option, text, system=system)
    return text


def solution_text(question: Question, *, system: str = "us") -> str:
    """The right answer in a sentence or two."""
    if isinstance(question, Numeric):
        because = answered(question.asked, system=system).say(question.because)
        return f"{answer_text(question, system=system)}. {because}"
    if isinstance(question, Choice):
        option = right_option(question)
        text = option_text(question, option, option.text, system=system)
        says = option_text(question, option, option.says, system=system)
        return f"{text.rstrip('.')}. {says}"
    texts = dict(_item_texts(question, system))
    return f"{'; '.join(texts[key] for key in right_order(question))}. {question.because}"


def _explained(question: Question, system: str = "us") -> Element | None:
    return (
        working(answered(question.asked, system=system)) if isinstance(question, Numeric) else None
    )


def _number_blank(question: Numeric, identity: str, system: str) -> Element:
    unit = bare_unit(question, system)
    dimension = units.UNITS[unit].dimension
    # A number pad has no minus sign on some phones, and temperatures need one.
    pad = "text" if dimension == "temperature" else "decimal"
    beside: Child = None
    if question.in_unit:
        beside = tag("span", unit, class_="quiz-unit")
    elif unit == "%":
        beside = tag("span", "%", class_="quiz-unit")
    elif dimension != "ratio":
        names = [
            each.name
            for each in units.UNITS.values()
            if each.dimension == dimension and not each.gauge
        ]
        beside = tag(
            "select",
            [tag("option", name, value=name, selected=name == unit) for name in names],
            name="answer.unit", aria_label="Unit of your answer",
            data_us=bare_unit(question, "us"), data_si=bare_unit(question, "si"),
        )  # fmt: skip
    return tag(
        "div",
        tag("label", asks_text(question, question.asks, system=system), for_=identity,
            class_="quiz-asks"),
        tag(
            "div",
            tag("input", type="text", id=identity, name="answer", inputmode=pad,
                autocomplete="off", autocapitalize="off", spellcheck="false"),
            beside,
            class_="field",
        ),
        class_="ask-row", data_input="answer", data_kind="quantity",
    )  # fmt: skip


def _options(question: Choice, identity: str, system: str) -> Element:
    lines = [
        tag(
            "label",
            tag("input", type="radio", name="answer", value=option.key),
            tag("span", option_text(question, option, option.text, system=system)),
            class_="quiz-option",
        )
        for option in question.options
    ]
    asks = asks_text(question, question.asks, system=system)
    log = _log(question.right) if isinstance(question.right, Asked) else None
    return tag(
        "fieldset",
        tag("legend", asks, class_="quiz-asks"),
        log,
        lines,
        class_="quiz-options",
    )


def _log(asked: Asked) -> Element | None:
    """The readings that a question is about, in the units the trade writes them in."""
    log = answered(asked).entered.get("readings")
    if log is None:
        return None
    minutes = [wording.number(units.from_si(time, "min")) for time in log.times]
    micron = [wording.number(units.from_si(pressure, "micron")) for pressure in log.pressures]
    rows = [
        tag("tr", tag("th", head, scope="row"), [tag("td", cell) for cell in cells])
        for head, cells in (("Minutes", minutes), ("Micron", micron))
    ]
    return tag(
        "div", tag("table", tag("tbody", rows)), class_="scroll quiz-log", tabindex=0,
        role="region", aria_label="The readings",
    )  # fmt: skip


def _items(question: Order, system: str) -> Element:
    texts = dict(_item_texts(question, system))
    rows = []
    for key in shown_order(question):
        tools = [
            tag(
                "button", arrow, type="button", data_row=way, aria_label=f"Move {way}: {texts[key]}"
            )
            for way, arrow in (("up", "↑"), ("down", "↓"))
        ]
        rows.append(
            tag(
                "li",
                tag("span", texts[key], class_="quiz-item"),
                tag("div", tools, class_="row-tools"),
                class_="row",
                data_key=key,
            )
        )
    return tag(
        "fieldset", tag("legend", question.asks, class_="quiz-asks"), tag("ol", rows),
        class_="rows quiz-order", data_input="answer", data_row_name="line",
    )  # fmt: skip


def _item_texts(question: Order, system: str) -> list[tuple[str, str]]:
    return [
        (item.key, answered(item.asked, system=system).say(item.text) if item.asked else item.text)
        for item in question.items
    ]
