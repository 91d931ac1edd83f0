"""The browser's Python gives the answers that this one gives, to the last digits."""

import json
import math
import re
import subprocess

import every_question
import pytest
from environment import node
from steps import BUILD, ROOT

pytestmark = pytest.mark.native


@pytest.fixture(scope="module")
def in_pyodide():
    """Every reply of the shipped runtime, under node."""
    runtime = BUILD / "runtime"
    stdlib, app = (next(runtime.glob(f"{name}-*.zip")) for name in ("python", "calculators"))
    command = [node(), "scripts/in_pyodide.mjs", "--stdlib", stdlib, "--app", app]
    done = subprocess.run(
        [*command, "scripts/every_question.py"], cwd=ROOT, capture_output=True, check=True
    )
    return json.loads(done.stdout)


# What a fit gives: an end of its interval is where a misfit meets a ceiling, the square root of
# a small difference of large numbers, which the last digit of an exponential moves in the tenth.
# A job prints the same in its charts and its table.
LOOSE = {
    "chart": 1e-9,
    "charts": 1e-9,
    "csv": 1e-9,
    "greatest_unseen_loss": 1e-7,
    "highest_leak_rate": 1e-7,
    "least_unseen_loss": 1e-7,
    "lowest_leak_rate": 1e-7,
    # Where the bench goes on from: its integrator's own steps follow the last digit of an
    # exponential. What the gauge shows at every tick is compared to the last digit.
    "moment": 1e-6,
    "smallest_detectable_leak": 1e-7,
}
ZERO = {"moment": 1e-12}  # water that is gone is a rounding error, of either sign
NUMBER = re.compile(r"(\d+\.\d+(?:e[+-]?\d+)?)")


def differences(here, there, where="", tolerance=1e-12, zero=0.0):
    """Yield the places where two replies differ: numbers by more than one part in 1e12."""
    if isinstance(here, float) and isinstance(there, float):
        if not math.isclose(here, there, rel_tol=tolerance, abs_tol=zero):
            yield f"{where}: {here!r} here, {there!r} in the browser"
    elif isinstance(here, dict) and isinstance(there, dict) and here.keys() == there.keys():
        for key in here:
            close = LOOSE.get(key, tolerance), ZERO.get(key, zero)
            yield from differences(here[key], there[key], f"{where}.{key}", *close)
    elif isinstance(here, list) and isinstance(there, list) and len(here) == len(there):
        for index, (one, other) in enumerate(zip(here, there, strict=True)):
            yield from differences(one, other, f"{where}.{index}", tolerance, zero)
    elif where.endswith(".csv"):
        yield from differences(cells(here), cells(there), f"{where}.cells", tolerance)
    elif here != there:
        yield f"{where}: {here!r} here, {there!r} in the browser"


def cells(table):
    """Split a table into its numbers and what stands between them."""
    return [float(part) if NUMBER.fullmatch(part) else part for part in NUMBER.split(table)]


@pytest.mark.parametrize("asked", every_question.ASKABLE, ids=lambda asked: asked.slug)
def test_every_reply_is_the_same_in_the_browser(asked, in_pyodide):
    here = every_question.replies(asked)
    there = {name: in_pyodide[name] for name in here}

    assert here
    assert list(differences(here, there)) == []
