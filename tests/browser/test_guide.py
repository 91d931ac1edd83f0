"""The guide on a phone and on paper: from home to a symptom, steps to tick, sheets to print."""

import re

import pytest
from playwright.sync_api import expect

PHONE = 360


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_from_home_to_a_symptom_in_three_taps(open_page, scheme, screenshot):
    page = open_page(width=PHONE, scheme=scheme)
    page.goto("/")

    page.get_by_role("link", name="Start from what you see").click()
    page.locator("summary", has_text="While the pump is running").click()
    page.locator("summary", has_text="Stalls near 4,600 micron").click()

    expect(page.get_by_text("Water is about to freeze").first).to_be_visible()
    expect(page.get_by_role("link", name="Moisture").first).to_be_visible()
    screenshot(page, scheme)


def test_a_link_to_a_symptom_opens_it(page):
    page.goto("/stuck/#oil-milky")

    expect(page.get_by_text("Was the ballast open while the system was wet?").first).to_be_visible()


@pytest.mark.parametrize("width", [360, 1280])
def test_ticks_survive_a_reload_and_show_in_the_whole_procedure(page, width, screenshot):
    page.goto("/on-the-job/prove-the-pump/")
    boxes = page.locator("job-steps [type=checkbox]")
    page.get_by_text("Look at the oil.").click()
    page.get_by_text("Stand the sensor upright.").click()
    page.reload()

    expect(boxes.nth(0)).to_be_checked()
    expect(boxes.nth(1)).not_to_be_checked()
    expect(boxes.nth(3)).to_be_checked()
    screenshot(page, f"{width}")

    page.goto("/on-the-job/whole-procedure/")
    part = page.locator('job-steps[page="prove-the-pump"]')
    expect(part.locator(":checked")).to_have_count(2)
    part.get_by_role("button", name="Clear the ticks").click()
    expect(part.locator(":checked")).to_have_count(0)
    expect(part.locator("[type=checkbox]").first).to_be_focused()


def test_steps_are_big_enough_for_a_glove(open_page):
    page = open_page(width=PHONE)
    page.goto("/on-the-job/hold/")

    for box in page.locator("job-steps label").all():
        assert box.bounding_box()["height"] >= 44


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize(
    ("address", "sheets"), [("/on-the-job/whole-procedure/", 2), ("/look-up/pocket-card/", 1)]
)
def test_it_prints_on_as_many_sheets_as_promised(page, address, sheets, paper):
    page.goto(address)

    printed = page.pdf(format=paper)

    assert len(re.findall(rb"/Type\s*/Page\b", printed)) == sheets
