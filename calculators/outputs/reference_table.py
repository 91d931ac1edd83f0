"""Tables to look things up in: every number in them is a card's answer.

A cell holds what to ask of which card, so that a table can be checked cell by cell, and the
first cell of a row leads to the card with the row already typed in.
"""

import json
import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache, cached_property, partial
from typing import Any
from urllib.parse import urlencode

from calculators import units, wording
from calculators.cards import BY_SLUG
from calculators.evaluate import Evaluation, evaluate
from calculators.outputs.element import Element, tag, text_of


@dataclass(frozen=True, kw_only=True)
class Ask:
    """One cell: what to ask of a card, which of its numbers to show, and how.

    ``output`` names an output or an input of the card. Without a unit the
    cell shows the output's word, or the number as the card shows it.
    """

    card: str
    entries: Mapping[str, Any]
    output: str
    unit: str = ""
    figures: int = 4
    decimals: int | None = None

    def evaluation(self) -> Evaluation:
        """The whole answer of the card."""
        return _answered(self.card, json.dumps(self.entries))

    def value(self) -> float | str | None:
        """The answer itself: an SI number, a word's code, or nothing."""
        found = self.evaluation()
        if self.output in found.answer.outputs:
            return found.answer.outputs[self.output]
        entered = found.entered[self.output]
        return entered.si if isinstance(entered, wording.Entered) else entered

    def text(self) -> str:
        """The cell as it is printed."""
        value = self.value()
        if value is None:
            return "–"
        if isinstance(value, str) or not self.unit:
            return self.evaluation().say(f"{{{self.output}}}")
        if self.unit == "duration":
            return wording.duration(value)
        shown = units.from_si(value, self.unit)
        return wording.number(shown, figures=self.figures, decimals=self.decimals)


Row = tuple[str | Ask, ...]


def asking(card: str, **entries: Any) -> Callable[..., Ask]:
    """Ask a card once; the cells of a row differ in what they show of its answer."""
    return partial(Ask, card=card, entries=entries)


def heading(number: float) -> str:
    """The number that a row begins with, set as a number."""
    return wording.number(number, figures=6)


@dataclass(frozen=True, kw_only=True)
class ReferenceTable:
    """A table: its heads, its rows, and a few words on how to use it.

    ``says`` is a template: it may name inputs and outputs of the first cell's
    card, and ``values`` of its own in SI. ``made`` gives the rows when they
    are first wanted. A long narrow table may stand in ``parts`` side by side.
    """

    id: str
    caption: str
    says: str
    heads: tuple[str, ...]
    made: Callable[[], tuple[Row, ...]]
    values: Mapping[str, float | str] = field(default_factory=dict)
    parts: int = 1

    @cached_property
    def rows(self) -> tuple[Row, ...]:
        """Every row, as long as the heads."""
        rows = self.made()
        if any(len(row) != len(self.heads) for row in rows):
            raise TypeError(f"{self.id}: a row and the heads differ in length")
        return rows

    def asks(self) -> Iterator[Ask]:
        """Every cell that a card answers."""
        return (cell for row in self.rows for cell in row if isinstance(cell, Ask))

    def words(self, template: str) -> str:
        """Fill a caption or what it says with the numbers of the first cell's card."""
        return next(self.asks()).evaluation().say(template, self.values)


@cache
def _answered(card: str, entries: str) -> Evaluation:
    return evaluate(BY_SLUG[card], json.loads(entries))


def link(ask: Ask, calculators: str) -> str:
    """Address of the card with the entries of a cell typed in.

    Parameters
    ----------
    ask : Ask
        The cell.
    calculators : str
        Address of the folder of calculators, as seen from the page.
    """
    typed = {
        name: entry if isinstance(entry, str) else json.dumps(entry, ensure_ascii=False)
        for name, entry in ask.entries.items()
    }
    return f"{calculators}{ask.card}/?{urlencode(typed)}"


def html(table: ReferenceTable, calculators: str) -> str:
    """Give a table as HTML, with what it is for and the cards behind it.

    Parameters
    ----------
    table : ReferenceTable
        The table.
    calculators : str
        Address of the folder of calculators, as seen from the page.

    Returns
    -------
    str
        One section; a long table in parts that a wide screen sets side by side.
    """
    length = math.ceil(len(table.rows) / table.parts)
    parts = [table.rows[start : start + length] for start in range(0, len(table.rows), length)]
    slugs = dict.fromkeys(ask.card for ask in table.asks())
    from_cards: list[Element | str] = ["Answered by "]
    for number, slug in enumerate(slugs):
        from_cards += [", "] if number else []
        from_cards.append(tag("a", BY_SLUG[slug].title, href=f"{calculators}{slug}/"))
    return text_of(
        tag(
            "section",
            tag("p", table.words(table.says), class_="reference-use"),
            tag(
                "div",
                [_part(table, part, calculators, first=part is parts[0]) for part in parts],
                class_="reference-parts",
            ),
            tag("p", from_cards, ".", class_="made-by"),
            class_="reference",
            id=f"table-{table.id}",
        )
    )


def _part(
    table: ReferenceTable, rows: tuple[Row, ...], calculators: str, *, first: bool
) -> Element:
    caption = table.words(table.caption)
    numbers = {
        column
        for column, cells in enumerate(zip(*table.rows, strict=True))
        if any(isinstance(cell, Ask) and not isinstance(cell.value(), str) for cell in cells)
    }
    heads = [
        tag("th", head, scope="col", class_="number" if column in numbers else None)
        for column, head in enumerate(table.heads)
    ]
    body = [_row(row, numbers, calculators) for row in rows]
    return tag(
        "div",
        tag(
            "table",
            tag("caption", caption) if first else tag("caption", "continued", class_="continued"),
            tag("thead", tag("tr", heads)),
            tag("tbody", body),
        ),
        class_="scroll",
        tabindex=0,
        role="region",
        aria_label=caption if first else f"{caption}, continued",
    )


def _row(row: Row, numbers: set[int], calculators: str) -> Element:
    asked = next(cell for cell in row if isinstance(cell, Ask))
    texts = [cell.text() if isinstance(cell, Ask) else cell for cell in row]
    name = tag("a", texts[0], href=link(asked, calculators))
    cells = [tag("th", name, scope="row", class_="long" if len(texts[0]) > 14 else None)]
    for column, text in enumerate(texts[1:], start=1):
        cells.append(tag("td", text, class_="number" if column in numbers else None))
    return tag("tr", cells)
