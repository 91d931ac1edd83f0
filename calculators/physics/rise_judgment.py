"""A verdict on a decay test, with everything behind it."""

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass

from calculators.errors import OutOfRange
from calculators.physics.rise_bounds import Interval
from calculators.physics.rise_findings import Findings, find
from calculators.physics.rise_forecast import (
    crossing_time,
    finer_step,
    needed_hold,
    projection,
    recommended_hold,
    unseen_leak,
)
from calculators.physics.rise_record import (
    Point,
    at_one_temperature,
    in_balance_with_water,
    isolation_time,
    record,
)
from calculators.physics.rise_shapes import SLOWEST_GAS
from calculators.physics.rise_verdict import CLEAR, Case


@dataclass(frozen=True, kw_only=True)
class Judgment:
    """Verdict on a decay test, and the numbers behind it, in SI.

    ``reason`` names what decided, or what kept it undecided; ``sure`` says
    whether every condition was met twice over. ``slope`` is the leak part
    [Pa/s]; ``hold``, ``crossing`` and ``needed`` are times from the isolation
    [s]; ``unseen`` is the largest leak that could be there without the log
    showing it [Pa m3/s], ``finer`` the gauge step that would have decided
    [Pa]. ``isolation`` and ``first_time`` are on the log's clock [s].
    """

    code: str
    reason: str
    sure: bool
    case: Case
    isolation: float
    first_time: float
    first_pressure: float
    final_pressure: float
    slope: Interval
    unseen: float | None
    hold: float
    projected: Interval
    crossing: float | None
    needed: float | None
    finer: float | None

    @property
    def found(self) -> Findings:
        """What the log shows."""
        return self.case.found

    @property
    def limit(self) -> float:
        """Pressure that must not be passed [Pa]."""
        return self.case.limit

    @property
    def start(self) -> float:
        """First time since the isolation, on the log's clock [s]."""
        return self.found.points[0].time

    @property
    def end(self) -> float:
        """Last time, on the log's clock [s]."""
        return self.found.points[-1].time

    @property
    def isolation_proposed(self) -> bool:
        """Whether readings before the isolation were left out."""
        return self.isolation > self.first_time

    @property
    def steepest(self) -> float:
        """Steepest leak that the readings leave room for [Pa/s]."""
        return self.found.steepest / self.found.length

    @property
    def look_ahead(self) -> float:
        """Time over which a pass must stay below the limit [s]."""
        return self.case.ahead * self.found.length

    @property
    def plateau(self) -> Interval | None:
        """Pressure at which gas alone levels off [Pa]."""
        return self.found.plateau

    @property
    def time_constant(self) -> float | None:
        """Time in which gas slows down by two thirds [s]."""
        best = self.found.best
        return best.tau * self.found.length if best.gas else None

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
    coldest: float | None = None,
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
    coldest : float, optional
        Temperature of the coldest part at the isolation [K], scalar, where
        water would lie; that of the system where not given.

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
    if start_temperature is None or end_temperature is None:
        found = find(points, temperature_known=False)
    else:
        found = _steady(points, start_temperature, end_temperature, coldest)
    case = Case(found, limit, volume, leak_of_concern, isolation)
    code, reason = case.decide()
    hold = recommended_hold(case)
    return Judgment(
        code=code,
        reason=reason,
        sure=case.margin(code) >= CLEAR,
        case=case,
        isolation=isolation,
        first_time=time[0],
        first_pressure=pressure[first],
        final_pressure=pressure[-1],
        slope=Interval(*(each / found.length for each in found.slope)),
        unseen=unseen_leak(case, code=code),
        hold=hold,
        projected=projection(case, time=max(isolation + hold, found.points[-1].time)),
        crossing=crossing_time(case),
        needed=needed_hold(case, reason=reason),
        finer=finer_step(case, reason=reason),
    )


def _steady(points: tuple[Point, ...], start: float, end: float, coldest: float | None) -> Findings:
    """Find what a log shows at one temperature, by the law of gas or of water it has come to."""
    gas = find(at_one_temperature(points, start=start, end=end), temperature_known=True)
    water = start if coldest is None else coldest
    last = points[-1].pressure
    if not (gas.bent and in_balance_with_water(last, temperature=water + end - start)):
        return gas
    at_rest = at_one_temperature(points, start=start, end=end, water=water)
    return find(at_rest, temperature_known=True)
