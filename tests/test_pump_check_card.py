"""The pump-check card, each of its outputs against something outside the project."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from published import agrees

from calculators.cards.pump_check import CARD
from calculators.errors import Complaints
from calculators.evaluate import evaluate

MICRON = 101_325.0 / 760_000.0
TIMED = {
    "volume": "50 L",
    "first_pressure": "50 kPa",
    "last_pressure": "500 Pa",
    "duration": "60 s",
    "blank_off": "5 Pa",
}


def outputs(**entries):
    return evaluate(CARD, entries).answer.outputs


# Common practice: a pump gets below 50 micron, 100 at worst. A reading with its doubt (step 1,
# 10 %, k = 2: 11.6 % of the reading) on one side of a limit is judged, else not.
@pytest.mark.parametrize(
    ("micron", "judgment"),
    [(10, "good"), (40, "good"), (47, "undecided"), (70, "fair"), (95, "undecided"),
     (150, "poor"), (1000, "poor")],
)  # fmt: skip
def test_judgment_is_common_practice_with_the_gauges_doubt(micron, judgment):
    assert outputs(blank_off=f"{micron} micron")["judgment"] == judgment


def test_a_better_gauge_decides():
    assert outputs(blank_off="47 micron", accuracy="2 %")["judgment"] == "good"


def test_range_of_the_blank_off_is_the_gums():
    """A million draws inside step and accuracy, seeded; two standard deviations."""
    numpy = pytest.importorskip("numpy")
    noise = numpy.random.default_rng(3)
    spread = 2 * (noise.uniform(-0.5, 0.5, 10**6) + noise.uniform(-3.5, 3.5, 10**6)).std()

    result = outputs(blank_off="35 micron", accuracy="10 %", resolution="1 micron")

    assert result["lowest"] / MICRON == pytest.approx(35 - spread, rel=1e-3)
    assert result["highest"] / MICRON == pytest.approx(35 + spread, rel=1e-3)


def test_speed_is_a_sizing_guides_example():
    # Source: a public guide to sizing vacuum pumps: 1,000 m3 from 1,000 to 200 mbar in 10 min
    # asks for 160 m3/min (two digits; ln 5 gives 160.9); here a thousandth of it, nearly no floor.
    result = outputs(
        volume="1 m³", first_pressure="1000 mbar", last_pressure="200 mbar", duration="10 min",
        blank_off="0.001 Pa", rated_speed="160 L/min",
    )  # fmt: skip

    assert result["speed"] * 60e3 == pytest.approx(160.0, abs=5.0)
    assert result["share_of_rating"] == pytest.approx(1.0, abs=0.03)


def test_speed_reads_an_independent_integration_back():
    integrate = pytest.importorskip("scipy.integrate")
    run = integrate.solve_ivp(
        lambda _, p: -3e-3 / 0.05 * (p - 5.0), (0.0, 70.0), [5e4], rtol=1e-10, atol=1e-8,
        dense_output=True,
    )  # fmt: skip
    end = float(run.sol(60.0)[0])

    result = outputs(**(TIMED | {"last_pressure": f"{end!r} Pa"}))

    assert result["speed"] == pytest.approx(3e-3, rel=1e-6)


def test_uncertainty_of_the_speed_is_that_of_many_trials():
    """20,000 noisy pull-downs (GUM supplement 1 in spirit), seeded; k = 2."""
    numpy = pytest.importorskip("numpy")
    noise = numpy.random.default_rng(9)

    def seen(pressure):
        step = noise.uniform(-0.5, 0.5, 20_000)
        return pressure + step + noise.uniform(-0.05, 0.05, 20_000) * pressure

    time = 60.0 + noise.standard_normal(20_000)
    trials = 0.05 / time * numpy.log((seen(5e4) - 5.0) / (seen(500.0) - 5.0))

    result = outputs(**TIMED, accuracy="5 %", resolution="1 Pa")

    assert result["speed_uncertainty"] == pytest.approx(2 * trials.std() / trials.mean(), rel=0.03)


def test_water_activity_is_the_steam_tables():
    # Source: saturated steam table, 60 degC: 19.94 kPa.
    result = outputs(blank_off="199.4 Pa", oil_temperature="60 °C")

    assert agrees(100 * result["water_activity"], "1.00")


def test_share_of_the_target_is_a_plain_ratio():
    assert outputs(blank_off="100 micron", target="500 micron")["share_of_target"] == (
        pytest.approx(0.2)
    )


@given(seconds=st.floats(5.0, 3600.0))
def test_slower_is_a_smaller_pump(seconds):
    here, slower = (
        outputs(**(TIMED | {"duration": f"{each!r} s"})) for each in (seconds, 1.1 * seconds)
    )

    assert slower["speed"] < here["speed"]


@given(celsius=st.floats(0.5, 110.0))
def test_warmer_oil_needs_less_water_to_explain_it(celsius):
    here, warmer = (outputs(oil_temperature=f"{each!r} °C") for each in (celsius, celsius + 5))

    assert warmer["water_activity"] < here["water_activity"]


@pytest.mark.parametrize(
    ("entries", "name", "sentence"),
    [
        ({"volume": "50 L"}, "first_pressure", "give all four"),
        (TIMED | {"last_pressure": "60 kPa"}, "last_pressure", "must fall"),
        (TIMED | {"last_pressure": "4 Pa"}, "last_pressure", "never gets below"),
        ({"blank_off": "0 micron"}, "blank_off", "above zero"),
        ({"rated_speed": "5 L"}, "rated_speed", "measures volume"),
    ],
)
def test_what_cannot_be_gets_a_sentence(entries, name, sentence):
    with pytest.raises(Complaints) as complaint:
        evaluate(CARD, entries)

    assert sentence in dict(complaint.value.items)[name]
