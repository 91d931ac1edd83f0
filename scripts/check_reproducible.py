"""Build one commit twice, in two folders of different names, and compare every byte.

    python3 scripts/check_reproducible.py [--commit HEAD]

Each build starts from nothing but the environment: .venv and node_modules are shared.
Prints the first differences and exits with 1 when there are any.
"""

import argparse
import subprocess
import tempfile
from pathlib import Path

from environment import NODE_MODULES, PYTHON, VENV, npm_packages, python_packages
from steps import ROOT, StepFailed, files_under, main, run, say

ADDRESS = "https://guide.example/path/"
SHOWN = 20  # differences printed


def published(commit: str, folder: Path) -> Path:
    """Give the published folder of a commit, built in a clone of its own."""
    clone = ["git", "clone", "--quiet", "--no-checkout", ROOT, folder]
    run(clone, or_else="The repository could not be cloned.")
    checkout = ["git", "-C", folder, "checkout", "--quiet", "--detach", commit]
    run(checkout, or_else=f"There is no commit {commit}.")
    for shared in (VENV, NODE_MODULES):
        (folder / shared.name).symlink_to(shared, target_is_directory=True)
    site = folder / "build" / "published"
    for words in (["build_runtime.py"], ["build_site.py", "--address", ADDRESS, "--to", str(site)]):
        command = [str(PYTHON), f"scripts/{words[0]}", *words[1:]]
        if subprocess.run(command, cwd=folder, stdin=subprocess.DEVNULL).returncode:
            raise StepFailed("The build did not come to its end.")
    return site


def differences(one: Path, other: Path) -> list[str]:
    """List the files that only one of two folders has, or that differ."""
    trees = [{p.relative_to(top).as_posix(): p for p in files_under(top)} for top in (one, other)]
    found = [f"only in one of them: {name}" for name in sorted(trees[0].keys() ^ trees[1].keys())]
    for name in sorted(trees[0].keys() & trees[1].keys()):
        first, second = trees[0][name].read_bytes(), trees[1][name].read_bytes()
        if first != second:
            pairs = zip(first, second, strict=False)
            at = next((i for i, (a, b) in enumerate(pairs) if a != b), min(len(first), len(second)))
            found.append(f"{name}: {len(first)} and {len(second)} bytes, first at {at}")
    return found


def check() -> int:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--commit", default="HEAD")
    options = parser.parse_args()
    python_packages("requirements.txt")
    npm_packages()
    commit = run(
        ["git", "rev-parse", options.commit], or_else=f"There is no commit {options.commit}."
    ).strip()
    with tempfile.TemporaryDirectory(prefix="twice-") as place:
        sites = []
        for name in ("once", "and-once-more"):
            say(f"Building {commit[:7]}, {name.replace('-', ' ')}")
            sites.append(published(commit, Path(place) / name))
        found = differences(*sites)
        count = len(files_under(sites[0]))
    for line in found[:SHOWN]:
        say(f"  {line}")
    say(f"{count} files, {len(found)} differences")
    return 1 if found else 0


if __name__ == "__main__":
    main(check)
