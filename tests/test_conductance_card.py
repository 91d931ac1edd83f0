"""The conductance card, each of its outputs against something outside the project."""

import math

import pytest
from published import agrees

from calculators.cards.conductance import CARD
from calculators.errors import Complaints
from calculators.evaluate import evaluate
from calculators.hardware import KINDS, PARTS

LITER = 1e-3  # m3


def outputs(**entries):
    return evaluate(CARD, entries).answer.outputs


def own(bore, length, pressure, **more):
    return outputs(part="own", bore=bore, length=length, pressure=pressure, **more)


def test_conductance_is_that_of_the_linearized_bgk_equation():
    # Source: Karniadakis et al. 2005, table 15.5: G_P = 1.4391 at delta = 0.04, in
    # C = G pi a^3 v0 / (2 L). Air at 20 degC by CoolProp: 18.191 uPa s, 28.96546 g/mol.
    probable_speed = math.sqrt(2.0 * 8.314462618 * 293.15 / 0.02896546)
    pressure = 0.04 * 18.191e-6 * probable_speed / 0.005
    expected = 1.4391 * math.pi * 0.005**3 * probable_speed / (2.0 * 100.0)

    result = own("10 mm", "100 m", f"{pressure!r} Pa")

    assert result["conductance"] == pytest.approx(expected, rel=0.01)


def test_viscous_and_molecular_conductance_are_the_handbooks():
    # Source: Dushman, ch. 2: 135 d^4 p/L and 12.1 d^3/L L/s, cm and mbar, air at 20 degC.
    result = own("1 cm", "100 m", "1 mbar")

    assert agrees(result["viscous_conductance"] / LITER * 1e4, "135")
    assert agrees(result["molecular_conductance"] / LITER * 1e4, "12.1")


def test_knudsen_check_is_the_handbooks():
    # Source: Dushman, ch. 2, from memory: 135 d^4 p/L + 12.1 d^3/L (1 + 192 d p)/(1 + 237 d p).
    d, p, length = 0.635, 0.6666, 182.88
    handbook = (135 * d**4 * p + 12.1 * d**3 * (1 + 192 * d * p) / (1 + 237 * d * p)) / length

    result = outputs(part="hose-1/4", pressure="500 micron")

    assert result["knudsen_check"] / LITER == pytest.approx(handbook, rel=0.01)
    assert 0.0 < result["knudsen_check"] / result["conductance"] - 1.0 < 0.06


def test_mean_free_path_and_knudsen_number_are_the_handbooks():
    # Source: O'Hanlon, eq. (2.22), from memory: 0.005 cm Torr / p for air.
    result = own("1 cm", "1 m", "1 Torr")

    assert agrees(result["mean_free_path"] * 100.0, "0.005")
    assert agrees(result["knudsen_number"], "0.005")


@pytest.mark.parametrize(
    ("micron", "regime"), [(2000, "viscous"), (100, "transition"), (10, "molecular")]
)
def test_regime_is_named_by_the_handbooks_borders(micron, regime):
    # Source: Dushman, ch. 2: viscous below Kn = 0.01, molecular above 0.5.
    assert outputs(part="hose-1/4", pressure=f"{micron} micron")["regime"] == regime


def test_a_core_left_in_is_choked_as_the_handbook_says():
    # Source: Dushman, ch. 2: 20 L/s per cm2 at most; a sharp opening passes some 0.86 of it
    # (Fujimoto & Usami 1984). 1.38 mm is 1.5 mm2: so 0.3 and 0.26 L/s.
    result = outputs(part="core-in", pressure="1 atm")

    assert agrees(result["choked_limit"] / LITER, "0.3")
    assert agrees(result["throughput"] / 101_325.0 / LITER, "0.26")
    assert result["conductance"] == pytest.approx(result["throughput"] / 101_325.0, rel=1e-5)


def test_between_two_pressures_the_squares_count():
    # Poiseuille for a compressible gas: Q = pi d^4 / (256 mu L) (p1^2 - p2^2), air by CoolProp.
    expected = math.pi * 0.003**4 / (256.0 * 18.191e-6 * 5.0) * (6000.0**2 - 1000.0**2)

    result = own("3 mm", "5 m", "6000 Pa", pump_end_pressure="1000 Pa")

    assert result["throughput"] == pytest.approx(expected, rel=0.01)
    assert result["conductance"] == pytest.approx(result["throughput"] / 5000.0, rel=1e-12)


@pytest.mark.parametrize(
    ("entries", "same"),
    [
        ({"pressure": "500 micron"}, {"pressure": "0.5 Torr"}),
        ({"pressure": "1 mbar"}, {"pressure": "100 Pa"}),
        ({"part": "own", "bore": "1 cm", "length": "2 m"}, {"bore": "10 mm", "length": "200 cm"}),
        (
            {"part": "own", "bore": "1/2 in", "length": "6 ft"},
            {"bore": "12.7 mm", "length": "72 in"},
        ),
        ({"temperature": "20 °C"}, {"temperature": "68 °F"}),
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
        ({"part": "own", "length": "1 m"}, "bore", "type its bore"),
        ({"part": "own", "bore": "5 mm"}, "length", "type its length, 0 for an orifice"),
        ({"bore": "0 in"}, "bore", "above zero"),
        ({"length": "-2 ft"}, "length", "outside"),
        ({"pump_end_pressure": "500 micron"}, "pump_end_pressure", "below the system end"),
    ],
)
def test_an_impossible_part_gets_a_sentence_at_its_input(entries, field, says):
    with pytest.raises(Complaints) as refused:
        outputs(**entries)

    ((name, sentence),) = refused.value.items
    assert name == field
    assert says in sentence


@pytest.mark.parametrize("part", [key for key in PARTS if key != "own"])
def test_every_listed_part_is_a_real_one_with_a_source(part):
    listed = PARTS[part]

    assert outputs(part=part)["conductance"] > 0.0
    assert listed.kind in KINDS
    assert listed.source.key == "FROM-MEMORY"
    assert 1e-3 < listed.inside_diameter < 0.02
