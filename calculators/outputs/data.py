"""An answer as one plain object, every quantity in SI units."""

from typing import Any

from calculators import units
from calculators.card import Output, Quantity, Readings, Rows
from calculators.cautions import CAUTIONS
from calculators.evaluate import Evaluation
from calculators.sources import BIBLIOGRAPHY


def as_data(evaluation: Evaluation) -> dict[str, Any]:
    """Give the whole answer as an object that JSON can hold.

    Parameters
    ----------
    evaluation : Evaluation
        A card's answer.

    Returns
    -------
    dict
        ``calculator``, ``inputs``, ``outputs``, ``verdict``, ``answer``,
        ``working``, ``assumptions``, ``cautions`` and ``sources``; quantities
        are ``{"value", "unit"}`` in SI.
    """
    card, answer, say = evaluation.card, evaluation.answer, evaluation.say
    verdict = answer.verdict
    return {
        "calculator": card.slug,
        "inputs": {i.name: _input(i, evaluation.entered[i.name]) for i in card.inputs},
        "outputs": {
            out.name: {"value": answer.outputs[out.name], "unit": _si(out)} for out in card.outputs
        },
        "verdict": verdict
        and {
            "code": verdict.code,
            "text": say(verdict.says),
            "because": [say(reason) for reason in verdict.because],
        },
        "answer": sentence(evaluation),
        "notes": [say(note) for note in answer.notes],
        "working": [
            {
                "says": say(step.says, step.values),
                "formula": step.formula,
                "numbers": say(step.numbers, step.values),
            }
            for step in answer.working
        ],
        "assumptions": list(card.assumptions),
        "cautions": [
            {"key": key, "title": CAUTIONS[key].title, "text": CAUTIONS[key].short}
            for key in card.cautions
        ],
        "sources": [
            {"key": cite.key, "title": BIBLIOGRAPHY[cite.key].title, "locator": cite.locator}
            for cite in card.sources
        ],
    }


def sentence(evaluation: Evaluation) -> str:
    """Say the answer in one line, as a screen reader or a shell would."""
    answer = evaluation.answer
    if answer.verdict:
        return evaluation.say(answer.verdict.says)
    return f"{evaluation.say(answer.headline)} {shown(evaluation, evaluation.card.primary)}"


def shown(evaluation: Evaluation, name: str) -> str:
    """Show one output in the reader's own units, or as its word."""
    if evaluation.answer.outputs[name] is None:
        return next(out.blank for out in evaluation.card.outputs if out.name == name)
    return evaluation.say(f"{{{name}}}")


def _si(out: Output) -> str:
    if out.choices is not None or out.si_unit is None:
        return ""
    return out.si_unit


def _input(each: Any, entered: Any) -> dict[str, Any]:
    if isinstance(each, Rows):
        columns = {column.name: column for column in each.columns}
        rows = [
            {name: _input(columns[name], cell) for name, cell in row.items()} for row in entered
        ]
        return {"value": rows, "unit": ""}
    if isinstance(each, Readings):
        pairs = list(zip(entered.times, entered.pressures, strict=True))
        return {"value": [list(pair) for pair in pairs], "unit": "s, Pa"}
    if isinstance(each, Quantity):
        return {"value": None if entered is None else entered.si, "unit": each.si_unit}
    return {"value": entered, "unit": ""}


def convert(card_input: Quantity, text: str, *, system: str) -> dict[str, str]:
    """Give an entry again in the first unit of the other system, or as it is.

    What cannot be read stays as it was typed: nothing entered is lost.
    """
    from calculators import wording
    from calculators.errors import CalculatorError

    target = card_input.si if system == "si" else card_input.us
    source = card_input.us if system == "si" else card_input.si
    try:
        number, unit, _ = units.read(text, bare=source)
        if units.UNITS[unit].gauge or units.UNITS[target].gauge:
            raise CalculatorError("a gauge reading stays in its own unit")
        value = units.from_si(units.to_si(number, unit), target)
    except CalculatorError:
        return {"value": text, "unit": ""}
    return {"value": wording.number(value, figures=5).replace("−", "-"), "unit": target}
