"""A card as HTML: the form, the answer, the working, and what stands around them.

The same functions make the page at build time and each new answer in the
browser, so nothing is written twice and nothing jumps when Python arrives.
Trees are built with the standard library, which does the escaping.
"""

from collections.abc import Iterable, Mapping
from typing import Any
from xml.etree import ElementTree

from calculators import units, wording
from calculators.card import Card, Choice, Input, Quantity, Readings, Rows, Table, Words
from calculators.cautions import CAUTIONS, DEFERS
from calculators.evaluate import Evaluation, evaluate
from calculators.outputs.chart import as_chart
from calculators.outputs.data import shown
from calculators.sources import BIBLIOGRAPHY
from calculators.wording import Entered

Element = ElementTree.Element
Child = Element | str | None

# The shape of the pressure against time is the verdict's code; color only helps.
SHAPES = {
    "pass": "M8 40 C20 39 40 39 66 39",
    "leak": "M8 43 L66 9",
    "moisture": "M8 43 C18 16 30 13 66 12",
    "leak-and-moisture": "M8 45 C14 28 22 27 32 24 L66 8",
    "undecided": "M18 28 h.01 M36 28 h.01 M54 28 h.01",
}


def tag(_name: str, *children: Child | Iterable[Child], **attributes: Any) -> Element:
    """Make an element; ``class_`` and ``for_`` lose their underscore, True is a bare flag."""
    element = Element(_name)
    for key, value in attributes.items():
        if value is None or value is False:
            continue
        name = key.rstrip("_").replace("_", "-")
        element.set(name, name if value is True else str(value))
    for child in children:
        for each in [child] if isinstance(child, (str, Element)) or child is None else child:
            if isinstance(each, Element):
                element.append(each)
            elif each is not None and len(element):
                element[-1].tail = (element[-1].tail or "") + each
            elif each is not None:
                element.text = (element.text or "") + each
    return element


def text_of(*elements: Element) -> str:
    """Write elements as HTML."""
    return "".join(ElementTree.tostring(e, encoding="unicode", method="html") for e in elements)


# --- the form --------------------------------------------------------------


def form(card: Card, entries: Mapping[str, Any], *, system: str = "us") -> Element:
    """The card's inputs, filled with these entries."""
    fields = [
        _field(each, entries.get(each.name), card.slug, each.name, system) for each in card.inputs
    ]
    return tag("form", fields, class_="ask", novalidate=True)


def _field(each: Input, entry: Any, prefix: str, name: str, system: str) -> Element:
    if isinstance(each, Rows):
        return _rows(each, entry, prefix, name, system)
    identity = f"{prefix}-{name}".replace(".", "-")
    helped = [f"{identity}-help"] if each.help else []
    described = " ".join([*helped, f"{identity}-complaint"])
    text = each.default if entry is None else str(entry)
    control = {"id": identity, "name": name, "aria_describedby": described}
    more: list[Child] = []
    if isinstance(each, Quantity):
        value, unit = _split(each, text, system)
        box = tag(
            "div",
            tag(
                "input", type="text", inputmode="decimal", autocomplete="off", value=value,
                placeholder=None if each.required else "not given", **control,
            ),
            tag(
                "select",
                [tag("option", u, value=u, selected=u == unit) for u in each.units],
                name=f"{name}.unit", aria_label=f"Unit of {each.label.lower()}",
            ),
            class_="field",
        )  # fmt: skip
    elif isinstance(each, Choice):
        options = [
            tag("option", label, value=value, selected=value == text)
            for value, label in each.options
        ]
        box = tag("div", tag("select", options, **control), class_="field choice")
    elif isinstance(each, Words):
        box = tag(
            "div",
            tag("input", type="text", value=text, maxlength=each.longest, autocomplete="off",
                **control),
            class_="field",
        )  # fmt: skip
    else:
        assert isinstance(each, Readings)
        box = tag("textarea", text, rows=8, spellcheck="false", autocomplete="off", **control)
        more.append(
            tag(
                "label", "From a file ",
                tag("input", type="file", class_="file", accept=".csv,.txt,.tsv,text/csv,text/plain",
                    data_for=name),
                class_="from-file",
            )
        )  # fmt: skip
    return tag(
        "div",
        tag(
            "label", each.label,
            [" ", tag("span", each.hint, class_="hint")] if each.hint else None, for_=identity,
        ),
        box,
        more,
        tag("p", each.help, class_="help", id=helped[0]) if each.help else None,
        tag("p", class_="complaint", id=f"{identity}-complaint", hidden=True),
        class_="ask-row",
        data_input=name,
        data_kind=type(each).__name__.lower(),
    )  # fmt: skip


def _split(each: Quantity, text: str, system: str) -> tuple[str, str]:
    """Number and unit of an entry, as the two parts of the field."""
    first = each.si if system == "si" else each.us
    if not text:
        return "", first
    _, unit, typed = units.read(text, bare=first)
    return typed, unit


def _rows(each: Rows, entry: Any, prefix: str, name: str, system: str) -> Element:
    rows = each.default if entry is None else entry
    blank = tag("template", _row(each, {}, prefix, f"{name}.0", system))
    return tag(
        "fieldset",
        tag("legend", each.label, [" ", tag("span", each.hint, class_="hint")] if each.hint else None),
        tag("p", each.help, class_="help") if each.help else None,
        tag("ol", [_row(each, row, prefix, f"{name}.{i}", system) for i, row in enumerate(rows)]),
        blank,
        tag("p", class_="complaint", id=f"{prefix}-{name}-complaint", hidden=True),
        tag("button", f"Add a {each.row}", type="button", class_="row-add", data_row="add"),
        class_="rows",
        data_input=name,
        data_row_name=each.row,
        data_minimum=each.minimum,
        data_maximum=each.maximum,
    )


def _row(each: Rows, row: Mapping[str, Any], prefix: str, name: str, system: str) -> Element:
    cells = [
        _field(column, row.get(column.name), prefix, f"{name}.{column.name}", system)
        for column in each.columns
    ]
    tools = [
        tag("button", label, type="button", data_row=action, aria_label=f"{title} {each.row}")
        for action, label, title in (
            ("up", "↑", "Move up this"),
            ("down", "↓", "Move down this"),
            ("remove", "Remove", "Remove this"),
        )
    ]
    return tag("li", cells, tag("div", tools, class_="row-tools"), class_="row")


# --- the answer ------------------------------------------------------------


def answer(evaluation: Evaluation, *, static_chart: str = "") -> list[Element]:
    """What stands in the answer column, each part marked so that it can be renewed alone."""
    card, result, say = evaluation.card, evaluation.answer, evaluation.say
    parts = [_main(evaluation)]
    if result.verdict and result.verdict.because:
        reasons = [tag("p", say(reason)) for reason in result.verdict.because]
        parts.append(tag("div", reasons, class_="because", data_part="because"))
    if result.notes:
        notes = [tag("p", say(note), class_="note") for note in result.notes]
        parts.append(tag("div", notes, class_="notes", data_part="notes"))
    if result.chart:
        parts.append(_figure(evaluation, static_chart))
    facts = [out for out in card.outputs if result.verdict or out.name != card.primary]
    facts = [out for out in facts if result.outputs[out.name] is not None and out.name != "verdict"]
    if facts:
        parts.append(tag("dl", [_fact(evaluation, o) for o in facts], class_="facts", data_part="facts"))
    for index, table in enumerate(result.tables):
        parts.append(_table(evaluation, table, f"table-{index}"))
    return parts


def _main(evaluation: Evaluation) -> Element:
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
    big = [value, tag("small", unit)] if split else [first]
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
    if out.choices is not None or value is None or out.us == out.si:
        return first, ""
    other = out.us if evaluation.system == "si" else out.si
    return first, wording.quantity(value, other, figures=out.figures, decimals=out.decimals)


def _fact(evaluation: Evaluation, out: Any) -> Element:
    first, second = both(evaluation, out)
    more = [" ", tag("span", second, class_="second")] if second else None
    return tag("div", tag("dt", out.label), tag("dd", first, more), data_output=out.name)


def _figure(evaluation: Evaluation, static_chart: str) -> Element:
    chart = as_chart(evaluation)
    return tag(
        "figure",
        tag("div", static_chart, class_="plot"),
        tag("figcaption", chart["summary"] or chart["title"]),
        class_="chart", data_part="chart",
    )  # fmt: skip


def _table(evaluation: Evaluation, table: Table, part: str) -> Element:
    heads, body = table_cells(evaluation, table)
    return tag(
        "details",
        tag("summary", table.caption),
        tag(
            "div",
            tag(
                "table",
                tag("thead", tag("tr", [tag("th", head, scope="col") for head in heads])),
                tag("tbody", [tag("tr", [tag("td", cell) for cell in row]) for row in body]),
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
                settings = {"figures": column.figures, "decimals": column.decimals}
                cells.append(wording.number(units.from_si(cell, unit), **settings))
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


# --- whole pieces of a page -------------------------------------------------


def whole_card(
    card: Card,
    entries: Mapping[str, Any] | None = None,
    *,
    system: str = "us",
    open_working: bool = False,
    static_chart: str = "",
) -> str:
    """The live card with its default answer already in it."""
    entries = entries or {}
    evaluation = evaluate(card, entries, system=system)
    return text_of(
        tag(
            "worked-card",
            form(card, entries, system=system),
            tag("output", answer(evaluation, static_chart=static_chart), class_="answer"),
            tag(
                "details", tag("summary", "Working"), working(evaluation),
                class_="working", open=open_working,
            ),
            card=card.slug, state="static", data_code=_code(evaluation),
        )
    )  # fmt: skip


def _code(evaluation: Evaluation) -> str | None:
    return evaluation.answer.verdict.code if evaluation.answer.verdict else None


def worked_example(card: Card, number: int, *, system: str = "us") -> str:
    """Worked example ``number`` (from 1): what is entered, the answer, every step."""
    example = card.examples[number - 1]
    evaluation = evaluate(card, example.entries, system=system)
    given = [
        tag("div", tag("dt", each.label), tag("dd", _given(each, evaluation.entered[each.name])))
        for each in card.inputs
        if evaluation.entered[each.name] is not None
    ]
    return text_of(
        tag(
            "section",
            tag("h3", example.title),
            tag("p", example.shows) if example.shows else None,
            tag("dl", given, class_="given"),
            tag("div", _main(evaluation), class_="example-answer"),
            working(evaluation),
            class_="worked-example",
        )
    )


def _given(each: Input, entered: Any) -> Child | list[Child]:
    if isinstance(each, Choice):
        return dict(each.options)[entered]
    if isinstance(each, Readings):
        return f"{len(entered.times)} readings"
    if isinstance(each, Rows):
        columns = {column.name: column for column in each.columns}
        rows = []
        for row in entered:
            cells = [_given(columns[n], cell) for n, cell in row.items() if cell not in (None, "")]
            rows.append(tag("li", ", ".join(str(cell) for cell in cells)))
        return tag("ol", rows)
    return str(entered) if isinstance(entered, Entered) else entered


def ranges(card: Card) -> str:
    """What each input accepts, and what the answer assumes."""
    rows = []
    for each in card.inputs:
        for one, label in _flat(each):
            rows.append(tag("tr", tag("th", label, scope="row"), tag("td", _accepts(one))))
    head = tag("tr", tag("th", "Input", scope="col"), tag("th", "Accepts", scope="col"))
    table = tag("table", tag("thead", head), tag("tbody", rows))
    scroll = tag(
        "div", table, class_="scroll", tabindex=0, role="region", aria_label="What each input accepts"
    )
    assumes = tag("ul", [tag("li", text) for text in card.assumptions], class_="assumes")
    return text_of(scroll, tag("p", "This assumes:"), assumes)


def _flat(each: Input) -> Iterable[tuple[Input, str]]:
    if isinstance(each, Rows):
        for column in each.columns:
            yield column, f"{each.label}: {column.label.lower()}"
    else:
        yield each, each.label


def _accepts(each: Input) -> str:
    if isinstance(each, Quantity):
        ends = [
            wording.number(units.from_si(end, each.us), figures=4)
            for end in (each.minimum, each.maximum)
        ]
        optional = "" if each.required else ", or blank"
        return f"{ends[0]} to {wording.with_unit(ends[1], each.us)}{optional}; in {', '.join(each.units)}"
    if isinstance(each, Choice):
        return ", ".join(label for _, label in each.options)
    if isinstance(each, Words):
        return f"up to {each.longest} characters"
    return "times and pressures, two or more"


def cautions(keys: Iterable[str]) -> str:
    """Ruled boxes, short, with the full text one tap away."""
    boxes = []
    for key in keys:
        caution = CAUTIONS[key]
        boxes.append(
            tag(
                "details",
                tag("summary", tag("b", caution.title), " ", tag("span", caution.short)),
                tag("p", tag("b", "Who can be hurt: "), caution.who),
                tag("p", tag("b", "How: "), caution.how),
                tag("ul", [tag("li", text) for text in caution.practice]),
                tag("p", DEFERS),
                class_="caution", data_caution=key,
            )
        )  # fmt: skip
    return text_of(tag("div", boxes, class_="cautions", role="note", aria_label="Cautions"))


def sources(card: Card) -> str:
    """Where the card's numbers come from."""
    items = []
    for cite in card.sources:
        source = BIBLIOGRAPHY[cite.key]
        locator = f", {cite.locator}" if cite.locator else ""
        year = f" ({source.year})" if source.year else ""
        items.append(tag("li", f"{source.author}: {source.title}{year}{locator}."))
    return text_of(tag("ul", items, class_="sources"))
