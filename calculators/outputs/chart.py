"""A chart as plain numbers in the reader's units, for whatever draws it."""

import math
from collections.abc import Callable, Sequence
from typing import Any

from calculators import units, wording
from calculators.card import Chart, Series
from calculators.evaluate import Evaluation


def as_chart(evaluation: Evaluation) -> dict[str, Any]:
    """Give the chart's series, axes and marks in the reader's units.

    Parameters
    ----------
    evaluation : Evaluation
        An answer that has a chart.

    Returns
    -------
    dict
        ``title``, ``summary``, ``x`` and ``y`` axes, ``series`` (each with
        ``label``, ``role``, ``x``, ``y``, ``upper`` and ``name_at``, the index
        of the point its name stands at), ``marks`` and the verdict's ``code``.
    """
    chart = evaluation.answer.chart
    assert chart is not None
    axes = {"x": chart.x, "y": chart.y}
    unit = {k: wording.pick(f"{axis.us}|{axis.si}", evaluation.system) for k, axis in axes.items()}

    def shown(values: tuple[float, ...] | None, axis: str) -> list[float] | None:
        return None if values is None else [units.from_si(v, unit[axis]) for v in values]

    return {
        "title": chart.title,
        "summary": evaluation.say(chart.summary),
        **{
            key: {
                "label": axis.label,
                "unit": wording.with_unit("", unit[key]).strip(),
                "log": axis.log,
            }
            for key, axis in axes.items()
        },
        "series": [
            {
                "label": each.label,
                "role": each.role,
                "x": shown(each.x, "x"),
                "y": shown(each.y, "y"),
                "upper": shown(each.upper, "y"),
                "name_at": _name_at(each, chart),
            }
            for each in chart.series
        ],
        "marks": [
            {
                "axis": mark.axis,
                "at": units.from_si(mark.at, unit[mark.axis]),
                "label": evaluation.say(mark.label),
            }
            for mark in chart.marks
        ],
        "code": evaluation.answer.verdict.code if evaluation.answer.verdict else None,
    }


def _name_at(line: Series, chart: Chart) -> int:
    """Where a line's name stands: at its end, or where there is most room between lines."""
    last = len(line.x) - 1
    lines = [each for each in chart.series if each.role in ("fit", "curve")]
    if line not in lines or len(lines) < 2 or last < 1:
        return 0 if last < 1 or line.y[last] < line.y[0] else last
    x = _share([value for each in lines for value in each.x], chart.x.log)
    y = _share([value for each in lines for value in each.y], chart.y.log)
    taken = [(1.0, y(mark.at)) if mark.axis == "y" else (x(mark.at), 1.0) for mark in chart.marks]
    for each in lines:
        if each is not line:
            taken += [(x(at), y(value)) for at, value in zip(each.x, each.y, strict=True)]

    def room(index: int) -> float:
        here = x(line.x[index]), y(line.y[index])
        from_edges = min(here[0], 1.0 - here[0], 0.2)  # a name needs some width
        return from_edges + min(math.dist(here, each) for each in taken)

    return max(range(0, last + 1, max(1, last // 24)), key=room)


def _share(values: Sequence[float], log: bool) -> Callable[[float], float]:
    """Where on its axis a value stands, from 0 to 1 between the ends of these values."""

    def place(value: float) -> float:
        return math.log(max(value, 1e-300)) if log else value

    low, high = place(min(values)), place(max(values))
    return lambda value: (place(value) - low) / (high - low) if high > low else 0.5
