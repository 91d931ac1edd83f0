"""Time of a pull-down and of a comparison of two rigs, natively and in the browser's Python.

    .venv/bin/python scripts/bench_pull_down.py [--runs 21]

Both ask the same strings through the same door, ``calculators.outputs.browser.reply``; every
question has another volume, so that nothing can be remembered. In the browser the clock runs
from the question to the reply, with Python already up. Run it after
``python3 scripts/serve.py --build-only``, on a machine that is doing nothing else.
"""

import argparse
import json
import statistics
import sys
import time
from collections.abc import Callable

import site_server
from build_site import SITE
from find_browser import ARGUMENTS, browser
from playwright.sync_api import Error, sync_playwright
from steps import ROOT, StepFailed, main

sys.path.append(str(ROOT))

from calculators.outputs.browser import reply

SIDES = [
    {"part": "hose-3/8", "line": "a"},
    {"part": "core-tool", "line": "a"},
    {"part": "hose-3/4", "line": "b"},
    {"part": "core-tool-5/16", "line": "b"},
]
QUESTIONS = {
    "pull-down, one hose": ("pull-down", {}),
    "pull-down, two unequal sides": ("pull-down", {"path": SIDES}),
    "compare-rigs, two rigs": ("compare-rigs", {}),
}
ASK = """
async ({ card, entries }) => {
  const { engine } = await import("/assets/js/guide.js");
  const start = performance.now();
  const answer = await engine.ask({ do: "answer", card, entries, system: "us" }, "bench");
  return { took: performance.now() - start, ok: answer.ok };
}
"""


def timed(ask: Callable[[str, dict], float], runs: int) -> dict[str, list[float]]:
    """Milliseconds of every question, in turn; the first of each is not counted."""
    taken: dict[str, list[float]] = {name: [] for name in QUESTIONS}
    for run in range(runs + 1):
        for name, (card, entries) in QUESTIONS.items():
            taken[name].append(ask(card, {**entries, "volume": f"{10 + run} L"}))
    return {name: times[1:] for name, times in taken.items()}


def natively(card: str, entries: dict) -> float:
    question = {"do": "answer", "card": card, "entries": entries, "system": "us"}
    start = time.perf_counter()
    answer = json.loads(reply(json.dumps(question)))
    took = 1000.0 * (time.perf_counter() - start)
    if not answer["ok"]:
        raise StepFailed(f"{card} gave no answer.")
    return took


def in_the_browser(runs: int) -> dict[str, list[float]]:
    server = site_server.start(SITE)
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=browser(), args=ARGUMENTS)
        page = chromium.new_page()
        page.goto(f"http://localhost:{server.server_port}/calculators/pull-down/")
        page.wait_for_selector("worked-card[state=done]", timeout=60_000)

        def ask(card: str, entries: dict) -> float:
            answer = page.evaluate(ASK, {"card": card, "entries": entries})
            if not answer["ok"]:
                raise StepFailed(f"{card} gave no answer in the browser.")
            return answer["took"]

        return timed(ask, runs)


def bench() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--runs", type=int, default=21)
    options = parser.parse_args()
    if not SITE.exists():
        raise StepFailed("There is no site: run python3 scripts/serve.py --build-only")
    native = timed(natively, options.runs)
    try:
        browsers = in_the_browser(options.runs)
    except Error as error:
        raise StepFailed(f"The page gave no answer: {error.message.splitlines()[0]}") from None
    print(f"One answer, median of {options.runs} runs (slowest), ms\n")
    print("| question | natively | in the browser | ratio |")
    print("| --- | ---: | ---: | ---: |")
    for name in QUESTIONS:
        middle, far = (statistics.median(times[name]) for times in (native, browsers))
        slowest = max(native[name]), max(browsers[name])
        print(
            f"| {name} | {middle:.0f} ({slowest[0]:.0f}) | {far:.0f} ({slowest[1]:.0f}) "
            f"| {far / middle:.1f} |"
        )


if __name__ == "__main__":
    main(bench)
