"""The gauge between the truth and the log: lag, scale error, wander, steps in bands."""

import math
from dataclasses import dataclass


@dataclass(frozen=True)
class Gauge:
    """A vacuum gauge. Pressures [Pa], times [s]."""

    step: float  # of the display below ``band``
    band: float  # reading from which the step is ten times as large
    lag: float  # first-order
    scale: float  # true to shown, constant
    scatter: float  # of one reading, in steps
    memory: float  # correlation time of the scatter

    def step_at(self, pressure):
        return self.step * (10.0 if pressure >= self.band else 1.0)

    def readings(self, times, pressures, chance):
        """What the display shows at these times; ``pressures`` are true."""
        shown, wander, before = pressures[0], chance.gauss(0.0, 1.0), times[0]
        previous, log = pressures[0], []
        for at, true in zip(times, pressures, strict=True):
            gap = at - before
            if gap > 0.0:
                # Exact answer of a first-order lag to a ramp between two points.
                fade = math.exp(-gap / self.lag) if self.lag > 0.0 else 0.0
                ramp = (true - previous) / gap
                shown = (
                    true - ramp * self.lag * (1.0 - fade) + (shown - previous) * fade
                    if self.lag > 0.0
                    else true
                )
                keep = math.exp(-gap / self.memory) if self.memory > 0.0 else 0.0
                wander = keep * wander + math.sqrt(1.0 - keep * keep) * chance.gauss(0.0, 1.0)
            before, previous = at, true
            step = self.step_at(shown * self.scale)
            value = shown * self.scale + self.scatter * step * wander
            log.append(max(round(value / step), 1) * step)
        return log
