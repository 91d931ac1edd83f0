"""What the right verdict is, said from the truth and the test's design alone.

Written before any verdict was looked at. With L and G the rises by leak and by
gas over the test, r the gauge's step at the last reading, w how well a rise can
be read (scatter and number of independent readings), T what unrecorded warming
feigns, C the rise that the leak of concern would make, D the length:

140 w is where a straight line parts from gas with a time constant of 3 D by
six standard deviations: the two differ by 0.0124 L root mean square.

unambiguous (any competent judge must get these; shapes need 3 min, for common
practice gives pressures 1 to 2 min to even out)
  pass      L < r and < 0.3 C; gas rises under r in the last two thirds; no
            rise left that would break the limit; room of 30 r to the limit;
            5 r < 0.5 C; at least 5 min (10 min where the volume is unknown)
  leak      L > 40 r and 140 w; gas under 3 % of it; it matters: L > 1.5 C, or
            the limit is broken within five more such tests and within a day
            or twice the test
  moisture  G > 40 r and 40 w; under 4 % of it in the last quarter and 85 % of
            all there is has come; ends 10 % above the limit; L < r and < 0.2 C;
            the bend takes several readings
  leak-and-moisture
            both of the above at once: gas done by half-time (under 3 % of the
            leak's rise after it) and 10 % above the limit by itself, neither
            part under 15 % of the whole; L > 400 w, for half the readings and
            half the rise are left to tell a straight line by

ambiguous (no method could tell from these readings; "undecided" is right)
  short     nothing seen (L + G < 2 r), and 5 r > 2 C or under half the time
  two       two readings, more than 10 r apart, on the way past the limit
  bending   gas alone, slope at the end 25 to 80 % of that at the start, still
            slowing in the second half, on the way past the limit
  tangled   leak and gas, each over 25 %, test shorter than 1.5 time constants
            of gas that still slows in the second half
  coarse    five to eight steps of rise in all, on the way past the limit, too
            few or too coarse to tell straight from bent

mimic       gas that in the second half is as straight as a leak (its slope falls
            by under 7 %), such as water behind a restriction, or ice that
            slowly warms: nothing in the readings tells the two apart, and a
            judge that knows leaks sees one. Counted apart; a pass is wrong
            here too.

Everything else lies between and is counted apart; a false pass counts in all.
"""

import math
from dataclasses import dataclass

UNAMBIGUOUS = ("pass", "leak", "moisture", "leak-and-moisture")
AMBIGUOUS = ("short", "two", "bending", "tangled", "coarse")


@dataclass(frozen=True)
class Truth:
    """Kind of case, and the numbers that intervals are held against."""

    kind: str
    leak_rate: float  # Pa m3/s
    plateau: float  # Pa that gas alone would reach

    @property
    def expected(self):
        if self.kind in UNAMBIGUOUS:
            return self.kind
        return "undecided" if self.kind in AMBIGUOUS else None


def at(values, share):
    return values[min(round(share * (len(values) - 1)), len(values) - 1)]


def truth_of(test):
    """Classify a test."""
    leak, gas = test.leak_curve, test.gas_curve
    final_gas = sum(source.final for source in test.sources)
    rate = test.leak.throughput if test.leak else 0.0
    return Truth(_kind(test, leak, gas, final_gas), rate, test.first_pressure + final_gas)


def _kind(test, leak, gas, final_gas):
    first, end = test.first_pressure, test.first_pressure + leak[-1] + gas[-1]
    step = test.gauge.step_at(end)
    count = len(test.times)
    independent = min(count, test.duration / max(2.0 * test.gauge.memory, 1e-9) + 1.0)
    spread = math.hypot(test.gauge.scatter * step, step / math.sqrt(12.0))
    unsure = spread * math.sqrt(12.0 / independent)
    warm = abs(test.warming) / 295.0 * end * (0.1 if test.warming_known else 1.0)
    concern = test.concern * test.duration / test.volume if test.volume_known else math.inf
    rise, leak_rise, gas_rise = leak[-1] + gas[-1], leak[-1], gas[-1]
    enough = test.duration >= (300.0 if test.volume_known else 600.0)
    settled = (
        test.duration >= 180.0
        and (5.0 * test.evening_time <= test.duration / 4.0 or abs(test.uneven) < step)
        and test.gauge.lag <= test.duration / 40.0
    )
    gone = _time_to(test, gas, 0.63 * gas_rise)
    visible_bend = gone >= max(2.0 * test.interval, 3.0 * test.gauge.lag)
    on_the_way = end + 10.0 * _late_rise(leak, gas) > 1.1 * test.limit
    no_leak = leak_rise < step and leak_rise < 0.2 * concern

    if count == 2:
        if rise > 10.0 * step and end + 10.0 * rise > 1.1 * test.limit:
            return "two"
        if rise < 2.0 * step and 5.0 * step > 2.0 * concern:
            return "short"
        return "between"
    if rise < 2.0 * step and (
        5.0 * step > 2.0 * concern or test.duration < (150.0 if test.volume_known else 300.0)
    ):
        return "short"
    if (
        enough and settled and leak_rise < step and leak_rise < 0.3 * concern
        and gas_rise - at(gas, 1 / 3) < step
        and end + 10.0 * _late_rise(leak, gas) + 45.0 * step <= test.limit
        and first + final_gas < 0.9 * test.limit
        and 5.0 * step < 0.5 * concern and unsure < 0.5 * step and warm < 0.5 * step
    ):  # fmt: skip
        return "pass"
    ahead = min(5.0, max(86_400.0 / test.duration, 2.0))
    matters = leak_rise > 1.5 * concern or end + ahead * leak_rise > test.limit
    clear = max(40.0 * step, 40.0 * unsure, 50.0 * warm)
    straight = max(clear, 140.0 * unsure)
    if (
        count >= 6 and settled and matters and leak_rise > straight
        and gas_rise < 0.03 * leak_rise
    ):  # fmt: skip
        return "leak"
    if (
        count >= 8 and settled and no_leak and gas_rise > clear and visible_bend
        and gas_rise - at(gas, 0.75) < 0.04 * gas_rise and gas_rise > 0.85 * final_gas
        and end > 1.1 * test.limit
    ):  # fmt: skip
        return "moisture"
    if (
        count >= 12 and settled and matters and visible_bend
        and leak_rise > max(clear, 400.0 * unsure) and gas_rise > clear
        and gas_rise - at(gas, 0.5) < 0.03 * (leak_rise - at(leak, 0.5))
        and min(leak_rise, gas_rise) > 0.15 * rise and first + gas_rise > 1.1 * test.limit
    ):  # fmt: skip
        return "leak-and-moisture"
    early, late = at(gas, 0.1), gas_rise - at(gas, 0.9)
    middle = at(gas, 0.6) - at(gas, 0.5)
    steady = late > 0.93 * middle
    wet = gas_rise > 40.0 * step and on_the_way and first + final_gas > 1.1 * test.limit
    if wet and steady:
        return "mimic"
    if no_leak and wet and early > 0.0 and 0.25 <= late / early <= 0.8:
        return "bending"
    time_constant = _time_to(test, gas, 0.63 * final_gas)
    if (
        min(leak_rise, gas_rise) > max(0.25 * rise, 10.0 * step)
        and test.duration < 1.5 * time_constant and on_the_way and not steady
    ):  # fmt: skip
        return "tangled"
    sag = rise / 24.0
    if 5.0 * step <= rise <= 8.0 * step and on_the_way and sag < max(unsure, 0.35 * step):
        return "coarse"
    return "between"


def _late_rise(leak, gas):
    """Rise that the last third would make over a whole test."""
    return 3.0 * (leak[-1] + gas[-1] - at(leak, 2 / 3) - at(gas, 2 / 3))


def _time_to(test, curve, level):
    """Time at which a curve reaches a level; beyond the test if it does not."""
    if level <= 0.0:
        return 0.0
    for when, value in zip(test.times, curve, strict=True):
        if value >= level:
            return when
    return math.inf
