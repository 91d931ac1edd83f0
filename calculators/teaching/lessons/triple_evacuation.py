"""Lesson: what breaking the vacuum with nitrogen does, and does not."""

from calculators.teaching import wrong_roads
from calculators.teaching.lesson import Lesson, Objective, Worked
from calculators.teaching.question import Asked, Choice, Item, Numeric, Option, Order, WrongRoad

PULL = {"evacuated_to": "1,500 micron", "broken_to": "0 psig"}
ONE = [PULL]
TWO = [PULL, PULL]
THREE = [PULL, PULL, PULL]


def _purge(output: str, pulls: list[dict[str, str]], **entries: str) -> Asked:
    return Asked("triple-evacuation", output, {"pulls": pulls, **entries})


LESSON = Lesson(
    slug="triple-evacuation",
    title="Triple evacuation",
    aim="Know what each nitrogen break leaves behind, and what it can never take out.",
    objectives=(
        Objective("dilution", "Work out how much air is left after each pull and break."),
        Objective("break-and-water", "Say what a break does to vapor and what to liquid water."),
        Objective("break-in-order", "Put the steps of a nitrogen break in order."),
    ),
    worked=Worked(
        "triple-evacuation",
        "Two pulls on a bakery's cooler",
        {"pulls": TWO, "volume": "12 L"},
        shows="The second pull does to the air what no pump can do in one.",
    ),
    questions=(
        Numeric(
            name="two-pulls",
            objective="dilution",
            asks=(
                "You pull to fifteen hundred micron, break with nitrogen to open air pressure and "
                "pull to the same depth again. What pressure of air is left?"
            ),
            asked=_purge("air_left", TWO),
            relative=0.04,
            because="The rest of the reading is nitrogen.",
            wrong_roads=(
                WrongRoad(
                    name="one pull",
                    method=wrong_roads.entered(pulls=ONE),
                    says="That is what one pull leaves. The break thins it, then you pull again.",
                ),
                WrongRoad(
                    name="half of one pull",
                    method=wrong_roads.times(760_000 / 1500 / 2),
                    says="Two pulls do not halve the air. Each one leaves the same small share.",
                ),
                WrongRoad(
                    name="three pulls",
                    method=wrong_roads.entered(pulls=THREE),
                    says="You counted one pull too many.",
                ),
            ),
            hint="Each break thins what is left by the same share. Use the card.",
        ),
        Choice(
            name="puddle",
            objective="break-and-water",
            asks="A spoonful of liquid water lies in the system. What do three breaks do to it?",
            options=(
                Option(
                    key="gone",
                    text="They take nearly all of it out, as they do with air",
                    says="Air is thinned out. A liquid isn't: it stays until it boils.",
                ),
                Option(
                    key="little",
                    text="They carry off a little vapor and bring a little heat",
                    says=(
                        "The gas of one break can hold only a pinch of vapor. The liquid has to "
                        "boil off under vacuum."
                    ),
                ),
                Option(
                    key="nothing",
                    text="Nothing at all",
                    says="They do help a little: the gas carries vapor off and brings heat in.",
                ),
            ),
            right="little",
        ),
        Numeric(
            name="water-per-break",
            objective="break-and-water",
            asks=(
                "A system of {volume} stands at {temperature}. How much water can the gas of one "
                "break carry off as vapor, at most?"
            ),
            asked=_purge("vapor_per_break", TWO, volume="10 L", temperature="68 °F"),
            relative=0.04,
            because="A teaspoon holds about thirty times as much.",
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
        Order(
            name="break-order",
            objective="break-in-order",
            asks="Put one nitrogen break in order, first step at the top.",
            items=(
                Item("pull", "Pull down to the depth you chose"),
                Item("isolate", "Close the valve to the pump"),
                Item("regulator", "Let dry nitrogen in slowly, through a regulator"),
                Item("wait", "Wait, so that the gas mixes and warms"),
                Item("release", "Let it off, down to open air pressure"),
                Item("again", "Open to the pump and pull again"),
            ),
            because="The wait matters: gas in a dead end takes its time to mix.",
            hint="The pump must be shut off before any pressure comes in.",
        ),
    ),
)
