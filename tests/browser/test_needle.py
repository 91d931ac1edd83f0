"""Needle reading in Chromium: read, marked, moved."""

import math

import pytest
from playwright.sync_api import expect

from calculators.teaching.needle import needle_of
from calculators.teaching.needle_motion import MOTIONS, motion_of

PAGE = "/practice/needle/"


def open_needle(page):
    """Open the page and wait until Python has drawn on it."""
    page.goto(PAGE)
    expect(page.locator("needle-practice")).to_have_attribute("state", "up", timeout=90_000)
    expect(page.locator("[data-part=moving] svg")).to_be_visible()


def check(page, typed):
    """Type a reading and have it marked."""
    form = page.locator("form[data-ask=reading]")
    form.locator("input").fill(typed)
    form.get_by_role("button", name="Check").click()
    return form


def test_a_reading_is_marked(page):
    open_needle(page)
    needle = needle_of(1, "us")

    form = check(page, f"{needle.value:g}")
    expect(form).to_have_attribute("data-marked", "right")
    expect(page.locator("[data-part=score]")).to_have_text("1 of 1 right at the first try.")

    form = check(page, f"{10 * needle.value:g}")
    expect(form).to_have_attribute("data-marked", "wrong")
    expect(form).to_contain_text("wrong decade")
    expect(page.locator("[data-part=score]")).to_have_text("1 of 1 right at the first try.")


def test_what_is_no_reading_is_told_and_stays(page):
    open_needle(page)

    form = check(page, "halfway")

    expect(form).to_have_attribute("data-marked", "unread")
    expect(form.locator("input")).to_have_value("halfway")


def test_the_needle_on_the_page_stands_where_python_says(page):
    # The angle of the drawing, read back through the logarithm, is the value.
    open_needle(page)
    needle = needle_of(1, "us")
    turned = page.locator("[data-part=dial] .needle-hand").get_attribute("transform")
    share = (float(turned.split("rotate(")[1].rstrip(")")) + 82.0) / 164.0

    value = needle.dial.first * 10 ** (share * needle.dial.decades)

    assert math.isclose(value, needle.value, rel_tol=0.002)


def test_the_next_needle_is_another_and_is_kept(page):
    open_needle(page)
    first = page.locator("[data-part=dial] svg").get_attribute("aria-label")
    page.get_by_role("button", name="Next needle").click()
    expect(page.locator("[data-part=dial] svg")).not_to_have_attribute("aria-label", first)
    second = page.locator("[data-part=dial] svg").get_attribute("aria-label")

    page.reload()

    expect(page.locator("[data-part=dial] svg")).to_have_attribute(
        "aria-label", second, timeout=90_000
    )


def test_the_scale_follows_the_units(page):
    open_needle(page)
    page.locator(".switch button", has_text="SI").click()
    expect(page.locator("[data-part=unit]")).to_have_text("Pa")

    form = check(page, f"{needle_of(1, 'si').value:g} Pa")

    expect(form).to_have_attribute("data-marked", "right")


def test_a_motion_is_shown_and_its_meaning_marked(page):
    open_needle(page)
    hand = page.locator("[data-part=moving] .needle-hand")
    before = hand.get_attribute("transform")
    page.get_by_role("button", name="Show it").click()
    page.wait_for_timeout(1500)
    assert hand.get_attribute("transform") != before

    right = motion_of(1)
    wrong = next(each for each in MOTIONS if each.key != right.key)
    does, tells = (page.locator(f"form[data-ask={part}]") for part in ("does", "tells"))
    does.locator(f"input[value={wrong.key}]").check()
    does.get_by_role("button", name="Check").click()
    expect(does).to_have_attribute("data-marked", "wrong")
    expect(does.locator("output")).to_contain_text(right.does)
    tells.locator(f"input[value={right.key}]").check()
    tells.get_by_role("button", name="Check").click()
    expect(tells).to_have_attribute("data-marked", "right")
    expect(tells.locator("output")).to_contain_text(right.because)


def test_who_wants_little_motion_gets_the_numbers(open_page):
    page = open_page(reduced_motion="reduce")
    open_needle(page)

    page.get_by_role("button", name="Show it").click()

    expect(page.locator(".needle-table td").first).to_be_visible()


def test_the_dial_is_there_without_script(open_page):
    page = open_page(java_script_enabled=False)
    page.goto(PAGE)

    expect(page.locator("[data-part=dial] svg")).to_be_visible()
    expect(page.locator("form[data-ask=reading]")).to_be_hidden()


@pytest.mark.parametrize("width", [360, 1280])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_needle_fits_its_screen(page, width, scheme, screenshot):
    open_needle(page)
    check(page, "5")
    screenshot(page, "dial", full_page=True)

    assert page.evaluate("document.documentElement.scrollWidth") <= width
