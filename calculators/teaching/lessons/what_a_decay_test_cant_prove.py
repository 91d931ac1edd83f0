"""Lesson: what a decay test can't prove."""

from calculators.teaching import wrong_roads
from calculators.teaching.lesson import Lesson, Objective, Worked
from calculators.teaching.question import Asked, Choice, Numeric, Option, Rank, WrongRoad

FLAT = {
    "first_pressure": "300 micron",
    "last_pressure": "301 micron",
    "duration": "10 min",
    "refrigerant": "R-410A",
}


def _unseen(output: str, **entries: str) -> Asked:
    return Asked("leak-rate", output, {**FLAT, "volume": "10 L", **entries})


LESSON = Lesson(
    slug="what-a-decay-test-cant-prove",
    title="What a decay test can't prove",
    aim="Know what slips past a test that looks perfect, and what does find it.",
    objectives=(
        Objective("smallest-leak", "Work out the smallest leak a hold could have seen."),
        Objective("other-tests", "Name the tests that find what a vacuum can't."),
        Objective("say-what-it-shows", "Say in one sentence what your test has shown."),
    ),
    worked=Worked(
        "leak-rate",
        "A perfect hold on a bakery's cooler",
        {**FLAT, "volume": "15 L"},
        shows="The gauge stood still. Read the last lines: what could have hidden there?",
    ),
    questions=(
        Numeric(
            name="smallest-leak-seen",
            objective="smallest-leak",
            asks=(
                "You hold {volume} for {duration} with steps of {resolution}, and nothing moves. "
                "How small a leak could you have seen?"
            ),
            asked=_unseen("smallest_leak"),
            because="Five steps of the gauge, times the volume, divided by the time.",
            wrong_roads=(
                WrongRoad(
                    name="one step",
                    method=wrong_roads.times(1 / 5),
                    says="One step may be chance. It takes five to count as seen.",
                ),
                WrongRoad(
                    name="minutes not turned into seconds",
                    method=wrong_roads.times(60),
                    says="That is per minute. The unit says per second.",
                ),
            ),
            hint="Five steps times the volume, divided by the time in seconds.",
        ),
        Numeric(
            name="hidden-loss",
            objective="smallest-leak",
            asks="How much {refrigerant} could a leak just too small for that test lose in a year, "
            "at most?",
            asked=_unseen("smallest_greatest_loss"),
            relative=0.06,
            because="So a flat line on the gauge is not proof that nothing leaks.",
            wrong_roads=(
                WrongRoad(
                    name="least loss",
                    method=wrong_roads.other_output("smallest_least_loss"),
                    says="That is the least it could lose. The most was asked.",
                ),
            ),
            hint="The leak rate card turns the smallest leak into a loss.",
        ),
        Choice(
            name="sharpest-hold",
            objective="smallest-leak",
            asks="Which of these holds could see the smallest leak?",
            options=(
                Option(
                    key="short",
                    text="{volume} for {duration}",
                    says="It sees down to {smallest_leak}. A longer hold sees less.",
                    asked=_unseen("smallest_leak"),
                ),
                Option(
                    key="long",
                    text="{volume} for {duration}",
                    says="It sees down to {smallest_leak}: a small system and a long hold.",
                    asked=_unseen("smallest_leak", duration="1 h"),
                ),
                Option(
                    key="chiller",
                    text="{volume} for {duration}",
                    says="It sees only down to {smallest_leak}. So much room hides a lot.",
                    asked=_unseen("smallest_leak", volume="3 m³", duration="24 h"),
                ),
            ),
            right=Rank.SMALLEST,
            hint="Divide the volume by the time.",
        ),
        Choice(
            name="finer-test",
            objective="other-tests",
            asks="Which test finds leaks that a decay test can't see?",
            options=(
                Option(
                    key="longer",
                    text="The same vacuum for a few minutes more",
                    says="It helps a little. A vacuum can pull with one atmosphere, no more.",
                ),
                Option(
                    key="pressure",
                    text="Dry nitrogen under pressure, with soap or a detector",
                    says=(
                        "Pressure pushes many times harder than a vacuum pulls, and you see where "
                        "it comes out."
                    ),
                ),
                Option(
                    key="pump",
                    text="A deeper vacuum",
                    says="The air outside pushes no harder when the vacuum is deeper.",
                ),
            ),
            right="pressure",
        ),
        Choice(
            name="say-it",
            objective="say-what-it-shows",
            asks="The hold was flat and under the limit. Which sentence can you sign?",
            options=(
                Option(
                    key="no-leaks",
                    text="The system has no leaks",
                    says="No test shows that. It shows that no leak was larger than it could see.",
                ),
                Option(
                    key="honest",
                    text="It is dry, and no leak larger than this test could see",
                    says="Write down the volume, the time and the step of the gauge with it.",
                ),
                Option(
                    key="service",
                    text="It will hold its charge for ten years",
                    says="In service the pressure is the other way round, and far higher.",
                ),
            ),
            right="honest",
        ),
    ),
)
