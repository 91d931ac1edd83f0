"""Problems: absolute and gauge pressure, the barometer, altitude."""

from calculators.teaching import wrong_roads
from calculators.teaching.bank.places import A_SYSTEM
from calculators.teaching.draw import Between, Round, Times
from calculators.teaching.problem import Template
from calculators.teaching.question import Asked, Choice, Numeric, Option, WrongRoad

SEA_LEVEL = WrongRoad(
    name="sea level",
    method=wrong_roads.entered(altitude="0 ft"),
    says="That holds at sea level. You are at {altitude}.",
)

TEMPLATES = (
    Template(
        level=1,
        kind="number",
        situation="You work on $place at {altitude}.",
        draws={"place": A_SYSTEM, "a": Between("2000", "9000", "250")},
        question=Numeric(
            name="barometer-at-altitude",
            objective="altitude-barometer",
            asks="What does the barometer read there on a usual day?",
            asked=Asked("altitude", "barometer", {"altitude": "$a ft"}),
            relative=0.01,
            because="Higher up there is less air on top of you.",
            wrong_roads=(
                SEA_LEVEL,
                WrongRoad(
                    name="feet taken as meters",
                    method=wrong_roads.unit_taken_as("altitude", "m"),
                    says="You read feet as meters. That is over three times as high.",
                ),
            ),
            hint="Use the altitude card.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation="A kettle is boiled beside $place, at {altitude}.",
        draws={"place": A_SYSTEM, "a": Between("3000", "9000", "250")},
        question=Numeric(
            name="kettle-at-altitude",
            objective="altitude-barometer",
            asks="At what temperature does it boil?",
            asked=Asked("altitude", "boiling_point", {"altitude": "$a ft"}),
            absolute=0.6,
            because="Less air presses on the water, so it boils sooner. A pump only goes further.",
            wrong_roads=(
                SEA_LEVEL,
                WrongRoad(
                    name="feet taken as meters",
                    method=wrong_roads.unit_taken_as("altitude", "m"),
                    says="You read feet as meters. That is over three times as high.",
                ),
            ),
            hint="The altitude card gives it beside the barometer.",
        ),
    ),
    Template(
        level=1,
        kind="number",
        situation="A vacuum dial is used on $place at {altitude}.",
        draws={"place": A_SYSTEM, "a": Between("1000", "2800", "50")},
        question=Numeric(
            name="deepest-dial-reading",
            objective="altitude-barometer",
            asks="What is the deepest reading it can ever show there?",
            asked=Asked("altitude", "deepest_dial_reading", {"altitude": "$a m"}),
            relative=0.01,
            because="A dial counts down from the barometer, and nothing is below nothing.",
            wrong_roads=(
                SEA_LEVEL,
                WrongRoad(
                    name="meters taken as feet",
                    method=wrong_roads.unit_taken_as("altitude", "ft"),
                    says="You read meters as feet. A meter is more than three feet.",
                ),
            ),
            hint="It can go down by as much as the barometer, and no more.",
        ),
    ),
    Template(
        level=1,
        kind="number",
        situation=(
            "Nitrogen stands in $place at {pressure}. The barometer on the wall reads {barometer}."
        ),
        draws={
            "place": A_SYSTEM,
            "g": Between("5", "30", "1"),
            "b": Between("24", "27.5", "0.1"),
        },
        question=Numeric(
            name="gauge-to-absolute",
            objective="absolute-and-gauge",
            asks="What is the absolute pressure?",
            asked=Asked(
                "convert", "absolute_pressure", {"pressure": "$g psig", "barometer": "$b inHg"}
            ),
            in_unit="psia",
            relative=0.01,
            because="Add the barometer to a gauge reading to get absolute pressure.",
            wrong_roads=(
                WrongRoad(
                    name="gauge reading taken as absolute",
                    method=wrong_roads.unit_taken_as("pressure", "psia"),
                    says="That is the gauge reading. Add the barometer, which is there as well.",
                ),
                WrongRoad(
                    name="sea level barometer",
                    method=wrong_roads.entered(barometer="29.92 inHg"),
                    says="You added the barometer of sea level. Here it stands at {barometer}.",
                ),
            ),
            hint="Absolute is gauge plus barometer. Mind the units.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "Nitrogen stands in $place at {pressure}, read where the barometer is at {barometer}."
        ),
        draws={
            "place": A_SYSTEM,
            "g": Between("0.4", "2", "0.1"),
            "b": Between("800", "920", "10"),
        },
        question=Numeric(
            name="bar-gauge-to-absolute",
            objective="absolute-and-gauge",
            asks="What is the absolute pressure?",
            asked=Asked(
                "convert", "absolute_pressure", {"pressure": "$g barg", "barometer": "$b hPa"}
            ),
            in_unit="bar",
            relative=0.01,
            because="Add the barometer to a gauge reading to get absolute pressure.",
            wrong_roads=(
                WrongRoad(
                    name="gauge reading taken as absolute",
                    method=wrong_roads.unit_taken_as("pressure", "bar"),
                    says="That is the gauge reading. Add the barometer, which is there as well.",
                ),
                WrongRoad(
                    name="sea level barometer",
                    method=wrong_roads.entered(barometer="1013.25 hPa"),
                    says="You added the barometer of sea level. Here it stands at {barometer}.",
                ),
            ),
            hint="A thousand hectopascal are one bar.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "On $place, $a ft up in the hills, a micron gauge holds at {pressure}. The air is thin "
            "there."
        ),
        draws={
            "place": A_SYSTEM,
            "a": Between("4000", "9000", "500"),
            "p": Round("7000", "40000"),
            "tenth": Times("p", "0.1"),
        },
        question=Numeric(
            name="boiling-in-the-hills",
            objective="altitude-target",
            asks="At what temperature does water inside the system boil?",
            asked=Asked("boiling-point", "temperature", {"pressure": "$p micron"}),
            absolute=0.6,
            because="Water inside knows only the pressure around it. The hills do not count.",
            wrong_roads=(
                WrongRoad(
                    name="boiling point in open air",
                    method=wrong_roads.entered(pressure="1 atm"),
                    says="That is for open air at sea level. Inside stands {pressure}.",
                ),
                WrongRoad(
                    name="pressure taken ten times too low",
                    method=wrong_roads.entered(pressure="$tenth micron"),
                    says="Check the noughts: that is the answer for a tenth of {pressure}.",
                ),
            ),
            hint="Does a micron gauge count from the barometer?",
        ),
    ),
    Template(
        level=2,
        kind="choice",
        situation="At sea level your target is $t micron. Today you work on $place, $a ft up.",
        draws={
            "place": A_SYSTEM,
            "a": Between("3000", "9000", "500"),
            "t": Between("300", "1000", "50"),
            "low": Times("t", "0.8"),
            "high": Times("t", "1.2"),
        },
        question=Choice(
            name="target-in-the-hills",
            objective="altitude-target",
            asks="What is your target there?",
            options=(
                Option(
                    key="lower",
                    text="About $low micron, because the air is thinner",
                    says="Thin air changes a dial. Water inside the system does not notice it.",
                ),
                Option(
                    key="same",
                    text="$t micron",
                    says="A micron counts up from nothing, and nothing is the same everywhere.",
                ),
                Option(
                    key="higher",
                    text="About $high micron, because the pump has less to do",
                    says="The pump starts lower, but water boils by the pressure around it.",
                ),
            ),
            right="same",
            hint="From where does a micron count?",
        ),
    ),
)
