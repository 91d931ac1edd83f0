"""Thin gases: molar mass, viscosity, heat capacity ratio, and how fast the molecules move.

Below about one atmosphere the viscosity of a gas depends on temperature alone,
so one curve per gas is enough::

    mu = mu_20 * (T / 293.15 K) ** (exponent + curvature * ln(T / 293.15 K))

fitted here to the dilute-gas viscosities named in the last column over -40 to
100 degC; "fit" is the largest deviation from that source.

============  =========  =======  ======  =============================================
gas           M [g/mol]  mu_20    fit     source of viscosity; of molar mass
                         [uPa s]
============  =========  =======  ======  =============================================
air           28.96546   18.191   0.01 %  COOLPROP (Lemmon & Jacobsen 2004); CIPM-2007
nitrogen      28.0134    17.560   0.01 %  COOLPROP (Lemmon & Jacobsen 2004)
water vapor   18.015268  9.550    0.41 %  IAPWS-R12-08 dilute-gas term; IAPWS-R6-95
helium        4.002602   19.614   0.01 %  COOLPROP
R-22          86.468     12.411   0.09 %  THERMO, its REFPROP_FIT coefficients
R-32          52.024     12.398   0.02 %  THERMO, its REFPROP_FIT coefficients
R-134a        102.032    11.659   0.01 %  COOLPROP (Huber, Laesecke & Perkins 2003)
R-290         44.0956    8.022    0.04 %  COOLPROP (Vogel & Herrmann 2016)
R-404A        97.604     11.746   0.02 %  Wilke's rule, R-125/R-143a/R-134a 44/52/4 by mass
R-410A        72.585     12.733   0.02 %  Wilke's rule, R-32/R-125 50/50 by mass
R-454B        62.614     12.216   0.06 %  Wilke's rule, R-32/R-1234yf 68.9/31.1 by mass
R-744         44.0098    14.666   0.04 %  COOLPROP (Laesecke & Muzny 2017)
============  =========  =======  ======  =============================================

The viscosities of the blends carry about 5 %: two good mixing rules differ by
up to 2 %, the libraries' estimates for R-1234yf by 8 %. Below 0 degC the water
values extend the published formula to vapor over ice; every temperature of the
table was compared with it. Heat capacity ratios are those of the ideal gas at
20 degC (COOLPROP; blends by mole fraction).
"""

import math
from dataclasses import dataclass, field

from calculators.errors import OutOfRange
from calculators.physics.constants import MOLAR_GAS_CONSTANT

REFERENCE_TEMPERATURE = 293.15  # K, 20 degC
LOWEST_TEMPERATURE = 233.15  # K, -40 degC
HIGHEST_TEMPERATURE = 373.15  # K, 100 degC


@dataclass(frozen=True, kw_only=True)
class Gas:
    """One gas: the numbers behind viscosity, molecular speed and choked flow."""

    name: str
    molar_mass: float  # kg/mol
    viscosity_at_20: float  # Pa s, at 20 degC
    exponent: float  # of temperature in the viscosity
    curvature: float  # change of that exponent with ln(T)
    heat_capacity_ratio: float  # ideal gas at 20 degC


def _gas(
    name: str, grams: float, micropascal_seconds: float, exponent: float, curve: float, ratio: float
) -> Gas:
    return Gas(
        name=name,
        molar_mass=grams * 1e-3,
        viscosity_at_20=micropascal_seconds * 1e-6,
        exponent=exponent,
        curvature=curve,
        heat_capacity_ratio=ratio,
    )


GASES = {
    gas.name: gas
    for gas in (
        _gas("air", 28.96546, 18.191, 0.785, -0.079, 1.4001),
        _gas("nitrogen", 28.0134, 17.560, 0.778, -0.078, 1.3996),
        _gas("water vapor", 18.015268, 9.550, 0.938, 0.560, 1.3293),
        _gas("helium", 4.002602, 19.614, 0.684, 0.014, 1.6667),
        _gas("R-22", 86.468, 12.411, 1.031, -0.126, 1.1756),
        _gas("R-32", 52.024, 12.398, 1.018, -0.094, 1.2428),
        _gas("R-134a", 102.032, 11.659, 0.965, -0.026, 1.1097),
        _gas("R-290", 44.0956, 8.022, 0.969, -0.020, 1.1298),
        _gas("R-404A", 97.604, 11.746, 1.008, -0.109, 1.1109),
        _gas("R-410A", 72.585, 12.733, 0.999, -0.103, 1.1675),
        _gas("R-454B", 62.614, 12.216, 1.067, -0.235, 1.1884),
        _gas("R-744", 44.0098, 14.666, 0.955, -0.048, 1.2908),
    )
}
NAMES = tuple(GASES)


def named(name: str) -> Gas:
    """The gas of that name.

    Parameters
    ----------
    name : str
        One of ``NAMES``: "air", "nitrogen", "water vapor", "helium", "R-22" ...

    Raises
    ------
    OutOfRange
        If there is no gas of that name here.
    """
    if name not in GASES:
        raise OutOfRange(f"There is no gas called {name!r} here; choose {', '.join(NAMES)}.")
    return GASES[name]


def viscosity(*, gas: Gas, temperature: float) -> float:
    """Viscosity of the thin gas, the same at every pressure below about 1 atm.

    Parameters
    ----------
    gas : Gas
        One of ``GASES``.
    temperature : float
        Temperature of the gas [K], scalar.

    Returns
    -------
    float
        Viscosity [Pa s], scalar.

    Raises
    ------
    OutOfRange
        If ``temperature`` is not within 233.15 K to 373.15 K.

    References
    ----------
    Module table; form of the curve fitted here.
    """
    _check(temperature)
    x = math.log(temperature / REFERENCE_TEMPERATURE)
    return gas.viscosity_at_20 * math.exp(x * (gas.exponent + gas.curvature * x))


def mean_speed(*, gas: Gas, temperature: float) -> float:
    """Mean speed of the molecules, sqrt(8 R T / (pi M)).

    Parameters
    ----------
    gas : Gas
        One of ``GASES``.
    temperature : float
        Temperature of the gas [K], scalar.

    Returns
    -------
    float
        Mean speed [m/s], scalar.

    Raises
    ------
    OutOfRange
        If ``temperature`` is not within 233.15 K to 373.15 K.

    References
    ----------
    [DUSHMAN-1962] chapter 1, Maxwell's distribution.
    """
    _check(temperature)
    return math.sqrt(8.0 * MOLAR_GAS_CONSTANT * temperature / (math.pi * gas.molar_mass))


@dataclass(frozen=True, kw_only=True)
class ThinGas:
    """A gas at one temperature, ready for the flow formulas.

    ``thermal_speed`` is sqrt(R T / M), the isothermal speed of sound; the
    mean and the most probable speed of the molecules follow from it.
    """

    viscosity: float  # Pa s
    thermal_speed: float  # m/s
    heat_capacity_ratio: float
    mean_speed: float = field(init=False)  # m/s
    probable_speed: float = field(init=False)  # m/s

    def __post_init__(self) -> None:
        """Work out the other speeds once; flow formulas ask for them very often."""
        object.__setattr__(self, "mean_speed", math.sqrt(8.0 / math.pi) * self.thermal_speed)
        object.__setattr__(self, "probable_speed", math.sqrt(2.0) * self.thermal_speed)


def thin_gas(*, gas: Gas, temperature: float) -> ThinGas:
    """The gas at that temperature, ready for the flow formulas.

    Parameters
    ----------
    gas : Gas
        One of ``GASES``.
    temperature : float
        Temperature of the gas [K], scalar.

    Raises
    ------
    OutOfRange
        If ``temperature`` is not within 233.15 K to 373.15 K.
    """
    return ThinGas(
        viscosity=viscosity(gas=gas, temperature=temperature),
        thermal_speed=math.sqrt(MOLAR_GAS_CONSTANT * temperature / gas.molar_mass),
        heat_capacity_ratio=gas.heat_capacity_ratio,
    )


def _check(temperature: float) -> None:
    if not LOWEST_TEMPERATURE <= temperature <= HIGHEST_TEMPERATURE:
        raise OutOfRange("Gas properties here hold from −40 °C to 100 °C (−40 °F to 212 °F).")
