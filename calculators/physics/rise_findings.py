"""What a log shows: its steady part, its straight part, its gas, all with their doubts.

Where one shape describes only the later part of a log (rise_part.py), the rest
counts as gas that came before.
"""

import math
from collections.abc import Sequence
from typing import NamedTuple

from calculators.physics.leak_rate import STEPS_TO_BE_SEEN
from calculators.physics.rise_bounds import (
    NORMAL_95,
    NORMAL_PASS,
    Interval,
    level_interval,
    slope_interval,
    steepest_leak,
    stretch,
)
from calculators.physics.rise_choice import Choice, compare_shapes, preferred
from calculators.physics.rise_fit import spread_out
from calculators.physics.rise_noise import Noise
from calculators.physics.rise_part import described
from calculators.physics.rise_record import Point
from calculators.physics.rise_shapes import SHAPES, SLOWEST_GAS, Fit, Fits

MATERIAL_SHARE = 0.05  # of the rise: a leak or gas part below it is not called one
CROOKED = 0.003  # of the rise, root mean square: a bend within it may be the gauge's own
LATE_UNKNOWN = 0.3  # of the rise in the last third: what slower gas may still bring
TAIL_UNKNOWN = 0.3  # of what gas is still to come: what the shape of its tail leaves unsure
EQUALIZED_IN, EQUALIZED_SHARE = 300.0, 0.15  # s; of the first pressure: evening out, no source
UNSTEADY, THERMOMETER = 0.6, 0.15  # K: standard uncertainty of a change unrecorded, recorded
_MANY = 60  # readings from which the first one no longer matters
_QUICK = 0.5  # log lengths: gas beside a proven leak is looked for up to this time constant


class Findings(NamedTuple):
    """What a log shows. Pressures [Pa], times [s]; rises over ``length``, the described part.

    ``steepest`` is the steepest leak, as a rise over ``length``, that the log
    leaves room for whatever the shapes; ``gas`` the rise by gas over the
    whole log; ``come`` and ``left`` its parts before the described part and
    after the end. ``evening`` is a rise set aside as pressures evening out.
    """

    points: tuple[Point, ...]
    fits: Fits
    noise: Noise
    start: float
    length: float
    step: float
    best: Fit
    straight: bool
    bent: bool
    slackens: bool
    first: float
    end: float
    rise: float
    slope: Interval
    steepest: float
    gas: float
    come: float
    left: float
    plateau: Interval | None
    evening: float
    choices: tuple[Choice, ...]

    def material(self, amount: float) -> bool:
        """Say whether a rise is large enough to be called something."""
        return amount >= max(STEPS_TO_BE_SEEN * self.step, MATERIAL_SHARE * abs(self.rise))

    def proof(self) -> float:
        """Growth of the misfit that proves a shape wrong [Pa2]."""
        return self.noise.quantile(NORMAL_PASS) ** 2 * self.noise.variance


def find(points: tuple[Point, ...], *, temperature_known: bool) -> Findings:
    """Gather what a log shows.

    Parameters
    ----------
    points : tuple of Point
        The log since isolation, at least two readings.
    temperature_known : bool
        Whether it was brought to one temperature.

    Returns
    -------
    Findings
        Everything that a judgment needs.

    References
    ----------
    Derived here.
    """
    at, fits, scatter = described(points)
    room = scatter.quantile(NORMAL_95) ** 2 * scatter.variance
    fits = spread_out(fits, room=room)
    proof = scatter.quantile(NORMAL_PASS) ** 2 * scatter.variance
    richest = fits.best_both()
    straight = fits.slow - richest.misfit > proof
    choices = compare_shapes(fits, scatter)
    # Bent needs proof, a bend that no gauge's own crookedness makes, and, where there are
    # readings enough to weigh it, the criterion's word.
    gain = max(fits.line.misfit - richest.misfit, 0.0)
    crooked = len(fits.data.x) * (CROOKED * (richest.at(1.0) - richest.at(0.0))) ** 2
    bent = gain > max(proof, crooked) and not (
        choices[-1].weight is not None and preferred(choices) in ("constant", "leak")
    )
    best = _plainest(fits, richest, proof, straight) if gain > proof else fits.line
    start, length = points[at].time, fits.data.length
    before = (start - points[0].time) / length
    unsteady = THERMOMETER if temperature_known else UNSTEADY
    slope = _slope(fits, scatter, best, straight, unsteady)
    first, end = points[0].pressure, best.at(1.0)
    come = best.at(0.0) - first - slope.best * before if at else 0.0
    inside = best.gas * (best.share(1.0) - best.share(0.0)) if best.gas else 0.0
    left = best.gas * (1.0 - best.share(1.0)) if best.gas else 0.0
    evening = 0.0
    rush = start - points[0].time + (5.0 * best.tau * length if best.gas else 0.0)
    step = max(point.step for point in points)
    whole = points[-1].time - points[0].time
    small = max(2.0 * STEPS_TO_BE_SEEN * step, EQUALIZED_SHARE * first)
    if rush <= min(EQUALIZED_IN, 0.25 * whole) and abs(come + inside) <= small:
        evening, come, inside = come + inside, 0.0, 0.0
    found = Findings(
        points=points,
        fits=fits,
        noise=scatter,
        start=start,
        length=length,
        step=step,
        best=best,
        straight=straight,
        bent=bent or come > max(STEPS_TO_BE_SEEN * step, 4.0 * math.sqrt(scatter.variance)),
        slackens=_slackens(fits, scatter, best),
        first=first,
        end=end,
        rise=end - first - evening,
        slope=slope,
        steepest=steepest_leak(
            fits, scatter, temperature_known=temperature_known,
            before=before / (1.0 + before),
        ),
        gas=max(come, 0.0) + inside,
        come=come,
        left=left,
        plateau=None,
        evening=evening,
        choices=choices,
    )  # fmt: skip
    return found._replace(plateau=_plateau(found, unsteady))


def _plainest(fits: Fits, richest: Fit, proof: float, straight: bool) -> Fit:
    """Gas alone where that is not ruled out, else a leak and gas that bends within the log."""
    gas = fits.best_gas()
    if not straight:
        return gas if gas.misfit - richest.misfit <= proof else richest
    quick = [fit for fit in fits.both if fit.slope >= 0.0 and fit.tau <= _QUICK]
    return min((*quick, fits.line), key=lambda fit: fit.misfit)


def _slope(fits: Fits, scatter: Noise, best: Fit, straight: bool, unsteady: float) -> Interval:
    """Leak part with its doubts: scatter, shape of the gas, first reading, temperature."""
    found = slope_interval(fits, scatter, slowest=SLOWEST_GAS if straight else math.inf)
    middle = max(best.slope, 0.0)
    tail = best.gas * (best.share(1.0) - best.share(0.9)) / 0.1 if best.gas else 0.0
    drift = NORMAL_95 * unsteady / 293.0 * best.at(1.0)
    proof = scatter.quantile(NORMAL_PASS) ** 2 * scatter.variance
    shape, early = _shapes_differ(fits, best, proof), _first_matters(fits, best)
    doubts = (drift, TAIL_UNKNOWN * tail, shape, early)
    down = math.hypot(middle - min(found.low, middle), *doubts)
    up = math.hypot(max(found.high, middle) - middle, *doubts)
    return Interval(max(middle - down, 0.0), middle, middle + up)


def _shapes_differ(fits: Fits, best: Fit, proof: float) -> float:
    """What the leak part may change when the gas is given another shape."""
    if not best.gas or best.slope <= 0.0:
        return 0.0
    both = [fit for fit in fits.both if fit.slope >= 0.0 and fit.tau <= _QUICK]
    rivals = _best_of_each_shape(both)
    doubts = [_doubt(fit, best, fit.slope - best.slope, proof) for fit in rivals]
    if best.gas * best.share(1.0) < MATERIAL_SHARE * (best.at(1.0) - best.at(0.0)):
        doubts.append(0.5 * abs(fits.line.slope - best.slope))  # the bend may be the gauge's own
    return max(doubts, default=0.0)


def _best_of_each_shape(fits: Sequence[Fit]) -> list[Fit]:
    kinds = ([fit for fit in fits if fit.shape == shape] for shape in SHAPES)
    return [min(same, key=lambda fit: fit.misfit) for same in kinds if same]


def _doubt(rival: Fit, best: Fit, change: float, proof: float) -> float:
    """Half of what a rival shape would change, less the worse it fits."""
    worse = max(rival.misfit - best.misfit, 0.0)
    return 0.5 * abs(change) / math.sqrt(1.0 + worse / proof) if proof > 0.0 else 0.0


def _first_matters(fits: Fits, best: Fit) -> float:
    """How much the slope changes without the first reading, taken before all was even."""
    data = fits.data
    curved = best.gas * best.share(1.0) >= MATERIAL_SHARE * (best.at(1.0) - best.at(0.0))
    if not 5 <= len(data.x) <= _MANY or (best.gas and curved):
        return 0.0
    x, pressure, weight = data.x, data.pressure, data.weight
    total = math.fsum(weight)
    middle = math.fsum(w * at for w, at in zip(weight, x, strict=True)) / total
    square = math.fsum(w * (at - middle) ** 2 for w, at in zip(weight, x, strict=True))
    lever = weight[0] * (x[0] - middle) / square
    pull = 1.0 - weight[0] / total - weight[0] * (x[0] - middle) ** 2 / square
    return abs(lever * (pressure[0] - fits.line.at(x[0])) / pull) if pull > 0.0 else 0.0


def _slackens(fits: Fits, scatter: Noise, best: Fit) -> bool:
    """Say whether the last third, gas taken off, rises less than the middle third."""
    gas = best if best.gas else None
    middle = stretch(fits, scatter, start=1 / 3, end=2 / 3, less=gas)
    last = stretch(fits, scatter, start=2 / 3, less=gas)
    if middle is None or last is None:
        return False
    unsure = math.hypot(middle.uncertainty, last.uncertainty)
    return middle.slope - last.slope > max(3.0 * unsure, 0.1 * middle.slope)


def _plateau(found: Findings, unsteady: float) -> Interval | None:
    """Pressure at which gas alone levels off, with the doubt about its tail."""
    fits, best = found.fits, found.best
    if not found.bent:
        return None
    drift = NORMAL_95 * unsteady / 293.0 * found.end
    if best.slope > 0.0 and found.straight:
        base = found.first + found.gas + found.left
        doubt = math.hypot(found.slope.high - found.slope.low, TAIL_UNKNOWN * found.left, drift)
        return Interval(base - doubt, base, base + doubt)
    kept = fits.gas if best.gas else (fits.constant,)
    level = level_interval(kept, found.noise, x=math.inf, points=len(fits.data.x))
    late = found.end - best.at(2.0 / 3.0)
    shapes = [
        _doubt(fit, best, fit.at(math.inf) - level.best, found.proof())
        for fit in _best_of_each_shape([fit for fit in kept if fit.gas])
    ]
    doubt = math.hypot(
        TAIL_UNKNOWN * max(level.best - found.end, 0.0),
        LATE_UNKNOWN * max(late, 0.0),
        max(shapes, default=0.0),
        0.5 * found.step,
        drift,
    )
    low = level.best - math.hypot(level.best - level.low, doubt)
    high = level.best + math.hypot(level.high - level.best, doubt)
    return Interval(low, level.best, high)
