"""Time and memory of making many variants of a twelve-problem set, from the shell.

    python scripts/bench_assignment.py [--most 1000]

Runs the command itself for 10, 100 and 1,000 variants, each in a process and a folder of its
own: sheets and keys as HTML, the table, the packages. PDF is left out: that is Chromium's time.
"""

from __future__ import annotations

import argparse
import json
import subprocess
import sys
import tempfile
import time
from itertools import pairwise
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
PEAK = """
import json, resource, sys, time
sys.path.insert(0, {root!r})
from calculators.outputs import assignment_command
started = time.perf_counter(), time.process_time()
status = assignment_command.main({words!r})
peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
spent = time.perf_counter() - started[0], time.process_time() - started[1]
print(json.dumps([status, *spent, peak]))
"""


def measure(variants: int) -> tuple[float, float, float, int, float]:
    """Seconds by the clock and of the processor, peak [MB], files and megabytes written."""
    with tempfile.TemporaryDirectory() as folder:
        words = ["--seed", "7", "--problems", "12", "--variants", str(variants)]
        words += ["--formats", "html,csv,qti", "--out", folder]
        code = PEAK.format(root=str(ROOT), words=words)
        done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True)
        status, seconds, busy, peak = json.loads(done.stdout.splitlines()[-1])
        if status:
            raise SystemExit(done.stderr)
        files = [path for path in Path(folder).rglob("*") if path.is_file()]
        size = sum(path.stat().st_size for path in files) / 1e6
    unit = 1e6 if sys.platform == "darwin" else 1e3  # bytes there, kilobytes elsewhere
    return seconds, busy, peak / unit, len(files), size


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, usage="bench_assignment.py [options]")
    parser.add_argument("--most", type=int, default=1000)
    most = parser.parse_args().most
    heads = f"{'variants':>9}{'s':>9}{'CPU s':>9}{'CPU ms each':>13}"
    print(heads + f"{'files/s':>10}{'peak MB':>9}{'MB out':>8}")
    rows = []
    for variants in [n for n in (10, 100, 1000) if n <= most]:
        time.sleep(0.5)
        seconds, busy, peak, files, size = measure(variants)
        rows.append((variants, busy))
        print(
            f"{variants:9}{seconds:9.1f}{busy:9.1f}{1e3 * busy / variants:13.1f}"
            f"{files / seconds:10.0f}{peak:9.0f}{size:8.1f}",
            flush=True,
        )
    for (few, short), (many, long) in pairwise(rows):
        each = (long - short) / (many - few)
        print(f"From {few} to {many} variants, each further one takes {1e3 * each:.1f} ms of CPU.")


if __name__ == "__main__":
    main()
