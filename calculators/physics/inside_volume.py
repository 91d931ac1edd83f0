"""Inside volume of a system: counted from its parts, or measured by letting gas expand."""

import math

from calculators.errors import OutOfRange

# Water at 60 degF (15.56 degC) and 1 atm, the temperature at which United States
# cylinders are stamped (49 CFR 178, from memory); density of IAPWS-R6-95.
WATER_DENSITY = 999.01  # kg/m3


def tube_volume(*, inside_diameter: float, length: float) -> float:
    """Volume inside a round tube.

    Parameters
    ----------
    inside_diameter : float
        True bore [m], scalar.
    length : float
        Length [m], scalar.

    Returns
    -------
    float
        Volume [m3], scalar.

    Raises
    ------
    OutOfRange
        If ``inside_diameter`` is not above zero or ``length`` is negative.

    References
    ----------
    Geometry: pi d^2 L / 4.
    """
    if not inside_diameter > 0.0:
        raise OutOfRange("A tube needs a bore above zero.")
    if not length >= 0.0:
        raise OutOfRange("A length cannot be negative.")
    return math.pi / 4.0 * inside_diameter**2 * length


def cylinder_volume(*, water_capacity: float) -> float:
    """Inside volume of a cylinder from the water capacity stamped on it.

    Parameters
    ----------
    water_capacity : float
        Mass of water that fills the cylinder [kg], scalar.

    Returns
    -------
    float
        Volume [m3], scalar.

    Notes
    -----
    Water at 60 degF. The 27.74 cubic inches per pound of older tables allow
    for weighing in air and lie 0.1 % higher.

    References
    ----------
    [IAPWS-R6-95] density of water at 15.56 degC and 1 atm.
    """
    return water_capacity / WATER_DENSITY


def expansion_volume(
    *,
    known_volume: float,
    known_pressure: float,
    system_pressure: float,
    final_pressure: float,
) -> float:
    """Volume of a system from gas let into it out of a cylinder of known volume.

    Parameters
    ----------
    known_volume : float
        Inside volume of the cylinder [m3], scalar.
    known_pressure : float
        Pressure in the cylinder before [Pa], scalar.
    system_pressure : float
        Pressure in the system before [Pa], scalar.
    final_pressure : float
        Common pressure after the valve was opened [Pa], scalar.

    Returns
    -------
    float
        Volume of the system [m3], scalar.

    Raises
    ------
    OutOfRange
        If the final pressure does not lie between the other two.

    Notes
    -----
    Boyle's law twice: what leaves the cylinder enters the system. Only
    differences of pressure enter, so all three may be gauge readings. Wait
    until both are at room temperature; nitrogen below 40 bar is ideal here
    within 1 %.

    References
    ----------
    Ideal gas law at one temperature.
    """
    if not known_pressure > final_pressure > system_pressure:
        raise OutOfRange(
            "The common pressure must lie between that of the system before and that of "
            "the cylinder before."
        )
    return known_volume * (known_pressure - final_pressure) / (final_pressure - system_pressure)


def expansion_sensitivity(
    *,
    known_pressure: float,
    system_pressure: float,
    final_pressure: float,
    pressure_error: float,
) -> float:
    """Relative error of the measured volume that an error of the last pressure makes.

    Parameters
    ----------
    known_pressure, system_pressure, final_pressure : float
        As in :func:`expansion_volume` [Pa], scalar.
    pressure_error : float
        Error of the final pressure [Pa], scalar.

    Returns
    -------
    float
        Relative error of the volume [1], scalar, to first order.

    References
    ----------
    [GUM] section 5.1.3, derivative of :func:`expansion_volume`.
    """
    span = known_pressure - system_pressure
    return (
        span
        / ((known_pressure - final_pressure) * (final_pressure - system_pressure))
        * abs(pressure_error)
    )
