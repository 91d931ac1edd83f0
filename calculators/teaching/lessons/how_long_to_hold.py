"""Lesson: how long to hold, by size of system and step of gauge."""

from calculators.teaching import wrong_roads
from calculators.teaching.lesson import Lesson, Objective, Worked
from calculators.teaching.question import Asked, Choice, Item, Numeric, Option, Order, WrongRoad


def _hold(volume: str, **entries: str) -> Asked:
    return Asked("hold-time", "hold_time", {"system": "other", "volume": volume, **entries})


LESSON = Lesson(
    slug="how-long-to-hold",
    title="How long to hold",
    aim="Know why a large system has to be held longer, and work out how long.",
    objectives=(
        Objective("hold-by-volume", "Work out the hold for a volume, a gauge and a leak."),
        Objective("gauge-step", "Say what the step of a gauge does to the hold."),
        Objective("ten-minutes", "Explain why ten minutes is not a rule for every system."),
    ),
    worked=Worked(
        "hold-time",
        "A dairy's ice bank",
        {"system": "other", "volume": "120 L", "leak_rate": "1 micron·L/s"},
        shows="Twelve times the volume of a small split takes twelve times as long.",
    ),
    questions=(
        Numeric(
            name="hold-for-split",
            objective="hold-by-volume",
            asks=(
                "A split holds {volume}. Your gauge has steps of {resolution}. A leak of "
                "{leak_rate} must show. How long do you hold?"
            ),
            asked=_hold("8 L", leak_rate="0.1 micron·L/s"),
            because="In that time such a leak moves the gauge by five steps.",
            wrong_roads=(
                WrongRoad(
                    name="one step",
                    method=wrong_roads.times(1 / 5),
                    says="That is for one step. One step may be chance. Wait for five.",
                ),
                WrongRoad(
                    name="gallons for liters",
                    method=wrong_roads.unit_taken_as("volume", "gal"),
                    says="You took liters for gallons. A gallon is almost four liters.",
                ),
            ),
            hint="Five steps, times the volume, divided by the leak.",
        ),
        Numeric(
            name="hold-for-chiller",
            objective="hold-by-volume",
            asks=(
                "The same gauge, and the same leak of {leak_rate} must show on a chiller of "
                "{volume}. How long do you hold?"
            ),
            asked=_hold("2 m³", leak_rate="0.1 micron·L/s"),
            because="The same leak has to fill so much more room before the gauge moves.",
            wrong_roads=(
                WrongRoad(
                    name="hold of the split",
                    method=wrong_roads.entered(volume="8 L"),
                    says="That was the split. The chiller holds far more.",
                ),
                WrongRoad(
                    name="one step",
                    method=wrong_roads.times(1 / 5),
                    says="That is for one step. Wait for five.",
                ),
            ),
            hint="Hold time grows in step with the volume.",
        ),
        Numeric(
            name="coarse-gauge",
            objective="gauge-step",
            asks=(
                "Back at the split of {volume}, with the same leak of {leak_rate}. But this gauge "
                "has steps of {resolution}. How long do you hold now?"
            ),
            asked=_hold("8 L", leak_rate="0.1 micron·L/s", resolution="10 micron"),
            because="A coarse gauge needs a bigger rise before it shows anything.",
            wrong_roads=(
                WrongRoad(
                    name="fine gauge",
                    method=wrong_roads.entered(resolution="1 micron"),
                    says="That is for the fine gauge. This one has coarser steps.",
                ),
            ),
            hint="Hold time grows in step with the gauge's step.",
        ),
        Order(
            name="shortest-hold",
            objective="hold-by-volume",
            asks="The same gauge, the same leak. Put the one with the shortest hold at the top.",
            items=(
                Item("chiller", "A chiller of {volume}", _hold("3 m³")),
                Item("cylinder", "A cylinder of {volume}", _hold("25 L")),
                Item("split", "A split of {volume}", _hold("7 L")),
                Item("rack", "A rack of {volume}", _hold("400 L")),
            ),
            because="Small systems show a leak soon. Large ones hide it for hours.",
            hint="Put them in order of volume.",
        ),
        Choice(
            name="ten-minutes-on-a-chiller",
            objective="ten-minutes",
            asks="Someone holds a large chiller for ten minutes and sees no rise. What is shown?",
            options=(
                Option(
                    key="tight",
                    text="It is tight",
                    says="In so short a time even a large leak would not move the gauge.",
                ),
                Option(
                    key="nothing-large",
                    text="Only that there is no very large leak",
                    says="Ten minutes says a lot about a small split and little about a chiller.",
                ),
                Option(
                    key="dry",
                    text="It is dry",
                    says="Water may need much longer to show in so much room.",
                ),
            ),
            right="nothing-large",
        ),
    ),
)
