"""How the conductance card words its answer: notes, working, table and chart."""

import math

from calculators.card import Axis, Chart, Column, Mark, Series, Step, Table, Text
from calculators.physics import orifice_flow, rarefied_gas, tube_conductance, tube_flow
from calculators.physics.constants import MICRON, STANDARD_ATMOSPHERE
from calculators.physics.gases import ThinGas
from calculators.physics.rig import Tube

REGIMES = {kind: kind for kind in ("viscous", "transition", "molecular")}
FAR_BELOW = 1e-6  # of the inlet pressure: as good as a perfect vacuum behind an orifice
_WHICH_POWER = {
    "viscous": (
        "Viscous flow: the molecules push each other along. The conductance falls in step with "
        "the pressure and goes with the fourth power of the bore."
    ),
    "transition": (
        "Transition flow: the molecules meet the wall about as often as each other. The "
        "conductance goes with a power of the bore between the third and the fourth."
    ),
    "molecular": (
        "Molecular flow: the molecules meet only the wall. The conductance no longer depends on "
        "the pressure and goes with the third power of the bore."
    ),
}
_CHART_POINTS = 61
_DECADES = (*(10.0**power * MICRON for power in range(6)), STANDARD_ATMOSPHERE)


def flow_between(piece: Tube, inlet: float, outlet: float, gas: ThinGas) -> float:
    return tube_flow.throughput(
        inside_diameter=piece.inside_diameter,
        length=piece.length,
        inlet_pressure=inlet,
        outlet_pressure=outlet,
        gas=gas,
    )


def conductance_of(piece: Tube, pressure: float, gas: ThinGas) -> float:
    return tube_conductance.conductance(
        inside_diameter=piece.inside_diameter, length=piece.length, mean_pressure=pressure, gas=gas
    )


def poiseuille(piece: Tube, pressure: float, gas: ThinGas) -> float:
    return tube_conductance.poiseuille_conductance(
        inside_diameter=piece.inside_diameter, length=piece.length, mean_pressure=pressure, gas=gas
    )


def knudsen_1909(piece: Tube, pressure: float, gas: ThinGas) -> float:
    return tube_conductance.knudsen_conductance(
        inside_diameter=piece.inside_diameter, length=piece.length, mean_pressure=pressure, gas=gas
    )


def knudsen_of(piece: Tube, pressure: float, gas: ThinGas) -> float:
    return rarefied_gas.knudsen_number(
        inside_diameter=piece.inside_diameter, pressure=pressure, gas=gas
    )


def _at(piece: Tube, pressure: float, gas: ThinGas) -> float:
    """Conductance for a chart: of a tube at a mean pressure, of an orifice into a far vacuum."""
    if piece.length > 0.0:
        return conductance_of(piece, pressure, gas)
    return flow_between(piece, pressure, FAR_BELOW * pressure, gas) / pressure


def notes(piece: Tube, knudsen: float, ratio: float, gas: ThinGas) -> tuple[Text, ...]:
    kind = rarefied_gas.regime(knudsen_number=knudsen)
    notes: list[Text] = []
    if piece.length > 0.0:
        notes.append(_WHICH_POWER[kind])
    else:
        notes.append(
            "An orifice passes a nearly fixed volume: more of it in a dense stream, which leaves "
            "at the speed of sound, than in molecular flow. A stronger pump brings no more."
        )
    if ratio and ratio < orifice_flow.critical_pressure_ratio(gas=gas) and kind == "viscous":
        if piece.length < 5.0 * piece.inside_diameter:
            notes.append("It is choked here: the gas leaves at the speed of sound.")
    elif not ratio and piece.length < 20.0 * piece.inside_diameter and kind == "viscous":
        notes.append(
            "So short a part works as a jet in a rig and passes less than this. Give the pressure "
            "at the pump end to see it."
        )
    return tuple(notes)


_TUBE_STEPS = [
    Step(
        "The mouth: an opening of this bore, from molecular to creeping flow.",
        "C_mouth = (π/4)·d²·(c̄/4)·(1 + 0.376 δ)",
        "C_mouth = {mouth:L/s;4},  with c̄ = {mean_speed:m/s;4}",
    ),
    Step(
        "The wall: the flow coefficient of the linearized Boltzmann equation, good in every "
        "regime, over a length that the ends add to in molecular flow.",
        "C_wall = G(δ)·π a³ v₀ / (2 L′),  L′ = L·(1 + e/(1 + δ)),  e = 1/(3 + 3L/7a)",
        "G({delta:1;4}) = {coefficient:1;4},  L = {length_used:m;4},  C_wall = {wall:L/s;4}",
    ),
    Step(
        "One after the other.",
        "1/C = 1/C_mouth + 1/C_wall",
        "C = {small:L/s;4} = {small:CFM;4}",
    ),
    Step(
        "Cross-check with Knudsen's formula of 1909, which knows no ends.",
        "C = π d⁴ p / (128 η L) + (π/12)·c̄·(d³/L)·(1 + x)/(1 + 1.24 x),  x = d·p·√(M/RT)/η",
        "C = {knudsen_check:L/s;4}, which is {off:%;2} off",
    ),
]
_ORIFICE_STEPS = [
    Step(
        "In molecular flow an opening passes every molecule that meets it.",
        "C_m = (π/4)·d²·c̄/4",
        "C_m = {molecular_conductance:L/s;4},  with c̄ = {mean_speed:m/s;4}",
    ),
    Step(
        "In a dense stream the gas leaves at the speed of sound: the most that any opening of "
        "this size passes. A sharp one passes 0.86 of it.",
        "C* = (π/4)·d²·√(γ R T/M)·(2/(γ+1))^((γ+1)/(2γ−2))",
        "C* = {choked_limit:L/s;4}",
    ),
]


def working(piece: Tube, between: bool) -> tuple[Step, ...]:
    steps = [
        Step(
            "How far a molecule flies between collisions, and how that compares with the bore.",
            "λ = (η / p)·√(π R T / 2 M),  Kn = λ / d",
            "λ = {mean_free_path:mm;4},  Kn = {mean_free_path:mm;4} / {bore_used:mm;4} "
            "= {knudsen_number:1;3}: {regime}",
        ),
        Step(
            "Kinetic theory counts the same thing as a rarefaction, on the radius a = d/2.",
            "δ = a·p / (η·v₀),  v₀ = √(2 R T / M)",
            "δ = {half:mm;4} × {mean:Pa;5} / ({viscosity:µPa·s;4} × {probable_speed:m/s;4}) "
            "= {delta:1;4}",
            {"half": 0.5 * piece.inside_diameter},
        ),
    ]
    steps += _TUBE_STEPS if piece.length > 0.0 else _ORIFICE_STEPS
    if between:
        steps.append(
            Step(
                "Between two pressures the gas thins out along the way and may become a jet: the "
                "throughput that needs just the system's pressure is found by search.",
                "C = Q / (p₁ − p₂)",
                "C = {throughput:Pa·m³/s;4} / ({pressure:Pa;5} − {outlet:Pa;5}) "
                "= {conductance:L/s;4}",
            )
        )
    return tuple(steps)


def table(piece: Tube, gas: ThinGas) -> Table:
    rows = []
    for pressure in _DECADES:
        knudsen = knudsen_of(piece, pressure, gas)
        passes = _at(piece, pressure, gas)
        alone = poiseuille(piece, pressure, gas) / passes if piece.length > 0.0 else None
        kind = REGIMES[rarefied_gas.regime(knudsen_number=knudsen)]
        rows.append((pressure, knudsen, kind, passes, alone))
    return Table(
        caption="Conductance decade by decade",
        columns=(
            Column("Pressure", us="micron", si="Pa", figures=3),
            Column("Knudsen number", us="1", si="1", figures=2),
            Column("Flow"),
            Column("Conductance", us="CFM", si="L/s", figures=3),
            Column("d⁴ formula alone gives", us="%", si="%", figures=3),
        ),
        rows=tuple(rows),
    )


def chart(piece: Tube, gas: ThinGas, mean: float) -> Chart:
    low, high = math.log(MICRON), math.log(STANDARD_ATMOSPHERE)
    step = (high - low) / (_CHART_POINTS - 1)
    pressures = tuple(math.exp(low + step * index) for index in range(_CHART_POINTS))
    path = rarefied_gas.mean_free_path(pressure=1.0, gas=gas)
    borders = (
        (rarefied_gas.VISCOUS_BELOW, "Kn 0.01"),
        (rarefied_gas.MOLECULAR_ABOVE, "Kn 0.5"),
    )
    inside = [
        Mark(axis="x", at=path / (number * piece.inside_diameter), label=label)
        for number, label in borders
        if MICRON < path / (number * piece.inside_diameter) < STANDARD_ATMOSPHERE
    ]
    return Chart(
        title="Conductance against pressure",
        x=Axis(label="Pressure", us="micron", si="Pa", log=True),
        y=Axis(label="Conductance", us="CFM", si="L/s", log=True),
        series=(
            Series(
                label="",
                role="fit",
                x=pressures,
                y=tuple(_at(piece, each, gas) for each in pressures),
            ),
            Series(label="yours", role="reading", x=(mean,), y=(_at(piece, mean, gas),)),
        ),
        marks=tuple(inside),
        summary="Nearly flat: an opening passes a fixed volume, somewhat more in a dense stream."
        if piece.length == 0.0
        else (
            "Steep right of Kn 0.01, where the flow is viscous; flat left of Kn 0.5, where it is "
            "molecular; a shallow dip near there."
        ),
    )
