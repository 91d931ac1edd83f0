"""Set up everything that tests need and run them: natively, in Pyodide, in Chromium.

    python3 scripts/test.py [ARGUMENTS FOR PYTEST]

Needs Python 3.11 or newer with pip. Set-up is skipped when nothing has changed; tests never
are. The exit status is 0 when all have passed.
"""

import subprocess
import sys
import xml.etree.ElementTree as ElementTree
from pathlib import Path

from environment import PYTHON, node
from serve import build, with_environment
from steps import BUILD, ROOT, StepFailed, fingerprint, main, run, say, step

WHEELS = BUILD / "wasm-wheels"
IN_PYODIDE = (
    "hypothesis",
    "iniconfig",
    "packaging",
    "pluggy",
    "pygments",
    "pytest",
    "sortedcontainers",
)
RESULTS = BUILD / "tests"
NOTHING_TO_RUN = 5  # pytest's exit status for no test collected


def wasm_wheels() -> None:
    """Fetch pytest and Hypothesis as wheels for Pyodide, at the versions used natively."""
    locks = [ROOT / name for name in ("requirements.txt", "requirements-test.txt")]
    pins = [line for lock in locks for line in lock.read_text().split()]
    wanted = [pin for pin in pins if pin.split("==")[0] in IN_PYODIDE]
    command = [PYTHON, "-m", "pip", "download", "--quiet", "--disable-pip-version-check"]
    command += ["--no-deps", "--only-binary=:all:", "--dest", WHEELS]
    command += ["--python-version", "3.14", "--implementation", "cp", "--abi", "cp314"]
    command += ["--platform", "pyemscripten_2026_0_wasm32", *wanted]
    step(
        "pytest for Pyodide",
        lambda: run(command, or_else="The wheels for testing in Pyodide could not be fetched."),
        key=fingerprint(locks),
        makes=WHEELS,
    )


def set_up() -> None:
    build(requirements="requirements-test.txt")
    wasm_wheels()
    with_environment("find_browser.py")


def pytest_in_pyodide() -> list[str | Path]:
    """Give the command that is pytest inside Pyodide."""
    runtime = BUILD / "runtime"
    stdlib, app = (next(runtime.glob(f"{name}-*.zip")) for name in ("python", "calculators"))
    archives = ["--stdlib", stdlib, "--app", app]
    return [node(), "scripts/in_pyodide.mjs", *archives, "tests/wasm/run_pytest.py"]


def kinds() -> dict[str, tuple[list[str | Path], str, tuple[str, ...]]]:
    """Name each way to run tests: its command, where its tests are, and what it leaves out."""
    native = [PYTHON, "-m", "pytest"]
    return {
        "Natively": (native, "tests", ("tests/browser",)),
        "In Pyodide": (
            [*pytest_in_pyodide(), "-r", "fE"],
            "tests",
            ("tests/browser", "tests/wasm"),
        ),
        "In Chromium": (native, "tests/browser", ()),
    }


def within(word: str, place: str, without: tuple[str, ...]) -> str | None:
    """Give the part of a path of tests that belongs to a place, if any does."""
    path = Path(word.split("::")[0]).resolve().relative_to(ROOT)
    if path.is_relative_to(place) and not any(path.is_relative_to(each) for each in without):
        return word
    return place if Path(place).is_relative_to(path) else None


def run_kind(name: str, words: list[str]) -> dict[str, int] | None:
    """Run one kind of test and count; None when the arguments leave it nothing to run."""
    command, place, without = kinds()[name]
    asked = [word for word in words if Path(word.split("::")[0]).exists()]
    here = [narrowed for word in asked if (narrowed := within(word, place, without))]
    if asked and not here:
        return None
    say(f"\n{name}")
    options = [f"--ignore={folder}" for folder in without]
    options += [word for word in words if word not in asked]
    whole = [*command, *options, *(here or [place])]
    status, counts = counted(whole, name.split()[-1].lower())
    if words and status == NOTHING_TO_RUN:
        return None
    if counts is None:
        raise StepFailed(f"The tests did not run to their end ({name.lower()}).")
    counts["failed"] += bool(status and not counts["failed"])
    if counts["failed"] and name == "In Chromium":
        say("\nOnce more, what failed: a busy machine can be too slow for a browser")
        _, second = counted([*whole, "--last-failed"], "chromium-again")
        if second and (second["passed"] or second["failed"]):
            counts["passed"] += second["passed"]
            counts["failed"] = second["failed"]
    return counts


def counted(command: list[str | Path], name: str) -> tuple[int, dict[str, int] | None]:
    """Run a pytest; give its status and, if it ran to its end, what its results file tells."""
    results = RESULTS / f"{name}.xml"
    results.unlink(missing_ok=True)
    xml = f"--junitxml={results.relative_to(ROOT).as_posix()}"
    status = subprocess.run([*map(str, command), xml], cwd=ROOT).returncode
    return status, read(results) if results.exists() else None


def read(results: Path) -> dict[str, int]:
    """Count what a results file tells."""
    suites = ElementTree.parse(results).getroot().iter("testsuite")
    total = dict.fromkeys(("tests", "failures", "errors", "skipped"), 0)
    for suite in suites:
        total = {key: total[key] + int(suite.get(key, 0)) for key in total}
    failed = total["failures"] + total["errors"]
    passed = total["tests"] - failed - total["skipped"]
    return {"passed": passed, "failed": failed, "skipped": total["skipped"]}


def test() -> int:
    words = sys.argv[1:]
    set_up()
    RESULTS.mkdir(parents=True, exist_ok=True)
    found = {name: counts for name in kinds() if (counts := run_kind(name, words))}
    say("\nSummary")
    for name, counts in found.items():
        say(f"  {name}: " + ", ".join(f"{number} {what}" for what, number in counts.items()))
    keys = ("passed", "failed", "skipped")
    total = {key: sum(each[key] for each in found.values()) for key in keys}
    say("total: " + ", ".join(f"{number} {what}" for what, number in total.items()))
    return 1 if total["failed"] or not total["passed"] else 0


if __name__ == "__main__":
    main(test)
