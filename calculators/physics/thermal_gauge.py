"""What a thermal-conductivity gauge set for nitrogen reads in another gas.

Such a gauge measures the heat a gas carries off a warm element. In a thin gas
that goes as the number of hits and what each can carry; in a dense gas it goes
as the conductivity of the gas, and the order of the gases turns over.
"""

import math

from calculators.errors import OutOfRange
from calculators.physics.gases import GASES, Gas

# Pa; between the two the gauge's own geometry decides (1 and 10 mbar, from memory).
THIN_UP_TO = 100.0
DENSE_FROM = 1000.0

# Factors that instructions of laboratory gauges print, true pressure = factor * indicated
# reading (mean values, 0.01 to 1 mbar); the reading is larger by the inverse.
PRINTED_FACTORS = {"air": 1.0, "nitrogen": 1.0, "water vapor": 0.5, "R-744": 0.9, "helium": 0.8}

# W/(m K) at 20 degC, thin gas, computed with CoolProp 8.0.0; blends by mole fraction.
# Its general estimate for and the blends carries 10 to 20 %.
THERMAL_CONDUCTIVITY = {
    "air": 25.84e-3,
    "nitrogen": 25.44e-3,
    "water vapor": 18.09e-3,
    "helium": 153.4e-3,
    "R-22": 11.14e-3,
    "R-32": 13.15e-3,
    "R-134a": 12.96e-3,
    "R-290": 17.75e-3,
    "R-404A": 14.1e-3,
    "R-410A": 13.3e-3,
    "R-454B": 13.2e-3,
    "R-744": 16.19e-3,
}


def _heat_per_pressure(gas: Gas) -> float:
    """Heat a thin gas carries per pressure, up to a factor common to all gases."""
    ratio = gas.heat_capacity_ratio
    return (ratio + 1.0) / (ratio - 1.0) / math.sqrt(gas.molar_mass)


def thin_gas_reading(*, gas: Gas) -> float:
    """Reading over true pressure in a thin gas, for a gauge set for nitrogen.

    Parameters
    ----------
    gas : Gas
        The gas at the gauge.

    Returns
    -------
    float
        Ratio of indicated to true pressure [1], scalar.

    Notes
    -----
    Below about 1 mbar (750 micron), every gas giving up its heat equally well
    at the element. That flatters helium (0.8 to 1.25 in practice, not 1.76)
    and falls short for water (about 2 in practice, not 1.47).

    References
    ----------
    [DUSHMAN-1962] chapter 5, free-molecule heat conduction goes as
    (gamma + 1)/(gamma - 1) p/sqrt(M T).
    """
    return _heat_per_pressure(gas) / _heat_per_pressure(GASES["nitrogen"])


def dense_gas_response(*, gas: Gas) -> float:
    """Heat carried by a dense gas over that carried by nitrogen at the same pressure.

    Parameters
    ----------
    gas : Gas
        The gas at the gauge.

    Returns
    -------
    float
        Ratio of the thermal conductivities at 20 degC [1], scalar.

    Raises
    ------
    OutOfRange
        If the conductivity of this gas is not tabulated.

    Notes
    -----
    Above about 10 mbar (7,500 micron). It says which way the gauge errs, not
    by how much: there the reading depends on the shape of the sensor.

    References
    ----------
    [COOLPROP] thermal conductivities, module table.
    """
    if gas.name not in THERMAL_CONDUCTIVITY:
        raise OutOfRange(f"The thermal conductivity of {gas.name} is not in the table.")
    return THERMAL_CONDUCTIVITY[gas.name] / THERMAL_CONDUCTIVITY["nitrogen"]
