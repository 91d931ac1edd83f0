"""Problems: what breaking the vacuum with nitrogen does, and does not."""

from calculators.teaching import wrong_roads
from calculators.teaching.bank.places import A_SMALL_SYSTEM, A_SYSTEM
from calculators.teaching.draw import Between, case, one_of
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


def _pulls(count: int, depth: str = "$p micron", broken_to: str = "0 psig") -> list[dict[str, str]]:
    return [{"evacuated_to": depth, "broken_to": broken_to}] * count


def _purge(output: str, pulls: list[dict[str, str]], **entries: str) -> Asked:
    return Asked("triple-evacuation", output, {"pulls": pulls, **entries})


TEMPLATES = (
    Template(
        level=1,
        kind="number",
        situation=(
            "You pull $place down to $p micron, break with nitrogen to open air pressure, and pull "
            "to the same depth again."
        ),
        draws={"place": A_SYSTEM, "p": Between("500", "3000", "100")},
        question=Numeric(
            name="air-after-two-pulls",
            objective="dilution",
            asks="What pressure of air is left in it?",
            asked=_purge("air_left", _pulls(2)),
            relative=0.04,
            because="The rest of the reading is nitrogen.",
            wrong_roads=(
                WrongRoad(
                    name="one pull",
                    method=wrong_roads.entered(pulls=_pulls(1)),
                    says="That is what one pull leaves. The break thins it, then you pull again.",
                ),
                WrongRoad(
                    name="three pulls",
                    method=wrong_roads.entered(pulls=_pulls(3)),
                    says="You counted one pull too many.",
                ),
            ),
            hint="Each break thins what is left by the same share. Use the card.",
        ),
    ),
    Template(
        level=3,
        kind="number",
        situation=(
            "On $place the vacuum of $p micron is broken with nitrogen up to $g psig, let off, and "
            "pulled to $p micron once more."
        ),
        draws={
            "place": A_SYSTEM,
            "p": Between("600", "3000", "100"),
            "g": Between("5", "25", "1"),
        },
        question=Numeric(
            name="break-above-open-air",
            objective="dilution",
            asks="What pressure of air is left in it?",
            asked=_purge("air_left", _pulls(2, broken_to="$g psig")),
            relative=0.04,
            because="More nitrogen thins the air further before the next pull.",
            wrong_roads=(
                WrongRoad(
                    name="broken to open air only",
                    method=wrong_roads.entered(pulls=_pulls(2)),
                    says="That is for a break to open air pressure. You went above it.",
                ),
                WrongRoad(
                    name="one pull",
                    method=wrong_roads.entered(pulls=_pulls(1)),
                    says="That is what one pull leaves. The break thins it, then you pull again.",
                ),
            ),
            hint="Type the break in the triple evacuation card, as a gauge reading.",
        ),
    ),
    Template(
        level=3,
        kind="choice",
        situation="Three plans for getting the air out of $place.",
        draws={
            "place": A_SYSTEM,
            "a": Between("100", "300", "20"),
            "which": case(
                {"b": Between("1600", "3000", "100"), "c": Between("7000", "9500", "500")},
                {"b": Between("400", "900", "50"), "c": Between("14000", "20000", "1000")},
            ),
        },
        question=Choice(
            name="plan-that-leaves-least-air",
            objective="dilution",
            asks="Which one leaves the least air?",
            options=(
                Option(
                    key="one",
                    text="One pull to $a micron",
                    says="It leaves {air_left} of air. One pull can only leave what it reads.",
                    asked=_purge("air_left", _pulls(1, "$a micron")),
                ),
                Option(
                    key="two",
                    text="Two pulls to $b micron, with a break to open air pressure between",
                    says="It leaves {air_left} of air.",
                    asked=_purge("air_left", _pulls(2, "$b micron")),
                ),
                Option(
                    key="three",
                    text="Three pulls to $c micron, with two breaks to open air pressure",
                    says="It leaves {air_left} of air.",
                    asked=_purge("air_left", _pulls(3, "$c micron")),
                ),
            ),
            right=Rank.SMALLEST,
            hint="Ask the card for each. Every break thins what is left by the same share.",
        ),
    ),
    Template(
        level=1,
        kind="number",
        situation="$place holds {volume} and stands at {temperature}. It is broken with nitrogen.",
        draws={
            "place": one_of("The dairy's chiller", "The bakery's cooler", "The library's split",
                            "The florist's cold room", "The town hall's split"),
            "v": Between("5", "40", "1"),
            "t": Between("45", "85", "5"),
        },
        question=Numeric(
            name="vapor-one-break-carries",
            objective="break-and-water",
            asks="How much water can the gas of one break carry off as vapor, at most?",
            asked=_purge("vapor_per_break", _pulls(3, "1500 micron"), volume="$v L",
                         temperature="$t °F"),
            relative=0.04,
            because="It is a pinch. A puddle has to boil off under vacuum.",
            wrong_roads=(
                WrongRoad(
                    name="all the pulls",
                    method=wrong_roads.other_output("vapor_carried"),
                    says="That is for all the pulls together. One break was asked.",
                ),
                WrongRoad(
                    name="gallons for liters",
                    method=wrong_roads.unit_taken_as("volume", "gal"),
                    says="You took liters for gallons. A gallon is almost four liters.",
                ),
            ),
            hint="Warm gas holds more water than cold gas. The card knows how much.",
        ),
    ),
    Template(
        level=2,
        kind="choice",
        situation=(
            "$w grams of water lie in $place, which holds $v L. Three breaks with dry nitrogen "
            "are planned."
        ),
        draws={
            "place": A_SMALL_SYSTEM,
            "w": Between("10", "40", "1"),
            "v": Between("6", "14", "1"),
        },
        question=Choice(
            name="breaks-and-a-puddle",
            objective="break-and-water",
            asks="What do they do to the puddle?",
            options=(
                Option(
                    key="gone",
                    text="They take nearly all of it out, as they do with air",
                    says="Air is thinned out. A liquid isn't: it stays until it boils.",
                ),
                Option(
                    key="little",
                    text="They carry off a little vapor and bring a little heat",
                    says="The gas holds only a pinch of vapor. The rest has to boil off.",
                ),
                Option(
                    key="nothing",
                    text="Nothing at all",
                    says="They do help a little: the gas carries vapor off and brings heat in.",
                ),
            ),
            right="little",
            hint="How much vapor can a few liters of gas hold?",
        ),
    ),
    Template(
        level=1,
        kind="order",
        situation="You break the vacuum on $place with nitrogen.",
        draws={"place": A_SYSTEM},
        take=5,
        question=Order(
            name="one-break-in-order",
            objective="break-in-order",
            asks="Put these steps of one break in order, first one at the top.",
            items=(
                Item("pull", "Pull down to the depth you chose"),
                Item("isolate", "Close the valve to the pump"),
                Item("regulator", "Let dry nitrogen in slowly, through a regulator"),
                Item("wait", "Wait, so that the gas mixes and warms"),
                Item("release", "Let it off, down to open air pressure"),
                Item("again", "Open to the pump and pull again"),
                Item("hold", "Isolate and hold"),
            ),
            because="The wait matters: gas in a dead end takes its time to mix.",
            hint="The pump must be shut off before any pressure comes in.",
        ),
    ),
    Template(
        level=2,
        kind="fault",
        situation="While the vacuum on $place is broken with nitrogen, $story",
        draws={
            "place": A_SYSTEM,
            "g": Between("2", "8", "1"),
            "which": case(
                {"story": "the pump coughs and throws oil mist.", "key": "open"},
                {"story": "the gauge at the pump jumps to open air at once.", "key": "open"},
                {"story": "the hose kicks and the gauge on the system is past $g psig within a "
                 "second.", "key": "fast"},
                {"story": "the cylinder valve is opened wide, with only a hose between.",
                 "key": "fast"},
                {"story": "it is let off again as soon as $g psig are reached. The next pull takes "
                 "as long as the first.", "key": "wait"},
                {"story": "nobody waits. Afterward there is still much air in a dead end.",
                 "key": "wait"},
            ),
        },
        question=Choice(
            name="what-was-wrong-with-the-break",
            objective="break-in-order",
            asks="What was done wrong?",
            options=(
                Option(
                    key="open",
                    text="The valve to the pump was open",
                    says="Close it before any pressure comes in. The pump is not made for that.",
                ),
                Option(
                    key="fast",
                    text="There was no regulator",
                    says="Nitrogen goes in slowly, through a regulator set low.",
                ),
                Option(
                    key="wait",
                    text="It was not given time to mix and warm",
                    says="Gas in a dead end takes its time to mix. Wait before you let it off.",
                ),
            ),
            right="$key",
            hint="Go through the steps of a break, one by one.",
        ),
    ),
)  # fmt: skip
