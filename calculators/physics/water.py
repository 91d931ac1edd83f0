"""Saturation of water: sublimation over ice, boiling over liquid, and the inverse.

The two published equations meet at the triple point. They meet in pressure
but not in slope (melting takes heat too), so one formula cannot serve both
sides.
"""

import math

from calculators.errors import OutOfRange
from calculators.physics.constants import (
    WATER_CRITICAL_PRESSURE,
    WATER_CRITICAL_TEMPERATURE,
    WATER_TRIPLE_PRESSURE,
    WATER_TRIPLE_TEMPERATURE,
)

LOWEST_TEMPERATURE = 50.0  # K, end of IAPWS R14-08

# IAPWS R14-08(2011), coefficients of the sublimation-pressure equation.
_ICE_A = (-0.212144006e2, 0.273203819e2, -0.610598130e1)
_ICE_B = (0.333333333e-2, 1.20666667, 1.70333333)
# IAPWS SR1-86(1992), coefficients of the vapor-pressure equation.
_LIQUID_A = (-7.85951783, 1.84408259, -11.7866497, 22.6807411, -15.9618719, 1.80122502)
_LIQUID_B = (1.0, 1.5, 3.0, 3.5, 4.0, 7.5)


def sublimation_pressure(*, temperature: float) -> float:
    """Pressure at which ice and water vapor are in balance.

    Parameters
    ----------
    temperature : float
        Temperature of the ice [K], scalar.

    Returns
    -------
    float
        Sublimation pressure [Pa], scalar.

    Raises
    ------
    OutOfRange
        If ``temperature`` is not within 50 K to 273.16 K.

    References
    ----------
    [IAPWS-R14-08] equation for ice Ih.
    """
    if not LOWEST_TEMPERATURE <= temperature <= WATER_TRIPLE_TEMPERATURE:
        raise OutOfRange("Ice and vapor are in balance only between 50 K and 273.16 K.")
    theta = temperature / WATER_TRIPLE_TEMPERATURE
    total = math.fsum(a * theta**b for a, b in zip(_ICE_A, _ICE_B, strict=True))
    return WATER_TRIPLE_PRESSURE * math.exp(total / theta)


def boiling_pressure(*, temperature: float) -> float:
    """Pressure at which liquid water boils at this temperature.

    Parameters
    ----------
    temperature : float
        Temperature of the liquid [K], scalar.

    Returns
    -------
    float
        Saturation pressure over liquid water [Pa], scalar.

    Raises
    ------
    OutOfRange
        If ``temperature`` is not within 273.16 K to 647.096 K.

    Notes
    -----
    Below 273.16 K the equation still returns a number (supercooled liquid),
    which is not what an evacuation meets: the water there is ice.

    References
    ----------
    [IAPWS-SR1-86] equation (1).
    """
    if not WATER_TRIPLE_TEMPERATURE <= temperature <= WATER_CRITICAL_TEMPERATURE:
        raise OutOfRange("Liquid water boils only between 273.16 K and 647.096 K.")
    tau = 1.0 - temperature / WATER_CRITICAL_TEMPERATURE
    total = math.fsum(a * tau**b for a, b in zip(_LIQUID_A, _LIQUID_B, strict=True))
    return WATER_CRITICAL_PRESSURE * math.exp(total * WATER_CRITICAL_TEMPERATURE / temperature)


def phase_at_temperature(*, temperature: float) -> str:
    """Form of the water that is in balance with its vapor.

    Parameters
    ----------
    temperature : float
        Temperature of the water [K], scalar.

    Returns
    -------
    str
        ``"ice"`` up to and including the triple point, else ``"liquid"``.

    References
    ----------
    [IAPWS-R14-08] triple point.
    """
    return "ice" if temperature <= WATER_TRIPLE_TEMPERATURE else "liquid"


def phase_at_pressure(*, pressure: float) -> str:
    """Form of the water that is in balance with vapor at this pressure.

    Parameters
    ----------
    pressure : float
        Absolute pressure of the vapor [Pa], scalar.

    Returns
    -------
    str
        ``"ice"`` up to and including 611.657 Pa (4,588 micron), else ``"liquid"``.

    References
    ----------
    [IAPWS-R14-08] triple point.
    """
    return "ice" if pressure <= WATER_TRIPLE_PRESSURE else "liquid"


def saturation_pressure(*, temperature: float) -> float:
    """Pressure of water vapor in balance with ice or liquid, whichever exists.

    Parameters
    ----------
    temperature : float
        Temperature of the water [K], scalar.

    Returns
    -------
    float
        Saturation pressure [Pa], scalar.

    Raises
    ------
    OutOfRange
        If ``temperature`` is not within 50 K to 647.096 K.

    References
    ----------
    [IAPWS-R14-08] below and [IAPWS-SR1-86] above the triple point.
    """
    if phase_at_temperature(temperature=temperature) == "ice":
        return sublimation_pressure(temperature=temperature)
    return boiling_pressure(temperature=temperature)


def boiling_temperature(*, pressure: float) -> float:
    """Temperature at which water leaves as vapor: ice sublimes or liquid boils.

    Parameters
    ----------
    pressure : float
        Absolute pressure of water vapor over the water [Pa], scalar.

    Returns
    -------
    float
        Saturation temperature [K], scalar.

    Raises
    ------
    OutOfRange
        If ``pressure`` is not above the vapor pressure of ice at 50 K or is
        above the critical pressure, 22.064 MPa.

    Notes
    -----
    The inverse of :func:`saturation_pressure`, solved by false position in
    ln p against 1/T, where both curves are nearly straight, with bisection
    as the guard.

    References
    ----------
    [IAPWS-R14-08] below and [IAPWS-SR1-86] above the triple point.
    """
    if not 0.0 < pressure <= WATER_CRITICAL_PRESSURE:
        raise OutOfRange("Water boils or sublimes only between zero and 22.064 MPa.")
    if phase_at_pressure(pressure=pressure) == "ice":
        low, high = LOWEST_TEMPERATURE, WATER_TRIPLE_TEMPERATURE
    else:
        low, high = WATER_TRIPLE_TEMPERATURE, WATER_CRITICAL_TEMPERATURE
    curve = sublimation_pressure if high == WATER_TRIPLE_TEMPERATURE else boiling_pressure
    target = math.log(pressure)
    if target < math.log(curve(temperature=low)) - 1e-9:
        raise OutOfRange("That pressure is below the vapor pressure of ice at 50 K.")
    temperature = high
    for _ in range(200):
        u_low, u_high = 1.0 / low, 1.0 / high
        g_low = math.log(curve(temperature=low)) - target
        g_high = math.log(curve(temperature=high)) - target
        if g_high <= 0.0:
            return high
        if g_low >= 0.0:
            return low
        guess = 1.0 / (u_low + (u_high - u_low) * g_low / (g_low - g_high))
        middle = 0.5 * (low + high)
        for candidate in (guess, middle):
            if not low < candidate < high:
                continue
            if math.log(curve(temperature=candidate)) > target:
                high = candidate
            else:
                low = candidate
        if abs(guess - temperature) <= 1e-13 * guess or high - low <= 1e-12:
            return guess
        temperature = guess
    return temperature
