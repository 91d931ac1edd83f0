"""How the pumping-speed card words its answer: notes, working, tables and chart."""

from calculators.card import Axis, Chart, Column, Series, Step, Table, Text
from calculators.cards.rig_words import Bottleneck, where
from calculators.hardware import PUMPS
from calculators.physics.constants import MICRON, STANDARD_ATMOSPHERE
from calculators.physics.gases import ThinGas
from calculators.physics.rarefied_gas import knudsen_number, rarefaction, regime
from calculators.physics.rig import PartFlow, Rig, SteadyFlow
from calculators.physics.rig_flow import flow_at, flow_curve

_LEVELS = tuple(level * MICRON for level in (50, 100, 200, 500, 1000, 5000, 20_000, 100_000))
_CHART_POINTS = 49
_NEAR_ULTIMATE = 1.05  # the chart starts this much above the pump's ultimate


def notes(flow: SteadyFlow, worst: Bottleneck) -> tuple[Text, ...]:
    """What a technician should take from it."""
    said: list[Text] = []
    if worst.kind == "pump":
        said.append(
            "The pump itself is the limit here: a larger one would help, a larger hose hardly."
        )
    else:
        said.append(
            "The {worst} is the bottleneck: {bottleneck_share} of the pressure above the pump's "
            "ultimate is lost in it. "
            + (
                "A larger pump cannot make up for that."
                if flow.pump_share < 0.1
                else "A larger pump helps only a little."
            )
        )
    if flow.system_pressure > 1.2 * flow.pump_pressure:
        said.append(
            "A gauge at the pump shows {pump_pressure} while the system stands at "
            "{system:micron|Pa;4}. Read at the system, as far from the pump as you can."
        )
    return tuple(said)


def working(flow: SteadyFlow, gas: ThinGas) -> tuple[Step, ...]:
    """From the pump to the system, part by part."""
    steps = [
        Step(
            "The pump passes more the higher its inlet stands above its ultimate. The same gas "
            "passes every part on the way, so its throughput Q is found by search: the walk "
            "below must end at your system's pressure.",
            "p_pump = p_u + Q / S",
            "p_pump = {ultimate_pressure:Pa;4} + {throughput:Pa·m³/s;4} / {pump_speed:m³/s;4} "
            "= {pump_pressure:Pa;4}",
        )
    ]
    for number, part in enumerate(flow.parts, 1):
        steps.append(_part(number, part, gas))
    steps.append(
        Step(
            "At the system the pump and its path work like a smaller pump.",
            "S_eff = Q / p",
            "S_eff = {throughput:Pa·m³/s;4} / {system:Pa;5} = {effective_speed:L/s;4} "
            "= {effective_speed:CFM;4}",
        )
    )
    return tuple(steps)


def _part(number: int, flow: PartFlow, gas: ThinGas) -> Step:
    mean = 0.5 * (flow.inlet_pressure + flow.outlet_pressure)
    bore = flow.part.inside_diameter
    knudsen = knudsen_number(inside_diameter=bore, pressure=mean, gas=gas)
    return Step(
        "Part {number}, the {part}{side}: bore {bore:mm;3}, {length:mm;4} long. "
        "Its own mean pressure is {mean:micron|Pa;3}, so the flow is {kind}.",
        "δ = a·p_mean / (η·v₀) gives C,  p_in = p_out + Q / C",
        "δ = {delta:1;3},  C = {c:L/s;4},  p_in = {out:Pa;4} + {q:Pa·m³/s;4} / {c:L/s;4} "
        "= {inlet:Pa;5}",
        {
            "number": str(number),
            "part": flow.part.name,
            "side": where(flow.branch),
            "bore": bore,
            "length": flow.part.length,
            "mean": mean,
            "kind": regime(knudsen_number=knudsen),
            "delta": rarefaction(inside_diameter=bore, pressure=mean, gas=gas),
            "c": flow.conductance,
            "out": flow.outlet_pressure,
            "q": flow.throughput,
            "inlet": flow.inlet_pressure,
        },
    )


def parts_table(flow: SteadyFlow) -> Table:
    """Where the pressure is lost."""
    rows: list[tuple[float | str | None, ...]] = [
        ("Pump", None, flow.pump_pressure, flow.pump_share)
    ]
    rows += [
        (
            part.part.name[0].upper() + part.part.name[1:] + where(part.branch),
            part.conductance,
            part.inlet_pressure,
            flow.share(part),
        )
        for part in flow.parts
    ]
    return Table(
        caption="Where it is lost, from the pump to the system",
        columns=(
            Column("Part"),
            Column("Passes", us="CFM", si="L/s", figures=3),
            Column("Before it", us="micron", si="Pa", figures=3),
            Column("Loss", us="%", si="%", figures=2),
        ),
        rows=tuple(rows),
        open=True,
    )


def speed_table(rig: Rig, gas: ThinGas) -> Table:
    """Speed against pressure, for those who cannot see the chart."""
    rows = []
    for level in _LEVELS:
        if level > 1.001 * rig.ultimate_pressure:
            flow = flow_at(rig=rig, system_pressure=level, gas=gas)
            share = flow.effective_speed / rig.pumping_speed
            rows.append((level, flow.effective_speed, share, flow.pump_pressure))
    return Table(
        caption="Speed against pressure",
        columns=(
            Column("System", us="micron", si="Pa", figures=3),
            Column("Effective speed", us="CFM", si="L/s", figures=3),
            Column("Of the pump", us="%", si="%", figures=2),
            Column("Gauge at the pump", us="micron", si="Pa", figures=3),
        ),
        rows=tuple(rows),
    )


def pumps_table(rig: Rig, gas: ThinGas, pressure: float) -> Table:
    """Whether another pump would help on the same path."""
    rows = []
    for pump in PUMPS:
        other = Rig(
            pumping_speed=pump.displacement,
            ultimate_pressure=rig.ultimate_pressure,
            shared=rig.shared,
            branches=rig.branches,
        )
        flow = flow_at(rig=other, system_pressure=pressure, gas=gas)
        rows.append(
            (f"{pump.name}", flow.effective_speed, flow.effective_speed / pump.displacement)
        )
    return Table(
        caption="Another pump on the same path",
        columns=(
            Column("Pump"),
            Column("Effective speed", us="CFM", si="L/s", figures=3),
            Column("Of that pump", us="%", si="%", figures=2),
        ),
        rows=tuple(rows),
    )


def chart(rig: Rig, gas: ThinGas, flow: SteadyFlow) -> Chart:
    """Effective speed against pressure, with the pump alone."""
    lowest = min(_NEAR_ULTIMATE * rig.ultimate_pressure, flow.system_pressure)
    highest = max(STANDARD_ATMOSPHERE, flow.system_pressure)
    curve = flow_curve(
        rig=rig,
        lowest_pressure=lowest,
        highest_pressure=highest,
        points=_CHART_POINTS,
        gas=gas,
    )
    pressures = tuple(each.system_pressure for each in curve)
    alone = tuple(rig.pumping_speed * (1.0 - rig.ultimate_pressure / each) for each in pressures)
    return Chart(
        title="Effective pumping speed against pressure",
        x=Axis(label="Pressure at the system", us="micron", si="Pa", log=True),
        y=Axis(label="Speed", us="CFM", si="L/s", log=True),
        series=(
            Series(label="pump alone", role="curve", x=pressures, y=alone),
            Series(
                label="at the system",
                role="fit",
                x=pressures,
                y=tuple(each.effective_speed for each in curve),
            ),
            Series(
                label="yours",
                role="reading",
                x=(flow.system_pressure,),
                y=(flow.effective_speed,),
            ),
        ),
        summary="Colored line: what the path leaves of the pump at the system, with your pressure "
        "on it. Other line: the pump alone.",
    )
