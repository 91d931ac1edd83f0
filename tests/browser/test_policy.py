"""The content policy over the whole site: nothing forbidden is tried, nothing foreign asked for.

Served with the published _headers, so that the worker is under the policy too. What a page
does only when used (Python, charts, search, switches) is used here.
"""

import re
from pathlib import Path
from xml.etree import ElementTree

from host_files import policy, read_headers
from playwright.sync_api import expect

SITE = Path(__file__).resolve().parents[2] / "build" / "site"
DECAY = "0,310\n2,905\n4,1260\n6,1475\n8,1604\n10,1682\n"


def paths_of_sitemap():
    tree = ElementTree.parse(SITE / "sitemap.xml")
    places = [each.text for each in tree.iter("{http://www.sitemaps.org/schemas/sitemap/0.9}loc")]
    return [re.sub(r"^https?://[^/]+", "", place) for place in places]


def test_no_page_breaks_the_policy_or_asks_another_origin(page):
    # open_page fails the test on any breach, foreign request, error or warning.
    for path in [*paths_of_sitemap(), "/404.html"]:
        answer = page.goto(path, wait_until="load")
        assert "frame-ancestors 'none'" in answer.headers["content-security-policy"], path
        assert page.locator('meta[http-equiv="Content-Security-Policy"]').count() == 1, path
        page.evaluate("document.querySelectorAll('details').forEach((each) => (each.open = true))")


def test_no_breach_while_the_guide_is_used(page):
    page.goto("/calculators/decay/")
    card = page.locator("worked-card").first
    expect(card).to_have_attribute("state", "done")
    page.locator('textarea[name="readings"]').fill(DECAY)
    expect(card).to_have_attribute("data-code", "moisture")
    expect(page.locator(".chart .uplot canvas")).to_be_visible()
    page.get_by_role("button", name="Log scale").click()
    page.get_by_role("button", name="Dark colors").click()
    page.get_by_role("button", name="SI", exact=True).click()
    page.get_by_role("button", name="Search").click()
    page.get_by_label("Search the guide").fill("moisture")
    expect(page.locator(".md-search-result__link").first).to_be_visible()
    page.keyboard.press("Escape")
    page.goto("/on-the-job/live-decay/")
    page.get_by_role("button", name=re.compile("start the clock")).click()
    page.get_by_label("The gauge shows now").fill("210")
    page.get_by_role("button", name="Add reading").click()
    page.goto("/on-the-job/whole-procedure/")
    page.get_by_role("checkbox").first.check()
    page.goto("/learn/what-a-micron-is/")
    page.locator("lesson-quiz input").first.focus()


def test_the_policy_refuses_what_it_is_there_to_refuse(page):
    page.watch.allow("content policy|Content Security Policy|elsewhere")
    page.goto("/")
    tried = page.evaluate(
        """async () => {
          const seen = [];
          addEventListener("securitypolicyviolation", (e) => seen.push(e.effectiveDirective));
          const script = document.createElement("script");
          script.textContent = "window.ran = true";
          document.body.append(script);
          document.body.setAttribute("style", "color: red");
          const picture = new Image();
          picture.src = "https://elsewhere.example/picture.png";
          await fetch("https://elsewhere.example/").catch(() => {});
          setTimeout("window.evaluated = true");  // the page's own eval; the test's is let through
          await new Promise((done) => setTimeout(done, 300));
          return [window.ran, window.evaluated, seen];
        }"""
    )
    ran, evaluated, seen = tried
    assert ran is None
    assert evaluated is None
    wanted = {"script-src-elem", "style-src-attr", "img-src", "connect-src", "script-src"}
    assert wanted <= set(seen)


def test_the_headers_file_says_the_policy_and_the_types():
    rules = read_headers(SITE)
    said = {(name, value) for path, name, value in rules if path == "/*"}
    assert ("Content-Security-Policy", policy(SITE)) in said
    assert ("X-Content-Type-Options", "nosniff") in said
    wasm = next(path for path in (SITE / "assets" / "runtime").rglob("*.wasm"))
    place = f"/{wasm.relative_to(SITE).as_posix()}"
    assert (place, "Content-Type", "application/wasm") in rules
    forever = [path for path, name, value in rules if "immutable" in value]
    assert forever
    assert all((SITE / path.lstrip("/")).is_file() for path in forever)
    assert not any(path.endswith(("guide.js", "early.js", ".html")) for path in forever)


def test_the_policy_is_strict():
    words = policy(SITE)
    assert "unsafe-inline" not in words
    assert "unsafe-eval'" not in words.replace("'wasm-unsafe-eval'", "")
    assert "http" not in words
    assert "*" not in words
    assert words.startswith("default-src 'none'")
