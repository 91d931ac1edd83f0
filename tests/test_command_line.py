"""The shell: answers in words, one object in JSON, one line when it cannot."""

import json
import subprocess
import sys

import pytest

from calculators.outputs.cli import main


def run(capsys, *words):
    try:
        status = main(words)
    except SystemExit as stop:
        status = stop.code
    out, err = capsys.readouterr()
    return status, out, err


def test_it_lists_the_calculators(capsys):
    status, out, _ = run(capsys)

    assert status == 0
    assert "boiling-point" in out


def test_it_answers_in_words_with_both_systems(capsys):
    status, out, _ = run(capsys, "boiling-point", "--pressure", "500 micron")

    assert status == 0
    assert "Ice sublimes at −12.1 °F" in out
    assert "−24.5 °C" in out


def test_working_adds_the_steps(capsys):
    _, plain, _ = run(capsys, "boiling-point")
    _, full, _ = run(capsys, "boiling-point", "--working")

    assert "Working" not in plain
    assert "500 micron = 66.6612 Pa" in full


def test_a_bare_number_takes_the_first_unit_of_the_system(capsys):
    _, us, _ = run(capsys, "boiling-point", "--pressure", "500", "--json")
    _, si, _ = run(capsys, "boiling-point", "--pressure", "500", "--json", "--si")

    assert json.loads(us)["inputs"]["pressure"]["value"] == pytest.approx(66.66, abs=0.01)
    assert json.loads(si)["inputs"]["pressure"]["value"] == 500


def test_json_is_one_object_in_si_units(capsys):
    _, out, _ = run(capsys, "boiling-point", "--json")
    data = json.loads(out)

    assert {"calculator", "inputs", "outputs", "verdict", "working", "assumptions", "cautions",
            "sources"} <= set(data)  # fmt: skip
    assert data["outputs"]["temperature"]["unit"] == "K"
    assert data["outputs"]["phase"] == {"value": "ice", "unit": ""}


@pytest.mark.parametrize(
    "words",
    [
        ("boiling-point", "--pressure", "abc"),
        ("boiling-point", "--pressure", "-5"),
        ("boiling-point", "--pressure", "0"),
        ("boiling-point", "--pressure", "nan"),
        ("boiling-point", "--pressure", "1e9 Pa"),
        ("boiling-point", "--pressure", "20 °C"),
        ("convert", "--pressure", "31 inHg-vac"),
        ("convert", "--pressure", "5 furlong"),
        ("convert", "--nonsense", "5"),
        ("no-such-calculator",),
    ],
)
def test_bad_input_is_one_line_and_status_2(capsys, words):
    status, out, err = run(capsys, *words)

    assert status == 2
    assert out == ""
    assert len(err.strip().splitlines()) == 1


@pytest.mark.native
def test_it_runs_as_a_module():
    done = subprocess.run(
        [sys.executable, "-m", "calculators", "convert", "--pressure", "1 atm"],
        capture_output=True, encoding="utf-8", check=False,
    )  # fmt: skip

    assert done.returncode == 0
    assert "760,000 micron" in done.stdout
