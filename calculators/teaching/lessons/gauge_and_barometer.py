"""Lesson: absolute and gauge pressure, the barometer and altitude."""

from calculators.teaching import wrong_roads
from calculators.teaching.lesson import Lesson, Objective, Worked
from calculators.teaching.question import Asked, Choice, Numeric, Option, WrongRoad

LESSON = Lesson(
    slug="gauge-and-barometer",
    title="Absolute, gauge and the barometer",
    aim="Know which readings the weather and a mountain change, and which they don't.",
    objectives=(
        Objective("absolute-and-gauge", "Tell an absolute reading from a gauge reading."),
        Objective("altitude-barometer", "Find the barometer at the altitude you work at."),
        Objective("altitude-target", "Explain why a target in micron is the same everywhere."),
    ),
    worked=Worked("altitude", "A dairy in the hills", {"altitude": "6,500 ft"}),
    questions=(
        Numeric(
            name="barometer-up-high",
            objective="altitude-barometer",
            asks="You work on a roof at {altitude}. What does the barometer read there?",
            asked=Asked("altitude", "barometer", {"altitude": "5,000 ft"}),
            relative=0.01,
            because="Higher up there is less air on top of you, so it presses less.",
            wrong_roads=(
                WrongRoad(
                    name="sea level barometer",
                    method=wrong_roads.entered(altitude="0 ft"),
                    says=(
                        "That is the barometer at sea level. The altitude card gives it for "
                        "{altitude}."
                    ),
                ),
            ),
            hint="Use the altitude card.",
        ),
        Numeric(
            name="deepest-dial",
            objective="altitude-barometer",
            asks="How deep can a vacuum dial read at {altitude}, with the best pump there is?",
            asked=Asked("altitude", "deepest_dial_reading", {"altitude": "8,000 ft"}),
            relative=0.01,
            because="A dial counts down from the barometer, and nothing is below nothing.",
            wrong_roads=(
                WrongRoad(
                    name="sea level barometer",
                    method=wrong_roads.entered(altitude="0 ft"),
                    says="That holds at sea level. At {altitude} the dial starts lower.",
                ),
            ),
            hint="The dial can go down by as much as the barometer, and no more.",
        ),
        Choice(
            name="target-up-high",
            objective="altitude-target",
            asks="Your target at sea level is five hundred micron. What is it high in the hills?",
            options=(
                Option(
                    key="lower",
                    text="Lower, because the air is thinner",
                    says=(
                        "Thin air changes what a dial shows. Water inside the system does not "
                        "know how high you are."
                    ),
                ),
                Option(
                    key="same",
                    text="The same",
                    says="A micron counts up from nothing, and nothing is the same everywhere.",
                ),
                Option(
                    key="higher",
                    text="Higher, because the pump has less to do",
                    says=(
                        "The pump starts lower, but water boils by the pressure around it, and "
                        "that is the same number everywhere."
                    ),
                ),
            ),
            right="same",
        ),
        Numeric(
            name="gauge-zero",
            objective="absolute-and-gauge",
            asks=(
                "A pressure gauge reads {pressure} where the barometer stands at {barometer}. "
                "What is the absolute pressure?"
            ),
            asked=Asked(
                "convert", "absolute_pressure", {"pressure": "10 psig", "barometer": "25.84 inHg"}
            ),
            in_unit="psia",
            because="Add the barometer to a gauge reading to get absolute pressure.",
            wrong_roads=(
                WrongRoad(
                    name="gauge reading taken as absolute",
                    method=wrong_roads.unit_taken_as("pressure", "psia"),
                    says="That is the gauge reading. Add the barometer, which is there as well.",
                ),
                WrongRoad(
                    name="sea level barometer",
                    method=wrong_roads.entered(barometer="29.92 inHg"),
                    says="You added the barometer of sea level. Here it stands at {barometer}.",
                ),
            ),
            hint="Absolute is gauge plus barometer. Mind the units.",
        ),
        Choice(
            name="weather-report",
            objective="altitude-barometer",
            asks="The weather report gives a barometer. May you use it up in the hills?",
            options=(
                Option(
                    key="yes",
                    text="Yes, it is measured",
                    says=(
                        "The report is worked out for sea level, so that places can be compared. "
                        "It is too high for the hills."
                    ),
                ),
                Option(
                    key="no",
                    text="No, it is reduced to sea level",
                    says="Use a barometer at the site, or the altitude card.",
                ),
            ),
            right="no",
        ),
    ),
)
