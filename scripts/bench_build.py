"""Time to build the pages against how many there are, and to find that nothing has changed.

Part of bench_start.py. A smaller guide is every second or every fourth page of the real one,
in its order, so that each has its share of lessons, calculators and tables.
"""

import json
import statistics
import sys
import tempfile
import time
from pathlib import Path
from typing import Any

import yaml
from steps import BUILD, ROOT, run

RUNS = 3
SHARES = (4, 2, 1)  # every so many pages


def measure() -> dict[str, Any]:
    """Build a quarter, a half and all of the pages in turns; then look at what is built."""
    pages = sorted(path.relative_to(ROOT / "docs") for path in (ROOT / "docs").rglob("*.md"))
    chosen = {every: pages[::every] for every in SHARES}
    times: dict[int, list[float]] = {every: [] for every in SHARES}
    for _ in range(RUNS + 1):
        for every, kept in chosen.items():
            times[every].append(_build([page for page in pages if page not in set(kept)]))
    run([sys.executable, "scripts/serve.py", "--build-only"], or_else="The site was not built.")
    began = time.monotonic()
    run([sys.executable, "scripts/serve.py", "--build-only"], or_else="The site was not built.")
    return {
        "unchanged": round(time.monotonic() - began, 2),
        "pages": [
            {
                "pages": len(chosen[every]),
                "seconds": round(statistics.median(times[every][1:]), 2),
                "all": [round(each, 2) for each in times[every][1:]],
            }
            for every in SHARES
        ],
    }


def _build(left_out: list[Path]) -> float:
    """Give the seconds that MkDocs takes for the guide without some of its pages."""
    away = "\n".join(["*.toml", *(f"/{page.as_posix()}" for page in left_out)])
    quiet = {name: "ignore" for name in ("omitted_files", "not_found", "absolute_links")}
    links = {name: "ignore" for name in ("not_found", "anchors", "unrecognized_links")}
    settings = {
        "INHERIT": str(ROOT / "mkdocs.yml"),
        "docs_dir": str(ROOT / "docs"),
        "theme": {"custom_dir": str(ROOT / "docs" / "templates")},
        "hooks": [str(ROOT / "scripts" / "site_hooks.py")],
        "strict": False,
        "exclude_docs": away,
        "nav": None,
        "validation": {"nav": quiet, "links": links},
    }
    with tempfile.TemporaryDirectory(dir=BUILD) as folder:
        config = Path(folder) / "mkdocs.yml"
        config.write_text(yaml.safe_dump(settings), "utf-8")
        command = [sys.executable, "-m", "mkdocs", "build", "--quiet", "--config-file", config]
        began = time.monotonic()
        run(
            [*command, "--site-dir", Path(folder) / "site"],
            or_else="MkDocs could not build the pages.",
            env={"NO_MKDOCS_2_WARNING": "1"},
        )
        return time.monotonic() - began


if __name__ == "__main__":
    print(json.dumps(measure(), indent=1))
