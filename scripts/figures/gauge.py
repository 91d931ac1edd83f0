"""The gauge: what the gas does to its reading, how its scale is read, what a dial can show."""

from __future__ import annotations

import math
from typing import Any

from calculators import units, wording
from calculators.physics.atmosphere import barometer_at
from calculators.physics.constants import STANDARD_ATMOSPHERE
from calculators.physics.gases import GASES
from calculators.physics.thermal_gauge import PRINTED_FACTORS, THIN_UP_TO, thin_gas_reading
from figures.style import (
    ACCENT,
    INK,
    LEAK,
    QUIET,
    WASH,
    Figure,
    both_scales,
    canvas,
    label,
    marks,
    second_scale,
    shown,
    spread,
    titles,
)

COMPARED = (
    "nitrogen", "air", "R-744", "R-32", "R-22", "R-454B", "R-410A", "water vapor", "R-134a",
    "R-404A", "R-290",
)  # fmt: skip
TARGET = units.to_si(500.0, "micron")


def thermal_gauge_gas() -> tuple[Any, dict[str, float]]:
    readings = {name: thin_gas_reading(gas=GASES[name]) for name in COMPARED}
    ordered = sorted(COMPARED, key=readings.__getitem__)
    drawing, axes = canvas(height=330)
    axes.set_title("Indicated over true pressure", loc="left", pad=7)
    axes.grid(True, axis="x")
    axes.axvline(1, color=QUIET, linewidth=1.5)
    for row, name in enumerate(ordered):
        axes.plot((1, readings[name]), (row, row), color=ACCENT, linewidth=2)
        axes.plot(readings[name], row, "o", color=ACCENT, markersize=7)
        if name not in ("air", "nitrogen") and name in PRINTED_FACTORS:
            printed = 1 / PRINTED_FACTORS[name]
            axes.plot(printed, row, "o", color=INK, markersize=7, markerfacecolor="none")
            if name == "water vapor":
                label(axes, printed, row, "as makers print", INK, dx=7)
    marks(axes.yaxis, range(len(ordered)), signs=ordered)
    marks(axes.xaxis, (1, 1.5, 2, 2.5))
    axes.set_xlim(0.9, 2.65)
    axes.spines["left"].set_visible(False)
    values = {
        "thin": THIN_UP_TO,
        "water": readings["water vapor"],
        "water_printed": 1 / PRINTED_FACTORS["water vapor"],
        "highest": readings[ordered[-1]],
        "highest_name": ordered[-1],
        "shown_500": TARGET * readings["R-410A"],
        "target": TARGET,
    }
    return drawing, values


def log_scale() -> tuple[Any, dict[str, float]]:
    drawing, axes = canvas(height=185)
    axes.set_axis_off()
    axes.set_aspect("equal")
    first, last = 10.0, 10_000.0

    def angle(micron: float) -> float:
        turned = math.log(micron / first) / math.log(last / first)
        return math.radians(172 - 164 * turned)

    def point(micron: float, radius: float) -> tuple[float, float]:
        return radius * math.cos(angle(micron)), radius * math.sin(angle(micron))

    def line(micron: float, inner: float, outer: float, color: str, width: float) -> None:
        ends = zip(point(micron, inner), point(micron, outer), strict=True)
        axes.plot(*ends, color=color, linewidth=width, solid_capstyle="butt")

    # Every factor of ten takes the same part of the scale, whatever it begins at.
    for decade, start in enumerate((10.0, 100.0, 1_000.0)):
        along = spread(start, 10 * start, 30, log=True)
        ring = [point(p, 0.9) for p in along] + [point(p, 0.7) for p in reversed(along)]
        if decade != 1:
            axes.fill(*zip(*ring, strict=True), color=WASH, linewidth=0)
        middle = start * math.sqrt(10)
        label(axes, *point(middle, 0.8), "× 10", QUIET, ha="center", va="center")
        for times in range(1, 10):
            tick = start * times
            long = {1: 0.14, 5: 0.1}.get(times, 0.06)
            line(tick, 0.98 - long, 0.98, INK, 2.2 if times == 1 else 1.2)
    line(last, 0.84, 0.98, INK, 2.2)
    rim = [point(p, 0.98) for p in spread(first, last, 120, log=True)]
    axes.plot(*zip(*rim, strict=True), color=INK, linewidth=1.5)
    for micron in (10, 20, 50, 100, 200, 500, 1_000, 2_000, 5_000, 10_000):
        weight = "bold" if math.log10(micron).is_integer() else "normal"
        text = wording.number(micron)
        x, y = point(micron, 1.04)
        side = "center" if abs(x) < 0.35 else "left" if x > 0 else "right"
        label(axes, x, y, text, INK, dy=6 if side == "center" else 2, ha=side, weight=weight)
    needle = 70.0
    line(needle, 0.12, 0.95, ACCENT, 3)
    axes.plot(0, 0, "o", color=ACCENT, markersize=7)
    shown_by = wording.quantity(units.to_si(needle, "micron"), "micron")
    label(axes, 0, 0, f"the needle: {shown_by}", ACCENT, dx=10, weight="bold")
    halfway = 100 * math.sqrt(10)
    line(halfway, 0.5, 0.68, LEAK, 2)
    label(axes, *point(halfway, 0.42), f"halfway: {halfway:.0f}", LEAK, ha="center")
    axes.set_xlim(-1.22, 1.42)
    axes.set_ylim(-0.06, 1.16)
    values = {
        "needle": units.to_si(needle, "micron"),
        "halfway": units.to_si(halfway, "micron"),
        "low": units.to_si(100.0, "micron"),
        "high": units.to_si(1_000.0, "micron"),
        "guess": units.to_si(550.0, "micron"),
    }
    return drawing, values


def altitude() -> tuple[Any, dict[str, float]]:
    drawing, axes = canvas(height=290)
    titles(axes, x="Altitude, ft over m", y="Barometer, inHg")
    heights = spread(0.0, units.to_si(10_000.0, "ft"), 40)
    pressures = [barometer_at(altitude=height) for height in heights]
    axes.plot(shown(heights, "ft"), shown(pressures, "inHg"), color=ACCENT)
    axes.fill_between(shown(heights, "ft"), shown(pressures, "inHg"), 18, color=WASH, linewidth=0)
    feet = (0, 2_500, 5_000, 7_500, 10_000)
    both_scales(axes.xaxis, feet, "ft", "m")
    marks(axes.yaxis, range(18, 31, 2))
    axes.set_xlim(0, 10_000)
    axes.set_ylim(18, 30.5)
    second_scale(axes, "y", (650, 700, 800, 900, 1_000), "inHg", "hPa")
    site = units.to_si(5_000.0, "ft")
    there = barometer_at(altitude=site)
    axes.plot(5_000, units.from_si(there, "inHg"), "o", color=INK, markersize=6)
    label(axes, 5_000, units.from_si(there, "inHg"), wording.quantity(there, "inHg", decimals=1),
          INK, dx=8, dy=9)  # fmt: skip
    label(axes, 400, 20.6, "what a vacuum dial can show\nends at the line", QUIET)
    values = {
        "sea": STANDARD_ATMOSPHERE, "site": site, "there": there, "target": TARGET,
        "top": barometer_at(altitude=heights[-1]), "height": heights[-1],
    }  # fmt: skip
    return drawing, values


FIGURES = (
    Figure(
        id="thermal-gauge-gas",
        title="A heat-loss gauge sees the gas, too",
        caption=(
            "What a gauge that measures the heat carried off by the gas reads below about "
            "{thin:mbar} ({thin:micron;2}) when it was set for nitrogen. Theory for clean "
            "elements; makers of laboratory gauges print {water_printed:1} for water vapor. In "
            "R-410A a true {target:micron} reads {shown_500:micron;2}."
        ),
        alt=(
            "Ratio of indicated to true pressure for eleven gases. Nitrogen and air stand at 1, "
            "carbon dioxide (R-744) close by, the other refrigerants and water vapor between 1.1 "
            "and {highest:1;2}, the highest {highest_name}. For water vapor theory gives "
            "{water:1;3}; gauge instructions print {water_printed:1}."
        ),
        draw=thermal_gauge_gas,
    ),
    Figure(
        id="log-scale",
        title="A scale that counts in tens",
        caption=(
            "Every step from one bold number to the next is a factor of ten, and all are equally "
            "long. Between {low:micron} and {high:micron} the marks are 200, 300, 400 and so on, "
            "closer and closer. Halfway along is {halfway:micron;3}, not {guess:micron}. The "
            "needle stands at {needle:micron}."
        ),
        alt=(
            "An arc-shaped scale from 10 to 10,000 micron in three equal parts of a factor of ten "
            "each. Within each part the marks crowd together toward the upper end. A needle "
            "points at {needle:micron}. A mark halfway between 100 and 1,000 is labeled 316."
        ),
        draw=log_scale,
    ),
    Figure(
        id="altitude",
        title="The barometer falls, the target stays",
        caption=(
            "The barometer of the standard atmosphere. At {site:ft} ({site:m;4}) it reads "
            "{there:inHg;3} ({there:hPa;3}), and no vacuum dial can go past that. A target of "
            "{target:micron} is {target:inHg;1}: less than the thickness of the line, at any "
            "altitude."
        ),
        alt=(
            "Barometer against altitude: from {sea:inHg;4} at sea level it falls in a slight curve "
            "to {there:inHg;3} at {site:ft} and {top:inHg;3} at {height:ft}. The area below the "
            "line is what a vacuum dial can show."
        ),
        draw=altitude,
    ),
)
