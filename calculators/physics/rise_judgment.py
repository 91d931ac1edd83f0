"""What a decay test proves: two questions, asked of all that the readings allow.

Is there a leak of concern: yes, no, or not to be told? Is there gas from inside
that matters: yes, no, or not to be told? Two plain answers make a verdict; any
other makes the test undecided, with what would decide it.
"""

import math
from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass

from calculators.errors import OutOfRange
from calculators.physics.leak_rate import STEPS_TO_BE_SEEN
from calculators.physics.rise_bounds import Interval, level_interval, stretch
from calculators.physics.rise_findings import Findings, find
from calculators.physics.rise_fit import SLOWEST_GAS
from calculators.physics.rise_record import Point, isolation_time, record

HOLD_AT_LEAST = 300.0  # s; common practice: a cylinder is held 5 to 10 min
USUAL_HOLD = 600.0  # s; common practice: a residential system is held about 10 min
SETTLED_AFTER = 180.0  # s; common practice: pressures even out in 1 to 2 min; no shape before
LOOK_AHEAD = 10.0  # lengths of the log over which a pass must stay below the limit,
DAY = 86400.0  # s; but not over more than a day, or twice the log
HIDDEN_SHARE = 0.10  # of the rise: a leak that gas may hide without spoiling the verdict
FEWEST_FOR_BOTH = 6  # readings in the described part; a bend and a line take five numbers
LEVELLED = 0.15  # of the gas that came: the most that may be left of gas that has levelled off


@dataclass(frozen=True, kw_only=True)
class Judgment:
    """Verdict on a decay test, and the numbers behind it, in SI.

    ``reason`` names what decided (or what kept it undecided). Slopes are in
    [Pa/s], times in [s]; ``hold``, ``crossing`` and ``needed`` count from the
    isolation. ``unseen`` is the largest leak that could be there without the
    log showing it [Pa m3/s], ``finer`` the gauge step that would have decided.
    """

    code: str
    reason: str
    found: Findings
    isolation: float
    start: float
    end: float
    first_pressure: float
    final_pressure: float
    slope: Interval
    steepest: float
    unseen: float | None
    look_ahead: float
    plateau: Interval | None
    time_constant: float | None
    hold: float
    projected: Interval
    crossing: float | None
    needed: float | None
    finer: float | None

    @property
    def duration(self) -> float:
        """Length of the log since the isolation [s]."""
        return self.end - self.start

    @property
    def slowest_gas(self) -> float:
        """Time constant beyond which gas looks like a leak to this test [s]."""
        return SLOWEST_GAS * self.found.length

    def fitted(self, time: float) -> float:
        """Pressure that the fit gives at a time on the log's clock [Pa]."""
        found = self.found
        return max(found.best.at(max((time - found.start) / found.length, 0.0)), 0.0)


def judge_rise(
    *,
    time: Sequence[float],
    pressure: Sequence[float],
    resolution: float,
    limit: float,
    volume: float | None,
    leak_of_concern: float,
    isolation: float | None = None,
    start_temperature: float | None = None,
    end_temperature: float | None = None,
) -> Judgment:
    """Judge a decay test.

    Parameters
    ----------
    time : sequence of float
        Times of the readings, rising [s], series.
    pressure : sequence of float
        Absolute pressures [Pa], series.
    resolution : float
        Step of the gauge [Pa], scalar.
    limit : float
        Pressure that must not be passed [Pa], scalar.
    volume : float or None
        Inside volume [m3], scalar, if known.
    leak_of_concern : float
        Leak that a pass must exclude [Pa m3/s], scalar.
    isolation : float, optional
        Moment of isolation on the log's clock [s], scalar; proposed from the
        readings where not given.
    start_temperature, end_temperature : float, optional
        Temperatures of the system at the isolation and at the last reading
        [K], scalar; trapped gas is brought to the first, as if the change
        were even. Steady where either is missing.

    Returns
    -------
    Judgment
        The verdict and everything behind it.

    Raises
    ------
    OutOfRange
        If fewer than two readings come after the isolation.

    References
    ----------
    Derived here; the operating characteristic is measured by simulation.
    """
    points = record(time=time, pressure=pressure, resolution=resolution)
    if isolation is None:
        isolation = isolation_time(points)
        if isolation > time[0] + 0.7 * (time[-1] - time[0]):
            isolation = time[0]  # falling nearly to the end: no isolation is to be seen
    first = bisect_left(time, isolation)
    if len(time) - first < 2:
        raise OutOfRange("At least two readings after the isolation are needed.", input="isolation")
    if first > 0:
        points = record(time=time[first:], pressure=pressure[first:], resolution=resolution)
    known = start_temperature is not None and end_temperature is not None
    if start_temperature is not None and end_temperature is not None:
        points = _at_one_temperature(points, start_temperature, end_temperature)
    found = find(points, temperature_known=known)
    return _Case(found, limit, volume, leak_of_concern, isolation).judgment(pressure[first])


def _at_one_temperature(points: tuple[Point, ...], start: float, end: float) -> tuple[Point, ...]:
    """Bring trapped gas to the temperature of the start: pressure goes as temperature."""
    first, length = points[0].time, points[-1].time - points[0].time

    def cooled(point: Point) -> Point:
        there = start + (end - start) * (point.time - first) / length
        return point._replace(pressure=point.pressure * start / there)

    return tuple(cooled(point) for point in points)


class _Case:
    """One test on its way to a verdict. Rises here are over the described part of the log."""

    def __init__(
        self,
        found: Findings,
        limit: float,
        volume: float | None,
        concern: float,
        isolation: float,
    ) -> None:
        self.found, self.limit, self.volume = found, limit, volume
        self.concern, self.isolation = concern, isolation
        self.duration = found.points[-1].time - found.points[0].time
        ahead = min(LOOK_AHEAD * self.duration, max(DAY, 2.0 * self.duration))
        self.ahead = ahead / found.length
        # The leak of concern as a rise; without a volume, none can be named.
        self.concern_rise = concern * found.length / volume if volume else math.inf
        # What must show in the whole log, as a rise over the described part of it.
        self.visible = STEPS_TO_BE_SEEN * found.step * found.length / self.duration
        self.steepest = max(found.steepest, self.visible)

    def decide(self) -> tuple[str, str]:
        """Verdict code and what decided it."""
        found = self.found
        if self.falls():
            return "undecided", "falling"
        if self.holds():
            return "pass", "flat" if found.rise < STEPS_TO_BE_SEEN * found.step else "slow"
        gas = found.bent and found.material(found.gas)
        leak = found.straight and not found.slackens and found.material(found.slope.low)
        if self.duration < SETTLED_AFTER and (gas or leak):
            return "undecided", "unsettled"
        if leak and self.leak_matters():
            if not gas:
                return "leak", "straight"
            few = len(found.fits.data.x) < FEWEST_FOR_BOTH
            if few or found.left > HIDDEN_SHARE * found.slope.low:
                return "undecided", "bending"
            return ("leak-and-moisture", "bend and climb") if self.gas_matters() else (
                "leak", "climb after gas"
            )  # fmt: skip
        if gas:
            return self.gas_alone()
        if found.rise < STEPS_TO_BE_SEEN * found.step:
            if found.end > self.limit:
                return "undecided", "not deep enough"
            return "undecided", "short" if self.short() else "near limit"
        return "undecided", "shape"

    def gas_alone(self) -> tuple[str, str]:
        """Verdict where gas is seen and no leak that matters is proven."""
        found = self.found
        hidden = max(HIDDEN_SHARE * found.rise, self.visible)
        most = min(found.slope.high, found.steepest)
        if found.left > LEVELLED * found.gas or most > hidden:
            return "undecided", "bending"
        if found.plateau and found.plateau.low > self.limit:
            return "moisture", "plateau"
        return "undecided", "near limit"

    def short(self) -> bool:
        """Say whether more time would let a flat log pass."""
        at_least = HOLD_AT_LEAST if self.volume else USUAL_HOLD
        return self.duration < at_least or self.steepest > self.concern_rise

    def leak_matters(self) -> bool:
        """Say whether a proven leak is of concern, by its size or by where it leads."""
        low = self.found.slope.low
        return low >= self.concern_rise or self.found.end + low * self.ahead > self.limit

    def gas_matters(self) -> bool:
        """Say whether gas alone would break the limit, or takes a good part of it."""
        return self.found.first + self.found.gas > self.limit or self.found.gas > 0.1 * self.limit

    def falls(self) -> bool:
        """Say whether the pressure was still falling in the second half."""
        found = self.found
        late = stretch(found.fits, found.noise, start=0.5) or stretch(
            found.fits, found.noise, start=0.0
        )
        if late is None:
            return False
        return -0.5 * late.slope > max(STEPS_TO_BE_SEEN * found.step, 0.02 * found.end)

    def holds(self) -> bool:
        """Say whether nothing the readings allow breaks the limit or hides a leak of concern."""
        found = self.found
        top = found.end + 2.0 * math.sqrt(found.noise.moving / found.noise.independent)
        return (
            not self.short()
            and top + found.steepest * self.ahead <= self.limit
            and self.steepest <= self.concern_rise
        )

    def judgment(self, first_pressure: float) -> Judgment:
        """Put the answers together."""
        found = self.found
        code, reason = self.decide()
        hold = self.hold()
        fits = [fit for fit in (*found.fits.both, *found.fits.gas) if fit.slope >= 0.0]
        x = max(self.isolation + hold, found.points[-1].time) - found.start
        return Judgment(
            code=code,
            reason=reason,
            found=found,
            isolation=self.isolation,
            start=found.points[0].time,
            end=found.points[-1].time,
            first_pressure=first_pressure,
            final_pressure=found.points[-1].pressure,
            slope=Interval(*(each / found.length for each in found.slope)),
            steepest=found.steepest / found.length,
            unseen=self.unseen(code),
            look_ahead=self.ahead * found.length,
            plateau=found.plateau,
            time_constant=found.best.tau * found.length if found.best.gas else None,
            hold=hold,
            projected=level_interval(
                (*fits, found.fits.line), found.noise, x=x / found.length,
                points=len(found.fits.data.x),
            ),
            crossing=self.crossing(),
            needed=self.needed(reason),
            finer=self.finer(reason),
        )  # fmt: skip

    def hold(self) -> float:
        """Hold recommended from the isolation on [s]."""
        if not self.volume:
            return USUAL_HOLD
        step = self.found.points[-1].step
        return max(STEPS_TO_BE_SEEN * step * self.volume / self.concern, USUAL_HOLD)

    def unseen(self, code: str) -> float | None:
        """Largest leak that could be there without this log showing it [Pa m3/s]."""
        if not self.volume:
            return None
        found = self.found
        hidden = self.steepest
        if code in ("leak", "leak-and-moisture"):
            hidden = max(self.visible, found.slope.best - found.slope.low)
        elif code == "moisture":
            hidden = max(self.visible, min(found.slope.high, found.steepest))
        return hidden / found.length * self.volume

    def crossing(self) -> float | None:
        """Time from isolation at which the fit passes the limit [s]."""
        found = self.found
        if found.first > self.limit:
            return None
        for point in found.points:
            if point.time < found.start and point.pressure > self.limit:
                return point.time - self.isolation
        fit, low, high = found.best, 0.0, 1.0
        while fit.at(high) <= self.limit:
            low, high = high, 2.0 * high
            if high > 1000.0:
                return None
        if fit.at(low) > self.limit:
            return found.start - self.isolation
        for _ in range(50):
            middle = 0.5 * (low + high)
            low, high = (low, middle) if fit.at(middle) > self.limit else (middle, high)
        return high * found.length + found.start - self.isolation

    def needed(self, reason: str) -> float | None:
        """Hold from the isolation on that would decide [s]."""
        found = self.found
        if reason == "unsettled":
            return USUAL_HOLD
        if reason == "short":
            by_size = self.steepest / self.concern_rise if self.volume else 0.0
            return max(self.hold(), by_size * self.duration)
        if reason == "shape":
            seen = max(found.fits.slow - found.fits.best_both().misfit, 1e-9 * found.proof())
            growth = min(max(math.sqrt(found.proof() / seen), 1.5), 4.0)
            return max(growth * self.duration, USUAL_HOLD)
        if reason == "bending":
            # Three time constants show a plateau, five part a leak from the tail of gas.
            constants = 5.0 if found.slope.low > 0.0 else 3.0
            bend = constants * found.best.tau * found.length if found.best.gas else 0.0
            return max(1.5 * self.duration, min(bend, 10.0 * self.duration))
        return None

    def finer(self, reason: str) -> float | None:
        """Gauge step that would have decided in the time there was [Pa]."""
        if reason != "short" or not self.volume or self.duration < HOLD_AT_LEAST:
            return None
        finer = self.concern * self.duration / self.volume / STEPS_TO_BE_SEEN
        return finer if finer < self.found.step else None
