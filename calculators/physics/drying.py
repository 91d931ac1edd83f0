"""Drying through a rig: what leaves at a pressure, what heat it takes, what holds off ice."""

from typing import NamedTuple

from calculators.physics import moisture
from calculators.physics.constants import WATER_TRIPLE_PRESSURE
from calculators.physics.gases import GASES, thin_gas
from calculators.physics.rig import Rig, SteadyFlow
from calculators.physics.rig_flow import flow_at
from calculators.physics.water import boiling_temperature, saturation_pressure


class Drying(NamedTuple):
    """Water leaving while the wet part is held at one pressure."""

    pressure: float  # Pa, at the wet part
    vapor_pressure: float  # Pa, the part of it that can be water vapor
    water_temperature: float  # K, at which water has that vapor pressure
    flow: SteadyFlow  # through the rig
    rate: float  # kg/s, the most the rig can carry
    heat: float  # W, that this rate takes


def drying(*, rig: Rig, pressure: float, temperature: float) -> Drying:
    """Most water that a rig can carry off with the wet part at a pressure.

    Parameters
    ----------
    rig : Rig
        Pump and path.
    pressure : float
        Absolute pressure at the wet part [Pa], scalar.
    temperature : float
        Temperature of the system, and of the vapor in the rig [K], scalar.

    Returns
    -------
    Drying
        Rate, heat and temperature of the water; an upper bound.

    Raises
    ------
    OutOfRange
        If the rig cannot hold that pressure, or ``temperature`` is outside
        the gas data.

    Notes
    -----
    Up to the vapor pressure of water at ``temperature`` all the gas may be
    vapor. Above it the rest must be air, and only the share of vapor counts.
    Flow is that of water vapor: thinner and lighter than air, it passes a
    hose about twice as easily.

    References
    ----------
    [PHYSICS] ideal gas law on the flow of :func:`rig_flow.flow_at`.
    """
    gas = thin_gas(gas=GASES["water vapor"], temperature=temperature)
    flow = flow_at(rig=rig, system_pressure=pressure, gas=gas)
    vapor = min(pressure, saturation_pressure(temperature=temperature))
    rate = moisture.removal_rate(
        pumping_speed=flow.effective_speed, vapor_pressure=vapor, temperature=temperature
    )
    own = boiling_temperature(pressure=vapor)
    heat = rate * moisture.heat_of_evaporation(temperature=own)
    return Drying(pressure, vapor, own, flow, rate, heat)


def heat_to_stay_liquid(*, rig: Rig, temperature: float) -> float:
    """Heat that must reach liquid water so that this rig cannot freeze it.

    Parameters
    ----------
    rig : Rig
        Pump and path.
    temperature : float
        Temperature of the vapor in the rig [K], scalar.

    Returns
    -------
    float
        Power [W], scalar; zero where the pump cannot pull below 611.657 Pa.

    Raises
    ------
    OutOfRange
        If ``temperature`` is outside the gas data.

    References
    ----------
    [PHYSICS] heat balance of the water at its triple point.
    """
    if rig.ultimate_pressure >= WATER_TRIPLE_PRESSURE:
        return 0.0
    gas = thin_gas(gas=GASES["water vapor"], temperature=temperature)
    flow = flow_at(rig=rig, system_pressure=WATER_TRIPLE_PRESSURE, gas=gas)
    return moisture.heat_to_stay_liquid(pumping_speed=flow.effective_speed, temperature=temperature)
