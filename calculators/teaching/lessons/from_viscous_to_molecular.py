"""Lesson: how gas flows in a hose, and why the bore matters so much."""

from calculators.teaching import wrong_roads
from calculators.teaching.lesson import Lesson, Objective, Worked
from calculators.teaching.question import Asked, Choice, Item, Numeric, Option, Order, WrongRoad


def _hose(output: str, part: str, pressure: str) -> Asked:
    return Asked("conductance", output, {"part": part, "pressure": pressure})


LESSON = Lesson(
    slug="from-viscous-to-molecular",
    title="Why bigger hoses",
    aim="See why a hose chokes the end of a pull, and why the bore counts more than the pump.",
    objectives=(
        Objective("flow-regimes", "Tell viscous, transition and molecular flow apart."),
        Objective("conductance-falls", "Say what a hose passes, and why it passes less and less."),
        Objective("bore-counts", "Compare hoses by their true bore."),
    ),
    worked=Worked(
        "conductance",
        "A three-eighths hose near the end of a pull",
        {"part": "hose-3/8", "pressure": "300 micron"},
        shows="Neither of the two simple rules holds here. The card covers the whole way.",
    ),
    questions=(
        Numeric(
            name="quarter-inch",
            objective="conductance-falls",
            asks="What does a six-foot hose of quarter-inch bore pass at {pressure}, in air?",
            asked=_hose("conductance", "hose-1/4", "500 micron"),
            relative=0.03,
            because="Put any pump behind it: at that reading no more can come through.",
            wrong_roads=(
                WrongRoad(
                    name="fourth power alone",
                    method=wrong_roads.other_output("viscous_conductance"),
                    says=(
                        "That is the formula for thick flow alone. Here the gas is so thin that "
                        "it slips along the wall, and a little more comes through."
                    ),
                ),
                WrongRoad(
                    name="molecular flow alone",
                    method=wrong_roads.other_output("molecular_conductance"),
                    says="That holds far deeper, where molecules no longer meet each other.",
                ),
                WrongRoad(
                    name="flow in open air",
                    method=wrong_roads.entered(pressure="1 atm"),
                    says="That is in open air. At {pressure} the same hose passes far less.",
                ),
            ),
            hint="Choose the hose in the conductance card and type the pressure.",
        ),
        Choice(
            name="which-regime",
            objective="flow-regimes",
            asks="Air moves through that hose at {pressure}. Which kind of flow is it?",
            options=(
                Option(
                    key="viscous",
                    text="Viscous: molecules push each other along",
                    says="At {pressure} a molecule flies {mean_free_path} before it meets another.",
                ),
                Option(
                    key="transition",
                    text="In between: they meet each other and the wall",
                    says=(
                        "At {pressure} a molecule flies {mean_free_path} before it meets another. "
                        "That is neither tiny nor large beside the bore."
                    ),
                ),
                Option(
                    key="molecular",
                    text="Molecular: they only meet the wall",
                    says="At {pressure} a molecule still meets others: after {mean_free_path}.",
                ),
            ),
            right=_hose("regime", "hose-1/4", "100 micron"),
            hint="Compare the mean free path with the bore.",
        ),
        Order(
            name="hoses-in-order",
            objective="bore-counts",
            asks="All six feet long, all at the same pressure. Put the one that passes least at "
            "the top.",
            items=(
                Item("half", "Half-inch bore", _hose("conductance", "hose-1/2", "500 micron")),
                Item(
                    "three-sixteenths",
                    "Three-sixteenths bore, as in many charging hoses",
                    _hose("conductance", "hose-3/16", "500 micron"),
                ),
                Item(
                    "three-quarters",
                    "Three-quarter bore",
                    _hose("conductance", "hose-3/4", "500 micron"),
                ),
                Item(
                    "three-eighths",
                    "Three-eighths bore",
                    _hose("conductance", "hose-3/8", "500 micron"),
                ),
            ),
            because="Each step up in bore passes several times more.",
            hint="Put the bores in order. It is that simple.",
        ),
        Numeric(
            name="ten-times-deeper",
            objective="conductance-falls",
            asks="The pull goes on to {pressure}. What does the quarter-inch hose pass now?",
            asked=_hose("conductance", "hose-1/4", "50 micron"),
            relative=0.03,
            because="It no longer falls in step: below this it levels off at a floor.",
            wrong_roads=(
                WrongRoad(
                    name="scaled down from the higher reading",
                    method=wrong_roads.scaled_from("pressure", "500 micron"),
                    says=(
                        "You took a tenth of the first answer. Flow falls in step only while "
                        "molecules push each other along. Here the wall takes over."
                    ),
                ),
                WrongRoad(
                    name="fourth power alone",
                    method=wrong_roads.other_output("viscous_conductance"),
                    says="That is the formula for thick flow alone. Here it is far too low.",
                ),
            ),
            hint="Ask the card again; do not scale.",
        ),
    ),
)
