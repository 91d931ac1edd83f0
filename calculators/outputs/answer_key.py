"""The answer key of an assignment as a table: one row per problem and variant."""

import csv
import io
from collections.abc import Iterator

from calculators.outputs.sheet import accepted, deciding_card, short_answer, wrong_answers
from calculators.teaching.assignment import Assignment
from calculators.teaching.bank import LESSON_OF
from calculators.teaching.question import Numeric

COLUMNS = (
    "variant", "name", "problem", "answer", "lowest", "highest", "unit", "objective", "lesson",
    "level", "kind", "calculator", "template", "seed", "usual wrong answers",
)  # fmt: skip


def rows(assignment: Assignment, number: int) -> Iterator[list[str]]:
    """Rows of one variant."""
    system = assignment.system
    for place, problem in enumerate(assignment.variant(number), 1):
        template, ends = problem.template, ["", "", ""]
        if isinstance(problem.question, Numeric):
            low, high, unit = accepted(problem.question, system=system)
            ends = [f"{low:.6g}", f"{high:.6g}", unit]
        wrong = "; ".join(where for where, _ in wrong_answers(problem, system=system))
        yield [
            str(number),
            assignment.name(number),
            str(place),
            short_answer(problem, system=system),
            *ends,
            template.objective,
            LESSON_OF[template.objective].slug,
            str(template.level),
            template.kind,
            deciding_card(problem),
            template.name,
            problem.seed,
            wrong,
        ]


def table(lines: Iterator[list[str]], *, head: bool = True) -> str:
    """Write rows as CSV; a cell that a spreadsheet would run as a formula is quoted off."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    if head:
        writer.writerow(COLUMNS)
    for line in lines:
        writer.writerow(
            [f"'{cell}" if cell[:1] in ("=", "+", "@", "\t") else cell for cell in line]
        )
    return out.getvalue()
