"""The evacuation in time, against an independent stiff solver and against balances."""

import math
import random

import pytest

from calculators.physics import evacuation, stiff
from calculators.physics.constants import MICRON, STANDARD_ATMOSPHERE
from calculators.physics.evacuation import SCALE, Conditions, Plant, Setting
from calculators.physics.evacuation_path import path_of
from calculators.physics.rig import Rig, Tube

CFM = 4.719474432e-4  # m3/s, NIST SP 811


def path(bore=0.00635, length=1.83, speed=5 * CFM, ultimate=20 * MICRON):
    return path_of(
        rig=Rig(
            pumping_speed=speed,
            ultimate_pressure=ultimate,
            shared=(Tube(inside_diameter=bore, length=length),),
        )
    )


def run(plant, setting, begin, seconds, tolerance=1e-4):
    state, _ = stiff.advance(
        lambda y: evacuation.rates(plant, setting, y),
        begin,
        duration=seconds,
        scale=SCALE,
        tolerance=tolerance,
    )
    return Conditions(*state)


def scenario(seed):
    """One of twenty evacuations, drawn over what the bench offers."""
    rng = random.Random(seed)
    plant = Plant(
        volume=rng.choice([0.003, 0.01, 0.03]),
        ambient=rng.uniform(275.0, 305.0),
        heat_conductance=rng.choice([0.1, 0.6, 2.0]),
        oil_pressure=rng.choice([0.0, 300.0]),
        oil_capacity=rng.choice([0.0, 0.02]),
        leak=rng.choice([0.0, 1e-4, 1e-3]),
        rig_leak=rng.choice([0.0, 2e-4]),
    )
    setting = Setting(
        path=path(bore=rng.choice([0.0045, 0.00635, 0.0095, 0.019])),
        valve_open=rng.random() < 0.8,
        ballast_open=rng.random() < 0.4,
        gauge_at=rng.choice(["system", "pump"]),
    )
    begin = evacuation.start(
        plant=plant, water=rng.choice([0.0, 0.0005, 0.003]),
        pressure=STANDARD_ATMOSPHERE if setting.valve_open else 3000.0,
    )  # fmt: skip
    return plant, setting, begin, rng.choice([120.0, 600.0, 1800.0])


# scipy widens its difference steps without end where a part does not move at all.
@pytest.mark.filterwarnings("ignore:overflow encountered:RuntimeWarning")
@pytest.mark.parametrize("seed", range(20))
def test_it_agrees_with_scipys_radau(seed):
    # Source: scipy's solve_ivp, method Radau, an independent implementation.
    integrate = pytest.importorskip("scipy.integrate")
    plant, setting, begin, seconds = scenario(seed)

    reference = integrate.solve_ivp(
        lambda t, y: evacuation.rates(plant, setting, list(y)), (0, seconds), list(begin),
        method="Radau", rtol=1e-6, atol=[1e-5 * s for s in SCALE],
    )  # fmt: skip
    ours = run(plant, setting, begin, seconds)

    assert reference.success
    theirs = Conditions(*reference.y[:, -1])
    assert ours.pressure == pytest.approx(theirs.pressure, rel=0.01, abs=0.05)
    assert ours.gauge == pytest.approx(theirs.gauge, rel=0.01, abs=0.05)
    assert ours.water == pytest.approx(theirs.water, rel=0.01, abs=2e-6)
    assert ours.wetness == pytest.approx(theirs.wetness, rel=0.01, abs=0.05)


def test_a_dry_pull_takes_the_time_of_the_table():
    # Source: physics notes of this guide, section 7: 10 L, 5 CFM, blank-off 20 micron, 6 ft of
    # 1/4 in bore, from one atmosphere: 136 s to 1,000 micron and 240 s to 500 [computed].
    plant = Plant(volume=0.01)
    begin = evacuation.start(plant=plant)._replace(vapor=0.0)

    at_136 = run(plant, Setting(path=path(length=1.8288)), begin, 136.0)
    at_240 = run(plant, Setting(path=path(length=1.8288)), begin, 240.0)

    assert at_136.pressure / MICRON == pytest.approx(1000, rel=0.03)
    assert at_240.pressure / MICRON == pytest.approx(500, rel=0.03)


def test_an_isolated_wet_system_rises_to_the_vapor_pressure_of_its_water():
    # Source: IAPWS SR1-86: 17,546 micron at 20 °C.
    plant = Plant(volume=0.01)
    begin = evacuation.start(plant=plant, water=0.005)._replace(air=0.0, vapor=100.0)

    end = run(plant, Setting(path=path(), valve_open=False), begin, 3600.0)

    assert end.pressure / MICRON == pytest.approx(17546, rel=0.005)


def test_an_isolated_leak_rises_in_a_straight_line():
    plant = Plant(volume=0.01, leak=1e-3)
    begin = evacuation.start(plant=plant)._replace(air=50.0, vapor=0.0)
    closed = Setting(path=path(), valve_open=False)

    rise = run(plant, closed, begin, 600.0).pressure - 50.0

    assert rise == pytest.approx(1e-3 * 600 / 0.01, rel=1e-3)


def test_water_is_conserved():
    # Isolated, all of the water that leaves the wet spot stands in the volume as vapor.
    plant = Plant(volume=0.1)
    begin = evacuation.start(plant=plant, water=0.001)._replace(air=0.0, vapor=0.0)

    end = run(plant, Setting(path=path(), valve_open=False), begin, 7200.0)

    vapor = end.vapor * 0.1 * 0.018015268 / (8.31446261815324 * plant.ambient)
    assert end.water + vapor == pytest.approx(0.001, rel=1e-3)


def test_a_big_pump_on_cold_water_makes_ice_and_ice_holds_the_pressure():
    plant = Plant(volume=0.01, ambient=278.15, heat_conductance=0.1)
    begin = evacuation.start(plant=plant, water=0.02)

    end = run(plant, Setting(path=path(bore=0.019, length=0.9, speed=8 * CFM)), begin, 1200.0)

    assert end.ice_share > 0.9
    assert end.pressure < 4588 * MICRON


def test_adiabatic_water_freezes_with_the_share_that_must_evaporate():
    # Source: heat balance with IAPWS heats: from 20 °C, 14.7 % of it evaporates to freeze it all.
    plant = Plant(volume=0.01, heat_conductance=0.0, wet_area=0.01)
    begin = evacuation.start(plant=plant, water=0.01)
    setting = Setting(path=path(bore=0.019, length=0.3, speed=2 * CFM))
    state, left = list(begin), []
    for _ in range(400):
        state, _ = stiff.advance(
            lambda y: evacuation.rates(plant, setting, y), state, duration=2.0, scale=SCALE
        )
        left.append(Conditions(*state))
    frozen = next(each for each in left if each.ice_share >= 1.0)

    assert 1.0 - frozen.water / 0.01 == pytest.approx(0.147, abs=0.004)


def test_the_stiff_solver_follows_a_known_decay():
    # y' = -1000 (y - z), z' = -z: y ends as z 1000/999, from the exact solution.
    state, _ = stiff.advance(
        lambda y: [-1000.0 * (y[0] - y[1]), -y[1]],
        [0.0, 1.0],
        duration=3.0,
        scale=(1e-6, 1e-6),
        tolerance=1e-6,
    )

    assert state[1] == pytest.approx(math.exp(-3.0), rel=1e-4)
    assert state[0] == pytest.approx(math.exp(-3.0) * 1000 / 999, rel=1e-4)
