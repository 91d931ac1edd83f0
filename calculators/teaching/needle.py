"""Reading a needle on a logarithmic scale, and what its motion says.

Each needle and each motion is decided by a number. The motions are pulls and
holds of the practice bench's physics; nothing about them is drawn by hand.
"""

import math
from dataclasses import dataclass, replace
from functools import lru_cache

from calculators import units, wording
from calculators.errors import CalculatorError
from calculators.physics import evacuation, stiff
from calculators.physics.constants import MICRON
from calculators.physics.evacuation import SCALE, Conditions, Path, Plant, Setting
from calculators.physics.rig import Rig, Tube
from calculators.teaching.bench_case import CFM, path
from calculators.teaching.draw import pick

# A fair reading: within two degrees of the arc, about the width of the needle and its shadow.
FAIR = 0.03  # decades, about 7 %
UNITS = {"us": "micron", "si": "Pa"}
SCALES = {"us": ((10.0, 3), (1.0, 3), (100.0, 3)), "si": ((1.0, 3), (0.1, 3), (10.0, 3))}


@dataclass(frozen=True)
class Dial:
    """A scale from ``first`` over so many decades, in ``unit``."""

    first: float
    decades: int
    unit: str

    def share(self, value: float) -> float:
        """Where a value stands, from 0 at the first mark to 1 at the last."""
        return math.log10(value / self.first) / self.decades

    @property
    def last(self) -> float:
        """The value of the last mark."""
        return self.first * 10.0**self.decades


@dataclass(frozen=True)
class Needle:
    """A dial and where its needle stands, in the dial's unit."""

    dial: Dial
    value: float

    @property
    def decade(self) -> float:
        """The long mark below the needle."""
        return 10.0 ** math.floor(math.log10(self.value) + 1e-9)


def needle_of(number: int, system: str) -> Needle:
    """The needle with a number.

    Parameters
    ----------
    number : int
        Which needle.
    system : str
        "us" for micron, "si" for Pa.

    Returns
    -------
    Needle
        A dial, and a value of two figures clear of its ends.
    """
    scales = SCALES[system]
    first, decades = scales[pick(len(scales), "needle", number, "scale", system)]
    dial = Dial(first, decades, UNITS[system])
    place = 0.04 + 0.92 * pick(1001, "needle", number, "place", system) / 1000.0
    value = float(f"{first * 10.0 ** (place * decades):.1e}")
    return Needle(dial, value)


@dataclass(frozen=True, kw_only=True)
class NeedleMark:
    """What a reading or a choice earned, in words."""

    correct: bool
    says: str
    road: str = ""


def mark_reading(number: int, typed: str, system: str) -> NeedleMark:
    """Mark a reading of a needle.

    Parameters
    ----------
    number : int
        Which needle.
    typed : str
        A pressure as typed; a bare number is taken in the dial's unit.
    system : str
        "us" or "si".

    Returns
    -------
    NeedleMark
        Right within 0.03 of a decade; a usual misreading is named.

    Raises
    ------
    CalculatorError
        If what was typed is not a pressure above zero.
    """
    needle = needle_of(number, system)
    unit = needle.dial.unit
    given = _pressure(typed, unit)
    stands = _say(needle.value, unit)
    if abs(math.log10(given / needle.value)) <= FAIR:
        return NeedleMark(correct=True, says=f"Right: it stands at {stands}.")
    low = needle.decade
    high = 10.0 * low
    along = math.log10(needle.value / low)
    middle = _say(low * math.sqrt(10.0), unit)
    roads = {
        "ruler": (
            low * (1.0 + 9.0 * along),
            f"You shared the way from {_say(low, unit)} to {_say(high, unit)} evenly, as on a "
            f"ruler. Here halfway is {middle}: read it by the marks. It stands at {stands}.",
        ),
        "one mark up": (
            needle.value + low,
            f"One mark too far. Past {_say(low, unit)} the first short mark is "
            f"{_say(2.0 * low, unit)}. It stands at {stands}.",
        ),
        "one mark down": (
            needle.value - low,
            f"One mark short. Past {_say(low, unit)} the first short mark is "
            f"{_say(2.0 * low, unit)}. It stands at {stands}.",
        ),
    }
    near = {
        name: abs(math.log10(given / value)) for name, (value, _) in roads.items() if value > 0.0
    }
    best = min(near, key=lambda name: near[name])
    if near[best] <= FAIR:
        return NeedleMark(correct=False, says=roads[best][1], road=best)
    tens = math.log10(given / needle.value)
    if round(tens) and abs(tens - round(tens)) <= FAIR:
        says = (
            f"Right figure, wrong decade: the needle is between {_say(low, unit)} and "
            f"{_say(high, unit)}. It stands at {stands}."
        )
        return NeedleMark(correct=False, says=says, road="decade")
    way = "high" if given > needle.value else "low"
    return NeedleMark(correct=False, says=f"Too {way}. It stands at {stands}.")


def _pressure(typed: str, bare: str) -> float:
    """A typed pressure in the unit ``bare``."""
    text = typed.strip()
    if not text:
        raise CalculatorError(f"Type where the needle stands, in {bare}.", input="reading")
    number, unit, _ = units.read(text[:200], bare=bare)
    if units.UNITS[unit].dimension != units.UNITS[bare].dimension or units.UNITS[unit].gauge:
        raise CalculatorError(
            f"{unit} does not fit here: give an absolute pressure, such as in {bare}.",
            input="reading",
        )
    value = units.from_si(units.to_si(number, unit), bare)
    if not 0.0 < value < 1e12:
        raise CalculatorError("Type a reading above zero.", input="reading")
    return value


def _say(value: float, unit: str) -> str:
    return wording.with_unit(wording.number(value, figures=2), unit)


# --- motion ----------------------------------------------------------------------


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
    return evacuation.path_of(
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
