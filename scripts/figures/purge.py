"""The nitrogen break: what each pull leaves of the air that was there."""

from __future__ import annotations

from typing import Any

from calculators import units
from calculators.physics.constants import STANDARD_ATMOSPHERE
from calculators.physics.dilution import pulls
from figures.style import ACCENT, LEAK, QUIET, Figure, canvas, label, log_axis, shown

DEPTHS = tuple(units.to_si(micron, "micron") for micron in (1_500.0, 1_500.0, 500.0))
BREAKS = (STANDARD_ATMOSPHERE,) * 2


def dilution() -> tuple[Any, dict[str, float]]:
    left = pulls(start_pressure=STANDARD_ATMOSPHERE, evacuated_to=DEPTHS, broken_to=BREAKS)
    total, air = [STANDARD_ATMOSPHERE], [STANDARD_ATMOSPHERE]
    for state, after in zip(left, (*BREAKS, None), strict=True):
        total += [state.pressure] if after is None else [state.pressure, after]
        air += [state.partial_pressure] * (1 if after is None else 2)
    times = [0, 1, 1.35, 2.35, 2.7, 3.7]
    drawing, axes = canvas(height=310)
    axes.set_title("Pressure, micron", loc="left", pad=7)
    axes.grid(True, axis="y")
    log_axis(axes.yaxis, (0.01, 0.1, 1, 10, 100, 1_000, 10_000, 100_000))
    axes.set_ylim(0.0008, 4_000_000)
    axes.set_xlim(0, 4.6)
    axes.plot(times, shown(total, "micron"), color=QUIET, linewidth=1.6)
    axes.plot(times, shown(air, "micron"), color=ACCENT, linewidth=3.2)
    axes.plot(times[1::2], shown(air, "micron")[1::2], "o", color=ACCENT, markersize=7)
    axes.set_xticks((0.5, 1.85, 3.2), ("1st pull", "2nd pull", "3rd pull"))
    label(axes, 3.55, 20_000, "all the gas", QUIET)
    label(axes, 1.45, 40, "the air that\nwas there", ACCENT, ha="right", weight="bold")
    label(axes, 1.18, 760_000, "nitrogen in", LEAK, ha="center", dy=10)
    label(axes, 2.53, 760_000, "nitrogen in", LEAK, ha="center", dy=10)
    values = {
        "depth": DEPTHS[0], "last": DEPTHS[2],
        "first_left": left[0].fraction_left, "second_left": left[1].fraction_left,
        "third_left": left[2].fraction_left,
        "one_in": 1 / left[0].fraction_left, "second_in": 1 / left[1].fraction_left,
        "deep": DEPTHS[2] / STANDARD_ATMOSPHERE,
    }  # fmt: skip
    return drawing, values


FIGURES = (
    Figure(
        id="dilution",
        title="What a nitrogen break does",
        caption=(
            "Pulls to {depth:micron}, {depth:micron} and {last:micron}, broken with dry nitrogen "
            "to one atmosphere. One pull leaves one part in {one_in:1;3} of the air, two leave one "
            "in {second_in:1;3}. It thins the gas; it does not carry off liquid water or ice."
        ),
        alt=(
            "Pressure on a log axis over three pulls with two nitrogen breaks between. The total "
            "falls from one atmosphere to {depth:micron}, rises again with each break, and ends "
            "at {last:micron}. The pressure of the air that was there falls with every pull and "
            "stays level in the breaks: {first_left:%;2} is left after the first pull, "
            "{second_left:%;2} after the second."
        ),
        draw=dilution,
    ),
)
