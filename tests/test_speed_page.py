"""The page on speed says what the data say, and the slow link is as slow as it claims."""

import json
import re

import pytest

pytest.importorskip("brotli")  # the server's, which Pyodide is not asked to have

import shaped_link
import speed_report

pytestmark = pytest.mark.native


def visit(*ms, size=0):
    return {"ms": list(ms), "bytes": [size] * len(ms), "readable": [300] * len(ms)}


@pytest.fixture
def measured(tmp_path, monkeypatch):
    """Lay data beside the real ones, of which every figure is known."""
    ways = {
        "guide": {"cold": visit(400, 500, 900, size=5_600_000), "next": visit(50, 60, 70)},
        "without": {"cold": visit(1000, 1000, 1300)},
        "plain": {"cold": visit(2000, 3250, 9000, size=6_450_000)},
    }
    whole = {"runs": 3, "ways": ways, "copies": {"guide": 5e6, "guide, second visit": 0}}
    link = {"runs": 3, "bits_per_second": 9e6, "delay": 0.06, "ways": ways}
    pages = [{"pages": 10, "seconds": 3.0}, {"pages": 20, "seconds": 5.0}]
    data = tmp_path / "speed.json"
    found = {"start": whole, "link": link, "build": {"pages": pages, "unchanged": 0.41}}
    data.write_text(json.dumps(found))
    monkeypatch.setattr(speed_report, "DATA", data)


def words(html):
    return " ".join(re.sub("<[^>]+>", " ", html).split())


def test_a_ratio_is_that_of_the_medians(measured):
    said = words(speed_report.part("start"))

    assert "6.5 times as fast: first visit" in said
    assert "First visit 0.50 0.40–0.90 1.00 1.00–1.30 3.25 2.00–9.00" in said


def test_a_visit_that_only_the_guide_makes_has_no_ratio(measured):
    said = words(speed_report.part("start"))

    assert "times as fast: the next page" not in said
    assert "The next page 0.06 0.05–0.07" in said


def test_the_link_is_described_by_what_was_measured(measured):
    said = words(speed_report.part("link"))

    assert "9 Mbit/s for all connections together; 60 ms more" in said
    assert "can be read after 0.30 s ." in said


def test_bytes_are_in_words(measured):
    said = words(speed_report.part("wire"))

    assert "For the first answer of a first visit 5.60 MB nothing 6.45 MB" in said
    assert "a second visit fetches nothing ." in said


def test_the_build_is_a_start_and_a_time_for_each_page(measured):
    assert "takes 1 s to begin with and 0.2 s for each page" in words(speed_report.part("build"))


def test_what_was_not_measured_is_said(measured):
    assert words(speed_report.part("slowed")) == speed_report.MISSING


def test_the_link_is_one_for_all_connections():
    link = shaped_link.Link(bits_per_second=8e6)

    first, second = link.take(1_000_000), link.take(500_000)

    assert second - first == pytest.approx(0.5)
