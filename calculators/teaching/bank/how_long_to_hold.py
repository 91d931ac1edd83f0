"""Problems: how long to hold, by size of system and step of gauge."""

from calculators.teaching import wrong_roads
from calculators.teaching.bank.places import A_CHILLER, A_SMALL_SYSTEM
from calculators.teaching.draw import Between, one_of
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


def _hold(volume: str, leak: str = "$q micron·L/s", **entries: str) -> Asked:
    given = {"system": "other", "volume": volume, "leak_rate": leak, **entries}
    return Asked("hold-time", "hold_time", given)


ONE_STEP = WrongRoad(
    name="one step",
    method=wrong_roads.times(1 / 5),
    says="That is for one step. One step may be chance. Wait for five.",
)
GALLONS = WrongRoad(
    name="gallons for liters",
    method=wrong_roads.unit_taken_as("volume", "gal"),
    says="You took liters for gallons. A gallon is almost four liters.",
)
LEAK = one_of("0.05", "0.08", "0.1", "0.15", "0.2", "0.3")

TEMPLATES = (
    Template(
        level=1,
        kind="number",
        situation=(
            "$place holds {volume}. The gauge has steps of {resolution}. A leak of {leak_rate} "
            "must show."
        ),
        draws={
            "place": one_of("The library's split", "The bakery's cooler", "The florist's cold room",
                            "The town hall's split", "The cider press's store"),
            "v": Between("4", "25", "1"),
            "q": LEAK,
        },
        question=Numeric(
            name="hold-for-a-small-system",
            objective="hold-by-volume",
            asks="How long do you hold?",
            asked=_hold("$v L"),
            because="In that time such a leak moves the gauge by five steps.",
            wrong_roads=(ONE_STEP, GALLONS),
            hint="Five steps, times the volume, divided by the leak.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "The shell and tubes of $place hold {volume}. With steps of {resolution}, a leak of "
            "{leak_rate} must show."
        ),
        draws={"place": A_CHILLER, "v": Between("0.5", "5", "0.1"),
               "q": one_of("0.3", "0.5", "0.8", "1", "2")},
        question=Numeric(
            name="hold-for-a-chiller",
            objective="hold-by-volume",
            asks="How long do you hold?",
            asked=_hold("$v m³"),
            because="The leak has to fill all that room before the gauge moves.",
            wrong_roads=(
                ONE_STEP,
                WrongRoad(
                    name="a hundred liters to the cubic meter",
                    method=wrong_roads.times(0.1),
                    says="Ten times too short. A cubic meter is a thousand liters.",
                ),
            ),
            hint="A cubic meter is a thousand liters.",
        ),
    ),
    Template(
        level=1,
        kind="order",
        situation="The same gauge, the same leak that must show.",
        draws={
            "a": Between("5", "9", "1"),
            "b": Between("14", "30", "1"),
            "c": Between("60", "120", "5"),
            "d": Between("250", "500", "10"),
            "e": Between("1.5", "4", "0.1"),
            "q": one_of("0.3", "0.5", "1"),
        },
        take=4,
        question=Order(
            name="shortest-hold-first",
            objective="hold-by-volume",
            asks="Put the system with the shortest hold at the top.",
            items=(
                Item("split", "A split of {volume}", _hold("$a L")),
                Item("cooler", "A walk-in cooler of {volume}", _hold("$b L")),
                Item("ice-bank", "An ice bank of {volume}", _hold("$c L")),
                Item("rack", "A rack of {volume}", _hold("$d L")),
                Item("chiller", "A chiller of {volume}", _hold("$e m³")),
            ),
            because="Small systems show a leak soon. Large ones hide it for hours.",
            hint="Put them in order of volume.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "Your fine gauge is in the shop. The one you have shows steps of {resolution}. "
            "$place holds {volume}, and a leak of {leak_rate} must show."
        ),
        draws={
            "place": one_of("The library's split", "The bakery's cooler", "The florist's cold room",
                            "The town hall's split", "The cider press's store"),
            "v": Between("5", "15", "1"),
            "r": one_of("5", "10", "20"),
            "q": one_of("0.2", "0.3", "0.5", "1"),
        },
        question=Numeric(
            name="hold-with-a-coarse-gauge",
            objective="gauge-step",
            asks="How long do you hold?",
            asked=_hold("$v L", resolution="$r micron"),
            because="A coarse gauge needs a bigger rise before it shows anything.",
            wrong_roads=(
                WrongRoad(
                    name="fine gauge",
                    method=wrong_roads.entered(resolution="1 micron"),
                    says="That is for steps of one micron. This gauge has coarser ones.",
                ),
                WrongRoad(
                    name="two steps",
                    method=wrong_roads.times(2 / 5),
                    says="That is for two steps. Wait for five.",
                ),
            ),
            hint="Hold time grows in step with the gauge's step.",
        ),
    ),
    Template(
        level=2,
        kind="choice",
        situation="A leak of $q micron·L/s must show on $place, $v L inside.",
        draws={
            "place": A_SMALL_SYSTEM,
            "v": Between("6", "14", "1"),
            "q": one_of("0.2", "0.3", "0.5"),
            "a": one_of("0.1", "0.5", "1"),
            "b": one_of("3", "5"),
            "c": one_of("10", "20"),
        },
        question=Choice(
            name="which-gauge-is-quickest",
            objective="gauge-step",
            asks="Which gauge lets you go home first?",
            options=tuple(
                Option(
                    key=key,
                    text="One with steps of {resolution}",
                    says="It takes {hold_time}. Five of its steps have to show.",
                    asked=_hold("$v L", resolution=f"${key} micron"),
                )
                for key in ("a", "b", "c")
            ),
            right=Rank.SMALLEST,
            hint="How large a rise does each one need?",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "Somebody watched $place, {volume} inside, for {duration} with steps of {resolution}. "
            "Nothing moved."
        ),
        draws={"place": A_CHILLER, "v": Between("0.5", "6", "0.1")},
        question=Numeric(
            name="ten-minutes-on-a-large-one",
            objective="ten-minutes",
            asks="How small a leak could such a test have seen?",
            asked=Asked(
                "leak-rate",
                "smallest_leak",
                {"volume": "$v m³", "duration": "10 min", "first_pressure": "300 micron",
                 "last_pressure": "301 micron"},
            ),
            because="On so much room ten minutes show only a very large leak.",
            wrong_roads=(
                ONE_STEP,
                WrongRoad(
                    name="minutes not turned into seconds",
                    method=wrong_roads.times(60),
                    says="That is per minute. The unit says per second: divide by sixty.",
                ),
            ),
            hint="Five steps times the volume in liters, divided by the time in seconds.",
        ),
    ),
    Template(
        level=3,
        kind="choice",
        situation="A gauge with steps of one micron. A leak of $q micron·L/s must show.",
        draws={
            "q": one_of("0.1", "0.15", "0.2"),
            "a": Between("4", "9", "1"),
            "b": Between("60", "200", "10"),
            "c": Between("1", "4", "0.5"),
        },
        question=Choice(
            name="where-ten-minutes-do",
            objective="ten-minutes",
            asks="For which one are ten minutes long enough?",
            options=(
                Option(
                    key="split",
                    text="A split of {volume}",
                    says="It needs {hold_time}.",
                    asked=_hold("$a L"),
                ),
                Option(
                    key="ice-bank",
                    text="An ice bank of {volume}",
                    says="It needs {hold_time}. The leak has more room to fill.",
                    asked=_hold("$b L"),
                ),
                Option(
                    key="chiller",
                    text="A chiller of {volume}",
                    says="It needs {hold_time}. Ten minutes show next to nothing there.",
                    asked=_hold("$c m³"),
                ),
            ),
            right=Rank.SMALLEST,
            hint="Work out the hold of each.",
        ),
    ),
)  # fmt: skip
