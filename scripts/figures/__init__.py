"""Every figure of the guide, drawn when the site is built. A new one is one line below.

A page asks for a figure with the marker ``figure: id``. A drawing is kept in build/figures
and made again only when its code, the calculators or the page's font have changed.
"""

from __future__ import annotations

import importlib.metadata
import json
from functools import cache

from steps import BUILD, ROOT, files_under, fingerprint

from calculators.outputs.element import tag, text_of
from figures import flow, gauge, hold, judge, lessons, pull, purge, style, water
from figures.style import Figure

FIGURES: tuple[Figure, ...] = (
    *water.FIGURES,
    *flow.FIGURES,
    *pull.FIGURES,
    *hold.FIGURES,
    *judge.FIGURES,
    *purge.FIGURES,
    *gauge.FIGURES,
    *lessons.FIGURES,
)
BY_ID = {each.id: each for each in FIGURES}
DRAWN = BUILD / "figures"


def drawing(name: str) -> dict[str, str]:
    """Give a figure's SVG, caption and alternative text, drawn now or before."""
    figure, key = BY_ID[name], _made_from()
    kept = DRAWN / f"{name}.json"
    if kept.exists():
        before = json.loads(kept.read_text(encoding="utf-8"))
        if before.pop("key") == key:
            return before
    made = style.rendered(figure)
    DRAWN.mkdir(parents=True, exist_ok=True)
    kept.write_text(json.dumps({"key": key, **made}, ensure_ascii=False), encoding="utf-8")
    return made


@cache
def _made_from() -> str:
    """Fingerprint of all that a drawing depends on; the modules of figures share much."""
    ours = files_under(
        ROOT / "calculators", ROOT / "scripts" / "figures", ROOT / "scripts/svg_clean.py"
    )
    font = [style.FONT] if style.FONT.exists() else []
    return fingerprint([*ours, *font], importlib.metadata.version("matplotlib"))


def html(name: str) -> str:
    """Give a figure as HTML: drawing, title, caption, and the code that drew it."""
    figure, made = BY_ID[name], drawing(name)
    whole = text_of(
        tag(
            "figure",
            tag("div", "@", class_="drawing-box"),
            tag(
                "figcaption",
                tag("b", f"{figure.title}."),
                f" {made['caption']} ",
                tag("span", "Drawn by ", tag("code", figure.source), class_="made-by"),
            ),
            class_="drawing",
            id=f"figure-{name}",
        )
    )
    return whole.replace(">@<", f">{made['svg']}<", 1)
