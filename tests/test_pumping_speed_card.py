"""The pumping-speed card, each of its outputs against something outside the project."""

import math

import pytest
from published import agrees

from calculators.cards.pumping_speed import CARD
from calculators.errors import Complaints
from calculators.evaluate import evaluate

MICRON = 101325.0 / 760_000.0  # Pa
CFM = 0.3048**3 / 60.0  # m3/s
HOSE = [{"part": "hose-1/4"}]


def outputs(**entries):
    return evaluate(CARD, entries).answer.outputs


def test_a_quarter_inch_hose_leaves_what_an_independent_calculation_leaves():
    # Worked out apart from this code with 1/S_eff = 1/S + 1/C(p_mean): 0.051 L/s, the pump at
    # 31 micron, a gauge there 16 times too low (5 CFM, 20 micron, 6 ft, 500 micron, air).
    result = outputs(pressure="500 micron", path=HOSE)

    assert agrees(result["effective_speed"] * 1e3, "0.051")
    assert agrees(result["pump_pressure"] / MICRON, "31")
    assert agrees(result["reading_ratio"], "16")
    assert agrees(result["share_left"], "0.02")


def test_a_long_hose_in_viscous_flow_has_the_closed_solution():
    # Poiseuille and a constant speed: p_pump = (-S + sqrt(S^2 + K^2 p^2)) / K, K = pi d^4 /
    # (128 mu L); air at 20 degC by CoolProp, 18.191 uPa s. Slip and ends stay under 1 %.
    k = math.pi * 0.015**4 / (128.0 * 18.191e-6 * 60.0)
    pump = (-2e-3 + math.sqrt(2e-3**2 + (k * 1500.0) ** 2)) / k

    result = outputs(
        pressure="1500 Pa",
        pump_speed="2 L/s",
        ultimate_pressure="0.001 Pa",
        path=[{"part": "own", "bore": "15 mm", "length": "60 m"}],
    )

    assert result["pump_pressure"] == pytest.approx(pump, rel=0.01)
    assert result["throughput"] == pytest.approx(2e-3 * pump, rel=0.01)
    assert result["effective_speed"] == pytest.approx(2e-3 * pump / 1500.0, rel=0.01)
    assert result["bottleneck"] == "own"
    assert result["bottleneck_share"] == pytest.approx(1.0 - pump / 1500.0, abs=0.01)


@pytest.mark.parametrize(
    ("path", "worst"),
    [
        ([{"part": "hose-3/4"}], "pump"),
        ([{"part": "hose-1/4"}, {"part": "core-tool"}], "hose"),
        ([{"part": "hose-3/4"}, {"part": "core-in"}], "valve-core"),
        ([{"part": "hose-3/4", "length": "1 ft"}, {"part": "core-tool"}], "core-tool"),
        ([{"part": "hose-3/4"}, {"part": "manifold-1/4"}], "manifold"),
        ([{"part": "hose-3/4"}, {"part": "flare-1/4"}], "fitting"),
    ],
)
def test_the_bottleneck_is_the_smallest_conductance(path, worst):
    # Dushman, ch. 2: in series the smallest conductance rules; the narrow part of each path
    # passes the least by 135 d^4 p/L and 12.1 d^3/L.
    assert outputs(path=path, pressure="500 micron")["bottleneck"] == worst


@pytest.mark.parametrize(
    ("entries", "same"),
    [
        ({"pressure": "500 micron"}, {"pressure": "0.5 Torr"}),
        ({"pump_speed": "6 m³/h"}, {"pump_speed": "100 L/min"}),
        ({"ultimate_pressure": "0.1 mbar"}, {"ultimate_pressure": "10 Pa"}),
        (
            {"path": [{"part": "own", "bore": "1/4 in", "length": "6 ft"}]},
            {"path": [{"part": "own", "bore": "6.35 mm", "length": "1.8288 m"}]},
        ),
    ],
)
def test_the_same_quantity_in_another_unit_gives_the_same_answer(entries, same):
    one, other = outputs(**entries), outputs(**{**entries, **same})

    for name, value in one.items():
        if isinstance(value, float):
            assert other[name] == pytest.approx(value, rel=1e-12), name
        else:
            assert other[name] == value, name


def test_the_listed_size_is_the_same_as_ones_own():
    listed = outputs(path=[{"part": "hose-3/8", "length": "10 ft"}])
    typed = outputs(path=[{"part": "own", "bore": "3/8 in", "length": "10 ft"}])

    assert listed["effective_speed"] == typed["effective_speed"]


def test_the_order_of_the_sides_does_not_matter():
    one = [{"part": "hose-1/4", "line": "a"}, {"part": "hose-3/8", "line": "b"}]
    other = [{"part": "hose-3/8", "line": "a"}, {"part": "hose-1/4", "line": "b"}]
    skipped = [{"part": "hose-3/8", "line": "c"}, {"part": "hose-1/4", "line": "b"}]

    speeds = [outputs(path=path)["effective_speed"] for path in (one, other, skipped)]

    assert speeds == pytest.approx([speeds[0]] * 3, rel=1e-8)


@pytest.mark.parametrize(
    ("entries", "field", "says"),
    [
        ({"path": []}, "path", "1 to 16 rows"),
        ({"path": "not json"}, "path", "JSON"),
        ({"path": [{"part": "own", "length": "1 m"}]}, "path.0.bore", "Part 1: type its bore"),
        ({"path": [HOSE[0], {"part": "own", "bore": "1 cm"}]}, "path.1.length", "Part 2: type"),
        ({"path": [{"part": "hose-1/4", "bore": "0 in"}]}, "path.0.bore", "above zero"),
        ({"path": [{"part": "hose-1/4", "length": "-1 ft"}]}, "path.0.length", "outside"),
        ({"path": [{"part": "garden"}]}, "path.0.part", "not one of"),
        ({"path": [{"diameter": "1 in"}]}, "path.0", "has no “diameter”"),
        ({"pressure": "15 micron"}, "pressure", "removes nothing"),
        ({"pump_speed": "0 CFM"}, "pump_speed", "above zero"),
    ],
)
def test_an_impossible_rig_gets_a_sentence_at_its_input(entries, field, says):
    with pytest.raises(Complaints) as refused:
        outputs(**entries)

    assert field in dict(refused.value.items)
    assert says in dict(refused.value.items)[field]
