"""Water: where it is ice, liquid or vapor, what its vapor pressure is, how it freezes."""

from __future__ import annotations

from typing import Any

from calculators import units, wording
from calculators.physics import moisture, water
from calculators.physics.constants import WATER_TRIPLE_PRESSURE, WATER_TRIPLE_TEMPERATURE
from figures.style import (
    ACCENT,
    GAS,
    INK,
    LEAK,
    QUIET,
    WASH,
    Figure,
    both_scales,
    canvas,
    label,
    log_axis,
    marks,
    shown,
    spread,
    titles,
)

TARGET = units.to_si(500.0, "micron")
COLDEST, WARMEST = units.to_si(-60.0, "°F"), units.to_si(110.0, "°F")


def phase_curve() -> tuple[Any, dict[str, float]]:
    drawing, axes = canvas(height=320)
    titles(axes, x="Temperature, °F over °C", y="Absolute pressure, micron")
    log_axis(axes.yaxis, (10, 100, 1_000, 10_000, 100_000))
    both_scales(axes.xaxis, (-40, 0, 32, 68, 100), "°F", "°C")
    axes.set_ylim(10, 100_000)
    axes.set_xlim(-60, 110)
    ice = spread(COLDEST, WATER_TRIPLE_TEMPERATURE)
    liquid = spread(WATER_TRIPLE_TEMPERATURE + 1e-6, WARMEST)
    over_ice = shown([water.saturation_pressure(temperature=t) for t in ice], "micron")
    over_liquid = shown([water.saturation_pressure(temperature=t) for t in liquid], "micron")
    axes.fill_between((32, 110), 50, 1_500, color=WASH, linewidth=0)
    axes.plot(shown(ice, "°F"), over_ice, color=GAS)
    axes.plot(shown(liquid, "°F"), over_liquid, color=ACCENT)
    triple = (
        units.from_si(WATER_TRIPLE_TEMPERATURE, "°F"),
        units.from_si(WATER_TRIPLE_PRESSURE, "micron"),
    )
    axes.plot((triple[0], triple[0]), (triple[1], 100_000), color=QUIET, linewidth=1.5)
    axes.plot(*triple, "o", color=INK, markersize=6)
    leaves = water.boiling_temperature(pressure=TARGET)
    at = units.from_si(leaves, "°F")
    axes.plot((-60, at, at), (500, 500, 10), color=LEAK, linewidth=1.5, linestyle=(0, (4, 3)))
    axes.plot(at, 500, "o", color=LEAK, markersize=6)
    label(axes, -45, 20_000, "ice", GAS, weight="bold")
    label(axes, 48, 45_000, "liquid", ACCENT, weight="bold")
    label(axes, 71, 4_000, "vapor", INK, weight="bold", ha="center")
    label(axes, 71, 300, "a warm system\nnear the end\nof the pull", QUIET, ha="center")
    label(axes, *triple, "triple point", INK, dx=-8, dy=5, ha="right")
    label(axes, at, 500, "500 micron", LEAK, dx=6, dy=-9)
    values = {"triple": WATER_TRIPLE_PRESSURE, "target": TARGET, "leaves": leaves}
    return drawing, values


def freezing() -> tuple[Any, dict[str, float]]:
    start = units.to_si(68.0, "°F")
    cold = moisture.share_evaporated_to_freezing_point(temperature=start)
    frozen = moisture.share_evaporated_to_ice(temperature=start)
    drawing, axes = canvas(height=280)
    titles(axes, x="Share of the water gone as vapor, %", y="Temperature of the water left, °F")
    temperatures = spread(start, WATER_TRIPLE_TEMPERATURE, 40)
    # From each temperature on the way down, what is still to go before 32 °F.
    gone = [
        1 - (1 - cold) / (1 - moisture.share_evaporated_to_freezing_point(temperature=t))
        for t in temperatures
    ]
    axes.plot(shown(gone, "%"), shown(temperatures, "°F"), color=ACCENT)
    axes.plot((100 * cold, 100 * frozen), (32.02, 32.02), color=GAS)
    temperatures = spread(WATER_TRIPLE_TEMPERATURE, units.to_si(-4.0, "°F"), 20)
    axes.plot([100 * frozen] * 20, shown(temperatures, "°F"), color=GAS, linestyle=(0, (1, 2)))
    axes.set_xlim(0, 20)
    axes.set_ylim(-5, 72)
    marks(axes.xaxis, (0, 5, 10, 15, 20))
    marks(axes.yaxis, (0, 20, 32, 50, 68))
    label(axes, 1.6, 55, "liquid, boiling itself cold", ACCENT, dx=8)
    label(axes, 9, 32, "ice forms while the rest boils", GAS, dy=9, ha="center")
    label(axes, 100 * frozen, 14, "all ice", GAS, dx=-7, ha="right", weight="bold")
    axes.plot(100 * cold, 32.02, "o", color=INK, markersize=6)
    axes.plot(100 * frozen, 32.02, "o", color=INK, markersize=6)
    label(axes, 100 * cold, 32, wording.quantity(cold, "%", figures=2), INK, dy=-12, ha="center")
    label(axes, 100 * frozen, 32, wording.quantity(frozen, "%", figures=3), INK, dx=7, dy=-11)
    values = {
        "start": start,
        "cold": cold,
        "frozen": frozen,
        "triple": WATER_TRIPLE_PRESSURE,
    }
    return drawing, values


FIGURES = (
    Figure(
        id="phase-curve",
        title="Ice, liquid or vapor",
        caption=(
            "Right of and below the curves water is vapor. At {target:micron} it leaves wherever "
            "the system is warmer than {leaves:°F;.1} ({leaves:°C;.1}). Below the triple point, "
            "{triple:micron;4} ({triple:Pa;4}), there is no liquid: ice turns straight into vapor."
        ),
        alt=(
            "Phase diagram of water from −60 to 110 °F and 10 to 100,000 micron. The curve over "
            "ice and the steeper-set curve over liquid meet with a corner at the triple point, "
            "32.02 °F and {triple:micron;4}. A dashed line at {target:micron} meets the ice curve "
            "at {leaves:°F;.1}. A shaded box from 32 to 110 °F and 50 to 1,500 micron, where a "
            "warm system stands near the end of a pull, lies wholly in the vapor region."
        ),
        draw=phase_curve,
    ),
    Figure(
        id="freezing",
        title="How a fast pull freezes water",
        caption=(
            "Water that gets no heat pays for its own vapor. From {start:°F} ({start:°C}), "
            "{cold:%;2} of it boils off and the rest is at the freezing point; ice then forms at "
            "{triple:micron;4} until, with {frozen:%;3} gone, all that is left is ice."
        ),
        alt=(
            "Temperature of insulated water against the share that has boiled off. From "
            "{start:°F} it falls steeply to 32 °F with {cold:%;2} gone, stays there while ice "
            "forms until {frozen:%;3} is gone, and then falls further as ice."
        ),
        draw=freezing,
    ),
)
