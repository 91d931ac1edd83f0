"""Logs as they come: every kind of mess is read right, and garbage is named by row."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.errors import CalculatorError
from calculators.readings import MOST_READINGS, read_log

MICRON = 101_325.0 / 760_000.0  # Pa

# The same five minutes, written in every way: time 0, 2.5 and 5 min, 305, 309 and 1,204 micron.
SAME_LOG = {
    "pairs on one line": "0 305, 2.5 309, 5 1204",
    "pairs with semicolons": "0 305; 2.5 309; 5 1204",
    "numbers by turns": "0 305 2.5 309 5 1204",
    "spaces": "0   305\n2.5 309\n5   1204",
    "commas": "0,305\n2.5,309\n5,1204",
    "commas and spaces": "0, 305\n2.5, 309\n5, 1204",
    "semicolons": "0;305\n2.5;309\n5;1204",
    "tabs": "0\t305\n2.5\t309\n5\t1204",
    "decimal commas": "0;305,0\n2,5;309,0\n5,0;1204,0",
    "decimal commas after spaces": "0 305,0\n2,5 309,0\n5 1204,0",
    "thousands": "0\t305\n2.5\t309\n5\t1,204",
    "quoted cells": '"0","305"\n"2.5","309"\n"5","1204"',
    "header": "time,pressure\n0,305\n2.5,309\n5,1204",
    "header, seconds and Torr": "Time [s],Pressure (Torr)\n0,0.305\n150,0.309\n300,1.204",
    "header, hours": "t / h;p / mTorr\n0;305\n0,0416666666666667;309\n0,0833333333333333;1204",
    "header the other way round": "p_micron,t_min\n305,0\n309,2.5\n1204,5",
    "units in the cells": "0 min 305 micron\n150 s 0.309 Torr\n5 min 1.204 Torr",
    "clock": "08:00:00,305\n08:02:30,309\n08:05:00,1204",
    "clock past midnight": "23:57:30 305\n00:00:00 309\n00:02:30 1204",
    "minutes and seconds": "elapsed min\tvacuum\n0:00\t305\n2:30\t309\n5:00\t1204",
    "ISO stamps": "2026-05-04T08:00:00Z,305\n2026-05-04T08:02:30Z,309\n2026-05-04T08:05:00Z,1204",
    "date and clock in two cells": "2026-05-04,08:00:00,305\n2026-05-04,08:02:30,309\n"
    "2026-05-04,08:05:00,1204",
    "stamps with a space": "2026-05-04 08:00:00 305\n2026-05-04 08:02:30 309\n"
    "2026-05-04 08:05:00 1204",
    "written dates": "05/04/2026 11:58:00 AM,305\n05/04/2026 12:00:30 PM,309\n"
    "05/04/2026 12:03:00 PM,1204",
    "more columns": "n,time_s,oil_C,vacuum_micron\n1,0,20,305\n2,150,20,309\n3,300,20,1204",
    "comments and blank lines": "# village library\n\n0 305\n// pump off\n2.5 309\n\n5 1204\n",
    "unsorted": "5 1204\n0 305\n2.5 309",
    "byte-order mark and carriage returns": "\ufeff0,305\r\n2.5,309\r\n5,1204\r\n",
}


@pytest.mark.parametrize("text", SAME_LOG.values(), ids=SAME_LOG)
def test_the_same_log_in_every_shape(text):
    log = read_log(text)

    assert log.times == pytest.approx([0.0, 150.0, 300.0], abs=1e-6)
    assert [p / MICRON for p in log.pressures] == pytest.approx([305.0, 309.0, 1204.0], rel=1e-9)


def test_sorting_is_said():
    assert any("sorted" in note for note in read_log("5 312\n0 305").notes)
    assert read_log("0 305\n5 312").notes == ()


def test_readings_at_one_time_are_averaged_and_it_is_said():
    log = read_log("0 305\n5 309\n5 311\n10 312")

    assert log.pressures[1] == pytest.approx(310.0 * MICRON)
    assert any("more than one reading" in note for note in log.notes)


def test_a_gap_is_named():
    rows = "\n".join(f"{t} 300" for t in [*range(20), *range(60, 80)])

    assert any("gap of 41 min" in note for note in read_log(rows).notes)


@pytest.mark.parametrize(
    ("cell", "what"),
    [("OL", "OL"), ("", "empty"), ("nan", "nan"), ("inf", "inf"), ("-5", "-5"), ("0", "0"),
     ("9e9", "9e9"), ("5 furlong", "furlong"), ("70 F", "70 F")],
)  # fmt: skip
def test_garbage_is_named_by_row_and_column_and_the_rest_is_kept(cell, what):
    log = read_log(f"minutes,micron\n0,305\n5,{cell}\n10,312")

    assert [p / MICRON for p in log.pressures] == pytest.approx([305.0, 312.0])
    (note,) = log.notes
    assert note.startswith("Row 3, pressure column")
    assert what in note


def test_much_garbage_is_counted():
    log = read_log("\n".join(["0 305", *(f"{t} OL" for t in range(1, 30)), "30 312"]))

    assert log.notes[3].startswith("26 more rows")


@pytest.mark.parametrize(
    "text",
    ["", "  \n ", "abc", "5 300", "0 305\n0 306", "minutes,micron", "0 -3, 5 -4", "0 nan, 5 inf",
     "x,y\n1,2\n3,z", "1\n2\n3", "0 300 5"],
)  # fmt: skip
def test_too_little_is_refused_in_one_sentence(text):
    with pytest.raises(CalculatorError) as refusal:
        read_log(text)

    assert "\n" not in str(refusal.value)


def test_a_log_that_is_too_long_is_refused():
    with pytest.raises(CalculatorError, match="rows"):
        read_log("0 300\n" * (MOST_READINGS + 1))


def test_a_day_at_one_per_second_is_read_whole():
    log = read_log("s,micron\n" + "\n".join(f"{t},{300 + t // 1000}" for t in range(86_400)))

    assert len(log.times) == 86_400
    assert log.notes == ()


def test_a_long_log_without_units_says_what_was_supposed():
    assert any("min" in note for note in read_log("\n".join(f"{t} 300" for t in range(99))).notes)


def is_sound(log):
    rising = all(a < b for a, b in zip(log.times, log.times[1:], strict=False))
    finite = all(map(math.isfinite, (*log.times, *log.pressures)))
    even = len(log.times) == len(log.pressures) >= 2
    return rising and finite and even and min(log.pressures) > 0


@given(st.text(max_size=300))
def test_any_text_is_read_or_refused(text):
    try:
        log = read_log(text)
    except CalculatorError as refusal:
        assert "\n" not in str(refusal)
    else:
        assert is_sound(log)


@given(
    st.lists(
        st.lists(
            st.one_of(
                st.sampled_from(["", "OL", "nan", "1e400", "-3", "08:15", "8:61", "2026-13-01",
                                 "2026-05-04T08:00", "1,2,3", "min", "micron", "#", "5 micron"]),
                st.floats(allow_nan=True).map(str),
                st.integers(-5, 2000).map(str),
            ),
            max_size=4,
        ),
        max_size=12,
    ),
    st.sampled_from([",", ";", "\t", " ", ", "]),
)  # fmt: skip
def test_any_table_is_read_or_refused(rows, separator):
    try:
        log = read_log("\n".join(separator.join(row) for row in rows))
    except CalculatorError as refusal:
        assert "\n" not in str(refusal)
    else:
        assert is_sound(log)


@given(
    st.lists(st.tuples(st.integers(0, 9999), st.integers(1, 99_999)), min_size=2, max_size=30,
             unique_by=lambda pair: pair[0]),
    st.sampled_from([",", ";", "\t", " "]),
)  # fmt: skip
def test_whole_numbers_come_back_as_they_were(pairs, separator):
    log = read_log("seconds" + separator + "micron\n"
                   + "\n".join(f"{t}{separator}{p}" for t, p in pairs))  # fmt: skip

    assert log.times == tuple(float(t) for t, _ in sorted(pairs))
    assert [p / MICRON for p in log.pressures] == pytest.approx([p for _, p in sorted(pairs)])
