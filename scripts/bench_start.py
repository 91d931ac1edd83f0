"""How soon the guide answers: its start against plain PyScript, its bytes, its build, Lighthouse.

    .venv/bin/python scripts/bench_start.py [start link slowed build lighthouse] [--runs 7]

Without names, every part is measured anew; the others keep the figures they have. The result,
with every single time, goes to docs/look-up/speed.json, from which speed_report.py makes the
page. What is compared is measured in turns: each round opens every page once in each way, and
the first round is thrown away. Run it on a machine that is doing nothing else.
"""

import argparse
import json
import os
import platform
import shutil
import subprocess
import sys
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path

import bench_build
import bench_lighthouse
import bench_visits
import plain_page
from bench_visits import PUBLISHED, WITHOUT
from build_site import SITE
from compress import precompress
from find_browser import browser
from offline import NAME, write_service_worker
from speed_report import DATA
from steps import StepFailed, main, run, say, step


def publish() -> None:
    """Publish the guide as it is now, unless that has been done."""
    build = [sys.executable, "scripts/serve.py", "--build-only"]
    run(build, or_else="The site could not be built.")
    step(
        "Published guide", _publish, key=SITE.with_name("site.made-from").read_text(), makes=WITHOUT
    )


def _publish() -> None:
    """Publish, and once more so that Python is started, not restored."""
    words = ("--address", "http://localhost:8000/", "--to", PUBLISHED)
    run([sys.executable, "scripts/publish.py", *words], or_else="The site could not be published.")
    shutil.rmtree(WITHOUT, ignore_errors=True)
    shutil.copytree(PUBLISHED, WITHOUT)
    worker = next((WITHOUT / "assets" / "runtime").glob("worker-*.js"))
    code = worker.read_text("utf-8")
    changed = code.replace("if (!isTested())", "if (true)")
    if changed == code:
        raise StepFailed("worker.js no longer asks isTested(): see how bench_start.py changes it.")
    worker.write_text(changed, "utf-8")
    write_service_worker(WITHOUT)
    for path in (worker, WITHOUT / NAME):
        precompress(path, quality=11)


PARTS: dict[str, Callable[[int], dict]] = {
    "start": bench_visits.start,
    "link": bench_visits.link,
    "slowed": bench_visits.slow,
    "build": lambda runs: bench_build.measure(),
    "lighthouse": lambda runs: bench_lighthouse.measure(PUBLISHED, plain_page.packages()),
}
FEWER = {"slowed": 5}  # runs: each takes a minute


def machine() -> dict:
    """Say what it was measured on, in words that name no machine."""
    version = subprocess.run([browser(), "--version"], capture_output=True, text=True).stdout
    return {
        "cores": os.cpu_count(),
        "system": platform.system(),
        "browser": " ".join(version.split()[:2]),
        "date": datetime.now(UTC).date().isoformat(),
    }


def bench() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("parts", nargs="*", metavar="part", help=", ".join(PARTS))
    parser.add_argument("--runs", type=int, default=7)
    parser.add_argument("--to", type=Path, default=DATA, help="the file of results")
    options = parser.parse_args()
    unknown = [part for part in options.parts if part not in PARTS]
    if unknown:
        raise StepFailed(f"There is no part {unknown[0]}: choose from {', '.join(PARTS)}.")
    plain_page.make()
    publish()
    found = json.loads(options.to.read_text("utf-8")) if options.to.exists() else {}
    for part in options.parts or PARTS:
        say(f"Measuring: {part}")
        before = os.getloadavg()[0]
        measured = PARTS[part](min(options.runs, FEWER.get(part, options.runs)))
        load = {"load": [round(before, 1), round(os.getloadavg()[0], 1)]}
        found[part] = machine() | load | measured
        options.to.write_text(json.dumps(found, indent=1) + "\n", "utf-8")
    say(f"The figures are in {options.to}.")


if __name__ == "__main__":
    main(bench)
