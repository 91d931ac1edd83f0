"""Lesson: why a dial can't show a deep vacuum."""

from calculators.teaching import wrong_roads
from calculators.teaching.lesson import Lesson, Objective, Worked
from calculators.teaching.question import Asked, Choice, Numeric, Option, WrongRoad

SEA_LEVEL = {"barometer": "29.92 inHg"}

LESSON = Lesson(
    slug="why-a-dial-cant-show-it",
    title="Why a dial can't show it",
    aim="Know why a compound dial cannot tell you that a system is dry.",
    objectives=(
        Objective("dial-inch", "Say how many micron lie between two marks of a vacuum dial."),
        Objective("dial-reading", "Turn a vacuum dial's reading into absolute pressure."),
        Objective("dial-limit", "Explain why a dial at the end of its scale proves nothing."),
    ),
    worked=Worked(
        "convert",
        "A dial at a bakery, two inches short of the barometer",
        {"pressure": "27.92 inHg-vac", **SEA_LEVEL},
        shows="The needle looks nearly done. The pressure is nowhere near it.",
    ),
    questions=(
        Numeric(
            name="inch-in-micron",
            objective="dial-inch",
            asks="The marks of a vacuum dial are {pressure} apart. How many micron is that?",
            asked=Asked("convert", "absolute_pressure", {"pressure": "1 inHg", **SEA_LEVEL}),
            in_unit="micron",
            because="The whole last part of an evacuation lies inside one such mark.",
            wrong_roads=(
                WrongRoad(
                    name="a millimeter for an inch",
                    method=wrong_roads.times(1 / 25.4),
                    says=(
                        "That is one millimeter of mercury. An inch is more than twenty-five "
                        "times as long."
                    ),
                ),
            ),
            hint="A millimeter of mercury is a thousand micron. How many millimeters in an inch?",
        ),
        Numeric(
            name="dial-to-absolute",
            objective="dial-reading",
            asks=(
                "A dial shows {pressure}, and the barometer stands at {barometer}. "
                "What is the absolute pressure?"
            ),
            asked=Asked("convert", "absolute_pressure", {"pressure": "29 inHg-vac", **SEA_LEVEL}),
            because="The dial counts down from the barometer, so take its reading off.",
            wrong_roads=(
                WrongRoad(
                    name="vacuum reading taken as absolute",
                    method=wrong_roads.unit_taken_as("pressure", "inHg"),
                    says=(
                        "You took the dial's reading as absolute. It counts down from the "
                        "barometer: take {pressure} away from {barometer}."
                    ),
                ),
            ),
            hint="Take the dial's reading away from the barometer. Then turn inches into micron.",
        ),
        Numeric(
            name="needle-travel",
            objective="dial-inch",
            asks=(
                "A pull goes from 'nearly there' to 'done': the pressure falls by {pressure}. "
                "How far does the needle of a dial move, in inches of mercury?"
            ),
            asked=Asked("convert", "absolute_pressure", {"pressure": "1,000 micron", **SEA_LEVEL}),
            in_unit="inHg",
            because="That is less than the width of the needle.",
            wrong_roads=(
                WrongRoad(
                    name="a millimeter for an inch",
                    method=wrong_roads.times(25.4),
                    says="That is in millimeters. One inch is more than twenty-five of them.",
                ),
            ),
            hint="One inch of mercury is the answer to the first question.",
        ),
        Choice(
            name="needle-at-the-stop",
            objective="dial-limit",
            asks="The dial's needle rests at the end of its scale. What do you know?",
            options=(
                Option(
                    key="dry",
                    text="The system is dry",
                    says=(
                        "The needle would stand there with water still boiling inside. "
                        "It cannot show the difference."
                    ),
                ),
                Option(
                    key="tight",
                    text="The system is tight",
                    says="Tight or not, a running pump would hold the needle there.",
                ),
                Option(
                    key="air-out",
                    text="Most of the air is out, and nothing more",
                    says=(
                        "The last of the air and all of the water lie inside the width of the "
                        "needle. You need a gauge that reads micron."
                    ),
                ),
            ),
            right="air-out",
        ),
    ),
)
