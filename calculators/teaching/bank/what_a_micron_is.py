"""Problems: what a micron is, in other units, and how deep it is."""

from calculators.teaching import wrong_roads
from calculators.teaching.bank.places import A_SYSTEM
from calculators.teaching.draw import Between, Round, case, one_of
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


def _pressure(text: str) -> Asked:
    return Asked("convert", "absolute_pressure", {"pressure": text})


TEMPLATES = (
    Template(
        level=1,
        kind="number",
        situation="The gauge on $place reads {pressure}.",
        draws={"place": A_SYSTEM, "p": Round("150", "9000")},
        question=Numeric(
            name="micron-to-torr",
            objective="micron-convert",
            asks="How many Torr is that?",
            asked=_pressure("$p micron"),
            in_unit="Torr",
            because="A thousand micron make one Torr.",
            wrong_roads=(
                WrongRoad(
                    name="micron handed back",
                    method=wrong_roads.times(1e3),
                    says="That is still the number of micron. Divide by a thousand.",
                ),
                WrongRoad(
                    name="divided by a hundred",
                    method=wrong_roads.times(10),
                    says="Ten times too many. There are a thousand micron in a Torr.",
                ),
            ),
            hint="A thousand micron make one Torr.",
        ),
    ),
    Template(
        level=1,
        kind="number",
        situation="A maker's sheet asks for pascal. The gauge on $place reads {pressure}.",
        draws={"place": A_SYSTEM, "p": Round("100", "5000")},
        question=Numeric(
            name="micron-to-pascal",
            objective="micron-convert",
            asks="How many pascal is that?",
            asked=_pressure("$p micron"),
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
            hint="Divide the micron by seven and a half.",
        ),
    ),
    Template(
        level=1,
        kind="number",
        situation="A standard gives a limit of {pressure}. Your gauge shows micron.",
        draws={"p": Between("15", "400", "5")},
        question=Numeric(
            name="pascal-to-micron",
            objective="micron-convert",
            asks="Which reading on your gauge is that limit?",
            asked=_pressure("$p Pa"),
            in_unit="micron",
            because="A pascal is seven and a half micron.",
            wrong_roads=(
                WrongRoad(
                    name="pascal taken as micron",
                    method=wrong_roads.unit_taken_as("pressure", "micron"),
                    says="That is the number of pascal. Each pascal is seven and a half micron.",
                ),
                WrongRoad(
                    name="divided where it should be multiplied",
                    method=wrong_roads.times(0.133322**2),
                    says="You divided. A pascal is more than a micron, so the number gets larger.",
                ),
            ),
            hint="Multiply by seven and a half.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation="An older gauge on $place shows {pressure}.",
        draws={"place": A_SYSTEM, "p": Between("0.2", "5", "0.1")},
        question=Numeric(
            name="millibar-to-micron",
            objective="micron-convert",
            asks="How many micron is that?",
            asked=_pressure("$p mbar"),
            in_unit="micron",
            because="One millibar is three quarters of a Torr.",
            wrong_roads=(
                WrongRoad(
                    name="millibar taken as Torr",
                    method=wrong_roads.unit_taken_as("pressure", "Torr"),
                    says="You took a millibar for a Torr. It is only three quarters of one.",
                ),
                WrongRoad(
                    name="millibar taken as pascal",
                    method=wrong_roads.unit_taken_as("pressure", "Pa"),
                    says="You took a millibar for a pascal. It is a hundred of them.",
                ),
            ),
            hint="A millibar is a hundred pascal, and a pascal is seven and a half micron.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "An old workshop still has a mercury gauge. One leg ends in perfect vacuum, the other "
            "is open to $place. The mercury stands {pressure} higher on the empty side."
        ),
        draws={"place": A_SYSTEM, "p": Between("0.5", "12", "0.5")},
        question=Numeric(
            name="mercury-to-micron",
            objective="micron-meaning",
            asks="Which reading should a micron gauge show beside it?",
            asked=_pressure("$p mmHg"),
            in_unit="micron",
            because="A micron is a thousandth of a millimeter of mercury, counted from nothing.",
            wrong_roads=(
                WrongRoad(
                    name="millimeters handed back",
                    method=wrong_roads.times(1e-3),
                    says="That is the number of millimeters. Each one is a thousand micron.",
                ),
                WrongRoad(
                    name="a hundred to the millimeter",
                    method=wrong_roads.times(0.1),
                    says="Ten times too low. A millimeter is a thousand micron.",
                ),
            ),
            hint="A micron of mercury is a thousandth of a millimeter of mercury.",
        ),
    ),
    Template(
        level=1,
        kind="choice",
        situation="A gauge on $place reads $p micron.",
        draws={"place": A_SYSTEM, "p": Round("120", "3000")},
        question=Choice(
            name="micron-from-where",
            objective="micron-meaning",
            asks="What does that number count?",
            options=(
                Option(
                    key="nothing",
                    text="Pressure above perfect vacuum: $p micron of it are left",
                    says="A micron counts up from nothing. Zero would be perfectly empty.",
                ),
                Option(
                    key="air",
                    text="Pressure below open air: it is $p micron under it",
                    says="That is how a dial counts. A micron gauge counts up from nothing.",
                ),
                Option(
                    key="share",
                    text="How full the system is, $p parts in a million",
                    says="It is a pressure, not a share. Open air is far under a million micron.",
                ),
            ),
            right="nothing",
            hint="Ask yourself what a reading of zero would mean.",
        ),
    ),
    Template(
        level=2,
        kind="choice",
        situation="Three gauges hang on three systems of the same make.",
        draws={
            "which": case(
                {
                    "a": Between("400", "600", "50"),
                    "b": Between("0.9", "2", "0.1"),
                    "c": Between("18", "35", "1"),
                },
                {
                    "a": Between("100", "200", "10"),
                    "b": Between("0.5", "0.9", "0.1"),
                    "c": Between("60", "110", "5"),
                },
                {
                    "a": Between("700", "950", "50"),
                    "b": Between("0.2", "0.4", "0.05"),
                    "c": Between("65", "85", "1"),
                },
            ),
        },
        question=Choice(
            name="deepest-of-three",
            objective="micron-size",
            asks="Which one is deepest?",
            options=tuple(
                Option(
                    key=key,
                    text="The one at {pressure}",
                    says="In micron that is {absolute_pressure:micron;3}. Compare all three so.",
                    asked=_pressure(f"${key} {unit}"),
                )
                for key, unit in (("a", "micron"), ("b", "mbar"), ("c", "Pa"))
            ),
            right=Rank.SMALLEST,
            hint="Turn each one into micron. The lowest pressure is the deepest vacuum.",
        ),
    ),
    Template(
        level=3,
        kind="order",
        situation="Four systems, four gauges, four units.",
        draws={
            "which": case(
                {
                    "a": Between("100", "200", "10"),
                    "b": Between("50", "80", "2"),
                    "c": Between("1.2", "2", "0.1"),
                    "d": Between("3", "9", "0.5"),
                },
                {
                    "d": Between("0.1", "0.2", "0.02"),
                    "c": Between("0.4", "0.7", "0.05"),
                    "a": Between("800", "1200", "50"),
                    "b": Between("300", "600", "20"),
                },
                {
                    "b": Between("10", "20", "1"),
                    "a": Between("250", "400", "10"),
                    "d": Between("0.7", "1.2", "0.1"),
                    "c": Between("3", "6", "0.5"),
                },
            ),
        },
        question=Order(
            name="deepest-first",
            objective="micron-size",
            asks="Put them in order, deepest vacuum at the top.",
            items=tuple(
                Item(key, "{pressure}", _pressure(f"${key} {unit}"))
                for key, unit in (("a", "micron"), ("b", "Pa"), ("c", "mbar"), ("d", "Torr"))
            ),
            because="In one unit they are easy to compare: the lowest pressure is the deepest.",
            hint="Turn each one into micron first.",
        ),
    ),
    Template(
        level=1,
        kind="number",
        situation="Up at $where the open air presses with {pressure}.",
        draws={
            "where": one_of("a mountain hut", "a ski lift's engine room", "a radio mast's cabin",
                            "a tunnel's fan station", "an observatory's plant room"),
            "p": Between("20", "28.5", "0.1"),
        },
        question=Numeric(
            name="air-in-micron",
            objective="micron-size",
            asks="How many micron is that?",
            asked=_pressure("$p inHg"),
            in_unit="micron",
            because="A pull to a few hundred micron takes away all but a thousandth of it.",
            wrong_roads=(
                WrongRoad(
                    name="an inch taken as a thousand micron",
                    method=wrong_roads.times(1 / 25.4),
                    says="You took an inch for a millimeter. There are over twenty-five in one.",
                ),
                WrongRoad(
                    name="Torr for micron",
                    method=wrong_roads.times(1e-3),
                    says="That is the number of Torr. Each Torr is a thousand micron.",
                ),
            ),
            hint="One inch is a little over twenty-five millimeters of mercury.",
        ),
    ),
)  # fmt: skip
