"""Units at the boundary: one pint registry behind a closed list of names.

A reader's text never reaches pint, which reads "micron" as a length and
"cfm" as a centifermi. The list below says what each accepted name means;
pint does the conversion.
"""

import math
import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from calculators.errors import CalculatorError, UnitError


@dataclass(frozen=True)
class Unit:
    """An accepted unit: its name on screen, what it measures, what pint calls it.

    ``gauge`` is +1 for a reading above the barometer, -1 for a vacuum
    reading below it, 0 for an absolute unit.
    """

    name: str
    dimension: str
    pint: str
    aliases: tuple[str, ...] = ()
    gauge: int = 0


SI = {
    "pressure": "Pa",
    "temperature": "K",
    "temperature difference": "K difference",
    "length": "m",
    "area": "m²",
    "volume": "m³",
    "time": "s",
    "volume flow": "m³/s",
    "throughput": "Pa·m³/s",
    "rate of pressure rise": "Pa/s",
    "mass": "kg",
    "mass flow": "kg/s",
    "molar flow": "mol/s",
    "molar mass": "kg/mol",
    "viscosity": "Pa·s",
    "energy": "J",
    "power": "W",
    "speed": "m/s",
    "density": "kg/m³",
    "specific energy": "J/kg",
    "ratio": "1",
}

_LIST = (
    # Pressure. Torr, not mmHg, under the micron: 1 micron is one millitorr.
    Unit("micron", "pressure", "torr / 1000", ("microns", "micron Hg", "µmHg", "μmHg", "umHg")),
    Unit("mTorr", "pressure", "torr / 1000", ("millitorr", "mtorr")),
    Unit("Torr", "pressure", "torr", ("torr",)),
    Unit("mmHg", "pressure", "mmHg", ("mm Hg",)),
    Unit("inHg", "pressure", "inHg", ("in Hg", "inHg abs", "inHga")),
    Unit("inHg-vac", "pressure", "inHg", ("inHg vac", "inHgvac", "inHg vacuum", "inHgV"), -1),
    Unit("Pa", "pressure", "pascal", ("pascal", "pascals")),
    Unit("hPa", "pressure", "hectopascal"),
    Unit("kPa", "pressure", "kilopascal"),
    Unit("MPa", "pressure", "megapascal"),
    Unit("mbar", "pressure", "millibar", ("millibar",)),
    Unit("bar", "pressure", "bar", ("bara", "bar abs")),
    Unit("psia", "pressure", "psi"),
    Unit("psig", "pressure", "psi", (), +1),
    Unit("barg", "pressure", "bar", ("bar g", "bar(g)"), +1),
    Unit("atm", "pressure", "standard_atmosphere", ("atmosphere",)),
    # Temperature, and differences of temperature.
    Unit("°F", "temperature", "degF", ("F", "degF", "deg F", "fahrenheit")),
    Unit("°C", "temperature", "degC", ("C", "degC", "deg C", "celsius")),
    Unit("K", "temperature", "kelvin", ("kelvin",)),
    Unit("Δ°F", "temperature difference", "delta_degF", ("F difference",)),
    Unit("Δ°C", "temperature difference", "kelvin", ("C difference",)),
    Unit("K difference", "temperature difference", "kelvin", ("ΔK",)),
    # Length, area, volume.
    Unit("in", "length", "inch", ("inch", "inches", '"')),
    Unit("ft", "length", "foot", ("feet", "foot", "'")),
    Unit("mm", "length", "millimeter"),
    Unit("cm", "length", "centimeter"),
    Unit("m", "length", "meter", ("meter", "meters")),
    Unit("km", "length", "kilometer"),
    Unit("µm", "length", "micrometer", ("μm", "um")),
    Unit("m²", "area", "meter**2", ("m2",)),
    Unit("cm²", "area", "centimeter**2", ("cm2",)),
    Unit("mm²", "area", "millimeter**2", ("mm2",)),
    Unit("in²", "area", "inch**2", ("in2", "sq in")),
    Unit("ft²", "area", "foot**2", ("ft2", "sq ft")),
    Unit("L", "volume", "liter", ("l", "liter", "liters", "litre", "litres")),
    Unit("mL", "volume", "milliliter", ("ml", "cm³", "cm3", "cc")),
    Unit("m³", "volume", "meter**3", ("m3",)),
    Unit("ft³", "volume", "foot**3", ("ft3", "cu ft", "cubic feet")),
    Unit("in³", "volume", "inch**3", ("in3", "cu in")),
    Unit("gal", "volume", "US_liquid_gallon", ("gallon", "gallons", "US gal")),
    # Time.
    Unit("s", "time", "second", ("sec", "second", "seconds")),
    Unit("min", "time", "minute", ("mins", "minute", "minutes")),
    Unit("h", "time", "hour", ("hr", "hrs", "hour", "hours")),
    Unit("d", "time", "day", ("day", "days")),
    Unit("yr", "time", "julian_year", ("year", "years")),
    # Volume flow: pumping speed and conductance. "CFM" is the trade's label.
    Unit("CFM", "volume flow", "foot**3 / minute", ("cfm", "ft³/min", "ft3/min")),
    Unit("L/s", "volume flow", "liter / second", ("l/s",)),
    Unit("L/min", "volume flow", "liter / minute", ("l/min", "lpm")),
    Unit("m³/h", "volume flow", "meter**3 / hour", ("m3/h",)),
    Unit("m³/s", "volume flow", "meter**3 / second", ("m3/s",)),
    # Throughput and leak rate, as pressure times volume per time.
    Unit("Pa·m³/s", "throughput", "pascal * meter**3 / second", ("Pa m3/s", "Pa·m3/s", "Pa*m3/s")),
    Unit("mbar·L/s", "throughput", "millibar * liter / second", ("mbar L/s", "mbar l/s")),
    Unit("Torr·L/s", "throughput", "torr * liter / second", ("Torr L/s", "torr L/s")),
    Unit(
        "micron·L/s",
        "throughput",
        "torr / 1000 * liter / second",
        ("micron L/s", "mTorr·L/s", "mTorr L/s"),
    ),
    Unit("micron·CFM", "throughput", "torr / 1000 * foot**3 / minute", ("micron CFM", "micron cfm")),
    Unit(
        "atm·cm³/s",
        "throughput",
        "standard_atmosphere * centimeter**3 / second",
        ("atm cc/s", "atm·cc/s", "std cc/s", "atm cm3/s"),
    ),
    # Rate of pressure rise.
    Unit("micron/min", "rate of pressure rise", "torr / 1000 / minute", ("microns/min",)),
    Unit("micron/h", "rate of pressure rise", "torr / 1000 / hour", ("micron/hr", "microns/h")),
    Unit("micron/s", "rate of pressure rise", "torr / 1000 / second", ("microns/s",)),
    Unit("Torr/min", "rate of pressure rise", "torr / minute"),
    Unit("Pa/s", "rate of pressure rise", "pascal / second"),
    Unit("Pa/min", "rate of pressure rise", "pascal / minute"),
    Unit("Pa/h", "rate of pressure rise", "pascal / hour"),
    Unit("mbar/min", "rate of pressure rise", "millibar / minute"),
    Unit("kPa/h", "rate of pressure rise", "kilopascal / hour"),
    Unit("psi/h", "rate of pressure rise", "psi / hour", ("psi/hr",)),
    # Mass, mass flow, molar flow.
    Unit("g", "mass", "gram", ("gram", "grams")),
    Unit("mg", "mass", "milligram"),
    Unit("kg", "mass", "kilogram"),
    Unit("oz", "mass", "ounce", ("ounce", "ounces")),
    Unit("lb", "mass", "pound", ("lbs", "pound", "pounds")),
    Unit("kg/s", "mass flow", "kilogram / second"),
    Unit("g/s", "mass flow", "gram / second"),
    Unit("g/min", "mass flow", "gram / minute"),
    Unit("mg/min", "mass flow", "milligram / minute"),
    Unit("g/h", "mass flow", "gram / hour"),
    Unit("oz/h", "mass flow", "ounce / hour"),
    Unit("g/yr", "mass flow", "gram / julian_year", ("g/year", "grams/year")),
    Unit("kg/yr", "mass flow", "kilogram / julian_year", ("kg/year",)),
    Unit("oz/yr", "mass flow", "ounce / julian_year", ("oz/year",)),
    Unit("lb/yr", "mass flow", "pound / julian_year", ("lb/year",)),
    Unit("mol/s", "molar flow", "mole / second"),
    Unit("kg/mol", "molar mass", "kilogram / mole"),
    Unit("g/mol", "molar mass", "gram / mole"),
    # The rest that the physics shows.
    Unit("Pa·s", "viscosity", "pascal * second"),
    Unit("µPa·s", "viscosity", "micropascal * second", ("μPa·s", "uPa·s")),
    Unit("J", "energy", "joule"),
    Unit("kJ", "energy", "kilojoule"),
    Unit("Btu", "energy", "Btu", ("BTU", "btu")),
    Unit("W·h", "energy", "watt * hour", ("Wh",)),
    Unit("kJ/kg", "specific energy", "kilojoule / kilogram"),
    Unit("J/kg", "specific energy", "joule / kilogram"),
    Unit("Btu/lb", "specific energy", "Btu / pound", ("BTU/lb",)),
    Unit("W", "power", "watt"),
    Unit("kW", "power", "kilowatt"),
    Unit("Btu/h", "power", "Btu / hour", ("BTU/h", "BTU/hr")),
    Unit("m/s", "speed", "meter / second"),
    Unit("ft/s", "speed", "foot / second"),
    Unit("kg/m³", "density", "kilogram / meter**3"),
    Unit("g/m³", "density", "gram / meter**3"),
    Unit("1", "ratio", "dimensionless"),
    Unit("%", "ratio", "percent"),
)

UNITS = {unit.name: unit for unit in _LIST}
_BY_ALIAS = {alias: unit for unit in _LIST for alias in (unit.name, *unit.aliases)}
_BY_LOWER = {
    alias.lower(): unit
    for alias, unit in _BY_ALIAS.items()
    # Case carries meaning here: mPa and MPa differ; so such names must match as written.
    if alias.lower() not in {"mpa", "k difference"}
}
_AMBIGUOUS = {
    "psi": "say psia for absolute pressure or psig for a gauge reading.",
    "mpa": "write MPa for megapascal.",
}

_NUMBER = re.compile(
    r"""\s*(?P<number>
        [+\-−–]?
        (?: \d{1,3}(?:[, \u2009\u202f]\d{3})+(?:\.\d*)? | \d+(?:\.\d*)? | \.\d+ )
        (?: \s*(?:[eE]|[x×·*]\s*10\^?)\s*[+\-−]?\d+ )?
        | [+\-−–]?\s*(?:nan|inf(?:inity)?)\b
        )
        \s*(?P<unit>[^\W\d_].*?|[°%"'].*?)?\s*$""",
    re.VERBOSE | re.IGNORECASE,
)
_FRACTION = re.compile(
    r"""\s*(?P<whole>\d+[\s-])?\s*(?P<part>\d+/\d+)\s*(?P<unit>[^\W\d_].*?|["'].*?)?\s*$"""
)


def find(name: str) -> Unit:
    """Look up an accepted unit by its name or an alias.

    Parameters
    ----------
    name : str
        The unit as a person types it.

    Returns
    -------
    Unit
        The accepted unit.

    Raises
    ------
    UnitError
        If the name is not on the list, with what to write instead where
        the name is one that people confuse.
    """
    name = " ".join(name.split())
    unit = _BY_ALIAS.get(name) or _BY_LOWER.get(name.lower())
    if unit is None:
        raise UnitError(_AMBIGUOUS.get(name.lower()) or f"the unit “{name[:30]}” is not known here.")
    return unit


@cache
def _registry():
    """Make the one pint registry, when a conversion first needs it."""
    import pint

    return pint.UnitRegistry()


@cache
def _line(name: str) -> tuple[float, float]:
    """Slope and offset that take a number in this unit to SI, asked of pint."""
    unit = UNITS[name]
    base = UNITS[SI[unit.dimension]].pint
    quantity = _registry().Quantity
    if unit.dimension == "temperature":
        step = unit.pint.replace("deg", "delta_deg")
        offset = quantity(0.0, unit.pint).to(base).magnitude
        return quantity(1.0, step).to(base).magnitude, offset
    return (1.0 * _registry().parse_expression(unit.pint)).to(base).magnitude, 0.0


def to_si(number: float, unit: str, *, barometer: float | None = None) -> float:
    """Convert a number in an accepted unit to SI.

    Parameters
    ----------
    number : float
        The number, in ``unit``.
    unit : str
        Name of an accepted unit.
    barometer : float, optional
        Pressure of the open air [Pa]; needed by gauge and vacuum readings.

    Returns
    -------
    float
        The value in the SI unit of its dimension; gauge readings come back
        as absolute pressure.

    Raises
    ------
    UnitError
        If a gauge or vacuum reading comes without a barometer.
    """
    slope, offset = _line(unit)
    gauge = UNITS[unit].gauge
    if not gauge:
        return number * slope + offset
    if barometer is None:
        raise UnitError(
            f"{unit} is measured from the barometer: enter an absolute pressure here, "
            "or convert the reading first."
        )
    return barometer + gauge * number * slope


def from_si(value: float, unit: str, *, barometer: float | None = None) -> float:
    """Convert an SI value to a number in an accepted unit; see :func:`to_si`."""
    slope, offset = _line(unit)
    gauge = UNITS[unit].gauge
    if not gauge:
        return (value - offset) / slope
    if barometer is None:
        raise UnitError(f"{unit} is measured from the barometer.")
    return gauge * (value - barometer) / slope


def read(text: str, *, bare: str) -> tuple[float, str, str]:
    """Read "500 micron", "1,500", "3/8 in" or "-10 °F" as a number and a unit.

    Parameters
    ----------
    text : str
        What a person typed.
    bare : str
        Name of the unit that a number on its own is taken in.

    Returns
    -------
    tuple
        The number, the name of its unit, and the number as it was typed.

    Raises
    ------
    CalculatorError
        If there is no number to read, or it is not finite.
    UnitError
        If the unit is not on the list.
    """
    shown = text.strip()[:40]
    match = _FRACTION.match(text)
    if match:
        whole = (match["whole"] or "").strip(" -")
        try:
            number = float((int(whole) if whole else 0) + Fraction(match["part"]))
        except ZeroDivisionError:
            raise CalculatorError(f"“{shown}” divides by zero: type a number such as 3/8.") from None
        typed = f"{match['whole'] or ''}{match['part']}".strip()
    else:
        match = _NUMBER.match(text)
        if not match:
            raise CalculatorError(f"“{shown}” is not a number: type one such as 500 or 0.5.")
        typed = match["number"].strip()
        plain = re.sub(r"[, \u2009\u202f]", "", typed).replace("−", "-").replace("–", "-")
        number = float(re.sub(r"[x×·*]10\^?", "e", plain))
    if not math.isfinite(number):
        raise CalculatorError(f"“{shown}” is not a finite number: type one such as 500 or 0.5.")
    unit = find(match["unit"]).name if match["unit"] else bare
    return number, unit, typed
