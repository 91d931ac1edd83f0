"""Time from navigation to the first answer that Python computed, in Chromium.

    .venv/bin/python scripts/bench_first_answer.py [--runs 7] [--page /calculators/boiling-point/]

Cold is a new profile in a running browser; warm is the same page opened again in it. The
clock is the page's own, from the start of the navigation to the frame in which the page's
first worked-card turns to state="done". Served from localhost, compressed. Run it after
``python3 scripts/serve.py --build-only``, on a machine that is doing nothing else.
"""

import argparse
import statistics

import site_server
from build_site import SITE
from find_browser import ARGUMENTS, browser
from playwright.sync_api import Error, Page, sync_playwright
from steps import StepFailed, main

# Watches for the state from before the page's own scripts run, and notes the time once.
CLOCK = """
const watch = new MutationObserver(() => {
  const card = document.querySelector("worked-card");
  if (!["done", "broken"].includes(card?.getAttribute("state"))) return;
  watch.disconnect();
  requestAnimationFrame(() => {
    const painted = new MessageChannel();
    painted.port1.onmessage = () => { window.firstAnswer = performance.now(); };
    painted.port2.postMessage("");
  });
});
watch.observe(document, { attributes: true, attributeFilter: ["state"], subtree: true });
"""


def first_answer(page: Page, address: str) -> float:
    """Open the page and give the milliseconds to its first answer."""
    page.goto(address)
    page.wait_for_selector("worked-card[state=done], worked-card[state=broken]", timeout=60_000)
    if page.locator("worked-card").first.get_attribute("state") == "broken":
        raise StepFailed("Python did not start in the browser, so there is nothing to time.")
    page.wait_for_timeout(300)
    return page.evaluate("firstAnswer")


def measure(address: str, runs: int, server: site_server.Server) -> dict[str, list[tuple]]:
    """Take cold and warm times and bytes, alternating, one discarded run first."""
    taken: dict[str, list[tuple]] = {"cold": [], "warm": []}
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=browser(), args=ARGUMENTS)
        for _ in range(runs + 1):
            context = chromium.new_context()
            context.add_init_script(CLOCK)
            page = context.new_page()
            for which, times in taken.items():
                before = server.sent
                times.append((first_answer(page, address), server.sent - before))
                page.wait_for_timeout(1000 if which == "cold" else 0)
            context.close()
    return {which: times[1:] for which, times in taken.items()}


def bench() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--page", default="/calculators/boiling-point/")
    parser.add_argument("--runs", type=int, default=7)
    options = parser.parse_args()
    if not SITE.exists():
        raise StepFailed("There is no site: run python3 scripts/serve.py --build-only")
    server = site_server.start(SITE)
    try:
        taken = measure(
            f"http://localhost:{server.server_port}{options.page}", options.runs, server
        )
    except Error as error:
        raise StepFailed(f"The page gave no answer: {error.message.splitlines()[0]}") from None
    print(f"First Python-computed answer on {options.page}, median of {options.runs} runs\n")
    print("| visit | median ms | fastest | slowest | MB received |")
    print("| --- | ---: | ---: | ---: | ---: |")
    for which, runs in taken.items():
        times, received = [time for time, _ in runs], statistics.median(b for _, b in runs)
        middle, low, high = statistics.median(times), min(times), max(times)
        print(f"| {which} | {middle:.0f} | {low:.0f} | {high:.0f} | {received / 1e6:.3f} |")


if __name__ == "__main__":
    main(bench)
