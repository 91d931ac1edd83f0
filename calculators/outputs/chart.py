"""A chart as plain numbers in the reader's units, for whatever draws it."""

from typing import Any

from calculators import units, wording
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
        ``label``, ``role``, ``x``, ``y``, ``upper``), ``marks`` and the
        verdict's ``code``.
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
