"""Lesson: reading the shape of a decay test."""

from calculators.teaching import wrong_roads
from calculators.teaching.lesson import Lesson, Objective, Worked
from calculators.teaching.question import Asked, Choice, Numeric, Option, WrongRoad

LEVELS_OFF = "0 280, 2 890, 4 1230, 6 1420, 8 1530, 10 1590, 12 1622, 14 1640"
CLIMBS = "0 250, 3 281, 6 312, 9 342, 12 373, 15 404"
HOLDS = "0 210, 5 212, 10 213, 15 213"
TOO_SOON = "0 300, 1 301"

SHAPES = {
    "pass": ("It holds", "Flat, for long enough, under the limit. That is what you want to see."),
    "leak": ("A leak", "A straight climb is gas that keeps coming in at the same rate."),
    "moisture": (
        "Water, or gas out of oil",
        "A climb that bends and levels off is gas from inside: it stops by itself.",
    ),
    "undecided": (
        "This test can't decide",
        "The readings leave it open. It takes a longer hold or a finer gauge.",
    ),
}


def _judge(name: str, asks: str, readings: str, *keys: str, **entries: str) -> Choice:
    asked = Asked("decay", "verdict", {"readings": readings, **entries})
    options = tuple(
        Option(key=key, text=SHAPES[key][0], says=SHAPES[key][1])
        for key in keys or ("pass", "leak", "moisture")
    )
    return Choice(
        name=name,
        objective="decay-shape",
        asks=asks,
        options=options,
        right=asked,
        hint="Draw it: time to the right, pressure up. Flat, straight or bent?",
    )


LESSON = Lesson(
    slug="reading-the-decay",
    title="The decay test: reading the shape",
    aim="Tell a leak from water by the shape of the curve, and know when a test can't decide.",
    objectives=(
        Objective("decay-shape", "Judge a decay test by the shape of its curve."),
        Objective("rate-of-rise", "Work out the rate of rise from two readings."),
        Objective("first-minutes", "Say why the first minutes after isolating don't count."),
    ),
    worked=Worked(
        "decay",
        "A bakery's cooler after the rain got in",
        {"readings": LEVELS_OFF, "volume": "12 L", "temperature": "66 °F"},
        shows="It climbs fast at first and then slows down on its own.",
    ),
    questions=(
        _judge(
            "shape-bends",
            "After isolating, the gauge climbs fast, then slower and slower, and stays above the "
            "limit. What is it?",
            LEVELS_OFF,
        ),
        _judge(
            "shape-straight",
            "The gauge climbs by the same amount every three minutes and does not slow down. "
            "What is it?",
            CLIMBS,
            volume="8 L",
        ),
        _judge(
            "shape-too-soon",
            "A big chiller is watched for one minute. The gauge moves by one step. What is it?",
            TOO_SOON,
            "pass",
            "leak",
            "undecided",
            volume="3,000 L",
        ),
        Numeric(
            name="rise-per-minute",
            objective="rate-of-rise",
            asks=(
                "In a quarter of an hour the gauge rises by {rise}, to {final_pressure}. What is "
                "the mean rate of rise?"
            ),
            asked=Asked("decay", "rate_of_rise", {"readings": "0 250, 15 404", "volume": "8 L"}),
            relative=0.02,
            because="Take the difference of the readings and divide by the time.",
            wrong_roads=(
                WrongRoad(
                    name="last reading over time",
                    method=wrong_roads.scaled_by("final_pressure", "rise"),
                    says="You divided the last reading. Divide the rise: last minus first.",
                ),
                WrongRoad(
                    name="per hour",
                    method=wrong_roads.times(60),
                    says="That is for an hour. It says micron per minute.",
                ),
                WrongRoad(
                    name="rise not divided",
                    method=wrong_roads.times(15),
                    says="That is the whole rise. Divide it by the minutes.",
                ),
            ),
            hint="Last reading minus first reading, divided by the minutes between.",
        ),
        Choice(
            name="first-minute",
            objective="first-minutes",
            asks="In the first minute after you close the valve the gauge jumps. Then it stands "
            "still. What was that?",
            options=(
                Option(
                    key="leak",
                    text="A leak that closed again",
                    says="Leaks don't close. This one stopped because pressures had evened out.",
                ),
                Option(
                    key="even",
                    text="The pressure evening out inside the system",
                    says=(
                        "While the pump ran, the far end stood higher than the gauge. Shut off, "
                        "they meet. Start the test after that."
                    ),
                ),
                Option(
                    key="water",
                    text="Water boiling",
                    says="Water would go on, and level off much later.",
                ),
            ),
            right="even",
        ),
    ),
)
