"""Time to read and to judge a log, natively and inside Pyodide, against its length.

    .venv/bin/python scripts/bench_decay_speed.py [--runs 5]
    node scripts/in_pyodide.mjs --stdlib ZIP --app ZIP scripts/bench_decay_speed.py

Prints medians for logs from 1,350 readings to a day at one per second, and the ratio of times
for each doubling: 2 is linear.
"""

import math
import random
import statistics
import sys
import time

RUNS = 5
LENGTHS = (1_350, 2_700, 5_400, 10_800, 21_600, 43_200, 86_400)


def log(count: int) -> str:
    """A log as a gauge writes it: a leak, some gas, scatter, whole microns."""
    chance = random.Random(count)

    def pressure(at: int) -> float:
        return 300 - 400 * math.expm1(-5 * at / count) + 300 * at / count + chance.gauss(0, 1)

    rows = (f"{at},{pressure(at):.0f}" for at in range(count))
    return "seconds,micron\n" + "\n".join(rows)


def median(do) -> float:
    """Median of the runs, in seconds, after one that does not count."""
    times = []
    for _ in range(RUNS + 1):
        began = time.perf_counter()
        do()
        times.append(time.perf_counter() - began)
    return statistics.median(times[1:])


def bench() -> None:
    """Run it."""
    from calculators.physics.rise_judgment import judge_rise
    from calculators.readings import read_log

    micron = 101_325.0 / 760_000.0
    print(f"Python {sys.version.split()[0]} on {sys.platform}, median of {RUNS}")
    print(f"{'readings':>9} {'read ms':>9} {'judge ms':>9} {'both ms':>9} {'ratio':>6}")
    before = None
    for count in LENGTHS:
        text = log(count)
        read = read_log(text)

        def judged(read=read) -> None:
            judge_rise(
                time=read.times,
                pressure=read.pressures,
                resolution=micron,
                limit=500.0 * micron,
                volume=0.01,
                leak_of_concern=0.5 * micron * 1e-3,
            )

        reading, judging = median(lambda text=text: read_log(text)), median(judged)
        whole = reading + judging
        ratio = f"{whole / before:6.2f}" if before else ""
        print(
            f"{count:>9,} {1e3 * reading:>9.1f} {1e3 * judging:>9.1f} {1e3 * whole:>9.1f} {ratio}"
        )
        before = whole


if __name__ == "__main__":
    if "--runs" in sys.argv:
        RUNS = int(sys.argv[sys.argv.index("--runs") + 1])
    if sys.platform != "emscripten":
        from steps import ROOT

        sys.path.insert(0, str(ROOT))
    bench()
