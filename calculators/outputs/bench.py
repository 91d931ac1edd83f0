"""What the page asks of the practice bench: a case, some time, an action, a mark."""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from calculators import wording
from calculators.errors import CalculatorError
from calculators.outputs.element import Element, tag, text_of
from calculators.physics.constants import MICRON
from calculators.teaching import bench_marking, bench_session
from calculators.teaching.bench_actions import BY_CONTROL, Action
from calculators.teaching.bench_case import HOSES, LARGEST, Case, case_of
from calculators.teaching.bench_session import MOST_TICKS, Moment, moment_of, shown
from calculators.teaching.bench_trace import TARGET

UNITS = {"us": "micron", "si": "Pa"}


def reply(question: Mapping[str, Any]) -> dict[str, Any]:
    """Answer one question from the bench.

    Parameters
    ----------
    question : mapping
        ``give`` is "case", "run" or "mark"; ``case`` the number as typed. A
        run has the last ``moment``, all ``actions`` as [tick, control, value],
        one more to try as ``act`` or null, and how many ``ticks`` to go. A mark
        has ``readings`` [micron] at every tick and the fault ``named``.

    Returns
    -------
    dict
        What the page keeps and shows. The page keeps everything: nothing is
        remembered here from one question to the next.
    """
    case = case_of(_number(question["case"]))
    return GIVES[question["give"]](case, question)


def _number(text: object) -> int:
    try:
        return int(str(text).replace(",", "").strip())
    except ValueError:
        raise CalculatorError(
            f"Type the number of a case, from 1 to {LARGEST:,}.", input="case"
        ) from None


def _actions(rows: Iterable[Sequence[Any]]) -> tuple[Action, ...]:
    try:
        return tuple(Action(int(tick), str(name), str(value)) for tick, name, value in rows)
    except (TypeError, ValueError):
        raise CalculatorError("This session cannot be read. Start the case again.") from None


def _case(case: Case, question: Mapping[str, Any]) -> dict[str, Any]:
    first = bench_session.begin(case)
    return {
        "case": case.number,
        "says": situation(case, question["system"]),
        "moment": first.as_data(),
        **_readings([first.state.gauge]),
        "known": bench_session.settings_known(case, ()),
        "target": {
            system: {
                "at": TARGET * MICRON / bench_session.SIZE[unit],
                "label": wording.quantity(TARGET * MICRON, unit, figures=3),
            }
            for system, unit in UNITS.items()
        },
    }


def situation(case: Case, system: str) -> list[str]:
    """The case in words: what a learner is told."""
    scope = wording.Scope({"volume": case.plant.volume, "room": case.plant.ambient}, {}, system)
    facts = scope.fill("{volume:L;3} inside, {room:°F|°C;.0} all through.")
    return [
        f"{case.place}. {facts}".replace(" °", "\N{NO-BREAK SPACE}°"),
        f"The rig is somebody else's: a {case.pump} CFM pump, a hose of {HOSES[case.hose]} bore, "
        "a core tool, a gauge.",
    ]


def _readings(pressures: Sequence[float]) -> dict[str, list[float]]:
    return {system: [shown(each, unit) for each in pressures] for system, unit in UNITS.items()}


def _run(case: Case, question: Mapping[str, Any]) -> dict[str, Any]:
    moment, actions = moment_of(question["moment"]), _actions(question["actions"])
    refused = ""
    if question.get("act"):
        (new,) = _actions([question["act"]])
        actions, refused = bench_session.add(case, actions, new)
    ticks = min(max(int(question["ticks"]), 1), MOST_TICKS)
    end, pressures = bench_session.run(case, moment, actions, ticks)
    return {
        "moment": end.as_data(),
        "actions": [[each.tick, each.control, each.value] for each in actions],
        "refused": refused,
        "said": _said(case, actions, moment, pressures),
        **_readings(pressures),
        "known": bench_session.settings_known(case, actions),
    }


def _said(
    case: Case, actions: Sequence[Action], moment: Moment, pressures: Sequence[float]
) -> list[dict[str, Any]]:
    """The log's lines for what was done in this run, in both systems."""
    gauge = [moment.state.gauge, *pressures]
    lines = []
    for each in actions:
        if not 0 <= each.tick - moment.tick < len(gauge):
            continue
        at, text = gauge[each.tick - moment.tick], BY_CONTROL[each.control].says(each.value)
        line: dict[str, Any] = {"tick": each.tick}
        for system, unit in UNITS.items():
            yours = wording.with_unit(wording.number(shown(at, unit)), unit)
            clean = shown(max(at - case.plant.gauge_offset, 0.0), unit)
            second = wording.with_unit(wording.number(clean), unit)
            line[system] = text.format(reading=second, yours=yours)
        lines.append(line)
    return lines


def _mark(case: Case, question: Mapping[str, Any]) -> dict[str, Any]:
    found = bench_marking.mark(
        case, _actions(question["actions"]), question["readings"], question["named"],
        froze=bool(question.get("froze")), system=question["system"],
    )  # fmt: skip
    return {"grade": found.grade, "says": found.says, "html": text_of(*_marking(found))}


def _marking(found: bench_marking.BenchMark) -> list[Element]:
    """The marking as it stands on the page."""
    made = [tag("p", tag("b", found.says), class_="bench-grade", data_grade=found.grade)]
    if found.because:
        made.append(tag("p", found.because))
    made.append(tag("h3", "On your trace"))
    if found.evidence:
        made.append(tag("ul", [_line(each) for each in found.evidence], class_="bench-lines"))
    else:
        made.append(tag("p", "Nothing on it shows that yet. Go on, and look for it."))
    if found.holds:
        made.append(tag("h3", "Your holds, as the decay test judges them"))
        made.append(tag("ul", [_line(each) for each in found.holds], class_="bench-lines"))
    made.append(tag("h3", "Sooner"))
    made.append(tag("ul", [tag("li", each) for each in found.sooner]))
    return made


def _line(line: bench_marking.Line) -> Element:
    return tag(
        "li", tag("time", clock(line.at)), tag("span", line.says), data_code=line.code or None
    )


def clock(seconds: float) -> str:
    """A time on the bench's clock."""
    whole = round(seconds)
    return f"{whole // 3600}:{whole // 60 % 60:02}:{whole % 60:02}"


GIVES = {"case": _case, "run": _run, "mark": _mark}
