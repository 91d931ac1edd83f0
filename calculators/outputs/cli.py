"""The command line, made from cards: one sub-command per calculator.

Bad input ends with status 2 and one line on standard error.
"""

import argparse
import io
import json
import sys
import textwrap
from collections.abc import Sequence
from pathlib import Path
from typing import Any, NoReturn

from calculators.card import Card, Choice, Input, Quantity, Readings, Rows
from calculators.cards import CARDS
from calculators.errors import CalculatorError
from calculators.evaluate import LONGEST_LOG, Evaluation, evaluate
from calculators.outputs.answer import both, table_cells
from calculators.outputs.data import as_data, sentence

PROGRAM = "python -m calculators"
WIDTH = 88


class _Parser(argparse.ArgumentParser):
    """A parser that complains in one line."""

    def error(self, message: str) -> NoReturn:
        print(f"{self.prog}: {message} (try --help)", file=sys.stderr)
        raise SystemExit(2)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command line.

    Parameters
    ----------
    arguments : sequence of str, optional
        The words after the program's name; those of the shell by default.

    Returns
    -------
    int
        0 for an answer, 2 for an entry that cannot be used.
    """
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(encoding="utf-8", errors="replace")
    words = list(sys.argv[1:] if arguments is None else arguments)
    if words[:1] == ["assignment"]:
        # Read when asked for, so that a calculator does not wait for the problem bank.
        from calculators.outputs import assignment_command

        return assignment_command.main(words[1:])
    parser = _build()
    options = vars(parser.parse_args(words))
    card: Card | None = options.pop("card", None)
    if card is None:
        print(_list())
        return 0
    as_json, with_working = options.pop("json"), options.pop("working")
    system = "si" if options.pop("si") else "us"
    try:
        entries = _entries(card, options)
        evaluation = evaluate(card, entries, system=system)
    except CalculatorError as error:
        print(f"{PROGRAM} {card.slug}: {error}", file=sys.stderr)
        return 2
    if as_json:
        print(json.dumps(as_data(evaluation), ensure_ascii=False, indent=2))
    else:
        print(in_words(evaluation, with_working=with_working))
    return 0


def _build() -> argparse.ArgumentParser:
    parser = _Parser(prog=PROGRAM, description="Worked calculators for evacuating systems.")
    commands = parser.add_subparsers(
        title="calculators", metavar="CALCULATOR", parser_class=_Parser
    )
    for card in CARDS:
        command = commands.add_parser(
            card.slug,
            help=_percent(card.question),
            description=_percent(f"{card.question} {card.lede}"),
        )
        for each in card.inputs:
            _add(command, each)
        command.add_argument("--working", action="store_true", help="show every step")
        command.add_argument("--json", action="store_true", help="print one object, in SI units")
        command.add_argument(
            "--si", action="store_true", help="bare numbers and wording in SI units"
        )
        command.set_defaults(card=card)
    return parser


def _add(command: argparse.ArgumentParser, each: Input) -> None:
    text = f"{each.label}{f' ({each.hint})' if each.hint else ''}. {each.help}".rstrip()
    settings: dict[str, Any] = {"metavar": "TEXT"}
    if isinstance(each, Choice):
        text += f" One of {', '.join(value for value, _ in each.options)}."
    elif isinstance(each, Quantity):
        text += f" In {', '.join(each.units)}."
    elif isinstance(each, Readings):
        text += ' "0 305, 5 309" (minutes, micron) or the path of a CSV file.'
    elif isinstance(each, Rows):
        columns = ", ".join(column.name for column in each.columns)
        text += f' JSON list, or once per {each.row} as "name=value; ..." with {columns}.'
        settings = {"metavar": "ROW", "action": "append"}
    if getattr(each, "default", ""):
        text += f" Default: {_shown_default(each)}."
    flags = {f"--{each.name}", f"--{each.name.replace('_', '-')}"}
    command.add_argument(*sorted(flags), dest=each.name, help=_percent(text), **settings)


def _shown_default(each: Input) -> str:
    if isinstance(each, Rows):
        return json.dumps([dict(row) for row in each.default], ensure_ascii=False)
    return " ".join(str(each.default).split()) if not isinstance(each, Readings) else "an example"


def _percent(text: str) -> str:
    """Argparse reads % as a format: double it."""
    return text.replace("%", "%%")


def _list() -> str:
    lines = ["Worked calculators for evacuating refrigeration systems.", ""]
    lines += [f"  {card.slug:<22}{card.question}" for card in CARDS]
    lines += ["", f"  {'assignment':<22}Problem sheets, keys and packages for a class."]
    lines += ["", f"{PROGRAM} CALCULATOR --help tells what one takes."]
    return "\n".join(lines)


def _entries(card: Card, options: dict[str, Any]) -> dict[str, Any]:
    entries: dict[str, Any] = {}
    for each in card.inputs:
        given = options[each.name]
        if given is None:
            continue
        if isinstance(each, Readings):
            given = _log(each, given)
        elif isinstance(each, Rows):
            given = _rows(each, given)
        entries[each.name] = given
    return entries


def _log(each: Readings, given: str) -> str:
    """The readings themselves, or what the named file holds."""
    looks_like_a_path = given.lower().endswith((".csv", ".txt", ".tsv")) or (
        "\n" not in given and len(given) < 250 and Path(given).is_file()
    )
    if not looks_like_a_path:
        return given
    path = Path(given)
    try:
        if path.stat().st_size > LONGEST_LOG:
            raise CalculatorError(
                f"{each.label}: {path.name} is over 5 MB; keep to a day of readings."
            )
        return path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        raise CalculatorError(f"{each.label}: {path.name} is not a text file.") from None
    except OSError as error:
        reason = (error.strerror or "it cannot be read").lower()
        raise CalculatorError(f"{each.label}: {path.name} cannot be read: {reason}.") from None


def _rows(each: Rows, given: list[str]) -> Any:
    """One JSON list, or "bore=1/4 in; length=6 ft" once per row."""
    if len(given) == 1 and given[0].lstrip().startswith("["):
        return given[0]
    rows = []
    for text in given:
        pairs = [part.partition("=") for part in text.split(";") if part.strip()]
        if not all(equals for _, equals, _ in pairs):
            raise CalculatorError(
                f'{each.label}: write each {each.row} as "name=value; name=value".'
            )
        rows.append({name.strip(): value.strip() for name, _, value in pairs})
    return rows


def in_words(evaluation: Evaluation, *, with_working: bool = False) -> str:
    """Say an answer in words, in both unit systems, with or without the working."""
    card, answer, say = evaluation.card, evaluation.answer, evaluation.say
    lines = [_wrap(sentence(evaluation))]
    if answer.verdict:
        lines += [_wrap(say(reason), "  ") for reason in answer.verdict.because]
    lines += [_wrap(say(note), "  ") for note in answer.notes]
    lines.append("")
    for out in card.outputs:
        if answer.outputs[out.name] is not None:
            first, second = both(evaluation, out)
            lines.append(f"  {out.label:<34} {first}{f'   ({second})' if second else ''}")
    for table in answer.tables:
        heads, body = table_cells(evaluation, table)
        lines += ["", f"  {table.caption}", *_columns([heads, *body])]
    if with_working:
        lines += ["", "Working"]
        for index, step in enumerate(answer.working, 1):
            lines.append(_wrap(f"{index}. {say(step.says, step.values)}", "  "))
            numbers = say(step.numbers, step.values)
            lines += [f"       {text}" for text in (step.formula, numbers) if text]
        lines += ["", "Assumes"] + [_wrap(f"- {text}", "  ") for text in card.assumptions]
    return "\n".join(lines)


def _columns(rows: list[list[str]]) -> list[str]:
    widths = [max(len(cell) for cell in column) for column in zip(*rows, strict=True)]
    return [
        "    "
        + "  ".join(f"{cell:<{width}}" for cell, width in zip(row, widths, strict=True)).rstrip()
        for row in rows
    ]


def _wrap(text: str, indent: str = "") -> str:
    return textwrap.fill(text, WIDTH, initial_indent=indent, subsequent_indent=indent)
