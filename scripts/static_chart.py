"""Draw a card's chart as SVG at build time, in the page's own colors.

The drawing takes the same plain object as the browser's chart, and its colors are CSS
variables, so it follows light and dark. No style attribute or element is left in it
(the content policy forbids them), and the same chart gives the same bytes.
"""

from __future__ import annotations

import io
from collections.abc import Mapping, Sequence
from typing import Any

import matplotlib
import svg_clean

matplotlib.use("svg")

from matplotlib import pyplot
from matplotlib.ticker import FuncFormatter, LogLocator, MaxNLocator, NullLocator

# Stand-ins that matplotlib can parse, and what they become.
INK, QUIET, HAIR, FIT, LEAK = "#010101", "#020202", "#030303", "#040404", "#050505"
SHEET = "#060606"
VARIABLES = {
    INK: "var(--ink)",
    QUIET: "var(--quiet)",
    HAIR: "var(--hair)",
    FIT: "var(--v, var(--accent))",
    LEAK: "var(--leak)",
    SHEET: "var(--sheet)",
}
WIDTH, HEIGHT = 400, 290  # CSS pixels; card.css gives .plot the same shape
SETTINGS = {
    "svg.fonttype": "none",
    "svg.hashsalt": "dry-and-tight",
    "font.size": 13,
    "axes.edgecolor": QUIET,
    "axes.labelcolor": QUIET,
    "xtick.color": QUIET,
    "ytick.color": QUIET,
    "text.color": QUIET,
    "axes.spines.top": False,
    "axes.spines.right": False,
    "savefig.transparent": True,
}


def draw(chart: Mapping[str, Any], name: str) -> str:
    """Give the chart as an SVG element.

    Parameters
    ----------
    chart : mapping
        What ``calculators.outputs.chart.as_chart`` gives.
    name : str
        Prefix that makes the element's ids its own on the page.

    Returns
    -------
    str
        ``<svg role="img" ...>`` with the chart's summary as its label.
    """
    with matplotlib.rc_context(SETTINGS):
        figure, axes = pyplot.subplots(figsize=(WIDTH / 72, HEIGHT / 72), layout="constrained")
        figure.get_layout_engine().set(w_pad=0.2, h_pad=0.08)
        axes.set_xscale("log" if chart["x"]["log"] else "linear")
        axes.set_yscale("log" if chart["y"]["log"] else "linear")
        for series in chart["series"]:
            _series(axes, series)
        for series in chart["series"]:
            _name(axes, series)
        _axis(axes.xaxis, chart["x"])
        _axis(axes.yaxis, chart["y"])
        axes.set_xlabel(_titled(chart["x"]), loc="right", labelpad=2)
        axes.set_title(_titled(chart["y"]), loc="left", fontsize=13, color=QUIET, pad=8)
        axes.grid(color=HAIR, linewidth=1)
        axes.set_axisbelow(True)
        for mark in chart["marks"]:
            _mark(axes, mark, chart["marks"])
        out = io.StringIO()
        figure.savefig(out, format="svg", metadata={"Date": None})
        pyplot.close(figure)
    label = chart["summary"] or chart["title"]
    return svg_clean.clean(out.getvalue(), name=name, label=label, colors=VARIABLES)


def _series(axes: Any, series: Mapping[str, Any]) -> None:
    x, y = series["x"], series["y"]
    if series["role"] == "band":
        axes.fill_between(x, y, series["upper"], color=FIT, alpha=0.15, linewidth=0)
    elif series["role"] == "reading":
        axes.plot(x, y, "o", color=INK, markersize=5, zorder=3)
    else:
        color = FIT if series["role"] == "fit" else INK
        axes.plot(x, y, "-", color=color, linewidth=2.5)


def _name(axes: Any, series: Mapping[str, Any]) -> None:
    if series["role"] in ("fit", "curve"):
        color = FIT if series["role"] == "fit" else INK
        axes.annotate(series["label"], color=color, **_place_of_name(axes, series))


def _place_of_name(axes: Any, series: Mapping[str, Any]) -> dict[str, Any]:
    """Right of a line that falls, before one that climbs unless the axis is in the way."""
    x, y, at = series["x"], series["y"], series["name_at"]
    falls = y[-1] < y[0]
    left = falls or _across(axes, x[at]) < _width(series["label"])
    return {
        "xy": (x[at], y[at]),
        "xytext": (8, 4) if falls else (4, 7) if left else (0, 7),
        "textcoords": "offset points",
        "ha": "left" if left else "right",
    }


def _across(axes: Any, x: float) -> float:
    """Say where along the axis a value stands, from 0 to 1."""
    return (axes.transData + axes.transAxes.inverted()).transform((x, axes.get_ylim()[0]))[0]


def _width(words: str) -> float:
    """Estimate the width of words as a part of the axis, which is some 300 pixels."""
    return (7.5 * len(words) + 10) / 300


def _axis(axis: Any, about: Mapping[str, Any]) -> None:
    if about["log"]:
        low, high = axis.get_view_interval()
        between = (1, 2, 5) if high < 150 * low else (1,)
        axis.set_major_locator(LogLocator(subs=between, numticks=4 if axis.axis_name == "x" else 6))
        axis.set_minor_locator(NullLocator())
    else:
        axis.set_major_locator(MaxNLocator(nbins=5))
    axis.set_major_formatter(FuncFormatter(lambda value, _: _number(value)))
    axis.set_tick_params(length=0)


def _number(value: float) -> str:
    return f"{value:,.6g}".replace("-", "−") if abs(value) < 1e6 else f"{value:,.0f}"


def _titled(about: Mapping[str, Any]) -> str:
    return f"{about['label']}, {about['unit']}" if about["unit"] else about["label"]


def _mark(axes: Any, mark: Mapping[str, Any], marks: Sequence[Mapping[str, Any]]) -> None:
    style = {"color": LEAK, "linewidth": 1.5, "linestyle": (0, (5, 4))}
    ground = {"facecolor": SHEET, "edgecolor": "none", "pad": 1}
    if mark["axis"] == "y":
        axes.axhline(mark["at"], **style)
        place = {"xy": (1, mark["at"]), "xycoords": ("axes fraction", "data"), "ha": "right"}
        axes.annotate(
            mark["label"],
            xytext=(0, 4),
            textcoords="offset points",
            color=LEAK,
            bbox=ground,
            **place,
        )
    else:
        axes.axvline(mark["at"], **style)
        ends = [_across(axes, each["at"]) for each in marks if each["axis"] == "x"]
        here, width = _across(axes, mark["at"]), _width(mark["label"])
        room = min([1.0, *(end for end in ends if end > here)]) - here
        late = room < width <= here  # its name stands before it
        place = {"xy": (mark["at"], 1), "xycoords": ("data", "axes fraction"), "va": "top"}
        place |= {"xytext": (-5 if late else 5, 0), "ha": "right" if late else "left"}
        axes.annotate(mark["label"], textcoords="offset points", color=LEAK, bbox=ground, **place)
