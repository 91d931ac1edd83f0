"""Needles for the page: the scale drawn from its logarithm, questions and their marks.

The drawing is laid out 340 wide, for a phone; equal steps along the arc are
equal factors, and nothing else about it is decided by hand.
"""

import math
from collections.abc import Mapping
from typing import Any

from calculators import wording
from calculators.errors import CalculatorError
from calculators.outputs.element import Element, tag, text_of
from calculators.physics.constants import MICRON
from calculators.teaching import needle as needles
from calculators.teaching import needle_motion
from calculators.teaching.needle import UNITS, Dial, Needle
from calculators.teaching.needle_motion import EVERY, MOTIONS

WIDTH, HEIGHT = 340, 180
MIDDLE, FOOT, RADIUS = 170.0, 162.0, 136.0
START, SWEEP = 172.0, 164.0  # degrees: where the first mark stands, and how far the last is
TICKS = {1: 20.0, 5: 14.0}  # length of marks; the others are short
SHORT = 9.0


def reply(question: Mapping[str, Any]) -> dict[str, Any]:
    """Answer one question from the needle page.

    Parameters
    ----------
    question : mapping
        ``give`` is "needle", "reading", "motion" or "moved"; ``number`` which
        one, ``system`` "us" or "si"; ``answer`` what was typed or chosen, and
        for "moved" the ``part``, "does" or "tells".

    Returns
    -------
    dict
        A drawing, or a mark.
    """
    number, system = question["number"], question["system"]
    if not isinstance(number, int) or system not in UNITS:
        raise CalculatorError("There is no such needle.")
    if question["give"] == "needle":
        needle = needles.needle_of(number, system)
        svg = drawing(needle.dial, needle.value, _where(needle))
        return {"svg": text_of(svg), "unit": needle.dial.unit}
    if question["give"] == "motion":
        return _motion(number, system)
    answer = str(question["answer"])
    if question["give"] == "reading":
        mark = needles.mark_reading(number, answer, system)
    else:
        mark = needle_motion.mark_motion(number, question["part"], answer)
    return {"correct": mark.correct, "says": mark.says}


def _motion(number: int, system: str) -> dict[str, Any]:
    dial, size = needle_motion.motion_dial(system), MICRON if system == "us" else 1.0
    shares = [min(max(dial.share(p / size), -0.01), 1.01) for p in needle_motion.track(number)]
    svg = drawing(
        dial, needle_motion.track(number)[0] / size, "A needle that moves; its readings follow."
    )
    rows = needle_motion.by_the_minute(number, dial.unit)
    table = tag(
        "table",
        tag("thead", tag("tr", tag("th", "Minute", scope="col"),
                         tag("th", f"Reading, {dial.unit}", scope="col"))),
        tag("tbody", [tag("tr", tag("td", str(minute), class_="number"),
                          tag("td", wording.number(value, figures=3), class_="number"))
                      for minute, value in rows]),
    )  # fmt: skip
    return {
        "svg": text_of(svg), "table": text_of(table), "every": EVERY,
        "turns": [round(turn(share), 2) for share in shares],
    }  # fmt: skip


def _where(needle: Needle) -> str:
    """Where the needle points, for whoever cannot see it, without saying the reading."""
    unit, low = needle.dial.unit, needle.decade
    below = math.floor(needle.value / low + 1e-9)
    past = (needle.value - below * low) / low
    how = "on" if past < 0.05 else "a little past" if past < 0.4 else (
        "about midway past" if past < 0.6 else "close to the mark after"
    )  # fmt: skip
    scale = f"{wording.number(needle.dial.first)} to {wording.number(needle.dial.last)} {unit}"
    nth = below - 1
    mark = "the long mark" if nth == 0 else f"short mark {nth} after the long mark"
    return (
        f"A scale from {scale} in factors of ten. The needle is {how} {mark} {wording.number(low)}."
    )


# --- the drawing -------------------------------------------------------------


def turn(share: float) -> float:
    """Degrees that the needle is turned from straight up, clockwise."""
    return 90.0 - (START - SWEEP * share)


def _point(share: float, radius: float) -> tuple[float, float]:
    angle = math.radians(START - SWEEP * share)
    return MIDDLE + radius * math.cos(angle), FOOT - radius * math.sin(angle)


def drawing(dial: Dial, value: float, says: str) -> Element:
    """A dial as SVG: bands, marks, numbers, needle.

    Parameters
    ----------
    dial : Dial
        The scale.
    value : float
        Where the needle stands, in the dial's unit.
    says : str
        What it shows, in words.

    Returns
    -------
    Element
        An svg element; the needle is its ``.needle-hand``, turned by ``transform``.
    """
    marks: list[Element] = []
    for decade in range(dial.decades):
        if decade % 2:
            marks.append(tag("path", d=_band(dial, decade), class_="needle-band"))
    marks.append(tag("path", d=_arc(0.0, 1.0, RADIUS), class_="needle-rim"))
    for decade in range(dial.decades):
        start = dial.first * 10.0**decade
        marks += [_tick(dial, n * start, n) for n in range(1, 10)]
    marks.append(_tick(dial, dial.last, 1))
    for decade in range(dial.decades + 1):
        marks.append(_number(dial, dial.first * 10.0**decade))
    share = min(max(dial.share(value), -0.01), 1.01)
    hand = tag(
        "g",
        tag("line", x1=0, y1=14, x2=0, y2=-(RADIUS - 3), class_="needle-line"),
        tag("circle", r=6, class_="needle-hub"),
        class_="needle-hand", transform=f"translate({MIDDLE} {FOOT}) rotate({turn(share):.2f})",
    )  # fmt: skip
    unit = tag("text", dial.unit, x=MIDDLE, y=FOOT - 42, text_anchor="middle", class_="needle-unit")
    return tag(
        "svg", marks, unit, hand, viewBox=f"0 0 {WIDTH} {HEIGHT}", role="img", aria_label=says,
        xmlns="http://www.w3.org/2000/svg", data_at=f"{MIDDLE:g} {FOOT:g}",
    )  # fmt: skip


def _tick(dial: Dial, value: float, lead: int) -> Element:
    share, length = dial.share(value), TICKS.get(lead, SHORT)
    (x1, y1), (x2, y2) = _point(share, RADIUS), _point(share, RADIUS - length)
    return tag(
        "line", x1=f"{x1:.1f}", y1=f"{y1:.1f}", x2=f"{x2:.1f}", y2=f"{y2:.1f}",
        class_="needle-mark needle-long" if lead == 1 else "needle-mark",
    )  # fmt: skip


def _number(dial: Dial, value: float) -> Element:
    share = dial.share(value)
    x, y = _point(share, RADIUS + 9.0)
    anchor = "middle" if 0.4 < share < 0.6 else "end" if share < 0.5 else "start"
    if share < 0.05 or share > 0.95:  # at the ends the numbers stand under the arc
        x, y = _point(share, RADIUS - 4.0)
        y, anchor = y + 18.0, "middle"
    return tag(
        "text", wording.number(value), x=f"{x:.1f}", y=f"{y:.1f}", text_anchor=anchor,
        class_="needle-number",
    )  # fmt: skip


def _arc(first: float, last: float, radius: float) -> str:
    (x1, y1), (x2, y2) = _point(first, radius), _point(last, radius)
    return f"M{x1:.1f} {y1:.1f}A{radius:g} {radius:g} 0 0 1 {x2:.1f} {y2:.1f}"


def _band(dial: Dial, decade: int) -> str:
    first, last = decade / dial.decades, (decade + 1) / dial.decades
    inner = RADIUS - 34.0
    x, y = _point(last, inner)
    back, up = _point(first, inner)
    return (
        f"{_arc(first, last, RADIUS)}L{x:.1f} {y:.1f}A{inner:g} {inner:g} 0 0 0 "
        f"{back:.1f} {up:.1f}Z"
    )


# --- what the page is built with ---------------------------------------------


def needle() -> str:
    """The two exercises as they stand before the first question, with the first needle drawn."""
    first = needles.needle_of(1, "us")
    reading = tag(
        "section",
        tag("h2", "Where does it stand?", id="needle-reading"),
        tag("div", drawing(first.dial, first.value, _where(first)), class_="needle-dial",
            data_part="dial"),
        tag(
            "form",
            tag("label", "The needle stands at", for_="needle-answer"),
            tag("div", tag("input", type="text", id="needle-answer", name="answer",
                           inputmode="decimal", autocomplete="off"),
                tag("span", first.dial.unit, class_="quiz-unit", data_part="unit"),
                class_="field"),
            tag("div", tag("button", "Check", type="submit", class_="quiz-check"),
                tag("button", "Next needle", type="button", data_needle="next",
                    class_="needle-next"),
                class_="needle-buttons"),
            tag("output", class_="quiz-mark", aria_live="polite"),
            novalidate=True, data_ask="reading",
        ),
        tag("p", class_="needle-score", role="status", data_part="score"),
        class_="needle-part", aria_labelledby="needle-reading",
    )  # fmt: skip
    motion = tag(
        "section",
        tag("h2", "What does its motion mean?", id="needle-motion"),
        tag("p", "Ten minutes in twelve seconds. Watch the needle, or read it minute by minute."),
        tag("div", class_="needle-dial", data_part="moving"),
        tag("div", tag("button", "Show it", type="button", data_needle="play",
                       class_="needle-next"),
            _other_motion(), class_="needle-buttons"),
        tag("details", tag("summary", "Minute by minute"), tag("div", data_part="table"),
            class_="needle-table"),
        _choices("does", "What does the needle do?"),
        _choices("tells", "What does that tell you?", _other_motion()),
        class_="needle-part", aria_labelledby="needle-motion",
    )  # fmt: skip
    return text_of(
        tag("needle-practice", reading, motion, state="static", data_search_exclude=True)
    )


def _other_motion() -> Element:
    return tag("button", "Next motion", type="button", data_needle="other", class_="needle-next")


def _choices(part: str, asks: str, beside: Element | None = None) -> Element:
    options = [
        tag("label", tag("input", type="radio", name=part, value=each.key),
            tag("span", getattr(each, part)), class_="quiz-option")
        for each in MOTIONS
    ]  # fmt: skip
    return tag(
        "form",
        tag("fieldset", tag("legend", asks, class_="quiz-asks"), options, class_="quiz-options"),
        tag("div", tag("button", "Check", type="submit", class_="quiz-check"), beside,
            class_="needle-buttons"),
        tag("output", class_="quiz-mark", aria_live="polite"),
        class_="needle-choice", novalidate=True, data_ask=part,
    )  # fmt: skip
