"""Flow through a thin orifice, from molecular effusion to a choked jet.

An orifice here is any opening much shorter than it is wide: a valve core
left in, a depressor, a cracked valve, and the mouth of every hose.
"""

import math

from calculators.physics.gases import ThinGas
from calculators.physics.root import rising_root

DISCHARGE_COEFFICIENT = 0.86  # of a thin sharp orifice into vacuum (FUJIMOTO-USAMI-1984)
_SHARPNESS = 1.2  # how fast creeping flow gives way to a jet; chosen to fit, see throughput
_CREEP = 2.0 / (3.0 * math.sqrt(math.pi))  # Sampson's creeping flow over molecular flow


def molecular_conductance(*, inside_diameter: float, gas: ThinGas) -> float:
    """Conductance of an opening in molecular flow, area times c/4.

    Parameters
    ----------
    inside_diameter : float
        Diameter of the opening [m], scalar.
    gas : ThinGas
        The gas at its temperature.

    Returns
    -------
    float
        Conductance [m3/s], scalar, at any pressure low enough.

    References
    ----------
    [DUSHMAN-1962] chapter 2.
    """
    return math.pi / 4.0 * inside_diameter**2 * gas.mean_speed / 4.0


def conductance(*, inside_diameter: float, mean_pressure: float, gas: ThinGas) -> float:
    """Conductance of an opening for a small pressure difference.

    Parameters
    ----------
    inside_diameter : float
        Diameter of the opening [m], scalar.
    mean_pressure : float
        Mean of the pressures on both sides [Pa], scalar.
    gas : ThinGas
        The gas at its temperature.

    Returns
    -------
    float
        Conductance [m3/s], scalar: molecular effusion plus Sampson's creeping flow
        a^3 p / (3 mu), which is exact in both limits.

    References
    ----------
    [SAMPSON-1891] for the viscous limit; [DUSHMAN-1962] chapter 2 for the molecular one.
    """
    delta = 0.5 * inside_diameter * mean_pressure / (gas.viscosity * gas.probable_speed)
    return molecular_conductance(inside_diameter=inside_diameter, gas=gas) * (1 + _CREEP * delta)


def critical_pressure_ratio(*, gas: ThinGas) -> float:
    """Downstream over upstream pressure below which a jet is choked.

    Returns
    -------
    float
        Ratio [1], scalar; 0.528 for air.

    References
    ----------
    [DUSHMAN-1962] chapter 2, isentropic flow.
    """
    g = gas.heat_capacity_ratio
    return math.pow(2.0 / (g + 1.0), g / (g - 1.0))


def choked_conductance(*, inside_diameter: float, gas: ThinGas) -> float:
    """Volume flow of a choked ideal nozzle, at upstream pressure.

    Parameters
    ----------
    inside_diameter : float
        Diameter of the throat [m], scalar.
    gas : ThinGas
        The gas at its temperature.

    Returns
    -------
    float
        Throughput over upstream pressure [m3/s], scalar: the most that any opening of
        this size passes; a sharp orifice passes ``DISCHARGE_COEFFICIENT`` of it.

    References
    ----------
    [DUSHMAN-1962] chapter 2, isentropic flow; 20 L/s per cm2 for air.
    """
    g = gas.heat_capacity_ratio
    factor = math.sqrt(g) * math.pow(2.0 / (g + 1.0), (g + 1.0) / (2.0 * (g - 1.0)))
    return math.pi / 4.0 * inside_diameter**2 * gas.thermal_speed * factor


def throughput(
    *, inside_diameter: float, inlet_pressure: float, outlet_pressure: float, gas: ThinGas
) -> float:
    """Throughput of a thin orifice at any pressure and any pressure ratio.

    Parameters
    ----------
    inside_diameter : float
        Diameter of the opening [m], scalar.
    inlet_pressure, outlet_pressure : float
        Absolute pressures far from the opening [Pa], scalar, inlet not below outlet.
    gas : ThinGas
        The gas at its temperature.

    Returns
    -------
    float
        Throughput [Pa m3/s], scalar.

    Notes
    -----
    Molecular effusion, plus an excess that begins as creeping flow and ends as
    an isentropic jet, choked below the critical ratio. All limits are exact;
    between them the blend follows Fujimoto & Usami's measured flow into vacuum
    to 3 %.

    References
    ----------
    [FUJIMOTO-USAMI-1984] their empirical equation, from memory; [SAMPSON-1891].
    """
    fall = math.log(inlet_pressure / outlet_pressure)
    return _throughput(inside_diameter, outlet_pressure, fall, gas)


def inlet_pressure(
    *, inside_diameter: float, outlet_pressure: float, throughput: float, gas: ThinGas
) -> float:
    """Pressure needed before an orifice to drive a throughput; inverse of :func:`throughput`.

    Parameters
    ----------
    inside_diameter : float
        Diameter of the opening [m], scalar.
    outlet_pressure : float
        Absolute pressure behind it [Pa], scalar.
    throughput : float
        Throughput [Pa m3/s], scalar.
    gas : ThinGas
        The gas at its temperature.

    Returns
    -------
    float
        Inlet pressure [Pa], scalar.

    References
    ----------
    See :func:`throughput`.
    """
    if throughput <= 0.0:
        return outlet_pressure
    linear = conductance(inside_diameter=inside_diameter, mean_pressure=outlet_pressure, gas=gas)
    guess = math.log(math.log1p(throughput / (linear * outlet_pressure)))

    def surplus(log_fall: float) -> float:
        passed = _throughput(inside_diameter, outlet_pressure, math.exp(log_fall), gas)
        return math.log(passed / throughput)

    return outlet_pressure * math.exp(math.exp(rising_root(surplus, guess=guess)))


def _throughput(diameter: float, outlet_pressure: float, fall: float, gas: ThinGas) -> float:
    """Throughput when ln(inlet / outlet) is ``fall``; precise for the smallest fall."""
    if fall <= 0.0:
        return 0.0
    inlet_pressure = outlet_pressure * math.exp(fall)
    drop = -math.expm1(-fall)  # (inlet - outlet) / inlet
    quarter_mean_speed = gas.mean_speed / 4.0
    mean_pressure = 0.5 * (inlet_pressure + outlet_pressure)
    delta = 0.5 * diameter * mean_pressure / (gas.viscosity * gas.probable_speed)
    creep = _CREEP * delta * drop
    g = gas.heat_capacity_ratio
    expansion = min(fall, math.log((g + 1.0) / 2.0) * g / (g - 1.0))
    speed = gas.thermal_speed * math.sqrt(
        2.0 * g / (g - 1.0) * math.exp(-2.0 * expansion / g) * -math.expm1(expansion * (1 / g - 1))
    )
    jet = DISCHARGE_COEFFICIENT * speed / quarter_mean_speed - drop
    n = _SHARPNESS
    excess = creep * math.pow(1.0 + math.pow(creep / jet, n), -1.0 / n)
    area = math.pi / 4.0 * diameter**2
    return area * inlet_pressure * quarter_mean_speed * (drop + excess)
