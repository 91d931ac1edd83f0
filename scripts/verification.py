"""The verification report: every check against a published value, run when the site is built.

Nothing in it is typed: the published values are those of tests/published_values, ours are
computed here and now, and a check that fails says so on the page.
"""

from __future__ import annotations

import math
import sys
from collections import Counter
from dataclasses import dataclass
from functools import cache
from importlib import metadata

import figures
import judge_report
from steps import ROOT

from calculators import wording
from calculators.outputs.element import Child, Element, tag, text_of
from calculators.sources import BIBLIOGRAPHY

sys.path.append(str(ROOT / "tests"))

from published_values import SUBJECTS
from published_values.checks import AgainstLibrary, Published, Subject

AGREES, WITHIN, DIFFERS, NOT_RUN = "agrees", "within", "differs", "not run"


@dataclass(frozen=True, kw_only=True)
class Outcome:
    """One line of the report, run."""

    what: str
    unit: str
    theirs: str
    ours: str
    deviation: str
    status: str
    result: str
    because: str
    source: tuple[Child, ...]


def published(check: Published) -> Outcome:
    """Run a check against a printed value."""
    ours, holds = check.ours(), check.holds()
    status = DIFFERS if not holds else AGREES if check.within is None else WITHIN
    result = {
        AGREES: "Agrees as printed",
        WITHIN: f"Within {_share(check.within or 0.0)}",
        DIFFERS: "Differs",
    }[status]
    key = check.source
    named: Child = tag("a", key, href=f"../sources/#{key.lower()}") if key in BIBLIOGRAPHY else key
    more = "".join(
        (f", {check.locator}" if check.locator else "", ", from memory" * check.from_memory)
    )
    return Outcome(
        what=check.what,
        unit=check.unit,
        theirs=_printed(check.printed),
        ours=_printed(_like(check.printed, ours)),
        deviation=_deviation(ours, check.theirs()),
        status=status,
        result=result,
        because=check.because,
        source=(named, more),
    )


def against_library(check: AgainstLibrary) -> Outcome:
    """Run a check against a general reference library, if it is installed."""
    ours, library = check.ours(), check.library()
    name = check.module.split(".")[0]
    figures = min(10, 2 - math.floor(math.log10(check.within)))
    if library is None:
        theirs, deviation, status, result = "–", "–", NOT_RUN, f"Not run: {name} is not installed"
        source = name
    else:
        value = check.theirs(library)
        theirs, deviation = wording.number(value, figures=figures), _deviation(ours, value)
        status = WITHIN if check.holds(library) else DIFFERS
        result = f"Within {_share(check.within)}" if status == WITHIN else "Differs"
        source = f"{name} {metadata.version(name)}"
    return Outcome(
        what=check.what,
        unit=check.unit,
        theirs=theirs,
        ours=wording.number(ours, figures=figures),
        deviation=deviation,
        status=status,
        result=result,
        because=check.because,
        source=(source,),
    )


@cache
def outcomes(subject: Subject) -> tuple[tuple[Outcome, ...], tuple[Outcome, ...]]:
    """Run every check of a subject: those against print, those against libraries."""
    return (
        tuple(published(check) for check in subject.published),
        tuple(against_library(check) for check in subject.libraries),
    )


def summary() -> str:
    """How many checks there are and how they came out, as one paragraph of HTML."""
    lines = [outcomes(subject) for subject in SUBJECTS]
    printed = Counter(line.status for one, _ in lines for line in one)
    libraries = Counter(line.status for _, other in lines for line in other)
    run = libraries.total() - libraries[NOT_RUN]
    failed = printed[DIFFERS] + libraries[DIFFERS]
    missing = f"; {libraries[NOT_RUN]} were not run, for want of the library"
    sentences = [
        f"{printed.total()} values that somebody published: {printed[AGREES]} agree to their last "
        f"printed digit, {printed[WITHIN]} within a wider margin that the line explains.",
        f"{libraries.total()} values of general reference libraries: {run} were run here"
        f"{missing if libraries[NOT_RUN] else ''}.",
        f"{failed} differ." if failed else "None differs.",
    ]
    return text_of(tag("p", " ".join(sentences), class_="verdict-line", data_failed=failed or None))


def judge() -> str:
    """How often the decay judge is right, and the figure of it, as HTML."""
    drawn = [figures.html(each.id) for each in figures.judge.FIGURES]
    return judge_report.report() + "".join(drawn)


def report() -> str:
    """Every check by subject, as HTML."""
    parts = []
    for subject in SUBJECTS:
        printed, libraries = outcomes(subject)
        identity = subject.title.lower().replace(" ", "-")
        parts.append(tag("h2", subject.title, id=identity))
        parts.append(_table(subject, "published", printed))
        if libraries:
            parts.append(_table(subject, "library", libraries))
    return text_of(tag("div", parts, class_="verification"))


def _table(subject: Subject, kind: str, lines: tuple[Outcome, ...]) -> Element:
    """Give the lines folded away behind how they came out; open where one differs."""
    count = Counter(line.status for line in lines)
    said = [
        f"{count[status]} {words}"
        for status, words in (
            (AGREES, "agree as printed"),
            (WITHIN, "within a margin"),
            (DIFFERS, "differ"),
            (NOT_RUN, "not run"),
        )
        if count[status]
    ]
    what = f"{len(lines)} {kind} value{'s' * (len(lines) > 1)}"
    heads_read = ("Quantity", kind.capitalize(), "Ours", "Deviation")
    # On a phone each line is set as a block of its own; the roles keep it a table for a reader.
    heads = [
        tag("th", head, scope="col", class_="number" if column else None, role="columnheader")
        for column, head in enumerate(heads_read)
    ]
    rows = []
    for line in lines:
        basis = tag("span", tag("b", line.result), _because(line), line.source, ".", class_="basis")
        unit = f", {line.unit}" if line.unit != "1" else None
        cells = [tag("th", line.what, unit, basis, scope="row", class_="long", role="rowheader")]
        for text in (line.theirs, line.ours, line.deviation):
            cells.append(tag("td", text, class_="number", role="cell"))
        rows.append(tag("tr", cells, data_status=line.status, role="row"))
    table = tag(
        "table",
        tag("caption", f"{subject.title}: {what}", class_="visually-hidden"),
        tag("thead", tag("tr", heads, role="row"), role="rowgroup"),
        tag("tbody", rows, role="rowgroup"),
        role="table",
    )
    return tag(
        "details",
        tag("summary", what, tag("span", f": {', '.join(said)}", class_="hint")),
        table,
        class_="reference",
        open=bool(count[DIFFERS]),
    )


def _because(line: Outcome) -> str:
    return f": {line.because}. " if line.because and line.status == WITHIN else ". "


def _like(printed: str, ours: float) -> str:
    """Ours with two more places than the printed number and the same power of ten."""
    mantissa, power, exponent = printed.partition("e")
    places = len(mantissa.partition(".")[2]) + 2
    return f"{ours / 10.0 ** int(exponent or 0):.{places}f}{power}{exponent}"


def _printed(digits: str) -> str:
    """Set a number as it was printed, its power of ten and its sign as on the rest of the site."""
    mantissa, _, exponent = digits.replace("-", "−").partition("e")
    whole, point, places = mantissa.lstrip("−").partition(".")
    mantissa = f"{'−' * mantissa.startswith('−')}{int(whole):,}{point}{places}"
    if not exponent:
        return mantissa
    raised = exponent.replace("−", "-").translate(str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹"))
    return f"{mantissa} × 10{raised}"


def _deviation(ours: float, theirs: float) -> str:
    share = ours / theirs - 1.0
    if abs(share) < 5e-10:
        return "0"
    if abs(share) < 1e-6:
        return "< 0.0001 %"
    sign = "+" if share > 0 else ""
    settings = {"decimals": 4} if abs(share) < 1e-5 else {"figures": 2}
    return f"{sign}{wording.number(100 * share, **settings)} %"


def _share(within: float) -> str:
    return f"{wording.number(100 * within, figures=2)} %"
