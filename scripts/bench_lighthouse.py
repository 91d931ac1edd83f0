"""Lighthouse's scores of pages of each kind, with its own settings for a phone.

Part of bench_start.py.
"""

import json
import statistics
from pathlib import Path
from typing import Any

import site_server
from environment import node
from find_browser import ARGUMENTS, browser
from steps import run

PAGES = {
    "Home": "/",
    "A calculator": "/calculators/boiling-point/",
    "A lesson": "/learn/water-boils-cold/",
    "A table": "/look-up/tables-water/",
    "The job record": "/on-the-job/job/",
}
SCORES = ("performance", "accessibility", "best-practices", "seo")
RUNS = 3


def measure(site: Path, packages: Path) -> dict[str, Any]:
    """Score each page a few times and give the medians, and what keeps a page from 100."""
    server = site_server.start(site)
    tool = packages / "lighthouse" / "cli" / "index.js"
    found = []
    for page, path in PAGES.items():
        address = f"http://localhost:{server.server_port}{path}"
        reports = [_report(tool, address) for _ in range(RUNS)]
        scores = {
            name: round(100 * statistics.median(r["categories"][name]["score"] for r in reports))
            for name in SCORES
        }
        found.append({"page": page, **scores, "lost": _lost(reports[-1])})
    return {"pages": found, "lighthouse": reports[-1]["lighthouseVersion"]}


def _report(tool: Path, address: str) -> dict[str, Any]:
    flags = " ".join(["--headless=new", *ARGUMENTS])
    words = ["--quiet", "--output=json", "--no-enable-error-reporting", f"--chrome-flags={flags}"]
    command = [node(), tool, address, *words]
    printed = run(command, or_else="Lighthouse gave no scores.", env={"CHROME_PATH": browser()})
    return json.loads(printed[printed.index("{\n") :])


def _lost(report: dict[str, Any]) -> list[str]:
    """Name the checks that cost points."""
    return [
        audit
        for name in SCORES
        for audit, weight in (
            (ref["id"], ref["weight"]) for ref in report["categories"][name]["auditRefs"]
        )
        if weight and (report["audits"][audit]["score"] or 0) < 0.9
        and report["audits"][audit]["scoreDisplayMode"] not in ("notApplicable", "manual")
    ]  # fmt: skip
