"""A card as HTML: the pieces of a page, each made from the card alone.

The same functions make the page at build time and each new answer in the
browser, so nothing is written twice and nothing jumps when Python arrives.
"""

from collections.abc import Iterable, Mapping
from typing import Any

from calculators import units, wording
from calculators.card import Card, Choice, Example, Input, Quantity, Readings, Rows, Words
from calculators.cautions import CAUTIONS, DEFERS
from calculators.evaluate import Evaluation, evaluate
from calculators.outputs.answer import answer, main, working
from calculators.outputs.element import Child, Element, tag, text_of
from calculators.outputs.form import form
from calculators.sources import BIBLIOGRAPHY
from calculators.wording import Entered


def whole_card(
    card: Card,
    entries: Mapping[str, Any] | None = None,
    *,
    system: str = "us",
    open_working: bool = False,
) -> str:
    """The live card with its default answer already in it."""
    entries = entries or {}
    evaluation = evaluate(card, entries, system=system)
    return text_of(
        tag(
            "worked-card",
            form(card, entries, system=system),
            tag("output", answer(evaluation), class_="answer"),
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
    return text_of(example_section(card, card.examples[number - 1], system=system))


def example_section(card: Card, example: Example, *, system: str = "us") -> Element:
    """A worked example of a card, from the card or from a lesson."""
    evaluation = evaluate(card, example.entries, system=system)
    return tag(
        "section",
        tag("h3", example.title),
        tag("p", example.shows) if example.shows else None,
        tag("dl", given(evaluation), class_="given"),
        tag("div", main(evaluation), class_="example-answer"),
        working(evaluation),
        class_="worked-example",
    )


def given(evaluation: Evaluation) -> list[Element]:
    """What was entered, name by name, blanks left out."""
    card = evaluation.card
    return [
        tag("div", tag("dt", each.label), tag("dd", _given(each, evaluation.entered[each.name])))
        for each in card.inputs
        if evaluation.entered[each.name] is not None
    ]


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
        "div",
        table,
        class_="scroll",
        tabindex=0,
        role="region",
        aria_label="What each input accepts",
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
        # A range stands in an absolute unit: what a gauge would show hangs on the barometer.
        unit = next(u for u in (each.us, *each.units) if not units.UNITS[u].gauge)
        ends = [
            wording.number(units.from_si(end, unit), figures=4)
            for end in (each.minimum, each.maximum)
        ]
        optional = "" if each.required else ", or blank"
        span = f"{ends[0]} to {wording.with_unit(ends[1], unit)}"
        return f"{span}{optional}; in {', '.join(each.units)}"
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
