"""Size of a leak: from a rise in a known volume to refrigerant lost per year in service.

A leak rate here is a throughput, pressure times volume per time. It counts
molecules only together with a temperature, and grams only together with a gas.
"""

import math
from typing import NamedTuple

from calculators.errors import OutOfRange
from calculators.physics.constants import MOLAR_GAS_CONSTANT, STANDARD_ATMOSPHERE
from calculators.physics.gases import GASES, Gas, viscosity

STEPS_TO_BE_SEEN = 5.0  # gauge steps a rise must show before it counts; common practice


class ServiceLoss(NamedTuple):
    """Refrigerant lost in service [kg/s]: the least and the most one test allows."""

    molecular: float
    laminar: float


def leak_rate(*, volume: float, rate_of_pressure_rise: float) -> float:
    """Gas entering a closed volume, as pressure times volume per time.

    Parameters
    ----------
    volume : float
        Inside volume [m3], scalar.
    rate_of_pressure_rise : float
        Steady rise at constant temperature [Pa/s], scalar.

    Returns
    -------
    float
        Leak rate V dp/dt [Pa m3/s], scalar.

    References
    ----------
    [40-CFR-1065] equation 1065.644-1, at one temperature.
    """
    return volume * rate_of_pressure_rise


def molar_leak_rate(
    *,
    volume: float,
    first_pressure: float,
    last_pressure: float,
    first_temperature: float,
    last_temperature: float,
    duration: float,
) -> float:
    """Gas entering a closed volume, in moles, with its temperature allowed to change.

    Parameters
    ----------
    volume : float
        Inside volume [m3], scalar.
    first_pressure, last_pressure : float
        Absolute pressures at the start and the end [Pa], scalar.
    first_temperature, last_temperature : float
        Temperatures of the gas at the start and the end [K], scalar.
    duration : float
        Time between the two readings [s], scalar.

    Returns
    -------
    float
        Molar leak rate [mol/s], scalar; negative where gas went missing.

    Raises
    ------
    OutOfRange
        If ``duration`` is not above zero.

    References
    ----------
    [40-CFR-1065] equation 1065.644-1.
    """
    if not duration > 0.0:
        raise OutOfRange("The last reading must be later than the first.")
    gained = last_pressure / last_temperature - first_pressure / first_temperature
    return volume / MOLAR_GAS_CONSTANT * gained / duration


def mass_flow(*, throughput: float, molar_mass: float, temperature: float) -> float:
    """Mass per time carried by a throughput of ideal gas.

    Parameters
    ----------
    throughput : float
        Pressure times volume per time [Pa m3/s], scalar.
    molar_mass : float
        Molar mass of the gas [kg/mol], scalar.
    temperature : float
        Temperature at which the throughput is counted [K], scalar.

    Returns
    -------
    float
        Mass flow Q M/(R T) [kg/s], scalar.

    References
    ----------
    Ideal gas law.
    """
    return throughput * molar_mass / (MOLAR_GAS_CONSTANT * temperature)


def molecular_ratio(
    *,
    from_gas: Gas,
    to_gas: Gas,
    from_pressures: tuple[float, float],
    to_pressures: tuple[float, float],
) -> float:
    """Throughput of one leak under new conditions over that under old, molecular flow.

    Parameters
    ----------
    from_gas, to_gas : Gas
        Gas in the leak before and after.
    from_pressures, to_pressures : tuple of float
        Pressure where the gas enters and where it leaves the leak [Pa].

    Returns
    -------
    float
        Ratio of the throughputs [1], scalar.

    Notes
    -----
    Holds where the leak is narrower than the mean free path: as a rule below
    about 1e-8 Pa m3/s. Same leak, same temperature.

    References
    ----------
    [DUSHMAN-1962] chapter 2, molecular flow goes as (p1 - p2)/sqrt(M).
    """
    pressures = (to_pressures[0] - to_pressures[1]) / (from_pressures[0] - from_pressures[1])
    return math.sqrt(from_gas.molar_mass / to_gas.molar_mass) * pressures


def laminar_ratio(
    *,
    from_gas: Gas,
    to_gas: Gas,
    from_pressures: tuple[float, float],
    to_pressures: tuple[float, float],
    temperature: float,
) -> float:
    """Throughput of one leak under new conditions over that under old, laminar flow.

    Parameters
    ----------
    from_gas, to_gas : Gas
        Gas in the leak before and after.
    from_pressures, to_pressures : tuple of float
        Pressure where the gas enters and where it leaves the leak [Pa].
    temperature : float
        Temperature of the gas [K], scalar.

    Returns
    -------
    float
        Ratio of the throughputs [1], scalar.

    Raises
    ------
    OutOfRange
        If ``temperature`` is not within -40 degC to 100 degC.

    Notes
    -----
    Holds for long narrow leaks above about 1e-5 Pa m3/s. A leak so wide that
    the flow chokes grows only as the pressure, not as its square.

    References
    ----------
    [DUSHMAN-1962] chapter 2, Poiseuille flow goes as (p1^2 - p2^2)/viscosity.
    """
    pressures = (to_pressures[0] ** 2 - to_pressures[1] ** 2) / (
        from_pressures[0] ** 2 - from_pressures[1] ** 2
    )
    thickness = viscosity(gas=from_gas, temperature=temperature) / viscosity(
        gas=to_gas, temperature=temperature
    )
    return thickness * pressures


def service_loss(
    *,
    leak_rate: float,
    refrigerant: Gas,
    service_pressure: float,
    temperature: float,
    outside_pressure: float = STANDARD_ATMOSPHERE,
) -> ServiceLoss:
    """Refrigerant that a leak found under vacuum lets out in service.

    Parameters
    ----------
    leak_rate : float
        Air coming in under vacuum [Pa m3/s], scalar.
    refrigerant : Gas
        What the system will hold.
    service_pressure : float
        Absolute pressure of the refrigerant vapor at the leak [Pa], scalar.
    temperature : float
        Temperature of the leak [K], scalar.
    outside_pressure : float, optional
        Pressure of the open air [Pa], scalar.

    Returns
    -------
    ServiceLoss
        Mass flows [kg/s] if the leak passes gas molecule by molecule
        (``molecular``) and if it passes it as a stream (``laminar``).

    Raises
    ------
    OutOfRange
        If ``service_pressure`` is not above ``outside_pressure``.

    Notes
    -----
    The truth lies between the two for vapor; choked leaks lie between as
    well. A leak that lets out liquid loses more than either.

    References
    ----------
    :func:`molecular_ratio` and :func:`laminar_ratio`, air from
    ``outside_pressure`` into vacuum against refrigerant into the open air.
    """
    if not service_pressure > outside_pressure:
        raise OutOfRange(
            "Below the pressure of the open air nothing leaks out: air leaks in instead. "
            "Enter a service pressure above it."
        )
    air_in = (outside_pressure, 0.0)
    refrigerant_out = (service_pressure, outside_pressure)
    one = mass_flow(
        throughput=leak_rate, molar_mass=refrigerant.molar_mass, temperature=temperature
    )
    slow = molecular_ratio(
        from_gas=GASES["air"],
        to_gas=refrigerant,
        from_pressures=air_in,
        to_pressures=refrigerant_out,
    )
    fast = laminar_ratio(
        from_gas=GASES["air"],
        to_gas=refrigerant,
        from_pressures=air_in,
        to_pressures=refrigerant_out,
        temperature=temperature,
    )
    return ServiceLoss(molecular=one * slow, laminar=one * fast)


def smallest_detectable_leak(
    *, resolution: float, volume: float, duration: float, steps: float = STEPS_TO_BE_SEEN
) -> float:
    """Smallest leak that moves the gauge by enough steps within the hold.

    Parameters
    ----------
    resolution : float
        Step of the gauge [Pa], scalar.
    volume : float
        Inside volume [m3], scalar.
    duration : float
        Length of the hold [s], scalar.
    steps : float, optional
        Steps the rise must show before it counts [1], scalar.

    Returns
    -------
    float
        Leak rate [Pa m3/s], scalar.

    References
    ----------
    V dp/dt with dp of ``steps`` gauge steps; five steps are common practice,
    twelve times the uncertainty of a difference of two readings
    ([GUM] F.2.2.1).
    """
    return steps * resolution * volume / duration
