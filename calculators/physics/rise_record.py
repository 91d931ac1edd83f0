"""A decay log made ready for judgment: a few hundred points, each with its gauge step.

Cost grows with the number of readings only here, in sums over slices.
"""

import math
from bisect import bisect_left
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

MOST_POINTS = 200  # points kept; more readings are averaged in blocks of equal time
LARGEST_STEP = 0.05  # of the reading; no gauge is believed to be coarser than this
_DISTINCT = 4000  # readings that differ; above this the gauge shows no steps of its own


class Point(NamedTuple):
    """Mean of ``size`` readings: time [s], pressure [Pa], gauge step there [Pa]."""

    time: float
    pressure: float
    step: float
    size: int


def gauge_step(*, values: Sequence[float], pressure: float, resolution: float) -> float:
    """Step in which a gauge counts near a reading, as the readings themselves show it.

    Parameters
    ----------
    values : sequence of float
        The different readings of the log, in rising order [Pa], series.
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
    when the gaps between different readings near ``pressure`` are all
    multiples of the smallest and at least three equal it.

    References
    ----------
    Derived here: the greatest common divisor of the gaps, with tolerance.
    """
    near = values[bisect_left(values, pressure / 1.5) : bisect_left(values, pressure * 1.5)]
    gaps = [above - below for below, above in pairwise(near)]
    if len(gaps) < 4:
        return resolution
    smallest = min(gaps)
    if not resolution * 1.01 < smallest <= LARGEST_STEP * pressure:
        return resolution
    ratios = [gap / smallest for gap in gaps]
    whole = all(abs(ratio - round(ratio)) < 0.05 for ratio in ratios)
    return smallest if whole and sum(ratio < 1.05 for ratio in ratios) >= 3 else resolution


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
    distinct = sorted(set(pressure))
    if len(distinct) > _DISTINCT:
        distinct = []
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
            step_at[band] = gauge_step(values=distinct, pressure=mean, resolution=resolution)
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
