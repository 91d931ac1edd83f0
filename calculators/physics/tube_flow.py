"""Flow through a round tube of any length at any pressure: conductance and throughput.

A tube is an opening (:mod:`orifice_flow`) followed by a length of wall. The
wall's drag comes from kinetic theory (:func:`rarefied_gas.flow_coefficient`)
and holds from viscous to molecular flow; each end of every regime is a
published limit:

===================  ======================================================
molecular, long      Knudsen, (pi/12) c d^3 / L
molecular, short     Clausing, by Santeler's formula (0.7 %)
viscous, long        Poiseuille, pi d^4 p / (128 mu L)
viscous, short       Sampson and Dagan, Poiseuille with 3 pi a / 8 of length
start of a pull      Blasius friction, entry loss, speed-up, choked exit
===================  ======================================================
"""

import math

from calculators.errors import OutOfRange
from calculators.physics import orifice_flow
from calculators.physics.gases import ThinGas
from calculators.physics.rarefied_gas import flow_coefficient, rarefaction
from calculators.physics.root import rising_root

_GAUSS = math.sqrt(0.15)  # node of the three-point Gauss rule, weights 5/18, 8/18, 5/18


def poiseuille_conductance(
    *, inside_diameter: float, length: float, mean_pressure: float, gas: ThinGas
) -> float:
    """Conductance of a long tube in viscous flow, without slip.

    Parameters
    ----------
    inside_diameter : float
        Bore [m], scalar.
    length : float
        Length [m], scalar.
    mean_pressure : float
        Mean of the pressures at both ends [Pa], scalar.
    gas : ThinGas
        The gas at its temperature.

    Returns
    -------
    float
        Conductance [m3/s], scalar.

    References
    ----------
    [DUSHMAN-1962] chapter 2.
    """
    return math.pi * inside_diameter**4 * mean_pressure / (128.0 * gas.viscosity * length)


def molecular_conductance(*, inside_diameter: float, length: float, gas: ThinGas) -> float:
    """Conductance of a tube of any length in molecular flow.

    Parameters
    ----------
    inside_diameter : float
        Bore [m], scalar.
    length : float
        Length [m], scalar; 0 is an orifice.
    gas : ThinGas
        The gas at its temperature.

    Returns
    -------
    float
        Conductance [m3/s], scalar.

    References
    ----------
    [SANTELER-1986]; [CLAUSING-1932].
    """
    through = transmission_probability(length_to_diameter=length / inside_diameter)
    return through * orifice_flow.molecular_conductance(inside_diameter=inside_diameter, gas=gas)


def transmission_probability(*, length_to_diameter: float) -> float:
    """Chance that a molecule which enters a tube leaves at the other end.

    Parameters
    ----------
    length_to_diameter : float
        Length over bore [1], scalar.

    Returns
    -------
    float
        Probability [1], scalar; within 0.65 % of Clausing's integral equation.

    References
    ----------
    [SANTELER-1986]; [CLAUSING-1932]; [COLE-1977] for the table it is checked against.
    """
    length_to_radius = 2.0 * length_to_diameter
    return 1.0 / (1.0 + 0.375 * length_to_radius * (1.0 + _end_share(length_to_radius)))


def knudsen_conductance(
    *, inside_diameter: float, length: float, mean_pressure: float, gas: ThinGas
) -> float:
    """Conductance of a long tube by Knudsen's formula of 1909, as a cross-check.

    Parameters
    ----------
    inside_diameter : float
        Bore [m], scalar.
    length : float
        Length [m], scalar.
    mean_pressure : float
        Mean of the pressures at both ends [Pa], scalar.
    gas : ThinGas
        The gas at its temperature.

    Returns
    -------
    float
        Conductance [m3/s], scalar; at most 6 % above kinetic theory.

    References
    ----------
    [KNUDSEN-1909]; [DUSHMAN-1962] chapter 2; the constants from memory.
    """
    viscous = poiseuille_conductance(
        inside_diameter=inside_diameter, length=length, mean_pressure=mean_pressure, gas=gas
    )
    molecular = math.pi / 12.0 * gas.mean_speed * inside_diameter**3 / length
    x = inside_diameter * mean_pressure / (gas.viscosity * gas.thermal_speed)
    return viscous + molecular * (1.0 + x) / (1.0 + 1.24 * x)


def conductance(
    *, inside_diameter: float, length: float, mean_pressure: float, gas: ThinGas
) -> float:
    """Conductance of a tube in every regime, for a small pressure difference.

    Parameters
    ----------
    inside_diameter : float
        Bore [m], scalar.
    length : float
        Length [m], scalar; 0 is an orifice.
    mean_pressure : float
        Mean of the pressures at both ends [Pa], scalar.
    gas : ThinGas
        The gas at its temperature.

    Returns
    -------
    float
        Conductance [m3/s], scalar.

    Raises
    ------
    OutOfRange
        If the bore or the pressure is not above zero, or the length is below zero.

    References
    ----------
    [SHARIPOV-SELEZNEV-1998] long tube; [SANTELER-1986] ends in molecular flow;
    [DAGAN-1982] ends in viscous flow.
    """
    if not (inside_diameter > 0.0 and length >= 0.0 and mean_pressure > 0.0):
        raise OutOfRange("Bore and pressure must be above zero, and the length not below it.")
    mouth = orifice_flow.conductance(
        inside_diameter=inside_diameter, mean_pressure=mean_pressure, gas=gas
    )
    if length == 0.0:
        return mouth
    delta = rarefaction(inside_diameter=inside_diameter, pressure=mean_pressure, gas=gas)
    wall = (
        flow_coefficient(delta)
        * _long_tube(inside_diameter, gas)
        / (length * (1.0 + _end_share(2.0 * length / inside_diameter) / (1.0 + delta)))
    )
    return 1.0 / (1.0 / mouth + 1.0 / wall)


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
    if throughput <= 0.0:
        return outlet_pressure
    entry = outlet_pressure
    if length > 0.0:
        entry = _wall_inlet(inside_diameter, length, outlet_pressure, throughput, gas)
    return orifice_flow.inlet_pressure(
        inside_diameter=inside_diameter, outlet_pressure=entry, throughput=throughput, gas=gas
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
    drag = throughput * turbulence / _long_tube(diameter, gas)
    speeding_up = 0.25 * per_pascal * sonic**2
    end_share = _end_share(2.0 * length / diameter)

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
        return math.log(driving / (drag * length * (1.0 + end_share / (1.0 + delta))))

    # A quadratic gives the drop to about 10 %: slip is nearly constant, the rest viscous.
    total = drag * length
    linear = 1.2 + 0.25 * per_pascal * leaving
    drop = 2.0 * total / (linear + math.sqrt(linear**2 + 0.5 * per_pascal * total))
    log_fall = rising_root(surplus, guess=math.log(math.log1p(drop / leaving)))
    return leaving * math.exp(math.exp(log_fall))


def _long_tube(diameter: float, gas: ThinGas) -> float:
    """Conductance times length of a long tube, for a flow coefficient of 1."""
    return math.pi * (0.5 * diameter) ** 3 * gas.probable_speed / 2.0


def _end_share(length_to_radius: float) -> float:
    """Lengthening of a short tube in molecular flow, as a share of its length (Santeler).

    In viscous flow the ends are in the mouth; 1 / (1 + delta) fades this one out.
    """
    return 1.0 / (3.0 + 3.0 * length_to_radius / 7.0)
