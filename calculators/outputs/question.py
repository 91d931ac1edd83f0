"""A question as HTML: a form to answer, a hint, and the answer with its working one tap away.

It reads without script. The page's script sends what is answered to Python.
"""

from calculators import units, wording
from calculators.card import Card
from calculators.cards import BY_SLUG
from calculators.outputs.answer import working
from calculators.outputs.element import Child, Element, tag
from calculators.teaching.asking import answered
from calculators.teaching.marking import (
    answer_text,
    bare_unit,
    item_text,
    option_text,
    right_option,
    right_order,
    shown_options,
    shown_order,
)
from calculators.teaching.question import Asked, Choice, Numeric, Order, Question

CALCULATORS = "../../calculators/"  # from a page that asks questions


def kind(question: Question) -> str:
    """The kind of a question, as the page names it."""
    return type(question).__name__.lower()


def question_block(
    question: Question, prefix: str, *, system: str = "us", calculators: str = CALCULATORS
) -> list[Element]:
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
    hint = _hint(question, system, calculators)
    solution = tag(
        "details",
        tag("summary", "Answer" if _explained(question) is None else "Answer and working"),
        tag("p", solution_text(question, system=system)),
        _explained(question, system),
        class_="quiz-solution",
    )
    parts = [tag("form", blank, tag("div", check, done, class_="quiz-marking"), novalidate=True)]
    return [*parts, *([hint] if hint is not None else []), solution]


def _hint(question: Question, system: str, calculators: str) -> Element | None:
    card = _card(question)
    if not question.hint and card is None:
        return None
    link = None
    if card is not None:
        link = tag("p", "The calculator: ", tag("a", card.title, href=f"{calculators}{card.slug}/"))
    says = tag("p", asks_text(question, question.hint, system=system)) if question.hint else None
    return tag("details", tag("summary", "Hint"), says, link, class_="quiz-hint")


def _card(question: Question) -> Card | None:
    """The card that gives the answer, where one does."""
    if isinstance(question, Numeric):
        asked: Asked | None = question.asked
    elif isinstance(question, Choice) and isinstance(question.right, Asked):
        asked = question.right
    elif isinstance(question, Choice):
        asked = question.options[0].asked
    else:
        asked = question.items[0].asked
    return BY_SLUG[asked.card] if asked else None


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
        for option in shown_options(question)
    ]
    asks = asks_text(question, question.asks, system=system)
    log = _log(question.right, asks) if isinstance(question.right, Asked) else None
    return tag(
        "fieldset",
        tag("legend", asks, class_="quiz-asks"),
        log,
        lines,
        class_="quiz-options",
    )


def _log(asked: Asked, asks: str) -> Element | None:
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
        role="region", aria_label=f"Readings: {asks}",
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
    return [(item.key, item_text(item, system=system)) for item in question.items]
