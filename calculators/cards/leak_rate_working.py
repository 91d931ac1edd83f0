"""How big is the leak: the notes, the working, the table and the chart of the answer."""

from collections.abc import Callable

from calculators.card import Axis, Chart, Column, Mark, Series, Step, Table, Text
from calculators.physics.leak_rate import STEPS_TO_BE_SEEN, ServiceLoss

NEARLY_FULL = 50_000.0  # Pa; above half an atmosphere a stream no longer chokes and slows down


def notes(rise: float, resolution: float, last_pressure: float) -> tuple[Text, ...]:
    texts: list[Text] = []
    if rise < STEPS_TO_BE_SEEN * resolution:
        texts.append(
            "Your rise is under five steps of the gauge. Take it as: no leak larger than "
            "{smallest_leak} was seen, and hold longer to size a smaller one."
        )
    texts.append(
        "Which end is right depends on the leak: a pinhole finer than the path of a molecule "
        "passes the least, a wider one the most. The pressure alone cannot tell."
    )
    texts.append(
        "This test could not have seen a leak under {smallest_leak}. As {refrigerant} that is "
        "still {smallest_least_loss} to {smallest_greatest_loss}. For small leaks use nitrogen "
        "pressure with bubbles or a tracer, not a vacuum."
    )
    if last_pressure > NEARLY_FULL:
        texts.append(
            "At this pressure the leak is already slowing down as the system fills. Test under "
            "{limit:micron|Pa;2}."
        )
    texts.append(
        "All of the rise is taken as a leak. Water and oil rise too: look at the curve with the "
        "decay test first."
    )
    return tuple(texts)


def working(corrected: bool, at_rest: bool) -> tuple[Step, ...]:
    first = (
        Step(
            "The gas that came in, with both readings at the temperature of the first.",
            "Δp = p₂·T₁/T₂ − p₁",
            "Δp = {last_pressure:Pa;6} × {temperature:K;5} / {end_temperature:K;5} "
            "− {first_pressure:Pa;6} = {rise:Pa;4}",
        )
        if corrected
        else Step(
            "How far the pressure rose.",
            "Δp = p₂ − p₁",
            "Δp = {last_pressure:Pa;6} − {first_pressure:Pa;6} = {rise:Pa;4}",
        )
    )
    return (
        first,
        Step(
            "Spread over the hold and the volume it filled: the leak rate.",
            "Q = V·Δp / t",
            "Q = {volume:m³;4} × {rise:Pa;4} / {duration:s;5} = {leak_rate:Pa·m³/s;4}",
        ),
        Step(
            "As molecules of air.",
            "n = Q / (R·T)",
            "n = {leak_rate:Pa·m³/s;4} / (8.31446 J/(mol·K) × {temperature:K;5}) "
            "= {molar_flow:mol/s;4}",
        ),
        Step(
            "As grams of air.",
            "m = n·M",
            "m = {molar_flow:mol/s;4} × {air_mass:g/mol;4} = {air_mass_flow:g/yr;4}",
        ),
        Step(
            "The pressure behind the leak at rest: that of {refrigerant} vapor over its liquid "
            "at {temperature}."
            if at_rest
            else "The pressure behind the leak in service, as you gave it.",
            "p_s",
            "p_s = {service:Pa;4} absolute = {service:psia;4}",
        ),
        Step(
            "If the leak is finer than the path of a molecule, the flow goes as the difference "
            "of the pressures and the speed of the molecules.",
            "k_min = √(M_air/M)·(p_s − p_b) / p_b",
            "k_min = √({air_mass:g/mol;4} / {mass:g/mol;4}) × ({service:Pa;4} − {barometer:Pa;6}) "
            "/ {barometer:Pa;6} = {slow:1;3}",
        ),
        Step(
            "If it is wider, the gas streams: the flow goes as the difference of the squares, "
            "over the viscosity η.",
            "k_max = (η_air/η)·(p_s² − p_b²) / p_b²",
            "k_max = ({air_viscosity:µPa·s;4} / {viscosity:µPa·s;4}) × (({service:Pa;4})² "
            "− ({barometer:Pa;6})²) / ({barometer:Pa;6})² = {fast:1;3}",
        ),
        Step(
            "Each factor times the leak rate, as grams of refrigerant.",
            "m = k·Q·M / (R·T)",
            "{slow:1;3} × {leak_rate:Pa·m³/s;3} gives {least_loss:g/yr;3};  "
            "{fast:1;3} × {leak_rate:Pa·m³/s;3} gives {greatest_loss:g/yr;3}",
        ),
        Step(
            "The smallest leak that moves this gauge by five steps in this time.",
            "Q_min = 5·r·V / t",
            "Q_min = 5 × {resolution:Pa;4} × {volume:m³;4} / {duration:s;5} "
            "= {smallest_leak:Pa·m³/s;3}",
        ),
    )


EVERY_UNIT = Table(
    caption="The leak rate in every unit",
    columns=(Column("Unit"), Column("Leak rate")),
    rows=(
        ("SI", "{leak_rate:Pa·m³/s;4}"),
        ("Europe", "{leak_rate:mbar·L/s;4}"),
        ("Vacuum texts", "{leak_rate:Torr·L/s;4}"),
        ("Service gauges", "{leak_rate:micron·L/s;4}"),
        ("Pumps", "{leak_rate:micron·CFM;4}"),
        ("Leak detectors, gas at {temperature}", "{leak_rate:atm·cm³/s;4}"),
        ("Flow meters (sccm base), gas at 0 °C", "{at_zero:atm·cm³/s;4}"),
        ("Molecules", "{molar_flow:mol/s;4}"),
        ("Air, by mass", "{air_mass_flow:g/yr;4}"),
        ("In this volume", "{rate:micron/min;4}"),
    ),
)


def chart(
    size: float,
    service: float,
    barometer: float,
    lost: Callable[[float, float], ServiceLoss],
) -> Chart:
    last = max(1.3 * service, 3.0 * barometer)
    pressures = [barometer + (last - barometer) * (step / 40) ** 2 for step in range(2, 41)]
    losses = [lost(size, pressure) for pressure in pressures]
    return Chart(
        title="Refrigerant lost against the pressure behind the leak",
        x=Axis(label="Service pressure, absolute", us="psia", si="bar"),
        y=Axis(label="Lost", us="lb/yr", si="kg/yr", log=True),
        series=(
            Series(
                label="between molecule by molecule and a stream",
                role="band",
                x=tuple(pressures),
                y=tuple(loss.molecular for loss in losses),
                upper=tuple(loss.laminar for loss in losses),
            ),
        ),
        marks=(Mark(axis="x", at=service, label="yours"),),
        summary=(
            "The same leak loses from {least_loss} to {greatest_loss} of {refrigerant} with "
            "{service} behind it, and the range widens with pressure."
        ),
    )
