"""Units, as the guide to the SI prints their factors."""

from functools import partial

from calculators import units
from published_values.checks import Published, Subject

# NIST SP 811 (2008), appendix B.8 and B.9, factor to SI, digits as printed. "micron" is the
# thousandth of the Torr of 101325/760 Pa.
SP811 = {
    "atm": "1.01325e5",
    "bar": "1e5",
    "mbar": "1e2",
    "Torr": "1.333224e2",
    "mmHg": "1.333224e2",
    "inHg": "3.386389e3",
    "psia": "6.894757e3",
    "micron": "1.333224e-1",
    "mTorr": "1.333224e-1",
    "ft": "3.048e-1",
    "in": "2.54e-2",
    "gal": "3.785412e-3",
    "ft³": "2.831685e-2",
    "in³": "1.638706e-5",
    "CFM": "4.719474e-4",
    "lb": "4.535924e-1",
    "oz": "2.834952e-2",
    "Btu": "1.055056e3",
    "h": "3.6e3",
    "d": "8.64e4",
    "yr": "3.15576e7",
}

SUBJECT = Subject(
    title="Units",
    published=tuple(
        Published(
            what=f"1 {unit}",
            printed=printed,
            unit=units.SI[units.UNITS[unit].dimension],
            ours=partial(units.to_si, 1.0, unit),
            source="NIST-SP811",
            locator="appendix B.8" if unit != "yr" else "Julian year, definition of the IAU",
        )
        for unit, printed in SP811.items()
    ),
)
