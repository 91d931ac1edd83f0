"""A stiff system of equations, stepped in time: fast parts and slow parts at once.

A wet system has both: vapor follows its ice within a second while the ice
takes an hour to go. An implicit step follows the slow part without being
chained to the fast one.
"""

import math
from collections.abc import Callable, Sequence

State = list[float]
Rates = Callable[[Sequence[float]], State]

_D = 1.0 / (2.0 + math.sqrt(2.0))
_E32 = 6.0 + math.sqrt(2.0)
_MOST_STEPS = 100_000


def advance(
    rates: Rates,
    state: Sequence[float],
    *,
    duration: float,
    scale: Sequence[float],
    tolerance: float = 1e-4,
    step: float = 0.1,
) -> tuple[State, float]:
    """State after a length of time, by a linearly implicit pair of order 2 and 3.

    Parameters
    ----------
    rates : callable
        Time derivative of each part of the state, per second; no explicit
        dependence on time.
    state : sequence of float
        Where to start, shape (n,).
    duration : float
        How far to go [s], scalar, zero or more.
    scale : sequence of float
        Size of each part below which its error does not matter, shape (n,).
    tolerance : float
        Allowed error of a step relative to the size of each part.
    step : float
        First step to try [s], scalar.

    Returns
    -------
    tuple
        The state, shape (n,), and the step to start the next call with [s].

    Raises
    ------
    ArithmeticError
        If the steps become too small to go on; a bug, not an entry.

    References
    ----------
    [SHAMPINE-REICHELT-1997] section 2, the modified Rosenbrock pair.
    """
    now = list(state)
    f0 = rates(now)
    left = duration
    for _ in range(_MOST_STEPS):
        if left <= 0.0:
            return now, step
        h = min(step, left)
        solve = _factor(_jacobian(rates, now, f0, scale), h * _D)
        k1 = solve(f0)
        f1 = rates([y + 0.5 * h * k for y, k in zip(now, k1, strict=True)])
        k2 = [
            x + k
            for x, k in zip(solve([f - k for f, k in zip(f1, k1, strict=True)]), k1, strict=True)
        ]
        new = [y + h * k for y, k in zip(now, k2, strict=True)]
        f2 = rates(new)
        k3 = solve(
            [
                c - _E32 * (b2 - b1) - 2.0 * (a1 - a0)
                for c, b2, b1, a1, a0 in zip(f2, k2, f1, k1, f0, strict=True)
            ]
        )
        error = max(
            abs(h / 6.0 * (a - 2.0 * b + c)) / (tolerance * (max(abs(y), abs(z)) + s))
            for a, b, c, y, z, s in zip(k1, k2, k3, now, new, scale, strict=True)
        )
        if not error <= 1.0:  # an error that is not a number is refused as well
            step = h * max(0.1, 0.8 * error ** (-1.0 / 3.0)) if math.isfinite(error) else 0.1 * h
            if step < 1e-9:
                break
            continue
        now, f0 = new, f2
        left -= h
        grown = h * min(5.0, 0.8 * max(error, 1e-6) ** (-1.0 / 3.0))
        step = max(step, grown) if h < step else grown
    raise ArithmeticError("the steps became too small to go on")


def _jacobian(
    rates: Rates, state: Sequence[float], at: Sequence[float], scale: Sequence[float]
) -> list[State]:
    """Derivatives of the rates by each part of the state, by differences; by columns."""
    columns = []
    for index, value in enumerate(state):
        nudge = 1e-6 * (abs(value) + scale[index])
        moved = list(state)
        moved[index] += nudge
        columns.append([(b - a) / nudge for a, b in zip(at, rates(moved), strict=True)])
    return columns


def _factor(
    columns: Sequence[Sequence[float]], factor: float
) -> Callable[[Sequence[float]], State]:
    """LU of 1 - factor·J with partial pivoting; returns the solver."""
    n = len(columns)
    rows = [[(1.0 if i == j else 0.0) - factor * columns[j][i] for j in range(n)] for i in range(n)]
    order = list(range(n))
    for k in range(n):
        pivot = max(range(k, n), key=lambda i: abs(rows[i][k]))
        rows[k], rows[pivot] = rows[pivot], rows[k]
        order[k], order[pivot] = order[pivot], order[k]
        top = rows[k]
        for row in rows[k + 1 :]:
            if row[k]:
                row[k] /= top[k]
                share = row[k]
                for j in range(k + 1, n):
                    row[j] -= share * top[j]

    def solve(right: Sequence[float]) -> State:
        x = [right[i] for i in order]
        for i in range(n):
            row = rows[i]
            x[i] -= sum(row[j] * x[j] for j in range(i))
        for i in reversed(range(n)):
            row = rows[i]
            x[i] = (x[i] - sum(row[j] * x[j] for j in range(i + 1, n))) / row[i]
        return x

    return solve
