"""The rig-check card, each of its outputs against something outside the project."""

import math

import pytest
from published import agrees

from calculators.cards.rig_check import CARD
from calculators.errors import Complaints
from calculators.evaluate import evaluate

MICRON = 101325.0 / 760_000.0  # Pa
CFM = 0.3048**3 / 60.0  # m3/s
HOSE = [{"part": "hose-1/4"}]


def outputs(**entries):
    return evaluate(CARD, {"path": HOSE, **entries}).answer.outputs


def test_a_hundred_micron_on_a_quarter_inch_hose_is_a_small_leak():
    # Worked out apart from this code: a rig under 100 micron says Q < C (100 - p_u) =
    # 1.8 micron L/s = 2.4e-4 Pa m3/s for a 6 ft hose of 1/4 in bore and p_u = 20 micron.
    result = outputs(rig_reading="100 micron", ultimate_pressure="20 micron")

    assert agrees(result["least_load"] * 1e4, "2.4") or result["least_load"] == pytest.approx(
        2.4e-4, rel=0.03
    )
    assert agrees(result["least_load"] / MICRON * 1e3, "1.8")


def test_at_the_pump_end_the_pump_carries_it_alone():
    # Q = S (p - p_u), every textbook.
    result = outputs(rig_reading="100 micron", ultimate_pressure="20 micron")

    assert result["most_load"] == pytest.approx(5 * CFM * 80 * MICRON, rel=1e-9)


def test_in_molecular_flow_the_load_is_the_handbooks():
    # Q = (p - p_u) / (1/S + 1/C), C = 12.1 d^3/L L/s in cm (Dushman, ch. 2).
    conductance = 12.1e-3 * 0.635**3 / 182.88
    expected = 0.09 * MICRON / (1.0 / (5 * CFM) + 1.0 / conductance)

    result = outputs(
        rig_reading="0.1 micron", ultimate_pressure="0.01 micron", resolution="0.01 micron"
    )

    assert result["least_load"] == pytest.approx(expected, rel=0.02)


def test_the_rises_are_the_load_over_the_volumes():
    # dp/dt = Q/V (40 CFR 1065.644); volume of a 6 ft hose of 1/4 in bore: pi/4 d^2 L = 0.058 L.
    result = outputs(volume="10 L", rig_reading="60 micron")
    hose = math.pi / 4.0 * 0.635**2 * 182.88 / 1000.0

    assert agrees(hose, "0.058")
    assert result["rig_volume"] == pytest.approx(hose * 1e-3, rel=1e-9)
    total = 0.010 + hose * 1e-3
    assert result["false_rise"] == pytest.approx(result["least_load"] / total, rel=1e-9)
    assert result["greatest_false_rise"] == pytest.approx(result["most_load"] / total, rel=1e-9)
    assert result["rig_rise"] == pytest.approx(result["least_load"] / (hose * 1e-3), rel=1e-9)


def test_a_system_on_it_stops_at_the_reading():
    # The same gas through the same path holds the same pressure: conservation of mass.
    result = outputs(rig_reading="340 micron")

    assert result["limit_pressure"] == pytest.approx(340 * MICRON, rel=1e-8)


def test_the_share_is_that_of_effective_speeds():
    # Worked out apart from this code: S_eff is 0.018 L/s at 100 and 0.051 L/s at 500 micron, so
    # a rig that stands at 100 takes 1.8/25.5 of the flow at 500.
    result = outputs(rig_reading="100 micron", target_pressure="500 micron")

    assert result["share_at_target"] == pytest.approx(1.8 / 25.5, rel=0.04)


@pytest.mark.parametrize(
    ("reading", "target", "judgment"),
    [(60, 500, "tight"), (100, 500, "tight"), (150, 500, "fair"), (450, 500, "leaky"),
     (90, 100, "leaky"), (600, 500, "leaky")],
)  # fmt: skip
def test_judgment_follows_practice_and_the_target(reading, target, judgment):
    # Common practice: pump, hoses and core tools together get below 100 micron.
    result = outputs(rig_reading=f"{reading} micron", target_pressure=f"{target} micron")

    assert result["judgment"] == judgment


def test_a_gauge_at_the_pump_feels_only_what_reaches_the_pump():
    result = outputs(rig_reading="100 micron", gauge_at="pump")

    assert result["least_load"] == result["most_load"]
    assert result["limit_pressure"] > 100 * MICRON


def test_what_the_gauge_cannot_show_is_bounded_by_its_step():
    result = outputs(rig_reading="20 micron", ultimate_pressure="20 micron", resolution="5 micron")

    assert result["most_load"] == pytest.approx(5 * CFM * 10 * MICRON, rel=1e-9)


@pytest.mark.parametrize(
    ("entries", "field", "says"),
    [
        ({"rig_reading": "15 micron"}, "rig_reading", "lower than the pump alone"),
        ({"target_pressure": "20 micron"}, "target_pressure", "above what the pump alone reads"),
        ({"path": [{"part": "own", "bore": "5 mm"}]}, "path.0.length", "type its length"),
        ({"volume": "0 L"}, "volume", "above zero"),
    ],
)
def test_an_impossible_check_gets_a_sentence_at_its_input(entries, field, says):
    with pytest.raises(Complaints) as refused:
        outputs(**entries)

    assert says in dict(refused.value.items)[field]
