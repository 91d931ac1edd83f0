"""How every figure looks: size, type, palette, axes, labels on lines.

A figure is drawn 340 wide, for a phone of 360, with no text below 12; on a wider screen the
whole drawing grows until its text is as large as the text around it. Colors are the page's:
those below stand for CSS variables, which :mod:`svg_clean` puts in.
"""

from __future__ import annotations

import io
import math
import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

import matplotlib
import svg_clean
from fontTools.ttLib import TTFont
from fontTools.varLib.instancer import instantiateVariableFont
from matplotlib import font_manager, pyplot
from matplotlib.ticker import FixedLocator, FuncFormatter, NullLocator
from steps import BUILD, ROOT

from calculators import units, wording

matplotlib.use("svg")

INK, QUIET, RULE, HAIR = "#17232c", "#43515b", "#d8d3c6", "#ece8de"
PAPER, WASH, ACCENT = "#faf8f3", "#e7f0f0", "#0a5763"
HOLDS, LEAK, GAS, UNSURE = "#0b5a47", "#8d3012", "#1e4c9b", "#634c00"
VARIABLES = {
    INK: "var(--ink)", QUIET: "var(--quiet)", RULE: "var(--rule)", HAIR: "var(--hair)",
    PAPER: "var(--paper)", WASH: "var(--wash)", ACCENT: "var(--accent)", HOLDS: "var(--holds)",
    LEAK: "var(--leak)", GAS: "var(--gas)", UNSURE: "var(--unsure)",
}  # fmt: skip

WIDTH = 340  # CSS pixels of the drawing at a phone's width
TEXT = 12  # size of all text
SETTINGS: dict[str, Any] = {
    "figure.dpi": 72,
    "figure.constrained_layout.h_pad": 2 / 72,
    "figure.constrained_layout.w_pad": 2 / 72,
    "font.size": TEXT,
    "axes.titlesize": TEXT,
    "axes.edgecolor": QUIET,
    "axes.linewidth": 1,
    "axes.labelcolor": QUIET,
    "axes.titlecolor": QUIET,
    "axes.axisbelow": True,
    "axes.spines.top": False,
    "axes.spines.right": False,
    "grid.color": HAIR,
    "grid.linewidth": 1,
    "lines.linewidth": 2.5,
    "lines.solid_capstyle": "round",
    "text.color": INK,
    "xtick.color": QUIET,
    "ytick.color": QUIET,
    "xtick.major.size": 0,
    "ytick.major.size": 0,
    "svg.fonttype": "none",
    "svg.hashsalt": "dry-and-tight",
    "savefig.transparent": True,
}
FONT = ROOT / "docs" / "assets" / "vendor" / "text.woff2"


@dataclass(frozen=True, kw_only=True)
class Figure:
    """One figure: what it is called, what it says, and what draws it.

    ``draw`` returns the drawing and the numbers that ``caption`` and ``alt`` name; both are
    templates as a card's are.
    """

    id: str
    title: str
    caption: str
    alt: str
    draw: Callable[[], tuple[Any, Mapping[str, float | str]]]

    @property
    def source(self) -> str:
        """Path of the code that draws it."""
        return f"{self.draw.__module__.replace('.', '/')}.py".replace(
            "figures/", "scripts/figures/"
        )


def rendered(figure: Figure) -> dict[str, str]:
    """Draw a figure: its SVG element, its caption and what it shows, as text."""
    with matplotlib.rc_context({**SETTINGS, "font.family": _font()}):
        drawing, values = figure.draw()
        out = io.StringIO()
        drawing.savefig(out, format="svg", metadata={"Date": None})
        pyplot.close(drawing)
    words = wording.Scope(values, {}, "us")
    alt = words.fill(figure.alt)
    svg = svg_clean.clean(out.getvalue(), name=figure.id, label=alt, colors=VARIABLES)
    number_and_unit = re.compile(r"(?<=\d) (?=[^\W\d_]|[°µ%])")
    caption = number_and_unit.sub("\N{NO-BREAK SPACE}", words.fill(figure.caption))
    return {"svg": svg, "caption": caption, "alt": alt}


@cache
def _font() -> str:
    """Make the page's font known to matplotlib, so that text is measured as it will be set."""
    if not FONT.exists():
        return "DejaVu Sans"
    for weight in (400, 700):
        made = BUILD / "figures" / f"text-{weight}.ttf"
        if not made.exists() or made.stat().st_mtime < FONT.stat().st_mtime:
            made.parent.mkdir(parents=True, exist_ok=True)
            font = instantiateVariableFont(TTFont(FONT, recalcTimestamp=False), {"wght": weight})
            font["OS/2"].usWeightClass = weight
            font.flavor = None
            font.save(made)
        font_manager.fontManager.addfont(made)
    return font_manager.FontProperties(fname=made).get_name()


# --- drawing ------------------------------------------------------------------


def canvas(*, height: float = 280, rows: int = 1, columns: int = 1, **settings: Any) -> Any:
    """Give a drawing and its axes, ``height`` in CSS pixels at a phone's width."""
    return pyplot.subplots(
        rows, columns, figsize=(WIDTH / 72, height / 72), layout="constrained", **settings
    )


def titles(axes: Any, *, x: str, y: str) -> None:
    """Name both axes where they are read first: y above its axis, x at its end."""
    axes.set_xlabel(x, loc="right", labelpad=2)
    axes.set_title(y, loc="left", pad=7)
    axes.grid(True)


def log_axis(axis: Any, ticks: Sequence[float]) -> None:
    """Make an axis logarithmic, with these numbers on it, set as numbers."""
    getattr(axis.axes, f"set_{axis.axis_name}scale")("log")
    axis.set_minor_locator(NullLocator())
    marks(axis, ticks)


def marks(axis: Any, ticks: Sequence[float], *, signs: Sequence[str] = ()) -> None:
    """Put these numbers on an axis, or ``signs`` in their place."""
    axis.set_major_locator(FixedLocator(ticks))
    if signs:
        named = dict(zip(ticks, signs, strict=True))
        axis.set_major_formatter(FuncFormatter(lambda value, _: named.get(value, "")))
    else:
        axis.set_major_formatter(FuncFormatter(lambda value, _: wording.number(value, figures=6)))


def label(
    axes: Any,
    x: float,
    y: float,
    text: str,
    color: str = INK,
    *,
    dx: float = 0,
    dy: float = 0,
    ha: str = "left",
    va: str = "center",
    on_line: bool = False,
    **settings: Any,
) -> None:
    """Write on the drawing at a point of the data, moved by pixels; on a line, with a gap in it."""
    axes.annotate(
        text, (x, y), xytext=(dx, dy), textcoords="offset points", color=color, ha=ha, va=va,
        annotation_clip=False, gid="class-on-line" if on_line else None, **settings,
    )  # fmt: skip


def both_scales(axis: Any, ticks: Sequence[float], first: str, second: str) -> None:
    """Put these numbers on an axis in two units, the second in a line below or beside."""
    others = [
        wording.number(units.from_si(units.to_si(t, first), second), decimals=0) for t in ticks
    ]
    signs = [f"{wording.number(t)}\n{other}" for t, other in zip(ticks, others, strict=True)]
    marks(axis, ticks, signs=signs)


def second_scale(axes: Any, which: str, ticks: Sequence[float], first: str, second: str) -> None:
    """Put the other system's unit on the far side: ``ticks`` in it, on an axis in ``first``."""
    far = axes.twinx() if which == "y" else axes.twiny()
    axis, near = getattr(far, f"{which}axis"), getattr(axes, f"{which}axis")
    getattr(far, f"set_{which}scale")(near.get_scale())
    getattr(far, f"set_{which}lim")(getattr(axes, f"get_{which}lim")())
    places = [units.from_si(units.to_si(tick, second), first) for tick in ticks]
    axis.set_minor_locator(NullLocator())
    marks(axis, places, signs=[wording.number(tick) for tick in ticks])
    far.set_title(wording.with_unit("", second).strip(), loc="right", pad=7)


def spread(low: float, high: float, count: int = 80, *, log: bool = False) -> list[float]:
    """Give numbers from low to high, evenly spaced on the axis."""
    if log:
        low, high = math.log(low), math.log(high)
    steps = [low + (high - low) * i / (count - 1) for i in range(count)]
    return [math.exp(step) for step in steps] if log else steps


def shown(values: Sequence[float], unit: str) -> list[float]:
    """Give SI values in an accepted unit."""
    return [units.from_si(value, unit) for value in values]
