"""How high am I, and what does that do to the barometer?"""

from calculators.card import Answer, Card, Cite, Example, Output, Quantity, Step
from calculators.physics.atmosphere import (
    HIGHEST_ALTITUDE,
    LOWEST_ALTITUDE,
    barometer_at,
    geopotential_height,
)
from calculators.physics.constants import STANDARD_ATMOSPHERE
from calculators.physics.water import boiling_temperature


def compute(*, altitude: float) -> Answer:
    """Barometer, boiling point of open water and deepest vacuum-dial reading [Pa, K, Pa]."""
    barometer = barometer_at(altitude=altitude)
    boiling = boiling_temperature(pressure=barometer)
    return Answer(
        outputs={
            "barometer": barometer,
            "boiling_point": boiling,
            "deepest_dial_reading": barometer,
        },
        headline="The barometer there reads about",
        notes=(
            "A vacuum dial there cannot go past {barometer:inHg;.2} of vacuum, however good the "
            "pump: it measures down from the barometer, and the barometer is {lost:inHg;.2} "
            "{lower} than at sea level.",
            "Your target in micron does not change. 500 micron is 500 micron at any altitude: "
            "a vacuum gauge that reads absolute pressure does not know how high you are.",
            "Weather moves the true barometer by up to 3 % either way. The figure in a weather "
            "report is reduced to sea level: do not use it here.",
        ),
        working=(
            Step(
                "The height, measured so that gravity is the same at every step.",
                "H = r·Z / (r + Z),  r = 6,356,766 m",
                "Z = {altitude:m;6},  H = {geopotential:m;6}",
            ),
            Step(
                "The air thins upward and cools by 6.5 K per kilometer.",
                "p = 101,325 Pa · (1 − 0.0065 H / 288.15)^5.25588",
                "p = 101,325 Pa · (1 − 0.0065 × {geopotential:m;6} / 288.15 m)^5.25588 "
                "= {barometer:Pa;6}",
            ),
            Step(
                "Open water boils where its vapor pressure equals that.",
                "p_sat(T) = p",
                "T = {boiling_point:K;5} = {boiling_point:°C;.2} = {boiling_point:°F;.2}",
            ),
        ),
        values={
            "geopotential": geopotential_height(altitude=altitude),
            "lost": abs(STANDARD_ATMOSPHERE - barometer),
            "lower": "lower" if altitude >= 0 else "higher",
        },
    )


CARD = Card(
    slug="altitude",
    title="Altitude and barometer",
    question="What is the barometer at this altitude?",
    lede="Thin air changes what a vacuum dial can show. It does not change your target in micron.",
    inputs=(
        Quantity(
            name="altitude",
            label="Altitude",
            symbol="Z",
            hint="above sea level",
            si_unit="m",
            us="ft",
            si="m",
            units=("ft", "m", "km"),
            minimum=LOWEST_ALTITUDE,
            maximum=HIGHEST_ALTITUDE,
            default="5,280 ft",
        ),
    ),
    outputs=(
        Output(
            name="barometer",
            label="Barometer",
            symbol="p",
            si_unit="Pa",
            us="inHg",
            si="hPa",
            figures=4,
        ),
        Output(
            name="boiling_point",
            label="Open water boils at",
            symbol="T",
            si_unit="K",
            us="°F",
            si="°C",
            decimals=1,
        ),
        Output(
            name="deepest_dial_reading",
            label="Deepest a vacuum dial can show",
            symbol="p_vac",
            si_unit="Pa",
            us="inHg",
            si="kPa",
            figures=4,
        ),
    ),
    compute=compute,
    primary="barometer",
    sources=(
        Cite("USSA-1976", "equations (18) and (33a), table 4"),
        Cite("IAPWS-SR1-86", "equation (1)"),
    ),
    assumptions=(
        "The standard atmosphere: 15 °C and 1,013.25 hPa at sea level, no weather.",
        "The boiling point is that of clean water in the open.",
    ),
    cautions=("roof",),
    examples=(
        Example(
            title="A rooftop at 5,280 ft",
            entries={"altitude": "5,280 ft"},
            shows=(
                "A compound dial that stops at 24.6 inHg there is at the end of what it can show."
            ),
        ),
        Example(title="A dairy in the hills", entries={"altitude": "1,200 m"}),
    ),
)
