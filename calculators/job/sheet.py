"""A job file as pages to hand over, and as a table for a spreadsheet."""

import csv
import io
from collections.abc import Mapping
from typing import Any

from calculators import wording
from calculators.card import Readings
from calculators.cards import BY_SLUG
from calculators.errors import CalculatorError
from calculators.evaluate import Evaluation, evaluate
from calculators.job.facts import FACTS, NOTES
from calculators.job.plan import STEP_OF, STEPS, JobStep, in_order
from calculators.outputs.answer import both, main
from calculators.outputs.chart import as_chart
from calculators.outputs.data import sentence
from calculators.outputs.element import Child, Element, tag, text_of
from calculators.outputs.html import given

MOST_READINGS = 60  # rows of a log that are printed; a longer one is thinned, and says so


def sheet(job: Mapping[str, Any]) -> tuple[str, list[dict[str, Any]]]:
    """The record as HTML, every answer computed again from what was typed.

    Parameters
    ----------
    job : mapping
        A checked job file.

    Returns
    -------
    tuple
        The HTML, and a chart (plain numbers) for each of its
        ``data-chart`` places, in order.
    """
    charts: list[dict[str, Any]] = []
    parts: list[Child] = [_head(job)]
    for step in STEPS:
        results = [each for each in job["results"] if STEP_OF[each["card"]] == step.key]
        parts.append(_step(step, results, charts))
    notes = [
        tag(
            "section", tag("h3", note.title), tag("p", job["facts"][note.key], class_="job-note"),
            class_="job-step", data_part=f"note-{note.key}",
        )
        for note in NOTES
        if job["facts"].get(note.key)
    ]  # fmt: skip
    parts += notes
    sign = [tag("p", word) for word in ("Signed", "Date")]
    parts.append(tag("footer", sign, class_="job-sign", data_part="sign"))
    return text_of(*[each for each in parts if isinstance(each, Element)]), charts


def _head(job: Mapping[str, Any]) -> Element:
    facts = job["facts"]
    rows = [
        tag("div", tag("dt", fact.title), tag("dd", facts[fact.key]))
        for fact in FACTS
        if facts.get(fact.key) and fact.key != "system"
    ]
    rows.append(tag("div", tag("dt", "Started"), tag("dd", _shown(job["created"]))))
    done = {STEP_OF[each["card"]] for each in job["results"]}
    left = [step.title.lower() for step in STEPS if step.key not in done]
    state = f"Still open: {', '.join(left)}." if left else "Every step of the record is filled."
    return tag(
        "header",
        tag("h2", facts.get("system") or "System not named"),
        tag("p", state, class_="job-state", data_open=len(left)),
        tag("dl", rows, class_="job-facts"),
        class_="job-head", data_part="head",
    )  # fmt: skip


def _step(step: JobStep, results: list[Mapping[str, Any]], charts: list[dict[str, Any]]) -> Element:
    if not results:
        body: list[Child] = [tag("p", step.missing, class_="job-missing")]
    else:
        body = [_result(step, each, charts) for each in in_order(results)]
    return tag(
        "section", tag("h3", step.title), body,
        class_="job-step", data_part=step.key, data_state="done" if results else "open",
    )  # fmt: skip


def _result(step: JobStep, result: Mapping[str, Any], charts: list[dict[str, Any]]) -> Element:
    card = BY_SLUG[result["card"]]
    name = tag("b", card.title) if card.title != step.title else None
    title = tag("p", name, tag("span", _shown(result["when"])), class_="job-when")
    note = tag("p", result["note"], class_="job-note") if result.get("note") else None
    evaluation = None
    try:
        evaluation = evaluate(card, result["entries"], system=result["system"])
    except CalculatorError as error:
        body: list[Child] = [
            tag("p", f"It said: {result['said']}"),
            tag("p", f"It cannot be computed again: {error}", class_="job-missing"),
        ]
    else:
        body = _computed(evaluation, result, charts)
    tools = tag(
        "p",
        tag("a", "Open this card", data_job="reopen"),
        tag("button", "Take out", type="button", data_job="take-out"),
        class_="job-tools",
    )
    code = evaluation.answer.verdict.code if evaluation and evaluation.answer.verdict else None
    return tag(
        "article", title, body, note, tools,
        class_="job-result", data_result=result["id"], data_code=code,
    )  # fmt: skip


def _computed(
    evaluation: Evaluation, result: Mapping[str, Any], charts: list[dict[str, Any]]
) -> list[Child]:
    answer = evaluation.answer
    parts: list[Child] = [main(evaluation)]
    if answer.verdict:
        parts.append(
            tag("div", [tag("p", evaluation.say(each)) for each in answer.verdict.because],
                class_="because")
        )  # fmt: skip
    if sentence(evaluation) != result["said"]:
        parts.append(tag("p", f"When it was added it said: {result['said']}", class_="job-missing"))
    if answer.chart and answer.verdict:
        charts.append(as_chart(evaluation))
        parts.append(
            tag("figure", tag("div", class_="plot"), tag("figcaption", charts[-1]["summary"]),
                class_="chart", data_chart=len(charts) - 1)
        )  # fmt: skip
    parts.append(_numbers(evaluation))
    return parts


def _numbers(evaluation: Evaluation) -> Element:
    """Everything entered and found: one tap away on a screen, open on paper."""
    card, found = evaluation.card, evaluation.answer.outputs
    stands = "verdict" if evaluation.answer.verdict else card.primary  # it is set large above
    facts = [
        tag("div", tag("dt", out.label), tag("dd", both(evaluation, out)[0]))
        for out in card.outputs
        if found[out.name] is not None and out.name != stands
    ]
    logs = [each.name for each in card.inputs if isinstance(each, Readings)]
    return tag(
        "details",
        tag("summary", "All numbers"),
        tag("dl", given(evaluation), class_="given"),
        tag("dl", facts, class_="facts"),
        [_log(evaluation.entered[name]) for name in logs],
        class_="job-numbers",
    )


def _log(log: Any) -> Element:
    """The readings themselves, in minutes and micron, thinned when there are many."""
    pairs = list(zip(log.times, log.pressures, strict=True))
    every = -(-len(pairs) // MOST_READINGS)
    kept = pairs[::every] if pairs[-1] in pairs[::every] else [*pairs[::every], pairs[-1]]
    says = "Readings" if every == 1 else f"Readings, {len(kept)} of {len(pairs)}"
    items = [
        tag("li", tag("span", wording.quantity(t, "min")), " ", wording.quantity(p, "micron"))
        for t, p in kept
    ]
    return tag("div", tag("p", says), tag("ol", items, class_="job-log"), class_="job-readings")


def _shown(moment: str) -> str:
    """A moment as its own clock showed it, to the minute."""
    return moment[:16].replace("T", " ")


def table(job: Mapping[str, Any]) -> str:
    """The record as CSV: one row per fact, entry and output, with units.

    Parameters
    ----------
    job : mapping
        A checked job file.

    Returns
    -------
    str
        CSV text, a header and rows of step, card, when, kind, name, value.
    """
    out = io.StringIO()
    write = csv.writer(out, lineterminator="\r\n")
    write.writerow(("step", "card", "when", "kind", "name", "value"))
    for key, value in job["facts"].items():
        write.writerow(("job", "", job["created"], "fact", key, _plain(value)))
    for result in in_order(job["results"]):
        card = BY_SLUG[result["card"]]
        row = (STEP_OF[card.slug], card.slug, result["when"])
        write.writerow((*row, "said", "", _plain(result["said"])))
        for name, entry in result["entries"].items():
            write.writerow((*row, "entry", name, _plain(entry)))
        try:
            evaluation = evaluate(card, result["entries"], system=result["system"])
        except CalculatorError as error:
            write.writerow((*row, "cannot be computed again", "", str(error)))
            continue
        for each in card.outputs:
            value = evaluation.answer.outputs[each.name]
            if value is not None:
                write.writerow((*row, "output", each.name, f"{value} {each.si_unit or ''}".strip()))
    return out.getvalue()


def _plain(value: Any) -> str:
    """Text for a cell; a leading sign that a spreadsheet would run as a formula is quoted."""
    text = value if isinstance(value, str) else str(value)
    return f"'{text}" if text[:1] in ("=", "+", "@", "\t", "\r") else text
