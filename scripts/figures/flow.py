"""Flow through a hose: which regime it is in, and what it passes."""

from __future__ import annotations

from typing import Any

from calculators import units
from calculators.physics import rarefied_gas, tube_conductance
from calculators.physics.gases import GASES, thin_gas
from figures.style import (
    ACCENT,
    GAS,
    INK,
    LEAK,
    QUIET,
    WASH,
    Figure,
    canvas,
    label,
    log_axis,
    second_scale,
    shown,
    spread,
    titles,
)

ROOM = units.to_si(68.0, "°F")
AIR = thin_gas(gas=GASES["air"], temperature=ROOM)
HOSE = units.to_si(6.0, "ft")
# A wider bore is drawn as a wider line, so that no line needs a color to be told apart.
BORES = {"1/4 in": 1.3, "3/8 in": 2.0, "1/2 in": 2.9, "3/4 in": 4.2}


def bore(name: str) -> float:
    """Give a bore of :data:`BORES` [m]."""
    number, unit, _ = units.read(name, bare="in")
    return units.to_si(number, unit)


def flow_regimes() -> tuple[Any, dict[str, float | str]]:
    drawing, axes = canvas(height=310)
    titles(axes, x="True bore, inch", y="Pressure, micron")
    low, high = 1.0, 100_000.0
    widths = [units.to_si(w, "in") for w in (0.1, 1.6)]
    inches = shown(widths, "in")

    def border(knudsen: float) -> list[float]:
        # The free path goes as 1/p, so the pressure at a Knudsen number is found in one step.
        path = rarefied_gas.mean_free_path(pressure=1.0, gas=AIR)
        return shown([path / (knudsen * width) for width in widths], "micron")

    viscous = border(rarefied_gas.VISCOUS_BELOW)
    molecular = border(rarefied_gas.MOLECULAR_ABOVE)
    axes.fill_between(inches, molecular, viscous, color=WASH, linewidth=0)
    axes.plot(inches, viscous, color=ACCENT, linewidth=2)
    axes.plot(inches, molecular, color=GAS, linewidth=2)
    axes.plot(inches, (500, 500), color=LEAK, linewidth=1.5, linestyle=(0, (4, 3)))
    log_axis(axes.yaxis, (1, 10, 100, 1_000, 10_000, 100_000))
    log_axis(axes.xaxis, (0.125, 0.25, 0.5, 0.75, 1))
    axes.set_xticks(
        (0.125, 0.25, 0.375, 0.5, 0.75, 1.125), ("1/8", "1/4", "3/8", "1/2", "3/4", "1 1/8")
    )
    axes.set_ylim(low, high)
    axes.set_xlim(0.1, 1.6)
    label(axes, 0.4, 15_000, "viscous: molecules push\neach other along", ACCENT, ha="center")
    label(axes, 0.4, 95, "transition: both", INK, ha="center", weight="bold")
    label(axes, 0.4, 2.2, "molecular: each flies alone", GAS, ha="center")
    label(axes, 0.104, 500, "500", LEAK, dy=9)
    quarter = bore("1/4 in")
    path = rarefied_gas.mean_free_path(pressure=1.0, gas=AIR)
    values = {
        "viscous": path / (rarefied_gas.VISCOUS_BELOW * quarter),
        "molecular": path / (rarefied_gas.MOLECULAR_ABOVE * quarter),
        "path": rarefied_gas.mean_free_path(pressure=units.to_si(500.0, "micron"), gas=AIR),
        "target": units.to_si(500.0, "micron"),
        "room": ROOM,
        "quarter": "1/4 in",
    }
    return drawing, values


def conductance_pressure() -> tuple[Any, dict[str, float]]:
    drawing, axes = canvas(height=310)
    titles(axes, x="Mean pressure in the hose, micron", y="Conductance, CFM")
    pressures = spread(units.to_si(1.0, "micron"), units.to_si(20_000.0, "micron"), log=True)
    log_axis(axes.yaxis, (0.001, 0.01, 0.1, 1, 10, 100))
    log_axis(axes.xaxis, (1, 10, 100, 1_000, 10_000))
    axes.set_ylim(0.001, 300)
    axes.set_xlim(1, 20_000)
    at = {}
    for name, width in BORES.items():
        passed = [
            tube_conductance.conductance(
                inside_diameter=bore(name), length=HOSE, mean_pressure=p, gas=AIR
            )
            for p in pressures
        ]
        axes.plot(shown(pressures, "micron"), shown(passed, "CFM"), color=ACCENT, linewidth=width)
        label(axes, 1.3, units.from_si(passed[0], "CFM"), name, INK, on_line=True)
        at[name] = [
            tube_conductance.conductance(
                inside_diameter=bore(name),
                length=HOSE,
                mean_pressure=units.to_si(micron, "micron"),
                gas=AIR,
            )
            for micron in (1.0, 500.0, 10_000.0)
        ]
    axes.axvline(500, color=LEAK, linewidth=1.5, linestyle=(0, (4, 3)))
    label(axes, 500, 0.0015, "500", LEAK, dx=4)
    label(axes, 9, 60, "flat: molecules\nfly alone", QUIET, ha="center")
    label(axes, 800, 0.012, "rising with\npressure", QUIET)
    second_scale(axes, "y", (0.001, 0.01, 0.1, 1, 10, 100), "CFM", "L/s")
    small, large = at["1/4 in"], at["3/4 in"]
    values = {
        "hose": HOSE,
        "small": small[1],
        "large": large[1],
        "ratio": large[1] / small[1],
        "low_ratio": large[0] / small[0],
        "high_ratio": large[2] / small[2],
        "target": units.to_si(500.0, "micron"),
    }
    return drawing, values


FIGURES = (
    Figure(
        id="flow-regimes",
        title="How thin the air is for the hose it is in",
        caption=(
            "Air at {room:°F} ({room:°C}). In a {quarter} bore it flows like a fluid above "
            "{viscous:micron;2} and molecule by molecule below {molecular:micron;2}. At "
            "{target:micron} a molecule flies {path:mm;2} between collisions. Nearly all of the "
            "last part of a pull lies between the two, where no simple rule for hoses holds."
        ),
        alt=(
            "Pressure against true bore, both on log axes. Two parallel falling lines divide it "
            "into viscous flow above, transition flow between and molecular flow below. For a "
            "{quarter} bore the borders are at {viscous:micron;2} and {molecular:micron;2}; a "
            "dashed line at {target:micron} lies in the transition region for every bore up to "
            "about 3/8 inch."
        ),
        draw=flow_regimes,
    ),
    Figure(
        id="conductance-pressure",
        title="What a hose passes",
        caption=(
            "Hoses {hose:ft} ({hose:m;3}) long, by true bore. At {target:micron} the 3/4 in hose "
            "passes {large:CFM;2} ({large:L/s;2}) and the 1/4 in hose {small:CFM;2} "
            "({small:L/s;2}): {ratio:1;2} times as much. Deep in the molecular range the ratio is "
            "{low_ratio:1;2}, in thick gas {high_ratio:1;2}."
        ),
        alt=(
            "Conductance of hoses {hose:ft} long against mean pressure, log axes. Each line is "
            "flat below about 10 micron and rises in proportion to pressure above about 1,000. At "
            "{target:micron}: 3/4 in {large:CFM;2}, 1/4 in {small:CFM;2}, a ratio of {ratio:1;2}."
        ),
        draw=conductance_pressure,
    ),
)
