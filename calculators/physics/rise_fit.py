"""The shapes of a pressure rise, fitted to a log.

For a given time constant every shape is linear in its other parameters, so
those are solved for exactly and only the time constant is searched (variable
projection, [GOLUB-PEREYRA-1973]). Leak and gas are never negative.
"""

import math
from collections.abc import Sequence
from operator import mul
from typing import NamedTuple

from calculators.physics.rise_record import Point
from calculators.physics.rise_shapes import SHAPES, SLOWEST_GAS, Data, Fit, Fits, prepare

SHORTEST, LONGEST = 0.01, 10.0  # time constants searched, in lengths of the log
NOTHING = 1e-9  # share of a rise that is rounding, not gas
SEARCHED = 30  # time constants per shape, in equal ratios


class _Column(NamedTuple):
    """A column less its mean, and its weighted products."""

    mean: float
    centered: list[float]
    weighted: list[float]
    square: float
    pressure: float


class _Solver:
    """The linear half of the fit: one log, any shape and time constant."""

    def __init__(self, data: Data) -> None:
        self.data, self.count = data, len(data.x)
        self.mean = sum(map(mul, data.weight, data.pressure)) / self.count
        self.pressure = [each - self.mean for each in data.pressure]
        whole = sum(w * p * p for w, p in zip(data.weight, self.pressure, strict=True))
        self.whole = whole if whole > NOTHING**3 * self.mean**2 * self.count else 0.0
        self.time = self.column(data.x)
        self.late = self.column([-math.expm1(-x / SLOWEST_GAS) for x in data.x])

    def column(self, values: Sequence[float]) -> _Column:
        """Center a column and form its products."""
        mean = sum(map(mul, self.data.weight, values)) / self.count
        centered = [value - mean for value in values]
        weighted = list(map(mul, self.data.weight, centered))
        square = sum(map(mul, weighted, centered))
        return _Column(mean, centered, weighted, square, sum(map(mul, weighted, self.pressure)))

    def settled(self, misfit: float) -> float:
        """Take a misfit that is only rounding as none, so that exact fits tie everywhere alike."""
        return misfit if misfit > 0.1 * NOTHING * self.whole else 0.0

    def alone(self, column: _Column) -> Fit:
        """Fit one column that may not be negative."""
        square = column.square
        amount = max(column.pressure / square, 0.0) if square > 0.0 else 0.0
        misfit = self.settled(self.whole - amount * column.pressure)
        spread = (1.0 / square if square > 0.0 else 0.0, 0.0, 0.0)
        return Fit("", 0.0, self.mean, amount, 0.0, column.mean, 0.0, misfit, spread)

    def pair(self, line: _Column, bend: _Column) -> Fit | None:
        """Fit two columns of either sign, unless they are one and the same to this log."""
        cross = sum(map(mul, line.weighted, bend.centered))
        determinant = line.square * bend.square - cross * cross
        if determinant <= 1e-9 * line.square * bend.square:
            return None
        slope = (bend.square * line.pressure - cross * bend.pressure) / determinant
        gas = (line.square * bend.pressure - cross * line.pressure) / determinant
        misfit = self.settled(self.whole - slope * line.pressure - gas * bend.pressure)
        spread = (bend.square / determinant, -cross / determinant, line.square / determinant)
        return Fit("", 0.0, self.mean, slope, gas, line.mean, bend.mean, misfit, spread)

    def at(self, shape: str, tau: float) -> "_Trial":
        """Fit gas alone, gas with a leak, and gas with slow gas in the leak's place."""
        share = [-math.expm1(-x / tau) for x in self.data.x]
        bend = self.column(share if shape == "exponential" else list(map(math.sqrt, share)))
        if bend.square <= 1e-12 * self.count:  # released before the second reading
            return _Trial(None, None, math.inf)
        only = self.alone(bend)
        gas = only._replace(
            shape=shape,
            tau=tau,
            slope=0.0,
            gas=only.slope,
            center=self.time.mean,
            middle=bend.mean,
            spread=(0.0, 0.0, only.spread[0]),
        )
        slow = gas.misfit if tau <= SLOWEST_GAS else math.inf
        both = self.pair(self.time, bend)
        # On a straight line the gas is rounding of either sign: it counts as none.
        nothing = NOTHING * (abs(both.slope) + abs(both.gas)) if both else 0.0
        if both and both.gas >= -nothing:
            gas_part = both.gas if both.gas > nothing else 0.0
            both = both._replace(shape=shape, tau=tau, gas=gas_part)
        else:
            both = None
        beside = self.pair(self.late, bend)
        if beside and beside.gas > 0.0 and beside.slope > 0.0:
            slow = min(slow, beside.misfit)
        return _Trial(gas, both, slow)


class _Trial(NamedTuple):
    """What one shape and time constant gives."""

    gas: Fit | None
    both: Fit | None
    slow: float

    def misfits(self) -> tuple[float, float]:
        """Misfit of gas alone and of gas with a leak."""
        both = self.both.misfit if self.both and self.both.slope >= 0.0 else math.inf
        return self.gas.misfit if self.gas else math.inf, both


def fit_rise(points: Sequence[Point]) -> Fits:
    """Fit every shape to a log.

    Parameters
    ----------
    points : sequence of Point
        At least two, in order of time, from :func:`rise_record.record`.

    Returns
    -------
    Fits
        The best of each kind and their neighbors.

    References
    ----------
    [GOLUB-PEREYRA-1973]; a grid, then golden sections about its best point.
    """
    solver = _Solver(prepare(points))
    ratio = (LONGEST / SHORTEST) ** (1.0 / (SEARCHED - 1))
    trials = []
    for shape in SHAPES:
        grid = [(SHORTEST * ratio**index) for index in range(SEARCHED)]
        tried = [solver.at(shape, tau) for tau in grid]
        trials += tried
        for kind in (0, 1):
            misfits = [trial.misfits()[kind] for trial in tried]
            best = misfits.index(min(misfits))
            if math.isfinite(misfits[best]):
                trials += _narrow(solver, shape, kind, grid[best], ratio)
    zero = (0.0, 0.0, 0.0)
    return Fits(
        data=solver.data,
        constant=Fit("", 0.0, solver.mean, 0.0, 0.0, 0.0, 0.0, solver.whole, zero),
        line=solver.alone(solver.time),
        gas=tuple(trial.gas for trial in trials if trial.gas),
        both=tuple(trial.both for trial in trials if trial.both),
        slow=min([solver.alone(solver.late).misfit, *(trial.slow for trial in trials)]),
    )


def _narrow(
    solver: _Solver, shape: str, kind: int, tau: float, ratio: float, sections: int = 10
) -> list[_Trial]:
    """Close in on the best time constant by golden sections in its logarithm."""
    golden = (math.sqrt(5.0) - 1.0) / 2.0
    low, high = math.log(tau / ratio), math.log(min(tau * ratio, LONGEST))
    inner = [high - golden * (high - low), low + golden * (high - low)]
    trials = [solver.at(shape, math.exp(each)) for each in inner]
    misfits = [trial.misfits()[kind] for trial in trials]
    for _ in range(sections):
        if misfits[0] <= misfits[1]:
            high, inner[1], misfits[1] = inner[1], inner[0], misfits[0]
            inner[0] = high - golden * (high - low)
            moved = 0
        else:
            low, inner[0], misfits[0] = inner[0], inner[1], misfits[1]
            inner[1] = low + golden * (high - low)
            moved = 1
        trials.append(solver.at(shape, math.exp(inner[moved])))
        misfits[moved] = trials[-1].misfits()[kind]
    return trials


def spread_out(fits: Fits, *, room: float) -> Fits:
    """Add neighbors of each best fit, out to where the misfit has grown by ``room``.

    Parameters
    ----------
    fits : Fits
        From :func:`fit_rise`.
    room : float
        Growth of the misfit that the scatter allows [Pa2], scalar.

    Returns
    -------
    Fits
        The same, with the fits that an interval needs at its ends.

    References
    ----------
    Derived here: a parabola through the grid finds the ends, halving mends them.
    """
    solver = _Solver(fits.data)
    gas, both = list(fits.gas), list(fits.both)
    slow = fits.slow
    for shape in SHAPES:
        for kind, kept in enumerate((fits.gas, fits.both)):
            same = [fit for fit in kept if fit.shape == shape and fit.slope >= 0.0]
            if not same:
                continue
            best = min(same, key=lambda fit: fit.misfit)
            for side in (-1.0, 1.0):
                for trial in _end(solver, best, same, kind, side, best.misfit + room):
                    gas += [trial.gas] if trial.gas else []
                    both += [trial.both] if trial.both else []
                    slow = min(slow, trial.slow)
    return fits._replace(gas=tuple(gas), both=tuple(both), slow=slow)


def _end(
    solver: _Solver, best: Fit, same: list[Fit], kind: int, side: float, ceiling: float
) -> list[_Trial]:
    """Fits between the best and the end of its allowed range on one side."""
    beyond = [fit for fit in same if side * (fit.tau - best.tau) > 0.0 and fit.misfit > ceiling]
    if not beyond:
        return []
    outer = math.log(min(beyond, key=lambda fit: side * fit.tau).tau)
    inner = math.log(best.tau)
    trials = []
    for _ in range(7):  # bisection for the crossing of the ceiling
        middle = 0.5 * (inner + outer)
        trials.append(solver.at(best.shape, math.exp(middle)))
        if trials[-1].misfits()[kind] > ceiling:
            outer = middle
        else:
            inner = middle
    center = math.log(best.tau)
    trials += [
        solver.at(best.shape, math.exp(center + share * (inner - center)))
        for share in (0.35, 0.6, 0.8, 0.92)
    ]
    return trials
