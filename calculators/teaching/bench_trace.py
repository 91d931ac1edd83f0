"""A session's trace, cut where something was done, with each isolation judged by the decay card."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

from calculators import units
from calculators.cards import BY_SLUG
from calculators.errors import CalculatorError
from calculators.evaluate import Evaluation, evaluate
from calculators.physics.constants import MICRON
from calculators.teaching.bench_actions import Action, Rigged, after, as_found
from calculators.teaching.bench_case import Case
from calculators.teaching.bench_session import TICK, shown, step_at

SHORTEST_HOLD = 60.0  # s; pressures need that long to even out before a hold can say a thing
DEEP = 20_000.0  # micron; a valve shut above this was not shut to judge anything
STALLED_FOR = 180.0  # s
STALLED = 0.05  # share of the reading that a stalled pull falls in that time, at most
TARGET = 500.0  # micron, common practice
ENOUGH = (3, 4, 5, 6, 8, 10, 15, 20, 30, 45)  # min, holds that are tried


@dataclass(frozen=True)
class Stretch:
    """The trace between two things done: how all was set, and the readings [micron]."""

    start: int
    end: int
    rigged: Rigged
    opened_by: Action | None
    readings: tuple[float, ...]

    @property
    def seconds(self) -> float:
        """Length [s]."""
        return (self.end - self.start) * TICK

    def after(self, seconds: float) -> float:
        """Reading so long after its start [micron]; the last one if it ended before."""
        return self.readings[min(round(seconds / TICK), len(self.readings) - 1)]


@dataclass(frozen=True)
class Isolation:
    """One hold: the system shut in at its valve and the gauge on it, judged."""

    start: int
    end: int
    judged: Evaluation
    readings: tuple[float, ...]
    decided: int  # the tick from which on shorter holds came to the same verdict

    @property
    def verdict(self) -> str:
        """Verdict code of the decay card."""
        return _code(self.judged)

    @property
    def says(self) -> str:
        """The decay card's sentence."""
        assert self.judged.answer.verdict is not None
        return self.judged.say(self.judged.answer.verdict.says)

    @property
    def plateau(self) -> float:
        """Where it levels off [micron], or the last reading."""
        level = self.judged.answer.outputs["plateau"]
        found = units.from_si(level, "micron") if isinstance(level, float) else self.readings[-1]
        return shown(found * MICRON, "micron")


def _code(judged: Evaluation) -> str:
    assert judged.answer.verdict is not None
    return judged.answer.verdict.code


class Trace:
    """What a session left: the case, what was done, and the reading at every tick [micron]."""

    def __init__(
        self, case: Case, actions: Sequence[Action], readings: Sequence[float], system: str = "us"
    ) -> None:
        self.case, self.readings, self.system = case, tuple(readings), system
        self.actions = tuple(each for each in actions if each.tick < len(readings))

    @cached_property
    def stretches(self) -> tuple[Stretch, ...]:
        """The trace cut wherever something was done."""
        now, made = as_found(self.case), []
        edges = [None, *self.actions, None]
        for opened, closing in pairwise(edges):
            now = after(now, opened) if opened else now
            start = opened.tick if opened else 0
            end = closing.tick if closing else len(self.readings) - 1
            readings = self.readings[start : end + 1]
            made.append(Stretch(start, end, now, opened, readings))
        return tuple(made)

    @cached_property
    def isolations(self) -> tuple[Isolation, ...]:
        """Every hold of a minute or more with the gauge on the system."""
        done, open_since, warm = [], None, ""
        for each in (*self.stretches, None):
            still = each and each.rigged.alone and each.rigged.gauge == "system"
            if open_since is not None and (not each or not still or each.rigged.heat != warm):
                done.append((open_since, each.start if each else len(self.readings) - 1))
                open_since = None
            if each and still and open_since is None:
                open_since, warm = each.start, each.rigged.heat
        return tuple(
            self._judged(start, end)
            for start, end in done
            if (end - start) * TICK >= SHORTEST_HOLD and self.readings[start] < DEEP
        )

    def _judged(self, start: int, end: int) -> Isolation:
        """Judge a hold, and how much of it would have been enough."""
        readings = self.readings[start : end + 1]
        whole = self._judge(readings)
        decided = end
        for minutes in ENOUGH:
            n = round(60.0 * minutes / TICK)
            if n >= len(readings) - 1:
                break
            if _code(self._judge(readings[: n + 1])) == _code(whole):
                decided = start + n
                break
        return Isolation(start, end, whole, readings, decided)

    def _judge(self, readings: tuple[float, ...]) -> Evaluation:
        """The decay card's answer to these readings."""
        rows = [f"{n * TICK:g} {value:g}" for n, value in enumerate(readings)]
        entries = {
            "readings": "\n".join(["seconds, micron", *rows]),
            "volume": f"{self.case.plant.volume * 1e3:g} L",
            "resolution": f"{max(map(step_at, readings)):g} micron",
        }
        return evaluate(BY_SLUG["decay"], entries, system=self.system)

    @cached_property
    def stalled(self) -> int | None:
        """The first tick at which a pull had stood still above the target for three minutes."""
        back = round(STALLED_FOR / TICK)
        for each in self.stretches:
            if not each.rigged.pulling:
                continue
            for n in range(back, len(each.readings)):
                then, now = each.readings[n - back], each.readings[n]
                if TARGET * 1.05 < now and abs(then - now) <= STALLED * now:
                    return each.start + n
        return None


def read_trace(
    case: Case, actions: Sequence[Action], readings: Sequence[object], system: str
) -> Trace:
    """Take a trace as the page kept it."""
    try:
        numbers = [float(each) for each in readings]  # type: ignore[arg-type]
    except (TypeError, ValueError):
        numbers = []
    if len(numbers) < 2:
        raise CalculatorError("There is no trace to mark yet. Switch the pump on and let it run.")
    return Trace(case, actions, numbers, system)
