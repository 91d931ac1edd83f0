"""Tube walls by the weights of the standard, and inside volumes; bores in published_values."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from published import agrees

from calculators.errors import OutOfRange
from calculators.physics import inside_volume, tube_sizes

INCH = 0.0254

# Source: ASTM B280-20, table 1 (drawn): size, wall [in], weight [lb/ft], as printed. Copper
# 0.323 lb/cu in (ASTM B280, from memory): the weight confirms the wall.
B280_WEIGHT = [
    ("1/4", "0.025", "0.068"),
    ("3/8", "0.030", "0.126"),
    ("1/2", "0.035", "0.198"),
    ("5/8", "0.040", "0.285"),
    ("3/4", "0.042", "0.362"),
    ("7/8", "0.045", "0.455"),
    ("1-1/8", "0.050", "0.655"),
    ("1-3/8", "0.055", "0.884"),
    ("1-5/8", "0.060", "1.14"),
    ("2-1/8", "0.070", "1.75"),
]


@pytest.mark.parametrize(("size", "wall", "weight"), B280_WEIGHT)
def test_drawn_walls_are_table_1(size, wall, weight):
    tube = tube_sizes.TUBES[size]
    outside, thick = tube.outside_diameter / INCH, tube.drawn_wall / INCH
    pounds_per_foot = math.pi * (outside - thick) * thick * 12 * 0.323

    assert thick == pytest.approx(float(wall), rel=1e-12)
    assert pounds_per_foot == pytest.approx(float(weight), rel=8e-3)


def test_a_size_that_does_not_exist_is_refused_in_words():
    with pytest.raises(OutOfRange, match="no size 1/3"):
        tube_sizes.inside_diameter(size="1/3", temper="drawn")


def test_a_temper_it_is_not_made_in_is_refused_in_words():
    with pytest.raises(OutOfRange, match="made drawn only"):
        tube_sizes.inside_diameter(size="2-1/8", temper="annealed")


def test_water_capacity_of_iapws_water():
    iapws = pytest.importorskip("iapws")
    density = iapws.IAPWS95(T=(60 + 459.67) / 1.8, P=0.101325).rho

    volume = inside_volume.cylinder_volume(water_capacity=1.0)

    assert volume == pytest.approx(1.0 / density, rel=1e-5)


def test_a_cylinder_stamped_in_pounds():
    # Source: 49 CFR 178 tables and cylinder handbooks: 27.74 cubic inches per pound of water at
    # 60 degF (from memory), weighed in air, so 0.1 % above a mass.
    volume = inside_volume.cylinder_volume(water_capacity=0.45359237)

    assert volume / INCH**3 == pytest.approx(27.74, rel=1.3e-3)


pressures = st.floats(1e3, 4e6)


@given(
    cylinder=st.floats(1e-4, 0.1),
    system=st.floats(1e-4, 1.0),
    high=st.floats(2e5, 4e6),
    low=st.floats(0.0, 1e5),
)
def test_expansion_gives_back_the_volume(cylinder, system, high, low):
    final = (cylinder * high + system * low) / (cylinder + system)

    measured = inside_volume.expansion_volume(
        known_volume=cylinder, known_pressure=high, system_pressure=low, final_pressure=final
    )

    assert measured == pytest.approx(system, rel=1e-6)


def test_expansion_is_nitrogens_own_by_coolprop():
    """Real nitrogen, 30 bar in 2 L let into 10 L at 1 bar, held at 20 degC."""
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    moles = sum(
        volume * coolprop.PropsSI("Dmolar", "T", 293.15, "P", pressure, "Nitrogen")
        for volume, pressure in [(0.002, 3e6), (0.010, 1e5)]
    )
    final = coolprop.PropsSI("P", "T", 293.15, "Dmolar", moles / 0.012, "Nitrogen")

    measured = inside_volume.expansion_volume(
        known_volume=0.002, known_pressure=3e6, system_pressure=1e5, final_pressure=final
    )

    assert measured == pytest.approx(0.010, rel=0.01)


def test_sensitivity_is_the_change_of_the_answer():
    known = {"known_pressure": 3e6, "system_pressure": 1e5}
    here = inside_volume.expansion_volume(known_volume=0.002, final_pressure=5e5, **known)
    moved = inside_volume.expansion_volume(known_volume=0.002, final_pressure=5e5 + 10.0, **known)

    relative = inside_volume.expansion_sensitivity(final_pressure=5e5, pressure_error=10.0, **known)

    assert abs(moved - here) / here == pytest.approx(relative, rel=1e-4)


def test_pressures_out_of_order_are_refused_in_words():
    with pytest.raises(OutOfRange, match="must lie between"):
        inside_volume.expansion_volume(
            known_volume=0.002, known_pressure=3e5, system_pressure=1e5, final_pressure=4e5
        )


@pytest.mark.parametrize("bore", [0.0, -0.01, math.nan])
def test_a_tube_without_a_bore_is_refused_in_words(bore):
    with pytest.raises(OutOfRange, match="bore above zero"):
        inside_volume.tube_volume(inside_diameter=bore, length=1.0)


def test_a_negative_length_is_refused_in_words():
    with pytest.raises(OutOfRange, match="cannot be negative"):
        inside_volume.tube_volume(inside_diameter=0.01, length=-1.0)


def test_a_meter_of_seven_eighths_by_hand():
    """Liters per meter by hand: pi/4 x (0.785 in)^2 = 0.31225 L for 7/8."""
    inside = tube_sizes.inside_diameter(size="7/8", temper="drawn")

    assert agrees(inside_volume.tube_volume(inside_diameter=inside, length=1.0) * 1e3, "0.3122")
