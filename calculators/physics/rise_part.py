"""The part of a log that one shape describes.

Gas that comes off in a rush at the start follows no simple curve: pressures even
out, walls give up what they hold loosely, the last drop dries up at once. Where
no shape describes the whole log, the part that one describes is found from the
end backward.
"""

from collections.abc import Sequence

from calculators.physics.rise_fit import fit_rise
from calculators.physics.rise_noise import Noise, noise
from calculators.physics.rise_record import Point
from calculators.physics.rise_shapes import Fits

_STARTS = (0.06, 0.12, 0.25, 0.37, 0.5)  # of the log: where the part may start, if not with it
_FEWEST = 6  # points that the part keeps
_WORSE = 2.0  # times the scatter of the last half: then a shape does not describe the log


def described(points: Sequence[Point]) -> tuple[int, Fits, Noise]:
    """Find the part of a log that one shape describes, reaching to its end.

    Parameters
    ----------
    points : sequence of Point
        The log.

    Returns
    -------
    tuple
        Index of the first point of that part, its fits and its noise.

    References
    ----------
    Derived here: the earliest start whose scatter is that of the last half.
    """
    length = points[-1].time - points[0].time
    fits = fit_rise(points)
    whole = 0, fits, noise(fits)
    tried = []
    for share in _STARTS:
        at = next(i for i, p in enumerate(points) if p.time >= points[0].time + share * length)
        if len(points) - at >= _FEWEST:
            tried.append(at)
    if not tried or tried[-1] == 0:
        return whole

    def scatter(found: tuple[int, Fits, Noise]) -> float:
        return found[2].moving / found[1].data.step ** 2

    def part(at: int) -> tuple[int, Fits, Noise]:
        fits = fit_rise(points[at:])
        return at, fits, noise(fits)

    last = part(tried[-1])
    if scatter(whole) <= _WORSE * scatter(last):
        return whole
    for at in tried[:-1]:
        found = part(at)
        if scatter(found) <= _WORSE * scatter(last):
            return found
    return last
