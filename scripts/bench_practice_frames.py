"""Frames of the practice bench at 60 times life, with the processor as it is and four times slower.

    .venv/bin/python scripts/bench_practice_frames.py [--seconds 20] [--speed 60]

Counts the page's animation frames, how many took longer than 25 ms (one missed at 60 a second)
and than 50 ms, and how fast the bench's clock really went. Slow means both: the page throttled
four times by Chromium, and its processes stopped for three quarters of the time, in turns of
12 ms, which reaches the worker too. The second table does not depend on what else the machine
does: processor time of the page's own thread, per task and per frame. Run it after
``python3 scripts/serve.py --build-only``, on a machine that is doing nothing else: the same page
without the clock running is beside it.
"""

import argparse
import json
import os
import signal
import statistics
import subprocess
import threading
import time
from itertools import pairwise

import site_server
from build_site import SITE
from find_browser import ARGUMENTS, browser
from playwright.sync_api import Browser, Error, Page, sync_playwright
from steps import StepFailed, main

SLOWER = 4
TURN = 0.012  # s
FRAME = 1000 / 60  # ms
CASE = 4  # gas comes out of its oil: something happens for as long as it runs
FRAMES = """(seconds) => new Promise((done) => {
  const times = [];
  const until = performance.now() + 1000 * seconds;
  const each = (now) => {
    times.push(now);
    if (now < until) requestAnimationFrame(each); else done(times);
  };
  requestAnimationFrame(each);
})"""


class Slowed:
    """Stops a process and continues it, so that it runs a quarter of the time."""

    def __init__(self, process: int) -> None:
        self._process, self._over = process, threading.Event()
        self._thread = threading.Thread(target=self._turns, daemon=True)

    def __enter__(self) -> "Slowed":
        self._thread.start()
        return self

    def __exit__(self, *_: object) -> None:
        self._over.set()
        self._thread.join()
        os.kill(self._process, signal.SIGCONT)

    def _turns(self) -> None:
        while not self._over.is_set():
            os.kill(self._process, signal.SIGSTOP)
            time.sleep(TURN * (SLOWER - 1) / SLOWER)
            os.kill(self._process, signal.SIGCONT)
            time.sleep(TURN / SLOWER)


def renderers(of: int) -> dict[int, float]:
    """Page processes below one process, each with the processor time it has used."""
    lines = subprocess.run(
        ["ps", "-eo", "pid=,ppid=,cputimes=,args="], capture_output=True, text=True, check=True
    ).stdout.splitlines()
    rows = [line.split(None, 3) for line in lines]
    family, before = {of}, 0
    while len(family) > before:
        before = len(family)
        family |= {int(row[0]) for row in rows if int(row[1]) in family}
    return {
        int(pid): float(used)
        for pid, _, used, command in rows
        if int(pid) in family and "--type=renderer" in command and "extension" not in command
    }


def clock(page: Page) -> float:
    """Seconds on the bench's clock."""
    hours, minutes, seconds = page.locator("[data-part=clock]").inner_text().split(":")
    return 3600 * int(hours) + 60 * int(minutes) + int(seconds)


def row(name: str, page: Page, seconds: float) -> None:
    """Count frames for a while and print what came of it."""
    before = clock(page)
    times = page.evaluate(FRAMES, seconds)
    went = (clock(page) - before) / ((times[-1] - times[0]) / 1000)
    gaps = [later - earlier for earlier, later in pairwise(times)]
    late = [sum(gap > limit for gap in gaps) for limit in (25, 50)]
    rate = len(gaps) / (times[-1] - times[0]) * 1000
    print(
        f"| {name} | {len(gaps)} | {rate:.1f} | {statistics.median(gaps):.1f} | "
        f"{sorted(gaps)[int(0.99 * len(gaps))]:.1f} | {max(gaps):.1f} | {late[0]} | {late[1]} | "
        f"{went:.1f}× |",
        flush=True,
    )


def measure(page: Page, process: int, speed: int, seconds: float) -> None:
    """Print the table."""
    page.goto(f"/practice/bench/?case={CASE}")
    page.locator(f"[data-speed='{speed}']:not([disabled])").wait_for(timeout=120_000)
    page.locator("[data-control=pump][data-value=on]").click()
    throttle = page.context.new_cdp_session(page)

    def pair(name: str) -> None:
        for what, pressed in (("standing still", 0), (f"at {speed}×", speed)):
            page.locator(f"[data-speed='{pressed}']").click()
            page.wait_for_timeout(1500)
            row(f"{what}, {name}", page, seconds)

    print(
        "| what | frames | a second | median ms | 99 % ms | longest | > 25 ms | > 50 ms | clock |"
    )
    print("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |")
    pair("as it is")
    throttle.send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
    pair("page four times slower")
    throttle.send("Emulation.setCPUThrottlingRate", {"rate": 1})
    used = renderers(process)
    with Slowed(max(used, key=lambda each: used[each])):
        pair("page and worker stopped three quarters of the time")


def work(chromium: Browser, page: Page, speed: int, seconds: float) -> None:
    """Trace the page's own thread for a while and print the processor time of its tasks."""
    page.locator(f"[data-speed='{speed}']").click()
    page.wait_for_timeout(1500)
    chromium.start_tracing(page=page, categories=["toplevel", "devtools.timeline"])
    page.wait_for_timeout(1000 * seconds)
    events = json.loads(chromium.stop_tracing())["traceEvents"]
    ours = {
        (each["pid"], each["tid"])
        for each in events
        if each["name"] == "thread_name" and each["args"]["name"] == "CrRendererMain"
    }
    ours = [each for each in events if (each["pid"], each["tid"]) in ours and "tdur" in each]
    tasks = sorted(each["tdur"] / 1000 for each in ours if each["name"].endswith("::RunTask"))
    frames = sum(each["name"] == "FireAnimationFrame" for each in ours)
    late = sum(SLOWER * task > FRAME for task in tasks)
    print("\n| frames | processor ms a frame | task, 99 % | longest | over a frame if 4× slower |")
    print("| ---: | ---: | ---: | ---: | ---: |")
    print(
        f"| {frames} | {sum(tasks) / frames:.2f} | {tasks[int(0.99 * len(tasks))]:.2f} | "
        f"{tasks[-1]:.2f} | {late} of {len(tasks)} tasks |"
    )


def bench() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--seconds", type=float, default=20.0)
    parser.add_argument("--speed", type=int, default=60)
    options = parser.parse_args()
    if not SITE.exists():
        raise StepFailed("There is no site: run python3 scripts/serve.py --build-only")
    server = site_server.start(SITE)
    print(f"Load of the machine: {os.getloadavg()[0]:.1f} on {os.cpu_count()} cores\n")
    try:
        with sync_playwright() as playwright:
            chromium = playwright.chromium.launch(executable_path=browser(), args=ARGUMENTS)
            context = chromium.new_context(
                base_url=f"http://localhost:{server.server_port}",
                viewport={"width": 360, "height": 740},
            )
            page = context.new_page()
            measure(page, os.getpid(), options.speed, options.seconds)
            work(chromium, page, options.speed, options.seconds)
            chromium.close()
    except Error as error:
        raise StepFailed(f"The bench did not run: {error.message.splitlines()[0]}") from None


if __name__ == "__main__":
    main(bench)
