"""Problems: reading the shape of a decay test."""

from typing import Any

from calculators.teaching import wrong_roads
from calculators.teaching.bank.places import A_SMALL_SYSTEM
from calculators.teaching.draw import Between, Log, case, one_of, total_of
from calculators.teaching.problem import Template
from calculators.teaching.question import Asked, Choice, Numeric, Option, WrongRoad

SAYS = {
    "pass": ("It holds", "Flat, for long enough, under the limit: that is what you want to see."),
    "leak": ("A leak", "A straight climb is gas that keeps coming in at the same rate."),
    "moisture": (
        "Water, or gas out of oil",
        "A climb that bends and levels off is gas from inside: it stops by itself.",
    ),
    "leak-and-moisture": (
        "A leak, and gas from inside as well",
        "It bends first, and then goes on climbing at one pace.",
    ),
    "undecided": (
        "This test can't decide",
        "The readings leave it open: a longer hold or a finer gauge would tell.",
    ),
}


def _judge(name: str, *keys: str, readings: str = "$log", **entries: Any) -> Choice:
    given = {"readings": readings, "volume": "$v L", **entries}
    return Choice(
        name=name,
        objective="decay-shape",
        asks="What is it?",
        options=tuple(Option(key=key, text=SAYS[key][0], says=SAYS[key][1]) for key in keys),
        right=Asked("decay", "verdict", given),
        hint="Draw it: time to the right, pressure up. Flat, straight or bent?",
    )


STRAIGHT = {
    "start": one_of("220", "250", "280", "310"),
    "slope": one_of("8", "9", "11", "13", "16"),
    "log": Log("3", "7", "start", "slope"),
}
BENT = {
    "start": one_of("260", "280", "300", "340"),
    "height": one_of("1150", "1250", "1350", "1500", "1700"),
    "bend": one_of("3", "3.5", "4"),
    "log": Log("2", "10", "start", "0", "height", "bend"),
}
FLAT = {
    "start": one_of("160", "180", "210", "240", "260"),
    "height": one_of("2", "3", "4"),
    "log": Log("5", "5", "start", "0", "height", "4"),
}
BOTH = {
    "start": one_of("300", "330", "360"),
    "height": one_of("700", "800", "900"),
    "slope": one_of("28", "32", "36"),
    "log": Log("2", "13", "start", "slope", "height", "3"),
}
TOO_SOON = {
    "start": one_of("240", "270", "300", "330"),
    "slope": one_of("1", "2"),
    "log": Log("1", "2", "start", "slope"),
}
SMALL = one_of("7", "8", "9", "10", "12")

TEMPLATES = (
    Template(
        level=1,
        kind="log",
        situation="The gauge on $place, $v L inside, after the valve was shut:",
        draws={"place": A_SMALL_SYSTEM, "v": SMALL, "which": case(STRAIGHT, BENT, FLAT)},
        question=_judge("judge-a-log", "pass", "leak", "moisture"),
    ),
    Template(
        level=2,
        kind="log",
        situation="A hold on $place, $v L inside. Look twice before you answer.",
        draws={
            "place": A_SMALL_SYSTEM,
            "which": case(
                {"v": SMALL, **STRAIGHT},
                {"v": SMALL, **BENT},
                {"v": one_of("1500", "2000", "3000"), **TOO_SOON},
                {"v": SMALL, **FLAT},
            ),
        },
        question=_judge("judge-or-wait", "pass", "leak", "moisture", "undecided"),
    ),
    Template(
        level=3,
        kind="log",
        situation="A long hold on $place, $v L inside.",
        draws={"place": A_SMALL_SYSTEM, "v": SMALL, "which": case(BOTH, BENT, STRAIGHT)},
        question=_judge("judge-two-causes", "leak", "moisture", "leak-and-moisture", "undecided"),
    ),
    Template(
        level=1,
        kind="curve",
        situation="After the valve was shut, the gauge on $place went like this.",
        draws={"place": A_SMALL_SYSTEM, "v": SMALL, "which": case(STRAIGHT, BENT)},
        figure=Asked("decay", "verdict", {"readings": "$log", "volume": "$v L"}),
        question=_judge("judge-a-curve", "pass", "leak", "moisture"),
    ),
    Template(
        level=2,
        kind="curve",
        situation="The curve of a hold on $place bends.",
        draws={"place": A_SMALL_SYSTEM, "v": SMALL, "which": case(BENT)},
        figure=Asked("decay", "plateau", {"readings": "$log", "volume": "$v L"}),
        question=Choice(
            name="read-the-plateau",
            objective="decay-shape",
            asks="Where does it level off?",
            options=tuple(
                Option(
                    key=key,
                    text="At about {plateau:micron;2}" if key == "right" else text,
                    says="Carry the bend on until it is flat, and read the scale on the left.",
                    asked=Asked("decay", "plateau", {"readings": "$log", "volume": "$v L"}),
                )
                for key, text in (
                    ("right", ""),
                    ("start", "At about $start micron, where it started"),
                    ("rise", "It does not level off"),
                )
            ),
            right="right",
            hint="Look where the last points would lead.",
        ),
    ),
    Template(
        level=1,
        kind="number",
        situation=(
            "In $minutes minutes the gauge on $place rises by {rise}, to {final_pressure}."
        ),
        draws={
            "place": A_SMALL_SYSTEM,
            "first": Between("150", "400", "10"),
            "minutes": one_of("10", "12", "15", "20", "30"),
            "gain": Between("60", "240", "10"),
            "last": total_of("first", "gain"),
        },
        question=Numeric(
            name="mean-rate-of-rise",
            objective="rate-of-rise",
            asks="What is the mean rate of rise?",
            asked=Asked(
                "decay", "rate_of_rise", {"readings": "0 $first, $minutes $last", "volume": "8 L"}
            ),
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
            ),
            hint="Last reading minus first reading, divided by the minutes between.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "A gauge set to pascal on $place rises by {rise:Pa;3} in $minutes minutes, to "
            "{final_pressure:Pa;3}."
        ),
        draws={
            "place": A_SMALL_SYSTEM,
            "first": Between("20", "45", "1"),
            "minutes": one_of("5", "8", "10", "20"),
            "gain": Between("8", "30", "1"),
            "last": total_of("first", "gain"),
        },
        question=Numeric(
            name="rate-of-rise-in-pascal",
            objective="rate-of-rise",
            asks="What is the mean rate of rise, in pascal per minute?",
            asked=Asked(
                "decay",
                "rate_of_rise",
                {"readings": "minutes, Pa\n0 $first\n$minutes $last", "volume": "8 L"},
            ),
            in_unit="Pa/min",
            because="Take the difference of the readings and divide by the time.",
            wrong_roads=(
                WrongRoad(
                    name="last reading over time",
                    method=wrong_roads.scaled_by("final_pressure", "rise"),
                    says="You divided the last reading. Divide the rise: last minus first.",
                ),
                WrongRoad(
                    name="per second",
                    method=wrong_roads.times(1 / 60),
                    says="That is for one second. A minute was asked.",
                ),
            ),
            hint="Last reading minus first reading, divided by the minutes between.",
        ),
    ),
    Template(
        level=2,
        kind="fault",
        situation="On $place the valve is shut. In the first minute the gauge climbs by $j micron. "
        "$then",
        draws={
            "place": A_SMALL_SYSTEM,
            "j": Between("30", "140", "10"),
            "which": case(
                {"then": "From there on it stands still.", "key": "even"},
                {"then": "For a quarter of an hour nothing moves at all.", "key": "even"},
                {"then": "After that it adds the same few micron every minute.", "key": "leak"},
                {"then": "After that it goes up by less and less, and stops near the vapor "
                 "pressure of cold water.", "key": "water"},
            ),
        },
        question=Choice(
            name="first-minute-after-shutting",
            objective="first-minutes",
            asks="What does the whole of it show?",
            options=(
                Option(
                    key="even",
                    text="Only the pressure evening out inside the system",
                    says="The far end stood higher than the gauge. Shut off, the two meet.",
                ),
                Option(
                    key="leak",
                    text="A leak",
                    says="Leave the first minute out. A leak goes on at one pace after that.",
                ),
                Option(
                    key="water",
                    text="Water boiling inside",
                    says="Leave the first minute out. Water slows down and levels off.",
                ),
            ),
            right="$key",
            hint="Leave the first minute out and look at what comes after it.",
        ),
    ),
    Template(
        level=1,
        kind="choice",
        situation="You shut the valve on $place at $at. Its far end is $far feet away.",
        draws={
            "place": A_SMALL_SYSTEM,
            "at": one_of("nine", "half past ten", "noon", "two", "a quarter to four"),
            "far": Between("20", "90", "5"),
        },
        question=Choice(
            name="when-the-test-begins",
            objective="first-minutes",
            asks="Which reading is the first one of the test?",
            options=(
                Option(
                    key="at-once",
                    text="The one at the moment the valve closes",
                    says="At that moment the far end still stands higher than the gauge.",
                ),
                Option(
                    key="settled",
                    text="One a minute or two later, when the pressures have evened out",
                    says="From there on, what the gauge does is what the system does.",
                ),
                Option(
                    key="lowest",
                    text="The lowest one that was ever seen",
                    says="While the pump runs, the gauge sees the pump as much as the system.",
                ),
            ),
            right="settled",
            hint="Where is the pressure higher while the pump runs?",
        ),
    ),
)  # fmt: skip
