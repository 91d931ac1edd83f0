"""How often the decay judge is right, from simulated tests whose truth is known.

bench_decay_judge.py runs the tests and keeps what it counted; this only words it.
"""

from __future__ import annotations

from typing import Any

from figures.judge import DATA, counted

from calculators import wording
from calculators.cards import BY_SLUG
from calculators.outputs.element import tag, text_of

TRUTHS = {
    "pass": "Tight and dry",
    "leak": "A leak",
    "moisture": "Gas inside",
    "leak-and-moisture": "A leak and gas inside",
    "short": "Too short to see anything",
    "two": "Two readings only",
    "bending": "Gas, still bending",
    "tangled": "Leak and gas, tangled",
    "coarse": "Gauge too coarse",
    "mimic": "Gas as straight as a leak",
    "between": "Between, no one right answer",
}
MISSING = "The judge has not been put through its simulated tests here."


def report() -> str:
    """Rates in words, and the table of truth against verdict, as HTML."""
    if not DATA.exists():
        return text_of(tag("p", MISSING))
    found = counted()
    return text_of(tag("p", _words(found), class_="verdict-line"), _table(found))


def _words(found: dict[str, Any]) -> str:
    false = found["false_pass_leak"][0] + found["false_pass_plateau"][0]
    passes = max(found["false_pass_leak"][1], found["false_pass_plateau"][1])
    tests = wording.number(found["logs"], figures=9)
    many = wording.number(passes, figures=9)
    hidden = "None" if not false else wording.number(false)
    return (
        f"{tests} simulated tests, leak and gas known. {hidden} of {many} passes hid a leak larger "
        "than the test could see, or gas that would break the limit. Of the tests that any "
        f"competent judge must get, {_rate(found['right'])} were judged right; of those that no "
        f"method can tell, {_rate(found['undecided'])} were left undecided. The stated range of "
        f"the leak held the truth in {_rate(found['leak_cover'])} of cases, that of the plateau "
        f"in {_rate(found['plateau_cover'])}."
    )


def _rate(share: list[int]) -> str:
    good, count = share
    return f"{wording.number(100 * good / count, figures=3)} %" if count else "none"


def _table(found: dict[str, Any]):
    verdict = next(out for out in BY_SLUG["decay"].outputs if out.name == "verdict")
    # "levels off: water, or gas out of oil" is long for a head; its first words do.
    verdicts = [label.partition(":")[0] for label in verdict.choices.values()]
    heads = [
        tag("th", "What was true", scope="col"),
        *(tag("th", head, scope="col", class_="number") for head in verdicts),
    ]
    rows = [
        tag(
            "tr",
            tag("th", TRUTHS[kind], scope="row", class_="long"),
            [tag("td", wording.number(n, figures=9), class_="number") for n in counts],
        )
        for kind, counts in found["matrix"].items()
        if sum(counts)
    ]
    caption = "Truth against verdict, number of tests"
    table = tag(
        "table",
        tag("caption", caption),
        tag("thead", tag("tr", heads)),
        tag("tbody", rows),
    )
    box = tag("div", table, class_="scroll", tabindex=0, role="region", aria_label=caption)
    return tag("div", box, class_="reference")
