"""The gauge-check card, each of its outputs against something outside the project."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from published import agrees

from calculators.cards.gauge_check import CARD
from calculators.errors import Complaints
from calculators.evaluate import evaluate

MICRON = 101_325.0 / 760_000.0


def outputs(**entries):
    return evaluate(CARD, entries).answer.outputs


# Source: NIST Dataplot reference manual, ISO 13528 EN SCORE, example on gear diameters: X, En as
# printed; U of the row 0.0087 (printed 0.009), U of the reference 0.01256 (both 2 s, from
# memory of NIST's data page). Diameters stand in for pascals; the accuracies give those U.
@pytest.mark.parametrize(
    ("reading", "printed"), [(1.006, "0.393"), (0.996, "-0.262"), (0.998, "-0.131")]
)
def test_en_score_is_dataplots(reading, printed):
    result = outputs(
        reading=f"{reading} Pa",
        accuracy=f"{0.0087 * math.sqrt(3) / 2 / reading * 100!r} %",
        resolution="0.0001 Pa",
        reference="1 Pa",
        reference_accuracy=f"{0.01256 * math.sqrt(3) / 2 * 100!r} %",
        reference_resolution="0.0001 Pa",
    )

    assert agrees(result["en_score"], printed)
    assert agrees(result["difference"], f"{reading - 1:.3f}")
    assert result["agreement"] == "agree"


def test_uncertainties_are_the_gums_rectangles():
    """A million draws inside step and accuracy (GUM supplement 1 in spirit), seeded; k = 2."""
    numpy = pytest.importorskip("numpy")
    noise = numpy.random.default_rng(5)
    step, limit = noise.uniform(-5.0, 5.0, 10**6), noise.uniform(-20.0, 20.0, 10**6)

    result = outputs(
        reading="200 Pa", accuracy="10 %", resolution="10 Pa",
        reference="400 Pa", reference_accuracy="5 %", reference_resolution="10 Pa",
    )  # fmt: skip

    spread = 2.0 * (step + limit).std()
    assert result["uncertainty"] == pytest.approx(spread, rel=3e-3)
    assert result["reference_uncertainty"] == pytest.approx(spread, rel=3e-3)
    assert result["allowed_difference"] == pytest.approx(spread * math.sqrt(2), rel=3e-3)


def test_a_step_alone_is_the_gums_0_29():
    # Source: GUM (JCGM 100:2008), F.2.2.1: u = 0.29 dx; U is twice that.
    result = outputs(accuracy="0 %", resolution="1 Pa")

    assert agrees(result["uncertainty"] / 2, "0.29")


def test_drift_and_what_is_left_by_hand():
    # 20 micron off now, 8 micron a year of 365.25 d ago: 12 micron a year. Accuracy 10 % of
    # 520 micron is 52: 32 micron to go, at 12 a year 2.667 years.
    result = outputs(
        reading="520 micron", reference="500 micron", accuracy="10 %",
        earlier_difference="8 micron", elapsed="365.25 d",
    )  # fmt: skip

    assert agrees(result["drift"] / MICRON, "12.000")
    assert agrees(result["time_left"] / 31_557_600.0, "2.667")


# Source: an instruction sheet of a laboratory thermal gauge: true = factor x reading, one digit;
# theory with full accommodation lies within 12 % (CO2) and 30 % (water) of it.
@pytest.mark.parametrize(
    ("gas", "factor", "tolerance"), [("R-744", 0.9, 0.12), ("water vapor", 0.5, 0.30)]
)
def test_gas_factor_is_near_the_printed_one(gas, factor, tolerance):
    result = outputs(gas=gas, kind="thermal")

    assert result["gas_factor"] == pytest.approx(1 / factor, rel=tolerance)


def test_reading_in_gas_is_free_molecule_heat_by_coolprop():
    coolprop = pytest.importorskip("CoolProp.CoolProp")

    def heat(fluid):
        cp = coolprop.PropsSI("CP0MOLAR", "T", 293.15, "Dmolar", 1e-3, fluid)
        return (cp - 0.5 * 8.314462618) / math.sqrt(coolprop.PropsSI("M", fluid))

    result = outputs(gas="R-134a", kind="thermal", reference="500 micron")

    expected = 500 * MICRON * heat("R134a") / heat("Nitrogen")
    assert result["reading_in_gas"] == pytest.approx(expected, rel=2e-3)


def test_a_diaphragm_reads_every_gas_alike():
    result = outputs(gas="R-410A", kind="direct", reference="500 micron")

    assert result["gas_factor"] == 1.0
    assert result["reading_in_gas"] == pytest.approx(500 * MICRON)


@pytest.mark.parametrize("pressure", ["2,000 micron", "10,000 micron"])
def test_no_factor_is_given_where_only_the_sensor_knows(pressure):
    result = outputs(gas="water vapor", reading=pressure, reference=pressure)

    assert result["gas_factor"] is None
    assert result["reading_in_gas"] is None


@given(off=st.floats(0.0, 2000.0), accuracy=st.floats(1.0, 50.0))
def test_agreement_is_the_en_score_within_one(off, accuracy):
    result = outputs(reading=f"{500 + off!r} micron", accuracy=f"{accuracy!r} %")

    assert (result["agreement"] == "disagree") == (abs(result["en_score"]) > 1.0)


@given(off=st.floats(1.0, 400.0))
def test_further_apart_agrees_less(off):
    near, far = (
        outputs(reading=f"{500 - each!r} micron", accuracy="0 %") for each in (off, 1.1 * off)
    )

    assert far["en_score"] < near["en_score"] < 0.0


def test_gauges_too_coarse_to_disagree_are_told_so():
    assert outputs(reading="20 Pa", resolution="30 Pa", reference="12 Pa")["agreement"] == (
        "undecided"
    )


@pytest.mark.parametrize(
    ("entries", "name", "sentence"),
    [
        ({"earlier_difference": "5 micron"}, "elapsed", "give both"),
        ({"elapsed": "90 d"}, "earlier_difference", "give both"),
        ({"accuracy": "10 micron"}, "accuracy", "measures pressure"),
        ({"gas": "argon"}, "gas", "is not one of"),
    ],
)
def test_what_is_missing_or_wrong_gets_a_sentence(entries, name, sentence):
    with pytest.raises(Complaints) as complaint:
        evaluate(CARD, entries)

    assert sentence in dict(complaint.value.items)[name]
