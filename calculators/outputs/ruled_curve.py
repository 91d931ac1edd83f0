"""A curve on ruled paper, to be read by eye: the same drawing on a page, a sheet and in a file.

It shows one line of a card's chart and nothing that would give the reading
away. The drawing follows the text color, so it prints and turns dark as text does.
"""

import math
from collections.abc import Callable

from calculators import wording
from calculators.outputs.chart import as_chart
from calculators.outputs.element import Element, tag
from calculators.teaching.asking import answered
from calculators.teaching.question import Asked

WIDTH, HEIGHT = 440, 320
LEFT, RIGHT, TOP, BOTTOM = 94, 14, 34, 50
Points = list[tuple[float, float]]
Place = Callable[[float], float]
TICKS = 5  # about so many numbers on a linear scale


def ruled_curve(asked: Asked, line: str, *, system: str = "us") -> Element:
    """Draw one line of a card's chart.

    Parameters
    ----------
    asked : Asked
        The card and what is entered.
    line : str
        The role of the series that is shown: "reading" or "fit".
    system : str
        "us" or "si": the units on the scales.

    Returns
    -------
    Element
        An ``svg`` with the scales and the line, with a name for screen readers.
    """
    chart = as_chart(answered(asked, system=system))
    one = next(each for each in chart["series"] if each["role"] == line)
    points = [(x, y) for x, y in zip(one["x"], one["y"], strict=True) if y > 0.0]
    x_low, x_high = 0.0, max(x for x, _ in points)
    x_marks = _steps(x_low, x_high)
    x_high = max(x_high, x_marks[-1])
    lowest, highest = min(y for _, y in points), max(y for _, y in points)
    log = bool(chart["y"]["log"])
    y_marks = _decades(lowest, highest) if log else _steps(0.0, highest * 1.05)
    y_low, y_high = y_marks[0], y_marks[-1]

    def at_x(value: float) -> float:
        return LEFT + (WIDTH - LEFT - RIGHT) * (value - x_low) / (x_high - x_low)

    def at_y(value: float) -> float:
        share = (
            math.log(value / y_low) / math.log(y_high / y_low)
            if log
            else (value - y_low) / (y_high - y_low)
        )
        return HEIGHT - BOTTOM - (HEIGHT - TOP - BOTTOM) * share

    ruling = [_rule(at_x(v), TOP, at_x(v), HEIGHT - BOTTOM, 0.35) for v in x_marks]
    for value in y_marks:
        ruling.append(_rule(LEFT, at_y(value), WIDTH - RIGHT, at_y(value), 0.8 if log else 0.35))
    if log:
        fine = [m * d for d in y_marks[:-1] for m in range(2, 10)]
        ruling += [_rule(LEFT, at_y(v), WIDTH - RIGHT, at_y(v), 0.25) for v in fine]
    names = [_name(at_x(v), HEIGHT - BOTTOM + 20, "middle", _shown(v)) for v in x_marks]
    names += [_name(LEFT - 7, at_y(v) + 5, "end", _shown(v)) for v in y_marks]
    names.append(_name(WIDTH - RIGHT, HEIGHT - 6, "end", _titled(chart["x"])))
    names.append(_name(0, 17, "start", _titled(chart["y"])))
    told = f"{chart['y']['label']} against {chart['x']['label'].lower()}"
    return tag(
        "svg",
        tag("g", ruling, stroke="currentColor"),
        tag("g", names, fill="currentColor", font_size="16.5"),
        _dots(points, at_x, at_y) if line == "reading" else _line(points, at_x, at_y),
        viewBox=f"0 0 {WIDTH} {HEIGHT}",
        role="img",
        aria_label=f"{told}: {_read_out(points, chart)}",
        class_="ruled-curve",
    )


def _rule(x1: float, y1: float, x2: float, y2: float, opacity: float) -> Element:
    d = f"M{x1:.1f} {y1:.1f}L{x2:.1f} {y2:.1f}"
    return tag("path", d=d, stroke_width="1", stroke_opacity=opacity)


def _name(x: float, y: float, anchor: str, text: str) -> Element:
    return tag("text", text, x=f"{x:.1f}", y=f"{y:.1f}", text_anchor=anchor)


def _dots(points: Points, at_x: Place, at_y: Place) -> Element:
    each = [tag("circle", cx=f"{at_x(x):.1f}", cy=f"{at_y(y):.1f}", r="4.5") for x, y in points]
    return tag("g", each, fill="currentColor")


def _line(points: Points, at_x: Place, at_y: Place) -> Element:
    d = "M" + "L".join(f"{at_x(x):.1f} {at_y(y):.1f}" for x, y in points)
    return tag("path", d=d, fill="none", stroke="currentColor", stroke_width="3")


def _steps(low: float, high: float) -> list[float]:
    """Round numbers from ``low`` past ``high``, 1, 2 or 5 apart."""
    rough = (high - low) / TICKS
    size = 10.0 ** math.floor(math.log10(rough))
    step = next(m * size for m in (1.0, 2.0, 5.0, 10.0) if m * size >= rough)
    return [low + step * n for n in range(math.ceil((high - low) / step - 1e-9) + 1)]


def _decades(low: float, high: float) -> list[float]:
    first, last = math.floor(math.log10(low)), math.ceil(math.log10(high) - 1e-9)
    return [10.0**n for n in range(first, max(last, first + 1) + 1)]


def _shown(value: float) -> str:
    return wording.number(value, figures=3)


def _titled(axis: dict[str, str]) -> str:
    return f"{axis['label']}, {axis['unit']}" if axis["unit"] else axis["label"]


def _read_out(points: Points, chart: dict[str, dict[str, str]]) -> str:
    """A few points in words, for those who hear the drawing."""
    step = max(1, len(points) // 8)
    some = points[::step]
    x, y = chart["x"]["unit"], chart["y"]["unit"]
    return ", ".join(f"{_shown(b)} {y} at {_shown(a)} {x}" for a, b in some)
