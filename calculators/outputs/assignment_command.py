"""``python -m calculators assignment``: sheets, keys and packages for a whole class."""

import argparse
import sys
import time
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import NoReturn

from calculators.errors import CalculatorError
from calculators.outputs import answer_key, pdf, qti, sheet
from calculators.outputs.element import Element
from calculators.teaching.assignment import Assignment, read
from calculators.teaching.lessons import LESSONS

PROGRAM = "python -m calculators assignment"
FORMATS = ("html", "csv", "qti", "pdf")
PER_PDF = 50  # variants; a larger file is slow to open and to print
BAR = 30  # characters

Bundle = tuple[str, int, list[Element]]  # "sheets" or "keys", the first variant, all of them


class _Parser(argparse.ArgumentParser):
    """A parser that complains in one line."""

    def error(self, message: str) -> NoReturn:
        print(f"{self.prog}: {message} (try --help)", file=sys.stderr)
        raise SystemExit(2)


def main(words: Sequence[str]) -> int:
    """Write an assignment; 0 when it is written, 2 for an entry that cannot be used."""
    options = _parser().parse_args(words)
    try:
        formats = _formats(options.formats)
        assignment = read(
            {
                "seed": options.seed,
                "problems": options.problems,
                "variants": options.variants,
                "objectives": options.objectives,
                "levels": options.levels,
                "names": _class_list(options.names),
                "title": options.title,
                "system": "si" if options.si else "us",
            }
        )
        folder = _folder(options.out)
        told = write(assignment, folder, formats, progress=_Progress(assignment.count).show)
    except CalculatorError as error:
        print(f"{PROGRAM}: {error}", file=sys.stderr)
        return 2
    except OSError as error:
        reason = (error.strerror or "it cannot be written").lower()
        print(f"{PROGRAM}: {error.filename or options.out}: {reason}.", file=sys.stderr)
        return 2
    print("\n".join(told))
    return 0


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(
        prog=PROGRAM,
        description=(
            "Problem sheets with numbers of their own for every learner, their answer keys with "
            "full working, a table of answers, and QTI packages."
        ),
        epilog="Lessons: " + ", ".join(lesson.slug for lesson in LESSONS) + ".",
    )
    add = parser.add_argument
    add("--seed", default="1", help="the same seed gives the same problems everywhere")
    add("--problems", default="12", metavar="N", help="problems in each variant")
    add("--variants", default="30", metavar="N", help="how many variants")
    add("--names", metavar="FILE", help="a class list, one name a line: a variant for each")
    add("--objectives", default="", metavar="NAME,...", help="objectives, or lessons; default all")
    add("--levels", default="", metavar="1,2,3", help="levels; default all")
    add("--title", default="", help="the heading of the sheets")
    add("--formats", default=",".join(FORMATS), help="which of html, csv, qti, pdf; default all")
    add("--si", action="store_true", help="answers in SI units")
    add("--out", required=True, metavar="DIR", help="the folder to write to; made if need be")
    return parser


def _formats(text: str) -> tuple[str, ...]:
    given = [each.strip().lower() for each in text.split(",") if each.strip()]
    wrong = [each for each in given if each not in FORMATS]
    if wrong or not given:
        raise CalculatorError(f"Formats: “{', '.join(wrong)}” is none of {', '.join(FORMATS)}.")
    return tuple(given)


def _class_list(name: str | None) -> str:
    if name is None:
        return ""
    try:
        text = Path(name).read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        raise CalculatorError(f"Class list: {name} is not a text file.") from None
    except OSError as error:
        reason = (error.strerror or "it cannot be read").lower()
        raise CalculatorError(f"Class list: {name} cannot be read: {reason}.") from None
    if not text.strip():
        raise CalculatorError(f"Class list: {name} is empty. Write one name on each line.")
    return text


def _folder(name: str) -> Path:
    folder = Path(name)
    if folder.exists() and not folder.is_dir():
        raise CalculatorError(f"Folder: {name} is a file. Name a folder, new or there already.")
    folder.mkdir(parents=True, exist_ok=True)
    return folder


def write(
    assignment: Assignment,
    folder: Path,
    formats: Sequence[str],
    *,
    progress: Callable[[int], None] = lambda done: None,
) -> list[str]:
    """Write every variant in the formats asked for.

    Parameters
    ----------
    assignment : Assignment
        What is set.
    folder : Path
        Where to write; it is there.
    formats : sequence of str
        Which of "html", "csv", "qti" and "pdf".
    progress : callable
        Told after each variant how many are done.

    Returns
    -------
    list of str
        A line for each thing that was written or could not be.
    """
    count, width = assignment.count, len(str(assignment.count))
    browser = pdf.find_browser() if "pdf" in formats else None
    bundles: list[Bundle] = []
    printed: list[str] = []
    table = [answer_key.table(iter(()))]
    for number in range(1, count + 1):
        stem = f"variant-{number:0{width}}"
        if "html" in formats or browser:
            pair = (("sheets", sheet.sheet), ("keys", sheet.key))
            for kind, make in pair:
                part = make(assignment, number)
                title = f"{assignment.title}: {kind[:-1]} {number}"
                if "html" in formats:
                    _write(folder / kind / f"{stem}.html", sheet.document(title, part).encode())
                if browser:
                    _bundle(bundles, kind, number, part)
        if "csv" in formats:
            table.append(answer_key.table(answer_key.rows(assignment, number), head=False))
        if "qti" in formats:
            _write(folder / "qti" / f"{stem}.zip", qti.package(assignment, number))
        if browser and (number % PER_PDF == 0 or number == count):
            printed += _print(bundles, assignment.title, folder, browser, width)
            bundles.clear()
        progress(number)
    if "csv" in formats:
        _write(folder / "key.csv", "".join(table).encode("utf-8-sig"))
    return _told(assignment, formats, printed, browser)


def _write(path: Path, data: bytes) -> None:
    path.parent.mkdir(exist_ok=True)
    path.write_bytes(data)


def _bundle(bundles: list[Bundle], kind: str, number: int, part: Element) -> None:
    mine = next((each for each in bundles if each[0] == kind), None)
    if mine is None:
        mine = (kind, number, [])
        bundles.append(mine)
    mine[2].append(part)


def _print(bundles: list[Bundle], title: str, folder: Path, browser: str, width: int) -> list[str]:
    told = []
    for kind, first, parts in bundles:
        name = f"{kind}-{first:0{width}}-{first + len(parts) - 1:0{width}}.pdf"
        page = folder / f".{name}.html"
        page.write_text(sheet.document(f"{title}: {kind}", *parts), encoding="utf-8")
        done = pdf.print_to_pdf(browser, page, (folder / name).resolve())
        page.unlink()
        told.append(f"  {name}" if done else f"  {name} could not be printed by {browser}.")
    return told


def _told(
    assignment: Assignment, formats: Sequence[str], printed: list[str], browser: str | None
) -> list[str]:
    kinds = len(assignment.templates)
    lines = [f"{assignment.count} variants of {kinds} problems, seed {assignment.seed}."]
    if "html" in formats:
        lines.append("  sheets/ and keys/: one HTML file for each variant")
    if "csv" in formats:
        lines.append("  key.csv: every answer with its bounds")
    if "qti" in formats:
        lines.append("  qti/: one QTI 2.1 package for each variant")
    if "pdf" in formats and not browser:
        lines.append(
            "  No PDF: it takes Chromium, Chrome or Edge, and none was found. The HTML files print "
            "as they are; or name a browser in BROWSER_BIN."
        )
    return lines + printed


class _Progress:
    """A bar on standard error: one line that grows on a terminal, a line a tenth elsewhere."""

    def __init__(self, total: int) -> None:
        self.total, self.started, self.tenth = total, time.monotonic(), -1
        self.terminal = sys.stderr.isatty()

    def show(self, done: int) -> None:
        """Show how many are done and how long the rest will take."""
        share = done / self.total
        spent = time.monotonic() - self.started
        left = f"{spent / share - spent:.0f} s left" if done < self.total else f"{spent:.0f} s"
        if self.terminal:
            bar = "#" * round(share * BAR)
            end = "\n" if done == self.total else ""
            text = f"\r{bar:<{BAR}} {done} of {self.total} variants, {left}   "
            print(text, end=end, file=sys.stderr, flush=True)
        elif int(share * 10) > self.tenth:
            self.tenth = int(share * 10)
            print(f"{done} of {self.total} variants, {left}", file=sys.stderr, flush=True)
