"""One simulated test, judged, and what became of it."""

import random
from dataclasses import dataclass

from calculators.physics.rise_judgment import judge_rise
from simulator.population import draw
from simulator.truth import truth_of

THERMOMETER = 0.1  # K, standard uncertainty of a temperature written down


@dataclass(frozen=True, kw_only=True)
class Outcome:
    """Truth and verdict of one test; shares are in the gauge's own scale."""

    seed: int
    kind: str
    expected: str | None
    code: str
    reason: str
    sure: bool
    leak_over_unseen: float | None  # true leak over the smallest that was said to be detectable
    plateau_over_limit: float  # true plateau over the limit
    leak_error: float | None  # of the leak's size, where a leak was found and is there
    leak_covered: bool | None
    plateau_covered: bool | None


def judge(test):
    """Judge a simulated test as a technician would hand it in."""
    times, readings, _ = test.log()
    chance = random.Random(test.seed + 10**6)
    temperatures = {}
    if test.warming_known:
        start = test.start_temperature
        temperatures = {
            "start_temperature": start + chance.gauss(0.0, THERMOMETER),
            "end_temperature": start + test.warming + chance.gauss(0.0, THERMOMETER),
        }
    return judge_rise(
        time=times,
        pressure=readings,
        resolution=test.gauge.step,
        limit=test.limit,
        volume=test.volume if test.volume_known else None,
        leak_of_concern=test.concern,
        coldest=test.coldest,
        **temperatures,
    )


def trial(seed):
    """Draw a test by its seed, judge it, and set the verdict beside the truth."""
    test = draw(seed)
    truth, verdict = truth_of(test), judge(test)
    both = {"leak", "leak-and-moisture"}
    slope = truth.leak_rate / test.volume * test.gauge.scale
    sized = verdict.code in both and truth.kind in both
    level = truth.plateau * test.gauge.scale
    leveled = verdict.code == "moisture" == truth.kind
    return Outcome(
        seed=seed,
        kind=truth.kind,
        expected=truth.expected,
        code=verdict.code,
        reason=verdict.reason,
        sure=verdict.sure,
        leak_over_unseen=truth.leak_rate / verdict.unseen if verdict.unseen else None,
        plateau_over_limit=truth.plateau / test.limit,
        leak_error=verdict.slope.best / slope - 1.0 if sized else None,
        leak_covered=verdict.slope.low <= slope <= verdict.slope.high if sized else None,
        plateau_covered=(verdict.plateau.low <= level <= verdict.plateau.high if leveled else None),
    )
