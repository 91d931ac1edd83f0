"""Copy fonts and libraries out of node_modules, as the site serves them.

The text fonts come as they are (the latin subset). The mathematical font is cut
down twice: to what formulas use, and to the few letters that a line of working
needs and the text fonts lack. Runs again only when a source has changed.
"""

from __future__ import annotations

import shutil
from pathlib import Path

from fontTools import subset

ROOT = Path(__file__).resolve().parent.parent
MODULES = ROOT / "node_modules"
PLACE = ROOT / "docs" / "assets" / "vendor"

TEXT = "@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-wght"
FIGURES = (
    "@fontsource-variable/atkinson-hyperlegible-mono/files/atkinson-hyperlegible-mono-latin-wght"
)
CHART = "uplot/dist/uPlot.iife.min.js"
MATH = "@fontsource/stix-two-math/files/stix-two-math-latin-400-normal.woff2"

COPIES = {
    "text.woff2": f"{TEXT}-normal.woff2",
    "text-italic.woff2": f"{TEXT}-italic.woff2",
    "figures.woff2": f"{FIGURES}-normal.woff2",
    "uPlot.css": "uplot/dist/uPlot.min.css",
    "idb.js": "idb/build/index.js",
    "workbox-window.js": "workbox-window/build/workbox-window.prod.mjs",
}

# Inclusive ranges of code points. A line of working: Greek, raised and lowered figures, relations.
SYMBOLS = (
    (0x391, 0x3C9),
    (0x2032, 0x2033),
    (0x2070, 0x209C),
    (0x2190, 0x2193),
    (0x2202, 0x2202),
    (0x2206, 0x2207),
    (0x2211, 0x2212),
    (0x221A, 0x221E),
    (0x222B, 0x222B),
    (0x2248, 0x2248),
    (0x2260, 0x2265),
    (0x226A, 0x226B),
)
# A formula: those, plain and mathematical letters, operators, brackets that stretch.
FORMULA = (
    *SYMBOLS,
    (0x2200, 0x22C5),
    (0x20, 0x7E),
    (0xA0, 0xF7),
    (0x2010, 0x2027),
    (0x2061, 0x2064),
    (0x239B, 0x23B3),
    (0x2A7D, 0x2A7E),
    (0x27E8, 0x27E9),
    (0x1D400, 0x1D467),
    (0x1D6A8, 0x1D71B),
)


def cut(source: Path, target: Path, ranges: tuple[tuple[int, int], ...], *, math: bool) -> None:
    """Write the part of a font that covers the given code points."""
    options = subset.Options()
    options.flavor = "woff2"
    options.layout_features = ["ssty", "kern", "mark", "mkmk"] if math else []
    options.drop_tables += [] if math else ["MATH"]
    font = subset.load_font(str(source), options)
    font.recalcTimestamp = False
    cutter = subset.Subsetter(options)
    cutter.populate(unicodes=[point for low, high in ranges for point in range(low, high + 1)])
    cutter.subset(font)
    subset.save_font(font, str(target), options)


def is_current(target: Path, *sources: Path) -> bool:
    """Say whether the target is there and newer than all it is made from."""
    return target.exists() and all(
        target.stat().st_mtime >= source.stat().st_mtime for source in sources
    )


def main() -> None:
    """Place every asset that is missing or out of date."""
    PLACE.mkdir(parents=True, exist_ok=True)
    for name, source in COPIES.items():
        if not is_current(PLACE / name, MODULES / source):
            shutil.copyfile(MODULES / source, PLACE / name)
    if not is_current(PLACE / "uPlot.js", MODULES / CHART, Path(__file__)):
        # Its module build is not minified; this one is, and one line makes it a module.
        text = (MODULES / CHART).read_text("utf-8")
        (PLACE / "uPlot.js").write_text(text + "\nexport default uPlot;\n", "utf-8")
    for name, ranges in (("math.woff2", FORMULA), ("symbols.woff2", SYMBOLS)):
        if not is_current(PLACE / name, MODULES / MATH, Path(__file__)):
            cut(MODULES / MATH, PLACE / name, ranges, math=name == "math.woff2")
    total = sum(each.stat().st_size for each in PLACE.iterdir())
    print(f"assets: {len(COPIES) + 3} files in place, {total / 1e3:.0f} KB")


if __name__ == "__main__":
    main()
