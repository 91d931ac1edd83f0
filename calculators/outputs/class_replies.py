"""What the worker answers about problems and assignments, for the practice and teaching pages."""

from base64 import b64decode, b64encode
from collections.abc import Mapping
from typing import Any

from calculators.errors import CalculatorError
from calculators.outputs import answer_key, qti, sheet
from calculators.outputs.element import text_of
from calculators.outputs.problem import problem_block
from calculators.teaching.assignment import LONGEST_SEED, Assignment, read
from calculators.teaching.bank import BY_NAME
from calculators.teaching.marking import Mark, mark
from calculators.teaching.problem import Problem, make


def _problem(question: Mapping[str, Any]) -> Problem:
    template = BY_NAME.get(str(question["template"]))
    if template is None:
        name = str(question["template"])[:60]
        raise CalculatorError(f"This guide has no problem “{name}”. Take another one.")
    return make(template, str(question["seed"])[: 2 * LONGEST_SEED])


def problem(question: Mapping[str, Any]) -> dict[str, Any]:
    """Set a problem: ``template`` and ``seed`` to HTML."""
    return {"html": text_of(problem_block(_problem(question), system=question["system"]))}


def mark_problem(question: Mapping[str, Any]) -> Mark:
    """Mark an answer to a problem."""
    return mark(_problem(question).question, question["answer"], system=question["system"])


def assignment(question: Mapping[str, Any]) -> dict[str, Any]:
    """Make parts of an assignment: ``give`` says which.

    ``check``: how many variants and which kinds of problems; ``set``: template and seed of each
    problem of a ``variant``; ``sheets``: sheet, key, rows of the table and package of one.
    """
    one = read(question["assignment"])
    give = question["give"]
    if give == "check":
        kinds = {template.name: template.level for template in one.templates}
        return {
            "count": one.count,
            "fitting": len(one.fitting),
            "different": len(kinds),
            "levels": sorted(set(kinds.values())),
            "seed": one.seed,
        }
    number = _number(one, question["variant"])
    if give == "set":
        problems = [{"template": p.template.name, "seed": p.seed} for p in one.variant(number)]
        return {"title": one.title, "problems": problems}
    return {
        "sheet": text_of(sheet.sheet(one, number)),
        "key": text_of(sheet.key(one, number)),
        "csv": answer_key.table(answer_key.rows(one, number), head=number == 1),
        "qti": b64encode(qti.package(one, number)).decode(),
    }


def _number(one: Assignment, given: Any) -> int:
    text = str(given)
    if not (text.isascii() and text.isdigit() and 1 <= int(text) <= one.count):
        raise CalculatorError(f"Variant: this set has variants 1 to {one.count}.")
    return int(text)


def packed(question: Mapping[str, Any]) -> dict[str, Any]:
    """Put files into one zip: ``files`` maps names to base64; or pages to one document.

    With ``parts``, HTML of sheets, and a ``title``, the answer is a file of its own.
    """
    if "parts" in question:
        top, bottom = sheet.document(question["title"]).split("</body>")
        return {"html": f"{top}{''.join(question['parts'])}</body>{bottom}"}
    files = {name: b64decode(data) for name, data in question["files"].items()}
    return {"zip": b64encode(qti.zipped(files)).decode()}
