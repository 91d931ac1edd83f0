"""The verification page: a line for every check, and a failure that shows."""

import json
import re

import pytest
from published_values import SUBJECTS
from published_values.checks import AgainstLibrary, Published, Subject

pytest.importorskip("matplotlib")  # the page draws, which Pyodide is not asked to

import judge_report
import verification

pytestmark = pytest.mark.native
PUBLISHED = [check for subject in SUBJECTS for check in subject.published]
LIBRARIES = [check for subject in SUBJECTS for check in subject.libraries]


def lines(html):
    return re.findall(r'<tr data-status="([^"]+)" role="row">(.*?)</tr>', html, re.S)


def test_the_report_has_a_line_for_every_check():
    html = verification.report()

    assert len(lines(html)) == len(PUBLISHED) + len(LIBRARIES)
    for check in PUBLISHED + LIBRARIES:
        assert check.what.replace("&", "&amp;") in html
    assert " style=" not in html


def test_the_summary_counts_them():
    counts = list(map(int, re.findall(r"\d+", verification.summary())))

    assert counts[0] == len(PUBLISHED) == counts[1] + counts[2]
    assert counts[3] == len(LIBRARIES)
    assert "None differs." in verification.summary()


def wrong(printed, ours):
    return Published(
        what="A wrong number", printed=printed, unit="Pa", ours=lambda: ours, source="PHYSICS"
    )


def test_a_check_that_fails_says_so():
    outcome = verification.published(wrong("8.94735", 8.9))

    assert (outcome.status, outcome.result) == ("differs", "Differs")
    assert outcome.deviation == "−0.53 %"


def test_the_page_opens_where_something_differs():
    subject = Subject(title="Wrong", published=(wrong("1.0", 2.0),))

    html = verification.text_of(
        verification._table(subject, "published", verification.outcomes(subject)[0])
    )

    assert "<details" in html
    assert " open" in html.partition(">")[0]
    assert "1 differ" in html


def test_a_library_that_is_not_there_is_not_run():
    check = AgainstLibrary(
        what="x", unit="Pa", ours=lambda: 1.0, theirs=lambda _: 1.0, module="no_such_library",
        within=1e-3,
    )  # fmt: skip

    outcome = verification.against_library(check)

    assert outcome.status == "not run"
    assert "not installed" in outcome.result


@pytest.mark.parametrize(
    ("printed", "ours", "theirs_shown", "ours_shown"),
    [
        ("8.94735", 8.9473526, "8.94735", "8.9473526"),
        ("1.01325e5", 101325.0, "1.01325 × 10⁵", "1.0132500 × 10⁵"),
        ("1.333224e-1", 0.13332237, "1.333224 × 10⁻¹", "1.33322370 × 10⁻¹"),
        ("2834.3", 2834.41, "2,834.3", "2,834.410"),
        ("-0.262", -0.2617, "−0.262", "−0.26170"),
    ],
)
def test_numbers_stand_as_printed_and_ours_in_the_same_form(
    printed, ours, theirs_shown, ours_shown
):
    outcome = verification.published(wrong(printed, ours))

    assert (outcome.theirs, outcome.ours) == (theirs_shown, ours_shown)


FOUND = {
    "logs": 1000,
    "matrix": {"pass": [9, 0, 0, 0, 1], "leak": [0, 8, 0, 0, 2], "tangled": [0, 0, 0, 0, 0]},
    "right": [95, 100],
    "undecided": [49, 50],
    "false_pass_leak": [0, 40],
    "false_pass_plateau": [0, 60],
    "leak_cover": [19, 20],
    "plateau_cover": [18, 20],
}


def test_the_decay_judge_is_worded_from_what_was_counted(tmp_path, monkeypatch):
    kept = tmp_path / "decay_judge.json"
    kept.write_text(json.dumps(FOUND), encoding="utf-8")
    monkeypatch.setattr(judge_report, "DATA", kept)
    monkeypatch.setattr(judge_report, "counted", lambda: FOUND)

    html = judge_report.report()

    assert "1,000 simulated tests" in html
    assert "None of 60 passes" in html
    assert "95 % were judged right" in html
    assert html.count("<tr>") == 1 + 2  # a kind that was never drawn is left out


def test_a_judge_that_was_not_tested_is_not_praised(tmp_path, monkeypatch):
    monkeypatch.setattr(judge_report, "DATA", tmp_path / "absent.json")

    assert judge_report.MISSING in judge_report.report()
