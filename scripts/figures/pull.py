"""The pull: speed at the system, time, pressure along the rig, water on its way out."""

from __future__ import annotations

from typing import Any

from calculators import units
from calculators.physics import moisture, tube_flow
from calculators.physics.constants import STANDARD_ATMOSPHERE, WATER_TRIPLE_PRESSURE
from calculators.physics.gases import GASES, ThinGas, thin_gas
from calculators.physics.pull_down import pull_down
from calculators.physics.rig import Rig, Tube
from calculators.physics.rig_flow import flow_at
from figures.flow import AIR, BORES, HOSE, ROOM, bore
from figures.style import (
    ACCENT,
    GAS,
    INK,
    LEAK,
    QUIET,
    Figure,
    canvas,
    label,
    log_axis,
    marks,
    second_scale,
    shown,
    spread,
    titles,
)

VAPOR = thin_gas(gas=GASES["water vapor"], temperature=ROOM)
PUMP = units.to_si(5.0, "CFM")
ULTIMATE = units.to_si(20.0, "micron")
TARGET = units.to_si(500.0, "micron")
SYSTEM = units.to_si(10.0, "L")
LABELED_AT = {"1/4 in": 220.0, "3/8 in": 220.0, "1/2 in": 1_400.0, "3/4 in": 180.0}  # micron


def hose_rig(name: str, speed: float = PUMP) -> Rig:
    """Pump and one hose, by true bore; no hose without a name."""
    hose = (Tube(inside_diameter=bore(name), length=HOSE, name=name),) if name else ()
    return Rig(pumping_speed=speed, ultimate_pressure=ULTIMATE, shared=hose)


def speed_at(name: str, pressure: float, gas: ThinGas = AIR) -> float:
    return flow_at(rig=hose_rig(name), system_pressure=pressure, gas=gas).effective_speed


def effective_speed() -> tuple[Any, dict[str, float]]:
    drawing, axes = canvas(height=300)
    titles(axes, x="Pressure at the system, micron", y="Speed at the system, CFM")
    log_axis(axes.xaxis, (100, 1_000, 10_000, 100_000))
    log_axis(axes.yaxis, (0.01, 0.1, 1, 5))
    axes.set_xlim(50, 760_000)
    axes.set_ylim(0.008, 9)
    pressures = spread(units.to_si(50.0, "micron"), STANDARD_ATMOSPHERE, 50, log=True)
    at = {}
    for name, width in BORES.items():
        speeds = [speed_at(name, pressure) for pressure in pressures]
        axes.plot(shown(pressures, "micron"), shown(speeds, "CFM"), color=ACCENT, linewidth=width)
        at[name] = speed_at(name, TARGET)
        place = units.to_si(110.0, "micron")
        label(
            axes, 110, units.from_si(speed_at(name, place), "CFM"), name, ha="center", on_line=True
        )
    axes.axhline(5, color=QUIET, linewidth=1.5, linestyle=(0, (1, 2)))
    label(axes, 60, 5, "the pump alone: 5 CFM", QUIET, dy=9)
    axes.axvline(500, color=LEAK, linewidth=1.5, linestyle=(0, (4, 3)))
    label(axes, 500, 0.012, "500", LEAK, dx=4)
    second_scale(axes, "y", (0.01, 0.1, 1), "CFM", "L/s")
    values = {
        "hose": HOSE, "pump": PUMP, "ultimate": ULTIMATE, "target": TARGET,
        "small": at["1/4 in"], "large": at["3/4 in"], "share": at["1/4 in"] / PUMP,
    }  # fmt: skip
    return drawing, values


def pull_down_hoses() -> tuple[Any, dict[str, float]]:
    drawing, axes = canvas(height=300)
    titles(axes, x="Time", y="Pressure at the system, micron")
    log_axis(axes.yaxis, (100, 1_000, 10_000, 100_000, 760_000))
    log_axis(axes.xaxis, ())
    marks(axes.xaxis, (10, 30, 60, 120, 300, 600), signs=("10 s", "30 s", "1", "2", "5", "10 min"))
    axes.set_ylim(90, 900_000)
    axes.set_xlim(8, 900)
    times = {}
    for name, width in BORES.items():
        pull = pull_down(
            rig=hose_rig(name),
            gas=AIR,
            volume=SYSTEM,
            start_pressure=STANDARD_ATMOSPHERE,
            target_pressure=units.to_si(95.0, "micron"),
        )
        moments = pull.moments[1:]
        pressures = [moment.system_pressure for moment in moments]
        axes.plot(
            [moment.time for moment in moments],
            shown(pressures, "micron"),
            color=ACCENT,
            linewidth=width,
        )
        low = LABELED_AT[name]
        label(axes, pull.time_to(units.to_si(low, "micron")), low, name, ha="center", on_line=True)
        times[name] = pull.time_to(TARGET)
    axes.axhline(500, color=LEAK, linewidth=1.5, linestyle=(0, (4, 3)))
    label(axes, 9, 500, "500 micron", LEAK, dy=9)
    values = {
        "hose": HOSE, "pump": PUMP, "ultimate": ULTIMATE, "target": TARGET, "volume": SYSTEM,
        "small": times["1/4 in"], "middle": times["3/8 in"], "large": times["3/4 in"],
        "ratio": times["1/4 in"] / times["3/4 in"],
    }  # fmt: skip
    return drawing, values


def pressure_along_rig() -> tuple[Any, dict[str, float]]:
    drawing, axes = canvas(height=280)
    axes.set_title("Pressure, micron", loc="left", pad=7)
    axes.grid(True, axis="y")
    log_axis(axes.yaxis, (10, 20, 50, 100, 200, 500))
    axes.set_ylim(17, 800)
    axes.set_xlim(-0.6, 3.6)
    ends = {}
    for name, color, width in (("3/4 in", ACCENT, 4.2), ("1/4 in", INK, 1.6)):
        flow = flow_at(rig=hose_rig(name), system_pressure=TARGET, gas=AIR)
        lengths = [HOSE * share for share in spread(0.002, 1.0, 40, log=True)]
        along = [
            tube_flow.inlet_pressure(
                inside_diameter=bore(name),
                length=length,
                outlet_pressure=flow.pump_pressure,
                throughput=flow.throughput,
                gas=AIR,
            )
            for length in lengths
        ]
        places = [3.6, 3, *(3 - 3 * length / HOSE for length in lengths), -0.6]
        pressures = shown([flow.pump_pressure] * 2 + along + [TARGET], "micron")
        axes.plot(places, pressures, color=color, linewidth=width)
        axes.plot((0, 3), (500, pressures[0]), "o", color=color, markersize=6)
        ends[name] = flow.pump_pressure
    for foot in (0, 3):
        axes.axvline(foot, color=QUIET, linewidth=1, linestyle=(0, (1, 2)))
    axes.set_xticks((0, 3), ("system", "pump"))
    axes.set_xlabel("6 ft of hose between them", loc="center", labelpad=-12)
    axes.spines["bottom"].set_visible(False)
    label(axes, 1.5, 430, "3/4 in bore", ACCENT, dy=16, ha="center")
    label(axes, 2.35, 170, "1/4 in bore", INK, ha="right")
    for name, color in (("3/4 in", ACCENT), ("1/4 in", INK)):
        micron = units.from_si(ends[name], "micron")
        label(axes, 3, micron, f"{micron:.0f}", color, dx=6, dy=10, weight="bold")
    values = {
        "hose": HOSE, "pump": PUMP, "ultimate": ULTIMATE, "target": TARGET,
        "small": ends["1/4 in"], "large": ends["3/4 in"], "ratio": TARGET / ends["1/4 in"],
    }  # fmt: skip
    return drawing, values


def water_removal() -> tuple[Any, dict[str, float]]:
    drawing, axes = canvas(height=300)
    titles(axes, x="Vapor pressure at the wet spot, micron", y="Water carried off, g/h")
    log_axis(axes.xaxis, (100, 1_000, 10_000))
    log_axis(axes.yaxis, (0.01, 0.1, 1, 10, 100))
    axes.set_xlim(60, 30_000)
    axes.set_ylim(0.005, 600)
    pressures = spread(units.to_si(60.0, "micron"), units.to_si(17_500.0, "micron"), 40, log=True)

    def rate(name: str, pressure: float) -> float:
        return moisture.removal_rate(
            pumping_speed=speed_at(name, pressure, VAPOR), vapor_pressure=pressure, temperature=ROOM
        )

    for name, width in {"1/4 in": 1.3, "3/8 in": 2.0, "3/4 in": 4.2}.items():
        rates = [rate(name, pressure) for pressure in pressures]
        axes.plot(shown(pressures, "micron"), shown(rates, "g/h"), color=ACCENT, linewidth=width)
        at = units.to_si(240.0, "micron")
        label(axes, 240, units.from_si(rate(name, at), "g/h"), name, ha="center", on_line=True)
    triple = units.from_si(WATER_TRIPLE_PRESSURE, "micron")
    axes.axvline(triple, color=GAS, linewidth=1.5, linestyle=(0, (4, 3)))
    label(axes, triple, 0.011, "ice", GAS, dx=-6, ha="right", weight="bold")
    label(axes, triple, 0.011, "liquid", GAS, dx=6, weight="bold")
    values = {
        "hose": HOSE, "pump": PUMP, "target": TARGET, "triple": WATER_TRIPLE_PRESSURE,
        "slow": rate("1/4 in", TARGET), "fast": rate("1/4 in", WATER_TRIPLE_PRESSURE),
        "gram": 1e-3 / rate("1/4 in", TARGET),
        "gram_fast": 1e-3 / rate("1/4 in", WATER_TRIPLE_PRESSURE),
        "ratio": rate("1/4 in", WATER_TRIPLE_PRESSURE) / rate("1/4 in", TARGET),
    }  # fmt: skip
    return drawing, values


FIGURES = (
    Figure(
        id="effective-speed",
        title="What is left of the pump at the system",
        caption=(
            "A {pump:CFM} ({pump:L/s;3}) pump with a blank-off of {ultimate:micron}, through one "
            "hose of {hose:ft} ({hose:m;3}), dry air. At {target:micron} the 3/4 in hose leaves "
            "{large:CFM;2}, the 1/4 in hose {small:CFM;2}: {share:%;1} of the pump."
        ),
        alt=(
            "Effective pumping speed at the system against pressure, log axes, for four hoses on a "
            "{pump:CFM} pump. Near atmosphere all come close to the pump. Toward low pressure "
            "every hose falls away, the narrow ones first: at {target:micron} 3/4 in leaves "
            "{large:CFM;2} and 1/4 in {small:CFM;2}."
        ),
        draw=effective_speed,
    ),
    Figure(
        id="pull-down-hoses",
        title="The same pump, four hoses",
        caption=(
            "{volume:L} of dry air, {pump:CFM} pump, one hose of {hose:ft} ({hose:m;3}). To "
            "{target:micron}: {small:duration} through a 1/4 in bore, {middle:duration} through "
            "3/8 in, {large:duration} through 3/4 in. The time grows with the volume."
        ),
        alt=(
            "Pressure against time while {volume:L} of dry air are pulled down through four "
            "hoses. The wider the bore, the steeper the fall. {target:micron} is reached after "
            "{small:duration} with 1/4 in and after {large:duration} with 3/4 in, "
            "{ratio:1;2} times sooner. Every curve flattens as it nears the pump's blank-off."
        ),
        draw=pull_down_hoses,
    ),
    Figure(
        id="pressure-along-rig",
        title="Where the gauge is decides what it reads",
        caption=(
            "The system stands at {target:micron} while the {pump:CFM} pump runs. Behind {hose:ft} "
            "({hose:m;3}) of 1/4 in bore the pump stands at {small:micron;2}: a gauge there reads "
            "{ratio:1;2} times too low. Behind 3/4 in it reads {large:micron;3}."
        ),
        alt=(
            "Pressure from the system through a hose to the pump, log axis. Both lines start at "
            "{target:micron}. With 3/4 in bore it falls gently to {large:micron;3} at the pump, "
            "with 1/4 in bore steeply to {small:micron;2}."
        ),
        draw=pressure_along_rig,
    ),
    Figure(
        id="water-removal",
        title="Most of the water leaves early",
        caption=(
            "The most water vapor a {pump:CFM} pump can carry off through {hose:ft} ({hose:m;3}) "
            "of hose, if heat keeps up. Through 1/4 in a gram takes {gram_fast:duration} at the "
            "triple point, {triple:micron;4}, and {gram:duration} at {target:micron}."
        ),
        alt=(
            "Water carried off per hour against the vapor pressure at the wet spot, log axes, for "
            "bores of 1/4, 3/8 and 3/4 inch. All lines rise steeply: through 1/4 in from "
            "{slow:g/h;2} at {target:micron} to {fast:g/h;2} at {triple:micron;4}, where ice turns "
            "to liquid, {ratio:1;2} times as much."
        ),
        draw=water_removal,
    ),
)
