"""Problems: ice below the triple point."""

from calculators.teaching import wrong_roads
from calculators.teaching.bank.places import A_FREEZER, A_SYSTEM
from calculators.teaching.draw import Between, Round, case, one_of
from calculators.teaching.problem import Template
from calculators.teaching.question import Asked, Choice, Numeric, Option, WrongRoad

CARRIED_ON = WrongRoad(
    name="boiling curve carried on",
    method=wrong_roads.boiling_curve_carried_on,
    says=(
        "That is the curve of liquid water, carried on where there is no liquid. Below "
        "{triple:micron;4} use the curve of ice."
    ),
)

TEMPLATES = (
    Template(
        level=1,
        kind="number",
        situation="The gauge on $place holds at {pressure}, and there is ice in a low spot.",
        draws={"place": A_SYSTEM, "p": Between("100", "600", "20")},
        question=Numeric(
            name="ice-in-balance",
            objective="ice-leaves",
            asks="Down to which temperature does ice still leave?",
            asked=Asked("boiling-point", "temperature", {"pressure": "$p micron"}),
            absolute=0.6,
            because="Ice that is warmer than that turns to vapor. Colder ice stays.",
            wrong_roads=(
                CARRIED_ON,
                WrongRoad(
                    name="sign left out",
                    method=wrong_roads.sign_left_out("°F"),
                    says="Mind the sign: it is that far below zero Fahrenheit.",
                ),
            ),
            hint="Below the triple point, ice decides. The boiling point card knows the curve.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation="A gauge set to pascal holds at {pressure} on $place. Frost shows on a low pipe.",
        draws={"place": A_FREEZER, "p": Between("10", "80", "2")},
        question=Numeric(
            name="ice-in-balance-pascal",
            objective="ice-leaves",
            asks="Down to which temperature does ice still leave?",
            asked=Asked("boiling-point", "temperature", {"pressure": "$p Pa"}),
            absolute=0.6,
            because="Ice that is warmer than that turns to vapor. Colder ice stays.",
            wrong_roads=(
                CARRIED_ON,
                WrongRoad(
                    name="pascal taken as micron",
                    method=wrong_roads.unit_taken_as("pressure", "micron"),
                    says="You took pascal for micron. A pascal is seven and a half of them.",
                ),
            ),
            hint="Choose the unit in the boiling point card.",
        ),
    ),
    Template(
        level=1,
        kind="number",
        situation="Ice sits in a line of $place, at {temperature}.",
        draws={"place": A_FREEZER, "t": Between("5", "26", "1")},
        question=Numeric(
            name="pull-below-the-ice",
            objective="ice-leaves",
            asks="Below which reading does that ice turn to vapor?",
            asked=Asked("saturation-pressure", "pressure", {"temperature": "$t °F"}),
            because="Above that reading it stays, however long the pump runs.",
            wrong_roads=(
                WrongRoad(
                    name="degrees taken as Celsius",
                    method=wrong_roads.unit_taken_as("temperature", "°C"),
                    says="You read the degrees as Celsius. They are Fahrenheit, well below ice.",
                ),
                WrongRoad(
                    name="melting ice",
                    method=wrong_roads.entered(temperature="32 °F"),
                    says="That is for ice about to melt. This ice is at {temperature}.",
                ),
            ),
            hint="Use the vapor pressure card at the temperature of the ice.",
        ),
    ),
    Template(
        level=2,
        kind="choice",
        situation=(
            "Ice sits in a line of $place, at {system_temperature}. The gauge holds at {pressure}."
        ),
        draws={
            "place": A_FREEZER,
            "which": case(
                {"p": Between("2000", "3200", "100"), "t": Between("-4", "12", "1")},
                {"p": Between("250", "600", "50"), "t": Between("14", "28", "1")},
            ),
        },
        question=Choice(
            name="does-the-ice-leave",
            objective="ice-leaves",
            asks="What does the ice do?",
            options=(
                Option(
                    key="boils",
                    text="It melts and boils",
                    says="It is too cold to melt. Ice can only turn straight into vapor.",
                ),
                Option(
                    key="sublimes",
                    text="It turns to vapor",
                    says="At {pressure} ice warmer than {temperature} does that.",
                ),
                Option(
                    key="stays",
                    text="It stays",
                    says="At {pressure} only ice colder than {temperature} stays. Warm the line.",
                ),
            ),
            right=Asked(
                "boiling-point",
                "behavior",
                {"pressure": "$p micron", "system_temperature": "$t °F"},
            ),
            hint="Compare the temperature of the ice with the answer of the boiling point card.",
        ),
    ),
    Template(
        level=1,
        kind="number",
        situation="Ice, water and vapor meet at {temperature}, in $place as anywhere.",
        draws={"place": A_SYSTEM, "unit": one_of("micron", "Pa", "mbar", "Torr", "mmHg", "kPa")},
        question=Numeric(
            name="triple-point-reading",
            objective="triple-point",
            asks="At which reading is that?",
            asked=Asked("saturation-pressure", "pressure", {"temperature": "0.01 °C"}),
            in_unit="$unit",
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
    ),
    Template(
        level=1,
        kind="choice",
        situation="Some water is left in $place. The gauge at the system reads {pressure}.",
        draws={
            "place": A_SYSTEM,
            "which": case({"p": Round("700", "4000")}, {"p": Round("5000", "20000")}),
        },
        question=Choice(
            name="ice-or-liquid",
            objective="triple-point",
            asks="What can that water be, once pressure and water are in balance?",
            options=(
                Option(
                    key="ice",
                    text="Ice",
                    says="Below {triple:micron;4} there is only ice and vapor; above it, liquid.",
                ),
                Option(
                    key="liquid",
                    text="Liquid",
                    says="Above {triple:micron;4} it is a liquid; below it there is only ice.",
                ),
            ),
            right=Asked("boiling-point", "phase", {"pressure": "$p micron"}),
            hint="Compare the reading with the triple point.",
        ),
    ),
    Template(
        level=2,
        kind="fault",
        situation="You pull on $place. $sign",
        draws={
            "place": A_SYSTEM,
            "stall": Between("4300", "4900", "50"),
            "deep": Between("700", "1800", "50"),
            "which": case(
                {
                    "sign": "The gauge falls fast, then hangs at $stall micron for half an hour.",
                    "key": "water",
                },
                {
                    "sign": "The gauge hangs near $stall micron. When a warm lamp is set beside "
                    "the low pipe it first climbs a little, and then goes down at last.",
                    "key": "water",
                },
                {
                    "sign": "A bend at the bottom grows a coat of frost while the gauge hangs at "
                    "$stall micron.",
                    "key": "water",
                },
                {
                    "sign": "The gauge hangs at $deep micron. Isolated, it climbs at one pace, "
                    "straight through the triple point and on.",
                    "key": "leak",
                },
                {
                    "sign": "The gauge hangs at $deep micron. With the pump shut off at its own "
                    "valve, it still hangs at that reading on the pump alone.",
                    "key": "pump",
                },
            ),
        },
        question=Choice(
            name="why-it-hangs",
            objective="freezing-signs",
            asks="What is the likely cause?",
            options=(
                Option(
                    key="water",
                    text="Water that is cooling itself down to ice",
                    says="Boiling takes its heat from the water that stays. Warm that part.",
                ),
                Option(
                    key="leak",
                    text="A leak at the system",
                    says="A leak can stall a pull anywhere, and it climbs without slowing down.",
                ),
                Option(
                    key="pump",
                    text="The pump",
                    says="A bad pump shows on the pump alone, with nothing behind it.",
                ),
            ),
            right="$key",
            hint="Is the reading near the triple point? What happens when you warm, or isolate?",
        ),
    ),
    Template(
        level=3,
        kind="number",
        situation=(
            "Water in $place is at {temperature} when a strong pump pulls the pressure down to "
            "{pressure}. No heat reaches it."
        ),
        draws={
            "place": A_SYSTEM,
            "t": Between("40", "85", "5"),
            "p": one_of("1,000", "1,500", "2,000"),
        },
        question=Numeric(
            name="share-before-ice",
            objective="freezing-signs",
            asks="What percentage of it boils off before the rest is all ice?",
            asked=Asked(
                "moisture",
                "share_to_ice",
                {"pressure": "$p micron", "temperature": "$t °F", "water": "10 g"},
            ),
            relative=0.03,
            because="Most of the water is still there, as ice. Heat, not depth, gets it out.",
            wrong_roads=(
                WrongRoad(
                    name="only cooled, not frozen",
                    method=wrong_roads.other_output("share_to_cool"),
                    says="That only brings it down to freezing. Then it still has to freeze.",
                ),
            ),
            hint="It is one of the last lines of the moisture card.",
        ),
    ),
)
