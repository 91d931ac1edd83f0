"""The site as a person meets it.

An answer on every card, nothing typed lost, nothing wider than the screen, and all of it
readable without JavaScript.
"""

import json
import re

import pytest
from browser.access import search_settled
from playwright.sync_api import expect

from calculators.card import Rows
from calculators.cards import CARDS

SLUGS = [card.slug for card in CARDS]
LINE = {  # minutes, micron
    "leak": "0,100\n2,180\n4,262\n6,339\n8,421\n10,500\n",
    "moisture": "0,310\n2,905\n4,1260\n6,1475\n8,1604\n10,1682\n",
}


def card_of(page, state="done"):
    """Wait for the page's first card to be in a state."""
    card = page.locator("worked-card").first
    expect(card).to_have_attribute("state", state)
    if state == "done":
        expect(card).not_to_have_attribute("stale", "")
    return card


def main_of(page):
    """Give the largest thing on the card: its answer."""
    return page.locator("worked-card > .answer > [data-part=main]").first


def complaint(page, name):
    """Give the complaint under one input."""
    return page.locator(f'[data-input="{name}"] .complaint').first


def test_home_answers_the_commonest_question(page, screenshot):
    page.goto("/")
    card_of(page)
    page.get_by_label("Gauge reading", exact=False).first.fill("1000")
    expect(main_of(page)).not_to_contain_text("−12.1")
    page.locator('input[name="pressure"]').fill("500")

    expect(main_of(page)).to_contain_text("−12.1")  # °F
    expect(main_of(page)).to_contain_text("−24.5 °C")
    expect(main_of(page)).to_contain_text("Ice sublimes")
    screenshot(page, "answer")


@pytest.mark.parametrize("slug", SLUGS)
def test_python_in_the_browser_gives_the_answer_that_the_page_was_built_with(page, slug):
    page.goto(f"/calculators/{slug}/")
    built = main_of(page).inner_text()
    card_of(page)

    assert main_of(page).inner_text() == built
    assert page.locator("worked-card > .working .work > li").count() >= 1


def test_bad_input_is_told_under_its_field_and_the_last_answer_stays(page):
    page.goto("/calculators/boiling-point/")
    card_of(page)
    field = page.locator('input[name="pressure"]')
    for typed in ("nothing", "-5", "0", "nan", "1e99", "5 feet"):
        field.fill(typed)
        card_of(page, "wrong")
        expect(complaint(page, "pressure")).to_be_visible()
        expect(field).to_have_attribute("aria-invalid", "true")
        expect(field).to_have_value(typed)
        expect(main_of(page)).to_contain_text("−12.1")
        said = complaint(page, "pressure").inner_text()
        assert "Traceback" not in said
        assert 15 < len(said) < 200

    expect(complaint(page, "system_temperature")).to_be_hidden()
    field.fill("500")
    card_of(page)
    expect(complaint(page, "pressure")).to_be_hidden()
    expect(field).not_to_have_attribute("aria-invalid", "true")


@pytest.mark.parametrize("code", LINE)
def test_a_log_from_a_file_is_judged(page, code):
    page.goto("/calculators/decay/")
    card_of(page)
    lines = f"minutes,micron\n{LINE[code]}".encode()
    log = {"name": "log.csv", "mimeType": "text/csv", "buffer": lines}
    page.locator('.file[data-for="readings"]').set_input_files(log)

    expect(main_of(page)).to_have_attribute("data-code", code)
    expect(page.locator("worked-card")).to_have_attribute("data-code", code)
    expect(page.locator(".chart .uplot canvas")).to_be_visible()
    assert "minutes,micron" in page.locator('textarea[name="readings"]').input_value()


def test_pasted_readings_are_judged(page):
    page.goto("/calculators/decay/")
    card_of(page)
    page.locator('textarea[name="readings"]').fill("time (min),pressure (micron)\n" + LINE["leak"])

    expect(main_of(page)).to_have_attribute("data-code", "leak")


def test_a_file_that_is_too_large_or_empty_is_refused_and_what_was_typed_stays(page):
    page.goto("/calculators/decay/")
    card_of(page)
    typed = page.locator('textarea[name="readings"]').input_value()
    for content, says in ((b"1,2\n" * 2_500_000, "10.0 MB"), (b"", "empty")):
        log = {"name": "log.csv", "mimeType": "text/csv", "buffer": content}
        page.locator('.file[data-for="readings"]').set_input_files(log)
        expect(complaint(page, "readings")).to_contain_text(says)
        assert page.locator('textarea[name="readings"]').input_value() == typed


def test_a_link_fills_the_card_and_wins_over_what_was_kept(page):
    page.goto("/calculators/boiling-point/")
    card_of(page)
    page.locator('input[name="pressure"]').fill("800")
    expect(page).to_have_url(re.compile(r"pressure=800\+micron"))

    page.goto("/calculators/boiling-point/?pressure=1+kPa&system_temperature=10+%C2%B0C")
    card_of(page)

    expect(page.locator('input[name="pressure"]')).to_have_value("1")
    expect(page.locator('select[name="pressure.unit"]')).to_have_value("kPa")
    expect(page.locator('select[name="system_temperature.unit"]')).to_have_value("°C")
    expect(main_of(page)).to_contain_text("Water boils")


def test_a_reload_keeps_what_was_typed_right_or_wrong(page):
    page.goto("/calculators/decay/")
    card_of(page)
    page.locator('textarea[name="readings"]').fill("0 100\n5 180\n10 262")
    page.locator('input[name="volume"]').fill("lots")
    card_of(page, "wrong")
    page.reload()
    card_of(page, "wrong")

    expect(page.locator('textarea[name="readings"]')).to_have_value("0 100\n5 180\n10 262")
    expect(page.locator('input[name="volume"]')).to_have_value("lots")


def test_another_visit_without_a_link_finds_it_too_and_starting_over_forgets_it(page):
    page.goto("/calculators/boiling-point/")
    card_of(page)
    page.locator('input[name="pressure"]').fill("800")
    card_of(page)
    page.goto("/")
    card_of(page)
    expect(page.locator('input[name="pressure"]')).to_have_value("800")

    page.get_by_role("button", name="Start over").click()
    expect(main_of(page)).to_contain_text("−12.1")
    page.goto("/calculators/boiling-point/")
    card_of(page)
    expect(page.locator('input[name="pressure"]')).to_have_value("500")
    expect(page).to_have_url(re.compile(r"^[^?]*$"))


def test_what_is_typed_before_python_is_up_is_answered_when_it_is(page):
    page.add_init_script("delete globalThis.SharedWorker")  # its requests can't be held up here
    page.route(
        "**/assets/runtime/started-*",
        lambda route: (page.wait_for_timeout(1500), route.continue_()),
    )
    page.goto("/calculators/boiling-point/", wait_until="domcontentloaded")
    card_of(page, "waking")
    page.locator('input[name="pressure"]').fill("1000")
    expect(page.locator("worked-card")).to_have_attribute("stale", "")
    card_of(page)

    expect(page.locator('input[name="pressure"]')).to_have_value("1000")
    expect(main_of(page)).not_to_contain_text("−12.1")


def test_a_page_whose_python_cannot_start_says_so_and_still_reads(page, no_python):
    no_python(page)
    page.goto("/calculators/boiling-point/")
    card_of(page, "broken")

    expect(page.locator(".says")).to_contain_text("could not start")
    expect(main_of(page)).to_contain_text("−12.1")


def test_us_or_si_is_one_press_and_is_remembered(page):
    page.goto("/calculators/boiling-point/")
    card_of(page)
    page.locator('input[name="pressure"]').fill("1000")
    card_of(page)
    page.get_by_role("button", name="SI", exact=True).click()

    expect(page.locator('select[name="pressure.unit"]')).to_have_value("Pa")
    expect(page.locator('input[name="pressure"]')).to_have_value("133.32")
    expect(main_of(page).locator(".big")).to_contain_text("°C")
    page.goto("/calculators/altitude/")
    card_of(page)
    si = page.get_by_role("button", name="SI", exact=True)
    expect(si).to_have_attribute("aria-pressed", "true")
    expect(page.locator('select[name="altitude.unit"]')).to_have_value("m")
    page.get_by_role("button", name="US", exact=True).click()
    expect(page.locator('select[name="altitude.unit"]')).to_have_value("ft")
    expect(page).to_have_url(re.compile(r"^[^?]*$"))


def test_the_chart_reads_out_by_keyboard_and_changes_scale(page):
    page.goto("/calculators/decay/")
    card_of(page)
    plot = page.locator(".chart .plot")
    expect(plot).to_have_attribute("aria-label", re.compile("arrow keys"))
    plot.focus()
    page.keyboard.press("End")
    expect(page.locator(".chart-tools p")).to_have_text("10 min: 1,682 micron")
    page.keyboard.press("ArrowLeft")
    expect(page.locator(".chart-tools p")).to_have_text("8 min: 1,604 micron")

    scale = page.get_by_role("button", name="Log scale")
    before = scale.get_attribute("aria-pressed")
    scale.click()
    expect(scale).not_to_have_attribute("aria-pressed", before)


def test_colors_follow_the_device_until_the_reader_chooses(page):
    page.goto("/")
    paper = "getComputedStyle(document.body).backgroundColor"
    assert page.evaluate(paper) == "rgb(250, 248, 243)"
    page.emulate_media(color_scheme="dark")
    assert page.evaluate(paper) == "rgb(16, 24, 30)"
    page.get_by_role("button", name="Dark colors").click()
    assert page.evaluate(paper) == "rgb(250, 248, 243)"
    page.reload()
    assert page.evaluate(paper) == "rgb(250, 248, 243)"


def test_menu_and_search_work_by_keyboard_on_a_phone(open_page):
    page = open_page(width=360)
    page.goto("/")
    menu = page.get_by_role("button", name="Menu")
    menu.focus()
    page.keyboard.press("Enter")
    expect(page.get_by_role("dialog", name="Menu")).to_be_visible()
    link = page.get_by_role("dialog").get_by_role("link", name="Decay test").first
    if not link.is_visible():
        page.get_by_role("dialog").get_by_text("Calculators", exact=True).click()
    expect(link).to_be_visible()
    page.keyboard.press("Escape")
    expect(page.get_by_role("dialog")).to_have_count(0)
    expect(menu).to_be_focused()

    page.get_by_role("button", name="Search").focus()
    page.keyboard.press("Enter")
    expect(page.get_by_label("Search the guide")).to_be_focused()
    expect(page.locator(".md-search-result__meta")).to_have_text("Type to start searching")
    page.keyboard.type("boiling point")
    search_settled(page)
    page.keyboard.press("ArrowDown")
    expect(page.locator(".md-search-result__link").first).to_be_focused()
    page.keyboard.press("Enter")
    expect(page).to_have_url(re.compile(r"localhost:\d+/\w[^?]*/"))
    expect(page.get_by_role("dialog")).to_have_count(0)


def test_rows_can_be_added_moved_and_removed(page):
    slug = next(c.slug for c in CARDS if any(isinstance(each, Rows) for each in c.inputs))
    page.goto(f"/calculators/{slug}/")
    card_of(page)
    rows = page.locator(".rows").first.locator("> ol > .row")
    count = rows.count()
    page.locator("[data-row=add]").first.click()
    expect(rows).to_have_count(count + 1)
    names = rows.last.locator("[name]").evaluate_all("all => all.map((each) => each.name)")
    assert all(f".{count}." in name for name in names)
    rows.last.get_by_role("button", name="Move up").click()
    rows.nth(count - 1).get_by_role("button", name="Remove").click()
    expect(rows).to_have_count(count)


@pytest.mark.parametrize("path", ["/", *(f"/calculators/{slug}/" for slug in SLUGS)])
def test_a_page_reads_without_javascript_and_fits_320_pixels(open_page, path):
    page = open_page(width=320, java_script_enabled=False)
    page.goto(path)

    expect(main_of(page)).to_be_visible()
    assert main_of(page).inner_text().strip()
    expect(page.get_by_role("link", name="Contents")).to_be_visible()
    expect(page.get_by_role("button")).to_have_count(0)
    assert page.locator("body").bounding_box()["width"] <= 320
    if path != "/":
        expect(page.locator(".worked-example .work > li").first).to_be_visible()


@pytest.mark.parametrize("path", ["/", *(f"/calculators/{slug}/" for slug in SLUGS)])
def test_nothing_is_wider_than_a_small_phone(open_page, path):
    page = open_page(width=320)
    page.goto(path)
    card_of(page)

    assert page.evaluate("document.documentElement.scrollWidth") <= 320


def test_the_answer_stays_in_sight_while_typing_on_a_phone(open_page, screenshot):
    page = open_page(width=360)
    page.goto("/calculators/decay/")
    card_of(page)
    page.locator('input[name="resolution"]').focus()
    page.locator('input[name="resolution"]').scroll_into_view_if_needed()
    box = main_of(page).bounding_box()

    assert 0 <= box["y"] < 200
    screenshot(page, "typing")


def test_a_complaint_does_not_move_a_button_away_from_under_a_press(page):
    page.goto("/calculators/hold-time/")
    card_of(page)
    field = page.locator('input[name="leak_rate"]')
    field.fill("much")
    over = page.locator("[data-tool=over]")
    box = over.bounding_box()

    page.mouse.move(box["x"] + 20, box["y"] + 20)
    page.mouse.down()  # the field is left, the complaint wants its place above the button
    page.wait_for_timeout(150)
    assert over.bounding_box() == box
    page.mouse.up()

    expect(field).not_to_have_value("much")

    field.fill("much")
    card_of(page, "wrong")
    page.keyboard.press("Tab")
    expect(complaint(page, "leak_rate")).to_be_visible()


def test_the_link_that_is_copied_opens_the_same_card(open_page):
    page = open_page(permissions=["clipboard-read", "clipboard-write"])
    page.goto("/")
    card_of(page)
    page.locator('input[name="pressure"]').fill("750")
    card_of(page)
    page.get_by_role("button", name="Copy link").click()
    expect(page.locator(".says")).to_contain_text("Link copied")
    link = page.evaluate("navigator.clipboard.readText()")

    assert link.endswith("/calculators/boiling-point/?pressure=750+micron")


def test_answers_are_announced_after_a_pause_not_at_every_key(page):
    page.goto("/calculators/boiling-point/")
    card_of(page)
    page.evaluate(
        """() => {
          window.said = [];
          const line = document.querySelector(".announcer");
          const hear = new MutationObserver(() => said.push(line.textContent));
          hear.observe(line, { childList: true });
        }"""
    )
    page.locator('input[name="pressure"]').press_sequentially("00", delay=150)
    expect(page.locator(".announcer")).not_to_be_empty()

    assert len(json.loads(page.evaluate("JSON.stringify(said)"))) == 1
