"""Which shape of a rise its readings speak for, by Akaike's criterion.

The criterion ranks; it does not judge. On simulated logs without a leak it
picks leak-and-gas for many sources that are not quite exponential, so a
verdict asks besides that the part be proven, material and lasting.
"""

import math
from typing import NamedTuple

from calculators.physics.rise_noise import Noise
from calculators.physics.rise_shapes import Fit, Fits


class Choice(NamedTuple):
    """One shape: what it is, numbers fitted, scatter about it [Pa], criterion and weight.

    ``criterion`` and ``weight`` are None where there are too few readings
    for that many numbers.
    """

    shape: str
    parameters: int
    scatter: float
    criterion: float | None
    weight: float | None


def compare_shapes(fits: Fits, noise: Noise) -> tuple[Choice, ...]:
    """Rank the shapes by AICc.

    Parameters
    ----------
    fits : Fits
        Every shape, fitted.
    noise : Noise
        Scatter of the log.

    Returns
    -------
    tuple of Choice
        Constant, leak, gas, leak and gas; weights add up to one.

    Notes
    -----
    AICc = misfit / variance + 2 k + 2 k (k + 1) / (n - k - 1), with the
    variance known from the gauge's step and the scatter, and n the number of
    independent points.

    References
    ----------
    [BURNHAM-ANDERSON-2002] section 2.4, from memory.
    """
    named = [("constant", 1, fits.constant), ("leak", 2, fits.line)]
    if fits.gas:
        named.append(("gas", 3, fits.best_gas()))
        named.append(("leak and gas", 4, fits.best_both()))
    ranked = [(name, k, fit, _criterion(fit, k, noise)) for name, k, fit in named]
    known = [criterion for *_, criterion in ranked if criterion is not None]
    least = min(known, default=0.0)
    total = math.fsum(math.exp(-0.5 * (each - least)) for each in known)
    count = len(fits.data.x)
    return tuple(
        Choice(
            name,
            k,
            math.sqrt(fit.misfit / count),
            criterion,
            None if criterion is None else math.exp(-0.5 * (criterion - least)) / total,
        )
        for name, k, fit, criterion in ranked
    )


def _criterion(fit: Fit, parameters: int, noise: Noise) -> float | None:
    spare = noise.independent - parameters - 1.0
    if spare < 0.5:
        return None
    extra = 2.0 * parameters + 2.0 * parameters * (parameters + 1.0) / spare
    return fit.misfit / noise.moving + extra


def preferred(choices: tuple[Choice, ...]) -> str | None:
    """Shape with the largest weight.

    Parameters
    ----------
    choices : tuple of Choice
        From :func:`compare_shapes`.

    Returns
    -------
    str or None
        Its name; None where there are too few readings to compare any.

    References
    ----------
    As for :func:`compare_shapes`.
    """
    weighed = [choice for choice in choices if choice.weight is not None]
    return max(weighed, key=lambda choice: choice.weight or 0.0).shape if weighed else None
