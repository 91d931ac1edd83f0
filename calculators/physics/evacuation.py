"""A whole evacuation in time: gas, water in three forms, oil, leak, rig, pump, gauge.

The system is one well-mixed volume with a wet spot and some oil. What stands
in it is air (and nitrogen), water vapor and refrigerant vapor, each as a
partial pressure. The rig is in steady flow with the system (its own volume is
small), so a table of its effective speed against pressure stands for it.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from calculators.physics.constants import (
    MOLAR_GAS_CONSTANT,
    STANDARD_ATMOSPHERE,
    WATER_MOLAR_MASS,
    WATER_TRIPLE_TEMPERATURE,
)
from calculators.physics.evacuation_path import Path, effective_speed
from calculators.physics.moisture import HEAT_OF_FUSION, LIQUID_HEAT_CAPACITY
from calculators.physics.water import saturation_pressure

ICE_HEAT_CAPACITY = 2.1e3  # J/(kg K), from memory; 2.10 at 0 degC, 1.95 at -20 degC
VAPOR_ENTHALPY = 2500.9e3  # J/kg over liquid at the triple point (IAPWS-R6-95)
VAPOR_HEAT_CAPACITY = 1.86e3  # J/(kg K), from memory
ACCOMMODATION = 0.1  # share of molecules that stick or leave; 0.01 to 1, from memory
DIFFUSION = 2.5  # Pa m2/s: 2.5e-5 m2/s at 1e5 Pa, water vapor in air, from memory
FILM = 0.02  # m, still gas that vapor crosses over a wet spot, from memory
LAST_WATER = 2e-6  # kg; evaporation fades as the last of it goes
# What water does to pump oil, an illustration from memory: about 5 g of vapor without ballast
# raise the ultimate pressure by some hundred micron.
OIL_WETTING = 0.08  # Pa of ultimate pressure per Pa m3 of water vapor pumped
BALLAST_WETTING = 0.1  # share of that with the ballast open
OIL_DRYING = 300.0  # s, time constant with the ballast open
OIL_DRYING_SHUT = 7200.0  # s, and shut
BALLAST_PRESSURE = 70.0  # Pa that an open ballast adds to the ultimate pressure, from memory
OIL_DOUBLES = 25.0  # K of warming that double the pressure of gas over its oil, from memory
RIG_VOLUME = 2e-4  # m3: 0.2 L of hoses, from memory
NEARLY_FULL = 0.05  # share of an atmosphere over which nitrogen tapers off


@dataclass(frozen=True, kw_only=True)
class Plant:
    """What the system is: sizes, heat, leaks; SI units."""

    volume: float  # m3
    ambient: float = 293.15  # K
    wet_area: float = 2e-3  # m2 of water surface
    heat_conductance: float = 0.6  # W/K between the walls and the wet spot
    oil_pressure: float = 0.0  # Pa of refrigerant that the oil would hold the system at
    oil_capacity: float = 0.0  # m3: gas held per pressure, as a volume
    oil_time: float = 900.0  # s, time constant of gas leaving the oil
    leak: float = 0.0  # Pa m3/s of air into the system
    rig_leak: float = 0.0  # Pa m3/s of air into the rig
    gauge_lag: float = 2.0  # s
    gauge_offset: float = 0.0  # Pa, of a dirty gauge


@dataclass(frozen=True, kw_only=True)
class Setting:
    """What the technician has set."""

    path: Path
    pump_on: bool = True
    valve_open: bool = True  # at the system, toward the rig
    ballast_open: bool = False
    gauge_at: str = "system"  # or "pump"
    wall: float | None = None  # K, walls warmed to; None is ambient
    nitrogen: float = 0.0  # Pa m3/s let in, up to one atmosphere


class Conditions(NamedTuple):
    """One moment, in words a person knows; SI units."""

    air: float  # Pa
    vapor: float  # Pa
    refrigerant: float  # Pa
    water: float  # kg, liquid and ice
    enthalpy: float  # J/kg of that water, over liquid at the triple point
    oil: float  # Pa, pressure of the gas still in the oil
    rig: float  # Pa at the pump
    wetness: float  # Pa that water in the pump oil adds to the ultimate pressure
    gauge: float  # Pa, lagged

    @property
    def pressure(self) -> float:
        """Total pressure of the system [Pa]."""
        return self.air + self.vapor + self.refrigerant

    @property
    def water_temperature(self) -> float:
        """Temperature of the wet spot [K]."""
        return _water(self.enthalpy)[0]

    @property
    def ice_share(self) -> float:
        """Share of the water that is ice [1]."""
        return _water(self.enthalpy)[1]


SCALE = (0.05, 0.05, 0.05, 1e-6, 200.0, 0.05, 0.05, 0.01, 0.05)


def start(*, plant: Plant, water: float = 0.0, pressure: float = STANDARD_ATMOSPHERE) -> Conditions:
    """A system full of air at ambient temperature, with some water in it.

    Parameters
    ----------
    plant : Plant
        The system.
    water : float
        Liquid water in it [kg], scalar.
    pressure : float
        Pressure it starts at [Pa], scalar.

    Returns
    -------
    Conditions
        The first moment; with water, the air is saturated.

    References
    ----------
    [IAPWS-SR1-86] the vapor in the air.
    """
    vapor = saturation_pressure(temperature=plant.ambient) * (1.0 if water else 0.3)
    enthalpy = LIQUID_HEAT_CAPACITY * (plant.ambient - WATER_TRIPLE_TEMPERATURE)
    return Conditions(
        air=pressure - vapor,
        vapor=vapor,
        refrigerant=0.0,
        water=water,
        enthalpy=enthalpy,
        oil=plant.oil_pressure,
        rig=pressure,
        wetness=0.0,
        gauge=pressure + plant.gauge_offset,
    )


def rates(plant: Plant, setting: Setting, state: Sequence[float]) -> list[float]:
    """Time derivative of every part of the :class:`Conditions`, per second.

    Parameters
    ----------
    plant : Plant
        The system.
    setting : Setting
        What is switched, opened and warmed.
    state : sequence of float
        The parts of a :class:`Conditions`, shape (9,).

    Returns
    -------
    list of float
        Rates of the same nine parts, shape (9,).

    References
    ----------
    [PHYSICS] conservation of mass and heat; [HERTZ-KNUDSEN] the rate at which
    molecules leave a surface; [IAPWS-R14-08], [IAPWS-SR1-86] the pressure
    they leave with.
    """
    now = Conditions(*state)
    air, vapor, refrigerant = (max(p, 0.0) for p in state[:3])
    pressure = max(air + vapor + refrigerant, 1e-6)
    warm = MOLAR_GAS_CONSTANT * plant.ambient
    evaporated, warming = _evaporation(plant, setting, now, air, vapor)
    wall = plant.ambient if setting.wall is None else setting.wall
    over_oil = now.oil * 2.0 ** ((wall - plant.ambient) / OIL_DOUBLES)
    released = plant.oil_capacity * (over_oil - refrigerant) / plant.oil_time
    leak = plant.leak * max(0.0, 1.0 - (pressure / STANDARD_ATMOSPHERE) ** 2)
    rig_leak = plant.rig_leak * max(0.0, 1.0 - (max(now.rig, 0.0) / STANDARD_ATMOSPHERE) ** 2)
    room = (1.0 - pressure / STANDARD_ATMOSPHERE) / NEARLY_FULL
    nitrogen = setting.nitrogen * min(max(room, 0.0), 1.0)

    ultimate = setting.path.ultimate + max(now.wetness, 0.0)
    if setting.ballast_open:
        ultimate += BALLAST_PRESSURE
    out = 0.0
    pumped_vapor = 0.0
    if setting.pump_on and setting.valve_open:
        speed = effective_speed(setting.path, pressure, vapor / pressure)
        through = speed * (pressure - ultimate)
        at_pump = ultimate + max(through, 0.0) / setting.path.pump_speed
        out = through - rig_leak  # what leaks into the rig takes its share of the pump
        pumped_vapor = max(out, 0.0) * vapor / pressure
        rig = at_pump - now.rig
    elif setting.pump_on:
        rig = ultimate + rig_leak / setting.path.pump_speed - now.rig
    elif setting.valve_open:  # the rig is part of the system then, its leak too
        out = -rig_leak
        rig = pressure - now.rig
    else:
        rig = rig_leak / RIG_VOLUME
    shares = [p / pressure for p in (air, vapor, refrigerant)] if out > 0.0 else [1.0, 0.0, 0.0]
    wetting = OIL_WETTING * (BALLAST_WETTING if setting.ballast_open else 1.0)
    drying = OIL_DRYING if setting.ballast_open else OIL_DRYING_SHUT
    place = pressure if setting.gauge_at == "system" else max(now.rig, 0.0)
    return [
        (leak + nitrogen - out * shares[0]) / plant.volume,
        (evaporated * warm / WATER_MOLAR_MASS - out * shares[1]) / plant.volume,
        (released - out * shares[2]) / plant.volume,
        -evaporated,
        warming,
        -released / plant.oil_capacity if plant.oil_capacity else 0.0,
        rig,
        wetting * pumped_vapor - now.wetness / drying,
        (place + plant.gauge_offset - now.gauge) / plant.gauge_lag,
    ]


def _evaporation(
    plant: Plant, setting: Setting, now: Conditions, air: float, vapor: float
) -> tuple[float, float]:
    """Water leaving the wet spot [kg/s], and how fast what stays warms [J/(kg s)]."""
    if now.water <= 0.0:
        return 0.0, 0.0
    temperature, _ = _water(now.enthalpy)
    per_mass = MOLAR_GAS_CONSTANT * temperature / WATER_MOLAR_MASS
    leaving = ACCOMMODATION * math.sqrt(1.0 / (2.0 * math.pi * per_mass))
    # Vapor crosses what air lies over the water: the more air, the slower.
    crossing = DIFFUSION / (FILM * per_mass * max(air, 1e-3))
    passing = 1.0 / (1.0 / leaving + 1.0 / crossing)
    fading = now.water / (now.water + LAST_WATER)
    drive = saturation_pressure(temperature=min(temperature, 370.0)) - vapor
    evaporated = plant.wet_area * passing * drive * fading
    wall = plant.ambient if setting.wall is None else setting.wall
    heat = plant.heat_conductance * (wall - temperature) * fading
    carried = VAPOR_ENTHALPY + VAPOR_HEAT_CAPACITY * (temperature - WATER_TRIPLE_TEMPERATURE)
    return evaporated, (heat - evaporated * (carried - now.enthalpy)) / (now.water + LAST_WATER)


def _water(enthalpy: float) -> tuple[float, float]:
    """Temperature [K] and share of ice of water with this enthalpy [J/kg]."""
    if enthalpy >= 0.0:
        return WATER_TRIPLE_TEMPERATURE + enthalpy / LIQUID_HEAT_CAPACITY, 0.0
    if enthalpy >= -HEAT_OF_FUSION:
        return WATER_TRIPLE_TEMPERATURE, -enthalpy / HEAT_OF_FUSION
    return WATER_TRIPLE_TEMPERATURE + (enthalpy + HEAT_OF_FUSION) / ICE_HEAT_CAPACITY, 1.0
