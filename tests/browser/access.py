"""Look at an open page for what shuts people out: axe-core, and what access.js looks at."""

from pathlib import Path

HERE = Path(__file__)
AXE = HERE.parents[2] / "node_modules" / "axe-core" / "axe.min.js"
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]

STILL = """(list) => new Promise((done) => {
  let timer = setTimeout(done, 500);
  new MutationObserver(() => {
    clearTimeout(timer);
    timer = setTimeout(done, 500);
  }).observe(list, { childList: true, subtree: true });
})"""


def search_settled(page):
    """Wait until the theme has drawn what it found for the last letter, not for the first."""
    page.locator(".md-search-result__link").first.wait_for()
    page.locator(".md-search-result__list").evaluate(STILL)


def look(page, what, *words):
    """Ask one function of access.js, which is put into the page when it is first wanted."""
    if not page.evaluate("'access' in globalThis"):
        for script in (AXE, HERE.with_suffix(".js")):
            page.evaluate(script.read_text("utf-8"))
    return page.evaluate("([what, words]) => access[what](...words)", [what, words])
