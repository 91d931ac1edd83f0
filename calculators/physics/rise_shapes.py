"""Shapes of a pressure rise: nothing, a leak, gas from inside, both.

A leak into a vacuum is a straight line: the flow does not notice the little
pressure inside. Gas from inside runs out or comes into balance, so it bends to
a plateau: as an exponential where one step limits it, or with a start as the
square root of time where it must first diffuse out of a layer of oil. Time is
counted in lengths of the log.
"""

import math
from collections.abc import Sequence
from typing import NamedTuple

from calculators.physics.rise_record import Point

SLOWEST_GAS = 3.0  # lengths of the log; slower gas is a straight line to this test
SHAPES = ("exponential", "square root")


class Data(NamedTuple):
    """Readings as the fit sees them: x from 0 to 1, weights with mean one."""

    start: float
    length: float
    x: tuple[float, ...]
    pressure: tuple[float, ...]
    weight: tuple[float, ...]
    step: float
    size: float


class Fit(NamedTuple):
    """p(x) = mean + slope (x - center) + gas (released(x) - middle).

    Pressures [Pa]; x and ``tau`` in lengths of the log. ``misfit`` is the
    weighted sum of squares left over [Pa2]; ``spread`` the inverse normal
    matrix (slope, slope with gas, gas), to be multiplied by the noise.
    """

    shape: str
    tau: float
    mean: float
    slope: float
    gas: float
    center: float
    middle: float
    misfit: float
    spread: tuple[float, float, float]

    def at(self, x: float) -> float:
        """Pressure at x [Pa]; at infinity the plateau, where there is no slope."""
        run = 0.0 if self.slope == 0.0 else self.slope * (x - self.center)
        return self.mean + run + self.gas * (self.share(x) - self.middle)

    def share(self, x: float) -> float:
        """Share of the gas released by x."""
        return released(shape=self.shape, x=x, tau=self.tau) if self.tau else 0.0


class Fits(NamedTuple):
    """Every shape, fitted.

    ``gas`` and ``both`` hold one fit per shape and time constant. The slope
    of ``both`` may come out negative; its gas never does. ``slow`` is the
    least misfit if the straight part is not a leak but gas as slow as
    ``SLOWEST_GAS``, beside the same choice of faster gas.
    """

    data: Data
    constant: Fit
    line: Fit
    gas: tuple[Fit, ...]
    both: tuple[Fit, ...]
    slow: float

    def best_gas(self) -> Fit:
        """Gas alone, the time constant that fits best."""
        return min(self.gas, key=_misfit)

    def best_both(self) -> Fit:
        """Leak and gas, neither negative, the time constant that fits best."""
        allowed = [fit for fit in self.both if fit.slope >= 0.0]
        return min((*allowed, self.line, self.best_gas()), key=_misfit)


def _misfit(fit: Fit) -> float:
    return fit.misfit


def released(*, shape: str, x: float, tau: float) -> float:
    """Share of the gas that a source has released.

    Parameters
    ----------
    shape : str
        "exponential" (one step limits) or "square root" (diffusion limits).
    x, tau : float
        Time and time constant, in the same unit, scalar.

    Returns
    -------
    float
        Share from 0 to 1, scalar.

    Notes
    -----
    The second shape is Vermeulen's approximation of diffusion out of a
    sphere, sqrt(1 - exp(-x/tau)): the square root of time at first, an
    exponential at last.

    References
    ----------
    [VERMEULEN-1953]; first-order release for the first.
    """
    share = -math.expm1(-x / tau)
    return math.sqrt(share) if shape == "square root" else share


def prepare(points: Sequence[Point]) -> Data:
    """Scale time to the length of the log; weigh readings by number and gauge step.

    Parameters
    ----------
    points : sequence of Point
        At least two, in order of time.

    Returns
    -------
    Data
        Scaled readings; ``step`` is the finest gauge step [Pa], ``size`` the
        mean number of readings in a point.

    References
    ----------
    [GUM] F.2.2.1: the uncertainty of a reading goes as the step.
    """
    start, length = points[0].time, points[-1].time - points[0].time
    finest = min(point.step for point in points)
    raw = [point.size * (finest / point.step) ** 2 for point in points]
    scale = len(raw) / math.fsum(raw)
    return Data(
        start=start,
        length=length,
        x=tuple((point.time - start) / length for point in points),
        pressure=tuple(point.pressure for point in points),
        weight=tuple(scale * each for each in raw),
        step=finest,
        size=sum(point.size for point in points) / len(points),
    )
