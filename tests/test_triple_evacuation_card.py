"""The triple-evacuation card, each of its outputs against something outside the project."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from published import agrees

from calculators.cards.triple_evacuation import CARD
from calculators.errors import Complaints
from calculators.evaluate import evaluate

TORR = 101_325.0 / 760.0


def answer(**entries):
    return evaluate(CARD, entries).answer


def outputs(**entries):
    return answer(**entries).outputs


def rows(*pairs):
    return [{"evacuated_to": low, **({"broken_to": high} if high else {})} for low, high in pairs]


def test_share_left_is_a_worked_example_of_purging():
    # Source: a dilution purging sheet after C. Branan, Rules of Thumb for Chemical Engineers:
    # from 21 % oxygen, 0.5 atm, five cycles leave under 1 %, four do not.
    shares = [
        outputs(
            pulls=rows(*[("0.5 atm", "1 atm")] * cycles, ("0.5 atm", "")), barometer="760 Torr"
        )["share_left"]
        for cycles in (3, 4)
    ]

    # Our last pull is a cycle before its break: the share of the start gas is that of the mix.
    assert 21.0 * shares[1] < 1.0 < 21.0 * shares[0]


def test_air_left_is_the_worked_examples_cycle_count():
    # Source: a worked problem after the same book: 21 % to 5 ppm at 6 mmHg takes n = 2.20.
    one = outputs(pulls=rows(("6 Torr", "")), barometer="760 Torr")
    cycles = math.log(5e-4 / 21.0) / math.log(one["share_left"])

    assert agrees(cycles, "2.20")
    assert one["air_left"] == pytest.approx(6 * TORR)


def test_nitrogen_is_a_textbooks_vessel():
    # Source: Crowl and Louvar, vacuum purging (from memory): 1,000 gal at 75 degF, 20 mmHg, four
    # purges to 1 atm take 1.33 lb mol of nitrogen.
    result = outputs(
        pulls=rows(*[("20 Torr", "1 atm")] * 4, ("20 Torr", "")),
        volume="1000 gal",
        temperature="75 °F",
        barometer="760 Torr",
    )

    assert agrees(result["nitrogen"] / 0.0280134 / 453.59237, "1.33")


def test_vapor_and_water_left_are_coolprops_saturated_vapor():
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    density = coolprop.PropsSI("D", "T", 288.15, "Q", 1, "Water")
    share = 1.0 - 200.0 / 101_325.0

    result = outputs(
        pulls=rows(("200 Pa", "1 atm"), ("200 Pa", "1 atm"), ("200 Pa", "")),
        volume="3 m³",
        temperature="15 °C",
        water="250 g",
        barometer="1013.25 hPa",
    )

    assert result["vapor_per_break"] == pytest.approx(3 * density * share, rel=2e-3)
    assert result["vapor_carried"] == pytest.approx(9 * density * share, rel=2e-3)
    assert result["water_left"] == pytest.approx(0.250 - 9 * density * share, rel=2e-3)


def test_moisture_brought_is_iapws_ice_vapor():
    # Source: IAPWS R14-08: 1.08 Pa over ice at -60 degC (iapws 1.5.5).
    iapws = pytest.importorskip("iapws")
    vapor = iapws._iapws._Sublimation_Pressure(213.15) * 1e6

    result = outputs(volume="10 L", temperature="20 °C", dew_point="-60 °C")

    expected = 2 * vapor * 0.010 * 0.018015268 / (8.31446261815324 * 293.15)
    assert result["moisture_brought"] == pytest.approx(expected, rel=1e-3)


def test_a_teaspoon_outlasts_the_breaks():
    result = outputs(water="5 g", volume="10 L", temperature="20 °C")

    assert 4.0e-3 < result["water_left"] < 5.0e-3


@given(low=st.floats(10.0, 5e4))
def test_a_deeper_pull_leaves_less_air(low):
    here, deeper = (
        outputs(pulls=rows((f"{each!r} Pa", ""), ("5 Pa", ""))) for each in (low, 0.8 * low)
    )

    assert deeper["air_left"] < here["air_left"]


@given(count=st.integers(1, 9))
def test_another_break_leaves_less_air(count):
    here, more = (outputs(pulls=rows(*[("1500 micron", "")] * each)) for each in (count, count + 1))

    assert more["air_left"] < here["air_left"]


def test_the_table_has_a_row_per_pull():
    (table,) = answer().tables

    assert len(table.rows) == 3


@pytest.mark.parametrize(
    ("pulls", "name", "sentence"),
    [
        (rows(("800 Torr", "")), "pulls", "Pull 1 must end"),
        (rows(("500 micron", "100 Pa"), ("900 micron", "")), "pulls", "Pull 2 must end"),
        (rows(("20000 Pa", "150 Pa"), ("100 Pa", "")), "pulls", "Break 1 must raise"),
        (rows(("-1 Pa", "")), "pulls.0.evacuated_to", "above zero"),
        ([], "pulls", "takes 1 to 10 rows"),
        ([{"depth": "1 Pa"}], "pulls.0", "has no “depth”"),
    ],
)
def test_bad_rows_get_a_sentence(pulls, name, sentence):
    with pytest.raises(Complaints) as complaint:
        evaluate(CARD, {"pulls": pulls})

    assert sentence in dict(complaint.value.items)[name]
