"""The job record: checked, printed, exported, and feeding later steps."""

import csv
import io
import json
import re

import pytest

from calculators.cards import CARDS
from calculators.errors import CalculatorError
from calculators.job import facts, plan, schema, sheet
from calculators.outputs.browser import reply


def result(card, entries, when="2026-11-25T10:00:00Z", said="said", system="us"):
    return {
        "id": f"result-{card}-{when[11:13]}", "card": card, "entries": entries,
        "system": system, "when": when, "said": said,
    }  # fmt: skip


def job(*results, **facts):
    return {
        "format": schema.FORMAT, "version": schema.VERSION, "id": "job-00000001",
        "created": "2026-11-25T09:00:00Z", "changed": "2026-11-25T11:00:00Z",
        "facts": facts, "results": list(results),
    }  # fmt: skip


DECAY = {"readings": "0 305\n5 309\n10 312", "volume": "10 L"}


def test_every_card_belongs_to_one_step_of_the_job():
    listed = [slug for step in plan.STEPS for slug in step.cards]

    assert sorted(listed) == sorted(card.slug for card in CARDS)


def test_every_feed_names_inputs_and_values_that_exist():
    by_slug = {card.slug: card for card in CARDS}
    for (card, name), (source, wanted) in plan.FEEDS.items():
        assert name in [each.name for each in by_slug[card].inputs], (card, name)
        known = [each.name for each in (*by_slug[source].inputs, *by_slug[source].outputs)]
        assert wanted in known, (source, wanted)


def test_the_gauge_check_feeds_the_decay_test():
    record = job(
        result("gauge-check", {"resolution": "5 micron"}),
        result("inside-volume", {}, when="2026-11-25T09:30:00Z"),
    )

    fed = plan.fed_entries(record, "decay")

    assert fed["resolution"] == "5 micron"
    assert fed["volume"].endswith("L") or fed["volume"].endswith("ft³")


def test_the_newest_result_of_a_card_counts():
    record = job(
        result("gauge-check", {"resolution": "5 micron"}, when="2026-11-25T12:00:00Z"),
        result("gauge-check", {"resolution": "1 micron"}, when="2026-11-25T10:00:00Z"),
    )

    assert plan.fed_entries(record, "decay")["resolution"] == "5 micron"


def test_what_is_fed_can_be_entered_again():
    full = job(*(result(card.slug, {}) for card in CARDS))
    for card in CARDS:
        fed = plan.fed_entries(full, card.slug)
        asked = {"do": "answer", "card": card.slug, "entries": fed, "system": "us"}
        answer = json.loads(reply(json.dumps(asked)))
        # A combination may be refused by the physics, an entry never by its own input.
        assert answer["ok"] or all("outside" not in c["text"] for c in answer["complaints"]), (
            card.slug,
            answer,
        )


def test_the_sheet_shows_the_verdict_and_says_what_is_missing():
    html, charts = sheet.sheet(job(result("decay", DECAY), site="Village library"))

    assert "Village library" in html
    assert "The gauge has not been proved on this job." in html
    assert 'data-code="' in html
    assert len(charts) == 1


def test_the_sheet_of_every_card_can_be_made():
    html, _ = sheet.sheet(job(*(result(card.slug, {}) for card in CARDS)))

    assert "cannot be computed" not in html
    assert "Every step of the record is filled." in html


def test_a_result_that_reads_differently_now_says_so():
    html, _ = sheet.sheet(job(result("boiling-point", {}, said="Something else")))

    assert "When it was added it said: Something else" in html


def test_what_a_person_typed_cannot_become_markup():
    html, _ = sheet.sheet(job(site="<img src=x onerror=alert(1)>"))

    assert "<img" not in html


def test_csv_holds_every_entry_and_output():
    rows = list(
        csv.DictReader(
            io.StringIO(sheet.table(job(result("boiling-point", {"pressure": "500 micron"}))))
        )
    )

    assert {"kind": "entry", "name": "pressure", "value": "500 micron"}.items() <= rows[1].items()
    assert any(row["name"] == "temperature" and row["value"].endswith("K") for row in rows)


def test_csv_quotes_what_a_spreadsheet_would_run():
    assert "'=1+1" in sheet.table(job(site="=1+1"))


@pytest.mark.parametrize(
    "wrong",
    [
        None,
        [],
        {},
        {"format": "other"},
        {**job(), "version": 99},
        {**job(), "extra": 1},
        {**job(), "results": [{"card": "decay"}]},
        {**job(), "results": [result("no-such-card", {})]},
        {**job(), "results": [{**result("decay", {}), "when": "yesterday"}]},
        {**job(), "created": "2026-13-45T10:00:00Z"},
        {**job(), "results": [{**result("decay", {}), "entries": {"volume": 5}}]},
        {**job(), "facts": {"site": "x" * 500}},
        {**job(), "facts": {"shoe size": "44"}},
    ],
)
def test_a_file_that_is_not_a_job_gets_one_sentence(wrong):
    with pytest.raises(CalculatorError) as error:
        schema.check(wrong)

    assert "\n" not in str(error.value)


def test_the_check_agrees_with_an_independent_validator():
    # Source: jsonschema, an independent implementation of JSON Schema 2020-12.
    jsonschema = pytest.importorskip("jsonschema")
    validator = jsonschema.Draft202012Validator(schema.SCHEMA)
    good = job(result("decay", DECAY), site="Dairy")
    bad = [{**good, "extra": 1}, {**good, "id": "!"}, {**good, "results": [{"card": "decay"}]}]

    assert validator.is_valid(good)
    schema.check(good)
    for each in bad:
        assert not validator.is_valid(each)
        with pytest.raises(CalculatorError):
            schema.check(each)


def test_every_field_of_the_file_is_described():
    def undescribed(rule):
        for name, each in rule.get("properties", {}).items():
            if not each.get("description"):
                yield name
            yield from undescribed(each)
            yield from undescribed(each.get("items", {}))

    assert list(undescribed(schema.SCHEMA)) == []


def test_the_form_asks_for_every_fact_of_the_file():
    names = re.findall(r'name="(\w+)"', facts.form())

    assert names == list(schema.SCHEMA["properties"]["facts"]["properties"])


def test_results_are_ordered_by_the_moment_not_by_the_clock_on_the_wall():
    record = job(
        result("gauge-check", {"resolution": "1 micron"}, when="2026-11-25T12:00:00+05:00"),
        result("gauge-check", {"resolution": "5 micron"}, when="2026-11-25T11:00:00+01:00"),
    )

    assert plan.fed_entries(record, "decay")["resolution"] == "5 micron"


def test_a_file_is_checked_through_the_line_to_the_page():
    def ask(file):
        return json.loads(reply(json.dumps({"do": "job", "give": "check", "job": file})))

    assert ask(job()) == {"ok": True}
    assert "“extra”" in ask({**job(), "extra": 1})["complaints"][0]["text"]
