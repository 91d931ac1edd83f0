"""The barometer by altitude."""

from functools import partial

from calculators.physics.atmosphere import barometer_at, geopotential_height
from published_values.checks import AgainstLibrary, Published, Subject

# U.S. Standard Atmosphere 1976, table I: Z [m], P [mbar], digits as printed; rows from memory
# of the printed table.
TABLE_I = {
    0: "1013.25",
    1000: "898.76",
    2000: "795.01",
    3000: "701.21",
    5000: "540.48",
    10000: "265.00",
}
ROUNDED = "the table carries five figures of its own rounding"


def millibar(altitude: float) -> float:
    return barometer_at(altitude=float(altitude)) / 100


SUBJECT = Subject(
    title="Altitude and barometer",
    published=(
        *(
            Published(
                what=f"Barometer at {altitude:,} m",
                printed=printed,
                unit="mbar",
                ours=partial(millibar, altitude),
                source="USSA-1976",
                locator="table I",
                within=0.011 / float(printed),
                because=ROUNDED,
                from_memory=True,
            )
            for altitude, printed in TABLE_I.items()
        ),
        Published(
            what="Geopotential height of 11,019 m",
            printed="11.000",
            unit="km",
            ours=lambda: geopotential_height(altitude=11_019.0) / 1000,
            source="USSA-1976",
            locator="end of the troposphere",
        ),
    ),
    libraries=(
        *(
            AgainstLibrary(
                what=f"Barometer at {altitude:,} m".replace("-", "−"),
                unit="mbar",
                ours=partial(millibar, altitude),
                theirs=lambda ambiance, altitude=altitude: (
                    float(ambiance.Atmosphere(altitude).pressure[0]) / 100
                ),
                module="ambiance",
                within=2e-6,
            )
            for altitude in (-400.0, 0.0, 500.0, 1609.344, 3048.0, 8000.0, 11000.0)
        ),
        *(
            AgainstLibrary(
                what=f"Barometer at {altitude:,} m",
                unit="mbar",
                ours=partial(millibar, altitude),
                theirs=lambda fluids, altitude=altitude: fluids.ATMOSPHERE_1976(altitude).P / 100,
                module="fluids",
                within=2e-6,
            )
            for altitude in (0.0, 1500.0, 3000.0)
        ),
    ),
)
