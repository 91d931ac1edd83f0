"""What follows from a case: how long to hold, where it leads, what would decide."""

import math

from calculators.physics.leak_rate import STEPS_TO_BE_SEEN
from calculators.physics.rise_bounds import Interval, level_interval
from calculators.physics.rise_verdict import HOLD_AT_LEAST, USUAL_HOLD, Case

_FARTHEST = 1000.0  # lengths of the log; what lies beyond is called never


def recommended_hold(case: Case) -> float:
    """Hold that shows the leak of concern, and no less than is usual.

    Parameters
    ----------
    case : Case
        The test.

    Returns
    -------
    float
        Time from the isolation on [s], scalar.

    References
    ----------
    :func:`pressure_rise.hold_time`; ten minutes are common practice.
    """
    if not case.volume:
        return USUAL_HOLD
    step = case.found.points[-1].step
    return max(STEPS_TO_BE_SEEN * step * case.volume / case.concern, USUAL_HOLD)


def unseen_leak(case: Case, *, code: str) -> float | None:
    """Largest leak that could be there without the log showing it.

    Parameters
    ----------
    case : Case
        The test.
    code : str
        Its verdict.

    Returns
    -------
    float or None
        Leak rate [Pa m3/s], scalar; None where the volume is unknown.

    Notes
    -----
    Never less than five steps of the gauge make in this volume and time.
    Beside a proven leak it is what the leak's own size is unsure by, beside
    gas that levels off what the gas could hide, else the steepest leak that
    the readings leave room for.

    References
    ----------
    :func:`rise_bounds.steepest_leak`.
    """
    if not case.volume:
        return None
    found, hidden = case.found, case.steepest
    if code in ("leak", "leak-and-moisture"):
        hidden = max(case.visible, found.slope.best - found.slope.low)
    elif code == "moisture":
        hidden = max(case.visible, min(found.slope.high, found.steepest))
    return hidden / found.length * case.volume


def projection(case: Case, *, time: float) -> Interval:
    """Pressure at a time, if everything goes on as it did.

    Parameters
    ----------
    case : Case
        The test.
    time : float
        Time on the log's clock [s], scalar.

    Returns
    -------
    Interval
        Pressure with 95 % [Pa], over every shape the scatter allows.

    References
    ----------
    :func:`rise_bounds.level_interval`.
    """
    found = case.found
    x = (time - found.start) / found.length
    fits = [fit for fit in (*found.fits.both, *found.fits.gas) if fit.slope >= 0.0]
    band = level_interval((*fits, found.fits.line), found.noise, x=x, points=len(found.fits.data.x))
    best = max(found.best.at(x), 0.0)
    return Interval(max(min(band.low, best), 0.0), best, max(band.high, best))


def crossing_time(case: Case) -> float | None:
    """Time at which the fit passes the limit.

    Parameters
    ----------
    case : Case
        The test.

    Returns
    -------
    float or None
        Time from the isolation on [s], scalar; None if it started above the
        limit or never passes it.

    References
    ----------
    Bisection on the fit.
    """
    found = case.found
    if found.first > case.limit:
        return None
    for point in found.points:
        if point.time < found.start and point.pressure > case.limit:
            return point.time - case.isolation
    fit, low, high = found.best, 0.0, 1.0
    while fit.at(high) <= case.limit:
        low, high = high, 2.0 * high
        if high > _FARTHEST:
            return None
    if fit.at(low) > case.limit:
        return found.start - case.isolation
    for _ in range(50):
        middle = 0.5 * (low + high)
        low, high = (low, middle) if fit.at(middle) > case.limit else (middle, high)
    return high * found.length + found.start - case.isolation


def needed_hold(case: Case, *, reason: str) -> float | None:
    """Hold that would decide what this one could not.

    Parameters
    ----------
    case : Case
        The test.
    reason : str
        What kept it undecided.

    Returns
    -------
    float or None
        Time from the isolation on [s], scalar; None where time is not what
        is missing.

    Notes
    -----
    A flat log needs time in proportion to what it leaves room for. To tell a
    line from a bend, the misfit must grow to what proves a shape wrong, and
    it grows at least with the square of the time. A plateau shows after
    three time constants, and five part a leak from the tail of gas.

    References
    ----------
    Derived here.
    """
    found = case.found
    if reason == "unsettled":
        return USUAL_HOLD
    if reason == "short":
        by_size = case.steepest / case.concern_rise if case.volume else 0.0
        return max(recommended_hold(case), by_size * case.duration)
    if reason == "shape":
        seen = max(found.fits.slow - found.fits.best_both().misfit, 1e-9 * found.proof())
        growth = min(max(math.sqrt(found.proof() / seen), 1.5), 4.0)
        return max(growth * case.duration, USUAL_HOLD)
    if reason == "settling":
        return 1.5 * case.duration
    if reason == "bending":
        constants = 5.0 if found.slope.low > 0.0 else 3.0
        bend = constants * found.best.tau * found.length if found.best.gas else 0.0
        return max(1.5 * case.duration, min(bend, 10.0 * case.duration))
    return None


def finer_step(case: Case, *, reason: str) -> float | None:
    """Gauge step that would have decided in the time there was.

    Parameters
    ----------
    case : Case
        The test.
    reason : str
        What kept it undecided.

    Returns
    -------
    float or None
        Step [Pa], scalar; None where a finer gauge would not have helped.

    References
    ----------
    :func:`pressure_rise.hold_time`, solved for the step.
    """
    if reason != "short" or not case.volume or case.duration < HOLD_AT_LEAST:
        return None
    finer = case.concern * case.duration / case.volume / STEPS_TO_BE_SEEN
    return finer if finer < case.found.step else None
