"""Lesson: from micron a minute to grams of refrigerant a year."""

from calculators.teaching import wrong_roads
from calculators.teaching.lesson import Lesson, Objective, Worked
from calculators.teaching.question import Asked, Choice, Numeric, Option, Rank, WrongRoad

RISE = {
    "first_pressure": "260 micron",
    "last_pressure": "290 micron",
    "duration": "15 min",
    "volume": "9 L",
    "refrigerant": "R-32",
}


def _leak(output: str, **entries: str) -> Asked:
    return Asked("leak-rate", output, {**RISE, **entries})


LESSON = Lesson(
    slug="from-microns-to-grams",
    title="Leaks: from micron a minute to grams a year",
    aim="Turn a rise on the gauge into the size of a leak, and into refrigerant lost.",
    objectives=(
        Objective("rise-to-leak", "Work out a leak from a rise, a time and a volume."),
        Objective("volume-matters", "Say why a rise means nothing without the volume."),
        Objective("leak-to-grams", "Give the loss in service as a range, and say why it is wide."),
    ),
    worked=Worked(
        "leak-rate",
        "A steady rise on a village library's split",
        {**RISE, "volume": "7 L", "refrigerant": "R-410A"},
        shows="The rise looks small. Over a year it is not.",
    ),
    questions=(
        Numeric(
            name="leak-from-rise",
            objective="rise-to-leak",
            asks=(
                "The gauge rises from {first_pressure} to {last_pressure} in {duration}. The "
                "system holds {volume}. How big is the leak?"
            ),
            asked=_leak("leak_rate"),
            because="Rise times volume, divided by time.",
            wrong_roads=(
                WrongRoad(
                    name="minutes not turned into seconds",
                    method=wrong_roads.times(60),
                    says="That is per minute. The unit says per second: divide by sixty.",
                ),
                WrongRoad(
                    name="last reading instead of the rise",
                    method=wrong_roads.entered(first_pressure="0 micron"),
                    says="You used the last reading. The leak made only the rise.",
                ),
                WrongRoad(
                    name="gallons for liters",
                    method=wrong_roads.unit_taken_as("volume", "gal"),
                    says="You took liters for gallons. A gallon is almost four liters.",
                ),
            ),
            hint="Rise times volume, divided by the time in seconds.",
        ),
        Choice(
            name="largest-leak",
            objective="volume-matters",
            asks="Three systems rise by the same amount in the same time. Which leaks most?",
            options=(
                Option(
                    key="small",
                    text="A split of {volume}",
                    says="Its leak is {leak_rate}. In a small room a small leak shows.",
                    asked=_leak("leak_rate", volume="6 L"),
                ),
                Option(
                    key="middle",
                    text="A walk-in of {volume}",
                    says="Its leak is {leak_rate}. There is a larger room among the three.",
                    asked=_leak("leak_rate", volume="30 L"),
                ),
                Option(
                    key="large",
                    text="A chiller of {volume}",
                    says="Its leak is {leak_rate}. It takes a lot of air to lift so much room.",
                    asked=_leak("leak_rate", volume="2 m³"),
                ),
            ),
            right=Rank.LARGEST,
            hint="How much air had to come in?",
        ),
        Numeric(
            name="greatest-loss",
            objective="leak-to-grams",
            asks=(
                "That first leak, in a system with {refrigerant}. How much could it lose in a "
                "year of service, at most?"
            ),
            asked=_leak("greatest_loss"),
            relative=0.06,
            because=(
                "In service the refrigerant presses far harder than the air did in your test."
            ),
            wrong_roads=(
                WrongRoad(
                    name="least loss",
                    method=wrong_roads.other_output("least_loss"),
                    says="That is the least it could lose. The most was asked.",
                ),
                WrongRoad(
                    name="the air that came in",
                    method=wrong_roads.other_output("air_mass_flow"),
                    says="That is the air in a year of vacuum. In service, refrigerant goes out.",
                ),
            ),
            hint="It is the large answer of the leak rate card.",
        ),
        Choice(
            name="why-a-range",
            objective="leak-to-grams",
            asks="The card gives the loss as a range, and the range is wide. Why?",
            options=(
                Option(
                    key="gauge",
                    text="Because the gauge is not exact",
                    says="That makes it a little wider. The main reason is another.",
                ),
                Option(
                    key="hole",
                    text="Because nobody knows the shape of the hole",
                    says=(
                        "Through one wide hole pressure drives far more than through many fine "
                        "ones. The same rise can be either."
                    ),
                ),
                Option(
                    key="weather",
                    text="Because the weather changes",
                    says="It changes the pressure outside by a few percent only.",
                ),
            ),
            right="hole",
        ),
    ),
)
