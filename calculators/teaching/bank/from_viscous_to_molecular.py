"""Problems: how gas flows in a hose, and why the bore matters so much."""

from calculators.teaching import wrong_roads
from calculators.teaching.draw import Between, Round, case, one_of
from calculators.teaching.problem import Template
from calculators.teaching.question import Asked, Choice, Item, Numeric, Option, Order, WrongRoad


def _hose(output: str, part: str, pressure: str, **entries: str) -> Asked:
    return Asked("conductance", output, {"part": part, "pressure": pressure, **entries})


FOURTH_POWER = WrongRoad(
    name="fourth power alone",
    method=wrong_roads.other_output("viscous_conductance"),
    says="That is the formula for thick flow alone. In thin gas the wall helps, so more passes.",
)
MOLECULAR = WrongRoad(
    name="molecular flow alone",
    method=wrong_roads.other_output("molecular_conductance"),
    says="That holds far deeper, where molecules no longer meet each other.",
)
A_HOSE = case(
    {"hose": "hose-1/4", "bore": "a quarter-inch"},
    {"hose": "hose-3/8", "bore": "a three-eighths"},
)

TEMPLATES = (
    Template(
        level=1,
        kind="number",
        situation="A six-foot hose of $bore bore pulls air at {pressure}.",
        draws={"which": A_HOSE, "p": Between("100", "360", "20")},
        question=Numeric(
            name="what-the-hose-passes",
            objective="conductance-falls",
            asks="What is its conductance?",
            asked=_hose("conductance", "$hose", "$p micron"),
            relative=0.03,
            because="Put any pump behind it: at that reading no more can come through.",
            wrong_roads=(
                FOURTH_POWER,
                MOLECULAR,
                WrongRoad(
                    name="flow in open air",
                    method=wrong_roads.entered(pressure="1 atm"),
                    says="That is in open air. At {pressure} the same hose passes far less.",
                ),
            ),
            hint="Choose the hose in the conductance card and type the pressure.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "At $high micron you know what a six-foot hose of $bore bore passes. The pull goes on "
            "to {pressure}."
        ),
        draws={
            "which": A_HOSE,
            "high": one_of("500", "600", "800", "1,000"),
            "p": Between("20", "70", "5"),
        },
        question=Numeric(
            name="deeper-in-the-same-hose",
            objective="conductance-falls",
            asks="What does it pass now, in air?",
            asked=_hose("conductance", "$hose", "$p micron"),
            relative=0.03,
            because="It no longer falls in step: further down it levels off at a floor.",
            wrong_roads=(
                WrongRoad(
                    name="scaled down from the higher reading",
                    method=wrong_roads.scaled_from("pressure", "$high micron"),
                    says=(
                        "You scaled it down with the pressure. Flow falls in step only while "
                        "molecules push each other along. Here the wall takes over."
                    ),
                ),
                FOURTH_POWER,
            ),
            hint="Ask the card again; do not scale.",
        ),
    ),
    Template(
        level=1,
        kind="choice",
        situation="Air moves through a six-foot hose of $bore bore at {pressure}.",
        draws={
            "which": A_HOSE,
            "at": case(
                {"p": Round("20000", "90000")},
                {"p": Round("40", "200")},
                {"p": one_of("0.5", "0.8", "1", "1.5", "2", "3")},
            ),
        },
        question=Choice(
            name="kind-of-flow",
            objective="flow-regimes",
            asks="Which kind of flow is it?",
            options=(
                Option(
                    key="viscous",
                    text="Viscous: molecules push each other along",
                    says="At {pressure} a molecule flies {mean_free_path} before it meets another.",
                ),
                Option(
                    key="transition",
                    text="In between: they meet each other and the wall",
                    says="At {pressure} a molecule flies {mean_free_path}. Compare with the bore.",
                ),
                Option(
                    key="molecular",
                    text="Molecular: they only meet the wall",
                    says="At {pressure} a molecule flies {mean_free_path} before it meets another.",
                ),
            ),
            right=_hose("regime", "$hose", "$p micron"),
            hint="Compare the mean free path with the bore.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation="A hose holds air at {pressure} and room temperature.",
        draws={"p": Round("10", "2000")},
        question=Numeric(
            name="mean-free-path",
            objective="flow-regimes",
            asks="How far does a molecule fly, on average, before it meets another?",
            asked=_hose("mean_free_path", "hose-1/4", "$p micron"),
            relative=0.03,
            because="Beside the bore of the hose it tells which kind of flow it is.",
            wrong_roads=(
                WrongRoad(
                    name="micron taken as pascal",
                    method=wrong_roads.unit_taken_as("pressure", "Pa"),
                    says="You took micron for pascal. A micron is only an eighth of one.",
                ),
                WrongRoad(
                    name="ten times the pressure",
                    method=wrong_roads.times(0.1),
                    says="Ten times too short. Check the noughts of the reading.",
                ),
            ),
            hint="It is a line under the answer of the conductance card.",
        ),
    ),
    Template(
        level=1,
        kind="order",
        situation="Hoses of one length, all in air at $p micron.",
        draws={"p": Between("200", "1500", "50")},
        take=4,
        question=Order(
            name="hoses-by-what-they-pass",
            objective="bore-counts",
            asks="Put the one that passes least at the top.",
            items=tuple(
                Item(key, f"{words} bore", _hose("conductance", part, "$p micron"))
                for key, words, part in (
                    ("three-sixteenths", "Three-sixteenths", "hose-3/16"),
                    ("quarter", "Quarter-inch", "hose-1/4"),
                    ("three-eighths", "Three-eighths", "hose-3/8"),
                    ("half", "Half-inch", "hose-1/2"),
                    ("three-quarters", "Three-quarter", "hose-3/4"),
                )
            ),
            because="Each step up in bore passes several times more.",
            hint="Put the bores in order. It is that simple.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation="A hose of $bore bore is {length} long. It pulls air at {pressure}.",
        draws={
            "which": A_HOSE,
            "l": one_of("2", "3", "4", "9", "10", "12"),
            "p": one_of("200", "300", "400", "500", "800"),
        },
        question=Numeric(
            name="hose-of-another-length",
            objective="bore-counts",
            asks="What is its conductance?",
            asked=_hose("conductance", "$hose", "$p micron", length="$l ft"),
            relative=0.03,
            because="Length counts in step. The bore counts far more than that.",
            wrong_roads=(
                WrongRoad(
                    name="six feet",
                    method=wrong_roads.entered(length="6 ft"),
                    says="That is for six feet. This one is {length} long.",
                ),
                WrongRoad(
                    name="feet taken as meters",
                    method=wrong_roads.unit_taken_as("length", "m"),
                    says="You took feet for meters. A meter is over three feet.",
                ),
            ),
            hint="Type the length in the conductance card.",
        ),
    ),
    Template(
        level=3,
        kind="number",
        situation="You change a six-foot $from-inch hose for one of $to-inch bore.",
        draws={
            "which": case(
                {"a": "hose-3/16", "b": "hose-1/4", "from": "three-sixteenths", "to": "quarter"},
                {"a": "hose-1/4", "b": "hose-3/8", "from": "quarter", "to": "three-eighths"},
                {"a": "hose-1/4", "b": "hose-1/2", "from": "quarter", "to": "half"},
                {"a": "hose-3/8", "b": "hose-1/2", "from": "three-eighths", "to": "half"},
                {"a": "hose-3/16", "b": "hose-3/8", "from": "three-sixteenths",
                 "to": "three-eighths"},
            ),
            "p": one_of("60", "80", "100", "120", "150"),
        },
        question=Numeric(
            name="gain-of-the-wider-hose",
            objective="bore-counts",
            asks="How many times more does the hose itself pass at {target_pressure}?",
            asked=Asked(
                "compare-rigs",
                "conductance_ratio",
                {
                    "rigs": [{"name": "old", "hose": "$a"}, {"name": "new", "hose": "$b"}],
                    "target_pressure": "$p micron",
                },
            ),
            relative=0.03,
            because="In thin gas the gain is smaller than the fourth power, and still large.",
            wrong_roads=(
                WrongRoad(
                    name="fourth power of the bores",
                    method=wrong_roads.other_output("fourth_power"),
                    says="That is the fourth power. In thin gas the wall helps the narrow hose.",
                ),
            ),
            hint="The card that compares rigs gives the gain of the hoses alone.",
        ),
    ),
)  # fmt: skip
