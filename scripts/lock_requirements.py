"""Resolve the lists in pyproject.toml into requirements.txt and its -test and -runtime.

Needs the resolver: ``pip install uv``, in any environment. Run it after changing a
dependency, look at the difference, commit both files.
"""

import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
HEAD = "# Made by scripts/lock_requirements.py from pyproject.toml; change that, not this.\n"


def resolve(*asked: str) -> str:
    """Pins for every supported Python and platform, one line each."""
    command = ["uv", "pip", "compile", "--quiet", "--universal", "--python-version", "3.11"]
    command += ["--fork-strategy", "fewest", "--no-header", "--no-annotate", *asked]
    done = subprocess.run(command, cwd=ROOT, check=True, capture_output=True, text=True)
    return done.stdout


if __name__ == "__main__":
    if not shutil.which("uv"):
        sys.exit("The resolver is missing: run pip install uv, then this again.")
    site = resolve("pyproject.toml", "--group", "site")
    (ROOT / "requirements.txt").write_text(HEAD + site)
    test = resolve("--group", "test", "--constraints", "requirements.txt")
    already = {line.split(" ;")[0] for line in site.splitlines()}
    more = "".join(f"{line}\n" for line in test.splitlines() if line.split(" ;")[0] not in already)
    (ROOT / "requirements-test.txt").write_text(f"{HEAD}-r requirements.txt\n{more}")
    runtime = resolve("--group", "runtime", "--no-deps", "--constraints", "requirements.txt")
    (ROOT / "requirements-runtime.txt").write_text(HEAD + runtime)
