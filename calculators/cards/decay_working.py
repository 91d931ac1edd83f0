"""What the decay card shows beside its verdict: the working, the tables, the chart."""

import math

from calculators.card import Axis, Chart, Column, Mark, Series, Step, Table, say
from calculators.cards import decay_words
from calculators.physics.leak_rate import smallest_detectable_leak
from calculators.physics.rise_forecast import projection
from calculators.physics.rise_judgment import Judgment

_ROWS = 60  # readings shown in the table
_GRID = 48  # points of a drawn curve
_SHAPES = {
    "constant": "Flat",
    "leak": "Straight: a leak",
    "gas": "Bend to a plateau: gas inside",
    "leak and gas": "Bend and climb: both",
}


def working(found: Judgment, *, volume: float | None, warmed: bool) -> tuple[Step, ...]:
    """Steps of the working."""
    steps = [
        Step(
            "How far the pressure rose, and how fast on the whole.",
            "Δp = p₂ − p₁,  Δp / t",
            "Δp = {rise:Pa;4} = {rise:micron;4};  {rise:Pa;4} / {duration:s;5} = "
            "{rate_of_rise:Pa/s;4} = {rate_of_rise:micron/min;4}",
        ),
    ]
    if warmed:
        steps.append(
            Step(
                "Every reading is first brought to the temperature of the start: trapped gas goes "
                "as the temperature, water where it lies as its vapor pressure.",
                "p′ = p·T₁ / T(t)",
                "T from {start_temperature:K;5} to {end_temperature:K;5}, evenly",
            )
        )
    if found.plateau and found.time_constant:
        steps.append(
            Step(
                "The bend, fitted: gas from inside that levels off.",
                "p = p₀ + G·(1 − e^(−t/τ))",
                say(
                    "levels off at {level:micron|Pa;4}, between {low:micron|Pa;4} and "
                    "{high:micron|Pa;4}, with τ = {tau:duration}",
                    level=found.plateau.best,
                    low=found.plateau.low,
                    high=found.plateau.high,
                    tau=found.time_constant,
                ),
            )
        )
    steps.append(
        Step(
            "The straight part, with every bend beside it that the scatter allows. Scatter, the "
            "gauge's step, the shape of the gas and the temperature all count as doubt.",
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
        steps += _leak_steps(found, volume)
    steps.append(
        Step(
            "The pressure at the end of the recommended hold, or of the log if that is later, if "
            "it goes on as it did.",
            "",
            "{projected_pressure:micron|Pa;4}, between {projected_low:micron|Pa;4} and "
            "{projected_high:micron|Pa;4}",
        )
    )
    return tuple(steps)


def _leak_steps(found: Judgment, volume: float) -> list[Step]:
    design = smallest_detectable_leak(
        resolution=found.found.step, volume=volume, duration=found.duration
    )
    return [
        Step(
            "That straight part in this volume is a leak of",
            "Q = V·s",
            "Q = {volume:m³;4} × {slope:Pa/s;4} = {leak_rate:Pa·m³/s;3} = {leak_rate:micron·L/s;3}",
        ),
        Step(
            "A leak must move the gauge by five steps within the test to be seen.",
            "Q_min = k·r·V / t",
            say(
                "Q_min = 5 × {step:Pa;4} × {volume:m³;4} / {duration:s;5} = {design:Pa·m³/s;3}",
                design=design,
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
            "5 × {step:Pa;4} × {volume:m³;4} / {leak_of_concern:Pa·m³/s;4};  hold {hold:duration}",
        ),
    ]


def shapes_table(found: Judgment) -> Table:
    """The shapes compared: scatter about each, and the weight of the evidence."""
    return Table(
        caption="Shapes compared",
        columns=(
            Column("Shape"),
            Column("Numbers fitted"),
            Column("Scatter", "micron", "Pa", figures=3),
            Column("Weight (AICc)", "%", "%", decimals=0),
        ),
        rows=tuple(
            (_SHAPES[each.shape], str(each.parameters), each.scatter, each.weight)
            for each in found.found.choices
        ),
    )


def readings_table(found: Judgment) -> Table:
    """Readings beside the fit; of a long log, means of blocks."""
    points = found.found.points
    every = max(1, math.ceil(len(points) / _ROWS))
    return Table(
        caption="Readings and fit",
        columns=(
            Column("Since isolation", "min", "min", figures=4),
            Column("Reading", "micron", "Pa", figures=4),
            Column("Fit", "micron", "Pa", figures=4),
        ),
        rows=tuple(
            (
                point.time - found.isolation,
                point.pressure,
                found.fitted(point.time) if point.time >= found.found.start else None,
            )
            for point in points[::every]
        ),
    )


def chart(found: Judgment, *, limit: float) -> Chart:
    """Draw readings, fit, band, limit and hold."""
    facts = found.found
    last = max(1.25 * found.duration, min(found.hold, 3.0 * found.duration))
    begin, finish = facts.start, found.start + last
    times = [begin + (finish - begin) * step / _GRID for step in range(_GRID + 1)]
    beyond = [time for time in times if time >= found.end - 1e-6 * found.duration]
    band = [projection(found.case, time=time) for time in beyond]
    since = found.isolation
    series = [
        Series(
            label="readings", role="reading",
            x=tuple(point.time - since for point in facts.points),
            y=tuple(point.pressure for point in facts.points),
        ),
        Series(
            label="fit", role="fit", x=tuple(time - since for time in times),
            y=tuple(max(found.fitted(time), _FLOOR) for time in times),
        ),
    ]  # fmt: skip
    if len(beyond) > 1:
        top = 1.5 * max(limit, found.fitted(finish), *(point.pressure for point in facts.points))
        series.insert(
            0,
            Series(
                label="95 %", role="band", x=tuple(time - since for time in beyond),
                y=tuple(max(each.low, _FLOOR) for each in band),
                upper=tuple(min(max(each.high, _FLOOR), top) for each in band),
            ),
        )  # fmt: skip
    marks = [Mark(axis="y", at=limit, label="limit {limit}")]
    if found.hold <= last:
        marks.append(Mark(axis="x", at=found.hold, label="hold {hold:duration}"))
    return Chart(
        title="Readings, fit and limit",
        x=Axis(label="Since isolation", us="min", si="min"),
        y=Axis(label="Pressure", us="micron", si="Pa"),
        series=tuple(series),
        marks=tuple(marks),
        summary=decay_words.says(found, limit=limit)
        + ". From {first_reading:micron|Pa;4} to {final_pressure} in {duration:duration}.",
    )


_FLOOR = 0.01  # Pa; below it nothing is drawn, for a logarithmic axis has no zero
