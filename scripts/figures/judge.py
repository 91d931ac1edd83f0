"""The decay judge: how large a leak has to be before it no longer passes."""

from __future__ import annotations

import json
from functools import cache
from typing import Any

from steps import ROOT

from figures.style import ACCENT, LEAK, QUIET, Figure, canvas, label, log_axis, marks

DATA = ROOT / "scripts" / "figures" / "decay_judge.json"  # kept by bench_decay_judge.py
LEAST, MOST = 0.05, 20.0  # ends of the axis, for the outermost classes


@cache
def counted() -> dict[str, Any]:
    """What the simulated tests counted."""
    return json.loads(DATA.read_text(encoding="utf-8"))


def judge_characteristic() -> tuple[Any, dict[str, float]]:
    found = counted()
    classes = [row for row in found["pass_by_leak"] if row[3]]
    drawing, axes = canvas(height=290)
    axes.set_title("Share judged to hold, %", loc="left", pad=7)
    axes.set_xlabel("True leak over the smallest detectable", loc="right", labelpad=2)
    axes.grid(True, axis="y")
    log_axis(axes.xaxis, (0.1, 0.2, 0.5, 1, 2, 5, 10))
    marks(axes.yaxis, (0, 25, 50, 75, 100))
    axes.set_xlim(LEAST, MOST)
    axes.set_ylim(0, 104)
    for low, high, passes, count in classes:
        low, high = max(low, LEAST), min(high, MOST)
        axes.fill_between((low, high * 0.97), 0, 100 * passes / count, color=ACCENT, linewidth=0)
    axes.axvline(1, color=LEAK, linewidth=1.5, linestyle=(0, (4, 3)))
    label(axes, 1, 97, "to be seen from here", LEAK, dx=6)
    label(axes, 1, 12, "no pass" if not _above(classes) else "", QUIET, dx=6)
    return drawing, {
        "logs": float(found["logs"]),
        "sized": float(sum(row[3] for row in classes)),
        "above": float(sum(row[3] for row in classes if row[0] >= 1.0)),
        "passed": float(_above(classes)),
    }


def _above(classes: list[list[float]]) -> int:
    """Passes among leaks that the test could have seen."""
    return int(sum(row[2] for row in classes if row[0] >= 1.0))


FIGURES = (
    (
        Figure(
            id="judge-characteristic",
            title="What the decay judge lets pass",
            caption=(
                "Simulated tests by the size of their true leak. Of {above:1;6} tests with a leak "
                "above the smallest that the test can see, {passed:1} were judged to hold. Below "
                "it, a leak is too small for that test: whether it passes depends on what else "
                "the readings show."
            ),
            alt=(
                "Share of simulated tests judged to hold, against the true leak over the smallest "
                "detectable leak, log axis. Below one it falls from class to class; above one "
                "{passed:1} of {above:1;6} tests pass."
            ),
            draw=judge_characteristic,
        ),
    )
    if DATA.exists()
    else ()
)
