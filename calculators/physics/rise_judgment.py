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
from calculators.physics.rise_bounds import (
    NORMAL_95,
    NORMAL_PASS,
    Interval,
    level_interval,
    slope_interval,
    steepest_leak,
    stretch,
    time_constants,
)
from calculators.physics.rise_fit import SLOWEST_GAS, Fit, Fits, fit_rise, spread_out
from calculators.physics.rise_noise import Noise, noise
from calculators.physics.rise_record import Point, isolation_time, record

HOLD_AT_LEAST = 300.0  # s; common practice: a cylinder is held 5 to 10 min
USUAL_HOLD = 600.0  # s; common practice: a residential system is held about 10 min
LOOK_AHEAD = 10.0  # lengths of the log over which a pass must stay below the limit
DAY = 86400.0  # s
MATERIAL_SHARE = 0.05  # of the rise: a leak or gas part below it is not called one
HIDDEN_SHARE = 0.10  # of the rise: a leak that gas may hide without spoiling the verdict


@dataclass(frozen=True, kw_only=True)
class Judgment:
    """Verdict on a decay test, and the numbers behind it, in SI.

    ``reason`` names what decided (or what kept it undecided). Slopes are in
    [Pa/s], times in [s] on the log's own clock, ``hold`` is the hold
    recommended from the isolation on, ``needed`` the hold that would decide
    and ``finer`` the gauge step that would, where these exist.
    """

    code: str
    reason: str
    isolation: float
    start: float
    end: float
    points: tuple[Point, ...]
    fits: Fits
    noise: Noise
    first_pressure: float
    final_pressure: float
    slope: Interval
    steepest: float
    steepest_seen: float
    unseen: float | None
    look_ahead: float
    plateau: Interval | None
    time_constant: float | None
    hold: float
    projected: Interval
    crossing: float | None
    best: Fit
    needed: float | None = None
    finer: float | None = None
    set_aside: float = 0.0

    @property
    def duration(self) -> float:
        """Length of the judged part of the log [s]."""
        return self.end - self.start

    @property
    def slowest_gas(self) -> float:
        """Time constant beyond which gas looks like a leak to this test [s]."""
        return SLOWEST_GAS * self.duration


def judge_rise(
    *,
    time: Sequence[float],
    pressure: Sequence[float],
    resolution: float,
    limit: float,
    volume: float | None,
    leak_of_concern: float,
    isolation: float | None = None,
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
        raise OutOfRange("At least two readings after the isolation are needed.")
    if first > 0:
        points = record(time=time[first:], pressure=pressure[first:], resolution=resolution)
    return _Case(points, limit, volume, leak_of_concern, isolation).judgment()


class _Case:
    """One test on its way to a verdict."""

    def __init__(
        self,
        points: tuple[Point, ...],
        limit: float,
        volume: float | None,
        concern: float,
        isolation: float,
    ) -> None:
        self.points, self.limit, self.volume = points, limit, volume
        self.concern, self.isolation = concern, isolation
        fits = fit_rise(points)
        self.noise = noise(fits)
        room = self.noise.quantile(NORMAL_95) ** 2 * self.noise.variance
        self.fits = spread_out(fits, room=room)
        self.length = self.fits.data.length
        self.step = max(point.step for point in points)
        self.best = self.fits.best_both()
        self.end = self.best.at(1.0)
        self.rise = self.end - self.best.at(0.0)
        proof = self.noise.quantile(NORMAL_PASS) ** 2 * self.noise.variance
        self.straight = self.fits.slow - self.best.misfit > proof
        self.bent = self.fits.line.misfit - self.best.misfit > proof
        self.slope = slope_interval(
            self.fits, self.noise, slowest=SLOWEST_GAS if self.straight else math.inf
        )
        self.gas = self.fits.best_gas() if self.fits.gas else None
        self.steepest = max(
            steepest_leak(self.fits, self.noise, temperature_known=False),
            STEPS_TO_BE_SEEN * self.step,
        )
        self.ahead = min(LOOK_AHEAD, max(DAY / self.length, 2.0))
        # The leak of concern as a rise over the log; without a volume, none can be named.
        self.concern_rise = concern * self.length / volume if volume else math.inf

    def leak_seen(self) -> bool:
        """Say whether a straight part is proven and large enough to be one."""
        least = max(STEPS_TO_BE_SEEN * self.step, MATERIAL_SHARE * self.rise)
        return self.straight and self.slope.low >= least and not self.slackens()

    def leak_matters(self) -> bool:
        """Say whether a proven leak is of concern, by its size or by where it leads."""
        by_size = self.slope.low >= self.concern_rise
        return by_size or self.end + self.slope.low * self.ahead > self.limit

    def slackens(self) -> bool:
        """Say whether the last third, gas taken off, rises less than the middle third."""
        gas = self.best if self.best.gas else None
        middle = stretch(self.fits, self.noise, start=1 / 3, end=2 / 3, less=gas)
        last = stretch(self.fits, self.noise, start=2 / 3, less=gas)
        if middle is None or last is None:
            return False
        unsure = math.hypot(middle.uncertainty, last.uncertainty)
        return middle.slope - last.slope > 2.5 * unsure

    def gas_part(self) -> float:
        """Rise by gas over the log, beside the leak if one is seen [Pa]."""
        fit = self.best if self.leak_seen() else self.gas
        return fit.gas * (fit.share(1.0) - fit.share(0.0)) if fit else 0.0

    def gas_seen(self) -> bool:
        """Say whether a bend is proven and large enough to be gas."""
        least = max(STEPS_TO_BE_SEEN * self.step, MATERIAL_SHARE * self.rise)
        return self.bent and self.gas_part() >= least

    def falls(self) -> bool:
        """Say whether the pressure was still falling in the second half."""
        late = stretch(self.fits, self.noise, start=0.5) or stretch(
            self.fits, self.noise, start=0.0
        )
        if late is None:
            return False
        fall = -late.slope * 0.5
        return fall > max(STEPS_TO_BE_SEEN * self.step, 0.02 * self.end)

    def holds(self) -> bool:
        """Say whether nothing the readings allow breaks the limit or the leak of concern."""
        long_enough = self.length >= (HOLD_AT_LEAST if self.volume else USUAL_HOLD)
        top = self.end + self.noise.quantile(2.0) * math.sqrt(
            self.noise.variance / max(self.noise.independent, 1.0)
        )
        climb = max(self.steepest - STEPS_TO_BE_SEEN * self.step, self.worst_rise()) * self.ahead
        return (
            long_enough
            and top + climb <= self.limit
            and self.steepest <= self.concern_rise
        )

    def worst_rise(self) -> float:
        """Steepest leak without the allowance of whole steps [Pa per log length]."""
        return steepest_leak(self.fits, self.noise, temperature_known=False)

    def judgment(self) -> Judgment:
        """Put the answers together."""
        code, reason = self.decide()
        return Judgment(
            code=code,
            reason=reason,
            isolation=self.isolation,
            start=self.points[0].time,
            end=self.points[-1].time,
            points=self.points,
            fits=self.fits,
            noise=self.noise,
            first_pressure=self.points[0].pressure,
            final_pressure=self.points[-1].pressure,
            slope=Interval(*(each / self.length for each in self.slope)),
            steepest=self.steepest / self.length,
            steepest_seen=self.worst_rise() / self.length,
            unseen=self.unseen(code),
            look_ahead=self.ahead * self.length,
            plateau=self.plateau(),
            time_constant=self.gas.tau * self.length if self.gas and self.bent else None,
            hold=self.hold(),
            projected=self.projected(),
            crossing=self.crossing(),
            needed=self.needed(reason),
            finer=self.finer(reason),
            best=self.likely(),
        )

    def decide(self) -> tuple[str, str]:
        """Verdict code and what decided it."""
        if self.falls():
            return "undecided", "falling"
        if self.holds():
            return "pass", "flat" if self.rise < STEPS_TO_BE_SEEN * self.step else "slow"
        leak = self.leak_seen()
        gas = self.gas_seen()
        if leak and self.leak_matters():
            if not gas:
                return "leak", "straight"
            if self.best.tau <= 0.25 and self.gas_matters():
                return "leak-and-moisture", "bend and climb"
            if not self.gas_matters():
                return "leak", "climb after gas"
            return "undecided", "bending"
        if gas and self.gas:
            shortest, longest = time_constants(self.fits.gas, self.noise)
            hidden = max(HIDDEN_SHARE * self.rise, STEPS_TO_BE_SEEN * self.step)
            if longest > 1.0 or self.slope.high > max(hidden, min(self.concern_rise, self.rise)):
                return "undecided", "bending"
            plateau = self.plateau()
            if plateau and plateau.low > self.limit:
                return "moisture", "plateau"
            return "undecided", "near limit"
        if self.rise < STEPS_TO_BE_SEEN * self.step:
            if self.end > self.limit:
                return "undecided", "not deep enough"
            return "undecided", "short"
        return "undecided", "shape"

    def unseen(self, code: str) -> float | None:
        """Largest leak that could be there without this log showing it [Pa m3/s]."""
        if not self.volume:
            return None
        hidden = STEPS_TO_BE_SEEN * self.step
        if code in ("leak", "leak-and-moisture"):
            hidden = max(hidden, self.slope.best - self.slope.low)
        elif code == "moisture":
            hidden = max(hidden, self.slope.high)
        else:
            hidden = self.steepest
        return hidden / self.length * self.volume

    def likely(self) -> Fit:
        """Fit that goes with the verdict: the plainest that the readings do not rule out."""
        if not self.bent:
            return self.fits.line
        if self.gas and not self.leak_seen():
            return self.gas
        return self.best

    def crossing(self) -> float | None:
        """Time from isolation at which the likely fit passes the limit [s]."""
        fit, x = self.likely(), 1.0
        if fit.at(0.0) > self.limit:
            return None
        while fit.at(x) <= self.limit:
            x *= 2.0
            if x > 1000.0:
                return None
        low, high = 0.0, x
        for _ in range(50):
            middle = 0.5 * (low + high)
            low, high = (low, middle) if fit.at(middle) > self.limit else (middle, high)
        return high * self.length + self.points[0].time - self.isolation

    def needed(self, reason: str) -> float | None:
        """Hold from the isolation on that would decide [s]."""
        if reason == "short":
            by_size = self.steepest / self.concern_rise if self.volume else 0.0
            return max(self.hold(), by_size * self.length)
        if reason == "shape":
            proof = self.noise.quantile(NORMAL_PASS) ** 2 * self.noise.variance
            seen = max(self.fits.slow - self.best.misfit, 1e-9 * proof)
            growth = min(max(math.sqrt(proof / seen), 1.5), 4.0)
            return max(growth * self.length, USUAL_HOLD)
        if reason == "bending":
            tau = self.gas.tau if self.gas else 1.0
            # Five time constants part a leak from the tail of gas, three show a plateau.
            return max(1.5, min(5.0 * tau if self.leak_seen() else 3.0 * tau, 10.0)) * self.length
        return None

    def finer(self, reason: str) -> float | None:
        """Gauge step that would have decided in the time there was [Pa]."""
        if reason != "short" or not self.volume or self.length < HOLD_AT_LEAST:
            return None
        finer = self.concern_rise / STEPS_TO_BE_SEEN
        return finer if finer < self.step else None

    def gas_matters(self) -> bool:
        """Say whether gas alone would break the limit, or takes a good part of it."""
        base = self.best.at(0.0) + self.best.gas
        return base > self.limit or self.best.gas > 0.1 * self.limit

    def plateau(self) -> Interval | None:
        """Pressure at which gas alone would level off."""
        if not (self.gas and self.bent):
            return None
        return level_interval(
            self.fits.gas, self.noise, x=math.inf, points=len(self.fits.data.x)
        )

    def hold(self) -> float:
        """Hold recommended from the isolation on [s]."""
        if not self.volume:
            return USUAL_HOLD
        step = self.points[-1].step
        return max(STEPS_TO_BE_SEEN * step * self.volume / self.concern, USUAL_HOLD)

    def projected(self) -> Interval:
        """Pressure at the end of the recommended hold, or of the log if that is later."""
        x = max((self.hold() - self.points[0].time + self.isolation) / self.length, 1.0)
        allowed = [fit for fit in self.fits.both if fit.slope >= 0.0]
        return level_interval(
            (*allowed, self.fits.line, *self.fits.gas),
            self.noise,
            x=x,
            points=len(self.fits.data.x),
        )
