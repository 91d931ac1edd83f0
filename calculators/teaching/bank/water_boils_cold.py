"""Problems: water boils cold when the pressure is low."""

from calculators.teaching import wrong_roads
from calculators.teaching.bank.places import A_SPLIT, A_SYSTEM, A_WALK_IN
from calculators.teaching.draw import Between, Round, Times, case, total_of
from calculators.teaching.problem import Template
from calculators.teaching.question import Asked, Choice, Item, Numeric, Option, Order, WrongRoad


def _vapor_pressure(temperature: str) -> Asked:
    return Asked("saturation-pressure", "pressure", {"temperature": temperature})


CELSIUS = WrongRoad(
    name="degrees taken as Celsius",
    method=wrong_roads.unit_taken_as("temperature", "°C"),
    says="You read the degrees as Celsius. They are Fahrenheit: {temperature}.",
)
OPEN_AIR = WrongRoad(
    name="boiling point in open air",
    method=wrong_roads.entered(pressure="1 atm"),
    says="That is where water boils in open air. Here the pressure is {pressure}.",
)

TEMPLATES = (
    Template(
        level=1,
        kind="number",
        situation="The pull on $place has reached {pressure}.",
        draws={"place": A_SYSTEM, "p": Round("6000", "90000"), "tenth": Times("p", "0.1")},
        question=Numeric(
            name="boils-at-reading",
            objective="boil-by-pressure",
            asks="At what temperature does water boil there?",
            asked=Asked("boiling-point", "temperature", {"pressure": "$p micron"}),
            absolute=0.6,
            because="Any part of the system that is warmer than that lets its water go.",
            wrong_roads=(
                OPEN_AIR,
                WrongRoad(
                    name="pressure taken ten times too low",
                    method=wrong_roads.entered(pressure="$tenth micron"),
                    says="Check the noughts: that is the answer for a tenth of {pressure}.",
                ),
            ),
            hint="Use the boiling point card.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation="A gauge set to pascal reads {pressure} on $place.",
        draws={"place": A_SYSTEM, "p": Round("800", "9000")},
        question=Numeric(
            name="boils-at-pascal",
            objective="boil-by-pressure",
            asks="At what temperature does water boil there?",
            asked=Asked("boiling-point", "temperature", {"pressure": "$p Pa"}),
            absolute=0.6,
            because="Any part of the system that is warmer than that lets its water go.",
            wrong_roads=(
                WrongRoad(
                    name="pascal taken as micron",
                    method=wrong_roads.unit_taken_as("pressure", "micron"),
                    says="You took pascal for micron. A pascal is seven and a half of them.",
                ),
                OPEN_AIR,
            ),
            hint="The boiling point card takes pascal too. Choose the unit.",
        ),
    ),
    Template(
        level=1,
        kind="number",
        situation="The coldest part of $place is at {temperature}. The room is at $room °F.",
        draws={
            "place": A_WALK_IN,
            "t": Between("35", "58", "1"),
            "more": Between("12", "25", "1"),
            "room": total_of("t", "more"),
        },
        question=Numeric(
            name="depth-for-the-coldest",
            objective="depth-by-temperature",
            asks="Below which reading does water boil everywhere in the system?",
            asked=_vapor_pressure("$t °F"),
            because="Above that reading, water in the coldest part stays a liquid.",
            wrong_roads=(
                CELSIUS,
                WrongRoad(
                    name="room temperature",
                    method=wrong_roads.entered(temperature="$room °F"),
                    says="That holds for the room. The coldest part decides: {temperature}.",
                ),
            ),
            hint="Use the vapor pressure card with the temperature of the coldest part.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation="The coil of $place is at {temperature}, the coldest part there is.",
        draws={"place": A_SYSTEM, "t": Between("2", "30", "1")},
        question=Numeric(
            name="depth-in-celsius",
            objective="depth-by-temperature",
            asks="Below which reading does water boil in it?",
            asked=_vapor_pressure("$t °C"),
            because="Above that reading, water in the coldest part stays a liquid.",
            wrong_roads=(
                WrongRoad(
                    name="degrees taken as Fahrenheit",
                    method=wrong_roads.unit_taken_as("temperature", "°F"),
                    says="You read the degrees as Fahrenheit. They are Celsius: {temperature}.",
                ),
                WrongRoad(
                    name="a tenth of the reading",
                    method=wrong_roads.times(0.1),
                    says="Ten times too low. Check the noughts.",
                ),
            ),
            hint="Use the vapor pressure card. Choose the unit of the temperature.",
        ),
    ),
    Template(
        level=2,
        kind="choice",
        situation=(
            "The coldest part of $place is at {system_temperature}. The gauge holds at {pressure}."
        ),
        draws={
            "place": A_SYSTEM,
            "which": case(
                {"p": Between("4800", "6500", "100"), "t": Between("50", "80", "1")},
                {"p": Between("10000", "20000", "500"), "t": Between("36", "48", "1")},
                {"p": Between("500", "900", "50"), "t": Between("15", "28", "1")},
            ),
        },
        question=Choice(
            name="boils-stays-or-sublimes",
            objective="warm-dries",
            asks="What does water in that part do?",
            options=(
                Option(
                    key="boils",
                    text="It boils off",
                    says="At {pressure} the limit is {temperature}. Compare that with the part.",
                ),
                Option(
                    key="stays",
                    text="It stays",
                    says="At {pressure} it leaves only where it is warmer than {temperature}.",
                ),
                Option(
                    key="sublimes",
                    text="It turns to vapor as ice",
                    says="Ice does that where it is warmer than {temperature} at {pressure}.",
                ),
            ),
            right=Asked(
                "boiling-point",
                "behavior",
                {"pressure": "$p micron", "system_temperature": "$t °F"},
            ),
            hint="Is the part below freezing? Then ask the boiling point card.",
        ),
    ),
    Template(
        level=1,
        kind="order",
        situation="Four systems wait for the same pump.",
        draws={
            "which": case(
                {
                    "a": Between("34", "40", "1"), "b": Between("50", "58", "1"),
                    "c": Between("66", "74", "1"), "d": Between("84", "96", "1"),
                },
                {
                    "c": Between("34", "40", "1"), "d": Between("50", "58", "1"),
                    "b": Between("66", "74", "1"), "a": Between("84", "96", "1"),
                },
                {
                    "d": Between("34", "40", "1"), "a": Between("50", "58", "1"),
                    "b": Between("66", "74", "1"), "c": Between("84", "96", "1"),
                },
            ),
        },
        question=Order(
            name="deepest-needed-first",
            objective="depth-by-temperature",
            asks="Put the one that needs the deepest vacuum to dry at the top.",
            items=(
                Item("walk-in", "A walk-in cooler at {temperature}", _vapor_pressure("$a °F")),
                Item("garage", "A split in a garage at {temperature}", _vapor_pressure("$b °F")),
                Item("library", "A library's split at {temperature}", _vapor_pressure("$c °F")),
                Item("laundry", "A laundry's chiller at {temperature}", _vapor_pressure("$d °F")),
            ),
            because="The colder the water, the deeper you have to pull before it boils.",
            hint="Cold water holds on harder.",
        ),
    ),
    Template(
        level=3,
        kind="number",
        situation=(
            "The coil of $place was at $cold °F. You blow warm air over it until it is at "
            "{temperature}."
        ),
        draws={
            "place": A_SPLIT,
            "cold": Between("36", "50", "1"),
            "more": Between("20", "40", "1"),
            "t": total_of("cold", "more"),
        },
        question=Numeric(
            name="warmed-coil",
            objective="warm-dries",
            asks="Up to which reading does its water boil now?",
            asked=_vapor_pressure("$t °F"),
            because="Warmth lifts the reading at which water leaves. The pump need not go so deep.",
            wrong_roads=(
                WrongRoad(
                    name="before warming",
                    method=wrong_roads.entered(temperature="$cold °F"),
                    says="That was before you warmed it. Now it is at {temperature}.",
                ),
                CELSIUS,
            ),
            hint="Use the vapor pressure card with the new temperature.",
        ),
    ),
)  # fmt: skip
