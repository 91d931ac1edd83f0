"""Reference tables: every cell asks a card, every row leads to it, every page shows it."""

import itertools
import json
import re
from pathlib import Path
from urllib.parse import parse_qs, urlsplit
from xml.etree import ElementTree

import pytest
from published import agrees

from calculators import units
from calculators.cards import BY_SLUG
from calculators.evaluate import evaluate
from calculators.outputs.reference import BY_ID, TABLES
from calculators.outputs.reference_table import Ask, html, link

ROOT = Path(__file__).resolve().parents[1]
every_table = pytest.mark.parametrize("table", TABLES, ids=lambda table: table.id)


def rows_of(table):
    root = ElementTree.fromstring(html(table, "../../calculators/"))
    return [["".join(cell.itertext()) for cell in row] for row in root.iter("tr")], root


@every_table
def test_every_row_asks_a_card(table):
    for row in table.rows:
        assert any(isinstance(cell, Ask) for cell in row), row


@every_table
def test_every_cell_is_what_its_card_answers(table):
    for ask in table.asks():
        found = evaluate(BY_SLUG[ask.card], ask.entries)
        value = found.answer.outputs.get(ask.output, found.entered.get(ask.output))
        value = getattr(value, "si", value)

        assert ask.value() == value
        if isinstance(value, float) and ask.unit not in ("", "duration"):
            printed = ask.text().replace(",", "").replace("−", "-")
            number = re.sub(r" × 10(\S+)", lambda m: "e" + plain(m[1]), printed)
            assert agrees(units.from_si(value, ask.unit), number)


def plain(raised):
    return raised.translate(str.maketrans("⁻⁰¹²³⁴⁵⁶⁷⁸⁹", "-0123456789"))


@every_table
def test_every_number_on_the_page_is_a_cell_or_the_entry_of_its_row(table):
    texts, _ = rows_of(table)
    shown = [row for row in texts if row != list(table.heads)]

    assert len(shown) == len(table.rows)
    for row, cells in zip(shown, table.rows, strict=True):
        assert row == [cell.text() if isinstance(cell, Ask) else cell for cell in cells]


@every_table
def test_a_typed_cell_is_the_entry_that_was_asked(table):
    """What is not a card's answer stands among the entries: "500" of "500 micron"."""
    for row in table.rows:
        entries = json.dumps([cell.entries for cell in row if isinstance(cell, Ask)])
        for cell in row:
            if isinstance(cell, str) and (number := re.match(r"[−\d][\d,/.-]*", cell)):
                assert number[0].replace(",", "").replace("−", "-") in entries, cell


@every_table
def test_the_first_cell_opens_the_card_with_the_row_typed_in(table):
    _, root = rows_of(table)
    links = [row.find("th/a") for row in root.iter("tr") if row.find("th/a") is not None]

    for row, anchor in zip(table.rows, links, strict=True):
        address = urlsplit(anchor.get("href"))
        ask = next(cell for cell in row if isinstance(cell, Ask))
        typed = {name: value[0] for name, value in parse_qs(address.query).items()}

        assert address.path == f"../../calculators/{ask.card}/"
        assert {n: evaluate_entry(v) for n, v in typed.items()} == dict(ask.entries)


def evaluate_entry(text):
    return json.loads(text) if text.startswith("[") else text


@every_table
def test_a_table_is_fit_for_the_page(table):
    _, root = rows_of(table)

    assert "style" not in {key for each in root.iter() for key in each.attrib}
    assert all(box.get("aria-label") for box in root.iter("div") if box.get("role") == "region")
    assert root.find(".//caption") is not None


def test_every_table_stands_on_a_page():
    pages = (ROOT / "docs").rglob("*.md")
    asked = re.findall(r"<!-- table: (\S+) ", "".join(p.read_text("utf-8") for p in pages))

    assert sorted(set(asked)) == sorted(BY_ID)


# The rows that people look up most, against sources apart from this code: IAPWS R14-08 and
# SR1-86 by CoolProp and chemicals; the 1976 atmosphere's table of geometric altitude.
KNOWN = [
    ("boiling-point", "500", 1, "-12.1"),
    ("boiling-point", "1,000", 1, "0.8"),
    ("vapor-pressure", "0", 2, "957"),
    ("altitude", "5,280", 2, "24.64"),
    ("equivalents", "500", 1, "66.66"),
    ("recovery", "Low-pressure appliance", 2, "25000"),
]


@pytest.mark.parametrize(("name", "first", "column", "printed"), KNOWN)
def test_a_well_known_row(name, first, column, printed):
    row = next(row for row in BY_ID[name].rows if row[0] == first)

    assert agrees(units.from_si(row[column].value(), row[column].unit), printed)


def test_technicians_find_fine_steps_where_they_read():
    readings = [int(row[0].replace(",", "")) for row in BY_ID["boiling-point"].rows]

    assert readings[0] == 50
    assert readings[-1] == 5_000
    assert readings == sorted(set(readings))
    steps = [later / sooner for sooner, later in itertools.pairwise(readings)]
    assert max(steps) <= 1.26


def test_rows_turn_from_ice_to_liquid_once():
    phases = [row[3].value() for row in BY_ID["boiling-point"].rows]

    assert phases == sorted(phases)
    assert set(phases) == {"ice", "liquid"}


def test_a_link_carries_rows_as_json():
    ask = Ask(card="pull-down", entries={"path": [{"part": "hose-1/4"}]}, output="time")

    assert link(ask, "/c/") == "/c/pull-down/?path=%5B%7B%22part%22%3A+%22hose-1%2F4%22%7D%5D"
