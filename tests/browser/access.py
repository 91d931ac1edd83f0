"""Look at an open page for what shuts people out: axe-core, and what access.js looks at."""

from pathlib import Path

HERE = Path(__file__)
AXE = HERE.parents[2] / "node_modules" / "axe-core" / "axe.min.js"
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]


def look(page, what, *words):
    """Ask one function of access.js, which is put into the page when it is first wanted."""
    if not page.evaluate("'access' in globalThis"):
        for script in (AXE, HERE.with_suffix(".js")):
            page.evaluate(script.read_text("utf-8"))
    return page.evaluate("([what, words]) => access[what](...words)", [what, words])
