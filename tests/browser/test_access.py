"""Nobody is shut out: axe-core finds nothing on any page that this guide has a kind of."""

from pathlib import Path

import pytest

from calculators.cards import CARDS

AXE = Path(__file__).resolve().parents[2] / "node_modules" / "axe-core" / "axe.min.js"
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
PATHS = ["/", "/calculators/", *(f"/calculators/{card.slug}/" for card in CARDS)]


def findings(page):
    """Run axe-core on the page as it stands: (rule, where) for each violation."""
    page.evaluate(AXE.read_text(encoding="utf-8"))
    found = page.evaluate(
        "(rules) => axe.run(document, { runOnly: { type: 'tag', values: rules } })", RULES
    )
    return [(each["id"], node["target"]) for each in found["violations"] for node in each["nodes"]]


@pytest.mark.parametrize(("width", "scheme"), [(360, "light"), (1280, "dark")])
def test_axe_finds_nothing(open_page, width, scheme):
    page = open_page(width=width, scheme=scheme, bypass_csp=True)
    for path in PATHS:
        page.goto(path)
        if page.locator("worked-card").count():
            page.locator("worked-card[state=done]").first.wait_for(timeout=60_000)
        assert (path, findings(page)) == (path, [])


def test_axe_finds_nothing_in_the_menu_the_search_or_a_complaint(open_page):
    page = open_page(width=360, bypass_csp=True)
    page.goto("/calculators/boiling-point/")
    page.locator("worked-card[state=done]").wait_for(timeout=60_000)
    page.get_by_role("button", name="Menu").click()
    assert findings(page) == []
    page.keyboard.press("Escape")
    page.get_by_role("button", name="Search").click()
    page.get_by_text("Type to start searching").wait_for()
    page.keyboard.type("frozen")
    page.locator(".md-search-result__link").first.wait_for()
    assert findings(page) == []
    page.keyboard.press("Escape")
    page.locator('input[name="pressure"]').fill("x")
    page.locator(".complaint:visible").wait_for()
    page.wait_for_timeout(300)  # the last answer fades to its dimmed state
    assert findings(page) == []


@pytest.mark.parametrize("path", ["/", "/calculators/decay/", "/calculators/rig-check/"])
def test_what_is_pressed_is_large_enough_for_a_glove(open_page, path):
    page = open_page(width=360)
    page.goto(path)
    page.locator("worked-card[state=done]").first.wait_for(timeout=60_000)
    small = page.evaluate(
        """() => [...document.querySelectorAll("button, select, input, summary, .job a")]
          .filter((each) => each.checkVisibility() && each.type !== "hidden")
          .map((each) => [each.outerHTML.slice(0, 80), each.getBoundingClientRect().height])
          .filter(([, height]) => height < 44)"""
    )

    assert small == []
