"""The inside-volume card, each of its outputs against something outside the project."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from published import agrees

from calculators.cards.inside_volume import CARD
from calculators.errors import Complaints
from calculators.evaluate import evaluate

INCH, FOOT = 0.0254, 0.3048
GALLON = 231 * INCH**3
NOTHING = {"tubes": [], "parts": []}


def outputs(**entries):
    return evaluate(CARD, entries).answer.outputs


# Source: engineering table of ASTM B280: size, temper, area of the bore [sq in] as printed.
AREAS = [("1/4", "annealed", "0.0284"), ("3/8", "drawn", "0.078"), ("7/8", "annealed", "0.484"),
         ("1-1/8", "drawn", "0.825")]  # fmt: skip


@pytest.mark.parametrize(("size", "temper", "area"), AREAS)
def test_tube_volume_is_b280s_area_times_length(size, temper, area):
    result = outputs(tubes=[{"size": size, "temper": temper, "length": "100 ft"}], parts=[])

    assert agrees(result["tube_volume"] / (1200 * INCH**3), area)
    assert result["volume"] == result["tube_volume"] == result["counted_volume"]


def test_tube_volume_is_exact():
    """7/8 in drawn, 50 ft: pi/4 x (0.875 - 0.090)^2 sq in x 600 in, nothing rounded."""
    result = outputs(tubes=[{"size": "7/8", "temper": "drawn", "length": "50 ft"}], parts=[])

    exact = math.pi / 4 * 0.785**2 * 600 * INCH**3
    assert result["tube_volume"] == pytest.approx(exact, rel=1e-12)


def test_a_bore_of_ones_own_is_a_data_sheets_contents():
    # Source: data sheet of ASTM B88 type L, 5/8 in outside: bore 0.545 in, 0.0121 gal/ft.
    result = outputs(tubes=[{"bore": "0.545 in", "length": "1 ft"}], parts=[])

    assert agrees(result["tube_volume"] / GALLON, "0.0121")


def test_part_volume_of_a_cylinder_is_iapws_water():
    iapws = pytest.importorskip("iapws")
    density = iapws.IAPWS95(T=(60 + 459.67) / 1.8, P=0.101325).rho

    result = outputs(tubes=[], parts=[{"kind": "cylinder", "water_capacity": "47.7 lb"}])

    assert result["part_volume"] == pytest.approx(47.7 * 0.45359237 / density, rel=1e-5)


def test_measured_volume_is_nitrogens_own_by_coolprop():
    """Real nitrogen, 5 L at 25 bar gauge let into 12 L at 0 bar gauge, 20 degC."""
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    moles = sum(
        volume * coolprop.PropsSI("Dmolar", "T", 293.15, "P", pressure, "Nitrogen")
        for volume, pressure in [(0.005, 25e5 + 101_325), (0.012, 101_325.0)]
    )
    final = coolprop.PropsSI("P", "T", 293.15, "Dmolar", moles / 0.017, "Nitrogen")

    result = outputs(
        **NOTHING,
        known_volume="5 L",
        known_pressure="25 barg",
        system_pressure="0 barg",
        final_pressure=f"{final!r} Pa",
        barometer="1013.25 hPa",
    )

    assert result["measured_volume"] == pytest.approx(0.012, rel=0.01)
    assert result["volume"] == result["measured_volume"]


def test_effect_of_reading_is_what_a_second_reading_gives():
    known = {**NOTHING, "known_volume": "5 L", "known_pressure": "2 MPa", "system_pressure": "0 Pa"}
    here = outputs(**known, final_pressure="0.5 MPa")
    small = 1e-4  # of the first pressure, 2 MPa: a derivative, scaled up to one percent
    moved = outputs(**known, final_pressure=f"{0.5 + 2 * small!r} MPa")

    change = abs(moved["measured_volume"] / here["measured_volume"] - 1.0)
    assert here["effect_of_reading"] == pytest.approx(change / small * 0.01, rel=1e-2)


def test_measuring_wins_over_counting_and_both_are_shown():
    result = outputs(
        known_volume="10 L", known_pressure="2 MPa", system_pressure="0 Pa",
        final_pressure="1 MPa",
    )  # fmt: skip

    assert result["volume"] == result["measured_volume"] == pytest.approx(0.010)
    assert result["counted_volume"] > 0.0


lengths = st.floats(0.1, 500.0)


@given(length=lengths)
def test_volume_grows_with_length_alone(length):
    one, two = (
        outputs(tubes=[{"size": "5/8", "temper": "drawn", "length": f"{each!r} m"}], parts=[])
        for each in (length, 2 * length)
    )

    assert two["volume"] == pytest.approx(2 * one["volume"], rel=1e-9)


@given(length=lengths)
def test_order_of_rows_does_not_matter(length):
    first = {"size": "3/8", "temper": "annealed", "length": f"{length!r} m"}
    second = {"size": "1-1/8", "temper": "drawn", "length": "3 m"}

    assert outputs(tubes=[first, second])["volume"] == pytest.approx(
        outputs(tubes=[second, first])["volume"], rel=1e-12
    )


@pytest.mark.parametrize(
    ("entries", "name", "sentence"),
    [
        (NOTHING, "tubes", "at least one"),
        ({"tubes": [{"size": "2-1/8"}]}, "tubes.0.temper", "made drawn only"),
        ({"tubes": [{"size": "5/7"}]}, "tubes.0.size", "is not one of"),
        ({"tubes": [{"length": "-5 ft"}]}, "tubes.0.length", "outside"),
        ({"tubes": [{"bore": "0 in"}]}, "tubes.0.bore", "above zero"),
        ({"tubes": [{"length": "5 kg"}]}, "tubes.0.length", "measures mass"),
        ({"parts": [{"kind": "coil"}]}, "parts.0.volume", "one of the two"),
        (
            {"parts": [{"kind": "coil", "volume": "1 L", "water_capacity": "2 kg"}]},
            "parts.0.volume",
            "one of the two",
        ),
        ({"known_volume": "5 L"}, "known_pressure", "give all four"),
        (
            {
                "known_volume": "5 L",
                "known_pressure": "1 MPa",
                "system_pressure": "0 Pa",
                "final_pressure": "2 MPa",
            },
            "final_pressure",
            "must lie between",
        ),
        ({"tubes": "no json"}, "tubes", "as JSON"),
    ],
)
def test_bad_rows_get_a_sentence(entries, name, sentence):
    with pytest.raises(Complaints) as complaint:
        evaluate(CARD, entries)

    assert sentence in dict(complaint.value.items)[name]


def test_a_name_with_braces_stands_as_it_is():
    evaluation = evaluate(
        CARD, {"parts": [{"kind": "coil", "name": "coil {left}", "volume": "2 L"}]}
    )

    said = [evaluation.say(step.says, step.values) for step in evaluation.answer.working]
    assert "Coil {left}, as given." in said
