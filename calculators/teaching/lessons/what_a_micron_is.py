"""Lesson: what a micron is."""

from calculators.teaching import wrong_roads
from calculators.teaching.lesson import Lesson, Objective, Worked
from calculators.teaching.question import Asked, Choice, Numeric, Option, Rank, WrongRoad


def _pressure(text: str) -> Asked:
    return Asked("convert", "absolute_pressure", {"pressure": text})


LESSON = Lesson(
    slug="what-a-micron-is",
    title="What a micron is",
    aim="Know what the number on a vacuum gauge counts, and from where.",
    objectives=(
        Objective("micron-meaning", "Say what a micron is and what it is counted from."),
        Objective("micron-convert", "Turn micron into Torr, pascal or millibar, and back."),
        Objective("micron-size", "Say how deep a vacuum is beside the pressure of open air."),
    ),
    worked=Worked(
        "convert",
        "What a village library's gauge says in other units",
        {"pressure": "850 micron"},
    ),
    questions=(
        Choice(
            name="counted-from",
            objective="micron-meaning",
            asks="A vacuum gauge shows a number in micron. From where does it count?",
            options=(
                Option(
                    key="empty",
                    text="Up from empty space, where there is no gas at all",
                    says="A micron is absolute pressure. Nothing at all is zero micron.",
                ),
                Option(
                    key="barometer",
                    text="Down from the air outside",
                    says=(
                        "That is how a vacuum dial counts. A reading in micron counts up from "
                        "nothing, so the weather does not change it."
                    ),
                ),
                Option(
                    key="standard",
                    text="Down from standard air at sea level",
                    says=(
                        "A reading in micron does not start from air at all. It counts up from "
                        "nothing."
                    ),
                ),
            ),
            right="empty",
        ),
        Numeric(
            name="micron-in-torr",
            objective="micron-convert",
            asks="A gauge reads {pressure}. How many Torr is that?",
            asked=_pressure("1,500 micron"),
            in_unit="Torr",
            because="A Torr is a thousand micron, so divide by a thousand.",
            wrong_roads=(
                WrongRoad(
                    name="micron times a thousand",
                    method=wrong_roads.times(1e6),
                    says=(
                        "You multiplied. A micron is smaller than a Torr, so there are fewer Torr: "
                        "divide by a thousand."
                    ),
                ),
                WrongRoad(
                    name="micron handed back",
                    method=wrong_roads.times(1e3),
                    says="That is still the number of micron. A thousand of them make one Torr.",
                ),
            ),
            hint="A thousand micron make one Torr.",
        ),
        Numeric(
            name="micron-in-pascal",
            objective="micron-convert",
            asks="The same gauge reads {pressure}. How many pascal is that?",
            asked=_pressure("300 micron"),
            in_unit="Pa",
            because="One micron is a little more than an eighth of a pascal.",
            wrong_roads=(
                WrongRoad(
                    name="micron taken as pascal",
                    method=wrong_roads.unit_taken_as("pressure", "Pa"),
                    says="A micron is not a pascal. It is a little more than an eighth of one.",
                ),
                WrongRoad(
                    name="Torr taken as millibar",
                    method=wrong_roads.times(100_000 / 133_322.4),
                    says="You took a Torr for a millibar. A Torr is a third more than that.",
                ),
            ),
            hint="The worked example shows how many pascal one micron is.",
        ),
        Choice(
            name="deepest",
            objective="micron-size",
            asks="Three gauges, three units. Which shows the deepest vacuum?",
            options=(
                Option(
                    key="micron",
                    text="{pressure}",
                    says="Put all three in micron and compare: this one is {pressure}.",
                    asked=_pressure("500 micron"),
                ),
                Option(
                    key="mbar",
                    text="{pressure}",
                    says="In micron it is {absolute_pressure:micron;3}. Compare them that way.",
                    asked=_pressure("1 mbar"),
                ),
                Option(
                    key="pascal",
                    text="{pressure}",
                    says=(
                        "In micron it is {absolute_pressure:micron;3}, the lowest of the three. "
                        "The lower the number, the deeper the vacuum."
                    ),
                    asked=_pressure("50 Pa"),
                ),
            ),
            right=Rank.SMALLEST,
            hint="Turn each one into micron. The lowest pressure is the deepest vacuum.",
        ),
        Numeric(
            name="air-in-micron",
            objective="micron-size",
            asks="Open air at sea level presses with {pressure}. How many micron is that?",
            asked=_pressure("1 atm"),
            because="A deep vacuum leaves less than a thousandth of that.",
            wrong_roads=(
                WrongRoad(
                    name="Torr for micron",
                    method=wrong_roads.times(1e-3),
                    says="That is the number of Torr. Each Torr is a thousand micron.",
                ),
            ),
            hint="Open air holds up a column of mercury of so many millimeters; one is a Torr.",
        ),
    ),
)
