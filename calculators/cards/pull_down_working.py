"""How the pull-down card words its answer: notes, working, table and chart."""

from itertools import pairwise

from calculators.card import Axis, Chart, Column, Mark, Series, Step, Table, Text, say
from calculators.cards.rig_words import Bottleneck
from calculators.physics.constants import MICRON
from calculators.physics.pull_down import PullDown

_DECADES = tuple(level * MICRON for level in (100_000, 10_000, 1000, 100, 10, 1))
_SHOWN_IN = ((180.0, "s"), (5 * 3600.0, "min"), (4 * 86_400.0, "h"), (float("inf"), "d"))


def notes(
    pull: PullDown, worst: Bottleneck, ultimate: float, alone: PullDown, larger: PullDown
) -> tuple[Text, ...]:
    """The bottleneck, or the reason why the target is never reached."""
    if not pull.arrives:
        return (*_never(pull, ultimate), _DRY)
    said: list[Text] = []
    if worst.kind == "pump":
        said.append(
            "At the end the pump itself is the limit: a faster pump helps, a wider hose hardly."
        )
    else:
        said.append(
            "The {worst} is the bottleneck: at the end {bottleneck_share} of the pressure is lost "
            "in it."
        )
    if pull.time and alone.time and pull.time > 1.5 * alone.time:
        said.append(
            "With the pump right at the system it would take {time_pump_alone}: the path makes it "
            "{times:1;2} times as long."
        )
    if pull.time and larger.time:
        gain = 1.0 - larger.time / pull.time
        said.append(
            say(
                "A pump of {larger_pump:CFM|L/s;2} on the same path would take {time_larger_pump}, "
                "{gain:%;2} less.",
                gain=gain,
            )
        )
    if pull.target_pressure < 2.0 * pull.limit_pressure:
        said.append(
            "The target is close to {limit_pressure}, where this pull levels off: small changes "
            "of the pump or of the gas load change the time a great deal."
        )
    return (*said, _DRY)


_DRY = "For dry gas: water, and gas coming out of oil, take their own time on top."


def _never(pull: PullDown, ultimate: float) -> tuple[Text, ...]:
    if pull.target_pressure <= ultimate:
        return (
            "The pump itself stops at {ultimate_pressure}, its blank-off reading, so nothing "
            "below that can be reached. Change its oil and test it alone, or set a higher target.",
        )
    if pull.limit_pressure > 1.01 * ultimate:
        return (
            "The pull levels off at {limit_pressure}: there the rig takes out {gas_load}, just as "
            "much as keeps coming in.",
            "For {target_pressure} this rig could bear {most:micron·L/s|Pa·m³/s;2} at most. Find "
            "where the gas comes from, or pull through a wider path.",
        )
    return ("The target lies so close to the pump's ultimate that the pull never quite arrives.",)


def working(pull: PullDown, most: float) -> tuple[Step, ...]:
    """The balance of gas, and the time as its integral."""
    steps = [
        Step(
            "Gas leaves the volume at the throughput of the rig, and some keeps coming in.",
            "V·dp/dt = −(Q(p) − Q_L)",
            "V = {volume:m³;4},  Q_L = {gas_load:Pa·m³/s;3}",
        ),
        Step(
            "Where both are equal the pull levels off; with nothing coming in, at the pump's "
            "ultimate.",
            "Q(p_lim) = Q_L",
            "p_lim = {limit_pressure:Pa;4}",
        ),
        Step(
            "At the end of the pull the rig passes this much, found as on the pumping-speed card.",
            "Q = S_eff·p",
            "Q({last:Pa;4}) = {effective_speed:m³/s;4} × {last:Pa;4} = {throughput:Pa·m³/s;4}",
        ),
    ]
    if pull.arrives:
        steps.append(
            Step(
                say(
                    "The time is an integral over the pressure, done here at {count} throughputs "
                    "from start to target, which leaves an error of the sum below 0.1 %.",
                    count=str(len(pull.moments)),
                ),
                "t = V·∫ dp / (Q(p) − Q_L)",
                "t = {time:s;4} = {time}",
            )
        )
        steps.append(
            Step(
                "For comparison the textbook formula for a pump right at the system.",
                "t = (V/S)·ln((p₀ − p_u)/(p − p_u)), with no gas coming in",
                "t = {time_pump_alone}",
            )
        )
    elif most > 0.0:
        steps.append(
            Step(
                "The most that may keep coming in for this target.",
                "Q_L < Q(p_target)",
                "Q({target_pressure:Pa;4}) = {most:Pa·m³/s;4}",
            )
        )
    return tuple(steps)


def decades_table(pull: PullDown) -> Table:
    """Where the time goes, decade by decade."""
    first, last = pull.moments[0], pull.moments[-1]
    inside = [
        each for each in _DECADES if last.system_pressure * 1.01 < each < first.system_pressure
    ]
    ends = [first.system_pressure, *inside, last.system_pressure]
    times = [pull.time_to(each) or 0.0 for each in ends]
    rows = [
        (high, low, end - start, (end - start) / last.time)
        for (high, low), (start, end) in zip(pairwise(ends), pairwise(times), strict=True)
    ]
    return Table(
        caption="Where the time goes",
        columns=(
            Column("From", us="micron", si="Pa", figures=3),
            Column("To", us="micron", si="Pa", figures=3),
            Column("Takes", us="duration", si="duration"),
            Column("Of the whole", us="%", si="%", figures=2),
        ),
        rows=tuple(rows),
        open=True,
    )


def chart(pull: PullDown, alone: PullDown | None) -> Chart:
    """Pressure against time, on a log axis."""
    whole = pull.moments[-1].time
    unit = next(unit for limit, unit in _SHOWN_IN if whole < limit)
    series = [
        Series(
            label="this rig",
            role="fit",
            x=tuple(moment.time for moment in pull.moments),
            y=tuple(moment.system_pressure for moment in pull.moments),
        )
    ]
    if alone is not None:
        series.insert(
            0,
            Series(
                label="no hose",
                role="curve",
                x=tuple(moment.time for moment in alone.moments),
                y=tuple(moment.system_pressure for moment in alone.moments),
            ),
        )
    marks = [Mark(axis="y", at=pull.target_pressure, label="target")]
    if not pull.arrives:
        marks.append(Mark(axis="y", at=pull.limit_pressure, label="levels off"))
    return Chart(
        title="Pressure during the pull",
        x=Axis(label="Time", us=unit, si=unit),
        y=Axis(label="Pressure at the system", us="micron", si="Pa", log=True),
        series=tuple(series),
        marks=tuple(marks),
        summary="Colored line: this rig. Other line: the pump alone, with no hose. A hose lets "
        "less through the emptier the system is, so each decade takes longer than the one before."
        if alone is not None
        else "The pressure falls more and more slowly toward the level where it stays.",
    )
