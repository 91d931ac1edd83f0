"""A rig as a table of its effective speed, for a simulation that asks it at every step."""

import math
from bisect import bisect_right
from typing import NamedTuple

from calculators.physics import gases
from calculators.physics.constants import STANDARD_ATMOSPHERE
from calculators.physics.rig import Rig
from calculators.physics.rig_flow import steady_flow


class Path(NamedTuple):
    """A rig as a table: ln of pressure [Pa], ln of effective speed [m3/s] for air and vapor."""

    log_pressure: tuple[tuple[float, ...], tuple[float, ...]]
    log_speed: tuple[tuple[float, ...], tuple[float, ...]]
    pump_speed: float
    ultimate: float


def path_of(*, rig: Rig, temperature: float = 293.15) -> Path:
    """A rig as a table of its effective speed against system pressure.

    Parameters
    ----------
    rig : Rig
        Pump and path.
    temperature : float
        Temperature of the gas [K], scalar.

    Returns
    -------
    Path
        Tables for air and for water vapor, from close above the ultimate
        pressure to above one atmosphere.

    References
    ----------
    [PHYSICS] :func:`calculators.physics.rig_flow.steady_flow`.
    """
    pressures, speeds = [], []
    for name in ("air", "water vapor"):
        gas = gases.thin_gas(gas=gases.named(name), temperature=temperature)
        xs: list[float] = []
        ys: list[float] = []
        throughput = 1e-6 * rig.pumping_speed * rig.ultimate_pressure
        while not xs or xs[-1] < math.log(1.2 * STANDARD_ATMOSPHERE):
            flow = steady_flow(rig=rig, throughput=throughput, gas=gas)
            xs.append(math.log(flow.system_pressure))
            ys.append(math.log(throughput / (flow.system_pressure - rig.ultimate_pressure)))
            throughput *= 2.0
        pressures.append(tuple(xs))
        speeds.append(tuple(ys))
    return Path(
        log_pressure=(pressures[0], pressures[1]),
        log_speed=(speeds[0], speeds[1]),
        pump_speed=rig.pumping_speed,
        ultimate=rig.ultimate_pressure,
    )


def effective_speed(path: Path, pressure: float, vapor_share: float) -> float:
    """Effective pumping speed of a path at a pressure, for a mix of air and water vapor.

    Parameters
    ----------
    path : Path
        The table of the rig.
    pressure : float
        System pressure [Pa], scalar.
    vapor_share : float
        Share of water vapor in the gas [1], scalar.

    Returns
    -------
    float
        Effective speed above the ultimate pressure [m3/s], scalar.

    References
    ----------
    [PHYSICS] interpolated in logarithms; the two gases weighed by their shares.
    """
    x = math.log(pressure)
    air = _interpolate(path.log_pressure[0], path.log_speed[0], x)
    vapor = _interpolate(path.log_pressure[1], path.log_speed[1], x)
    return math.exp(air + vapor_share * (vapor - air))


def _interpolate(xs: tuple[float, ...], ys: tuple[float, ...], x: float) -> float:
    i = min(max(bisect_right(xs, x), 1), len(xs) - 1)
    share = min(max((x - xs[i - 1]) / (xs[i] - xs[i - 1]), 0.0), 1.0)
    return ys[i - 1] + share * (ys[i] - ys[i - 1])
