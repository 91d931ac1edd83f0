"""Pressure of the open air against altitude: the barometer nobody reads off a phone."""

from calculators.errors import OutOfRange
from calculators.physics.constants import STANDARD_ATMOSPHERE

EARTH_RADIUS = 6_356_766.0  # m, effective radius of the model (USSA-1976, sec. 1.2.4)
SEA_LEVEL_TEMPERATURE = 288.15  # K (USSA-1976, table 2)
LAPSE_RATE = 0.0065  # K/m, geopotential, troposphere (USSA-1976, table 4)
# g0' M0 / (R* L) with 9.80665 m/s2, 28.9644 g/mol and R* = 8.31432 J/(mol K),
# the model's own values (USSA-1976, table 2); R* is not today's gas constant.
EXPONENT = 9.80665 * 0.0289644 / (8.31432 * LAPSE_RATE)
LOWEST_ALTITUDE = -500.0  # m, below the lowest dry land
HIGHEST_ALTITUDE = 11_019.0  # m geometric, end of the model's troposphere (11 km geopotential)


def geopotential_height(*, altitude: float) -> float:
    """Height that climbs against full gravity all the way up.

    Parameters
    ----------
    altitude : float
        Height above mean sea level, geometric [m], scalar.

    Returns
    -------
    float
        Geopotential height [m], scalar; 2e-4 below ``altitude`` at 10,000 ft.

    References
    ----------
    [USSA-1976] equation (18).
    """
    return EARTH_RADIUS * altitude / (EARTH_RADIUS + altitude)


def barometer_at(*, altitude: float) -> float:
    """Absolute pressure of the open air in the standard atmosphere.

    Parameters
    ----------
    altitude : float
        Height above mean sea level, geometric [m], scalar.

    Returns
    -------
    float
        Station pressure [Pa], scalar.

    Raises
    ------
    OutOfRange
        If ``altitude`` is not within -500 m to 11,019 m.

    Notes
    -----
    Weather moves the true barometer by up to 3 % either way, far more than
    the model's error. A weather report's barometer is reduced to sea level
    and is not the pressure at the site.

    References
    ----------
    [USSA-1976] equations (18) and (33a).
    """
    if not LOWEST_ALTITUDE <= altitude <= HIGHEST_ALTITUDE:
        raise OutOfRange("The standard atmosphere is used from -500 m to 11,019 m.")
    geopotential = geopotential_height(altitude=altitude)
    pressure: float = (
        STANDARD_ATMOSPHERE * (1.0 - LAPSE_RATE * geopotential / SEA_LEVEL_TEMPERATURE) ** EXPONENT
    )
    return pressure
