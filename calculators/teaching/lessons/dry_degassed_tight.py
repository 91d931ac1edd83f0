"""Lesson: the three aims of an evacuation."""

from calculators.teaching import wrong_roads
from calculators.teaching.lesson import Lesson, Objective, Worked
from calculators.teaching.question import Asked, Choice, Item, Numeric, Option, Order, WrongRoad

LESSON = Lesson(
    slug="dry-degassed-tight",
    title="Dry, degassed, tight",
    aim="Know the three things an evacuation has to reach, and the order of the work.",
    objectives=(
        Objective("three-aims", "Name what dry, degassed and tight each mean."),
        Objective("order-of-work", "Put the steps of an evacuation in order."),
        Objective("recovery-is-not-drying", "Tell recovery apart from evacuation."),
    ),
    worked=Worked(
        "convert",
        "Where recovery stops and evacuation has not begun",
        {"pressure": "15 inHg-vac", "barometer": "29.92 inHg"},
        shows="A recovery level in inches is hundreds of times above a target in micron.",
    ),
    questions=(
        Choice(
            name="air-left-behind",
            objective="three-aims",
            asks="Air stays in a system that is dry and has no leak. Which aim was missed?",
            options=(
                Option(
                    key="dry",
                    text="Dry",
                    says="Dry is about water. Air is a gas that does not condense in the system.",
                ),
                Option(
                    key="degassed",
                    text="Degassed",
                    says="Air and nitrogen have to go out. They raise the pressure and do no work.",
                ),
                Option(
                    key="tight",
                    text="Tight",
                    says="Tight is about what comes back in. This air never left.",
                ),
            ),
            right="degassed",
        ),
        Choice(
            name="what-holds-later",
            objective="three-aims",
            asks="Which of the three does a pump that is still running hide from you?",
            options=(
                Option(
                    key="air-out",
                    text="That the air is out",
                    says="A deep reading away from the pump does show that the air is out.",
                ),
                Option(
                    key="tight",
                    text="That nothing comes back in",
                    says=(
                        "A running pump takes away what leaks in. You have to close the valve "
                        "and watch."
                    ),
                ),
                Option(
                    key="works",
                    text="That the pump works",
                    says="A pump that works is no secret while it runs. Think of what comes back.",
                ),
            ),
            right="tight",
        ),
        Order(
            name="order-of-the-job",
            objective="order-of-work",
            asks="Put the job in order, first step at the top.",
            items=(
                Item("recover", "Recover the refrigerant by the rules"),
                Item("pressure", "Test with dry nitrogen under pressure"),
                Item("prove", "Prove the gauge, the pump and the rig"),
                Item("pull", "Pull, and read the curve"),
                Item("isolate", "Isolate, hold and judge"),
                Item("charge", "Break the vacuum and charge"),
            ),
            because="Each step makes the next one worth doing.",
            hint="Big leaks are found under pressure, before any time is spent on a vacuum.",
        ),
        Numeric(
            name="recovery-level",
            objective="recovery-is-not-drying",
            asks=(
                "A recovery machine stops at {pressure}, with the barometer at {barometer}. "
                "What absolute pressure is left in the system?"
            ),
            asked=Asked(
                "convert",
                "absolute_pressure",
                {"pressure": "10 inHg-vac", "barometer": "29.92 inHg"},
            ),
            because=(
                "Recovery keeps refrigerant out of the air. It does not dry: water at room "
                "temperature stays a liquid at that pressure."
            ),
            wrong_roads=(
                WrongRoad(
                    name="vacuum reading taken as absolute",
                    method=wrong_roads.unit_taken_as("pressure", "inHg"),
                    says="Those inches count down from the barometer. Take them away from it.",
                ),
            ),
            hint="Take the reading away from the barometer.",
        ),
    ),
)
