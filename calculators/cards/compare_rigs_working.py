"""How the compare-rigs card words its answer: ratios, notes, working, tables and chart."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from calculators.card import Axis, Chart, Column, Mark, Series, Step, Table, Text, say
from calculators.cards.rig_words import bottleneck
from calculators.physics.constants import MICRON, STANDARD_ATMOSPHERE
from calculators.physics.gases import ThinGas
from calculators.physics.pull_down import PullDown
from calculators.physics.rig import Rig, Tube
from calculators.physics.rig_flow import flow_at
from calculators.physics.tube_conductance import conductance

_LEVELS = tuple(level * MICRON for level in (50, 100, 200, 500, 1000, 10_000, 100_000))
_CHART_POINTS = 25
_ABOVE_ULTIMATE = 1.25  # the chart starts this much above the worst pump's ultimate


@dataclass(frozen=True, kw_only=True)
class Entrant:
    """One rig of the comparison, with its pull."""

    number: int
    name: str
    hose: Tube
    hoses: int
    rig: Rig
    pull: PullDown


def ratios(fast: Entrant, slow: Entrant, target: float, gas: ThinGas) -> dict[str, float]:
    """The faster over the slower, by every way of counting; and what they are made of."""

    def conducts(each: Entrant) -> float:
        return each.hoses * conductance(
            inside_diameter=each.hose.inside_diameter,
            length=max(each.hose.length, 1e-3 * each.hose.inside_diameter),
            mean_pressure=target,
            gas=gas,
        )

    def power(exponent: int) -> float:
        bore = math.pow(fast.hose.inside_diameter / slow.hose.inside_diameter, exponent)
        length = max(slow.hose.length, 1e-9) / max(fast.hose.length, 1e-9)
        return bore * length * fast.hoses / slow.hoses

    fast_flow = flow_at(rig=fast.rig, system_pressure=target, gas=gas)
    slow_flow = flow_at(rig=slow.rig, system_pressure=target, gas=gas)
    fast_time, slow_time = fast.pull.time or 0.0, slow.pull.time or 0.0
    return {
        "times": slow_time / fast_time,
        "speeds": fast_flow.effective_speed / slow_flow.effective_speed,
        "hoses": conducts(fast) / conducts(slow),
        "fourth": power(4),
        "third": power(3),
        "fast_bore": fast.hose.inside_diameter,
        "slow_bore": slow.hose.inside_diameter,
        "fast_length": fast.hose.length,
        "slow_length": slow.hose.length,
        "fast_hoses": float(fast.hoses),
        "slow_hoses": float(slow.hoses),
        "fast_conducts": conducts(fast),
        "slow_conducts": conducts(slow),
        "fast_speed": fast_flow.effective_speed,
        "slow_speed": slow_flow.effective_speed,
        "fast_pump_share": fast_flow.pump_share,
    }


def held_back_by(each: Entrant, target: float, gas: ThinGas) -> str:
    """Name of the part that holds a rig back most at the target."""
    return bottleneck(flow_at(rig=each.rig, system_pressure=target, gas=gas)).name


def notes(
    entrants: Sequence[Entrant], arrived: Sequence[Entrant], pair: Mapping[str, float] | None
) -> tuple[Text, ...]:
    """What the comparison is worth, and where the rule of thumb holds."""
    said: list[Text] = []
    if pair:
        said += _rule_of_thumb(pair)
        if pair["fast_pump_share"] > 0.5:
            said.append(
                "With {fast} the pump is the limit: a still wider hose would gain little, a "
                "faster pump more."
            )
    said += [
        say(
            "{name} never gets there: it levels off at {limit:micron|Pa;3}.",
            name=each.name,
            limit=each.pull.limit_pressure,
        )
        for each in entrants
        if not each.pull.arrives
    ]
    said.append("For dry gas: water takes its own time, but it leaves through the same hoses.")
    return tuple(said)


def _rule_of_thumb(pair: Mapping[str, float]) -> list[Text]:
    """Where the fourth power of the bore holds, and what is left of it."""
    if pair["fourth"] > 1.01:
        return [
            "By the fourth power of the bore the wider hose would be {fourth:1;3} times as good. "
            "That is true of the hose alone, and only in viscous flow: at {target_pressure} it "
            "passes {hoses:1;3} times as much, in molecular flow {third:1;3} times.",
            "The system feels less: at {target_pressure} the pump and all that stands in the path "
            "leave a speed {speeds:1;3} times as high. Over the whole pull, which starts where "
            "even a narrow hose does little harm, it is {times:1;3} times.",
        ]
    said: list[Text] = ["The bottleneck of {slow} is the {slow_worst}."]
    if pair["fourth"] < 0.99:
        said.append("Its hose passes more, and still {fast} is faster: look at the rest first.")
    elif pair["times"] < 1.1:
        said.append("The difference is under 10 %: spend the money elsewhere.")
    return said


def working(arrived: Sequence[Entrant], pair: Mapping[str, float] | None) -> tuple[Step, ...]:
    """Each way of counting, from the bore alone to the whole pull."""
    if not pair:
        return (
            Step(
                "The time of each rig is an integral over the pressure, as on the pull-down card. "
                "A rig gets to the target only if its pump's ultimate lies below it.",
                "t = V·∫ dp / Q(p)",
                "t = {fastest_time}" if arrived else "",
            ),
        )
    return (
        Step(
            "The rule of thumb: only the bore, in viscous flow.",
            "(d₂/d₁)⁴·(L₁/L₂)·(n₂/n₁)",
            "({fast_bore:mm;4} / {slow_bore:mm;4})⁴ × ({slow_length:m;4} / {fast_length:m;4}) "
            "× ({fast_hoses:1;1} / {slow_hoses:1;1}) = {fourth:1;4}",
        ),
        Step(
            "The same in molecular flow, at the deep end.",
            "(d₂/d₁)³·(L₁/L₂)·(n₂/n₁)",
            "{third:1;4}",
        ),
        Step(
            "At your target, by kinetic theory, as on the conductance card.",
            "C₂ / C₁",
            "{fast_conducts:L/s;4} / {slow_conducts:L/s;4} = {hoses:1;4}",
        ),
        Step(
            "With the pump and all else that stands in the path.",
            "S₂ / S₁,  each with 1/S_eff = 1/S + Σ 1/C at its own pressures",
            "{fast_speed:L/s;4} / {slow_speed:L/s;4} = {speeds:1;4}",
        ),
        Step(
            "Over the whole pull, from start to target.",
            "t₁ / t₂,  each t = V·∫ dp / Q(p)",
            "{slowest_time:s;4} / {fastest_time:s;4} = {times:1;4}",
        ),
    )


def times_table(entrants: Sequence[Entrant], target: float) -> Table:
    """Times to round pressures on the way, rig by rig."""
    start = entrants[0].pull.moments[0].system_pressure
    levels = [each for each in reversed(_LEVELS) if 1.01 * target < each < 0.99 * start]
    rows = [
        tuple(
            [
                level,
                *(
                    "never" if time is None else time
                    for time in (each.pull.time_to(level) for each in entrants)
                ),
            ]
        )
        for level in (*levels, target)
    ]
    return Table(
        caption="Time to reach",
        columns=(
            Column("Pressure", us="micron", si="Pa", figures=3),
            *(Column(each.name, us="duration", si="duration") for each in entrants),
        ),
        rows=tuple(rows),
        open=True,
    )


def speeds_table(entrants: Sequence[Entrant], gas: ThinGas) -> Table:
    """Effective speed against pressure, rig by rig."""
    rows = []
    for level in _LEVELS:
        speeds: list[float | str] = []
        for each in entrants:
            if level > 1.001 * each.rig.ultimate_pressure:
                flow = flow_at(rig=each.rig, system_pressure=level, gas=gas)
                speeds.append(flow.effective_speed)
            else:
                speeds.append("none")
        rows.append((level, *speeds))
    return Table(
        caption="Speed left at the system",
        columns=(
            Column("Pressure", us="micron", si="Pa", figures=3),
            *(Column(each.name, us="CFM", si="L/s", figures=3) for each in entrants),
        ),
        rows=tuple(rows),
    )


def chart(
    entrants: Sequence[Entrant], gas: ThinGas, start: float, pair: Mapping[str, float] | None
) -> Chart:
    """Speed of every other rig over that of the first, against pressure."""
    first, *others = entrants
    low = math.log(_ABOVE_ULTIMATE * max(each.rig.ultimate_pressure for each in entrants))
    high = math.log(max(start, STANDARD_ATMOSPHERE))
    step = (high - low) / (_CHART_POINTS - 1)
    pressures = tuple(math.exp(low + step * index) for index in range(_CHART_POINTS))

    def speeds(each: Entrant) -> list[float]:
        return [
            flow_at(rig=each.rig, system_pressure=pressure, gas=gas).effective_speed
            for pressure in pressures
        ]

    base = speeds(first)
    fastest = min(others, key=lambda each: each.pull.time or math.inf)
    return Chart(
        title=f"Speed against that of {first.name}",
        x=Axis(label="Pressure at the system", us="micron", si="Pa", log=True),
        y=Axis(label=f"Times the speed of {first.name}", us="1", si="1", log=True),
        series=tuple(
            Series(
                label=each.name if len(others) > 1 else "",
                role="fit" if each is fastest else "curve",
                x=pressures,
                y=tuple(mine / its for mine, its in zip(speeds(each), base, strict=True)),
            )
            for each in others
        ),
        marks=(Mark(axis="y", at=pair["fourth"], label="d⁴ rule"),)
        if pair and len(others) == 1 and pair["fourth"] > 1.01
        else (),
        summary="Near the open air the pump is the limit and rigs are much alike. The emptier the "
        "system, the more a wide hose is worth, until molecular flow takes some of it back.",
    )
