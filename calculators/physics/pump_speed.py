"""What a vacuum pump really does: its speed from a timed pull-down, and water in its oil."""

import math

from calculators.errors import OutOfRange
from calculators.physics.water import saturation_pressure


def pull_down_speed(
    *,
    volume: float,
    duration: float,
    first_pressure: float,
    last_pressure: float,
    ultimate_pressure: float,
) -> float:
    """Pumping speed from the time a pump takes to empty a known volume.

    Parameters
    ----------
    volume : float
        Volume that is emptied, hose included [m3], scalar.
    duration : float
        Time from the first to the last pressure [s], scalar.
    first_pressure, last_pressure : float
        Absolute pressures [Pa], scalar.
    ultimate_pressure : float
        Pressure the pump holds with its inlet closed [Pa], scalar.

    Returns
    -------
    float
        Pumping speed [m3/s], scalar.

    Raises
    ------
    OutOfRange
        If the pressures do not fall, the last one is not above the ultimate
        pressure, or no time has passed.

    Notes
    -----
    Assumes one speed over the whole range: keep both pressures well above
    the ultimate (ten times is usual) and the connection short and wide. The
    gas cools while it expands and warms afterwards, so a fast pull flatters
    the pump by a few percent.

    References
    ----------
    [ISO-21360-1] pump-down method, S = (V/t) ln((p1 - pu)/(p2 - pu)).
    """
    if not duration > 0.0:
        raise OutOfRange("The pull-down took some time: enter it.")
    if not first_pressure > last_pressure:
        raise OutOfRange("The pressure must fall: the first reading must be above the last.")
    if not last_pressure > ultimate_pressure:
        raise OutOfRange(
            "A pump never gets below its own blank-off pressure: the last reading must be above it."
        )
    fall = math.log((first_pressure - ultimate_pressure) / (last_pressure - ultimate_pressure))
    return volume / duration * fall


def pull_down_speed_uncertainty(
    *,
    duration: float,
    first_pressure: float,
    last_pressure: float,
    ultimate_pressure: float,
    volume_error: float,
    duration_error: float,
    first_error: float,
    last_error: float,
) -> float:
    """Relative standard uncertainty of :func:`pull_down_speed`.

    Parameters
    ----------
    duration, first_pressure, last_pressure, ultimate_pressure : float
        As in :func:`pull_down_speed`.
    volume_error : float
        Relative standard uncertainty of the volume [1], scalar.
    duration_error : float
        Standard uncertainty of the time [s], scalar.
    first_error, last_error : float
        Standard uncertainties of the two pressures [Pa], scalar.

    Returns
    -------
    float
        Relative standard uncertainty of the speed [1], scalar.

    References
    ----------
    [GUM] section 5.1.2, equation (10).
    """
    first, last = first_pressure - ultimate_pressure, last_pressure - ultimate_pressure
    fall = math.log(first / last)
    return math.hypot(
        volume_error,
        duration_error / duration,
        first_error / first / fall,
        last_error / last / fall,
    )


def water_activity(*, vapor_pressure: float, oil_temperature: float) -> float:
    """How wet the oil is, if the blank-off pressure is all water vapor.

    Parameters
    ----------
    vapor_pressure : float
        Pressure of water vapor over the oil [Pa], scalar.
    oil_temperature : float
        Temperature of the oil [K], scalar.

    Returns
    -------
    float
        Vapor pressure over that of pure water: 0 dry, 1 saturated [1], scalar.

    Raises
    ------
    OutOfRange
        If ``oil_temperature`` is outside the range of the water equations.

    References
    ----------
    Definition of water activity; [IAPWS-SR1-86] saturation pressure.
    """
    return vapor_pressure / saturation_pressure(temperature=oil_temperature)
