"""Nobody is shut out: axe-core, keyboard, touch, zoom, forced colors, contrast, motion.

One walk through the sitemap looks at every page in every way and notes what it finds; the
tests of the first part each read one kind of note. On that walk Python is left out, which
changes nothing that is looked at but the time; what is live has a test of its own.
"""

import re
from collections import defaultdict
from pathlib import Path
from xml.etree import ElementTree

import pytest
from browser.access import RULES, look, search_settled
from playwright.sync_api import expect

ROOT = Path(__file__).resolve().parents[2]
SITE = ROOT / "build" / "site"
COLOR = ["color-contrast", "link-in-text-block"]  # the rules that the colors have a say in


def paths_of_sitemap():
    tree = ElementTree.parse(SITE / "sitemap.xml")
    places = [each.text for each in tree.iter("{http://www.sitemaps.org/schemas/sitemap/0.9}loc")]
    return [re.sub(r"^https?://[^/]+", "", place) for place in places]


def settle(page):
    """Wait until a page's first card has its answer, if it shows one."""
    card = page.locator("worked-card").first
    if card.count() and card.is_visible():
        card.and_(page.locator("[state=done]:not([stale])")).wait_for(timeout=120_000)


@pytest.fixture(scope="module")
def notes(browser, site):
    """Walk through the sitemap once, and give what was found: by kind, (path, finding)."""
    found = defaultdict(list)
    context = browser.new_context(base_url=site, service_workers="block")
    context.route(
        "**/assets/runtime/worker-*.js",
        lambda route: route.fulfill(content_type="text/javascript", body=""),
    )
    page = context.new_page()

    def note(kind, path, findings):
        found[kind] += [f"{path} {each}" for each in findings]

    for path in [*paths_of_sitemap(), "/404.html"]:
        page.emulate_media(color_scheme="light", reduced_motion="no-preference")
        page.set_viewport_size({"width": 360, "height": 740})
        page.goto(path)
        note("small", path, look(page, "small", 44))
        if path != "/404.html":
            note("skip", path, look(page, "skip"))
        headings = page.locator("h1").count()
        note("headings", path, [] if headings == 1 else [f"{headings} headings of the first rank"])
        for width in (360, 1280):
            page.set_viewport_size({"width": width, "height": 900})
            for scheme in ("light", "dark"):
                page.emulate_media(color_scheme=scheme)
                rules = RULES if scheme == "light" else COLOR
                note("axe", f"{path} {width} {scheme}", look(page, "axe", rules))
        page.set_viewport_size({"width": 640, "height": 450})  # 1280 x 900 at twice the size
        note("zoom", path, look(page, "wide"))
        page.emulate_media(reduced_motion="reduce")
        note("motion", path, look(page, "moving"))
        found["walked"].append(path)
    context.close()
    return found


# --- every page ------------------------------------------------------------------


def test_axe_finds_nothing_on_any_page_light_or_dark_phone_or_desktop(notes):
    assert len(notes["walked"]) > 60
    assert notes["axe"] == []


def test_what_is_pressed_is_large_enough_for_a_glove(notes):
    assert notes["small"] == []


def test_nothing_is_cut_off_at_twice_the_size(notes):
    assert notes["zoom"] == []


def test_nothing_moves_for_those_who_asked_for_no_motion(notes):
    assert notes["motion"] == []


def test_each_page_has_one_title_and_a_way_past_the_header(notes):
    assert notes["headings"] == []
    assert notes["skip"] == []


# --- what is only there when it is wanted ------------------------------------------


@pytest.mark.parametrize("slug", ["decay", "compare-rigs"])
def test_axe_finds_nothing_on_a_card_that_has_answered(open_page, slug):
    page = open_page(width=360)
    page.goto(f"/calculators/{slug}/")
    settle(page)
    expect(page.locator(".chart .uplot canvas").first).to_be_visible()
    page.evaluate("document.querySelectorAll('details').forEach((each) => (each.open = true))")
    for width in (360, 1280):
        page.set_viewport_size({"width": width, "height": 900})
        for scheme in ("light", "dark"):
            page.emulate_media(color_scheme=scheme)
            assert look(page, "axe", RULES) == []
    page.set_viewport_size({"width": 360, "height": 740})
    assert look(page, "small", 44) == []


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_in_menu_search_complaint_and_prompt(open_page, scheme):
    page = open_page(width=360, scheme=scheme)
    page.goto("/calculators/boiling-point/")
    settle(page)
    page.get_by_role("button", name="Menu").click()
    page.evaluate("document.querySelectorAll('dialog details').forEach((d) => (d.open = true))")
    assert look(page, "axe", RULES) == []
    assert look(page, "small", 44) == []
    page.keyboard.press("Escape")
    page.get_by_role("button", name="Search").click()
    page.get_by_label("Search the guide").fill("frozen")
    page.locator(".md-search-result__link").first.wait_for()
    assert look(page, "axe", RULES) == []
    assert look(page, "small", 44) == []
    page.keyboard.press("Escape")
    page.locator('input[name="pressure"]').fill("x")
    page.locator(".complaint:visible").wait_for()
    page.evaluate("Promise.all(document.getAnimations().map((each) => each.finished))")
    assert look(page, "axe", RULES) == []


# --- keyboard alone -----------------------------------------------------------------


def press_until(page, name, most=40):
    """Press Tab until what has the focus is called this; say what is wrong with any stop."""
    for _ in range(most):
        page.keyboard.press("Tab")
        at = look(page, "focused")
        if at:
            assert at["inside"], at
            assert at["ringed"], at
            assert not at["covered"], at
            if re.search(name, at["name"]):
                return at
    raise AssertionError(f"Tab does not lead to {name}")


def test_the_guide_is_walked_by_keyboard_alone_on_a_phone(open_page, screenshot):
    page = open_page(width=360)
    page.goto("/")
    settle(page)
    press_until(page, "Skip to content", most=1)
    screenshot(page, "skip")
    press_until(page, "Menu")
    page.keyboard.press("Enter")
    menu = page.get_by_role("dialog", name="Menu")
    expect(menu).to_be_visible()
    press_until(page, "^Calculators$")
    page.keyboard.press("Enter")
    screenshot(page, "menu")
    press_until(page, "^Decay test$")
    page.keyboard.press("Enter")
    expect(page).to_have_url(re.compile("/calculators/decay/"))

    settle(page)
    press_until(page, "Search")
    page.keyboard.press("Enter")
    expect(page.get_by_label("Search the guide")).to_be_focused()
    page.keyboard.type("boiling point")
    expect(page.locator(".md-search-result__link").first).to_be_visible()
    screenshot(page, "search")
    page.keyboard.press("Escape")
    expect(page.get_by_role("button", name="Search")).to_be_focused()
    page.keyboard.press("Enter")
    expect(page.get_by_label("Search the guide")).to_be_focused()
    search_settled(page)
    page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")
    expect(page.get_by_role("dialog")).to_have_count(0)

    page.goto("/calculators/boiling-point/")
    settle(page)
    press_until(page, "Skip to content", most=1)
    page.keyboard.press("Enter")
    press_until(page, "^pressure$", most=3)
    page.keyboard.press("Control+a")
    page.keyboard.type("1000")
    expect(page.locator("[data-part=main]").first).to_contain_text("0.8")
    screenshot(page, "card")
    press_until(page, "Unit of gauge reading", most=1)
    page.keyboard.press("ArrowDown")
    expect(page.locator('select[name="pressure.unit"]')).not_to_have_value("micron")
    press_until(page, "Working")
    page.keyboard.press("Enter")
    expect(page.locator("worked-card > .working .work")).to_be_visible()

    page.goto("/on-the-job/job/")
    press_until(page, "^Start a job$")
    page.keyboard.press("Enter")
    expect(page.locator("job-record")).to_have_attribute("state", "open")
    expect(page.locator("[name=system]")).to_be_focused()
    page.keyboard.type("Walk-in cooler")
    press_until(page, "^technician$")
    expect(page.locator(".job-head h2")).to_have_text("Walk-in cooler")
    page.goto("/calculators/gauge-check/")
    settle(page)
    press_until(page, "^Add to job$")
    page.keyboard.press("Enter")
    expect(page.locator(".job-says")).to_contain_text("Added to Walk-in cooler")
    page.goto("/on-the-job/job/")
    expect(page.locator(".job-result")).to_have_count(1)
    press_until(page, "^Open this card$")
    press_until(page, "^Delete")
    screenshot(page, "record")


@pytest.mark.parametrize("path", ["/", "/calculators/decay/", "/calculators/rig-check/", "/learn/"])
def test_every_stop_of_the_tab_key_is_seen(open_page, path):
    page = open_page(width=360)
    page.goto(path)
    settle(page)
    stops = []
    for _ in range(150):
        page.keyboard.press("Tab")
        at = look(page, "focused")
        if at is None:
            break
        stops.append(at)
    assert len(stops) > 8
    assert [at for at in stops if not at["inside"] or not at["ringed"] or at["covered"]] == []


# --- what eyes need --------------------------------------------------------------------


def luminance(color):
    """Relative luminance of an sRGB color, WCAG 2.2."""
    parts = [int(each) / 255 for each in re.findall(r"\d+", color)[:3]]
    linear = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one, other):
    """Contrast ratio of two colors, WCAG 2.2."""
    high, low = sorted((luminance(one), luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def test_the_ratio_is_that_of_the_standard():
    assert contrast("rgb(0, 0, 0)", "rgb(255, 255, 255)") == pytest.approx(21)
    assert contrast("rgb(118, 118, 118)", "rgb(255, 255, 255)") == pytest.approx(4.54, abs=0.005)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_colors_that_carry_meaning_are_at_least_seven_to_one(open_page, scheme):
    page = open_page(scheme=scheme)
    page.goto("/")
    names = "ink quiet accent holds leak gas unsure paper sheet wash".split()
    colors = page.evaluate(
        """(names) => {
          const probe = document.body.appendChild(document.createElement("i"));
          return Object.fromEntries(names.map((name) => {
            probe.style.color = `var(--${name})`;
            return [name, getComputedStyle(probe).color];
          }));
        }""",
        names,
    )
    grounds = {name: colors.pop(name) for name in ("paper", "sheet", "wash")}
    low = {
        (name, ground): round(ratio, 2)
        for name, color in colors.items()
        for ground, behind in grounds.items()
        if (ratio := contrast(color, behind)) < 7
    }
    assert low == {}


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_figures_that_decide_are_at_least_seven_to_one_where_they_stand(open_page, scheme):
    page = open_page(width=360, scheme=scheme)
    figures = ".big, .big small, .second, .verdict, .verdict b, .because p, .facts dd, .complaint"
    low, seen = [], 0
    for path in ("/", "/calculators/decay/", "/calculators/hold-time/", "/on-the-job/live-decay/"):
        page.goto(path)
        settle(page)
        painted = look(page, "painted", figures)
        seen += len(painted)
        low += [(path, *each) for each in painted if contrast(each[1], each[2]) < 7]
    assert seen > 10
    assert low == []


def test_forced_colors_keep_what_color_says(open_page, screenshot):
    page = open_page(forced_colors="active")
    page.goto("/calculators/decay/")
    settle(page)
    ground = "(each) => getComputedStyle(each).backgroundColor"
    us, si = (page.get_by_role("button", name=name, exact=True) for name in ("US", "SI"))
    assert us.evaluate(ground) != si.evaluate(ground)
    line = page.locator(".verdict .trace").first
    drawn = line.evaluate("(each) => getComputedStyle(each).stroke")
    paper = page.evaluate("getComputedStyle(document.body).backgroundColor")
    assert contrast(drawn, paper) > 7
    borders = "(each) => getComputedStyle(each).borderTopStyle"
    assert page.locator(".field").first.evaluate(borders) == "solid"
    assert page.get_by_role("button", name="Start over").evaluate(borders) == "solid"
    page.locator("worked-card input").first.focus()
    screenshot(page, "decay")
    page.set_viewport_size({"width": 360, "height": 740})
    screenshot(page, "decay-360")
