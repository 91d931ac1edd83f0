"""Tests as they are met: drawn at random, by seed, before any verdict."""

import random

from simulator.gauge import Gauge
from simulator.sources import Leak, OilLayer, Puddle, Walls
from simulator.vessel import DecayTest

MICRON = 0.133322368  # Pa
FAMILIES = (
    ("tight", 20), ("leaky", 17), ("gassy", 17), ("both", 17), ("hasty", 17), ("slow", 12),
)  # fmt: skip


def draw(seed):
    """One test."""
    chance = random.Random(seed)
    family = chance.choices([f for f, _ in FAMILIES], [w for _, w in FAMILIES])[0]
    volume, duration, interval = _design(chance, family)
    first = _between(chance, 60.0, 420.0) * MICRON
    limit = chance.choice([500.0, 500.0, 500.0, 500.0, 300.0, 1000.0]) * MICRON
    if first > 0.8 * limit:
        first *= 0.5
    concern = chance.choice([0.5, 0.5, 0.5, 0.2, 2.0]) * MICRON * 1e-3
    gauge = _gauge(chance)
    known = chance.random() < 0.5
    # People write temperatures down when they change; now and then they do not.
    far = 4.0 if known else chance.choice([0.3, 0.3, 0.3, 2.0])
    warming = chance.uniform(-far, far)
    amount = _between(chance, 200.0, 6000.0) * MICRON
    leak = _leak(chance, family, volume, duration, concern, amount)
    sources = _sources(chance, family, volume, duration, first, amount)
    for source in sources:
        if isinstance(source, Puddle):
            source.warm(warming / duration, duration)
    return DecayTest(
        seed=seed,
        volume=volume,
        first_pressure=first,
        leak=leak,
        sources=sources,
        uneven=chance.choice([0.0, 1.0]) * first * chance.uniform(-0.04, 0.08),
        evening_time=chance.uniform(5.0, 40.0),
        warming=warming,
        warming_known=known,
        gauge=gauge,
        duration=duration,
        interval=interval,
        coldest_known=chance.random() < 0.5,
        limit=limit,
        concern=concern,
        volume_known=chance.random() < 0.8,
        pumping=chance.choice([0.0] * 9 + [0.15 * duration]) if duration / interval > 30 else 0.0,
    )


def _between(chance, low, high):
    """Draw evenly in the logarithm."""
    return low * (high / low) ** chance.random()


def _design(chance, family):
    volume = chance.choice(
        [0.027, _between(chance, 0.004, 0.05), _between(chance, 0.004, 0.05),
         _between(chance, 0.05, 3.0)]
    )  # fmt: skip
    usual = 600.0 * max((volume / 0.02) ** 0.7, 1.0)
    if family == "hasty":
        duration = usual * _between(chance, 0.03, 0.6)
        readings = chance.choice([1, 1, 1, 2, 3, 5, 10, 60])
    else:
        duration = usual * _between(chance, 0.8, 6.0)
        readings = chance.choice([5, 8, 10, 15, 20, 30, 60, 120, 300, 600, 900])
    duration = min(duration, 86_400.0)
    return volume, duration, max(duration / readings, 1.0)


def _gauge(chance):
    return Gauge(
        step=chance.choice([0.1, 1.0, 1.0, 1.0, 1.0, 5.0, 10.0]) * MICRON,
        band=chance.choice([1000.0, 2000.0, 1e9]) * MICRON,
        lag=chance.choice([0.0, 1.0, _between(chance, 1.0, 20.0)]),
        scale=1.0 + chance.gauss(0.0, 0.03),
        scatter=chance.choice([0.05, 0.3, 0.6, 1.2]),
        memory=chance.choice([0.0, 0.0, 2.0, 10.0]),
    )


def _leak(chance, family, volume, duration, concern, amount):
    if family in ("tight", "gassy", "slow"):
        small = chance.random() < 0.3
        return Leak(concern * _between(chance, 0.001, 0.2), volume) if small else None
    if family == "hasty" and chance.random() < 0.6:
        return None
    if family == "both":
        return Leak(amount * volume / duration * _between(chance, 0.1, 4.0), volume)
    return Leak(concern * _between(chance, 0.3, 60.0), volume)


def _sources(chance, family, volume, duration, first, amount):
    if family in ("tight", "leaky"):
        little = first * chance.choice([chance.uniform(0.0, 0.02), chance.uniform(0.0, 0.2)])
        return (Walls(little, duration * _between(chance, 0.02, 0.3), 1.0),)
    if family == "hasty":
        if chance.random() < 0.5:
            return ()
        return (_gas(chance, amount, duration * _between(chance, 0.3, 5.0), volume, first),)
    if family == "slow":
        time = duration * chance.choice([_between(chance, 0.7, 3.0), _between(chance, 0.5, 20.0)])
    else:
        time = duration * _between(chance, 0.03, 0.2 if family == "both" else 0.3)
    gas = [_gas(chance, amount, time, volume, first)]
    if chance.random() < 0.3:
        gas.append(Walls(first * chance.uniform(0.0, 0.3), time * chance.uniform(0.2, 1.0), 1.0))
    return tuple(gas)


def _gas(chance, amount, time, volume, first):
    kind = chance.choice(["oil", "walls", "one", "puddle"])
    if kind == "oil":
        return OilLayer(amount, 2.47 * time)  # slowest term of the series has this time
    if kind == "walls":
        return Walls(amount, time, chance.uniform(0.2, 1.0))
    if kind == "one":
        return Walls(amount, time, 0.0)
    surroundings = chance.uniform(283.0, 303.0)
    enough = amount * volume * 0.018015 / (8.314462618 * surroundings)
    return Puddle(
        mass=enough * chance.choice([1.0, 1.0, _between(chance, 1.0, 300.0)]),
        conductance=volume / time * _between(chance, 0.3, 3.0),
        warming=_between(chance, 0.05, 3.0),
        metal=_between(chance, 50.0, 2000.0),
        start_temperature=chance.uniform(255.0, surroundings),
        surroundings=surroundings,
        volume=volume,
        vapor=first * chance.uniform(0.2, 1.0),
    )
