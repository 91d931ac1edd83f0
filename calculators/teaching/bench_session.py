"""A session at the practice bench, moved on in time.

The clock of the bench counts ticks, and the state is stepped from tick to tick
whatever is asked for at a time: the same case and the same actions give the
same readings to the last digit, after a reload or on another device.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from calculators.errors import CalculatorError, OutOfRange
from calculators.physics import evacuation, stiff
from calculators.physics.constants import MICRON
from calculators.physics.evacuation import SCALE, Conditions
from calculators.teaching.bench_actions import Action, Rigged, after, at_once, refusal, setting
from calculators.teaching.bench_actions import rigged as rigged_after
from calculators.teaching.bench_case import Case

TICK = 2.0  # s, how often the gauge shows a new reading
MOST_TICKS = 1800  # asked for at a time: an hour
LONGEST = 6 * 3600.0  # s of the bench's clock

# Steps of the bench's gauge: up to here, this far apart; about a percent of the reading.
BANDS = {
    "micron": ((100.0, 1.0), (1_000.0, 5.0), (10_000.0, 50.0), (float("inf"), 500.0)),
    "Pa": ((10.0, 0.1), (100.0, 0.5), (1_000.0, 5.0), (float("inf"), 50.0)),
}
SIZE = {"micron": MICRON, "Pa": 1.0}


@dataclass(frozen=True, kw_only=True)
class Moment:
    """The state at a tick, before what is done at that tick."""

    tick: int
    state: Conditions
    step: float = 0.1  # s, the integrator's next
    froze: bool = False  # whether there has been ice

    def as_data(self) -> dict[str, Any]:
        """As JSON holds it; a float comes back the same."""
        return {
            "tick": self.tick, "state": list(self.state), "step": self.step, "froze": self.froze,
        }  # fmt: skip


def moment_of(data: Mapping[str, Any]) -> Moment:
    """Read back what :meth:`Moment.as_data` gave."""
    try:
        return Moment(
            tick=int(data["tick"]), state=Conditions(*map(float, data["state"])),
            step=float(data["step"]), froze=bool(data["froze"]),
        )  # fmt: skip
    except (KeyError, TypeError, ValueError):
        raise CalculatorError("This session cannot be read. Start the case again.") from None


def begin(case: Case) -> Moment:
    """The first moment of a case: at the pressure of the room, the pump off."""
    state = evacuation.start(plant=case.plant, water=case.water)
    return Moment(tick=0, state=state._replace(wetness=case.wetness))


def shown(pressure: float, unit: str) -> float:
    """What the gauge shows of a pressure [Pa], in its own steps.

    Parameters
    ----------
    pressure : float
        Pressure at the gauge [Pa], scalar.
    unit : str
        "micron" or "Pa".

    Returns
    -------
    float
        The reading in that unit, scalar.
    """
    value = pressure / SIZE[unit]
    step = step_at(value, unit)
    return round(round(max(value, 0.0) / step) * step, 1)


def step_at(value: float, unit: str = "micron") -> float:
    """Step of the gauge at a reading, both in ``unit``."""
    return next(step for top, step in BANDS[unit] if value < top)


def run(
    case: Case, moment: Moment, actions: Sequence[Action], ticks: int
) -> tuple[Moment, list[float]]:
    """Move on by a number of ticks.

    Parameters
    ----------
    case : Case
        The case.
    moment : Moment
        Where to start.
    actions : sequence of Action
        Everything done in this session, by tick; all of them can be done.
    ticks : int
        How far to go.

    Returns
    -------
    tuple
        The moment reached, and the pressure at the gauge after each tick
        [Pa], shape (ticks,).

    Raises
    ------
    OutOfRange
        If that goes past six hours on the bench's clock.

    References
    ----------
    [PHYSICS] :func:`calculators.physics.evacuation.rates`.
    """
    if (moment.tick + ticks) * TICK > LONGEST:
        raise OutOfRange("Six hours is enough for this case. Say what is wrong, or start another.")
    now = rigged_after(case, (each for each in actions if each.tick < moment.tick))
    ahead = [each for each in actions if each.tick >= moment.tick]
    state, step, froze = moment.state, moment.step, moment.froze
    readings = []
    set_to = setting(case, now)
    for tick in range(moment.tick, moment.tick + ticks):
        while ahead and ahead[0].tick == tick:
            state = at_once(case, now, ahead[0], state)
            now = after(now, ahead.pop(0))
            set_to = setting(case, now)
            step = 0.1
        parts, step = stiff.advance(
            lambda y, set_to=set_to: evacuation.rates(case.plant, set_to, y),  # type: ignore[misc]
            state, duration=TICK, scale=SCALE, step=step,
        )  # fmt: skip
        state = Conditions(*parts)
        froze = froze or (state.water > 1e-5 and state.ice_share > 0.3)
        readings.append(state.gauge)
    return Moment(tick=moment.tick + ticks, state=state, step=step, froze=froze), readings


def add(case: Case, actions: Sequence[Action], new: Action) -> tuple[tuple[Action, ...], str]:
    """The actions with one more, or the same ones and why it cannot be done."""
    before = tuple(each for each in actions if each.tick <= new.tick)
    why = refusal(rigged_after(case, before), new)
    return (before if not why else tuple(actions)) + (() if why else (new,)), why


def settings_known(case: Case, actions: Sequence[Action]) -> dict[str, str]:
    """What the learner can know of how things are set: what shows, and what they set."""
    now: Rigged = rigged_after(case, actions)
    known = {name: getattr(now, name) for name in ("pump", "valve", "hose", "heat", "nitrogen")}
    touched = {each.control for each in actions}
    return known | {n: getattr(now, n) for n in ("gauge", "ballast", "cores") if n in touched}
