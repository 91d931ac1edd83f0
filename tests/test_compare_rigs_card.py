"""The compare-rigs card, each of its outputs against something outside the project."""

import pytest
from published import agrees

from calculators.cards.compare_rigs import CARD
from calculators.errors import Complaints
from calculators.evaluate import evaluate
from calculators.outputs.data import as_data


def rigs(*hoses, **more):
    return [{"name": hose, "hose": hose, "end": "none", **more} for hose in hoses]


def outputs(**entries):
    return evaluate(CARD, {"volume": "10 L", **entries}).answer.outputs


def test_a_quarter_against_a_half_inch_is_not_sixteen():
    # Worked out apart from this code for 6 ft, 5 CFM, 20 micron, 10 L: 240 s and 41.5 s to 500
    # micron, 5.8 times; the speeds there 0.64 and 0.051 L/s. Sixteen is two to the fourth.
    result = outputs(rigs=rigs("hose-1/4", "hose-1/2"))

    assert result["slowest_time"] == pytest.approx(240.0, rel=0.01)
    assert agrees(result["fastest_time"], "41.5")
    assert agrees(result["time_ratio"], "5.8")
    assert agrees(result["speed_ratio"], "13")
    assert agrees(result["fourth_power"], "16")
    assert result["fastest"] == 2.0


@pytest.mark.parametrize(("cfm", "printed"), [(5, "7.3"), (8, "11")])
def test_a_quarter_against_three_quarters_is_not_81(cfm, printed):
    # From the same calculation: 7.3 with 5 CFM, 11 with 8 CFM, where the rule says 81.
    result = outputs(rigs=rigs("hose-1/4", "hose-3/4", pump_speed=f"{cfm} CFM"))

    assert agrees(result["time_ratio"], printed)
    assert agrees(result["fourth_power"], "81")


@pytest.mark.parametrize(
    ("micron", "printed"), [(1000, "77"), (500, "74"), (100, "57"), (50, "47"), (25, "38")]
)
def test_hoses_compare_by_kinetic_theory(micron, printed):
    # Source: ratio of linearized-BGK conductances of 3/4 and 1/4 in bores at the same mean
    # pressure: 77, 74, 57, 47 at 1000, 500, 100, 50 micron, between 81 and 27. At 25 micron from
    # table values of G: 27 G(delta = 4.25)/G(1.42). Ends of the hoses add up to 2 %.
    result = outputs(rigs=rigs("hose-1/4", "hose-3/4"), target_pressure=f"{micron} micron")

    assert result["conductance_ratio"] == pytest.approx(float(printed), rel=0.025)


def test_two_hoses_side_by_side_count_twice():
    result = outputs(
        rigs=[*rigs("hose-1/4"), {"name": "two", "hose": "hose-1/4", "hoses": "2", "end": "none"}]
    )

    assert result["fourth_power"] == 2.0
    assert result["conductance_ratio"] == pytest.approx(2.0, rel=1e-12)
    assert 1.0 < result["time_ratio"] < 2.1


def test_a_rig_that_never_arrives_is_named():
    answer = as_data(
        evaluate(
            CARD,
            {
                "rigs": [
                    {"name": "old", "ultimate_pressure": "600 micron"},
                    {"name": "new {curly}", "ultimate_pressure": "20 micron"},
                ]
            },
        )
    )

    assert answer["answer"].startswith("Only new {curly} gets to 500 micron")
    assert any("old never gets there: it levels off at 600 micron" in n for n in answer["notes"])
    assert answer["outputs"]["time_ratio"]["value"] is None


def test_none_that_arrives_is_an_answer_too():
    answer = as_data(
        evaluate(
            CARD,
            {"rigs": rigs("hose-1/4", "hose-1/2"), "target_pressure": "10 micron"},
        )
    )

    assert answer["answer"].startswith("None of these gets to 10 micron")


@pytest.mark.parametrize(
    ("entries", "field", "says"),
    [
        ({"rigs": rigs("hose-1/4")}, "rigs", "2 to 5 rows"),
        ({"rigs": rigs("hose-1/4", "own")}, "rigs.1.bore", "Rig 2: type the bore"),
        ({"rigs": rigs("hose-1/4", "own", bore="1 cm")}, "rigs.1.length", "Rig 2: type the length"),
        ({"rigs": rigs("hose-1/4", "hose-1/2", pump_speed="0")}, "rigs.0.pump_speed", "above zero"),
        ({"target_pressure": "1 atm"}, "target_pressure", "below the pressure you start from"),
        (
            {
                "rigs": rigs("hose-1/4", "hose-1/2", ultimate_pressure="900 Pa"),
                "start_pressure": "500 Pa",
                "target_pressure": "50 Pa",
            },
            "rigs.0.ultimate_pressure",
            "Rig 1: The pressure cannot fall",
        ),
    ],
)
def test_an_impossible_rig_gets_a_sentence_at_its_input(entries, field, says):
    with pytest.raises(Complaints) as refused:
        outputs(**entries)

    assert says in dict(refused.value.items)[field]


def test_the_same_quantity_in_another_unit_gives_the_same_answer():
    one = outputs(rigs=rigs("own", "hose-1/2", bore="1/4 in", length="6 ft"), volume="20 L")
    other = outputs(
        rigs=rigs("own", "hose-1/2", bore="6.35 mm", length="1.8288 m"), volume="0.02 m³"
    )

    assert other == pytest.approx(one, rel=1e-12)
