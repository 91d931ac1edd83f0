"""A decay log made ready for judgment: a few hundred points, each with its gauge step.

Cost grows with the number of readings only here, in sums over slices.
"""

import math
from bisect import bisect_left
from collections import Counter
from collections.abc import Sequence
from itertools import accumulate, pairwise
from typing import NamedTuple

from calculators.physics.water import saturation_pressure

MOST_POINTS = 200  # points kept; more readings are averaged in blocks of equal time
LARGEST_STEP = 0.05  # of the reading; no gauge is believed to be coarser than this
NEAR_SATURATION = 0.15  # of the vapor pressure of water: then water is taken to be there
_MANY = 20  # readings from which round numbers are taken for the gauge's own
_VISITS = 2.0  # readings per different value from which the gauge is seen to stand on steps
_DISTINCT = 4000  # readings that differ; above this the gauge shows no steps of its own


class Point(NamedTuple):
    """Mean of ``size`` readings: time [s], pressure [Pa], gauge step there [Pa]."""

    time: float
    pressure: float
    step: float
    size: int


class Seen(NamedTuple):
    """The different readings of a log in rising order [Pa], and how many readings lie below each.

    ``below`` has one number more: that of all readings.
    """

    values: tuple[float, ...]
    below: tuple[int, ...]


def seen(pressure: Sequence[float]) -> Seen:
    """Count the different readings of a log.

    Parameters
    ----------
    pressure : sequence of float
        Absolute pressures [Pa], series.

    Returns
    -------
    Seen
        Empty where there are so many that the gauge shows no steps of its own.

    References
    ----------
    Derived here.
    """
    counts = Counter(pressure)
    if len(counts) > _DISTINCT:
        return Seen((), (0,))
    values = tuple(sorted(counts))
    return Seen(values, tuple(accumulate((counts[value] for value in values), initial=0)))


def gauge_step(*, log: Seen, pressure: float, resolution: float) -> float:
    """Step in which a gauge counts near a reading, as the readings themselves show it.

    Parameters
    ----------
    log : Seen
        The different readings of the log.
    pressure : float
        Where the step is asked for [Pa], scalar.
    resolution : float
        Step given for the gauge [Pa], scalar.

    Returns
    -------
    float
        The larger of the given step and the one seen [Pa], scalar.

    Notes
    -----
    Gauges count in larger steps at higher readings. A step counts as seen
    when readings near ``pressure`` come back to the same values again and
    again, and the gaps between these are all multiples of the smallest, of
    which there are at least three, or the values all multiples of it. A
    steady climb through round numbers proves nothing.

    References
    ----------
    Derived here: the greatest common divisor of the gaps, with tolerance.
    """
    first = bisect_left(log.values, pressure / 1.5)
    last = bisect_left(log.values, pressure * 1.5)
    near = log.values[first:last]
    if len(near) < 2 or log.below[last] - log.below[first] < _VISITS * len(near):
        return resolution
    gaps = [above - below for below, above in pairwise(near)]
    largest = LARGEST_STEP * pressure
    if len(gaps) >= 4 and resolution * 1.01 < min(gaps) <= largest:
        ratios = [gap / min(gaps) for gap in gaps]
        whole = all(abs(ratio - round(ratio)) < 0.05 for ratio in ratios)
        if whole and sum(ratio < 1.05 for ratio in ratios) >= 3:
            return min(gaps)
    if log.below[-1] >= _MANY:
        for multiple in (100, 50, 20, 10):
            step = multiple * resolution
            if step <= largest and all(abs(v / step - round(v / step)) < 1e-3 for v in near):
                return step
    return resolution


def record(
    *, time: Sequence[float], pressure: Sequence[float], resolution: float
) -> tuple[Point, ...]:
    """Average a log in blocks of equal time and give each its gauge step.

    Parameters
    ----------
    time : sequence of float
        Times in rising order [s], series.
    pressure : sequence of float
        Absolute pressures [Pa], series.
    resolution : float
        Step of the gauge [Pa], scalar.

    Returns
    -------
    tuple of Point
        At most 200 points; the readings themselves where they are fewer.

    References
    ----------
    Derived here; means of blocks keep every straight line and lose of a curve
    only what bends within a block.
    """
    different = seen(pressure)
    count = len(time)
    if count <= MOST_POINTS * 3 // 2:
        edges: Sequence[int] = range(count + 1)
    else:
        width = (time[-1] - time[0]) / MOST_POINTS
        cuts = [bisect_left(time, time[0] + width * block) for block in range(1, MOST_POINTS)]
        edges = sorted({0, *cuts, count})
    points = []
    step_at: dict[int, float] = {}
    for first, last in pairwise(edges):
        size = last - first
        mean = sum(pressure[first:last]) / size
        band = round(10.0 * math.log(mean))
        if band not in step_at:
            step_at[band] = gauge_step(log=different, pressure=mean, resolution=resolution)
        points.append(Point(sum(time[first:last]) / size, mean, step_at[band], size))
    return tuple(points)


def isolation_time(points: Sequence[Point]) -> float:
    """Propose the moment of isolation: where a fall at the start ends.

    Parameters
    ----------
    points : sequence of Point
        The log, from :func:`record`.

    Returns
    -------
    float
        Time of the lowest point if the pressure fell to it by more than five
        steps and 3 % and did not stay there, else the first time [s], scalar.

    References
    ----------
    Derived here: a closed system at steady temperature does not lose pressure.
    """
    lowest = min(range(len(points)), key=lambda index: (points[index].pressure, index))
    highest = max(points[: lowest + 1], key=lambda point: point.pressure)
    fall = highest.pressure - points[lowest].pressure
    if fall <= 5.0 * points[lowest].step or fall <= 0.03 * highest.pressure:
        return points[0].time
    # Noise about a flat stretch must not carry the moment to its far end.
    floor = points[lowest].pressure + max(2.0 * points[lowest].step, 0.02 * points[lowest].pressure)
    start = points.index(highest)
    return next(point.time for point in points[start:] if point.pressure <= floor)


def at_one_temperature(
    points: Sequence[Point], *, start: float, end: float, water: float | None = None
) -> tuple[Point, ...]:
    """Bring readings to the temperature of the start, as if it changed evenly.

    Parameters
    ----------
    points : sequence of Point
        The log since isolation.
    start, end : float
        Temperatures at the first and the last point [K], scalar.
    water : float, optional
        Temperature at the start of water that the readings have come into
        balance with [K], scalar; it is taken to change as the rest does.

    Returns
    -------
    tuple of Point
        The log as it would have been at the first temperature.

    Raises
    ------
    OutOfRange
        If a temperature is outside the range of the vapor pressure of water.

    Notes
    -----
    Trapped gas goes as the temperature, 0.34 % per kelvin. Over water the
    readings follow its curve, about 6 % per kelvin, in the measure in which
    they have come near it.

    References
    ----------
    Ideal gas law; [IAPWS-R14-08] and [IAPWS-SR1-86] for the curve.
    """
    first, length = points[0].time, points[-1].time - points[0].time

    def steady(point: Point) -> Point:
        change = (end - start) * (point.time - first) / length
        factor = start / (start + change)
        if water is not None:
            full = saturation_pressure(temperature=water + change)
            share = min(point.pressure / full, 1.0)
            vapor = saturation_pressure(temperature=water) / full
            factor = factor ** (1.0 - share) * vapor**share
        return point._replace(pressure=point.pressure * factor)

    return tuple(map(steady, points))


def in_balance_with_water(pressure: float, *, temperature: float) -> bool:
    """Say whether a pressure is that of water at this temperature.

    Parameters
    ----------
    pressure : float
        Where the readings have come to [Pa], scalar.
    temperature : float
        Temperature of the water [K], scalar.

    Returns
    -------
    bool
        True within 15 % of the vapor pressure.

    Raises
    ------
    OutOfRange
        If the temperature is outside the range of the vapor pressure of water.

    References
    ----------
    [IAPWS-R14-08] and [IAPWS-SR1-86].
    """
    full = saturation_pressure(temperature=temperature)
    return abs(pressure / full - 1.0) < NEAR_SATURATION
