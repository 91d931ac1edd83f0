"""A card's inputs as an HTML form, one field per input, rows and all."""

from collections.abc import Mapping, Sequence
from typing import Any

from calculators import units
from calculators.card import Card, Choice, Input, Quantity, Readings, Rows, Words
from calculators.outputs.element import Child, Element, tag


def form(card: Card, entries: Mapping[str, Any], *, system: str = "us") -> Element:
    """The card's inputs, filled with these entries."""
    fields = _fields(card.inputs, entries, card.slug, "", system)
    return tag("form", fields, class_="ask", novalidate=True)


def _fields(
    inputs: Sequence[Input], entries: Mapping[str, Any], prefix: str, place: str, system: str
) -> list[Element]:
    """A field for each input; those that few people change stand folded after the rest."""

    def field(each: Input) -> Element:
        return _field(each, entries.get(each.name), prefix, f"{place}{each.name}", system)

    fields = [field(each) for each in inputs if not each.folded]
    folded = [each for each in inputs if each.folded]
    if folded:
        labels = ", ".join(each.label[:1].lower() + each.label[1:] for each in folded)
        summary = tag("summary", "More: ", tag("span", labels))
        is_open = any(each.name in entries for each in folded)
        rest = [field(each) for each in folded]
        fields.append(tag("details", summary, tag("div", rest), class_="fold", open=is_open))
    return fields


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
                tag("input", type="file", class_="file", accept=".csv,.txt,.tsv",
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
        tag(
            "legend",
            each.label,
            [" ", tag("span", each.hint, class_="hint")] if each.hint else None,
        ),
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
    cells = _fields(each.columns, row, prefix, f"{name}.", system)
    tools = [
        tag("button", label, type="button", data_row=action, aria_label=f"{title} {each.row}")
        for action, label, title in (
            ("up", "↑", "Move up this"),
            ("down", "↓", "Move down this"),
            ("remove", "Remove", "Remove this"),
        )
    ]
    return tag("li", cells, tag("div", tools, class_="row-tools"), class_="row")
