"""What the motion of a needle says: six ways to move, each a pull or a hold of the bench's physics.

Each motion is decided by a number; nothing about it is drawn by hand.
"""

from dataclasses import dataclass, replace
from functools import lru_cache

from calculators.errors import CalculatorError
from calculators.physics import evacuation, stiff
from calculators.physics.constants import MICRON
from calculators.physics.evacuation import SCALE, Conditions, Plant, Setting
from calculators.physics.evacuation_path import Path, path_of
from calculators.physics.rig import Rig, Tube
from calculators.teaching.bench_case import CFM, path
from calculators.teaching.draw import pick
from calculators.teaching.needle import UNITS, Dial, NeedleMark


@dataclass(frozen=True, kw_only=True)
class Motion:
    """A way a needle moves: what it does, what that tells you, and why."""

    key: str
    does: str
    tells: str
    because: str


MOTIONS = (
    Motion(
        key="steady",
        does="It falls steadily: each minute the same part of the scale",
        tells="Gas is being pumped out freely. Let it run",
        because="The same share of the gas leaves every minute, so on this scale it moves evenly.",
    ),
    Motion(
        key="slowing",
        does="It falls, but more and more slowly",
        tells="The gas gets thin and the hose passes less of it. Wait, or fit a wider path",
        because=(
            "In a thin gas a hose carries less and less. Nothing new comes in: it still falls."
        ),
    ),
    Motion(
        key="stalled",
        does="It falls, then stands still",
        tells="Something gives off gas as fast as the pump takes it. Shut in and find out what",
        because=(
            "Water boiling, a leak or gas out of oil can all hold a pull. Only a hold tells which."
        ),
    ),
    Motion(
        key="jumping",
        does="It falls, jumps up, and falls again",
        tells="Pockets of liquid or trapped gas let go one by one. Keep pulling until it ends",
        because="Each jump is a new puff of vapor, which the pump then takes away.",
    ),
    Motion(
        key="climbing",
        does="It climbs by the same number each minute",
        tells="The system is shut in and leaks",
        because=(
            "Read the numbers: a leak adds as much every minute. On this scale that looks slower "
            "and slower, because the marks crowd together."
        ),
    ),
    Motion(
        key="leveling",
        does="It climbs, and comes to rest higher up",
        tells="The system is shut in, and gas from inside comes to its own pressure",
        because="Water and oil give off gas only up to their own pressure. A leak never rests.",
    ),
)
BY_MOTION = {motion.key: motion for motion in MOTIONS}
EVERY = 5.0  # s between two points of a motion
POINTS = 121  # ten minutes


def motion_of(number: int) -> Motion:
    """The motion with a number."""
    return MOTIONS[pick(len(MOTIONS), "motion", number)]


def mark_motion(number: int, part: str, answer: str) -> NeedleMark:
    """Mark what a learner said of a motion.

    Parameters
    ----------
    number : int
        Which motion.
    part : str
        "does" or "tells".
    answer : str
        Key of the motion whose words were chosen.

    Returns
    -------
    NeedleMark
        Right or wrong, and why.
    """
    right = motion_of(number)
    if answer not in BY_MOTION:
        raise CalculatorError("Choose one first.", input=part)
    if answer == right.key:
        says = "Right." if part == "does" else f"Right. {right.because}"
        return NeedleMark(correct=True, says=says)
    words = right.does if part == "does" else f"{right.tells}. {right.because.rstrip('.')}"
    return NeedleMark(correct=False, says=f"Not this time. {words}.")


@lru_cache(maxsize=16)
def track(number: int) -> tuple[float, ...]:
    """Ten minutes of the gauge in a motion.

    Parameters
    ----------
    number : int
        Which motion.

    Returns
    -------
    tuple of float
        Pressures every five seconds [Pa], shape (121,).

    References
    ----------
    [PHYSICS] :func:`calculators.physics.evacuation.rates`.
    """
    key = motion_of(number).key
    size = 0.8 + 0.4 * pick(101, "motion", number, "size") / 100.0
    plant = Plant(volume=0.01 * size)
    setting = Setting(path=_wide_path())
    begin = evacuation.start(plant=plant)._replace(vapor=0.0)
    puffs: tuple[int, ...] = ()
    if key == "steady":
        plant = replace(plant, volume=0.18 * size)
        begin = begin._replace(air=12_000.0, gauge=12_000.0, rig=12_000.0)
    elif key == "slowing":
        plant = replace(plant, volume=0.04 * size)
        setting = replace(setting, path=path(4, "hose-1/4", cores_in=False))
        begin = begin._replace(air=8_000.0, gauge=8_000.0, rig=8_000.0)
    elif key == "stalled":
        plant = replace(plant, wet_area=4e-3, heat_conductance=2.0)
        setting = replace(setting, path=path(4, "hose-1/4", cores_in=False))
        begin = evacuation.start(plant=plant, water=0.03)._replace(air=9_000.0, gauge=11_300.0)
    elif key == "jumping":
        plant = replace(plant, volume=0.15 * size)
        begin = begin._replace(air=6_000.0, gauge=6_000.0, rig=6_000.0)
        puffs = tuple(30 + 28 * n + pick(9, "motion", number, "puff", n) for n in range(3))
    else:
        setting = replace(setting, valve_open=False)
        begin = begin._replace(air=40.0 * size, gauge=40.0 * size, rig=3.0)
        if key == "climbing":
            plant = replace(plant, leak=6e-3 * size)
        else:
            plant = replace(plant, oil_pressure=350.0 * size, oil_capacity=0.06, oil_time=700.0)
            begin = begin._replace(oil=350.0 * size)
    return _run(plant, setting, begin, puffs)


@lru_cache(maxsize=1)
def _wide_path() -> Path:
    """A pump on so wide a hose that the hose does not count."""
    wide = Tube(inside_diameter=0.019, length=1.0)
    return path_of(
        rig=Rig(pumping_speed=4.0 * CFM, ultimate_pressure=20.0 * MICRON, shared=(wide,))
    )


def _run(
    plant: Plant, setting: Setting, begin: Conditions, puffs: tuple[int, ...]
) -> tuple[float, ...]:
    state, step, made = begin, 0.1, [begin.gauge]
    for n in range(1, POINTS):
        if n in puffs:  # a pocket boils off within moments
            state = state._replace(vapor=state.vapor + 2.5 * state.pressure)
        parts, step = stiff.advance(
            lambda y: evacuation.rates(plant, setting, y), state, duration=EVERY, scale=SCALE,
            step=step,
        )  # fmt: skip
        state = Conditions(*parts)
        made.append(state.gauge)
    return tuple(made)


def motion_dial(system: str) -> Dial:
    """The dial that motions are shown on."""
    return Dial(10.0, 4, UNITS["us"]) if system == "us" else Dial(1.0, 4, UNITS["si"])


def by_the_minute(number: int, unit: str) -> tuple[tuple[int, float], ...]:
    """Minute and reading, for whoever wants numbers."""
    size = MICRON if unit == "micron" else 1.0
    every = round(60.0 / EVERY)
    return tuple(
        (n // every, float(f"{value / size:.2e}"))
        for n, value in enumerate(track(number))
        if n % every == 0
    )
