"""Where a rising function crosses zero: one solver for every steady flow.

Flow laws are close to straight lines in logarithms, so a secant finds the
crossing in three or four calls; the bracket it keeps makes it safe.
"""

import math
from collections.abc import Callable

_MOST_CALLS = 200
_NOISE = 1e-14  # relative; a smaller step is rounding


def rising_root(
    function: Callable[[float], float], *, guess: float, tolerance: float = 1e-9
) -> float:
    """Where a rising function of a logarithm crosses zero.

    Parameters
    ----------
    function : callable
        Rises with its argument; slope of the order of 1.
    guess : float
        Where to start; needs no bracket.
    tolerance : float
        Size of the last step; the secant leaves an error far below it.

    Returns
    -------
    float
        The argument at which the function is zero.

    Notes
    -----
    Secant steps, kept inside the bracket as soon as both of its ends are
    known; a step that leaves the bracket, or does not halve it in two calls,
    is replaced by its middle. Outward steps double until the sign changes.
    The slope of the first step is a guess, so that step alone is never the last.
    """
    low, high = -math.inf, math.inf
    x, value = guess, function(guess)
    slope, reach = 1.0, 0.25
    measured = False
    previous_width = math.inf
    for calls in range(_MOST_CALLS):
        if value == 0.0:
            return x
        if value < 0.0:
            low = x
        else:
            high = x
        step = -value / slope
        width = high - low
        if math.isinf(width):
            reach *= 2.0
            step = max(-reach, min(reach, step))
        elif not low < x + step < high or (calls % 3 == 2 and width > 0.5 * previous_width):
            step = 0.5 * (low + high) - x
        if calls % 3 == 2:
            previous_width = width
        scale = max(1.0, abs(x))
        if abs(step) <= (tolerance if measured else _NOISE) * scale:
            return x + step
        new = function(x + step)
        secant = (new - value) / step
        if secant > 0.0:
            slope, measured = secant, True
        x, value = x + step, new
    raise ArithmeticError("no crossing found: the function does not rise through zero")
