"""The decay test in its simplest terms: rate of rise, and how long to hold.

What the trade calls a decay test is a rate-of-rise test: the vacuum decays,
the pressure rises.
"""

from calculators.errors import OutOfRange
from calculators.physics.leak_rate import STEPS_TO_BE_SEEN


def rate_of_pressure_rise(*, first_pressure: float, last_pressure: float, duration: float) -> float:
    """Mean rise of pressure over a hold.

    Parameters
    ----------
    first_pressure, last_pressure : float
        Absolute pressures at the start and the end [Pa], scalar.
    duration : float
        Time between the two [s], scalar.

    Returns
    -------
    float
        Rate of pressure rise [Pa/s], scalar; negative where the pressure fell.

    Raises
    ------
    OutOfRange
        If ``duration`` is not above zero.

    References
    ----------
    [40-CFR-1065] section 1065.644, the pressures' part of the leak rate.
    """
    if not duration > 0.0:
        raise OutOfRange("The last reading must be later than the first.")
    return (last_pressure - first_pressure) / duration


def hold_time(
    *, volume: float, resolution: float, leak_rate: float, steps: float = STEPS_TO_BE_SEEN
) -> float:
    """Time a volume must be held before a leak moves the gauge by enough steps.

    Parameters
    ----------
    volume : float
        Inside volume [m3], scalar.
    resolution : float
        Step of the gauge [Pa], scalar.
    leak_rate : float
        Smallest leak that must not be missed [Pa m3/s], scalar.
    steps : float, optional
        Steps the rise must show before it counts [1], scalar.

    Returns
    -------
    float
        Hold time k r V/Q [s], scalar.

    Raises
    ------
    OutOfRange
        If ``leak_rate`` is not above zero.

    Notes
    -----
    Equal sensitivity takes time in proportion to the volume: what shows in
    10 min on 10 L takes 50 h on 3,000 L. Five steps are twelve times the
    standard uncertainty of a difference of two readings, r/sqrt(6), so that
    lag, drift and a first unsteady minute do not decide.

    References
    ----------
    Conservation of mass in a closed volume, V dp/dt = Q; [GUM] F.2.2.1 for
    the step.
    """
    if not leak_rate > 0.0:
        raise OutOfRange("The leak that must show has to be above zero.")
    return steps * resolution * volume / leak_rate
