"""Getting water out: vapor it makes, rate it leaves, heat it takes, when it freezes."""

import math

from calculators.errors import OutOfRange
from calculators.physics.constants import (
    MOLAR_GAS_CONSTANT,
    WATER_MOLAR_MASS,
    WATER_TRIPLE_PRESSURE,
    WATER_TRIPLE_TEMPERATURE,
    ZERO_CELSIUS,
)

HEAT_OF_FUSION = 333.44e3  # J/kg at the triple point (IAPWS-R10-06, table 6)
LIQUID_HEAT_CAPACITY = 4.195e3  # J/(kg K), mean from 0 to 20 degC (IAPWS-R6-95; to 0.5 % up to 60)
COLDEST_ICE = ZERO_CELSIUS - 60.0  # K, ends of the fitted heats of evaporation
WARMEST_LIQUID = ZERO_CELSIUS + 60.0  # K


def vapor_mass(*, pressure: float, volume: float, temperature: float) -> float:
    """Mass of water vapor in a volume.

    Parameters
    ----------
    pressure : float
        Partial pressure of water vapor [Pa], scalar.
    volume : float
        Volume [m3], scalar.
    temperature : float
        Temperature of the vapor [K], scalar.

    Returns
    -------
    float
        Mass p V M/(R T) [kg], scalar.

    References
    ----------
    Ideal gas law; saturated vapor at 20 degC deviates by 0.1 %.
    """
    return pressure * volume * WATER_MOLAR_MASS / (MOLAR_GAS_CONSTANT * temperature)


def vapor_volume(*, mass: float, pressure: float, temperature: float) -> float:
    """Volume that a mass of water takes as vapor.

    Parameters
    ----------
    mass : float
        Mass of water [kg], scalar.
    pressure : float
        Pressure of the vapor [Pa], scalar.
    temperature : float
        Temperature of the vapor [K], scalar.

    Returns
    -------
    float
        Volume [m3], scalar.

    References
    ----------
    Ideal gas law, the inverse of :func:`vapor_mass`.
    """
    return mass * MOLAR_GAS_CONSTANT * temperature / (pressure * WATER_MOLAR_MASS)


def removal_rate(*, pumping_speed: float, vapor_pressure: float, temperature: float) -> float:
    """Water that a rig carries off as vapor.

    Parameters
    ----------
    pumping_speed : float
        Effective pumping speed for water vapor at the wet part [m3/s], scalar.
    vapor_pressure : float
        Pressure of water vapor there [Pa], scalar.
    temperature : float
        Temperature of the vapor where that speed is counted [K], scalar.

    Returns
    -------
    float
        Mass flow [kg/s], scalar: the most the rig can carry, if heat and
        wet surface keep up.

    References
    ----------
    Ideal gas law on a volume flow.
    """
    return vapor_mass(pressure=vapor_pressure, volume=pumping_speed, temperature=temperature)


def heat_of_evaporation(*, temperature: float) -> float:
    """Heat that a mass of water takes along as it boils off or sublimes.

    Parameters
    ----------
    temperature : float
        Temperature of the water: of ice at 0.01 degC and below, of liquid
        above [K], scalar.

    Returns
    -------
    float
        Heat of sublimation or vaporization [J/kg], scalar.

    Raises
    ------
    OutOfRange
        If ``temperature`` is not within -60 degC to 60 degC.

    Notes
    -----
    A parabola on each side of the triple point, fitted here to the enthalpies
    of the two releases: within 0.01 % of them. Ice takes its melting along,
    so the curve jumps there.

    References
    ----------
    [IAPWS-R6-95] vapor and liquid; [IAPWS-R10-06] ice.
    """
    if not COLDEST_ICE <= temperature <= WARMEST_LIQUID:
        raise OutOfRange("Heats of evaporation here hold from −60 °C to 60 °C (−76 °F to 140 °F).")
    warmer = temperature - WATER_TRIPLE_TEMPERATURE
    if warmer <= 0.0:
        return 2834.41e3 - warmer * (257.85 + 3.790 * warmer)
    return 2500.76e3 - warmer * (2348.4 + 0.581 * warmer)


def share_evaporated_to_freezing_point(*, temperature: float) -> float:
    """Share of insulated water that must boil off to cool the rest to 0 degC.

    Parameters
    ----------
    temperature : float
        Temperature of the liquid at the start [K], scalar.

    Returns
    -------
    float
        Share of the water [1], scalar; zero at the triple point.

    Raises
    ------
    OutOfRange
        If ``temperature`` is not within 0.01 degC to 60 degC.

    References
    ----------
    Heat balance dm/m = c dT/h(T), h at the middle temperature.
    """
    if not WATER_TRIPLE_TEMPERATURE <= temperature <= WARMEST_LIQUID:
        raise OutOfRange("Water is liquid here from 0.01 °C to 60 °C (32 °F to 140 °F).")
    if temperature == WATER_TRIPLE_TEMPERATURE:
        return 0.0
    middle = 0.5 * (temperature + WATER_TRIPLE_TEMPERATURE)
    cooled = LIQUID_HEAT_CAPACITY * (temperature - WATER_TRIPLE_TEMPERATURE)
    return -math.expm1(-cooled / heat_of_evaporation(temperature=middle))


def share_evaporated_to_ice(*, temperature: float) -> float:
    """Share of insulated water that has boiled off when the rest is all ice.

    Parameters
    ----------
    temperature : float
        Temperature of the liquid at the start [K], scalar.

    Returns
    -------
    float
        Share of the water [1], scalar.

    Raises
    ------
    OutOfRange
        If ``temperature`` is not within 0.01 degC to 60 degC.

    References
    ----------
    Heat balance: at 0 degC each gram that leaves freezes h/L grams.
    """
    cooled = share_evaporated_to_freezing_point(temperature=temperature)
    leaves = HEAT_OF_FUSION / heat_of_evaporation(temperature=WATER_TRIPLE_TEMPERATURE)
    return 1.0 - (1.0 - cooled) * (1.0 - leaves)


def heat_to_stay_liquid(*, pumping_speed: float, temperature: float) -> float:
    """Heat that must reach the water so that this rig cannot freeze it.

    Parameters
    ----------
    pumping_speed : float
        Effective pumping speed for water vapor at 611.657 Pa [m3/s], scalar.
    temperature : float
        Temperature of the vapor where that speed is counted [K], scalar.

    Returns
    -------
    float
        Power [W], scalar.

    Notes
    -----
    With less, the water cools below the triple point, where ice forms; with
    more, it settles at a temperature above it.

    References
    ----------
    Heat balance at the triple point, vaporization of liquid.
    """
    rate = removal_rate(
        pumping_speed=pumping_speed,
        vapor_pressure=WATER_TRIPLE_PRESSURE,
        temperature=temperature,
    )
    vaporization = heat_of_evaporation(temperature=WATER_TRIPLE_TEMPERATURE) - HEAT_OF_FUSION
    return rate * vaporization
