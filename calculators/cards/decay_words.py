"""What the decay card says: the verdict, what speaks for and against it, what to do next."""

from calculators.card import Text, say
from calculators.physics.rise_judgment import Judgment

SAYS = {
    "flat": "It holds",
    "slow": "It holds, with a small rise",
    "straight": "Climbs steadily: a leak",
    "climb after gas": "Settles, then climbs steadily: a leak",
    "plateau": "Levels off: water, or gas coming out of oil",
    "bend and climb": "Bends, then keeps climbing: gas inside and a leak",
    "short": "Too short to tell: hold {more:duration} more",
    "shape": "It rises, but leak or moisture is not clear yet: hold {more:duration} more",
    "bending": "Still bending: hold {more:duration} more",
    "unsettled": "Pressures are still evening out: hold {more:duration} more",
    "settling": "Levels off under the limit so far: hold {more:duration} more",
    "near limit": "Too near the limit to call",
    "not deep enough": "It holds, but above your limit: pull deeper",
    "falling": "Still falling: this is not a closed system at rest",
}


OVER = {
    "shape": "Over the limit; leak or moisture is not clear yet: hold {more:duration} more",
    "bending": "Over the limit and still bending: hold {more:duration} more",
    "unsettled": "Over the limit, but too soon to say why: hold {more:duration} more",
}


def says(found: Judgment, *, limit: float) -> str:
    """Say the verdict in one line."""
    over = found.final_pressure > limit >= found.first_pressure
    return OVER.get(found.reason, SAYS[found.reason]) if over else SAYS[found.reason]


def reasons(found: Judgment, *, volume: float | None) -> tuple[Text, ...]:
    """What speaks for the verdict and what against it, in one sentence each."""
    lines: list[Text] = [_seen(found)]
    lines += _FOR[found.reason](found)
    lines += _against(found, volume=volume)
    return tuple(lines)


def _seen(found: Judgment) -> Text:
    change = found.final_pressure - found.first_pressure
    if abs(change) < 1e-9:
        return say("No change in {length:duration}: {last:micron|Pa;4}.",
                   length=found.duration, last=found.final_pressure)  # fmt: skip
    word = "Up" if change > 0.0 else "Down"
    return say(
        word + " {change:micron|Pa;3} in {length:duration}, from {first:micron|Pa;4} to "
        "{last:micron|Pa;4}.",
        change=abs(change),
        length=found.duration,
        first=found.first_pressure,
        last=found.final_pressure,
    )


def _hold(found: Judgment) -> list[Text]:
    steepest = found.found.steepest / found.found.length
    return [
        say(
            "Even at the steepest rise these readings allow, {steepest:micron/min|Pa/min;2}, it "
            "would take {time:duration} more to reach the limit.",
            steepest=steepest,
            time=max(found.limit - found.final_pressure, 0.0) / max(steepest, 1e-12),
        )
    ]


def _straight(found: Judgment) -> list[Text]:
    return [
        say(
            "A straight line fits: {low:micron/min|Pa/min;3} to {high:micron/min|Pa/min;3}. Gas "
            "from inside would have bent by now, unless it takes over {slowest:duration} to level "
            "off.",
            low=found.slope.low,
            high=found.slope.high,
            slowest=found.slowest_gas,
        )
    ]


def _plateau(found: Judgment) -> list[Text]:
    assert found.plateau
    low, high = found.plateau.low, found.plateau.high
    if found.time_constant is None:  # a bend between gauge steps too coarse to time it
        return [
            say(
                "The climb has slowed down, toward {low:micron|Pa;4} to {high:micron|Pa;4}. A "
                "leak would not slow down.",
                low=low,
                high=high,
            )
        ]
    return [
        say(
            "The climb slows toward {low:micron|Pa;4} to {high:micron|Pa;4}, by two thirds every "
            "{tau:duration}. A leak would not slow down.",
            low=low,
            high=high,
            tau=found.time_constant,
        )
    ]


def _both(found: Judgment) -> list[Text]:
    return [
        say(
            "After the bend it goes on in a straight line, {low:micron/min|Pa/min;3} to "
            "{high:micron/min|Pa/min;3}, where gas alone would have leveled off.",
            low=found.slope.low,
            high=found.slope.high,
        )
    ]


def _short(found: Judgment) -> list[Text]:
    if found.unseen is None:
        return [
            say(
                "Common practice is to hold at least {hold:duration}; pressures even out and "
                "gauges settle in the first minutes.",
                hold=found.hold,
            )
        ]
    lines: list[Text] = [
        say(
            "In this volume the test could not have seen a leak under "
            "{unseen:micron·L/s|Pa·m³/s;2}, and the leak of concern is {leak_of_concern}.",
            unseen=found.unseen,
        )
    ]
    if found.finer is not None:
        lines.append(
            say("A gauge with steps of {finer:micron|Pa;2} would have decided.", finer=found.finer)
        )
    return lines


def _shape(found: Judgment) -> list[Text]:
    return ["A leak climbs in a straight line and gas from inside bends; these readings fit both."]


def _bending(found: Judgment) -> list[Text]:
    return [
        "The climb is slowing, so there is gas inside. Whether there is a leak as well shows "
        "only when it has leveled off."
    ]


def _unsettled(found: Judgment) -> list[Text]:
    return [
        "In the first minutes pressures even out and gauges settle; the shape of the rise says "
        "nothing yet."
    ]


def _settling(found: Judgment) -> list[Text]:
    assert found.plateau
    return [
        say(
            "It is heading for {low:micron|Pa;4} to {high:micron|Pa;4}, under your limit. A little "
            "more time shows whether it stays there.",
            low=found.plateau.low,
            high=found.plateau.high,
        )
    ]


def _near(found: Judgment) -> list[Text]:
    return ["Where it will level off lies on both sides of your limit, or too near it."]


def _not_deep(found: Judgment) -> list[Text]:
    return ["Nothing comes in that this test can see. It was isolated too early."]


def _falling(found: Judgment) -> list[Text]:
    return [
        "A closed system at steady temperature does not lose pressure. Either a pump is still "
        "on it, or it is cooling, or the gauge drifts."
    ]


_FOR = {
    "flat": _hold,
    "slow": _hold,
    "straight": _straight,
    "climb after gas": _both,
    "plateau": _plateau,
    "bend and climb": _both,
    "short": _short,
    "shape": _shape,
    "bending": _bending,
    "unsettled": _unsettled,
    "settling": _settling,
    "near limit": _near,
    "not deep enough": _not_deep,
    "falling": _falling,
}


def _against(found: Judgment, *, volume: float | None) -> list[Text]:
    lines: list[Text] = []
    if found.code == "pass" and volume is None:
        lines.append(
            "Left open: how large a leak could hide. That depends on the volume; enter it to know."
        )
    if found.code == "pass" and volume is not None:
        lines.append(
            "Left open: a leak under {smallest_detectable_leak} would not have shown. As "
            "{refrigerant} in service that is {least_unseen_loss} to {greatest_unseen_loss}."
        )
    if found.reason == "slow":
        lines.append("The small rise itself may be a leak, gas from inside, or warming.")
    if found.code in ("leak", "leak-and-moisture"):
        lines.append(
            "Against it: water behind a restriction, or ice that slowly warms, also feeds in at a "
            "steady rate. If you find no leak, think of that."
        )
    if found.code == "leak-and-moisture":
        lines.append("Left open: how much of the bend is water and how much refrigerant in oil.")
    if found.code == "moisture":
        lines.append(
            say(
                "Left open: a leak of up to {high:micron/min|Pa/min;2} could hide under this.",
                high=found.slope.high,
            )
        )
    return lines


_HOLD_ON = (
    "Leave it isolated and keep reading; twenty readings, evenly spread, are plenty.",
    "Keep sun, wind and heaters off the system meanwhile; warming looks like a leak.",
    "Judge again with all readings since the isolation.",
)
_FIND_LEAK = (
    "Close the valves at the system and repeat for a few minutes with hoses and core tools shut "
    "out: does it still climb? If not, the leak is in the rig.",
    "Break the vacuum with dry nitrogen and pressure-test within the nameplate limits; a pressure "
    "test finds far smaller leaks than a vacuum.",
    "Find the leak with bubbles or a tracer, mend it, and evacuate again.",
)
_DRY = (
    "Warm the coldest parts: water leaves as fast as heat reaches it.",
    "Break the vacuum with dry nitrogen, let it stand ten minutes, and pull again.",
    "Change the pump's oil if the pull is slow, and use gas ballast while it is wet.",
    "Pull below half the limit, then isolate and test again.",
)
NEXT = {
    "flat": (
        "Write down the readings, the gauge and the temperatures.",
        "Go on to breaking the vacuum and charging.",
    ),
    "slow": (
        "Write down the readings, the gauge and the temperatures.",
        "If the job can bear it, hold longer: a leak keeps climbing, gas slows down.",
        "Go on to breaking the vacuum and charging.",
    ),
    "straight": _FIND_LEAK,
    "climb after gas": _FIND_LEAK,
    "plateau": _DRY,
    "bend and climb": (
        *_FIND_LEAK[:2],
        "Mend the leak first; drying against a leak does not end.",
        *_DRY[:2],
    ),
    "short": _HOLD_ON,
    "shape": _HOLD_ON,
    "bending": _HOLD_ON,
    "unsettled": _HOLD_ON,
    "settling": _HOLD_ON,
    "near limit": (
        "Hold on until it has leveled off.",
        "Or pull deeper and test again: with more room to the limit the answer is plain.",
    ),
    "not deep enough": (
        "Open to the pump again and pull below half the limit.",
        "If it stalls there, prove the pump and the rig, or look for water.",
    ),
    "falling": (
        "Check that the valve to the pump is shut and the pump is off.",
        "Let the temperature settle.",
        "Take the moment of isolation as the start and read again.",
    ),
}
