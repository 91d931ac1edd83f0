"""Marking a case: the fault that was named, against what was on the trace."""

from collections.abc import Sequence
from dataclasses import dataclass

from calculators import wording
from calculators.errors import CalculatorError
from calculators.physics.constants import MICRON
from calculators.teaching.bench_actions import Action
from calculators.teaching.bench_case import Case
from calculators.teaching.bench_evidence import Sight, sights
from calculators.teaching.bench_faults import BY_FAULT, Fault
from calculators.teaching.bench_session import TICK
from calculators.teaching.bench_trace import Isolation, Trace, read_trace

GRADES = {
    "shown": "Right, and your trace shows it.",
    "guessed": "Right, but your trace does not show it.",
    "close": "Close.",
    "wrong": "Not that.",
}


@dataclass(frozen=True, kw_only=True)
class Line:
    """A line of the marking: the moment it belongs to [s], and what it says."""

    at: float
    says: str
    code: str = ""


@dataclass(frozen=True, kw_only=True)
class BenchMark:
    """What naming a fault earned.

    ``evidence`` is what the trace showed of the true fault, ``holds`` every
    isolation with the decay card's verdict.
    """

    grade: str
    says: str
    because: str
    evidence: tuple[Line, ...]
    holds: tuple[Line, ...]
    sooner: tuple[str, ...]


def mark(
    case: Case,
    actions: Sequence[Action],
    readings: Sequence[object],
    named: str,
    *,
    froze: bool = False,
    system: str = "us",
) -> BenchMark:
    """Mark the fault that a learner named.

    Parameters
    ----------
    case : Case
        The case, with its hidden fault.
    actions : sequence of Action
        All that was done, by tick.
    readings : sequence
        The gauge at every tick from the first [micron], shape (ticks + 1,).
    named : str
        Key of the fault that was named.
    froze : bool
        Whether there was ice in the system at some time.
    system : str
        "us" or "si".

    Returns
    -------
    BenchMark
        Grade, evidence, judged holds, and what could have been done sooner.

    Raises
    ------
    CalculatorError
        If nothing was named, or there is no trace yet.
    """
    if named not in BY_FAULT:
        raise CalculatorError("Choose what you think is wrong, or that nothing is.")
    trace = read_trace(case, actions, readings, system)
    said, truth = BY_FAULT[named], BY_FAULT[case.fault]
    seen = sights(trace, truth.key)
    grade = _grade(said, truth, bool(seen), froze)
    return BenchMark(
        grade=grade,
        says=f"{GRADES[grade]} {truth.was}",
        because="" if grade in ("shown", "guessed") else said.looks,
        evidence=tuple(Line(at=each.tick * TICK, says=_say(each, system)) for each in seen),
        holds=tuple(_hold(each) for each in trace.isolations),
        sooner=_sooner(trace, truth, seen),
    )


def _grade(said: Fault, truth: Fault, seen: bool, froze: bool) -> str:
    same = said.key == truth.key or (truth.key == "wet" and said.key == "frozen" and froze)
    if same:
        return "shown" if seen else "guessed"
    return "close" if said.key in truth.near else "wrong"


def _say(sight: Sight, system: str) -> str:
    scope = wording.Scope({}, {}, system)
    values = {name: value * MICRON for name, value in sight.values.items()}
    text = sight.says
    for name in values:
        text = text.replace(f"{{{name}}}", f"{{{name}:micron|Pa;3}}")
    return scope.fill(text, values)


def _hold(hold: Isolation) -> Line:
    length = wording.duration((hold.end - hold.start) * TICK)
    return Line(at=hold.start * TICK, says=f"Held {length}: {hold.says}", code=hold.verdict)


def _sooner(trace: Trace, truth: Fault, seen: list[Sight]) -> tuple[str, ...]:
    """When the trace had it, when it could have had it, and how."""
    lines = []
    stalled = trace.stalled
    if seen:
        lines.append(f"Your trace had it after {wording.duration(seen[0].tick * TICK)}.")
    if truth.key == "none" and stalled is None:
        deep = next((n for n, each in enumerate(trace.readings) if each <= 500.0), None)
        if deep is not None:
            lines.append(f"It was deep enough to shut in after {wording.duration(deep * TICK)}.")
    held = next((each for each in trace.isolations if each.decided + 30 < each.end), None)
    if held is not None:
        enough = wording.duration((held.decided - held.start) * TICK)
        whole = wording.duration((held.end - held.start) * TICK)
        lines.append(f"A hold of {enough} was enough for that verdict; you held {whole}.")
    if truth.key != "none" and stalled is not None and (not seen or stalled < seen[0].tick):
        lines.append(
            f"The pull stood still from {wording.duration(max(stalled * TICK - 180.0, 0.0))} on: "
            "that was the moment to ask why."
        )
    return (*lines, truth.sooner)
