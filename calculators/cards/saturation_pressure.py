"""How deep must the vacuum be for water to leave at this temperature?"""

from calculators.card import Answer, Card, Cite, Example, Output, Quantity, Step
from calculators.cards.common import TEMPERATURE_UNITS
from calculators.physics.constants import WATER_CRITICAL_TEMPERATURE, WATER_TRIPLE_TEMPERATURE
from calculators.physics.water import phase_at_temperature, saturation_pressure

COLDEST = 173.15  # K, -100 °C: colder than any part this guide is for


def compute(*, temperature: float) -> Answer:
    """Saturation pressure and phase of water at a temperature [K] -> [Pa]."""
    pressure = saturation_pressure(temperature=temperature)
    phase = phase_at_temperature(temperature=temperature)
    ice = phase == "ice"
    name = "ice" if ice else "water"
    curve = (
        Step(
            "At or below 0.01 °C the water is ice: the sublimation curve holds.",
            "p = pₜ · exp(θ⁻¹ · Σ aᵢ·θ^bᵢ),  θ = T / 273.16 K",
            "θ = {temperature:K;6} / 273.16 K = {theta:1;6}",
        )
        if ice
        else Step(
            "Above 0.01 °C the water is liquid: the boiling curve holds.",
            "p = p_c · exp((T_c/T) · Σ aᵢ·τ^bᵢ),  τ = 1 − T / 647.096 K",
            "τ = 1 − {temperature:K;6} / 647.096 K = {tau:1;6}",
        )
    )
    return Answer(
        outputs={"pressure": pressure, "phase": phase},
        headline="Ice sublimes below" if ice else "Water boils below",
        notes=(
            f"Pull below {{pressure}} and {name} at {{temperature}} turns to vapor; above it, it "
            "stays.",
            "If a sealed system levels off at this pressure, and no part of it is colder, there "
            "is still free water in it.",
        ),
        working=(
            Step(
                "The temperature in kelvin.",
                "T",
                "{temperature} = {temperature:K;6}",
            ),
            curve,
            Step("The pressure.", "p_sat(T)", "p = {pressure:Pa;5} = {pressure:micron;5}"),
        ),
        values={
            "theta": temperature / WATER_TRIPLE_TEMPERATURE,
            "tau": 1.0 - temperature / WATER_CRITICAL_TEMPERATURE,
        },
    )


CARD = Card(
    slug="saturation-pressure",
    title="Vapor pressure of water",
    question="How deep must I pull for water to leave?",
    lede="Type the temperature of the coldest part. Below the answer, water there turns to vapor.",
    inputs=(
        Quantity(
            name="temperature",
            label="Coldest part of the system",
            symbol="T",
            si_unit="K",
            us="°F",
            si="°C",
            units=TEMPERATURE_UNITS,
            minimum=COLDEST,
            maximum=WATER_CRITICAL_TEMPERATURE,
            default="68 °F",
        ),
    ),
    outputs=(
        Output(
            name="pressure",
            label="Vapor pressure",
            symbol="p_sat",
            si_unit="Pa",
            us="micron",
            si="Pa",
            figures=4,
        ),
        Output(name="phase", label="The water is", choices={"ice": "ice", "liquid": "liquid"}),
    ),
    compute=compute,
    primary="pressure",
    sources=(
        Cite("IAPWS-R14-08", "sublimation-pressure equation"),
        Cite("IAPWS-SR1-86", "equation (1)"),
    ),
    assumptions=(
        "Clean water. Water in oil, in a drier or on metal has a far lower vapor pressure.",
        "The coldest wet part sets the pressure of the whole sealed system.",
    ),
    cautions=("refrigerant",),
    examples=(
        Example(
            title="A dairy's chiller in a warm plant room",
            entries={"temperature": "68 °F"},
            shows="Free water at room temperature holds a sealed system near this reading.",
        ),
        Example(
            title="A bakery's freezer, still cold",
            entries={"temperature": "10 °F"},
            shows="Ice this cold needs a deeper vacuum and far more time: warm it first.",
        ),
    ),
)
