"""The hold: what each curve means, how long to wait, what the test cannot see."""

from __future__ import annotations

from typing import Any

from calculators import units
from calculators.physics.gases import GASES
from calculators.physics.leak_rate import STEPS_TO_BE_SEEN, service_loss, smallest_detectable_leak
from calculators.physics.pressure_rise import hold_time
from calculators.physics.refrigerants import vapor_pressure
from calculators.physics.rise_shapes import released
from figures.flow import ROOM
from figures.style import (
    ACCENT,
    GAS,
    HOLDS,
    INK,
    LEAK,
    QUIET,
    UNSURE,
    WASH,
    Figure,
    canvas,
    label,
    log_axis,
    marks,
    shown,
    spread,
)

HOLD = units.to_si(30.0, "min")
START, LIMIT = units.to_si(300.0, "micron"), units.to_si(500.0, "micron")
RISE = units.to_si(700.0, "micron")  # of the gas that comes out of metal, oil or a little water
SETTLES = units.to_si(6.0, "min")
SLOPE = units.to_si(22.0, "micron/min")
STEP = units.to_si(1.0, "micron")
LEAK_OF_CONCERN = units.to_si(1e-5, "Pa·m³/s")
VOLUMES = ("3 L", "10 L", "100 L", "3,000 L")


def decay_shapes() -> tuple[Any, dict[str, float]]:
    drawing, grid = canvas(height=330, rows=2, columns=2, sharex=True, sharey=True)
    times = spread(0.0, HOLD, 40)
    gas = [released(shape="exponential", x=t, tau=SETTLES) for t in times]
    small = units.to_si(60.0, "micron")
    panels = (
        ("holds", HOLDS, [START + small * share for share in gas]),
        ("leaks", LEAK, [START + SLOPE * t for t in times]),
        ("gas inside", GAS, [START + RISE * share for share in gas]),
        (
            "leaks, gas inside",
            UNSURE,
            [START + RISE * share + SLOPE * t for share, t in zip(gas, times, strict=True)],
        ),
    )
    for axes, (name, color, pressures) in zip(grid.flat, panels, strict=True):
        axes.grid(True)
        axes.set_title(name, loc="left", color=color, weight="bold", pad=5)
        axes.axhline(500, color=QUIET, linewidth=1.3, linestyle=(0, (4, 3)))
        axes.plot(shown(times, "min"), shown(pressures, "micron"), color=color, linewidth=3)
        marks(axes.xaxis, (0, 10, 20, 30))
        marks(axes.yaxis, (0, 500, 1_000, 1_500))
        axes.set_xlim(0, 30)
        axes.set_ylim(0, 1_750)
    label(grid[0, 0], 29, 500, "limit", QUIET, dy=9, ha="right")
    label(grid[0, 0], 0, 1_620, "micron", QUIET, dx=4)
    grid[1, 1].set_xlabel("minutes after isolating", loc="right", labelpad=2)
    values = {"start": START, "limit": LIMIT, "hold": HOLD, "plateau": START + RISE}
    return drawing, values


def hold_over_volume() -> tuple[Any, dict[str, float]]:
    drawing, axes = canvas(height=310)
    axes.grid(True)
    axes.set_title("Hold time", loc="left", pad=7)
    axes.set_xlabel("Volume of the system, L", loc="right", labelpad=2)
    log_axis(axes.xaxis, (1, 10, 100, 1_000))
    log_axis(axes.yaxis, ())
    marks(
        axes.yaxis,
        (60, 600, 3_600, 21_600, 86_400, 604_800),
        signs=("1 min", "10 min", "1 h", "6 h", "1 day", "1 week"),
    )
    axes.set_xlim(1, 5_000)
    axes.set_ylim(30, 2_000_000)
    volumes = spread(1e-3, 5.0, 20, log=True)

    def hold(volume: float, step: str) -> float:
        resolution = units.to_si(float(step), "micron")
        return hold_time(volume=volume, resolution=resolution, leak_rate=LEAK_OF_CONCERN)

    for step, width, place in (("1", 1.6, 40), ("5", 2.6, 16), ("25", 4.0, 7)):
        times = [hold(volume, step) for volume in volumes]
        axes.plot(shown(volumes, "L"), times, color=ACCENT, linewidth=width)
        at = hold(place * 1e-3, step)
        label(axes, place, at, f"{step} micron", ha="center", on_line=True)
    axes.plot(10, hold(0.01, "1"), "o", color=LEAK, markersize=6)
    axes.plot(3_000, hold(3.0, "1"), "o", color=LEAK, markersize=6)
    label(axes, 10, hold(0.01, "1"), "split system", LEAK, dx=5, dy=-9)
    label(axes, 3_000, hold(3.0, "1"), "chiller", LEAK, dx=3, dy=-14, ha="center")
    label(axes, 1.4, 900_000, "step of the gauge on the line", QUIET)
    values = {
        "leak": LEAK_OF_CONCERN,
        "steps": STEPS_TO_BE_SEEN,
        "small": hold(0.01, "1"),
        "coarse": hold(0.01, "25"),
        "coarse_step": units.to_si(25.0, "micron"),
        "split": 0.01,
        "chiller": 3.0,
        "large": hold(3.0, "1"),
    }
    return drawing, values


def smallest_leak() -> tuple[Any, dict[str, float]]:
    drawing, axes = canvas(height=320)
    axes.grid(True)
    axes.set_title("Smallest leak seen, R-410A per year", loc="left", pad=7)
    axes.set_xlabel("Length of the hold", loc="right", labelpad=2)
    log_axis(axes.xaxis, ())
    marks(
        axes.xaxis, (300, 900, 3_600, 14_400, 86_400), signs=("5 min", "15", "1 h", "4 h", "24 h")
    )
    log_axis(axes.yaxis, ())
    marks(
        axes.yaxis,
        (1, 10, 100, 1_000, 10_000, 100_000),
        signs=("1 g", "10 g", "100 g", "1 kg", "10 kg", "100 kg"),
    )
    axes.set_xlim(240, 86_400)
    axes.set_ylim(0.6, 200_000)
    times = spread(240.0, 86_400.0, 20, log=True)
    pressure = vapor_pressure(refrigerant="R-410A", temperature=ROOM)

    def loss(volume: float, duration: float) -> tuple[float, float]:
        leak = smallest_detectable_leak(resolution=STEP, volume=volume, duration=duration)
        return service_loss(
            leak_rate=leak,
            refrigerant=GASES["R-410A"],
            service_pressure=pressure,
            temperature=ROOM,
        )

    for name, color, dashes in (("10 L", ACCENT, "solid"), ("100 L", INK, (0, (4, 3)))):
        volume = units.to_si(float(name.split()[0]), "L")
        bounds = [loss(volume, t) for t in times]
        low, high = (shown(side, "g/yr") for side in zip(*bounds, strict=True))
        if dashes == "solid":
            axes.fill_between(times, low, high, color=WASH, linewidth=0)
        for side in (low, high):
            axes.plot(times, side, color=color, linewidth=2, linestyle=dashes)
        low, high = shown(loss(volume, 900.0), "g/yr")
        label(axes, 900, low, f"{name} molecular", color, ha="center", weight="bold", on_line=True)
        label(axes, 900, high, f"{name} laminar", color, ha="center", weight="bold", on_line=True)
    axes.axhline(3, color=LEAK, linewidth=1.5, linestyle=(0, (4, 3)))
    label(axes, 260, 3, "3 g: “hermetically sealed”", LEAK, dy=-10)
    low, high = loss(0.01, 1_800.0)
    values = {
        "step": STEP, "steps": STEPS_TO_BE_SEEN, "hold": 1_800.0, "volume": 0.01,
        "low": low, "high": high, "pressure": pressure, "room": ROOM,
    }  # fmt: skip
    return drawing, values


FIGURES = (
    Figure(
        id="decay-shapes",
        title="Four curves, four meanings",
        caption=(
            "Pressure after isolating at {start:micron}, limit {limit:micron}. It stays under the "
            "limit: it holds. A straight climb is a leak. A bend to a plateau, here "
            "{plateau:micron}, is water, or gas out of oil. A bend that ends in a climb is both."
        ),
        alt=(
            "Four small charts of pressure against time over {hold:min} minutes, each with the "
            "limit of {limit:micron} dashed. Holds: flat, below the limit. Leaks: a straight "
            "climb through it. Gas inside: a steep rise that bends to a plateau. Leaks, gas "
            "inside: a steep rise that bends into a straight climb."
        ),
        draw=decay_shapes,
    ),
    Figure(
        id="hold-time",
        title="A bigger system needs a longer hold",
        caption=(
            "Time until a leak of {leak:Pa·m³/s} ({leak:micron·L/s;2}) has moved the gauge by "
            "{steps:1} of its steps. On {split:L} a gauge that shows single microns needs "
            "{small:duration}, one in steps of {coarse_step:micron} {coarse:duration}; a chiller "
            "of {chiller:L} needs {large:duration} with the fine gauge."
        ),
        alt=(
            "Hold time against volume, log axes: three parallel straight lines for gauges with "
            "steps of 1, 5 and 25 micron. Ten times the volume or ten times the step takes ten "
            "times as long: {small:duration} for 10 L and {large:duration} for 3,000 L at 1 micron."
        ),
        draw=hold_over_volume,
    ),
    Figure(
        id="smallest-leak",
        title="What a hold cannot see",
        caption=(
            "The smallest leak that moves a gauge in steps of {step:micron} by {steps:1} steps, "
            "as R-410A lost in service at {room:°F} ({pressure:psia;3}, {pressure:bar;3}). A hold "
            "of {hold:min} on {volume:L} stops at {low:g/yr;2} to {high:kg/yr;2}. The two "
            "lie far apart because a narrow leak passes gas molecule by molecule, a wider one as "
            "a stream."
        ),
        alt=(
            "Smallest leak seen, in grams of R-410A per year, against the length of the hold, log "
            "axes. Two pairs of falling lines, for systems of 10 L and 100 L: each pair lies a "
            "factor of more than 30 apart, that for 100 L ten times higher. All stay far above a "
            "dashed line at 3 g per year, but for the lower line of 10 L after several hours."
        ),
        draw=smallest_leak,
    ),
)
