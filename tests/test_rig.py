"""Rigs in steady flow: series, branches, shares, and what cannot be."""

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from published import agrees

from calculators.errors import OutOfRange
from calculators.physics import gases, tube_conductance
from calculators.physics.rig import Rig, Tube
from calculators.physics.rig_flow import flow_at, flow_curve, steady_flow, system_pressure

AIR = gases.thin_gas(gas=gases.named("air"), temperature=293.15)
MICRON = 101325.0 / 760_000.0  # Pa
INCH = 0.0254  # m
FOOT = 0.3048  # m
CFM = FOOT**3 / 60.0  # m3/s


def hose(bore, length=6 * FOOT):
    return Tube(inside_diameter=bore, length=length)


def rig(*parts, speed=5 * CFM, ultimate=20 * MICRON, branches=()):
    return Rig(
        pumping_speed=speed, ultimate_pressure=ultimate, shared=tuple(parts), branches=branches
    )


# Worked out apart from this code by stepping with 1/S_eff = 1/S + 1/C(p_mean): air 20 degC,
# 5 CFM, ultimate 20 micron, 6 ft of hose. Columns: bore [in], then the effective speed [L/s] at
# 760,000, 10,000, 1000, 500, 200 and 100 micron. It takes the conductance at the mean pressure,
# this code averages it along the hose: 2 %.
EFFECTIVE_SPEED = [
    (3 / 16, (1.23, 0.25, 0.030, 0.0175, 0.0097, 0.0068)),
    (1 / 4, (1.86, 0.71, 0.091, 0.051, 0.027, 0.018)),
    (3 / 8, (2.26, 1.75, 0.42, 0.23, 0.114, 0.071)),
    (1 / 2, (2.33, 2.14, 1.05, 0.64, 0.32, 0.19)),
    (3 / 4, (2.36, 2.31, 1.94, 1.62, 1.05, 0.67)),
]
MICRONS = (760_000, 10_000, 1000, 500, 200, 100)


@pytest.mark.parametrize(("bore", "speeds"), EFFECTIVE_SPEED)
def test_effective_speed_is_that_of_an_independent_calculation(bore, speeds):
    for micron, expected in zip(MICRONS, speeds, strict=True):
        flow = flow_at(rig=rig(hose(bore * INCH)), system_pressure=micron * MICRON, gas=AIR)

        assert flow.effective_speed * 1e3 == pytest.approx(expected, rel=0.03)


def test_a_gauge_at_the_pump_reads_sixteen_times_too_low():
    # From the same calculation: at 500 micron, through a 1/4 in hose, the pump sees 31 micron.
    flow = flow_at(rig=rig(hose(0.25 * INCH)), system_pressure=500 * MICRON, gas=AIR)

    assert agrees(flow.pump_pressure / MICRON, "31")


def test_viscous_flow_has_the_closed_solution():
    # Exact for Poiseuille and a constant speed without ultimate, K = pi d^4 / (128 mu L):
    # p_pump = (-S + sqrt(S^2 + K^2 p^2)) / K. Long and slow, so that ends and slip are below 1 %.
    bore, length, speed, pressure = 0.02, 60.0, 0.5e-3, 1500.0
    k = math.pi * bore**4 / (128.0 * AIR.viscosity * length)
    exact = (-speed + math.sqrt(speed**2 + (k * pressure) ** 2)) / k

    flow = flow_at(
        rig=rig(hose(bore, length), speed=speed, ultimate=1e-6), system_pressure=pressure, gas=AIR
    )

    assert flow.pump_pressure == pytest.approx(exact, rel=0.01)


def test_molecular_flow_adds_reciprocals():
    # Dushman, ch. 2: 1/S_eff = 1/S + 1/C1 + 1/C2, exact in molecular flow.
    parts = (hose(0.01, 0.5), hose(0.006, 0.2))
    conductances = [
        tube_conductance.molecular_conductance(
            inside_diameter=part.inside_diameter, length=part.length, gas=AIR
        )
        for part in parts
    ]
    expected = 1.0 / (1.0 / 1e-3 + sum(1.0 / each for each in conductances))

    flow = flow_at(rig=rig(*parts, speed=1e-3, ultimate=1e-12), system_pressure=1e-5, gas=AIR)

    assert flow.effective_speed == pytest.approx(expected, rel=1e-4)


def test_two_equal_sides_pass_twice_as_much():
    side = (hose(0.006), hose(0.005, 0.08))
    one = rig(*side, speed=1.0)
    two = rig(branches=(side, side), speed=1.0)

    flows = [flow_at(rig=each, system_pressure=66.0, gas=AIR) for each in (one, two)]

    # A pump of 1 m3/s takes it all, so that only the sides count.
    assert flows[1].throughput == pytest.approx(2.0 * flows[0].throughput, rel=2e-3)


def test_pressure_shares_add_up():
    flow = flow_at(
        rig=rig(hose(0.009), hose(0.005, 0.08), hose(0.00138, 0.0)), system_pressure=66.0, gas=AIR
    )

    shares = [flow.pump_share, *(flow.share(part) for part in flow.parts)]

    assert math.fsum(shares) == pytest.approx(1.0, rel=1e-12)


sizes = st.tuples(st.floats(0.001, 0.03), st.floats(0.0, 5.0))
paths = st.lists(sizes.map(lambda size: hose(*size)), min_size=1, max_size=4).map(tuple)
speeds = st.floats(1e-4, 0.1)
above_ultimate = st.floats(1.01, 4e4)  # of an ultimate of 20 micron


@given(paths, st.lists(paths, max_size=3).map(tuple), speeds, above_ultimate)
def test_every_side_ends_at_the_pressure_of_the_system(shared, branches, speed, above):
    whole = rig(*shared, speed=speed, branches=branches)
    pressure = above * whole.ultimate_pressure

    flow = flow_at(rig=whole, system_pressure=pressure, gas=AIR)

    assert flow.system_pressure == pytest.approx(pressure, rel=1e-7)
    own = {part.branch: part for part in flow.parts}  # the last part of each side
    ends = [own[index].inlet_pressure for index in range(len(branches))]
    assert ends == pytest.approx([pressure] * len(branches), rel=1e-6)
    if branches:
        total = math.fsum(own[index].throughput for index in range(len(branches)))
        assert total == pytest.approx(flow.throughput, rel=1e-9)


@given(paths, speeds, above_ultimate)
def test_flow_at_is_the_inverse_of_system_pressure(parts, speed, above):
    whole = rig(*parts, speed=speed)
    pressure = above * whole.ultimate_pressure

    flow = flow_at(rig=whole, system_pressure=pressure, gas=AIR)

    back = system_pressure(rig=whole, throughput=flow.throughput, gas=AIR)
    assert back == pytest.approx(pressure, rel=1e-8)


@given(paths, speeds, above_ultimate, st.floats(1.01, 3.0))
def test_more_pump_or_more_pressure_passes_more_and_more_path_less(parts, speed, above, factor):
    whole = rig(*parts, speed=speed)
    pressure = above * whole.ultimate_pressure

    def passes(some, at=pressure):
        return flow_at(rig=some, system_pressure=at, gas=AIR).throughput

    least = passes(whole) * (1.0 - 1e-9)
    assert passes(replace(whole, pumping_speed=factor * speed)) > least
    assert passes(whole, factor * pressure) > least
    assert passes(replace(whole, shared=(*parts, hose(0.004, 1.0)))) < passes(whole)
    assert passes(whole) <= speed * (pressure - whole.ultimate_pressure)


def test_a_curve_runs_between_the_pressures_asked_for():
    whole = rig(hose(0.006))

    curve = flow_curve(rig=whole, lowest_pressure=3.0, highest_pressure=1e5, points=9, gas=AIR)

    pressures = [flow.system_pressure for flow in curve]
    assert pressures == sorted(pressures)
    assert (len(curve), pressures[0], pressures[-1]) == (
        9,
        pytest.approx(3.0, rel=1e-8),
        pytest.approx(1e5, rel=1e-8),
    )


def test_a_pump_alone_is_the_whole_rig():
    flow = steady_flow(rig=rig(), throughput=0.01, gas=AIR)

    assert flow.system_pressure == 20 * MICRON + 0.01 / (5 * CFM)
    assert flow.pump_share == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("make", "says"),
    [
        (lambda: hose(0.0), "bore above zero"),
        (lambda: hose(-0.01), "bore above zero"),
        (lambda: hose(math.nan), "bore above zero"),
        (lambda: hose(0.01, -1.0), "length of zero or more"),
        (lambda: rig(speed=0.0), "speed above zero"),
        (lambda: rig(ultimate=0.0), "ultimate pressure above zero"),
        (lambda: rig(branches=((),)), "at least one part"),
        (lambda: flow_at(rig=rig(), system_pressure=2.0, gas=AIR), "removes nothing"),
    ],
)
def test_an_impossible_rig_gets_a_sentence(make, says):
    with pytest.raises(OutOfRange, match=says) as refused:
        make()

    assert str(refused.value).endswith(".")
