"""Problems: from micron a minute to grams of refrigerant a year."""

from calculators.teaching import wrong_roads
from calculators.teaching.bank.places import A_SMALL_SYSTEM
from calculators.teaching.draw import Between, Draw, case, one_of, total_of
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

RISE = {
    "first_pressure": "$first micron",
    "last_pressure": "$last micron",
    "duration": "$t min",
    "volume": "$v L",
}
DRAWN: dict[str, Draw] = {
    "first": Between("150", "400", "10"),
    "gain": Between("15", "45", "1"),
    "last": total_of("first", "gain"),
    "t": one_of("10", "12", "15", "20", "30"),
    "v": Between("5", "25", "1"),
}


def _leak(output: str, **entries: str) -> Asked:
    return Asked("leak-rate", output, {**RISE, **entries})


MINUTES = WrongRoad(
    name="minutes not turned into seconds",
    method=wrong_roads.times(60),
    says="That is per minute. The unit says per second: divide by sixty.",
)
LAST_READING = WrongRoad(
    name="last reading instead of the rise",
    method=wrong_roads.entered(first_pressure="0 micron"),
    says="You used the last reading. The leak made only the rise.",
)

TEMPLATES = (
    Template(
        level=1,
        kind="number",
        situation=(
            "On $place the gauge rises from {first_pressure} to {last_pressure} in {duration}, at "
            "one pace. The system holds {volume}."
        ),
        draws={"place": A_SMALL_SYSTEM, **DRAWN},
        question=Numeric(
            name="leak-from-a-rise",
            objective="rise-to-leak",
            asks="How big is the leak?",
            asked=_leak("leak_rate"),
            because="Rise times volume, divided by time.",
            wrong_roads=(
                MINUTES,
                LAST_READING,
                WrongRoad(
                    name="gallons for liters",
                    method=wrong_roads.unit_taken_as("volume", "gal"),
                    says="You took liters for gallons. A gallon is almost four liters.",
                ),
            ),
            hint="Rise times volume, divided by the time in seconds.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "A gauge set to pascal rises from {first_pressure} to {last_pressure} in {duration} on "
            "$place, {volume} inside."
        ),
        draws={
            "place": A_SMALL_SYSTEM,
            "first": Between("20", "50", "1"),
            "gain": Between("4", "15", "1"),
            "last": total_of("first", "gain"),
            "t": one_of("10", "15", "20", "30"),
            "v": Between("5", "40", "1"),
        },
        question=Numeric(
            name="leak-in-si",
            objective="rise-to-leak",
            asks="How big is the leak, in Pa·m³/s?",
            asked=_leak("leak_rate", first_pressure="$first Pa", last_pressure="$last Pa"),
            in_unit="Pa·m³/s",
            because="Rise times volume, divided by time: pascal, cubic meters, seconds.",
            wrong_roads=(
                MINUTES,
                LAST_READING,
                WrongRoad(
                    name="liters for cubic meters",
                    method=wrong_roads.times(1e3),
                    says="You left the volume in liters. A cubic meter is a thousand of them.",
                ),
            ),
            hint="Put the liters in cubic meters and the minutes in seconds first.",
        ),
    ),
    Template(
        level=1,
        kind="choice",
        situation="Three systems rise by $gain micron in $t minutes.",
        draws={
            "first": Between("200", "300", "10"),
            "gain": Between("10", "60", "5"),
            "last": total_of("first", "gain"),
            "t": one_of("10", "15", "20"),
            "a": Between("5", "9", "1"),
            "b": Between("20", "45", "1"),
            "c": Between("0.8", "3", "0.1"),
        },
        question=Choice(
            name="same-rise-largest-leak",
            objective="volume-matters",
            asks="Which one leaks most?",
            options=tuple(
                Option(
                    key=key,
                    text=text + " of {volume}",
                    says="Its leak is {leak_rate}. The larger the room, the more came in.",
                    asked=_leak("leak_rate", volume=f"${key} {unit}"),
                )
                for key, text, unit in (
                    ("a", "A split", "L"), ("b", "A cold room", "L"), ("c", "A chiller", "m³")
                )
            ),
            right=Rank.LARGEST,
            hint="How much air had to come in?",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "Two systems rise from {first_pressure} to {last_pressure} in {duration}. One holds "
            "$small L. The other, $place, holds {volume}."
        ),
        draws={
            "place": A_SMALL_SYSTEM,
            **DRAWN,
            "small": Between("2", "4", "0.5"),
            "v": Between("12", "60", "1"),
        },
        question=Numeric(
            name="same-rise-more-room",
            objective="volume-matters",
            asks="How big is the leak of the larger one?",
            asked=_leak("leak_rate"),
            because="The same rise in more room is a larger leak, in step with the volume.",
            wrong_roads=(
                WrongRoad(
                    name="the smaller system",
                    method=wrong_roads.entered(volume="$small L"),
                    says="That is the smaller one. The larger one holds {volume}.",
                ),
                MINUTES,
            ),
            hint="Rise times its own volume, divided by the time in seconds.",
        ),
    ),
    Template(
        level=3,
        kind="order",
        situation="Four holds, each of $t minutes, each with its own rise.",
        draws={
            "t": one_of("10", "15", "20"),
            "first": "250",
            "which": case(
                {"a": Between("8", "10", "1"), "p": Between("300", "310", "1"),
                 "b": Between("30", "36", "1"), "q": Between("290", "300", "1"),
                 "c": Between("150", "180", "5"), "r": Between("275", "285", "1"),
                 "d": Between("1.5", "2", "0.1"), "s": Between("262", "270", "1")},
                {"d": Between("0.8", "1", "0.1"), "s": Between("251", "251", "1"),
                 "c": Between("100", "120", "5"), "r": Between("270", "276", "1"),
                 "a": Between("8", "10", "1"), "p": Between("800", "900", "10"),
                 "b": Between("30", "36", "1"), "q": Between("700", "800", "10")},
            ),
        },
        question=Order(
            name="leaks-in-order",
            objective="volume-matters",
            asks="Put the smallest leak at the top.",
            items=tuple(
                Item(
                    key,
                    text + " of {volume}, up to {last_pressure} from {first_pressure}",
                    Asked(
                        "leak-rate",
                        "leak_rate",
                        {"first_pressure": "$first micron", "last_pressure": f"${last} micron",
                         "duration": "$t min", "volume": f"${key} {unit}"},
                    ),
                )
                for key, text, last, unit in (
                    ("a", "A split", "p", "L"), ("b", "A cold room", "q", "L"),
                    ("c", "An ice bank", "r", "L"), ("d", "A chiller", "s", "m³"),
                )
            ),
            because="Neither the rise nor the volume tells it alone: their product does.",
            hint="Multiply each rise by its volume.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "$place holds {volume} and will run on {refrigerant}. Its gauge rose from "
            "{first_pressure} to {last_pressure} in {duration}, at one pace."
        ),
        draws={
            "place": one_of("The library's split", "The bakery's cooler", "The florist's cold room",
                            "The town hall's split", "The cider press's store"),
            **DRAWN,
            "r": one_of("R-32", "R-410A", "R-134a", "R-290", "R-454B"),
        },
        question=Numeric(
            name="loss-in-a-year",
            objective="leak-to-grams",
            asks="How much refrigerant could it lose in a year of service, at most?",
            asked=_leak("greatest_loss", refrigerant="$r"),
            relative=0.06,
            because="In service the refrigerant presses far harder than the air did in your test.",
            wrong_roads=(
                WrongRoad(
                    name="least loss",
                    method=wrong_roads.other_output("least_loss"),
                    says="That is the least it could lose. The most was asked.",
                ),
                WrongRoad(
                    name="the air that came in",
                    method=wrong_roads.other_output("air_mass_flow"),
                    says="That is the air in a year of vacuum. In service, refrigerant goes out.",
                ),
            ),
            hint="It is the large answer of the leak rate card.",
        ),
    ),
    Template(
        level=3,
        kind="choice",
        situation=(
            "The test on $place leads to a loss of {least_loss} to {greatest_loss} in a year of "
            "service."
        ),
        draws={"place": A_SMALL_SYSTEM, **DRAWN},
        question=Choice(
            name="why-so-wide",
            objective="leak-to-grams",
            asks="Why is that range so wide?",
            options=tuple(
                Option(
                    key=key,
                    text=text,
                    says=says,
                    asked=_leak("greatest_loss"),
                )
                for key, text, says in (
                    ("hole", "Because nobody knows the shape of the hole",
                     "Through one wide hole pressure drives far more than through many fine ones."),
                    ("gauge", "Because the gauge is not exact",
                     "That makes it a little wider. The main reason is another."),
                    ("weather", "Because the weather changes",
                     "It changes the pressure outside by a few percent only."),
                )
            ),
            right="hole",
            hint="From a vacuum test, what do you not know about the leak?",
        ),
    ),
)  # fmt: skip
