"""Mean free path, Knudsen number, regimes, and the flow coefficient of a long tube."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from published import agrees

from calculators.errors import OutOfRange
from calculators.physics import gases, rarefied_gas

AIR = gases.thin_gas(gas=gases.named("air"), temperature=293.15)
TORR = 101325.0 / 760.0  # Pa
MICRON = TORR / 1000.0  # Pa

# The linearized BGK equation for a tube with diffuse walls, solved numerically apart from this
# code; it agrees with the values of published_values/flow.py to 0.04 %. Columns: delta, G_P.
LINEARIZED_BGK = [
    (0.001, 1.4995), (0.01, 1.4763), (0.02, 1.4603), (0.04, 1.4386), (0.08, 1.4125),
    (0.1, 1.4040), (0.2, 1.3816), (0.3, 1.3762), (0.4, 1.3790), (0.5, 1.3867), (0.6, 1.3975),
    (0.8, 1.4253), (1.0, 1.4583), (1.4, 1.5333), (2.0, 1.6577), (3.0, 1.8800), (4.0, 2.1116),
    (5.0, 2.3483), (6.0, 2.5882), (8.0, 3.0739), (10.0, 3.5642), (15.0, 4.800),
    (20.0, 20.0 / 4 + 1.016), (50.0, 50.0 / 4 + 1.016),
]  # fmt: skip


@pytest.mark.parametrize(("delta", "published"), LINEARIZED_BGK)
def test_flow_coefficient_is_that_of_the_linearized_bgk_equation(delta, published):
    assert rarefied_gas.flow_coefficient(delta) == pytest.approx(published, rel=0.01)


def test_flow_coefficient_has_the_molecular_limit():
    # Knudsen's limit for a long tube, exact: 8 / (3 sqrt(pi)).
    exact = 8.0 / (3.0 * math.sqrt(math.pi))

    assert rarefied_gas.flow_coefficient(0.0) == pytest.approx(exact, rel=1e-15)
    assert rarefied_gas.flow_coefficient(1e-13) == pytest.approx(exact, rel=1e-6)


@pytest.mark.parametrize("delta", [1e3, 1e4, 1e6])
def test_flow_coefficient_has_the_viscous_limit(delta):
    # Poiseuille, delta/4, with slip: 1.016 for diffuse walls (Cercignani's slip coefficient).
    assert rarefied_gas.flow_coefficient(delta) == pytest.approx(delta / 4 + 1.016, rel=2e-4)


def test_flow_coefficient_has_its_minimum_where_theory_puts_it():
    # Knudsen's minimum: 0.915 of the molecular value, near delta = 0.3 (linearized BGK).
    deltas = [10.0 ** (k / 200.0) for k in range(-400, 201)]
    lowest = min(deltas, key=rarefied_gas.flow_coefficient)
    depth = rarefied_gas.flow_coefficient(lowest) / rarefied_gas.flow_coefficient(0.0)

    assert lowest == pytest.approx(0.3, abs=0.1)
    assert agrees(depth, "0.915") or depth == pytest.approx(0.915, rel=0.005)


@given(st.floats(1e-4, 1e6), st.floats(1e-4, 0.1))
def test_rarefaction_and_knudsen_number_say_the_same(pressure, bore):
    # delta = (sqrt(pi) / 2) * radius / mean free path, by definition of both.
    delta = rarefied_gas.rarefaction(inside_diameter=bore, pressure=pressure, gas=AIR)
    knudsen = rarefied_gas.knudsen_number(inside_diameter=bore, pressure=pressure, gas=AIR)

    assert delta * knudsen == pytest.approx(math.sqrt(math.pi) / 4.0, rel=1e-12)


def test_a_quarter_inch_bore_changes_regime_where_the_design_says():
    # Viscous above about 780 micron, molecular only below about 16 (Kn 0.01 and 0.5 at 20 degC).
    def kind(micron):
        number = rarefied_gas.knudsen_number(
            inside_diameter=0.00635, pressure=micron * MICRON, gas=AIR
        )
        return rarefied_gas.regime(knudsen_number=number)

    assert [kind(800), kind(770), kind(17), kind(15)] == [
        "viscous",
        "transition",
        "transition",
        "molecular",
    ]


@given(st.floats(0.4, 1e6), st.floats(1.001, 10.0))
def test_beyond_the_minimum_the_coefficient_rises(delta, factor):
    higher = rarefied_gas.flow_coefficient(delta * factor)

    assert higher > rarefied_gas.flow_coefficient(delta)


@pytest.mark.parametrize("pressure", [0.0, -1.0, math.nan])
def test_a_mean_free_path_needs_a_pressure(pressure):
    with pytest.raises(OutOfRange, match="above zero"):
        rarefied_gas.mean_free_path(pressure=pressure, gas=AIR)
