"""Problems: the vacuum dial, its inches, and where it ends."""

from calculators.teaching import wrong_roads
from calculators.teaching.bank.places import A_SYSTEM
from calculators.teaching.draw import Between, Times, case, total_of
from calculators.teaching.problem import Template
from calculators.teaching.question import Asked, Choice, Numeric, Option, WrongRoad

TEMPLATES = (
    Template(
        level=1,
        kind="number",
        situation="On the dial at $place the needle covers {pressure} of its scale.",
        draws={"place": A_SYSTEM, "p": Between("0.1", "2", "0.1")},
        question=Numeric(
            name="needle-width",
            objective="dial-inch",
            asks="How many micron hide under the needle?",
            asked=Asked("convert", "absolute_pressure", {"pressure": "$p inHg"}),
            in_unit="micron",
            because="One inch of mercury is over twenty-five thousand micron.",
            wrong_roads=(
                WrongRoad(
                    name="inches taken as millimeters",
                    method=wrong_roads.unit_taken_as("pressure", "mmHg"),
                    says="You took inches for millimeters. An inch is over twenty-five of them.",
                ),
                WrongRoad(
                    name="ten times too low",
                    method=wrong_roads.times(0.1),
                    says="Ten times too low. Check the noughts.",
                ),
            ),
            hint="An inch is over twenty-five millimeters, each of a thousand micron.",
        ),
    ),
    Template(
        level=1,
        kind="number",
        situation="The dial on $place reads {pressure}. The barometer there stands at {barometer}.",
        draws={
            "place": A_SYSTEM,
            "p": Between("16", "22", "0.5"),
            "b": Between("24", "28.5", "0.1"),
        },
        question=Numeric(
            name="dial-to-absolute",
            objective="dial-reading",
            asks="What is the absolute pressure in the system?",
            asked=Asked(
                "convert",
                "absolute_pressure",
                {"pressure": "$p inHg-vac", "barometer": "$b inHg"},
            ),
            because="A dial counts down from the barometer: barometer minus reading is left.",
            wrong_roads=(
                WrongRoad(
                    name="vacuum reading taken as absolute",
                    method=wrong_roads.unit_taken_as("pressure", "inHg"),
                    says="Those inches count down from the barometer. Take them away from it.",
                ),
                WrongRoad(
                    name="sea level barometer",
                    method=wrong_roads.entered(barometer="29.92 inHg"),
                    says="You used the barometer of sea level. Here it stands at {barometer}.",
                ),
            ),
            hint="Barometer minus dial reading.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "The dial on $place stands $gap inches short of the barometer: {pressure} where the "
            "barometer reads {barometer}. Somebody says that this is good enough."
        ),
        draws={
            "place": A_SYSTEM,
            "b": Between("28.4", "30.4", "0.1"),
            "gap": Between("0.1", "0.9", "0.1"),
            "p": total_of("b", "-gap"),
        },
        question=Numeric(
            name="short-of-the-barometer",
            objective="dial-reading",
            asks="How many micron are left in the system?",
            asked=Asked(
                "convert",
                "absolute_pressure",
                {"pressure": "$p inHg-vac", "barometer": "$b inHg"},
            ),
            in_unit="micron",
            because="The last inch of a dial holds all that matters for drying.",
            wrong_roads=(
                WrongRoad(
                    name="an inch taken as a thousand micron",
                    method=wrong_roads.times(1 / 25.4),
                    says="You took an inch for a millimeter. An inch is over twenty-five of them.",
                ),
                WrongRoad(
                    name="vacuum reading taken as absolute",
                    method=wrong_roads.unit_taken_as("pressure", "inHg"),
                    says="That is what is gone. What is left is the barometer minus the reading.",
                ),
            ),
            hint="First the inches that are left, then micron.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "A micron gauge and a dial hang on $place, where the barometer stands at {barometer}. "
            "The true absolute pressure is {pressure}."
        ),
        draws={
            "place": A_SYSTEM,
            "p": Between("60", "200", "10"),
            "b": Between("24", "28.4", "0.1"),
        },
        question=Numeric(
            name="dial-would-show",
            objective="dial-reading",
            asks="What does a perfect vacuum dial show?",
            asked=Asked("convert", "dial_reading", {"pressure": "$p Torr", "barometer": "$b inHg"}),
            relative=0.01,
            because="A dial shows how far the pressure lies below the barometer.",
            wrong_roads=(
                WrongRoad(
                    name="absolute pressure handed back",
                    method=wrong_roads.input_itself("pressure"),
                    says="That is what is left. A dial shows what is gone.",
                ),
                WrongRoad(
                    name="sea level barometer",
                    method=wrong_roads.entered(barometer="29.92 inHg"),
                    says="You counted from the barometer of sea level. Here it is {barometer}.",
                ),
            ),
            hint="Put the absolute pressure in inches, then take it away from the barometer.",
        ),
    ),
    Template(
        level=2,
        kind="choice",
        situation=(
            "The dial on $place seems to be at the end of its scale. In truth {pressure} is left, "
            "and the coldest part of the system is at {system_temperature}."
        ),
        draws={
            "place": A_SYSTEM,
            "which": case(
                {"p": Between("0.2", "0.3", "0.02"), "t": Between("55", "85", "1")},
                {"p": Between("0.7", "1.2", "0.05"), "t": Between("36", "58", "1")},
            ),
        },
        question=Choice(
            name="end-of-the-dial",
            objective="dial-limit",
            asks="What does water in that part do?",
            options=(
                Option(
                    key="boils",
                    text="It boils off",
                    says="At {pressure} water boils at {temperature}. Compare that with the part.",
                ),
                Option(
                    key="stays",
                    text="It stays a liquid",
                    says=(
                        "At {pressure} water boils at {temperature}. A dial can't tell you on "
                        "which side of that you are."
                    ),
                ),
                Option(
                    key="sublimes",
                    text="It turns to vapor as ice",
                    says="There is no ice at that pressure: it is far above the triple point.",
                ),
            ),
            right=Asked(
                "boiling-point",
                "behavior",
                {"pressure": "$p inHg", "system_temperature": "$t °F"},
            ),
            hint="Ask the boiling point card for the pressure that is left.",
        ),
    ),
    Template(
        level=3,
        kind="choice",
        situation=(
            "A dial can be read to $half inch of mercury at best. The target on $place is "
            "$t micron."
        ),
        draws={
            "place": A_SYSTEM,
            "half": Between("0.2", "0.5", "0.1"),
            "t": Between("300", "800", "50"),
            "shown": Times("half", "25400"),
        },
        question=Choice(
            name="dial-beside-target",
            objective="dial-limit",
            asks="The needle stands at the very end. What has that shown?",
            options=(
                Option(
                    key="target",
                    text="That $t micron is reached",
                    says="The needle would look the same at twenty times that pressure.",
                ),
                Option(
                    key="bound",
                    text="That less than about $shown micron is left, and no more than that",
                    says="That is all a dial can know. The target is far below what it can show.",
                ),
                Option(
                    key="dry",
                    text="That the system is dry",
                    says="At pressures that a dial can't tell from nothing, water can stay liquid.",
                ),
            ),
            right="bound",
            hint="How many micron are in the part of an inch that can still be read?",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation="A pull on $place goes on until the last {pressure} are gone.",
        draws={"place": A_SYSTEM, "p": Between("1500", "20000", "500")},
        question=Numeric(
            name="how-far-the-needle-moves",
            objective="dial-inch",
            asks="By how many inches does the needle of a dial move in all that time?",
            asked=Asked("convert", "absolute_pressure", {"pressure": "$p micron"}),
            in_unit="inHg",
            because="All that matters for drying happens within the width of a needle.",
            wrong_roads=(
                WrongRoad(
                    name="a thousand micron to the inch",
                    method=wrong_roads.times(25.4),
                    says="A thousand micron make a millimeter, not an inch.",
                ),
                WrongRoad(
                    name="ten times too far",
                    method=wrong_roads.times(10),
                    says="Ten times too far. Check the noughts.",
                ),
            ),
            hint="An inch of mercury is over twenty-five thousand micron.",
        ),
    ),
)
