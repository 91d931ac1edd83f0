"""What the worker in a browser calls: strings of JSON in, strings of JSON out."""

import json
from collections.abc import Mapping
from typing import Any

from calculators.card import Quantity, Rows
from calculators.cards import BY_SLUG
from calculators.errors import CalculatorError, Complaints
from calculators.evaluate import evaluate
from calculators.outputs.answer import answer, working
from calculators.outputs.chart import as_chart
from calculators.outputs.data import as_data, convert, sentence
from calculators.outputs.element import text_of


def reply(ask: str) -> str:
    """Answer one question from the page.

    Parameters
    ----------
    ask : str
        JSON: ``{"do": "answer" | "convert", "card", "entries", "system"}``, or
        ``{"do": "mark", "lesson", "question", "answer", "system"}``.

    Returns
    -------
    str
        JSON: ``{"ok": true, ...}``, or ``{"ok": false, "complaints": [...]}``
        with one sentence per entry that cannot be used.
    """
    question = json.loads(ask)
    try:
        given = DOES[question["do"]](question)
        return json.dumps({"ok": True, **given})
    except Complaints as error:
        items = [{"input": name, "text": text} for name, text in error.items]
    except CalculatorError as error:
        items = [{"input": error.input, "text": str(error)}]
    return json.dumps({"ok": False, "complaints": items})


def _answer(question: Mapping[str, Any]) -> dict[str, Any]:
    card = BY_SLUG[question["card"]]
    evaluation = evaluate(card, question["entries"], system=question["system"])
    verdict = evaluation.answer.verdict
    return {
        "html": {
            "answer": text_of(*answer(evaluation)),
            "working": text_of(working(evaluation)),
        },
        "say": sentence(evaluation),
        "chart": as_chart(evaluation) if evaluation.answer.chart else None,
        "verdict": verdict and {"code": verdict.code, "text": evaluation.say(verdict.says)},
        "data": as_data(evaluation) if question.get("data") else None,
    }


def _convert(question: Mapping[str, Any]) -> dict[str, Any]:
    """Put entries into the other system's first units, rows and all."""
    card, system = BY_SLUG[question["card"]], question["system"]
    done: dict[str, Any] = {}
    for each in card.inputs:
        entry = question["entries"].get(each.name)
        if isinstance(each, Quantity) and entry:
            done[each.name] = convert(each, entry, system=system)
        elif isinstance(each, Rows) and entry:
            columns = [c for c in each.columns if isinstance(c, Quantity)]
            done[each.name] = [
                {c.name: convert(c, row[c.name], system=system) for c in columns if row.get(c.name)}
                for row in entry
            ]
    return {"entries": done}


def _mark(question: Mapping[str, Any]) -> dict[str, Any]:
    """Mark an answer to a lesson's question, or to a problem of the bank."""
    # Read when first asked, so that a calculator's page does not wait for the lessons.
    from calculators.teaching.lessons import BY_LESSON
    from calculators.teaching.marking import mark

    if "template" in question:
        from calculators.outputs.class_replies import mark_problem

        given = mark_problem(question)
    else:
        asked = BY_LESSON[question["lesson"]].question(question["question"])
        given = mark(asked, question["answer"], system=question["system"])
    return {"mark": {"correct": given.correct, "message": given.message, "road": given.road}}


def _job(question: Mapping[str, Any]) -> dict[str, Any]:
    """Check a job file, and give it as ``sheet`` or ``csv``, or what it ``feeds`` a card."""
    from calculators.job import plan, schema, sheet

    job = question["job"]
    schema.check(job)
    wanted = question["give"]
    if wanted == "sheet":
        html, charts = sheet.sheet(job)
        return {"html": html, "charts": charts}
    if wanted == "csv":
        return {"csv": sheet.table(job)}
    if wanted == "check":
        return {}
    entries = plan.fed_entries(job, question["card"])
    return {"entries": entries, "names": plan.names(entries, question["card"])}


def _bench(question: Mapping[str, Any]) -> dict[str, Any]:
    """Answer the practice bench."""
    from calculators.outputs import bench

    return bench.reply(question)


def _needle(question: Mapping[str, Any]) -> dict[str, Any]:
    """Answer the needle practice."""
    from calculators.outputs import needle

    return needle.reply(question)


def _for_a_class(question: Mapping[str, Any]) -> dict[str, Any]:
    """Set a problem, make an assignment, or pack its files."""
    from calculators.outputs import class_replies

    give = {
        "problem": class_replies.problem,
        "assignment": class_replies.assignment,
        "pack": class_replies.packed,
    }
    return give[question["do"]](question)


DOES = {
    "answer": _answer,
    "convert": _convert,
    "mark": _mark,
    "job": _job,
    "bench": _bench,
    "needle": _needle,
    "problem": _for_a_class,
    "assignment": _for_a_class,
    "pack": _for_a_class,
}
