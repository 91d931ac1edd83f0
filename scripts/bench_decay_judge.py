"""Operating characteristic of the decay judge: thousands of simulated tests, truth known.

    .venv/bin/python scripts/bench_decay_judge.py [--logs 16000] [--first 1000000] [--jobs 2]

Draws tests by seed (tests/simulator/population.py), decides what is right from truth and design
alone (tests/simulator/truth.py), judges each, prints the tables, and keeps the figures in
scripts/figures/decay_judge.json for the verification page. Seeds below 1,000,000 were used while
the judge was made; those from there on were not.
"""

import argparse
import json
import statistics
import sys
import time
from collections import Counter
from collections.abc import Callable
from concurrent.futures import ProcessPoolExecutor
from itertools import pairwise

from steps import ROOT, StepFailed, main

sys.path[:0] = [str(ROOT), str(ROOT / "tests")]

from simulator.trial import Outcome, trial  # noqa: E402
from simulator.truth import AMBIGUOUS, UNAMBIGUOUS  # noqa: E402

KEPT = ROOT / "scripts" / "figures" / "decay_judge.json"
CODES = (*UNAMBIGUOUS, "undecided")
KINDS = (*UNAMBIGUOUS, *AMBIGUOUS, "mimic", "between")
EDGES = (0.0, 0.1, 0.2, 0.4, 0.6, 0.8, 1.0, 1.25, 1.6, 2.5, 5.0, 10.0, 1e9)
NEEDED = {"right": 0.97, "undecided": 0.95, "least_cover": 0.90, "most_cover": 0.99, "error": 0.05}


def share(outcomes: list[Outcome], good: Callable[[Outcome], bool]) -> tuple[int, int]:
    """How many of how many."""
    return sum(map(good, outcomes)), len(outcomes)


def characteristic(outcomes: list[Outcome]) -> dict:
    """Gather the numbers."""
    cases = {kind: [o for o in outcomes if o.kind == kind] for kind in KINDS}
    clear = [o for kind in UNAMBIGUOUS for o in cases[kind]]
    hazy = [o for kind in AMBIGUOUS for o in cases[kind]]
    passed = [o for o in outcomes if o.code == "pass"]
    sized = [o for o in outcomes if o.leak_over_unseen is not None]
    errors = [o.leak_error for o in outcomes if o.leak_error is not None]
    bins = []
    for low, high in pairwise(EDGES):
        inside = [o for o in sized if low <= o.leak_over_unseen < high]
        bins.append([low, high, *share(inside, lambda o: o.code == "pass")])
    return {
        "logs": len(outcomes),
        "first": outcomes[0].seed,
        "codes": CODES,
        "matrix": {
            kind: [Counter(o.code for o in same)[code] for code in CODES]
            for kind, same in cases.items()
        },
        "right": share(clear, lambda o: o.code == o.expected),
        "undecided": share(hazy, lambda o: o.code == "undecided"),
        "false_pass_leak": share(
            [o for o in passed if o.leak_over_unseen is not None],
            lambda o: o.leak_over_unseen > 1.0,
        ),
        "false_pass_plateau": share(passed, lambda o: o.plateau_over_limit > 1.0),
        "pass_by_leak": bins,
        "leak_cover": share([o for o in outcomes if o.leak_covered is not None],
                            lambda o: o.leak_covered),
        "plateau_cover": share([o for o in outcomes if o.plateau_covered is not None],
                               lambda o: o.plateau_covered),
        "leak_median_error": statistics.median(map(abs, errors)),
        "leak_bias": statistics.median(errors),
        "sure": share([o for o in clear if o.sure], lambda o: o.code == o.expected),
        "fair": share([o for o in clear if not o.sure and o.code != "undecided"],
                      lambda o: o.code == o.expected),
    }  # fmt: skip


def show(found: dict) -> None:
    """Print the tables."""
    print(f"\n{'truth':<20}" + "".join(f"{code:>19}" for code in CODES))
    for kind, row in found["matrix"].items():
        print(f"{kind:<20}" + "".join(f"{n:>19,}" for n in row))
    print("\ntrue leak over the smallest detectable: passes of logs")
    for low, high, passes, count in found["pass_by_leak"]:
        print(f"  {low:>5g} to {high if high < 1e6 else 'more':<6} {passes:>6,} of {count:,}")
    print()
    for name in ("right", "undecided", "false_pass_leak", "false_pass_plateau", "leak_cover",
                 "plateau_cover", "sure", "fair"):  # fmt: skip
        good, count = found[name]
        print(f"{name:<20} {good:>6,} of {count:<6,} {good / max(count, 1):8.2%}")
    error, bias = found["leak_median_error"], found["leak_bias"]
    print(f"{'leak error, median':<20} {error:.2%}, bias {bias:+.2%}")


def check(found: dict) -> None:
    """Fail if the judge is not as good as it must be."""
    rate = {k: v[0] / max(v[1], 1) for k, v in found.items() if isinstance(v, (list, tuple)) and
            k not in ("pass_by_leak", "matrix", "codes")}  # fmt: skip
    held = {
        "no false pass": found["false_pass_leak"][0] == 0 == found["false_pass_plateau"][0],
        "unambiguous right": rate["right"] >= NEEDED["right"],
        "ambiguous undecided": rate["undecided"] >= NEEDED["undecided"],
        "leak covered": NEEDED["least_cover"] <= rate["leak_cover"] <= NEEDED["most_cover"],
        "plateau covered": NEEDED["least_cover"] <= rate["plateau_cover"] <= NEEDED["most_cover"],
        "leak error": found["leak_median_error"] < NEEDED["error"],
    }
    failed = [name for name, holds in held.items() if not holds]
    if failed:
        raise StepFailed(f"the judge falls short: {', '.join(failed)}")


def bench() -> None:
    """Run it."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--logs", type=int, default=16_000)
    parser.add_argument("--first", type=int, default=1_000_000)
    parser.add_argument("--jobs", type=int, default=2)
    parser.add_argument("--keep", action="store_true", help="write the figures' data")
    options = parser.parse_args()
    began = time.perf_counter()
    seeds = range(options.first, options.first + options.logs)
    with ProcessPoolExecutor(options.jobs) as pool:
        outcomes = list(pool.map(trial, seeds, chunksize=100))
    found = characteristic(outcomes)
    show(found)
    print(f"{options.logs:,} logs in {time.perf_counter() - began:.0f} s")
    wrong = [f"{o.seed} {o.kind}: {o.code}" for o in outcomes if o.expected not in (None, o.code)]
    print("not as expected:", "; ".join(wrong[:40]))
    if options.keep:
        KEPT.write_text(json.dumps(found, indent=1) + "\n", encoding="utf-8")
        print(f"kept in {KEPT.relative_to(ROOT)}")
    check(found)


if __name__ == "__main__":
    main(bench)
