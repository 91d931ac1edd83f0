"""An answer and its working as HTML, each part marked so that it can be renewed alone."""

from typing import Any

from calculators import units, wording
from calculators.card import Table
from calculators.evaluate import Evaluation
from calculators.outputs.chart import as_chart
from calculators.outputs.data import shown
from calculators.outputs.element import Child, Element, tag

# The shape of the pressure against time is the verdict's code; color only helps.
SHAPES = {
    "pass": "M8 40 C20 39 40 39 66 39",
    "leak": "M8 43 L66 9",
    "moisture": "M8 43 C18 16 30 13 66 12",
    "leak-and-moisture": "M8 45 C14 28 22 27 32 24 L66 8",
    "undecided": "M18 28 h.01 M36 28 h.01 M54 28 h.01",
}


def answer(evaluation: Evaluation) -> list[Element]:
    """What stands in the answer column, each part marked so that it can be renewed alone."""
    card, result, say = evaluation.card, evaluation.answer, evaluation.say
    parts = [main(evaluation)]
    if result.verdict and result.verdict.because:
        reasons = [tag("p", say(reason)) for reason in result.verdict.because]
        parts.append(tag("div", reasons, class_="because", data_part="because"))
    if result.notes:
        notes = [tag("p", say(note), class_="note") for note in result.notes]
        parts.append(tag("div", notes, class_="notes", data_part="notes"))
    if result.chart:
        parts.append(_figure(evaluation))
    facts = [out for out in card.outputs if result.verdict or out.name != card.primary]
    facts = [out for out in facts if result.outputs[out.name] is not None and out.name != "verdict"]
    if facts:
        parts.append(
            tag("dl", [_fact(evaluation, o) for o in facts], class_="facts", data_part="facts")
        )
    for index, table in enumerate(result.tables):
        parts.append(_table(evaluation, table, f"table-{index}"))
    return parts


def main(evaluation: Evaluation) -> Element:
    """Set the answer itself: the verdict with its shape, or the largest number."""
    result, say = evaluation.answer, evaluation.say
    if result.verdict:
        code = result.verdict.code
        return tag(
            "div", _shape(code), tag("b", say(result.verdict.says)),
            class_="verdict", data_part="main", data_code=code,
        )  # fmt: skip
    out = next(o for o in evaluation.card.outputs if o.name == evaluation.card.primary)
    first, second = both(evaluation, out)
    value, _, unit = first.rpartition(" ")
    split = value and out.choices is None and result.outputs[out.name] is not None
    big: list[Child] = [value, tag("small", unit)] if split else [first]
    return tag(
        "div",
        tag("p", say(result.headline), class_="what"),
        tag("span", big, class_="big"),
        tag("span", second, class_="second") if second else None,
        data_part="main",
    )


def _shape(code: str) -> Element:
    return tag(
        "svg",
        tag("path", d="M5 47V5M5 47H67", class_="axes"),
        tag("path", d=SHAPES[code], class_="trace"),
        viewBox="0 0 72 52", aria_hidden="true",
    )  # fmt: skip


def both(evaluation: Evaluation, out: Any) -> tuple[str, str]:
    """An output in the reader's units, and in the other system's where it differs."""
    first = shown(evaluation, out.name)
    value = evaluation.answer.outputs[out.name]
    if isinstance(value, str) or value is None or out.us == out.si:
        return first, ""
    other = out.us if evaluation.system == "si" else out.si
    return first, wording.quantity(value, other, figures=out.figures, decimals=out.decimals)


def _fact(evaluation: Evaluation, out: Any) -> Element:
    first, second = both(evaluation, out)
    more: list[Child] = [" ", tag("span", second, class_="second")] if second else []
    return tag("div", tag("dt", out.label), tag("dd", first, more), data_output=out.name)


def _figure(evaluation: Evaluation) -> Element:
    chart = as_chart(evaluation)
    return tag(
        "figure",
        tag("div", class_="plot"),
        tag("figcaption", chart["summary"] or chart["title"]),
        class_="chart", data_part="chart",
    )  # fmt: skip


def _table(evaluation: Evaluation, table: Table, part: str) -> Element:
    heads, body = table_cells(evaluation, table)
    columns = zip(*table.rows, strict=True)
    words = [all(isinstance(cell, str) for cell in column) for column in columns]
    classes = [None if only else "number" for only in words]

    def row(name: str, cells: list[str], **attributes: str) -> Element:
        each = zip(cells, classes, strict=True)
        return tag("tr", [tag(name, cell, class_=kind, **attributes) for cell, kind in each])

    return tag(
        "details",
        tag("summary", table.caption),
        tag(
            "div",
            tag(
                "table",
                tag("thead", row("th", heads, scope="col")),
                tag("tbody", [row("td", cells) for cells in body]),
            ),
            class_="scroll", tabindex=0, role="region", aria_label=table.caption,
        ),
        class_="more", data_part=part, open=table.open,
    )  # fmt: skip


def table_cells(evaluation: Evaluation, table: Table) -> tuple[list[str], list[list[str]]]:
    """Heads and cells of a table as text, in the reader's units."""
    picked = [wording.pick(f"{c.us}|{c.si}", evaluation.system) for c in table.columns]
    heads = [
        f"{column.label}, {unit}" if unit and unit not in ("1", "duration") else column.label
        for column, unit in zip(table.columns, picked, strict=True)
    ]
    body = []
    for row in table.rows:
        cells = []
        for cell, column, unit in zip(row, table.columns, picked, strict=True):
            if cell is None:
                cells.append("–")
            elif isinstance(cell, str):
                cells.append(evaluation.say(cell))
            elif unit == "duration":
                cells.append(wording.duration(cell))
            else:
                number = units.from_si(cell, unit)
                digits, places = column.figures, column.decimals
                cells.append(wording.number(number, figures=digits, decimals=places))
        body.append(cells)
    return heads, body


def working(evaluation: Evaluation) -> Element:
    """The numbered steps, each with its formula and the reader's own numbers."""
    steps = []
    for step in evaluation.answer.working:
        numbers = evaluation.say(step.numbers, step.values)
        steps.append(
            tag(
                "li",
                evaluation.say(step.says, step.values),
                tag("span", step.formula, class_="eq formula") if step.formula else None,
                tag("span", numbers, class_="eq") if numbers else None,
            )
        )
    return tag("ol", steps, class_="work")
