"""Pressure of saturated refrigerant vapor: what stands behind a leak when the machine rests.

One curve per refrigerant, in the reduced form of Wagner's equation::

    ln(p / pc) = (Tc / T) (a t + b t^1.5 + c t^2.5),   t = 1 - T / Tc

fitted here to dew-point pressures computed with CoolProp 8.0.0 (its reference
equations; blends by its mixture model) from -40 degC to 65 degC, R-744 to its
critical point. Largest deviation from them: 0.22 %, for pure fluids and blends.
Tc and pc of the blends are constants of the fit. Molar mass and viscosity are
in :mod:`calculators.physics.gases`.
"""

import math
from dataclasses import dataclass

from calculators.errors import OutOfRange

LOWEST_TEMPERATURE = 233.0  # K, -40 degC and a little
HIGHEST_TEMPERATURE = 338.15  # K, 65 degC


@dataclass(frozen=True, kw_only=True)
class Saturation:
    """Constants of one saturation curve."""

    critical_temperature: float  # K
    critical_pressure: float  # Pa
    a: float
    b: float
    c: float


def _curve(kelvin: float, megapascal: float, a: float, b: float, c: float) -> Saturation:
    return Saturation(
        critical_temperature=kelvin, critical_pressure=megapascal * 1e6, a=a, b=b, c=c
    )


SATURATION = {
    "R-22": _curve(369.295, 4.99, -7.14636, 1.85227, -2.61000),
    "R-32": _curve(351.255, 5.782645, -7.50414, 1.91177, -2.46221),
    "R-134a": _curve(374.212, 4.059276, -7.76813, 2.24703, -3.60997),
    "R-290": _curve(369.890, 4.251165, -6.82811, 1.80079, -2.12810),
    "R-404A": _curve(345.200, 3.7290, -7.61374, 2.18420, -3.22715),
    "R-410A": _curve(344.494, 4.9012, -7.54283, 1.85728, -2.66888),
    "R-454B": _curve(351.250, 5.2670, -7.82813, 2.69581, -3.26470),
    "R-744": _curve(304.128, 7.377298, -7.03479, 1.57238, -2.43026),
}
NAMES = tuple(SATURATION)


def vapor_pressure(*, refrigerant: str, temperature: float) -> float:
    """Pressure of the vapor over its liquid; of a blend, that at the dew point.

    Parameters
    ----------
    refrigerant : str
        One of ``NAMES``.
    temperature : float
        Temperature of the liquid [K], scalar.

    Returns
    -------
    float
        Absolute pressure [Pa], scalar.

    Raises
    ------
    OutOfRange
        If there is no such refrigerant here, or ``temperature`` is not within
        -40 degC to 65 degC (R-744: to its critical point, 31.0 degC).

    References
    ----------
    [COOLPROP] dew-point pressures; form and fit in the module text.
    """
    if refrigerant not in SATURATION:
        raise OutOfRange(
            f"There is no refrigerant called {refrigerant!r} here; choose {', '.join(NAMES)}."
        )
    curve = SATURATION[refrigerant]
    if temperature >= curve.critical_temperature:
        critical = curve.critical_temperature - 273.15
        raise OutOfRange(
            f"{refrigerant} has no liquid above {critical:.1f} °C ({critical * 1.8 + 32:.0f} °F): "
            "enter the pressure at the leak instead."
        )
    if not LOWEST_TEMPERATURE <= temperature <= HIGHEST_TEMPERATURE:
        raise OutOfRange("Refrigerant pressures here hold from −40 °C to 65 °C (−40 °F to 149 °F).")
    t = 1.0 - temperature / curve.critical_temperature
    total = curve.a * t + curve.b * t**1.5 + curve.c * t**2.5
    return curve.critical_pressure * math.exp(total * curve.critical_temperature / temperature)
