"""Lesson: below the triple point there is only ice."""

from calculators.teaching import wrong_roads
from calculators.teaching.lesson import Lesson, Objective, Worked
from calculators.teaching.question import Asked, Choice, Numeric, Option, WrongRoad

LESSON = Lesson(
    slug="below-the-triple-point",
    title="Below the triple point: ice",
    aim="Know when water in a system freezes, how it shows, and what to do.",
    objectives=(
        Objective("triple-point", "Say at which reading water can no longer be a liquid."),
        Objective("ice-leaves", "Find whether ice of a given temperature leaves at a reading."),
        Objective("freezing-signs", "Read a stall near the triple point and act on it."),
    ),
    worked=Worked(
        "boiling-point",
        "Ice in a bakery's freezer line",
        {"pressure": "1,200 micron", "system_temperature": "14 °F"},
        shows="Ice can still leave at this reading, but it has to be fed with heat.",
    ),
    questions=(
        Numeric(
            name="triple-point",
            objective="triple-point",
            asks="Ice, water and vapor meet at {temperature}. At which reading is that?",
            asked=Asked("saturation-pressure", "pressure", {"temperature": "0.01 °C"}),
            because="That is the triple point of water. Below it there is only ice and vapor.",
            wrong_roads=(
                WrongRoad(
                    name="degrees taken as Fahrenheit",
                    method=wrong_roads.unit_taken_as("temperature", "°F"),
                    says="You read the degrees as Fahrenheit. They are Celsius, where ice melts.",
                ),
            ),
            hint="Use the vapor pressure card at that temperature.",
        ),
        Numeric(
            name="ice-at-target",
            objective="ice-leaves",
            asks="The gauge holds at {pressure}. At what temperature is ice in balance with that?",
            asked=Asked("boiling-point", "temperature", {"pressure": "500 micron"}),
            absolute=0.6,
            because="Ice in any part warmer than that turns to vapor and leaves.",
            wrong_roads=(
                WrongRoad(
                    name="boiling curve carried on",
                    method=wrong_roads.boiling_curve_carried_on,
                    says=(
                        "That is the curve of liquid water, carried on where there is no liquid. "
                        "Below {triple:micron;4} use the curve of ice."
                    ),
                ),
                WrongRoad(
                    name="sign left out",
                    method=wrong_roads.sign_left_out("°F"),
                    says="Mind the sign: it is that far below zero Fahrenheit.",
                ),
            ),
            hint="Below the triple point, ice decides. The boiling point card knows which curve.",
        ),
        Choice(
            name="cold-ice",
            objective="ice-leaves",
            asks=(
                "Ice sits in a freezer line at {system_temperature}. The gauge shows {pressure}. "
                "What does the ice do?"
            ),
            options=(
                Option(
                    key="boils",
                    text="It melts and boils",
                    says="It is far too cold to melt. Ice can only turn straight into vapor.",
                ),
                Option(
                    key="sublimes",
                    text="It turns to vapor",
                    says=(
                        "At {pressure} only ice warmer than {temperature} does that. "
                        "This ice is at {system_temperature}."
                    ),
                ),
                Option(
                    key="stays",
                    text="It stays",
                    says=(
                        "At {pressure} only ice warmer than {temperature} leaves. Warm the line: "
                        "that works better than more time."
                    ),
                ),
            ),
            right=Asked(
                "boiling-point",
                "behavior",
                {"pressure": "2,500 micron", "system_temperature": "5 °F"},
            ),
            hint="Compare the temperature of the ice with the answer of the boiling point card.",
        ),
        Choice(
            name="stall",
            objective="freezing-signs",
            asks=(
                "A pull falls fast, then hangs for a long time just above the triple point. "
                "What is the likely cause?"
            ),
            options=(
                Option(
                    key="leak",
                    text="A leak",
                    says="A leak can stall a pull at any reading. This one is a special reading.",
                ),
                Option(
                    key="water",
                    text="Water that is cooling itself down to ice",
                    says=(
                        "Boiling takes heat out of the water that stays. It holds the pressure "
                        "up until it has boiled away or frozen. Warm it."
                    ),
                ),
                Option(
                    key="pump",
                    text="The pump is too small",
                    says="A small pump slows the whole pull. It does not pick out this reading.",
                ),
            ),
            right="water",
        ),
    ),
)
