"""At what temperature does water leave at this reading?"""

from calculators.card import Answer, Card, Cite, Example, Output, Quantity, Step
from calculators.cards.common import TEMPERATURE_UNITS, VACUUM_UNITS
from calculators.physics.constants import (
    WATER_CRITICAL_PRESSURE,
    WATER_CRITICAL_TEMPERATURE,
    WATER_TRIPLE_PRESSURE,
)
from calculators.physics.water import (
    LOWEST_TEMPERATURE,
    boiling_temperature,
    phase_at_pressure,
    phase_at_temperature,
    saturation_pressure,
)

LOWEST_PRESSURE = 1e-3  # Pa; below what any gauge on this work reads


def compute(*, pressure: float, system_temperature: float | None) -> Answer:
    """Saturation temperature and phase of water at a pressure [Pa] -> [K]."""
    temperature = boiling_temperature(pressure=pressure)
    phase = phase_at_pressure(pressure=pressure)
    ice = phase == "ice"
    notes = [_why(ice)]
    values: dict[str, float | str] = {"triple": WATER_TRIPLE_PRESSURE}
    behavior = None
    if system_temperature is not None:
        behavior = _behavior(pressure, system_temperature)
        there = saturation_pressure(temperature=system_temperature)
        values |= {"there": there, "margin": abs(system_temperature - temperature)}
        notes.insert(0, _WHAT_IT_DOES[behavior])
    return Answer(
        outputs={"temperature": temperature, "phase": phase, "behavior": behavior},
        headline="Ice sublimes at" if ice else "Water boils at",
        notes=tuple(notes),
        working=(
            Step("The reading in pascals.", "p", "{pressure} = {pressure:Pa;6}"),
            _curve(ice),
            Step(
                "Solved for the temperature.",
                "p_sat(T) = p",
                "T = {temperature:K;5} = {temperature:°C;.2} = {temperature:°F;.2}",
            ),
        ),
        values=values,
    )


def _behavior(pressure: float, system_temperature: float) -> str:
    if saturation_pressure(temperature=system_temperature) <= pressure:
        return "stays"
    ice = phase_at_temperature(temperature=system_temperature) == "ice"
    return "sublimes" if ice else "boils"


_WHAT_IT_DOES = {
    "boils": (
        "Your system is {margin:Δ°F|Δ°C;2} warmer than that: liquid water there boils off, as "
        "fast as heat reaches it and the hose can carry the vapor. At {system_temperature} its "
        "vapor pressure is {there:micron|Pa;4}."
    ),
    "sublimes": (
        "Your system is below freezing but {margin:Δ°F|Δ°C;2} warmer than that: ice there "
        "sublimes, slowly. At {system_temperature} its vapor pressure is {there:micron|Pa;4}. "
        "Warm it."
    ),
    "stays": (
        "Water at {system_temperature} stays where it is: its vapor pressure there is "
        "{there:micron|Pa;4}, not above your reading. Go deeper or warm it."
    ),
}


def _why(ice: bool) -> str:
    if ice:
        return (
            "At or below {triple:micron;4} ({triple:Pa;4}) no liquid is left: ice turns straight "
            "into vapor. It sublimes."
        )
    return (
        "Above {triple:micron;4} ({triple:Pa;4}) water is liquid and boils. Keep pulling through "
        "here gently: this is where most of the water leaves."
    )


def _curve(ice: bool) -> Step:
    if ice:
        return Step(
            "At or below the triple point, {triple:Pa;6}, the water is ice: the sublimation curve "
            "holds.",
            "ln(p/pₜ) = θ⁻¹ · Σ aᵢ·θ^bᵢ,  θ = T / 273.16 K,  i = 1…3",
            "ln({pressure:Pa;6} / {triple:Pa;6}) = θ⁻¹ · Σ aᵢ·θ^bᵢ",
        )
    return Step(
        "Above the triple point, {triple:Pa;6}, the water is liquid: the boiling curve holds.",
        "ln(p/p_c) = (T_c/T) · Σ aᵢ·τ^bᵢ,  τ = 1 − T / 647.096 K,  i = 1…6",
        "ln({pressure:Pa;6} / 22.064 MPa) = (647.096 K / T) · Σ aᵢ·τ^bᵢ",
    )


CARD = Card(
    slug="boiling-point",
    title="Boiling point",
    question="At what temperature does water boil at this reading?",
    lede=(
        "Type what the gauge shows. Water leaves the system where the system is warmer than "
        "the answer."
    ),
    inputs=(
        Quantity(
            name="pressure",
            label="Gauge reading",
            symbol="p",
            hint="absolute",
            si_unit="Pa",
            us="micron",
            si="Pa",
            units=VACUUM_UNITS,
            minimum=LOWEST_PRESSURE,
            maximum=WATER_CRITICAL_PRESSURE,
            default="500 micron",
        ),
        Quantity(
            name="system_temperature",
            label="Coldest part of the system",
            symbol="T_sys",
            hint="if you know it",
            si_unit="K",
            us="°F",
            si="°C",
            units=TEMPERATURE_UNITS,
            minimum=LOWEST_TEMPERATURE,
            maximum=WATER_CRITICAL_TEMPERATURE,
            required=False,
        ),
    ),
    outputs=(
        Output(
            name="temperature",
            label="Water leaves at",
            symbol="T",
            si_unit="K",
            us="°F",
            si="°C",
            decimals=1,
        ),
        Output(
            name="phase",
            label="The water is",
            choices={"ice": "ice", "liquid": "liquid"},
        ),
        Output(
            name="behavior",
            label="Water in your system",
            choices={"boils": "boils off", "sublimes": "sublimes", "stays": "stays"},
        ),
    ),
    compute=compute,
    primary="temperature",
    sources=(
        Cite("IAPWS-R14-08", "sublimation-pressure equation"),
        Cite("IAPWS-SR1-86", "equation (1)"),
    ),
    assumptions=(
        "The reading is the pressure of water vapor at the wet spot. With the pump running, the "
        "pressure there is higher than at the gauge.",
        "The water is clean. Water dissolved in oil or held by a drier leaves at a higher "
        "temperature.",
    ),
    cautions=("refrigerant", "electricity"),
    examples=(
        Example(
            title="500 micron on a village library's split system",
            entries={"pressure": "500 micron", "system_temperature": "50 °F"},
            shows="Any water in a system at 50 °F is leaving as vapor at this reading.",
        ),
        Example(
            title="A bakery's walk-in cooler that stalls",
            entries={"pressure": "4,600 micron", "system_temperature": "36 °F"},
            shows="A stall just above the triple point is water boiling in the cold box.",
        ),
        Example(
            title="Ice in a freezer line",
            entries={"pressure": "2,500 micron", "system_temperature": "5 °F"},
            shows="Ice that cold does not leave at this reading: warm it.",
        ),
    ),
)
