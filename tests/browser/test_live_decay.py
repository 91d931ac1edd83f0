"""The decay test against a running clock, as a technician at the gauge meets it.

Readings go in with a thumb; the verdict follows each; a locked screen, a reload and a lost
signal lose nothing.
"""

import json
import re
import time

import pytest
from playwright.sync_api import expect

both_widths = pytest.mark.parametrize("width", [360, 1280])
both_schemes = pytest.mark.parametrize("scheme", ["light", "dark"])
PAGE = "/on-the-job/live-decay/"
KEY = "dry-tight:live-decay"
LEAK = [(0, 310), (1, 331), (2, 350), (3, 371), (4, 389), (5, 411), (6, 430), (8, 470), (10, 511)]


def part(page, name):
    return page.locator(f"live-decay [data-part={name}]")


def verdict(page):
    return page.locator("worked-card [data-part=main]").first


def add(page, reading):
    page.get_by_label("The gauge shows now").fill(reading)
    page.get_by_role("button", name="Add reading").click()


def remember(page, minutes_ago, readings):
    """Put a log on the device as if its readings had been added at their times."""
    start = round(time.time() * 1000) - minutes_ago * 60_000
    rows = [
        {"at": start + minute * 60_000, "reading": str(micron), "unit": "micron"}
        for minute, micron in readings
    ]
    log = json.dumps({"start": start, "readings": rows})
    page.evaluate("([key, log]) => localStorage.setItem(key, log)", [KEY, log])


def judged(page):
    card = page.locator("worked-card").first
    expect(card).to_have_attribute("state", "done")
    expect(card).not_to_have_attribute("stale", "")


@both_widths
@both_schemes
def test_the_clock_starts_and_the_verdict_follows_the_readings(page, width, scheme, screenshot):
    page.goto(PAGE)
    expect(page.locator("live-decay")).to_have_attribute("state", "idle")
    expect(page.locator("worked-card")).to_be_hidden()
    screenshot(page, "idle")
    page.get_by_role("button", name="The valve is shut").click()
    expect(part(page, "clock")).to_have_text(re.compile(r"^0:0\d$"))
    add(page, "305")
    expect(part(page, "count")).to_have_text("1 reading")
    screenshot(page, "running")
    add(page, "306")
    judged(page)

    expect(verdict(page)).to_have_attribute("data-code", "undecided")
    expect(part(page, "last")).to_contain_text("306 micron")
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    screenshot(page, "judging", full_page=True)


@both_widths
def test_a_reload_and_a_locked_screen_lose_nothing(page, width, screenshot):
    page.goto(PAGE)
    remember(page, 12, LEAK)
    page.reload()
    judged(page)

    expect(part(page, "clock")).to_have_text(re.compile(r"^1[23]:[0-5]\d$"))
    expect(part(page, "count")).to_have_text("9 readings")
    expect(verdict(page)).to_have_attribute("data-code", "leak")
    screenshot(page, "leak", full_page=True)
    # The clock is the device's, not a count: a device that slept for an hour is right at once.
    page.evaluate("""() => {
      const late = Date.now() + 3_600_000;
      Date.now = () => late;
      document.dispatchEvent(new Event("visibilitychange"));
    }""")
    expect(part(page, "clock")).to_have_text(re.compile(r"^1:12:\d\d$"))


def test_it_goes_on_without_signal(page):
    page.goto(PAGE)
    remember(page, 12, LEAK)
    page.reload()
    judged(page)
    page.context.set_offline(True)
    add(page, "551")
    judged(page)

    expect(part(page, "count")).to_have_text("10 readings")
    expect(page.locator("worked-card [data-part=because]")).to_contain_text("551 micron")
    page.context.set_offline(False)
    page.reload()
    expect(part(page, "count")).to_have_text("10 readings")


def test_a_mistyped_reading_is_removed_and_the_rest_judged_again(page):
    page.goto(PAGE)
    remember(page, 12, [*LEAK[:-1], (10, 5110)])
    page.reload()
    judged(page)
    expect(verdict(page)).not_to_have_attribute("data-code", "leak")
    part(page, "count").click()
    page.get_by_role("button", name=re.compile("Remove 5110")).click()
    judged(page)

    expect(verdict(page)).to_have_attribute("data-code", "leak")


@pytest.mark.parametrize("typed", ["", "abc", "-3", "0", "3x"])
def test_what_is_not_a_reading_gets_a_sentence_and_stays(page, typed):
    page.goto(PAGE)
    page.get_by_role("button", name="The valve is shut").click()
    add(page, typed)

    expect(part(page, "complaint")).to_have_text("Type the number on the gauge, above zero.")
    expect(page.get_by_label("The gauge shows now")).to_have_value(typed)
    expect(part(page, "count")).to_have_text("No readings")


def test_clearing_asks_twice(page):
    page.goto(PAGE)
    remember(page, 12, LEAK)
    page.reload()
    part(page, "count").click()
    page.get_by_role("button", name="Clear and start over").click()
    expect(part(page, "count")).to_have_text("9 readings")
    page.get_by_role("button", name="Press again").click()

    expect(page.locator("live-decay")).to_have_attribute("state", "idle")
    assert page.evaluate("(key) => localStorage.getItem(key)", KEY) is None


def test_without_scripts_the_page_reads_and_shows_the_card(open_page):
    page = open_page(java_script_enabled=False)
    page.goto(PAGE)

    expect(page.locator("worked-card")).to_be_visible()
    expect(page.get_by_text("needs scripts")).to_be_visible()
