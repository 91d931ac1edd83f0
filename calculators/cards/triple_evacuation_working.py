"""What each nitrogen break leaves: the notes, the working, the table and the chart."""

from collections.abc import Sequence

from calculators.card import (
    Axis,
    Chart,
    Column,
    Series,
    Step,
    Table,
    Text,
    say,
)
from calculators.physics import dilution


def notes(water: float | None, carried: float, boils: bool, pulls: int) -> tuple[Text, ...]:
    texts: list[Text] = []
    if pulls > 1:
        texts.append(
            "To leave as little air with one pull you would have to reach {air_left}. Breaks "
            "dilute; they do not need a deep vacuum."
        )
    texts.append(
        "Breaks thin out gas and vapor only. Liquid water stays: with its vapor, each break "
        "carries off {vapor_per_break} at most, even if the nitrogen waits until it is soaked."
    )
    if water is not None and water > carried:
        texts.append(
            "Of your {water} of water the breaks alone leave {water_left}. It has to boil off: "
            "give it heat and time under {wet:micron|Pa;3}, the vapor pressure of water at "
            "{temperature}."
        )
    elif water is not None:
        texts.append("That little water the breaks can carry off as vapor, if they get soaked.")
    if boils:
        texts.append(
            "Your pulls go below {wet:micron|Pa;3}, so water at {temperature} also boils while "
            "you pull. That, not the dilution, is what dries; the nitrogen helps by bringing heat."
        )
    texts.append(
        "Dead ends mix slowly. Wait some minutes after each break, and break from the far side."
    )
    return tuple(texts)


def working(
    lows: Sequence[float],
    breaks: Sequence[float],
    barometer: float,
    states: Sequence[dilution.Pull],
) -> tuple[Step, ...]:
    steps = []
    before, partial = barometer, barometer
    for index, (low, state) in enumerate(zip(lows, states, strict=True)):
        says = (
            "Pull 1 takes every gas in the same proportion: of the air, the share p₁/p₀ stays."
            if index == 0
            else f"Break {index} adds nitrogen and no air; pull {index + 1} thins both out again."
        )
        steps.append(
            Step(
                says,
                "p_air,1 = p₀ · p₁/p₀" if index == 0 else "p_air,n = p_air,n−1 · pₙ/p_break",
                say(
                    "{partial:Pa;4} × {low:Pa;4} / {before:Pa;6} = {after:Pa;4}",
                    partial=partial,
                    low=low,
                    before=before,
                    after=state.partial_pressure,
                ),
            )
        )
        partial = state.partial_pressure
        if index < len(breaks):
            before = breaks[index]
    return (
        *steps,
        Step(
            "As a share of the air at the start.",
            "f = p_air / p₀",
            "f = {air_left:Pa;4} / {barometer:Pa;6} = {share_left:1;3}",
        ),
        Step(
            "Over liquid water the gas holds vapor up to the saturation pressure, no more.",
            "m = p_sat·V·M / (R·T)",
            "m = {wet:Pa;4} × {volume:m³;4} × 18.0153 g/mol / (8.31446 J/(mol·K) × "
            "{temperature:K;5}) = {vapor_mass:g;3}, of which a pull takes {vapor_per_break:g;3}",
        ),
        Step(
            "The nitrogen of all breaks.",
            "m = Σ (p_break − pₙ)·V·M / (R·T)",
            "m = {nitrogen:g;3}",
        ),
        Step(
            "The water it brings along, with a dew point of {dew_point}.",
            "m = (breaks)·p_dew·V·M / (R·T)",
            "p_dew = {dew_pressure:Pa;3}, m = {moisture_brought:mg;2}",
        ),
    )


def table(
    states: Sequence[dilution.Pull], breaks: Sequence[float], carried: Sequence[float]
) -> Table:
    return Table(
        caption="Pull by pull",
        columns=(
            Column("Pull"),
            Column("Down to", "micron", "Pa"),
            Column("Air left", "micron", "Pa", figures=3),
            Column("Share of the air left", "1", "1", figures=3),
            Column("Vapor carried, at most", "g", "g", figures=3),
            Column("Broken to, absolute", "psia", "kPa", figures=3),
        ),
        rows=tuple(
            (
                str(index + 1),
                state.pressure,
                state.partial_pressure,
                state.fraction_left,
                carried[index],
                breaks[index] if index < len(breaks) else None,
            )
            for index, state in enumerate(states)
        ),
        open=True,
    )


def chart(states: Sequence[dilution.Pull], barometer: float) -> Chart:
    numbers = tuple(float(n) for n in range(len(states) + 1))
    left = (barometer, *(state.partial_pressure for state in states))
    return Chart(
        title="Air left after each pull",
        x=Axis(label="Pull", us="1", si="1"),
        y=Axis(label="Partial pressure of air", us="micron", si="Pa", log=True),
        series=(
            Series(label="", role="curve", x=numbers, y=left),
            Series(label="air", role="reading", x=numbers, y=left),
        ),
        summary="The air left falls by the same factor with each pull of the same depth.",
    )
