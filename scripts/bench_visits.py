"""Rounds of visits to the guide, to the guide without its snapshot and to plain PyScript.

Part of bench_start.py, which says how; each part here gives what goes into the data.
"""

import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass

import plain_page
import shaped_link
import site_server
from find_browser import ARGUMENTS, browser
from playwright.sync_api import Browser, BrowserContext, sync_playwright
from slowed_browser import SHARE, slowed
from start_clock import Counted, Handler, Visit, first_answer, new_page, wait_for_copy
from steps import BUILD, say

PUBLISHED, WITHOUT = BUILD / "bench-published", BUILD / "bench-without-snapshot"
CARD, NEXT = "/calculators/boiling-point/", "/calculators/saturation-pressure/"
PAUSE = 1.5  # s between a first answer and the next visit


class ShapedHandler(Counted, shaped_link.Handler):
    """The server behind the link, counting."""


@dataclass(frozen=True)
class Way:
    """One of the pages compared: its name in the data, its server, where it answers."""

    name: str
    server: site_server.Server
    path: str

    def at(self, path: str = "") -> str:
        """Give the address of its page, or of another."""
        return f"http://localhost:{self.server.server_port}{path or self.path}"


def ways(handler: type[site_server.Handler]) -> list[Way]:
    """Serve the guide, the guide without its snapshot, and the plain page."""
    folders = {
        "guide": (PUBLISHED, CARD),
        "without": (WITHOUT, CARD),
        "plain": (plain_page.FOLDER, "/"),
    }
    made = []
    for name, (folder, path) in folders.items():
        server = site_server.start(folder, handler=handler)
        server.copied = 0
        made.append(Way(name, server, path))
    return made


@contextmanager
def started() -> Iterator[Browser]:
    """Start the browser for rounds of new profiles."""
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=browser(), args=ARGUMENTS)
        yield chromium
        chromium.close()


# --- one round -------------------------------------------------------------------


def open_twice(chromium: Browser, way: Way) -> dict[str, Visit]:
    """Open a page with a new profile, then again, then the next page of the guide."""
    context = chromium.new_context()
    try:
        page = new_page(context)
        visits = {"cold": first_answer(page, way.at(), way.server)}
        time.sleep(PAUSE)
        visits["warm"] = first_answer(page, way.at(), way.server)
        if way.path == CARD:
            time.sleep(PAUSE)
            visits["next"] = first_answer(page, way.at(NEXT), way.server)
        return visits
    finally:
        context.close()


def open_cold(chromium: Browser, way: Way) -> dict[str, Visit]:
    """Open a page with a new profile, and no more."""
    context = chromium.new_context()
    try:
        return {"cold": first_answer(new_page(context), way.at(), way.server)}
    finally:
        context.close()


def rounds(runs: int, compared: list[Way], one: Callable[[Way], dict[str, Visit]]) -> dict:
    """Take rounds of one visit to each way, and throw the first away."""
    taken: dict[str, dict[str, list[Visit]]] = {}
    for number in range(runs + 1):
        for way in compared:
            for visit, measured in one(way).items():
                taken.setdefault(way.name, {}).setdefault(visit, []).append(measured)
        say(f"  round {number} of {runs}")
    return {
        name: {
            visit: {
                "ms": [round(each.ms) for each in measured[1:]],
                "bytes": [each.sent for each in measured[1:]],
                "readable": [round(each.readable) for each in measured[1:] if each.readable],
            }
            for visit, measured in visits.items()
        }
        for name, visits in taken.items()
    }


# --- the parts ---------------------------------------------------------------------


def start(runs: int) -> dict:
    """Time everything from this machine, at its own speed."""
    compared = ways(Handler)
    with started() as chromium:
        taken = rounds(runs, compared, lambda way: open_twice(chromium, way))
    back, copies = come_back(compared, runs)
    for name, visits in back.items():
        taken[name] |= visits
    return {"runs": runs, "ways": taken, "copies": copies}


def come_back(compared: list[Way], runs: int) -> tuple[dict, dict]:
    """Start the browser anew with a profile that has been there, its offline copy whole."""
    with ExitStack() as stack:
        chromium = stack.enter_context(sync_playwright()).chromium
        profiles = {
            way.name: stack.enter_context(
                tempfile.TemporaryDirectory(prefix="bench-", ignore_cleanup_errors=True)
            )
            for way in compared
        }

        def launch(way: Way) -> BrowserContext:
            return chromium.launch_persistent_context(
                profiles[way.name], executable_path=browser(), args=ARGUMENTS
            )

        copies = {}
        for way in compared:
            copied = way.server.copied  # by visits before this one, whose copies were cut short
            context = launch(way)
            page = new_page(context)
            first_answer(page, way.at(), way.server)
            if way.path == CARD:
                wait_for_copy(page)
                copies[way.name] = way.server.copied - copied
                before = way.server.sent
                first_answer(page, way.at(), way.server)
                time.sleep(PAUSE)
                copies[f"{way.name}, second visit"] = way.server.sent - before
            else:
                time.sleep(PAUSE)
            context.close()

        def once(way: Way) -> dict[str, Visit]:
            context = launch(way)
            try:
                return {"back": first_answer(new_page(context), way.at(), way.server)}
            finally:
                context.close()

        return rounds(runs, compared, once), copies


def link(runs: int) -> dict:
    """Time a first visit behind a phone's link."""
    compared = ways(ShapedHandler)
    with started() as chromium:
        taken = rounds(runs, compared, lambda way: open_cold(chromium, way))
    shaped = {"bits_per_second": shaped_link.BITS_PER_SECOND, "delay": shaped_link.DELAY}
    return {"runs": runs, **shaped, "ways": taken}


def slow(runs: int) -> dict:
    """Time everything with a browser that gets a quarter of its time."""
    compared = ways(Handler)
    with started() as chromium, slowed():
        taken = rounds(runs, compared, lambda way: open_twice(chromium, way))
    return {"runs": runs, "share": SHARE, "ways": taken}
