"""Problems: what a decay test can't prove."""

from calculators.teaching import wrong_roads
from calculators.teaching.bank.places import A_SMALL_SYSTEM
from calculators.teaching.draw import Between, Times, case, one_of, total_of
from calculators.teaching.problem import Template
from calculators.teaching.question import (
    Asked,
    Choice,
    Item,
    Numeric,
    Option,
    Order,
    Rank,
    WrongRoad,
)

FLAT = {"first_pressure": "300 micron", "last_pressure": "301 micron"}


def _unseen(output: str, volume: str = "$v L", duration: str = "$t min", **more: str) -> Asked:
    return Asked("leak-rate", output, {**FLAT, "volume": volume, "duration": duration, **more})


TIME = one_of("10", "12", "15", "20", "30", "45")

TEMPLATES = (
    Template(
        level=1,
        kind="number",
        situation=(
            "You hold $place, {volume}, for {duration} with steps of {resolution}. Nothing moves."
        ),
        draws={"place": A_SMALL_SYSTEM, "v": Between("5", "60", "1"), "t": TIME},
        question=Numeric(
            name="smallest-leak-of-a-hold",
            objective="smallest-leak",
            asks="How small a leak could you have seen?",
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
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "$place holds {volume} and gets {refrigerant}. It stood still for {duration}, with "
            "steps of {resolution}."
        ),
        draws={
            "place": one_of("The library's split", "The bakery's cooler", "The florist's cold room",
                            "The town hall's split", "The cider press's store"),
            "v": Between("5", "30", "1"),
            "t": TIME,
            "r": one_of("R-32", "R-410A", "R-134a", "R-290", "R-454B"),
        },
        question=Numeric(
            name="loss-that-hides",
            objective="smallest-leak",
            asks="How much could a leak just too small for that test lose in a year, at most?",
            asked=_unseen("smallest_greatest_loss", refrigerant="$r"),
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
    ),
    Template(
        level=2,
        kind="choice",
        situation="Three holds, three systems, one gauge. Nothing moved in any of them.",
        draws={
            "which": case(
                {"a": Between("6", "10", "1"), "t": "10", "b": Between("12", "16", "1"), "u": "60",
                 "c": Between("2", "4", "0.5"), "w": "600"},
                {"a": Between("6", "10", "1"), "t": "30", "b": Between("30", "40", "1"), "u": "45",
                 "c": Between("1", "2", "0.5"), "w": "480"},
                {"a": Between("20", "30", "1"), "t": "10", "b": Between("60", "80", "1"), "u": "20",
                 "c": Between("0.4", "0.6", "0.1"), "w": "1440"},
            ),
        },
        question=Choice(
            name="sharpest-of-three",
            objective="smallest-leak",
            asks="Which one could have seen the smallest leak?",
            options=tuple(
                Option(
                    key=key,
                    text="{volume} for {duration}",
                    says="It sees down to {smallest_leak}. Divide the volume by the time.",
                    asked=_unseen("smallest_leak", f"${key} {unit}", f"${time} min"),
                )
                for key, unit, time in (("a", "L", "t"), ("b", "L", "u"), ("c", "m³", "w"))
            ),
            right=Rank.SMALLEST,
            hint="Divide the volume by the time.",
        ),
    ),
    Template(
        level=3,
        kind="order",
        situation="Four holds on one system, with the same gauge.",
        draws={
            "v": Between("8", "12", "1"),
            "a": one_of("60", "75", "90"),
            "b": one_of("25", "30", "35"),
            "c": one_of("10", "12"),
            "d": one_of("4", "5"),
        },
        question=Order(
            name="sharpest-hold-first",
            objective="smallest-leak",
            asks="Put the hold that could see the smallest leak at the top.",
            items=tuple(
                Item(key, "For {duration}", _unseen("smallest_leak", duration=f"${key} min"))
                for key in ("a", "b", "c", "d")
            ),
            because="In the same room, the longer hold sees the smaller leak.",
            hint="Divide the volume by the time.",
        ),
    ),
    Template(
        level=1,
        kind="choice",
        situation="On $place the hold was perfect. Now you want to know more: $want",
        draws={
            "place": A_SMALL_SYSTEM,
            "which": case(
                {"want": "does it stay tight at the pressure it will work at?", "key": "pressure"},
                {"want": "does a joint open up when it is pushed from inside?", "key": "pressure"},
                {"want": "at which joint does the leak you suspect sit?", "key": "search"},
                {"want": "which of the forty flares loses gas?", "key": "search"},
                {"want": "was the charge lost over the summer?", "key": "weigh"},
                {"want": "how much has gone since the last visit?", "key": "weigh"},
            ),
        },
        question=Choice(
            name="which-test-tells",
            objective="other-tests",
            asks="Which test tells?",
            options=(
                Option(
                    key="pressure",
                    text="Dry nitrogen at test pressure, held and read with its temperature",
                    says="Pressure pushes many times harder than a vacuum pulls, and outward.",
                ),
                Option(
                    key="search",
                    text="Bubbles or an electronic detector, joint by joint",
                    says="A gauge says how much. Only a search says where.",
                ),
                Option(
                    key="weigh",
                    text="Weighing the charge, against what was written down",
                    says="What is gone shows on the scale, if the first weight was recorded.",
                ),
            ),
            right="$key",
            hint="Whether, where, or how much so far?",
        ),
    ),
    Template(
        level=2,
        kind="choice",
        situation=(
            "A hold of {duration} on $place, {volume}, with steps of {resolution}. The gauge stood "
            "still."
        ),
        draws={"place": A_SMALL_SYSTEM, "v": Between("5", "40", "1"), "t": TIME},
        question=Choice(
            name="honest-sentence",
            objective="say-what-it-shows",
            asks="Which sentence belongs in the record?",
            options=tuple(
                Option(key=key, text=text, says=says, asked=_unseen("smallest_leak"))
                for key, text, says in (
                    ("bound", "No leak of {smallest_leak} or more was seen in {duration}.",
                     "It says what was seen, how small, and for how long."),
                    ("none", "The system has no leak.",
                     "No test can show that. It shows that a leak is smaller than something."),
                    ("never", "It will not lose refrigerant.",
                     "In service the pressure is higher, and it pushes the other way."),
                )
            ),
            right="bound",
            hint="Which one could somebody else check?",
        ),
    ),
    Template(
        level=3,
        kind="choice",
        situation="The hold on $place: $found",
        draws={
            "place": A_SMALL_SYSTEM,
            "a": Between("200", "300", "10"),
            "d": Between("250", "600", "10"),
            "b": total_of("a", "d"),
            "which": case(
                {"found": "two minutes, from $a micron, no step at all.", "key": "short"},
                {"found": "one glance after a minute, on a large chiller. Nothing moved.",
                 "key": "short"},
                {"found": "half an hour, from $a to $b micron, the same amount every minute.",
                 "key": "leak"},
                {"found": "half an hour, from $a to $b micron, fast at first and flat at last.",
                 "key": "inside"},
            ),
        },
        question=Choice(
            name="what-may-be-said",
            objective="say-what-it-shows",
            asks="What may you say?",
            options=(
                Option(
                    key="short",
                    text="Not decided: it was not held long enough",
                    says="A test that saw nothing because it was short has shown nothing.",
                ),
                Option(
                    key="leak",
                    text="It leaks, and by how much",
                    says="A straight climb is a leak. Rise, time and volume give its size.",
                ),
                Option(
                    key="inside",
                    text="Something inside gives off vapor or gas; a leak is not shown",
                    says="A climb that flattens out is water, or gas out of oil.",
                ),
            ),
            right="$key",
            hint="Shape first, then time.",
        ),
    ),
    Template(
        level=2,
        kind="choice",
        situation=(
            "$place held its vacuum for $t minutes. With nitrogen at $g psig inside, a joint "
            "hisses."
        ),
        draws={
            "place": one_of("The library's split", "The bakery's cooler", "The florist's cold room",
                            "The town hall's split", "The cider press's store"),
            "t": one_of("ten", "fifteen", "twenty", "thirty"),
            "g": Between("120", "300", "10"),
            "times": Times("g", "0.07"),
        },
        question=Choice(
            name="held-but-hisses",
            objective="other-tests",
            asks="How can both be true?",
            options=(
                Option(
                    key="push",
                    text="The nitrogen pushes about $times times as hard, and from inside",
                    says="A vacuum pulls with one atmosphere at most, and presses joints shut.",
                ),
                Option(
                    key="gauge",
                    text="The vacuum gauge must be broken",
                    says="It need not be. A small leak into a vacuum can hide under its step.",
                ),
                Option(
                    key="new",
                    text="The joint broke in between",
                    says="It may have been so all along: a vacuum presses such a joint shut.",
                ),
            ),
            right="push",
            hint="How hard does each test press on the joint, and which way?",
        ),
    ),
)  # fmt: skip
