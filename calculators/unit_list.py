"""The closed list of units: each name on screen, what it measures, what pint calls it."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Unit:
    """An accepted unit: name on screen, dimension, pint's name, what else people type.

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

UNIT_LIST = (
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
    Unit(
        "micron·CFM", "throughput", "torr / 1000 * foot**3 / minute", ("micron CFM", "micron cfm")
    ),
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
