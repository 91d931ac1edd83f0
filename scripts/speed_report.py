"""The page on speed: what bench_start.py measured, in words and as tables.

The figures are those of docs/look-up/speed.json; nothing is measured when the site is built.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from statistics import median
from typing import Any

from steps import ROOT

from calculators import wording
from calculators.outputs.element import Child, Element, tag, text_of

DATA = ROOT / "docs" / "look-up" / "speed.json"  # kept by bench_start.py
WAYS = {
    "guide": "This guide",
    "without": "Without the snapshot",
    "plain": "Plain PyScript",
}
VISITS = {
    "cold": "First visit",
    "warm": "Again, in the same browser",
    "next": "The next page",
    "back": "After closing the browser",
}


MISSING = "This has not been measured here."


def part(name: str) -> str:
    """One part of the page, from the part of the data that it is about."""
    found = _data()
    about = {"wire": "start"}.get(name, name)
    if about not in found and name != "machine":
        return text_of(tag("p", MISSING))
    return PARTS[name](found.get(about, found))


def _data() -> dict[str, Any]:
    return json.loads(DATA.read_text(encoding="utf-8")) if DATA.exists() else {}


# --- the parts of the page ------------------------------------------------------


def start(found: dict[str, Any]) -> str:
    """How soon Python answers, at the machine's own speed."""
    return _compared(found, "Seconds to the first answer")


def link(found: dict[str, Any]) -> str:
    """The same behind a phone's link, and when the page can be read."""
    read = _middle(found, "guide", "cold", "readable")
    line = tag(
        "p",
        "The page itself, with its default answer, can be read after ",
        tag("b", _seconds(read)),
        ". Its Python answers later, and then takes what you have typed meanwhile.",
    )
    shaped = tag(
        "p",
        f"{found['bits_per_second'] / 1e6:g} Mbit/s for all connections together; "
        f"{1000 * found['delay']:g} ms more for each request, and for each new connection.",
    )
    return text_of(shaped, line) + _compared(found, "Seconds to the first answer on the slow link")


def slowed(found: dict[str, Any]) -> str:
    """The same with a quarter of the processor."""
    return _compared(found, "Seconds to the first answer on the slow processor")


def wire(found: dict[str, Any]) -> str:
    """What goes over the wire."""
    whole, again = found["copies"]["guide"], found["copies"]["guide, second visit"]

    def row(label: str, visit: str) -> Element:
        cells = (
            _size(_middle(found, name, visit, "bytes")) if visit in found["ways"][name] else ""
            for name in WAYS
        )
        return _row(label, cells)

    rows = [row("For the first answer of a first visit", "cold")]
    rows.append(row("Again, in the same browser", "warm"))
    rows.append(row("After closing the browser", "back"))
    line = tag(
        "p",
        "After the first answer the guide fetches the rest of itself, ",
        tag("b", _size(whole)),
        ", to work without a signal. With that copy whole, a second visit fetches ",
        tag("b", _size(again)),
        ".",
    )
    return text_of(line, _table("Fetched for the answer", list(WAYS.values()), rows))


def build(found: dict[str, Any]) -> str:
    """How long the site takes to build."""
    least, most = found["pages"][0], found["pages"][-1]
    each = (most["seconds"] - least["seconds"]) / (most["pages"] - least["pages"])
    line = tag(
        "p",
        "Building takes ",
        tag("b", f"{_number(least['seconds'] - each * least['pages'])} s"),
        " to begin with and ",
        tag("b", f"{_number(each)} s"),
        " for each page. With nothing changed, finding that out takes ",
        tag("b", f"{_number(found['unchanged'])} s"),
        ".",
    )
    rows = [
        _row(f"{one['pages']} pages", [_seconds(1000 * one["seconds"])]) for one in found["pages"]
    ]
    return text_of(line, _table("Building the pages", ["Time"], rows))


def lighthouse(found: dict[str, Any]) -> str:
    """Lighthouse's scores."""
    heads = {
        "performance": "Performance",
        "accessibility": "Accessibility",
        "best-practices": "Best practices",
        "seo": "Search engines",
    }
    rows = [
        _row(one["page"], [wording.number(one[name]) for name in heads]) for one in found["pages"]
    ]
    caption = f"Scores out of 100, Lighthouse {found['lighthouse']}, its phone settings"
    return text_of(_table(caption, list(heads.values()), rows))


def machine(found: dict[str, Any]) -> str:
    """When and on what each part was measured."""
    names = {
        "start": "Starts and bytes",
        "link": "Slow link",
        "slowed": "Slow processor",
        "build": "Build",
        "lighthouse": "Lighthouse",
    }
    rows = []
    for name, label in names.items():
        if one := found.get(name):
            load = ", then ".join(f"{each:.1f}" for each in one["load"])
            cells = (one["date"], str(one.get("runs", 3)), load, f"{one['cores']} cores")
            rows.append(_row(label, [*cells, one["browser"]]))
    heads = ["Measured on", "Runs", "Load", "Machine", "Browser"]
    return text_of(_table("Each part's run", heads, rows))


PARTS = {one.__name__: one for one in (start, link, slowed, wire, build, lighthouse, machine)}


# --- words and tables ---------------------------------------------------------------


def _compared(found: dict[str, Any], caption: str) -> str:
    """Who answers how soon, and how many times as fast the guide is."""
    ways = found["ways"]
    visits = [visit for visit in VISITS if visit in ways["guide"]]
    said = [
        tag("li", tag("b", f"{_ratio(found, visit)} times"), f" as fast: {VISITS[visit].lower()}")
        for visit in visits
        if visit in ways["plain"]
    ]
    lead = tag("p", "Against the plain PyScript page, this guide answers")
    rows = [_row(VISITS[visit], [_time(found, name, visit) for name in WAYS]) for visit in visits]
    return text_of(lead, tag("ul", said), _table(caption, list(WAYS.values()), rows))


def _middle(found: dict[str, Any], way: str, visit: str, what: str = "ms") -> float:
    return median(found["ways"][way][visit][what])


def _ratio(found: dict[str, Any], visit: str) -> str:
    return f"{_middle(found, 'plain', visit) / _middle(found, 'guide', visit):.1f}"


def _time(found: dict[str, Any], way: str, visit: str) -> Child:
    """A median, with the fastest and the slowest run under it."""
    if visit not in found["ways"][way]:
        return ""
    times = found["ways"][way][visit]["ms"]
    least, most = (f"{one / 1000:.2f}" for one in (min(times), max(times)))
    return tag(
        "span", f"{median(times) / 1000:.2f}", tag("small", f"{least}–{most}", class_="spread")
    )


def _seconds(milliseconds: float) -> str:
    return f"{milliseconds / 1000:.2f} s"


def _number(value: float) -> str:
    return wording.number(value, figures=2)


def _size(count: float) -> str:
    if count >= 1e5:
        return f"{count / 1e6:.2f} MB"
    return f"{count / 1e3:.1f} KB" if count else "nothing"


def _row(label: str, cells: Sequence[Child] | Any) -> Element:
    return tag(
        "tr",
        tag("th", label, scope="row", class_="long"),
        [tag("td", cell, class_="number") for cell in cells],
    )


def _table(caption: str, heads: Sequence[str], rows: Sequence[Element]) -> Element:
    head = [tag("td"), *(tag("th", each, scope="col", class_="number") for each in heads)]
    table = tag("table", tag("caption", caption), tag("thead", tag("tr", head)), tag("tbody", rows))
    box = tag("div", table, class_="scroll", tabindex=0, role="region", aria_label=caption)
    return tag("div", box, class_="reference times")
