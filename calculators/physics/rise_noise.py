"""How far the readings of a log scatter, counted so that it does not flatter.

Readings one second apart are not independent when the gauge smooths them, and
a gauge that counts in steps hides what is smaller than a step.
"""

import math
from collections.abc import Sequence
from typing import NamedTuple

from calculators.physics.rise_shapes import Fit, Fits

PRIOR_SHARE = 0.5  # of a step: scatter supposed before any is seen
PRIOR_COUNT = 10.0  # readings that this supposition counts for
_FEWEST = 12  # points from which a correlation is worth estimating


class Noise(NamedTuple):
    """Scatter of a log.

    ``variance`` is that of one point about the truth, with correlation and
    a gauge that stands still counted in [Pa2]; ``moving`` the same without
    the standing still; ``scatter`` that of one point about the fit [Pa2],
    ``supposed`` what it is taken for before any is seen [Pa2];
    ``independent`` how many points are independent of each other;
    ``freedom`` the degrees of freedom behind ``variance``.
    """

    variance: float
    moving: float
    scatter: float
    supposed: float
    independent: float
    freedom: float

    def about(self, misfit: float, freedom: float) -> float:
        """Variance of a point about another fit, given what that left over [Pa2]."""
        scatter = (PRIOR_COUNT * self.supposed + misfit) / (PRIOR_COUNT + max(freedom, 0.0))
        return scatter * self.moving / self.scatter

    def quantile(self, normal: float) -> float:
        """Student's t that covers as much as a normal quantile does.

        Cornish-Fisher expansion in 1/freedom, within 1 % above 4 degrees
        ([ABRAMOWITZ-STEGUN] 26.7.5, from memory).
        """
        z, nu = normal, self.freedom
        first = (z**3 + z) / 4.0
        second = (5.0 * z**5 + 16.0 * z**3 + 3.0 * z) / 96.0
        third = (3.0 * z**7 + 19.0 * z**5 + 17.0 * z**3 - 15.0 * z) / 384.0
        return z + first / nu + second / nu**2 + third / nu**3


def correlation_length(residuals: Sequence[float]) -> float:
    """Points per independent point, from the residuals of a fit.

    Parameters
    ----------
    residuals : sequence of float
        Residuals in order of time, evenly spaced, series.

    Returns
    -------
    float
        Integrated autocorrelation 1 + 2 sum rho_k, at least 1 [1], scalar.

    Notes
    -----
    Summed to the first lag beyond five times the running sum, or to a
    quarter of the series.

    References
    ----------
    [SOKAL-1997] windowing rule, from memory.
    """
    n = len(residuals)
    power = math.fsum(each * each for each in residuals)
    if n < _FEWEST or power <= 0.0:
        return 1.0
    total = 1.0
    for lag in range(1, n // 4 + 1):
        products = sum(a * b for a, b in zip(residuals, residuals[lag:], strict=False))
        total += 2.0 * products / power
        if lag >= 5.0 * total:
            break
    return max(total, 1.0)


def noise(fits: Fits) -> Noise:
    """Estimate the scatter of a log about its richest fit, never below the gauge's step.

    Parameters
    ----------
    fits : Fits
        Every shape, fitted.

    Returns
    -------
    Noise
        Scatter with correlation and gauge step counted in.

    Notes
    -----
    A gauge that stands still within a step hides up to a step of rise
    however many readings are taken: over a log that crosses M steps, the
    rise is unsure by 0.45 steps / sqrt(1 + M^2), and single readings by
    step/sqrt(12).

    References
    ----------
    [GUM] F.2.2.1 for the step; derived here for the crossing of steps and
    checked by simulation.
    """
    data, best = fits.data, fits.best_both()
    n = len(data.x)
    # What an exact fit leaves is rounding, and says nothing of the gauge.
    left = residuals(fits, best) if best.misfit else [0.0] * n
    supposed = (PRIOR_SHARE * data.step) ** 2 / data.size
    used = 2.0 + (best.gas > 0.0) * 2.0
    freedom = max(n - used, 0.0)
    scatter = (PRIOR_COUNT * supposed + math.fsum(r * r for r in left)) / (PRIOR_COUNT + freedom)
    length = min(correlation_length(left), max(n / 6.0, 1.0))
    crossed = (best.at(1.0) - best.at(0.0)) / data.step
    still = data.step**2 / 60.0 * n / (1.0 + crossed**2)
    single = data.step**2 / 12.0 / data.size
    moving = max(scatter * length, single)
    return Noise(
        variance=max(moving, still),
        moving=moving,
        scatter=max(scatter, single),
        supposed=supposed,
        independent=n / length,
        freedom=max(PRIOR_COUNT + freedom / length, 3.0),
    )


def residuals(fits: Fits, fit: Fit) -> list[float]:
    """Readings less fit, each in units of a point of weight one [Pa].

    Parameters
    ----------
    fits : Fits
        The fitted log.
    fit : Fit
        One of its fits.

    Returns
    -------
    list of float
        Weighted residuals in order of time [Pa], series.

    References
    ----------
    Weighted least squares.
    """
    data = fits.data
    return [
        math.sqrt(weight) * (pressure - fit.at(x))
        for x, pressure, weight in zip(data.x, data.pressure, data.weight, strict=True)
    ]
