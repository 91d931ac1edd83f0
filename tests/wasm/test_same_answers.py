"""The browser's Python gives the answers that this one gives, to the last digits."""

import json
import math
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
LOOSE = {
    "chart": 1e-9,
    "greatest_unseen_loss": 1e-7,
    "highest_leak_rate": 1e-7,
    "least_unseen_loss": 1e-7,
    "lowest_leak_rate": 1e-7,
    "smallest_detectable_leak": 1e-7,
}


def differences(here, there, where="", tolerance=1e-12):
    """Yield the places where two replies differ: numbers by more than one part in 1e12."""
    if isinstance(here, float) and isinstance(there, float):
        if not math.isclose(here, there, rel_tol=tolerance):
            yield f"{where}: {here!r} here, {there!r} in the browser"
    elif isinstance(here, dict) and isinstance(there, dict) and here.keys() == there.keys():
        for key in here:
            close = LOOSE.get(key, tolerance)
            yield from differences(here[key], there[key], f"{where}.{key}", close)
    elif isinstance(here, list) and isinstance(there, list) and len(here) == len(there):
        for index, (one, other) in enumerate(zip(here, there, strict=True)):
            yield from differences(one, other, f"{where}.{index}", tolerance)
    elif here != there:
        yield f"{where}: {here!r} here, {there!r} in the browser"


@pytest.mark.parametrize("asked", every_question.ASKABLE, ids=lambda asked: asked.slug)
def test_every_reply_is_the_same_in_the_browser(asked, in_pyodide):
    here = every_question.replies(asked)
    there = {name: in_pyodide[name] for name in here}

    assert here
    assert list(differences(here, there)) == []
