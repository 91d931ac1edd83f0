"""A log of times and pressures as it comes: typed, pasted, or out of a file.

Accepts pairs ("0 305, 5 309, 10 312"), and rows with comma, semicolon, tab or
spaces between cells, with or without a header, with decimal points or decimal
commas, with times as numbers, on the clock or dated. Rows are put in order of
time. What cannot be read is left out and named by row and column.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from operator import itemgetter, le, lt, sub

from calculators import reading_cells, units
from calculators.errors import CalculatorError, FitError
from calculators.reading_cells import Reader
from calculators.reading_rows import split_rows

MOST_READINGS = 100_000  # a day at one per second is 86,400
BARE_TIME = "min"  # what a bare number means, as the hint beside the input says
BARE_PRESSURE = "micron"
_NAMED = 3  # rows left out that are named one by one; the rest are counted


@dataclass(frozen=True, kw_only=True)
class ReadingLog:
    """Readings in order of time.

    ``times`` [s] and ``pressures`` [Pa] have one value per reading; times are
    as numbered in the log, or from the first reading where the log has clock
    times or dates. ``notes`` says what was sorted, merged, left out or
    guessed; ``time_unit`` and ``pressure_unit`` are the log's own units.
    """

    times: tuple[float, ...]
    pressures: tuple[float, ...]
    notes: tuple[str, ...] = ()
    time_unit: str = BARE_TIME
    pressure_unit: str = BARE_PRESSURE

    def __str__(self) -> str:
        """Say how many readings there are."""
        return f"{len(self.times):,} readings"


def read_log(text: str) -> ReadingLog:
    """Read a log of times and pressures.

    Parameters
    ----------
    text : str
        The log as typed, pasted or read from a file.

    Returns
    -------
    ReadingLog
        At least two readings in order of time, in SI, and what was done to
        them on the way.

    Raises
    ------
    FitError
        If fewer than two readings can be read, or more than 100,000 are given.
    """
    rows, numbers = split_rows(text)
    if not rows:
        raise FitError("There are no readings: type a time and a pressure, such as “0 305, 5 309”.")
    if len(rows) > MOST_READINGS:
        raise FitError(
            f"The log has {len(rows):,} rows; up to {MOST_READINGS:,} are read "
            "(a day at one per second is 86,400)."
        )
    header: list[str] = []
    if not any(reading_cells.is_a_value(cell) for cell in rows[0] if cell.strip()):
        header = [cell.strip() for cell in rows[0]]
        rows, numbers = rows[1:], numbers[1:]
    if not rows:
        raise FitError(
            "There are no readings under the first line: type a time and a pressure on each line, "
            "such as “0 305”."
        )
    notes: list[str] = []
    time_unit, pressure_unit, table = _columns(header, rows, notes)
    times, pressures = table
    named = bool(header)
    dated, clock = reading_cells.is_dated(times[:50]), reading_cells.is_clock(times[:50])
    read_time: Reader
    if dated:
        read_time = reading_cells.read_date
    elif clock:
        read_time, note = reading_cells.clock_reader(times, in_minutes=named and time_unit == "min")
        notes += [note] if note else []
    else:
        read_time = reading_cells.number_reader(
            unit=time_unit,
            decimal_comma=reading_cells.decimal_commas(times[:500], unit=time_unit),
        )
        if not named and len(rows) > 60:
            notes.append(
                f"No header names the units: read as {time_unit} and {pressure_unit}. A first "
                "line such as “seconds, micron” changes that."
            )
    comma = reading_cells.decimal_commas(pressures[:500], unit=pressure_unit)
    read_pressure = reading_cells.pressure_reader(unit=pressure_unit, decimal_comma=comma)
    time, pressure = _values(
        (times, pressures),
        numbers,
        readers=(read_time, read_pressure),
        quick=None if dated or clock or comma else (time_unit, pressure_unit),
        notes=notes,
    )
    if dated or clock:
        start = min(time, default=0.0)
        time = [each - start for each in time]
    time, pressure = _in_order(time, pressure, notes)
    if len(time) < 2:
        why = next((f" {note}" for note in notes if note.startswith("Row ")), "")
        raise FitError(f"At least two readings at different times are needed.{why}")
    _name_a_gap(time, notes)
    return ReadingLog(
        times=tuple(time),
        pressures=tuple(pressure),
        notes=tuple(notes),
        time_unit=time_unit,
        pressure_unit=pressure_unit,
    )


def _columns(
    header: list[str], rows: list[list[str]], notes: list[str]
) -> tuple[str, str, tuple[Sequence[str], Sequence[str]]]:
    """Find the column of times and that of pressures, and their units."""
    width = max(map(len, rows), default=0)
    named = [reading_cells.quantity_named(title) for title in header]
    time_at = named.index("time") if "time" in named else 0
    others = [index for index in range(max(width, 2)) if index != time_at]
    pressure_at = named.index("pressure") if "pressure" in named else others[0]
    first = rows[0] if rows else []
    joined = False
    if not header and width >= 3 and len(first) >= 3:
        # A date and a clock time in neighboring cells are one stamp.
        joined = reading_cells.is_dated(first[:1]) and reading_cells.is_clock(first[1:2])
        pressure_at = 2 if joined else pressure_at
    if len(set(map(len, rows))) == 1 and not joined and max(time_at, pressure_at) < width:
        times = list(map(itemgetter(time_at), rows))
        pressures = list(map(itemgetter(pressure_at), rows))
    else:
        cells = [[*row, *[""] * (width - len(row)), ""] for row in rows]
        times = [" ".join(row[:2]) if joined else row[time_at] for row in cells]
        pressures = [row[pressure_at] for row in cells]
    if width > (3 if joined else 2):
        unused = width - (3 if joined else 2)
        notes.append(
            f"Times come from column {time_at + 1}, pressures from column {pressure_at + 1}; "
            f"{unused} other {'column was' if unused == 1 else 'columns were'} not used."
        )

    def unit_of(index: int, dimension: str, bare: str) -> str:
        unit = reading_cells.unit_named(header[index]) if index < len(header) else None
        return unit if unit and units.UNITS[unit].dimension == dimension else bare

    time_unit = unit_of(time_at, "time", BARE_TIME)
    pressure_unit = unit_of(pressure_at, "pressure", BARE_PRESSURE)
    return time_unit, pressure_unit, (times, pressures)


def _values(
    columns: tuple[Sequence[str], Sequence[str]],
    numbers: Sequence[int],
    *,
    readers: tuple[Reader, Reader],
    quick: tuple[str, str] | None,
    notes: list[str],
) -> tuple[list[float], list[float]]:
    """Turn two columns of text into SI numbers, leaving out what cannot be read."""
    if quick:
        try:
            slopes = [units.to_si(1.0, unit) for unit in quick]
            time = [slopes[0] * number for number in map(float, columns[0])]
            pressure = [slopes[1] * number for number in map(float, columns[1])]
        except CalculatorError:
            raise
        except ValueError:
            pass  # a cell that is not a plain number: read them one by one
        else:
            highest = reading_cells.HIGHEST_PRESSURE
            sound = math.isfinite(sum(time) + sum(pressure))
            longest = reading_cells.LONGEST_TIME
            sound = sound and max(time) <= longest and min(time) >= -longest
            if sound and min(pressure) > 0.0 and max(pressure) <= highest:
                return time, pressure
    time, pressure = [], []
    left_out = 0
    for number, *cells in zip(numbers, *columns, strict=False):
        row: list[float] = []
        for column, (cell, read) in enumerate(zip(cells, readers, strict=True)):
            try:
                if not cell.strip():
                    raise FitError("the cell is empty.")
                row.append(read(cell))
            except CalculatorError as error:
                left_out += 1
                if left_out <= _NAMED:
                    what = ("time", "pressure")[column]
                    notes.append(f"Row {number}, {what} column, was left out: {error}")
                break
        else:
            time.append(row[0])
            pressure.append(row[1])
    if left_out > _NAMED:
        notes.append(f"{left_out - _NAMED:,} more rows were left out for the same kind of reason.")
    return time, pressure


def _in_order(
    time: list[float], pressure: list[float], notes: list[str]
) -> tuple[list[float], list[float]]:
    """Sort by time and take the mean of readings that share a time."""
    if all(map(lt, time, time[1:])):
        return time, pressure
    if not all(map(le, time, time[1:])):
        notes.append("The rows were not in order of time: they have been sorted.")
        order = sorted(range(len(time)), key=time.__getitem__)
        time = [time[index] for index in order]
        pressure = [pressure[index] for index in order]
        if all(map(lt, time, time[1:])):
            return time, pressure
    merged: dict[float, list[float]] = {}
    for at, reading in zip(time, pressure, strict=True):
        merged.setdefault(at, []).append(reading)
    repeated = sum(1 for same in merged.values() if len(same) > 1)
    notes.append(
        f"{repeated:,} {'time has' if repeated == 1 else 'times have'} more than one reading: "
        "their mean is used."
    )
    return list(merged), [math.fsum(same) / len(same) for same in merged.values()]


def _name_a_gap(time: list[float], notes: list[str]) -> None:
    """Say where readings are missing for long."""
    if len(time) < 10:
        return
    steps = list(map(sub, time[1:], time))
    longest, length = max(steps), time[-1] - time[0]
    usual = (length - longest) / (len(steps) - 1)
    if longest > 10.0 * usual and longest > 0.1 * length:
        where = time[steps.index(longest)] - time[0]
        notes.append(
            f"There is a gap of {longest / 60.0:.3g} min, {where / 60.0:.3g} min after the "
            "first reading."
        )
