"""What a learner can do at the practice bench, and what each action changes."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from calculators.physics.constants import STANDARD_ATMOSPHERE
from calculators.physics.evacuation import RIG_VOLUME, Conditions, Setting
from calculators.teaching.bench_case import HOSES, Case, path

WARMING = 25.0  # K above the room, a heat lamp or a warm air gun, from memory
NITROGEN = 20.0  # Pa m3/s, a regulator cracked open, from memory


@dataclass(frozen=True)
class Control:
    """One thing to set: its choices as (value, label, what the log says).

    A control that is not ``seen`` shows no setting until the learner has set it.
    """

    key: str
    label: str
    choices: tuple[tuple[str, str, str], ...]
    seen: bool = True

    def says(self, value: str) -> str:
        """What the log says of a choice."""
        return next(says for each, _, says in self.choices if each == value)


CONTROLS = (
    Control("pump", "Pump", (("on", "On", "Pump on"), ("off", "Off", "Pump off"))),
    Control(
        "valve",
        "Valve at the system",
        (
            ("open", "Open", "Valve at the system opened"),
            ("shut", "Shut", "Valve at the system shut"),
        ),
    ),
    Control(
        "gauge",
        "Gauge at the",
        (
            ("system", "System", "Gauge at the system"),
            ("pump", "Pump", "Gauge at the pump"),
        ),
        seen=False,
    ),
    Control(
        "second",
        "Second gauge",
        (("read", "Read beside it", "Second gauge beside it reads {reading}, yours {yours}"),),
    ),
    Control(
        "ballast",
        "Gas ballast",
        (("open", "Open", "Gas ballast opened"), ("shut", "Shut", "Gas ballast shut")),
        seen=False,
    ),
    Control("oil", "Pump oil", (("new", "Change it", "Pump oil changed"),)),
    Control(
        "cores",
        "Valve core",
        (("out", "Out", "Valve core out"), ("in", "In", "Valve core in")),
        seen=False,
    ),
    Control(
        "hose",
        "Hose, inch",
        tuple(
            (key, name.removesuffix(" in"), f"Hose of {name} bore") for key, name in HOSES.items()
        ),
    ),
    Control(
        "heat",
        "Low spots",
        (("on", "Warm", "Low spots warmed"), ("off", "Leave", "Warming stopped")),
    ),
    Control(
        "nitrogen",
        "Dry nitrogen",
        (("open", "Let in", "Dry nitrogen let in"), ("shut", "Shut", "Nitrogen shut")),
    ),
)
BY_CONTROL = {control.key: control for control in CONTROLS}


@dataclass(frozen=True, kw_only=True)
class Rigged:
    """How everything is set at one moment, whether the learner knows it or not."""

    pump: str = "off"
    valve: str = "open"
    gauge: str
    ballast: str
    cores: str
    hose: str
    heat: str = "off"
    nitrogen: str = "shut"

    @property
    def alone(self) -> bool:
        """Whether the system is shut in and left to itself."""
        return self.valve == "shut" and self.nitrogen == "shut"

    @property
    def pulling(self) -> bool:
        """Whether the pump pulls on the system."""
        return self.pump == "on" and self.valve == "open" and self.nitrogen == "shut"


@dataclass(frozen=True)
class Action:
    """One thing done, at a tick of the bench's clock."""

    tick: int
    control: str
    value: str


def as_found(case: Case) -> Rigged:
    """How the case stands when the learner comes to it."""
    return Rigged(
        gauge=case.gauge_at,
        ballast="open" if case.ballast_open else "shut",
        cores="in" if case.cores_in else "out",
        hose=case.hose,
    )


def rigged(case: Case, actions: Iterable[Action]) -> Rigged:
    """How everything is set after these actions."""
    now = as_found(case)
    for each in actions:
        now = after(now, each)
    return now


def after(now: Rigged, action: Action) -> Rigged:
    """The setting after one more action."""
    if action.control in ("oil", "second"):
        return now
    return replace(now, **{action.control: action.value})


def refusal(now: Rigged, action: Action) -> str:
    """Why an action cannot be done now; empty when it can."""
    control = BY_CONTROL.get(action.control)
    if control is None or action.value not in {each for each, _, _ in control.choices}:
        return "There is no such thing to set on this bench."
    if action.control == "hose" and action.value == now.hose:
        return "That hose is on already."
    if action.control == "hose" and now.valve == "open":
        return "Shut the valve at the system first: a hose taken off lets air in."
    if action.control == "oil" and now.pump == "on":
        return "Switch the pump off first: oil is changed with the pump standing."
    return ""


def setting(case: Case, now: Rigged) -> Setting:
    """The same as the physics wants it."""
    return Setting(
        path=path(case.pump, now.hose, now.cores == "in"),
        pump_on=now.pump == "on",
        valve_open=now.valve == "open",
        ballast_open=now.ballast == "open",
        gauge_at=now.gauge,
        wall=case.plant.ambient + WARMING if now.heat == "on" else None,
        nitrogen=NITROGEN if now.nitrogen == "open" else 0.0,
    )


def at_once(case: Case, now: Rigged, action: Action, state: Conditions) -> Conditions:
    """What an action changes in the moment it is done."""
    if action.control == "oil":
        return state._replace(wetness=0.0)
    if action.control == "hose":
        return state._replace(rig=STANDARD_ATMOSPHERE)
    if action.control == "valve" and action.value == "open" and now.valve == "shut":
        # What stands in the hoses spreads into the system.
        share = RIG_VOLUME / (RIG_VOLUME + case.plant.volume)
        inrush = max(state.rig - state.pressure, 0.0) * share
        return state._replace(air=state.air + inrush)
    return state
