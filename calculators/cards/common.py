"""Lists of units, and inputs, that several cards share."""

VACUUM_UNITS = (
    "micron",
    "mTorr",
    "Torr",
    "mmHg",
    "Pa",
    "hPa",
    "kPa",
    "mbar",
    "bar",
    "inHg",
    "psia",
    "atm",
)
BAROMETER_UNITS = ("inHg", "hPa", "mbar", "kPa", "mmHg", "Torr", "psia", "Pa", "atm")
EVERY_PRESSURE = (
    "micron",
    "mTorr",
    "Torr",
    "mmHg",
    "inHg",
    "inHg-vac",
    "Pa",
    "hPa",
    "kPa",
    "mbar",
    "bar",
    "psia",
    "psig",
    "atm",
)
TEMPERATURE_UNITS = ("°F", "°C", "K")
LENGTH_UNITS = ("ft", "in", "m", "cm", "mm")
BORE_UNITS = ("in", "mm", "cm")
VOLUME_UNITS = ("L", "ft³", "gal", "m³", "in³", "mL")
TIME_UNITS = ("min", "s", "h", "d")
FLOW_UNITS = ("CFM", "L/s", "L/min", "m³/h", "m³/s")
LEAK_UNITS = ("micron·L/s", "Pa·m³/s", "mbar·L/s", "Torr·L/s", "atm·cm³/s", "micron·CFM")
RISE_UNITS = ("micron/min", "micron/h", "Pa/s", "Pa/min", "mbar/min", "Torr/min")
MASS_UNITS = ("g", "oz", "lb", "kg", "mg")
