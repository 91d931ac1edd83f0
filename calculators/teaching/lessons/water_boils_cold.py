"""Lesson: water boils cold when the pressure is low."""

from calculators.teaching import wrong_roads
from calculators.teaching.lesson import Lesson, Objective, Worked
from calculators.teaching.question import Asked, Choice, Item, Numeric, Option, Order, WrongRoad


def _vapor_pressure(temperature: str) -> Asked:
    return Asked("saturation-pressure", "pressure", {"temperature": temperature})


LESSON = Lesson(
    slug="water-boils-cold",
    title="Water boils cold",
    aim="See why a vacuum dries: it lets water boil at the temperature of the room.",
    objectives=(
        Objective("boil-by-pressure", "Find the temperature at which water boils at a reading."),
        Objective("depth-by-temperature", "Find how deep to pull for the temperature you have."),
        Objective("warm-dries", "Explain why a warm system dries sooner than a cold one."),
    ),
    worked=Worked(
        "boiling-point",
        "A bakery's cooler at room temperature",
        {"pressure": "12,000 micron", "system_temperature": "68 °F"},
        shows="The room is warm enough to boil the water out at this reading.",
    ),
    questions=(
        Numeric(
            name="boils-at",
            objective="boil-by-pressure",
            asks="The pull has reached {pressure}. At what temperature does water boil there?",
            asked=Asked("boiling-point", "temperature", {"pressure": "20,000 micron"}),
            absolute=0.6,
            because="That is about room temperature, so water in the system starts to boil.",
            wrong_roads=(
                WrongRoad(
                    name="boiling point in open air",
                    method=wrong_roads.entered(pressure="1 atm"),
                    says=(
                        "That is where water boils in open air. At {pressure} there is far less "
                        "pressure to hold it back."
                    ),
                ),
                WrongRoad(
                    name="pressure taken ten times too low",
                    method=wrong_roads.entered(pressure="2,000 micron"),
                    says="Check the noughts: that is the answer for a tenth of {pressure}.",
                ),
            ),
            hint="Use the boiling point card.",
        ),
        Numeric(
            name="pull-below",
            objective="depth-by-temperature",
            asks="The coldest part of the system is at {temperature}. Below which reading does "
            "water boil there?",
            asked=_vapor_pressure("50 °F"),
            because="Above that reading, water in the coldest part stays a liquid.",
            wrong_roads=(
                WrongRoad(
                    name="degrees taken as Celsius",
                    method=wrong_roads.unit_taken_as("temperature", "°C"),
                    says="You read the degrees as Celsius. They are Fahrenheit: {temperature}.",
                ),
                WrongRoad(
                    name="room temperature",
                    method=wrong_roads.entered(temperature="68 °F"),
                    says="That holds for a warm room. The coldest part decides: {temperature}.",
                ),
            ),
            hint="Use the vapor pressure card with the temperature of the coldest part.",
        ),
        Choice(
            name="boils-or-stays",
            objective="warm-dries",
            asks=(
                "A system stands outside at {system_temperature} and the gauge holds at "
                "{pressure}. What does liquid water in it do?"
            ),
            options=(
                Option(
                    key="boils",
                    text="It boils off",
                    says=(
                        "The system is too cold for that. Water boils at {temperature} there, "
                        "and it is only {system_temperature} outside."
                    ),
                ),
                Option(
                    key="stays",
                    text="It stays",
                    says="At {pressure} water boils at {temperature}. Warm it, or pull deeper.",
                ),
                Option(
                    key="sublimes",
                    text="It turns to vapor as ice",
                    says="It is not cold enough for ice. Water there is a liquid.",
                ),
            ),
            right=Asked(
                "boiling-point",
                "behavior",
                {"pressure": "10,000 micron", "system_temperature": "45 °F"},
            ),
            hint="Compare the boiling point at the reading with the temperature outside.",
        ),
        Order(
            name="first-to-boil",
            objective="warm-dries",
            asks="You pull all these from the same pressure down. Put the one that needs the "
            "deepest vacuum at the top.",
            items=(
                Item("walk-in", "A walk-in box at {temperature}", _vapor_pressure("36 °F")),
                Item("garage", "A split in a garage at {temperature}", _vapor_pressure("55 °F")),
                Item("bakery", "A cooler in a bakery at {temperature}", _vapor_pressure("85 °F")),
                Item("library", "A library's split at {temperature}", _vapor_pressure("70 °F")),
            ),
            because="The colder the water, the deeper you have to pull before it boils.",
            hint="Cold water holds on harder.",
        ),
    ),
)
