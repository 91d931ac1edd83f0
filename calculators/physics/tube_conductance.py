"""Conductance of a round tube: each classical limit, and one formula for every regime.

===================  ======================================================
molecular, long      Knudsen, (pi/12) c d^3 / L
molecular, short     Clausing, by Santeler's formula (0.7 %)
viscous, long        Poiseuille, pi d^4 p / (128 mu L)
viscous, short       Sampson and Dagan, Poiseuille with 3 pi a / 8 of length
===================  ======================================================
"""

import math

from calculators.errors import OutOfRange
from calculators.physics import orifice_flow
from calculators.physics.gases import ThinGas
from calculators.physics.rarefied_gas import flow_coefficient, rarefaction


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
    return 1.0 / (1.0 + 0.375 * length_to_radius * (1.0 + end_share(length_to_radius)))


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
        * long_tube(inside_diameter, gas)
        / (length * (1.0 + end_share(2.0 * length / inside_diameter) / (1.0 + delta)))
    )
    return 1.0 / (1.0 / mouth + 1.0 / wall)


def long_tube(inside_diameter: float, gas: ThinGas) -> float:
    """Conductance times length of a long tube, for a flow coefficient of 1."""
    return math.pi * (0.5 * inside_diameter) ** 3 * gas.probable_speed / 2.0


def end_share(length_to_radius: float) -> float:
    """Lengthening of a short tube in molecular flow, as a share of its length (Santeler).

    In viscous flow the ends are in the mouth; 1 / (1 + delta) fades this one out.
    """
    return 1.0 / (3.0 + 3.0 * length_to_radius / 7.0)
