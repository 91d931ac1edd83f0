"""Throughput of a round tube of any length, from a turbulent, choked start to molecular flow.

A tube is an opening (:mod:`orifice_flow`) followed by a length of wall. The
wall's drag comes from kinetic theory (:func:`rarefied_gas.flow_coefficient`);
at the start of a pull Blasius friction, entry loss, the speeding-up of the gas
and a choked exit come in. For small differences this is
:func:`tube_conductance.conductance`.

Long tubes are as good as their published limits. Parts shorter than some
twenty bores, in jets or in transition flow, are good to 10 to 30 %.
"""

import math

from calculators.errors import OutOfRange
from calculators.physics import orifice_flow
from calculators.physics.gases import ThinGas
from calculators.physics.rarefied_gas import flow_coefficient, rarefaction
from calculators.physics.root import rising_root
from calculators.physics.tube_conductance import conductance, end_share, long_tube

SHORTEST_WALL = 1e-4  # of the bore; a shorter tube is an orifice
_GAUSS = math.sqrt(0.15)  # node of the three-point Gauss rule, weights 5/18, 8/18, 5/18


def reynolds_number(*, inside_diameter: float, throughput: float, gas: ThinGas) -> float:
    """Reynolds number of a throughput in a tube; the same all along it.

    Parameters
    ----------
    inside_diameter : float
        Bore [m], scalar.
    throughput : float
        Throughput [Pa m3/s], scalar.
    gas : ThinGas
        The gas at its temperature.

    Returns
    -------
    float
        Reynolds number [1], scalar.

    References
    ----------
    [DUSHMAN-1962] chapter 2.
    """
    mass_flow = throughput / gas.thermal_speed**2
    return 4.0 * mass_flow / (math.pi * inside_diameter * gas.viscosity)


def inlet_pressure(
    *,
    inside_diameter: float,
    length: float,
    outlet_pressure: float,
    throughput: float,
    gas: ThinGas,
) -> float:
    """Pressure needed before a tube to drive a throughput through it.

    Parameters
    ----------
    inside_diameter : float
        Bore [m], scalar.
    length : float
        Length [m], scalar; 0 is an orifice.
    outlet_pressure : float
        Absolute pressure behind the tube [Pa], scalar, above zero.
    throughput : float
        Throughput [Pa m3/s], scalar.
    gas : ThinGas
        The gas at its temperature.

    Returns
    -------
    float
        Inlet pressure [Pa], scalar.

    Notes
    -----
    From the exit inward. Gas cannot leave faster than sound, so a strong flow
    holds the pressure just inside the exit above the one outside. Along the
    wall the drag is that of kinetic theory, averaged over the local pressure,
    and grows as in turbulent flow where Blasius friction exceeds laminar
    friction; gas that expands must also be sped up. Last comes the mouth.

    References
    ----------
    [SHARIPOV-SELEZNEV-1998]; [BLASIUS-1913]; [SHAPIRO-1953] chapter 6, isothermal
    flow with friction; [PHYSICS] for the way they are joined.
    """
    return _inlet(inside_diameter, length, outlet_pressure, throughput, gas)


def throughput(
    *,
    inside_diameter: float,
    length: float,
    inlet_pressure: float,
    outlet_pressure: float,
    gas: ThinGas,
) -> float:
    """Throughput of a tube between two pressures.

    Parameters
    ----------
    inside_diameter : float
        Bore [m], scalar.
    length : float
        Length [m], scalar; 0 is an orifice.
    inlet_pressure, outlet_pressure : float
        Absolute pressures at both ends [Pa], scalar.
    gas : ThinGas
        The gas at its temperature.

    Returns
    -------
    float
        Throughput [Pa m3/s], scalar.

    Raises
    ------
    OutOfRange
        If the outlet pressure is not above zero and below the inlet pressure.

    References
    ----------
    Inverse of :func:`inlet_pressure`.
    """
    if not 0.0 < outlet_pressure < inlet_pressure:
        raise OutOfRange("Gas flows only from the higher to the lower pressure, and that above 0.")
    fall = math.log(inlet_pressure / outlet_pressure)

    def surplus(log_throughput: float) -> float:
        reached = _inlet(inside_diameter, length, outlet_pressure, math.exp(log_throughput), gas)
        return math.log(math.log(reached / outlet_pressure) / fall)

    linear = conductance(
        inside_diameter=inside_diameter,
        length=length,
        mean_pressure=0.5 * (inlet_pressure + outlet_pressure),
        gas=gas,
    )
    guess = math.log(linear * (inlet_pressure - outlet_pressure))
    return math.exp(rising_root(surplus, guess=guess))


def _inlet(
    diameter: float, length: float, outlet_pressure: float, throughput: float, gas: ThinGas
) -> float:
    if throughput <= 0.0:
        return outlet_pressure
    entry = outlet_pressure
    if length > SHORTEST_WALL * diameter:
        entry = _wall_inlet(diameter, length, outlet_pressure, throughput, gas)
    return orifice_flow.inlet_pressure(
        inside_diameter=diameter, outlet_pressure=entry, throughput=throughput, gas=gas
    )


def _wall_inlet(
    diameter: float, length: float, outlet_pressure: float, throughput: float, gas: ThinGas
) -> float:
    """Pressure just inside the mouth, from the one behind the exit."""
    per_pascal = rarefaction(inside_diameter=diameter, pressure=1.0, gas=gas)
    sonic = throughput / (math.pi / 4.0 * diameter**2 * gas.thermal_speed)
    # Molecules do not push each other: without collisions there is no sonic exit.
    collisions = per_pascal * sonic / (1.0 + per_pascal * sonic)
    leaving = max(outlet_pressure, sonic * collisions)
    reynolds = reynolds_number(inside_diameter=diameter, throughput=throughput, gas=gas)
    turbulence = max(1.0, 0.316 * reynolds**0.75 / 64.0)
    drag = throughput * turbulence / long_tube(diameter, gas)
    speeding_up = 0.25 * per_pascal * sonic**2
    ends = end_share(2.0 * length / diameter)

    def surplus(log_fall: float) -> float:
        fall = math.exp(log_fall)
        drop = leaving * math.expm1(fall)
        delta = per_pascal * (leaving + 0.5 * drop)  # in the middle
        away = per_pascal * _GAUSS * drop
        mean_coefficient = (
            5.0 * flow_coefficient(delta - away)
            + 8.0 * flow_coefficient(delta)
            + 5.0 * flow_coefficient(delta + away)
        ) / 18.0
        driving = mean_coefficient * drop - speeding_up * fall
        return math.log(driving / (drag * length * (1.0 + ends / (1.0 + delta))))

    # A quadratic gives the drop to about 10 %: slip is nearly constant, the rest viscous.
    total = drag * length
    linear = 1.2 + 0.25 * per_pascal * leaving
    drop = 2.0 * total / (linear + math.sqrt(linear**2 + 0.5 * per_pascal * total))
    log_fall = rising_root(surplus, guess=math.log(math.log1p(drop / leaving)))
    return leaving * math.exp(math.exp(log_fall))
