"""Orifices: molecular effusion, creeping flow, choked jets, and what lies between."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.physics import gases, orifice_flow

AIR = gases.thin_gas(gas=gases.named("air"), temperature=293.15)
BORE = 1.38e-3  # m, of 1.5 mm2


def pressure_at(delta, bore=BORE):
    return delta * AIR.viscosity * AIR.probable_speed / (0.5 * bore)


@pytest.mark.parametrize("delta", [0.01, 0.1, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 1000.0])
def test_flow_into_vacuum_follows_the_measured_one(delta):
    # Source: Fujimoto & Usami, J. Fluids Eng. 106, 367 (1984), their empirical equation for a
    # thin orifice into vacuum, from memory:
    # W = 1 + (0.4733 + 0.6005/sqrt(d)) / (1 + 4.559/d + 3.094/d^2), W = Q over molecular flow.
    measured = 1.0 + (0.4733 + 0.6005 / math.sqrt(delta)) / (1.0 + 4.559 / delta + 3.094 / delta**2)
    pressure = pressure_at(delta)

    flow = orifice_flow.throughput(
        inside_diameter=BORE, inlet_pressure=pressure, outlet_pressure=1e-7 * pressure, gas=AIR
    )

    molecular = pressure * orifice_flow.molecular_conductance(inside_diameter=BORE, gas=AIR)
    assert flow / molecular == pytest.approx(measured, rel=0.032)


@pytest.mark.parametrize("ratio", [0.0001, 0.3, 0.9])
def test_thin_gas_flows_in_proportion_to_the_difference(ratio):
    # Molecules cross an opening both ways without minding each other: exact in the limit.
    pressure = pressure_at(1e-6)

    flow = orifice_flow.throughput(
        inside_diameter=BORE, inlet_pressure=pressure, outlet_pressure=ratio * pressure, gas=AIR
    )

    molecular = orifice_flow.molecular_conductance(inside_diameter=BORE, gas=AIR)
    assert flow == pytest.approx(molecular * pressure * (1.0 - ratio), rel=1e-5)


@pytest.mark.parametrize("ratio", [0.95, 0.8, 0.6, 0.5, 0.1])
def test_dense_gas_flows_as_through_a_nozzle(ratio):
    # Source: isentropic flow (de Saint-Venant and Wantzel), times the discharge coefficient.
    g = AIR.heat_capacity_ratio
    pressure = pressure_at(1e7)
    r = max(ratio, (2.0 / (g + 1.0)) ** (g / (g - 1.0)))
    speed = AIR.thermal_speed * math.sqrt(
        2.0 * g / (g - 1.0) * (r ** (2.0 / g) - r ** ((g + 1.0) / g))
    )
    ideal = math.pi / 4.0 * BORE**2 * pressure * speed

    flow = orifice_flow.throughput(
        inside_diameter=BORE, inlet_pressure=pressure, outlet_pressure=ratio * pressure, gas=AIR
    )

    assert flow == pytest.approx(orifice_flow.DISCHARGE_COEFFICIENT * ideal, rel=2e-3)


def test_creeping_flow_is_sampsons():
    # Source: R. A. Sampson, Phil. Trans. A 182, 449 (1891): Q_V = a^3 dp / (3 mu).
    pressure = pressure_at(1e4)

    conductance = orifice_flow.conductance(inside_diameter=BORE, mean_pressure=pressure, gas=AIR)

    sampson = (0.5 * BORE) ** 3 * pressure / (3.0 * AIR.viscosity)
    assert conductance == pytest.approx(sampson, rel=5e-4)


pressures = st.floats(1e-4, 2e5)
ratios = st.floats(1e-6, 0.999)
bores = st.floats(1e-4, 0.1)


@given(bores, pressures, ratios)
def test_inlet_pressure_is_the_inverse_of_throughput(bore, pressure, ratio):
    outlet = ratio * pressure
    flow = orifice_flow.throughput(
        inside_diameter=bore, inlet_pressure=pressure, outlet_pressure=outlet, gas=AIR
    )

    back = orifice_flow.inlet_pressure(
        inside_diameter=bore, outlet_pressure=outlet, throughput=flow, gas=AIR
    )

    assert back == pytest.approx(pressure, rel=1e-9)


@given(bores, pressures, ratios, st.floats(1.01, 2.0))
def test_more_pressure_before_it_drives_more_through(bore, pressure, ratio, factor):
    def flow(inlet):
        return orifice_flow.throughput(
            inside_diameter=bore, inlet_pressure=inlet, outlet_pressure=ratio * pressure, gas=AIR
        )

    assert flow(factor * pressure) > flow(pressure)


@given(bores, pressures, ratios)
def test_no_opening_passes_more_than_an_ideal_choked_nozzle(bore, pressure, ratio):
    flow = orifice_flow.throughput(
        inside_diameter=bore, inlet_pressure=pressure, outlet_pressure=ratio * pressure, gas=AIR
    )

    most = orifice_flow.choked_conductance(inside_diameter=bore, gas=AIR) * pressure
    assert 0.0 < flow < most
