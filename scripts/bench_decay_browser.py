"""Time from a pasted log to its verdict in Chromium: read, judged, worded and drawn as data.

    .venv/bin/python scripts/bench_decay_browser.py [--runs 5]

Asks the page's own worker for the whole answer of the decay card, for logs up to a day at one
reading per second. Run it after ``python3 scripts/serve.py --build-only``.
"""

import argparse
import statistics

import site_server
from bench_decay_speed import LENGTHS, log
from build_site import SITE
from find_browser import ARGUMENTS, browser
from playwright.sync_api import sync_playwright
from steps import StepFailed, main

ASK = """async ([text, runs]) => {
  const { engine } = await import("/assets/js/guide.js");
  const entries = { readings: text, volume: "10 L" };
  const times = [];
  for (let run = 0; run <= runs; run += 1) {
    const began = performance.now();
    const question = { do: "answer", card: "decay", entries, system: "us" };
    const reply = await engine.ask(question, `run-${run}`);
    if (!reply.ok) return null;
    times.push(performance.now() - began);
  }
  return times.slice(1);
}"""


def bench() -> None:
    """Run it."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--runs", type=int, default=5)
    options = parser.parse_args()
    server = site_server.start(SITE)
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=browser(), args=ARGUMENTS)
        page = chromium.new_page()
        page.goto(f"http://localhost:{server.server_port}/calculators/decay/")
        page.wait_for_selector("worked-card[state=done]", timeout=60_000)
        print(f"Chromium {chromium.version}, median of {options.runs}")
        before = None
        for count in LENGTHS:
            times = page.evaluate(ASK, [log(count), options.runs])
            if not times:
                raise StepFailed(f"a log of {count:,} readings was refused")
            whole = statistics.median(times)
            ratio = f"{whole / before:6.2f}" if before else ""
            print(f"{count:>9,} readings {whole:>9.1f} ms {ratio}")
            before = whole
        chromium.close()
    server.shutdown()


if __name__ == "__main__":
    main(bench)
