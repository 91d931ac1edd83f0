"""The pull-down card, each of its outputs against something outside the project."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from published import agrees

from calculators.cards.pull_down import CARD
from calculators.errors import Complaints
from calculators.evaluate import evaluate
from calculators.hardware import PARTS
from calculators.outputs.data import as_data

MICRON = 101325.0 / 760_000.0  # Pa
CFM = 0.3048**3 / 60.0  # m3/s
HOSE = [{"part": "hose-1/4"}]


def outputs(**entries):
    return evaluate(CARD, entries).answer.outputs


def test_a_quarter_inch_hose_takes_what_an_independent_calculation_takes():
    # Worked out apart from this code: 240 s to 500 micron (10 L, 5 CFM, 20 micron, 6 ft), 235 s
    # with 8 CFM; at the end 0.051 L/s are left and the pump stands at 31 micron.
    result = outputs(volume="10 L", target_pressure="500 micron", path=HOSE)

    assert result["time"] == pytest.approx(240.0, rel=0.01)
    assert result["time_larger_pump"] == pytest.approx(235.0, rel=0.01)
    assert agrees(result["effective_speed"] * 1e3, "0.051")
    assert agrees(result["pump_pressure"] / MICRON, "31")
    assert result["bottleneck"] == "hose"
    # 1/S_eff = 1/S + 1/C: the hose keeps all but S_eff/S of the pressure above the ultimate.
    assert result["bottleneck_share"] == pytest.approx(1.0 - (31 - 20) / (500 - 20), abs=0.01)


def test_the_pump_alone_follows_the_textbook():
    # t = (V/S) ln((p0 - p_u)/(p - p_u)), every textbook.
    exact = 0.01 / (5 * CFM) * math.log((760_000 - 20) / (500 - 20))

    result = outputs(volume="10 L", target_pressure="500 micron", path=HOSE)

    assert result["time_pump_alone"] == pytest.approx(exact, rel=1e-9)


def test_it_levels_off_where_the_load_is_in_balance():
    # p_lim = p_u + Q (1/S + 1/C): with a load so small that the flow is molecular,
    # C = 12.1 d^3/L L/s in cm (Dushman, ch. 2), 5 CFM, ultimate 0.01 micron.
    conductance = 12.1e-3 * 0.635**3 / 182.88
    limit = 0.01 * MICRON + 1e-7 * (1.0 / conductance + 1.0 / (5 * CFM))

    result = outputs(
        target_pressure="0.03 micron",
        ultimate_pressure="0.01 micron",
        gas_load="1e-7 Pa·m³/s",
        path=HOSE,
    )

    assert result["limit_pressure"] == pytest.approx(limit, rel=0.02)
    assert result["time"] is None


def test_never_is_an_answer_with_its_reason():
    worn = evaluate(CARD, {"target_pressure": "50 micron", "ultimate_pressure": "60 micron"})
    leaking = evaluate(CARD, {"target_pressure": "500 micron", "gas_load": "200 micron·L/s"})

    assert as_data(worn)["answer"] == "50 micron is reached never"
    assert "pump itself stops at 60 micron" in as_data(worn)["notes"][0]
    assert "levels off" in as_data(leaking)["notes"][0]
    assert "could bear" in as_data(leaking)["notes"][1]
    assert worn.answer.outputs["time"] is None
    assert leaking.answer.outputs["time"] is None


def test_the_decades_add_up_to_the_whole():
    answer = evaluate(CARD, {}).answer
    (table,) = answer.tables

    assert sum(row[2] for row in table.rows) == pytest.approx(answer.outputs["time"], rel=1e-9)
    assert sum(row[3] for row in table.rows) == pytest.approx(1.0, rel=1e-9)


@pytest.mark.parametrize(
    ("entries", "same"),
    [
        ({"volume": "10 L"}, {"volume": "0.01 m³"}),
        ({"target_pressure": "500 micron"}, {"target_pressure": "0.5 Torr"}),
        ({"pump_speed": "6 m³/h"}, {"pump_speed": "100 L/min"}),
        ({"gas_load": "0.01 Pa·m³/s"}, {"gas_load": "0.1 mbar·L/s"}),
    ],
)
def test_the_same_quantity_in_another_unit_gives_the_same_answer(entries, same):
    one, other = outputs(**entries), outputs(**{**entries, **same})

    for name, value in one.items():
        if isinstance(value, float):
            assert other[name] == pytest.approx(value, rel=1e-12), name
        else:
            assert other[name] == value, name


@pytest.mark.parametrize(
    ("entries", "field", "says"),
    [
        ({"target_pressure": "1 atm"}, "target_pressure", "below the pressure you start from"),
        ({"volume": "0 L"}, "volume", "above zero"),
        ({"volume": "-3 L"}, "volume", "above zero"),
        ({"gas_load": "-1 micron·L/s"}, "gas_load", "outside"),
        ({"gas_load": "900 Pa·m³/s"}, "start_pressure", "cannot fall at all"),
        ({"start_pressure": "600 Pa", "ultimate_pressure": "900 Pa", "target_pressure": "1 Pa"},
         "start_pressure", "cannot fall at all"),
        ({"path": [{"part": "own"}]}, "path.0.bore", "type its bore"),
    ],
)  # fmt: skip
def test_an_impossible_pull_gets_a_sentence_at_its_input(entries, field, says):
    with pytest.raises(Complaints) as refused:
        outputs(**entries)

    assert says in dict(refused.value.items)[field]


rows = st.fixed_dictionaries(
    {
        "part": st.sampled_from(sorted(PARTS)),
        "bore": st.sampled_from(["", "0.1 mm", "1 mm", "1/4 in", "6 in"]),
        "length": st.sampled_from(["", "0 m", "1 in", "6 ft", "1 km"]),
        "line": st.sampled_from(["all", "a", "b", "c"]),
    }
)


@settings(max_examples=60)
@given(
    st.lists(rows, min_size=1, max_size=6),
    st.sampled_from(["0.0001 m³/s", "5 CFM", "1 m³/s"]),
    st.sampled_from(["0.001 Pa", "20 micron", "20 kPa"]),
    st.sampled_from(["0.001 Pa", "500 micron", "50 kPa"]),
    st.sampled_from(["0 Pa·m³/s", "1e-6 Pa·m³/s", "1 micron·L/s", "50 Pa·m³/s"]),
    st.sampled_from(["air", "helium", "R-410A"]),
)
def test_any_rig_gets_an_answer_or_a_sentence(path, speed, ultimate, target, load, gas):
    entries = {
        "path": path,
        "pump_speed": speed,
        "ultimate_pressure": ultimate,
        "target_pressure": target,
        "gas_load": load,
        "gas": gas,
    }
    try:
        data = as_data(evaluate(CARD, entries))
    except Complaints as complaint:
        assert all(sentence.endswith(".") for _, sentence in complaint.items)
    else:
        assert data["answer"]
