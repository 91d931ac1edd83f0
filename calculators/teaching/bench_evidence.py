"""What on a trace shows a fault, and from which tick on it could be seen.

One function per fault, each looking only at what the learner saw: the readings
and what was done between them.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import pairwise

from calculators.physics.constants import MICRON
from calculators.teaching.bench_session import TICK, shown
from calculators.teaching.bench_trace import STALLED, STALLED_FOR, Stretch, Trace

TRIPLE = 4_588.0  # micron, the triple point of water (IAPWS-R14-08); where ice and water meet
CLEAR = 1.2  # times: what a reading must change by to say something
WITHIN = 180.0  # s in which a change must show
HIGH = 150.0  # micron; what a pump in good order, in good use, is well below


@dataclass(frozen=True)
class Sight:
    """Something on the trace: since which tick, and what (a template over micron values)."""

    tick: int
    says: str
    values: dict[str, float]


Finder = Callable[[Trace], Iterator[Sight]]


def sights(trace: Trace, fault: str) -> list[Sight]:
    """All that the trace shows of a fault, by time."""
    return sorted(FINDERS[fault](trace), key=lambda sight: sight.tick)


def _tick(stretch: Stretch, seconds: float) -> int:
    return min(stretch.start + round(seconds / TICK), stretch.end)


def _after(trace: Trace, control: str, value: str) -> Iterator[tuple[Stretch, Stretch]]:
    """Each stretch that such an action opened, with the one before it."""
    for before, stretch in pairwise(trace.stretches):
        did = stretch.opened_by
        if did and (did.control, did.value) == (control, value):
            yield before, stretch


# --- holds -----------------------------------------------------------------------


def _held(trace: Trace) -> Iterator[Sight]:
    for hold in trace.isolations:
        if hold.verdict == "pass":
            yield Sight(
                hold.decided, "Shut in, it went from {from_} to {to}, and the hold passed.",
                {"from_": hold.readings[0], "to": hold.readings[-1]},
            )  # fmt: skip


def _climbed(trace: Trace) -> Iterator[Sight]:
    for hold in trace.isolations:
        if hold.verdict in ("leak", "leak-and-moisture"):
            yield Sight(
                hold.decided, "Shut in, it climbed straight from {from_} to {to}.",
                {"from_": hold.readings[0], "to": hold.readings[-1]},
            )  # fmt: skip


def _levelled(trace: Trace, low: float, high: float) -> Iterator[Sight]:
    for hold in trace.isolations:
        if hold.readings[-1] < CLEAR * hold.readings[0]:
            continue
        bends = hold.verdict in ("moisture", "leak-and-moisture") or _bent(hold.readings)
        if bends and low < hold.plateau <= high:
            yield Sight(
                hold.decided, "Shut in, it climbed from {from_}, bent, and came to {to}.",
                {"from_": hold.readings[0], "to": hold.readings[-1]},
            )  # fmt: skip


def _bent(readings: tuple[float, ...]) -> bool:
    """Whether the second half climbed less than half as much as the first."""
    first, middle, last = readings[0], readings[len(readings) // 2], readings[-1]
    return last - middle < 0.5 * (middle - first)


def _warmed(trace: Trace) -> Iterator[Sight]:
    for before, stretch in _after(trace, "heat", "on"):
        was, top = before.readings[-1], max(stretch.readings[: round(WITHIN / TICK)])
        if top > CLEAR * was:
            says = "With the low spots warmed it rose from {from_} to {to}."
            yield Sight(_tick(stretch, WITHIN), says, {"from_": was, "to": top})


def _stood_still(trace: Trace, low: float, high: float) -> Iterator[Sight]:
    back = round(STALLED_FOR / TICK)
    for stretch in trace.stretches:
        if not (stretch.rigged.pulling and stretch.rigged.gauge == "system"):
            continue
        for n in range(back, len(stretch.readings)):
            then, now = stretch.readings[n - back], stretch.readings[n]
            if low < now <= high and abs(then - now) <= STALLED * now:
                says = "The pull stood still at about {at}."
                yield Sight(stretch.start + n, says, {"at": now})
                break


# --- faults ----------------------------------------------------------------------


def _wet(trace: Trace) -> Iterator[Sight]:
    yield from _stood_still(trace, 1.02 * TRIPLE, 30_000.0)
    yield from _warmed(trace)
    for hold in trace.isolations:
        if hold.readings[-1] > 1.05 * TRIPLE and _bent(hold.readings):
            says = "Shut in, it climbed from {from_} past {ice}, bent, and came to {to}."
            values = {"from_": hold.readings[0], "ice": TRIPLE, "to": hold.readings[-1]}
            yield Sight(hold.end, says, values)


def _frozen(trace: Trace) -> Iterator[Sight]:
    yield from _warmed(trace)
    yield from _levelled(trace, 0.6 * TRIPLE, 1.1 * TRIPLE)


def _gas_from_oil(trace: Trace) -> Iterator[Sight]:
    yield from _levelled(trace, 0.0, 0.6 * TRIPLE)
    bends = [hold for hold in trace.isolations if _bent(hold.readings)]
    for first, second in pairwise(bends):
        if second.plateau < 0.92 * first.plateau < 0.6 * TRIPLE:
            says = "The first hold came to {first}, the next to {second}: less each time."
            values = {"first": first.plateau, "second": second.plateau}
            yield Sight(second.end, says, values)


def _rig_leaks(trace: Trace) -> Iterator[Sight]:
    for stretch in trace.stretches:
        now = stretch.rigged
        if now.valve == "shut" and now.pump == "off" and now.gauge == "pump":
            start, end = stretch.after(6.0), stretch.after(60.0)
            if end - start > 100.0:
                says = "The rig alone, pump off, climbed from {from_} to {to} within a minute."
                yield Sight(_tick(stretch, 60.0), says, {"from_": start, "to": end})
    stalled = trace.stalled
    for hold in trace.isolations:
        rise = hold.readings[-1] - hold.readings[0]
        if stalled is not None and hold.start >= stalled and rise < 0.05 * hold.readings[0]:
            says = "The pull had stopped at {at}, but the system, shut in, stood still."
            yield Sight(hold.end, says, {"at": hold.readings[0]})


def _pump_alone(trace: Trace, wait: float = 60.0) -> Iterator[Sight]:
    for stretch in trace.stretches:
        now = stretch.rigged
        if now.valve == "shut" and now.pump == "on" and now.gauge == "pump":
            reading = stretch.readings[-1]
            if stretch.seconds >= wait and reading > HIGH:
                says = "With the valve shut the pump alone stood at {at}."
                yield Sight(_tick(stretch, wait), says, {"at": reading})


def _fell(trace: Trace, control: str, value: str, says: str) -> Iterator[Sight]:
    """The reading came down after an action, well below where it was going anyway."""
    for before, stretch in _after(trace, control, value):
        last = before.readings[-1]
        back = min(len(before.readings) - 1, round(60 / TICK))
        going = math.log(max(before.readings[-1 - back], 1.0) / max(last, 1.0)) / max(back, 1)
        until = stretch.start + round(2 * WITHIN / TICK)
        for each in trace.stretches:
            if each.start < stretch.start or each.rigged.gauge != before.rigged.gauge:
                continue
            ticks = range(each.start, min(each.end, until) + 1)
            lower = [
                (tick, reading)
                for tick, reading in zip(ticks, each.readings, strict=False)
                # To go on falling as fast is the most a pull does by itself.
                if reading < 0.75 * last * math.exp(-max(going, 0.0) * (tick - stretch.start))
            ]
            if each.rigged.pump == "on" and last > HIGH and lower:
                yield Sight(
                    lower[0][0], says, {"from_": last, "to": min(reading for _, reading in lower)}
                )
                break


def _wet_oil(trace: Trace) -> Iterator[Sight]:
    yield from _pump_alone(trace)
    yield from _fell(trace, "oil", "new", "With fresh pump oil it came from {from_} to {to}.")


def _ballast(trace: Trace) -> Iterator[Sight]:
    says = "With the ballast shut it fell from {from_} to {to}."
    yield from _fell(trace, "ballast", "shut", says)


def _core(trace: Trace) -> Iterator[Sight]:
    for before, stretch in _after(trace, "cores", "out"):
        if not (before.rigged.pulling and stretch.rigged.pulling):
            continue
        slow, fast = _fall(before.readings[-6:]), _fall(stretch.readings[2:8])
        if fast > 1.5 * max(slow, 0.02):
            says = "With the core out the fall became much steeper: from {from_} to {to}."
            values = {"from_": stretch.readings[0], "to": stretch.after(60.0)}
            yield Sight(_tick(stretch, 16.0), says, values)
    yield from _drop_between(trace, 20.0)


def _fall(readings: tuple[float, ...]) -> float:
    """Fall of the logarithm over six readings; none where there are fewer."""
    if len(readings) < 6:
        return 0.0
    return math.log(max(readings[0], 1.0) / max(readings[-1], 1.0))


def _drop_between(trace: Trace, ratio: float) -> Iterator[Sight]:
    """The gauge read much less at the pump than at the system, moments apart."""
    for place in ("pump", "system"):
        for before, stretch in _after(trace, "gauge", place):
            if not (before.rigged.pulling and before.rigged.gauge != place):
                continue
            one, other = before.readings[-1], stretch.after(16.0)
            high, low = (one, other) if place == "pump" else (other, one)
            if high > ratio * max(low, 1.0):
                says = "While pulling, the system had {high} and the pump {low}."
                yield Sight(_tick(stretch, 16.0), says, {"high": high, "low": low})


def _gauge_moved(trace: Trace) -> Iterator[Sight]:
    for before, stretch in _after(trace, "gauge", "system"):
        was, now = before.readings[-1], stretch.after(16.0)
        first = all(each.opened_by is None or each.opened_by.control != "gauge"
                    for each in trace.stretches if each.start < stretch.start)  # fmt: skip
        if first and now > 1.5 * was:
            says = "Moved to the system, the gauge went from {from_} to {to}."
            yield Sight(_tick(stretch, 16.0), says, {"from_": was, "to": now})
    for before, stretch in _after(trace, "nitrogen", "open"):
        quiet = stretch.readings[-1] < 10.0 * max(before.readings[-1], 1.0)
        if stretch.rigged.valve == "shut" and stretch.seconds >= 10.0 and quiet:
            says = "Nitrogen was let into the system, and the reading stayed at {to}."
            yield Sight(_tick(stretch, 10.0), says, {"to": stretch.readings[-1]})


def _second_gauge(trace: Trace) -> Iterator[Sight]:
    for _, stretch in _after(trace, "second", "read"):
        mine = stretch.readings[0]
        other = second_reading(trace, mine)
        if mine > CLEAR * other + 20.0:
            says = "A second gauge beside it read {other} where yours read {mine}."
            yield Sight(stretch.start, says, {"other": other, "mine": mine})


def second_reading(trace: Trace, mine: float) -> float:
    """What a clean gauge shows where this one shows so much [micron]."""
    return shown(mine * MICRON - trace.case.plant.gauge_offset, "micron")


FINDERS: dict[str, Finder] = {
    "none": _held,
    "leak-system": _climbed,
    "leak-rig": _rig_leaks,
    "wet": _wet,
    "frozen": _frozen,
    "pump-oil": _wet_oil,
    "oil-gas": _gas_from_oil,
    "ballast": _ballast,
    "core-in": _core,
    "gauge-dirty": _second_gauge,
    "gauge-at-pump": _gauge_moved,
}
