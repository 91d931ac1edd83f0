"""The house is in order: style, types, spelling, and one line for every script."""

import subprocess
import sys
from pathlib import Path

import pytest

pytestmark = pytest.mark.native

ROOT = Path(__file__).resolve().parents[1]
CHECKS = {
    "style": ["-m", "ruff", "check", "--quiet", "--output-format=concise", "."],
    "layout": ["-m", "ruff", "format", "--diff", "--quiet", "."],
    "types": ["-m", "mypy", "--no-error-summary"],
    "spelling": ["-m", "codespell_lib", "calculators", "docs", "scripts", "tests"],
}


@pytest.mark.parametrize("check", CHECKS.values(), ids=CHECKS.keys())
def test_the_tools_find_nothing_to_mend(check):
    done = subprocess.run([sys.executable, *check], cwd=ROOT, capture_output=True, text=True)

    assert done.stdout + done.stderr == ""


def test_every_script_has_its_line():
    table = (ROOT / "scripts" / "README.md").read_text(encoding="utf-8")
    scripts = [path.name for path in (ROOT / "scripts").glob("*.*") if path.suffix != ".md"]

    assert [name for name in scripts if f"| `{name}` |" not in table] == []
