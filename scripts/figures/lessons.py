"""What the lessons draw: a ladder of pressures, a dial beside a gauge, a leak as a range."""

from __future__ import annotations

import math
from typing import Any

from calculators import units, wording
from calculators.physics.constants import (
    STANDARD_ATMOSPHERE,
    WATER_TRIPLE_PRESSURE,
)
from calculators.physics.gases import GASES
from calculators.physics.leak_rate import leak_rate, service_loss
from calculators.physics.refrigerants import vapor_pressure
from calculators.physics.water import saturation_pressure
from calculators.practice_limits import PRACTICE_LIMITS, RECOVERY_LEVELS
from figures.flow import ROOM
from figures.style import (
    ACCENT,
    GAS,
    HOLDS,
    INK,
    LEAK,
    QUIET,
    WASH,
    Figure,
    canvas,
    label,
    log_axis,
    shown,
    spread,
    titles,
)

TARGET = PRACTICE_LIMITS["target"].value
BOILS = saturation_pressure(temperature=ROOM)
# What a machine of today leaves in a large high-pressure appliance.
RECOVERED = next(level for level in RECOVERY_LEVELS if level.since == 10).pressure()
CHECKED = units.to_si(10.0, "L")


def pressure_ladder() -> tuple[Any, dict[str, float]]:
    drawing, axes = canvas(height=340)
    axes.set_title("Absolute pressure, micron", loc="left", pad=7)
    log_axis(axes.yaxis, (100, 1_000, 10_000, 100_000, 1_000_000))
    axes.grid(True, axis="y")
    axes.set_xlim(0, 10)
    axes.set_ylim(90, 1_500_000)
    axes.xaxis.set_visible(False)
    axes.spines["bottom"].set_visible(False)
    micron = {
        name: units.from_si(value, "micron")
        for name, value in (
            ("air", STANDARD_ATMOSPHERE),
            ("recovered", RECOVERED),
            ("boils", BOILS),
            ("triple", WATER_TRIPLE_PRESSURE),
            ("target", TARGET),
        )
    }
    axes.axhspan(micron["triple"], micron["boils"], color=WASH, linewidth=0)
    for name, color, text, lift in (
        ("air", INK, "open air", 8),
        ("recovered", QUIET, "recovered: the law is kept", -8),
        ("boils", ACCENT, "water at room temperature boils", 8),
        ("triple", GAS, "below: only ice and vapor", -9),
        ("target", HOLDS, "a usual target", 8),
    ):
        axes.axhline(micron[name], color=color, linewidth=2)
        label(axes, 0.3, micron[name], text, color, dy=lift, weight="bold")
    middle = (micron["triple"] * micron["boils"]) ** 0.5
    label(axes, 9.7, middle, "most of the water leaves", QUIET, ha="right")
    values = {
        "air": STANDARD_ATMOSPHERE, "recovered": RECOVERED, "boils": BOILS, "room": ROOM,
        "triple": WATER_TRIPLE_PRESSURE, "target": TARGET, "times": RECOVERED / TARGET,
    }  # fmt: skip
    return drawing, values


def dial_and_gauge() -> tuple[Any, dict[str, float]]:
    drawing, axes = canvas(height=270)
    axes.axis("off")
    axes.set_xlim(-0.06, 1.06)
    axes.set_ylim(-0.32, 1.32)
    air = STANDARD_ATMOSPHERE
    dial_end = units.from_si(air, "inHg")
    deepest = units.to_si(100.0, "micron")

    def on_dial(pressure: float) -> float:
        return (air - pressure) / air

    def on_gauge(pressure: float) -> float:
        low, high = units.from_si(deepest, "micron"), 1_000_000.0
        span = math.log10(high / low)
        return math.log10(high / units.from_si(pressure, "micron")) / span

    for y in (0.0, 1.0):
        axes.plot((0, 1), (y, y), color=INK, linewidth=2)
    for inches in range(0, 31, 5):
        x = min(inches / dial_end, 1.0)
        axes.plot((x, x), (1.0, 1.05), color=INK, linewidth=1.5)
        label(axes, x, 1.05, f"{inches}", INK, dy=9, ha="center")
    for micron in (1_000_000, 100_000, 10_000, 1_000, 100):
        x = on_gauge(units.to_si(micron, "micron"))
        axes.plot((x, x), (0.0, -0.05), color=INK, linewidth=1.5)
        label(axes, x, -0.05, wording.number(micron), INK, dy=-9, ha="center")
    label(axes, 0, 1.27, "a dial, inches of mercury of vacuum", QUIET)
    label(axes, 0, -0.28, "a vacuum gauge, micron", QUIET)
    steps = (
        (units.to_si(200_000.0, "micron"), QUIET),
        (units.to_si(20_000.0, "micron"), ACCENT),
        (WATER_TRIPLE_PRESSURE, GAS),
        (units.to_si(1_500.0, "micron"), LEAK),
        (TARGET, HOLDS),
    )
    for pressure, color in steps:
        axes.plot((on_dial(pressure), on_gauge(pressure)), (1, 0), color=color, linewidth=2)
        axes.plot(on_gauge(pressure), 0, "o", color=color, markersize=6)
        axes.plot(on_dial(pressure), 1, "o", color=color, markersize=6)
    values = {
        "first": steps[1][0],
        "target": TARGET,
        "apart": steps[1][0] - TARGET,
        "dial": air,
    }
    return drawing, values


def leak_range() -> tuple[Any, dict[str, float]]:
    drawing, axes = canvas(height=310)
    titles(axes, x="Rise of the gauge, micron a minute, on 10 L", y="R-410A lost in a year, g")
    log_axis(axes.xaxis, (0.1, 1, 10))
    log_axis(axes.yaxis, (1, 10, 100, 1_000, 10_000, 100_000))
    axes.set_xlim(0.1, 10)
    axes.set_ylim(5, 100_000)
    rates = spread(units.to_si(0.1, "micron/min"), units.to_si(10.0, "micron/min"), 20, log=True)

    def loss(rate: float) -> tuple[float, float]:
        return service_loss(
            leak_rate=leak_rate(volume=CHECKED, rate_of_pressure_rise=rate),
            refrigerant=GASES["R-410A"],
            service_pressure=vapor_pressure(refrigerant="R-410A", temperature=ROOM),
            temperature=ROOM,
        )

    bounds = [loss(rate) for rate in rates]
    low, high = (shown(side, "g/yr") for side in zip(*bounds, strict=True))
    x = shown(rates, "micron/min")
    axes.fill_between(x, low, high, color=WASH, linewidth=0)
    axes.plot(x, low, color=ACCENT)
    axes.plot(x, high, color=LEAK)
    one = units.to_si(1.0, "micron/min")
    least, most = loss(one)
    label(axes, 1, units.from_si(most, "g/yr"), "one wider hole", LEAK, ha="center", weight="bold",
          on_line=True)  # fmt: skip
    label(axes, 1, units.from_si(least, "g/yr"), "many fine pores", ACCENT, ha="center",
          weight="bold", on_line=True)  # fmt: skip
    middle = units.from_si((least * most) ** 0.5, "g/yr")
    label(axes, 1, middle, "the test can't tell", QUIET, ha="center")
    return drawing, {"rise": one, "volume": CHECKED, "least": least, "most": most, "room": ROOM}


FIGURES = (
    Figure(
        id="pressure-ladder",
        title="From open air to dry",
        caption=(
            "Each step of the scale is ten times the one below. Recovery as the rules ask stops at "
            "{recovered:micron}, {times:1;2} times the target of {target:micron}. In between, "
            "water at {room:°F} starts to boil at {boils:micron;3}; below {triple:micron;4} there "
            "is only ice and vapor."
        ),
        alt=(
            "A ladder of absolute pressures on a log scale. From the top: open air at "
            "{air:micron}; recovered, close below it, at {recovered:micron}; water at room "
            "temperature boils at {boils:micron;3}; the triple point at {triple:micron;4}; a usual "
            "target at {target:micron}. Most of the water leaves between the boiling and the "
            "triple point."
        ),
        draw=pressure_ladder,
    ),
    Figure(
        id="dial-and-gauge",
        title="The same five pressures on a dial and on a gauge",
        caption=(
            "Each line joins the same pressure on both scales. From {first:micron} down to the "
            "target of {target:micron} the gauge moves over a large part of its scale. The dial "
            "moves by {apart:inHg;2} out of {dial:inHg;4}."
        ),
        alt=(
            "Above, the even scale of a vacuum dial from 0 to 30 inches of mercury. Below, the log "
            "scale of a vacuum gauge from 1,000,000 to 100 micron. Lines join five pressures. On "
            "the gauge they stand well apart; on the dial the last four all crowd together at the "
            "end of the scale."
        ),
        draw=dial_and_gauge,
    ),
    Figure(
        id="leak-range",
        title="One rise, many losses",
        caption=(
            "What a leak could lose in service at {room:°F}, by the rise it makes on {volume:L}. "
            "At {rise:micron/min} that is {least:g/yr;2} through many fine pores and "
            "{most:kg/yr;2} through one wider hole. The test can't tell which."
        ),
        alt=(
            "Grams of R-410A lost in a year against the rise of the gauge on {volume:L}, log axes. "
            "Two parallel rising lines with a band between: the lower for many fine pores, the "
            "upper, more than thirty times higher, for one wider hole."
        ),
        draw=leak_range,
    ),
)
