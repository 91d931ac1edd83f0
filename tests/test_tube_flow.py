"""Tubes: every classical limit of the conductance, and throughput between two pressures."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from published import agrees

from calculators.errors import OutOfRange
from calculators.physics import gases, orifice_flow, rarefied_gas, tube_conductance, tube_flow

AIR = gases.thin_gas(gas=gases.named("air"), temperature=293.15)
LITER = 1e-3  # m3
MILLIBAR = 100.0  # Pa
TORR = 101325.0 / 760.0  # Pa
HOSE = {"inside_diameter": 0.00635, "length": 1.8288}  # 1/4 in bore, 6 ft

# Clausing's integral equation for the transmission of a tube, solved numerically apart from
# this code. It agrees with R. J. Cole, Prog. Astronaut. Aeronaut. 51, 261 (1977): 0.67198,
# 0.51423, 0.19094, 0.10931 at L/d 0.5, 1, 5, 10 (from memory). Columns: L/d, W.
CLAUSING = [
    (0.05, 0.95240), (0.1, 0.90922), (0.2, 0.83408), (0.25, 0.80127), (0.3, 0.77115),
    (0.4, 0.71779), (0.5, 0.67198), (0.6, 0.63223), (0.8, 0.56651), (1, 0.51423),
    (1.25, 0.46199), (1.5, 0.42006), (2, 0.35657), (3, 0.27544), (4, 0.22526), (5, 0.19094),
    (7.5, 0.13881), (10, 0.10932), (15, 0.07694), (20, 0.05945), (25, 0.04848), (50, 0.02528),
    (100, 0.01295), (500, 0.002643),
]  # fmt: skip


def conductance(pressure, *, inside_diameter=0.00635, length=1.8288, gas=AIR):
    return tube_conductance.conductance(
        inside_diameter=inside_diameter, length=length, mean_pressure=pressure, gas=gas
    )


# --- conductance: the limits ----------------------------------------------


@pytest.mark.parametrize(("length_to_diameter", "published"), CLAUSING)
def test_thin_gas_is_transmitted_as_clausing_says(length_to_diameter, published):
    bore = 0.001

    found = conductance(1e-6, inside_diameter=bore, length=length_to_diameter * bore)

    opening = orifice_flow.molecular_conductance(inside_diameter=bore, gas=AIR)
    assert found / opening == pytest.approx(published, rel=0.01)


@pytest.mark.parametrize("length_to_diameter", [0.05, 0.5, 1.0, 2.0, 5.0, 20.0])
def test_transmission_is_bermans(length_to_diameter):
    # Source: A. S. Berman, J. Appl. Phys. 36, 3356 (1965), closed form with x = L/a, from memory.
    x = 2.0 * length_to_diameter
    root = math.sqrt(x * x + 4.0)
    berman = (
        1.0
        + x * x / 4.0
        - x / 4.0 * root
        - ((8.0 - x * x) * root + x**3 - 16.0) ** 2
        / (72.0 * x * root - 288.0 * math.log(x + root) + 288.0 * math.log(2.0))
    )

    found = tube_conductance.transmission_probability(length_to_diameter=length_to_diameter)

    assert found == pytest.approx(berman, rel=0.01)


@pytest.mark.parametrize("delta", [0.001, 0.01, 0.1, 0.3, 1.0, 3.0, 10.0, 50.0])
def test_a_very_long_tube_has_the_conductance_of_kinetic_theory(delta):
    # C = G(delta) pi a^3 v0 / (2 L); G is held to the BGK table in test_rarefied_gas.
    bore, length = 0.001, 100.0
    pressure = delta * AIR.viscosity * AIR.probable_speed / (0.5 * bore)
    theory = (
        rarefied_gas.flow_coefficient(delta)
        * math.pi
        * (0.5 * bore) ** 3
        * AIR.probable_speed
        / (2.0 * length)
    )

    found = conductance(pressure, inside_diameter=bore, length=length)

    assert found == pytest.approx(theory, rel=1e-4)


def test_dense_gas_has_poiseuilles_conductance():
    pressure = 1e5
    poiseuille = tube_conductance.poiseuille_conductance(**HOSE, mean_pressure=pressure, gas=AIR)

    assert conductance(pressure) == pytest.approx(poiseuille, rel=3e-3)


def test_a_short_tube_creeps_as_dagan_says():
    # Source: Dagan, Weinbaum & Pfeffer, J. Fluid Mech. 115, 505 (1982): the resistance of a
    # tube of finite length is mu (3 + 8 L / (pi a)) / a^3 to 1 %.
    radius, length, pressure = 0.001, 0.003, 3e5
    resistance = AIR.viscosity * (3.0 + 8.0 * length / (math.pi * radius)) / radius**3

    found = conductance(pressure, inside_diameter=2.0 * radius, length=length)

    assert found == pytest.approx(pressure / resistance, rel=0.01)


# --- Knudsen 1909 as a cross-check ------------------------------------------


def test_knudsens_formula_is_the_handbooks_for_air():
    # Source: Dushman, ch. 2, for air at 20 degC in cm, mbar, L/s (from memory):
    # C = 135 d^4 p/L + 12.1 d^3/L (1 + 192 d p)/(1 + 237 d p); its constants carry 1 %.
    for pressure in (1e-3, 0.01, 0.05, 0.3, 2.0):  # mbar
        diameter, length = 0.635, 182.88  # cm
        x = diameter * pressure
        handbook = (
            135.0 * diameter**4 * pressure + 12.1 * diameter**3 * (1 + 192 * x) / (1 + 237 * x)
        ) / length

        found = tube_conductance.knudsen_conductance(
            **HOSE, mean_pressure=pressure * MILLIBAR, gas=AIR
        )

        assert found / LITER == pytest.approx(handbook, rel=0.01)


@given(st.floats(1e-3, 1e5))
def test_knudsens_formula_lies_up_to_six_percent_above_kinetic_theory(pressure):
    # Source: comparison of Knudsen's formula with the BGK equation: at most 5.8 % above.
    long = {"inside_diameter": 0.00635, "length": 63.5}
    check = tube_conductance.knudsen_conductance(**long, mean_pressure=pressure, gas=AIR)

    assert -0.005 < check / conductance(pressure, **long) - 1.0 < 0.062


# --- throughput between two pressures ---------------------------------------


def throughput(inlet, outlet, **changes):
    return tube_flow.throughput(
        **{**HOSE, **changes}, inlet_pressure=inlet, outlet_pressure=outlet, gas=AIR
    )


def test_dense_slow_gas_follows_the_difference_of_the_squares():
    # Poiseuille for a compressible gas: Q = pi d^4 / (256 mu L) (p1^2 - p2^2); with slip 0.3 %.
    narrow = {"inside_diameter": 0.002, "length": 3.0}
    inlet, outlet = 10_000.0, 2000.0
    exact = math.pi * 0.002**4 / (256.0 * AIR.viscosity * 3.0) * (inlet**2 - outlet**2)

    assert throughput(inlet, outlet, **narrow) == pytest.approx(exact, rel=5e-3)


def test_fast_gas_follows_isothermal_flow_with_friction():
    # Source: Shapiro 1953, ch. 6, with Blasius friction f = 0.316 Re^-0.25 and an entry loss of
    # K = 1.5: p1^2 - p2^2 = (Q/A)^2 (M/RT) (f L/d + K + 2 ln(p1/p2)), solved here by itself.
    bore, length = HOSE["inside_diameter"], HOSE["length"]
    inlet, outlet = 101_325.0, 70_000.0
    area = math.pi / 4.0 * bore**2
    flow = 100.0
    for _ in range(200):
        reynolds = 4.0 * flow / AIR.thermal_speed**2 / (math.pi * bore * AIR.viscosity)
        losses = 0.316 * reynolds**-0.25 * length / bore + 1.5 + 2.0 * math.log(inlet / outlet)
        flow = area * AIR.thermal_speed * math.sqrt((inlet**2 - outlet**2) / losses)

    assert reynolds > 4000
    assert throughput(inlet, outlet) == pytest.approx(flow, rel=0.02)


def test_a_choked_tube_does_not_feel_the_pressure_behind_it():
    short = {"inside_diameter": 0.003, "length": 0.3}

    near, far = (throughput(101_325.0, outlet, **short) for outlet in (10_000.0, 1000.0))

    assert far == pytest.approx(near, rel=1e-6)


@pytest.mark.parametrize("fall", [1e-4, 1e-3])
@pytest.mark.parametrize("pressure", [0.01, 1.0, 30.0, 300.0])
def test_for_a_small_difference_throughput_is_conductance_times_difference(pressure, fall):
    inlet, outlet = pressure * (1.0 + fall / 2.0), pressure * (1.0 - fall / 2.0)

    found = throughput(inlet, outlet) / (inlet - outlet)

    assert found == pytest.approx(conductance(pressure), rel=2e-3)


def test_reynolds_number_of_air_is_the_handbooks():
    # 8.32 Q/d for air at 20 degC in mbar L/s and cm, from 4 M Q / (pi mu R T d); the start of a
    # pull of 5 CFM through 1/4 in is turbulent, Re about 31,000.
    flow = 1013.25 * 2.359737 * MILLIBAR * LITER

    found = tube_flow.reynolds_number(inside_diameter=0.00635, throughput=flow, gas=AIR)

    assert found == pytest.approx(8.32 * 1013.25 * 2.359737 / 0.635, rel=5e-3)
    assert agrees(found / 1000.0, "31")


tubes = {
    "inside_diameter": st.floats(5e-4, 0.03),
    "length": st.floats(0.0, 20.0),
}


@given(st.fixed_dictionaries(tubes), st.floats(1e-3, 2e5), st.floats(1e-4, 0.99))
def test_inlet_pressure_is_the_inverse_of_throughput(tube, inlet, ratio):
    flow = throughput(inlet, ratio * inlet, **tube)

    back = tube_flow.inlet_pressure(**tube, outlet_pressure=ratio * inlet, throughput=flow, gas=AIR)

    assert back == pytest.approx(inlet, rel=1e-8)


@given(st.fixed_dictionaries(tubes), st.floats(1e-3, 2e5), st.floats(1e-4, 1e-2))
def test_a_wider_or_shorter_tube_or_more_pressure_passes_more(tube, inlet, ratio):
    flow = throughput(inlet, ratio * inlet, **tube)
    bore, length = tube["inside_diameter"], tube["length"]

    assert throughput(inlet, ratio * inlet, inside_diameter=1.1 * bore, length=length) > flow
    assert throughput(inlet, ratio * inlet, inside_diameter=bore, length=length + 0.1) < flow
    assert throughput(1.1 * inlet, ratio * inlet, **tube) > flow


@given(st.floats(5e-4, 0.02), st.floats(0.01, 200.0), st.floats(0.05, 0.9))
def test_a_hose_cut_in_two_passes_nearly_the_same(bore, inlet, ratio):
    # Only the second mouth is new: under 3 % for halves of 150 bores.
    whole = {"inside_diameter": bore, "length": 300.0 * bore}
    flow = throughput(inlet, ratio * inlet, **whole)
    half = {"inside_diameter": bore, "length": 150.0 * bore}

    middle = tube_flow.inlet_pressure(
        **half, outlet_pressure=ratio * inlet, throughput=flow, gas=AIR
    )
    end = tube_flow.inlet_pressure(**half, outlet_pressure=middle, throughput=flow, gas=AIR)

    assert inlet * (1.0 - 1e-9) <= end < inlet * 1.03


@given(st.floats(1e-3, 1e4), st.sampled_from(sorted(gases.GASES)))
def test_only_rarefaction_and_shape_decide(pressure, name):
    # Dimensional analysis: C / (a^2 v0) is a function of delta and L/a alone, whatever the gas.
    gas = gases.thin_gas(gas=gases.named(name), temperature=313.15)
    delta = rarefied_gas.rarefaction(inside_diameter=0.01, pressure=pressure, gas=gas)
    same = delta * AIR.viscosity * AIR.probable_speed / 0.001

    found = conductance(pressure, inside_diameter=0.01, length=0.5, gas=gas)
    like = conductance(same, inside_diameter=0.002, length=0.1)

    scale = (0.01 / 0.002) ** 2 * gas.probable_speed / AIR.probable_speed
    assert found == pytest.approx(scale * like, rel=1e-12)


@pytest.mark.parametrize(
    "wrong",
    [
        {"inside_diameter": 0.0},
        {"inside_diameter": -0.001},
        {"length": -1.0},
        {"inside_diameter": math.nan},
    ],
)
def test_a_tube_that_cannot_exist_is_refused(wrong):
    with pytest.raises(OutOfRange, match="above zero"):
        conductance(1.0, **wrong)


@pytest.mark.parametrize(("inlet", "outlet"), [(1.0, 2.0), (1.0, 1.0), (1.0, 0.0), (1.0, -1.0)])
def test_gas_does_not_flow_uphill(inlet, outlet):
    with pytest.raises(OutOfRange, match="higher to the lower"):
        throughput(inlet, outlet)
