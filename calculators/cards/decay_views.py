"""What the decay card shows beside its verdict: the working, the table, the chart."""

import math

from calculators.card import Axis, Chart, Column, Mark, Series, Step, Table, say
from calculators.cards import decay_words
from calculators.physics.rise_judgment import Judgment


def working(found: Judgment, *, volume: float | None) -> tuple[Step, ...]:
    """Steps of the working."""
    steps = [
        Step(
            "How far the pressure rose, and how fast on the whole.",
            "Δp = p₂ − p₁,  Δp / t",
            "Δp = {rise:Pa;4} = {rise:micron;4};  {rise:Pa;4} / {duration:s;5} = "
            "{rate_of_rise:Pa/s;4} = {rate_of_rise:micron/min;4}",
        ),
    ]
    if found.plateau:
        steps.append(
            Step(
                "The bend, fitted: gas from inside that levels off.",
                "p = p₀ + G·(1 − e^(−t/τ))",
                say(
                    "levels off at {plateau:micron|Pa;4} with τ = {tau:duration}",
                    tau=found.time_constant or 0.0,
                ),
            )
        )
    steps.append(
        Step(
            "The straight part, over every bend that the scatter allows: from nothing bent at all "
            "to the most.",
            "p = p₀ + s·t + G·(1 − e^(−t/τ))",
            say(
                "s = {slope:micron/min|Pa/min;3}, with 95 % between {low:micron/min|Pa/min;3} and "
                "{high:micron/min|Pa/min;3}",
                low=found.slope.low,
                high=found.slope.high,
            ),
        )
    )
    if volume is not None:
        steps += [
            Step(
                "That straight part in this volume is a leak of",
                "Q = V·s",
                "Q = {volume:m³;4} × {slope:Pa/s;4} = {leak_rate:Pa·m³/s;3} = "
                "{leak_rate:micron·L/s;3}",
            ),
            Step(
                "A leak must move the gauge by five steps within the test to be seen.",
                "Q_min = k·r·V / t",
                say(
                    "Q_min = 5 × {step:Pa;4} × {volume:m³;4} / {duration:s;5} = "
                    "{design:Pa·m³/s;3}",
                    design=5.0 * max(p.step for p in found.found.points) * volume / found.duration,
                ),
            ),
            Step(
                "What these readings themselves leave room for, if that is more.",
                "",
                "{smallest_detectable_leak:Pa·m³/s;3} = {smallest_detectable_leak:micron·L/s;3}",
            ),
            Step(
                "The hold that shows the leak of concern, and not less than ten minutes.",
                "t = k·r·V / Q",
                "t = 5 × {step:Pa;4} × {volume:m³;4} / {leak_of_concern:Pa·m³/s;4};  "
                "hold {hold:duration}",
            ),
        ]
    steps.append(
        Step(
            "The pressure at the end of that hold, if it goes on as it did.",
            "",
            "{projected_pressure:micron|Pa;4}, between {projected_low:micron|Pa;4} and "
            "{projected_high:micron|Pa;4}",
        )
    )
    return tuple(steps)


def readings_table(found: Judgment) -> Table:
    """Readings beside the fit, up to sixty of them."""
    every = max(1, math.ceil(len(found.found.points) / 60))
    rows = []
    for point in found.found.points[::every]:
        fitted = found.fitted(point.time)
        rows.append((point.time - found.isolation, point.pressure, fitted))
    return Table(
        caption="Readings and fit",
        columns=(
            Column("Time", "min", "min", figures=4),
            Column("Reading", "micron", "Pa", figures=4),
            Column("Fit", "micron", "Pa", figures=5),
        ),
        rows=tuple(rows),
    )


def chart(found: Judgment, *, limit: float) -> Chart:
    """Draw readings, fit and limit."""
    start, length = found.start, found.duration
    last = max(1.25 * length, min(found.hold, 3.0 * length))
    grid = [last * step / 60.0 for step in range(61)]
    times = tuple(start - found.isolation + each for each in grid)
    return Chart(
        title="Readings, fit and limit",
        x=Axis(label="Since isolation", us="min", si="min"),
        y=Axis(label="Pressure", us="micron", si="Pa"),
        series=(
            Series(
                label="readings",
                role="reading",
                x=tuple(point.time - found.isolation for point in found.found.points),
                y=tuple(point.pressure for point in found.found.points),
            ),
            Series(
                label="fit", role="fit", x=times,
                y=tuple(found.fitted(start + each) for each in grid),
            ),
        ),
        marks=(Mark(axis="y", at=limit, label="limit {limit}"),),
        summary=decay_words.SAYS[found.reason]
        + ". From {first_reading:micron|Pa;4} to {final_pressure} in {duration:duration}.",
    )  # fmt: skip
