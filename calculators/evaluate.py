"""From what a person typed to an answer: the only path there is.

Reads each entry, converts it to SI, refuses what lies outside the card's
range, calls the card's function, and holds what comes back together with the
means to put it into words.
"""

import json
import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from calculators import units, wording
from calculators.card import (
    Answer,
    Card,
    Choice,
    Input,
    Quantity,
    Readings,
    Rows,
    Text,
    Words,
)
from calculators.errors import CalculatorError, Complaints, UnitError
from calculators.readings import read_log
from calculators.wording import Entered

LONGEST_ENTRY = 200  # characters in one field; a log of readings may be longer
LONGEST_LOG = 5_000_000  # characters, about 86,400 rows with room to spare


@dataclass(frozen=True, kw_only=True)
class Evaluation:
    """A card, what was entered, and what came out.

    ``entered`` holds per input an :class:`Entered`, a word, a reading log, a
    tuple of such mappings for rows, or ``None`` where a blank was left.
    """

    card: Card
    system: str
    entered: Mapping[str, Any]
    answer: Answer

    @cached_property
    def scope(self) -> wording.Scope:
        """Everything a template of this answer may name."""
        words = {}
        for each in self.card.inputs:
            if isinstance(each, Choice):
                words[each.name] = dict(each.options)[self.entered[each.name]]
        outputs = dict(self.answer.outputs)
        for out in self.card.outputs:
            code = outputs[out.name]
            if out.choices and isinstance(code, str):
                words[out.name] = out.choices[code]
        shown = {o.name: (o.us, o.si, o.figures, o.decimals) for o in self.card.outputs}
        values = {**self.answer.values, **self.entered, **outputs, **words}
        return wording.Scope(values, shown, self.system)

    def say(self, text: Text, own: Mapping[str, object] | None = None) -> str:
        """Fill a template of this answer."""
        return self.scope.fill(text, own)


def evaluate(card: Card, entries: Mapping[str, Any], *, system: str = "us") -> Evaluation:
    """Answer a card's question from entries as a person types them.

    Parameters
    ----------
    card : Card
        The calculator.
    entries : mapping
        Input name to text ("500 micron", "500", "" for blank); rows as a
        list of such mappings or as JSON text. What is left out takes the
        card's default.
    system : str
        "us" or "si": which units a bare number and the wording take.

    Returns
    -------
    Evaluation
        The entries in SI, the answer, and the means to word it.

    Raises
    ------
    Complaints
        One sentence per entry that cannot be used, or the one sentence with
        which the physics refuses the whole.
    """
    complaints: list[tuple[str, str]] = []
    known = {each.name for each in card.inputs}
    for name in entries:
        if name not in known:
            accepted = ", ".join(each.name for each in card.inputs)
            complaints.append((name, f"There is no input “{name}”: this takes {accepted}."))
    entered: dict[str, Any] = {}
    # The barometer is read first: gauge readings are measured from it.
    for each in sorted(card.inputs, key=lambda each: each.name != "barometer"):
        barometer = entered.get("barometer")
        try:
            entered[each.name] = _read(
                each,
                entries.get(each.name),
                system=system,
                barometer=barometer.si if barometer else None,
            )
        except Complaints as error:
            complaints += error.items
        except CalculatorError as error:
            complaints.append((each.name, str(error)))
    if complaints:
        raise Complaints(complaints)
    try:
        answer = card.compute(**{each.name: _plain(entered[each.name]) for each in card.inputs})
    except CalculatorError as error:
        raise Complaints([(error.input, str(error))]) from error
    _check(card, answer)
    return Evaluation(card=card, system=system, entered=entered, answer=answer)


def _read(each: Input, entry: Any, *, system: str, barometer: float | None) -> Any:
    if isinstance(each, Rows):
        return _read_rows(each, entry, system=system, barometer=barometer)
    text = each.default if entry is None else str(entry)
    if isinstance(each, Readings):
        if len(text) > LONGEST_LOG:
            raise UnitError(f"{each.label}: the log is over 5 MB; keep to a day at one per second.")
        return read_log(text)
    if len(text) > LONGEST_ENTRY:
        raise UnitError(f"{each.label}: that is over {LONGEST_ENTRY} characters long.")
    text = text.strip()
    if isinstance(each, Words):
        if len(text) > each.longest:
            raise UnitError(f"{each.label}: keep to {each.longest} characters.")
        return text
    if isinstance(each, Choice):
        values = [value for value, _ in each.options]
        if text not in values:
            raise UnitError(f"{each.label}: “{text}” is not one of {', '.join(values)}.")
        return text
    return _read_quantity(each, text, system=system, barometer=barometer)


def _read_quantity(
    each: Quantity, text: str, *, system: str, barometer: float | None
) -> Entered | None:
    if not text:
        if each.required:
            raise UnitError(f"{each.label}: type a number, such as {each.default}.")
        return None
    bare = each.si if system == "si" else each.us
    try:
        value, unit, typed = units.read(text, bare=bare)
    except UnitError as error:
        accepted = ", ".join(each.units)
        raise UnitError(f"{each.label}: {error} Accepted units: {accepted}.") from None
    except CalculatorError as error:
        raise CalculatorError(f"{each.label}: {error}") from None
    dimension = units.UNITS[each.si_unit].dimension
    if units.UNITS[unit].dimension != dimension:
        measured = units.UNITS[unit].dimension
        raise UnitError(
            f"{each.label}: {unit} measures {measured}, not {dimension}. "
            f"Accepted units: {', '.join(each.units)}."
        )
    try:
        si = units.to_si(value, unit, barometer=barometer)
    except UnitError as error:
        raise UnitError(f"{each.label}: {error}") from None
    if units.UNITS[unit].gauge < 0 and barometer is not None and si < 0:
        deepest = wording.quantity(barometer, "inHg")
        raise UnitError(
            f"{each.label}: a vacuum of {typed} {unit} is deeper than the barometer, {deepest}; "
            "nothing can be emptier than empty."
        )
    # An end of the range stays inside it when it is typed in another unit.
    at_an_end = any(math.isclose(si, end, rel_tol=1e-9) for end in (each.minimum, each.maximum))
    if not (each.minimum <= si <= each.maximum or at_an_end):
        raise UnitError(_outside(each, wording.with_unit(typed, unit), unit, barometer))
    return Entered(typed, unit, si)


def _outside(each: Quantity, typed: str, unit: str, barometer: float | None) -> str:
    """Say what is accepted, in the unit the person used."""
    ends = []
    for end in (each.minimum, each.maximum):
        shown = units.from_si(end, unit, barometer=barometer)
        ends.append(wording.with_unit(wording.number(shown, figures=4), unit))
    if units.UNITS[unit].gauge < 0:
        ends.reverse()
    if each.minimum > 0 and typed.startswith(("-", "−", "–", "0 ")):
        return f"{each.label}: type a number above zero; accepted is {ends[0]} to {ends[1]}."
    return f"{each.label}: {typed} is outside {ends[0]} to {ends[1]}."


def _read_rows(
    each: Rows, entry: Any, *, system: str, barometer: float | None
) -> tuple[Mapping[str, Any], ...]:
    rows = each.default if entry is None else entry
    if isinstance(rows, str):
        try:
            rows = json.loads(rows)
        except ValueError:
            sample = json.dumps([dict(row) for row in each.default[:1]])
            raise UnitError(f"{each.label}: give the rows as JSON, such as {sample}.") from None
    if not isinstance(rows, (list, tuple)) or not all(isinstance(row, Mapping) for row in rows):
        raise UnitError(f"{each.label}: give a list of rows, each with named values.")
    if not each.minimum <= len(rows) <= each.maximum:
        raise UnitError(f"{each.label}: takes {each.minimum} to {each.maximum} rows of {each.row}.")
    complaints: list[tuple[str, str]] = []
    done: list[Mapping[str, Any]] = []
    columns = {column.name: column for column in each.columns}
    for index, row in enumerate(rows):
        where = f"{each.name}.{index}"
        for name in row:
            if name not in columns:
                accepted = ", ".join(columns)
                complaints.append((where, f"A {each.row} has no “{name}”: it takes {accepted}."))
        read: dict[str, Any] = {}
        for name, column in columns.items():
            try:
                read[name] = _read(column, row.get(name), system=system, barometer=barometer)
            except CalculatorError as error:
                sentence = f"{each.row.capitalize()} {index + 1}, {error}"
                complaints.append((f"{where}.{name}", sentence))
        done.append(read)
    if complaints:
        raise Complaints(complaints)
    return tuple(done)


def _plain(entered: Any) -> Any:
    """Strip an entry to what physics takes: an SI float, a word, a log, rows of them."""
    if isinstance(entered, Entered):
        return entered.si
    if isinstance(entered, tuple):
        return tuple({name: _plain(cell) for name, cell in row.items()} for row in entered)
    return entered


def _check(card: Card, answer: Answer) -> None:
    """Hold an answer to what its card promises; a failure here is a bug."""
    if set(answer.outputs) != {out.name for out in card.outputs}:
        raise TypeError(f"{card.slug}: outputs differ from the card's list")
    for out in card.outputs:
        value = answer.outputs[out.name]
        if value is None:
            continue
        if out.choices is not None:
            if value not in out.choices:
                raise TypeError(f"{card.slug}: {out.name} is {value!r}")
        elif not isinstance(value, (int, float)) or not math.isfinite(value):
            raise TypeError(f"{card.slug}: {out.name} is {value!r}, not a finite number")
