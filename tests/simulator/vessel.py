"""A decay test, run: what truly happens, and the log that is left of it."""

from __future__ import annotations

import math
import random
from dataclasses import dataclass
from functools import cached_property

from simulator.gauge import Gauge
from simulator.sources import Leak


@dataclass(frozen=True, kw_only=True)
class DecayTest:
    """One test: the system, its faults, the gauge, how long and how often it is read."""

    seed: int
    volume: float  # m3
    first_pressure: float  # Pa at isolation
    leak: Leak | None
    sources: tuple  # of gas from inside
    uneven: float  # Pa by which the gauge's end stands below the mean at isolation
    evening_time: float  # s in which two halves of the vessel even out
    warming: float  # K by which the gas warms over the test, evenly
    warming_known: bool  # whether start and end temperature were written down
    coldest_known: bool  # whether the temperature of the wet spot was written down
    gauge: Gauge
    duration: float  # s
    interval: float  # s between readings
    limit: float  # Pa
    concern: float  # Pa m3/s
    volume_known: bool
    pumping: float  # s of readings before isolation, pressure still falling
    start_temperature: float = 295.0  # K

    @property
    def coldest(self):
        """Temperature around water, if there is any and somebody measured it [K]."""
        around = [s.surroundings for s in self.sources if hasattr(s, "surroundings")]
        return around[0] if around and self.coldest_known else None

    @cached_property
    def times(self):
        count = max(round(self.duration / self.interval), 1)
        return [self.duration * k / count for k in range(count + 1)]

    @cached_property
    def leak_curve(self):
        return self.leak.curve(self.times) if self.leak else [0.0] * len(self.times)

    @cached_property
    def gas_curve(self):
        total = [0.0] * len(self.times)
        for source in self.sources:
            total = [a + b for a, b in zip(total, source.curve(self.times), strict=True)]
        return total

    @cached_property
    def true_pressure(self):
        """At the gauge, with evening-out and temperature [Pa]."""
        out = []
        for at, leak, gas in zip(self.times, self.leak_curve, self.gas_curve, strict=True):
            fade = math.exp(-at / self.evening_time) if self.evening_time else 0.0
            warm = 1.0 + self.warming * at / self.duration / self.start_temperature
            out.append((self.first_pressure + leak + gas) * warm - self.uneven * fade)
        return out

    def log(self):
        """Times [s] from the first reading on, readings [Pa], moment of isolation [s]."""
        chance = random.Random(self.seed)
        before = []
        if self.pumping:
            count = max(int(self.pumping / self.interval), 1)
            before = [-self.interval * k for k in range(count, 0, -1)]
        start = self.true_pressure[0]
        pump = self.pumping / 3.0 or 1.0
        falling = [start * (1.0 + 1.5 * (math.exp(-at / pump) - 1.0) / 19.0) for at in before]
        times = [*before, *self.times]
        readings = self.gauge.readings(times, [*falling, *self.true_pressure], chance)
        return [at - times[0] for at in times], readings, -times[0]
