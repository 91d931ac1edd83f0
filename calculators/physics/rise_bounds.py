"""What a log leaves room for: intervals over all shapes and time constants, and bounds.

An interval takes in every fit that the scatter allows, so that a time constant
nobody knows widens it as it should (profile likelihood).
"""

import math
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from calculators.physics.rise_noise import Noise
from calculators.physics.rise_shapes import Fit, Fits

NORMAL_95 = 1.96  # two-sided 95 %
NORMAL_PASS = 3.3  # one-sided, one in two thousand: what a pass must survive
LATE = (1.0 / 3.0, 1.0 / 2.0, 2.0 / 3.0)  # where the late stretches start, in log lengths
UNRECORDED, RECORDED = 2.0, 0.5  # K: change of temperature that may hide a leak
ROOM = 293.0  # K; trapped gas goes as the temperature
GAUGE_SCALE = 0.1  # by which a gauge may show too small a rise; what a pass must survive


class Interval(NamedTuple):
    """Lowest, best and highest value."""

    low: float
    best: float
    high: float


def slope_interval(
    fits: Fits, noise: Noise, *, slowest: float = math.inf, normal: float = NORMAL_95
) -> Interval:
    """Leak part of the rise, whatever gas may accompany it.

    Parameters
    ----------
    fits : Fits
        Every shape, fitted.
    noise : Noise
        Scatter of the log.
    slowest : float, optional
        Longest time constant [log lengths] that gas may have in the leak's place.
    normal : float, optional
        Normal quantile of the interval, scalar.

    Returns
    -------
    Interval
        Rise per length of the log [Pa], none below zero.

    References
    ----------
    Profile likelihood, [PAWITAN-2001] chapter 3, from memory.
    """
    best = fits.best_both()
    ceiling = best.misfit + noise.quantile(normal) ** 2 * noise.variance
    low, high = math.inf, 0.0
    for fit in (*fits.both, fits.line):
        room = ceiling - fit.misfit
        if room >= 0.0:
            half = math.sqrt(room * fit.spread[0])
            if fit.slope + half < 0.0:
                continue
            if fit.tau <= slowest:
                low = min(low, max(fit.slope - half, 0.0))
            # A steeper leak leaves less gas; where that would be less than none, the
            # steepest is the line's own.
            if fit.gas + half * fit.spread[1] / fit.spread[0] >= 0.0:
                high = max(high, fit.slope + half)
    if any(fit.misfit <= ceiling and fit.tau <= slowest for fit in fits.gas):
        low = 0.0
    slope = max(best.slope, 0.0)
    return Interval(min(low, slope), slope, max(high, slope))


def level_interval(
    fits: Iterable[Fit], noise: Noise, *, x: float, points: int, normal: float = NORMAL_95
) -> Interval:
    """Pressure at a time, or the plateau, over all fits of one kind.

    Parameters
    ----------
    fits : iterable of Fit
        Fits to take in, such as ``Fits.gas``.
    noise : Noise
        Scatter of the log.
    x : float
        Time in lengths of the log; ``math.inf`` for the plateau.
    points : int
        Points that were fitted.
    normal : float, optional
        Normal quantile of the interval, scalar.

    Returns
    -------
    Interval
        Pressure [Pa].

    References
    ----------
    As for :func:`slope_interval`.
    """
    allowed = list(fits)
    best = min(allowed, key=lambda fit: fit.misfit)
    ceiling = best.misfit + noise.quantile(normal) ** 2 * noise.variance
    low = high = best.at(x)
    for fit in allowed:
        room = ceiling - fit.misfit
        if room < 0.0:
            continue
        run = 0.0 if fit.spread[0] == 0.0 else x - fit.center
        bend = fit.share(x) - fit.middle if fit.tau else 0.0
        line, mixed, gas = fit.spread
        variance = 1.0 / points + line * run * run + 2.0 * mixed * run * bend + gas * bend * bend
        half = math.sqrt(room * max(variance, 0.0))
        value, reach = fit.at(x), math.sqrt(room / variance)
        shift = reach * (line * run + mixed * bend), reach * (mixed * run + gas * bend)
        for sign in (-1.0, 1.0):
            if fit.slope + sign * shift[0] >= 0.0 and fit.gas + sign * shift[1] >= 0.0:
                low, high = min(low, value + sign * half), max(high, value + sign * half)
    return Interval(low, best.at(x), high)


def time_constants(fits: Sequence[Fit], noise: Noise) -> tuple[float, float]:
    """Shortest and longest time constant that the scatter allows, in log lengths.

    Parameters
    ----------
    fits : sequence of Fit
        Fits of one kind, over shapes and time constants.
    noise : Noise
        Scatter of the log.

    Returns
    -------
    tuple of float
        The two ends [1].

    References
    ----------
    As for :func:`slope_interval`.
    """
    ceiling = min(fit.misfit for fit in fits) + noise.quantile(NORMAL_95) ** 2 * noise.variance
    allowed = [fit.tau for fit in fits if fit.misfit <= ceiling]
    return min(allowed), max(allowed)


class Stretch(NamedTuple):
    """A straight line through part of a log: rise per log length [Pa] and its uncertainty."""

    slope: float
    uncertainty: float


def stretch(
    fits: Fits, noise: Noise, *, start: float, end: float = 1.0, less: Fit | None = None
) -> Stretch | None:
    """Fit a straight line to the readings from ``start`` to ``end``.

    Parameters
    ----------
    fits : Fits
        The fitted log.
    noise : Noise
        Its scatter.
    start, end : float
        Ends of the stretch, in lengths of the log [1], scalar.
    less : Fit, optional
        A fit whose gas is taken off the readings first.

    Returns
    -------
    Stretch or None
        Slope [Pa per log length] and its standard uncertainty, or None where
        fewer than two readings lie in the stretch.

    References
    ----------
    Weighted least squares; steps of the gauge as in :func:`rise_noise.noise`.
    """
    data = fits.data
    inside = [
        (x, pressure - less.gas * less.share(x) if less else pressure, weight)
        for x, pressure, weight in zip(data.x, data.pressure, data.weight, strict=True)
        if start <= x <= end
    ]
    if len(inside) < 2:
        return None
    total = math.fsum(w for _, _, w in inside)
    middle = math.fsum(w * x for x, _, w in inside) / total
    square = math.fsum(w * (x - middle) ** 2 for x, _, w in inside)
    length = inside[-1][0] - inside[0][0]
    if square <= 0.0 or length <= 0.0:
        return None
    slope = math.fsum(w * (x - middle) * p for x, p, w in inside) / square
    level = math.fsum(w * p for _, p, w in inside) / total
    left = math.fsum(w * (p - level - slope * (x - middle)) ** 2 for x, p, w in inside)
    moving = min(noise.moving, noise.about(left, len(inside) - 2))
    crossed = slope * length / data.step
    still = 0.45 * data.step / length / math.sqrt(1.0 + crossed**2)
    return Stretch(slope, math.sqrt(moving / square + still**2))


def steepest_leak(
    fits: Fits,
    noise: Noise,
    *,
    temperature_known: bool,
    before: float = 0.0,
    normal: float = NORMAL_PASS,
) -> float:
    """Steepest leak that the log leaves room for, with no shape supposed.

    Parameters
    ----------
    fits : Fits
        The fitted log.
    noise : Noise
        Its scatter.
    temperature_known : bool
        Whether the readings were corrected for temperature; if not, two
        kelvin of drift are allowed for.
    before : float, optional
        Share of the whole log that lies before the fitted part [1], scalar.
    normal : float, optional
        Normal quantile, one-sided, scalar.

    Returns
    -------
    float
        Rise per length of the log [Pa], scalar.

    Notes
    -----
    Gas from inside can only add to a leak, so no leak is steeper than the
    log is on any long stretch. Late stretches are taken, where gas has died
    down and lag and equalization are over.

    References
    ----------
    Derived here.
    """
    starts = sorted({max((late - before) / (1.0 - before), 0.0) for late in LATE})
    found = [stretch(fits, noise, start=start) for start in starts]
    found = [each for each in found if each] or [stretch(fits, noise, start=0.0)]
    reach = noise.quantile(normal)
    bounds = [each.slope + reach * each.uncertainty for each in found if each]
    change = RECORDED if temperature_known else UNRECORDED
    drift = change / ROOM * fits.data.pressure[-1]
    return (1.0 + GAUGE_SCALE) * max(min(bounds), 0.0) + drift
