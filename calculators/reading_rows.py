"""A text split into rows of cells: pairs on one line, or a table with some separator."""

import csv
import re
from collections.abc import Sequence

from calculators.reading_cells import is_a_value

_COMMENT = ("#", "//", "%")
_SHORT = 200  # lines within which pairs are looked for


def split_rows(text: str) -> tuple[list[list[str]], Sequence[int]]:
    """Split a text into rows of cells.

    Parameters
    ----------
    text : str
        The log as typed, pasted or read from a file.

    Returns
    -------
    tuple
        The rows, and the number of the line (or of the pair) of each;
        comments and blank lines are left out.
    """
    text = text.lstrip("\ufeff")
    lines = text.splitlines()
    if len(lines) > 1_000 and not any(mark in text for mark in _COMMENT) and "" not in lines:
        kept: list[str] = lines
        numbers: Sequence[int] = range(1, len(lines) + 1)
    else:
        pairs = [
            (number, line.strip())
            for number, line in enumerate(lines, start=1)
            if line.strip() and not line.lstrip().startswith(_COMMENT)
        ]
        kept, numbers = [line for _, line in pairs], [number for number, _ in pairs]
    pieces = [piece.strip() for line in kept[:1_000] for piece in re.split(r"[,;]", line)]
    pieces = [piece for piece in pieces if piece]
    pairs_of_cells = [_cells(piece) for piece in pieces] if len(kept) <= _SHORT else []
    if len(pieces) > len(kept) and pairs_of_cells and all(len(p) == 2 for p in pairs_of_cells):
        return pairs_of_cells, range(1, len(pieces) + 1)
    if len(kept) == 1 and not re.search(r"[,;\t]", kept[0]):
        cells = _cells(kept[0])  # "0 305 5 309": times and pressures by turns
        return [cells[at : at + 2] for at in range(0, len(cells), 2)], range(1, len(cells) + 1)
    delimiter = _delimiter(kept[:_SHORT])
    if delimiter == " " and any(re.search(r"\d\s+[^\W\d]", line) for line in kept[:_SHORT]):
        return [_cells(line) for line in kept], numbers
    return list(csv.reader(kept, delimiter=delimiter, skipinitialspace=True)), numbers


def _cells(line: str) -> list[str]:
    """Split at spaces, leaving a unit or AM and PM with the number before it."""
    cells: list[str] = []
    for word in line.split():
        if cells and not is_a_value(word) and is_a_value(cells[-1]):
            cells[-1] += f" {word}"
        else:
            cells.append(word)
    return cells


def _delimiter(lines: Sequence[str]) -> str:
    """Choose what separates the cells, from what most lines contain."""
    for mark in "\t;":
        if sum(mark in line for line in lines) * 2 > len(lines):
            return mark
    with_comma = [line for line in lines if "," in line]
    if len(with_comma) * 2 > len(lines):
        # "5 309,5" has a decimal comma after the space; "5,309.5" and "5, 309" do not.
        spaced = sum(bool(re.fullmatch(r"\S+\s+\S*\d,\d+", line)) for line in with_comma)
        clean = sum(len(line.split(",")[0].split()) == 1 for line in with_comma)
        return " " if spaced > clean else ","
    return " "
