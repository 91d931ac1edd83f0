"""Problems: pump, hose and core as one path, and its narrowest place."""

from typing import Any

from calculators.teaching import wrong_roads
from calculators.teaching.bank.places import A_SYSTEM
from calculators.teaching.draw import case, one_of
from calculators.teaching.problem import Template
from calculators.teaching.question import Asked, Choice, Numeric, Option, Rank, WrongRoad

TOOL = {"part": "core-tool"}
NARROW = [{"part": "hose-1/4"}, TOOL]
WIDE = [{"part": "hose-3/8"}, TOOL]


def _rig(output: str, path: list[dict[str, Any]], pump_speed: str = "$s CFM") -> Asked:
    entries = {"pressure": "$p micron", "pump_speed": pump_speed, "path": path}
    return Asked("pumping-speed", output, entries)


SPEED = one_of("4", "5", "6", "8")
READING = one_of("300", "400", "500", "800", "1,000")
WIDER_HOSE = WrongRoad(
    name="three-eighths hose",
    method=wrong_roads.entered(path=WIDE),
    says="That is right for a three-eighths hose. This one is a quarter inch.",
)

TEMPLATES = (
    Template(
        level=1,
        kind="number",
        situation=(
            "A pump of {pump_speed} pulls on $place through a six-foot quarter-inch hose and a "
            "core "
            "tool. The system is at {pressure}."
        ),
        draws={"place": A_SYSTEM, "s": SPEED, "p": READING},
        question=Numeric(
            name="speed-at-the-system",
            objective="effective-speed",
            asks="What pumping speed is left at the system?",
            asked=_rig("effective_speed", NARROW),
            relative=0.05,
            because="The number on the pump holds at the pump's own inlet only.",
            wrong_roads=(
                WrongRoad(
                    name="speed on the pump",
                    method=wrong_roads.input_itself("pump_speed"),
                    says="That is the speed at the pump. The hose lets only a little through.",
                ),
                WIDER_HOSE,
            ),
            hint="Fill in the pumping speed card: the pump, then the hose, then the core tool.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "A pump of {pump_speed} pulls on $place through a six-foot three-eighths hose and a "
            "core "
            "tool. The system is at {pressure}."
        ),
        draws={"place": A_SYSTEM, "s": SPEED, "p": READING},
        question=Numeric(
            name="share-of-the-pump",
            objective="effective-speed",
            asks="What percentage of the pump is left at the system?",
            asked=_rig("share_left", WIDE),
            relative=0.05,
            because="The rest of the pump has nothing to do.",
            wrong_roads=(
                WrongRoad(
                    name="quarter-inch hose",
                    method=wrong_roads.entered(path=NARROW),
                    says="That is right for a quarter-inch hose. This one is three eighths.",
                ),
                WrongRoad(
                    name="share of the loss",
                    method=wrong_roads.other_output("bottleneck_share"),
                    says="That is how much of the loss one part makes. Ask what is left.",
                ),
            ),
            hint="It is a line under the answer of the pumping speed card.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "A pump of {pump_speed}, a six-foot quarter-inch hose and a core tool. The system, "
            "$place, is at {pressure}."
        ),
        draws={"place": A_SYSTEM, "s": SPEED, "p": READING},
        question=Numeric(
            name="reading-at-the-pump",
            objective="gauge-place",
            asks="What does a gauge right at the pump read?",
            asked=_rig("pump_pressure", NARROW),
            relative=0.05,
            because="The pressure falls along the hose. At the pump it is always lower.",
            wrong_roads=(
                WrongRoad(
                    name="same at both ends",
                    method=wrong_roads.input_itself("pressure"),
                    says="Gas only flows when the pressure falls along the way. Yours did not.",
                ),
                WIDER_HOSE,
            ),
            hint="It is one of the lines under the answer of the pumping speed card.",
        ),
    ),
    Template(
        level=3,
        kind="number",
        situation=(
            "A gauge at the pump looks fine, but $place is still at {pressure}. Between them: a "
            "six-foot $bore hose and a core tool, behind a pump of {pump_speed}."
        ),
        draws={
            "place": A_SYSTEM,
            "s": SPEED,
            "p": one_of("500", "800", "1,000"),
            "which": case(
                {"hose": "hose-1/4", "bore": "quarter-inch"},
                {"hose": "hose-3/8", "bore": "three-eighths"},
            ),
        },
        question=Numeric(
            name="how-far-the-pump-lies",
            objective="gauge-place",
            asks="By what factor does the gauge at the pump read too low?",
            asked=_rig("reading_ratio", [{"part": "$hose"}, TOOL]),
            relative=0.05,
            because="Measure at the system, as far from the pump as you can.",
            wrong_roads=(
                WrongRoad(
                    name="share instead of factor",
                    method=wrong_roads.other_output("share_left"),
                    says="That is the share of the pump that is left. The factor is above one.",
                ),
            ),
            hint="Pressure at the system over pressure at the pump.",
        ),
    ),
    Template(
        level=1,
        kind="fault",
        situation=(
            "A pump of {pump_speed} pulls on $place through $rig. The system is at {pressure} and "
            "hardly falls."
        ),
        draws={
            "place": A_SYSTEM,
            "p": READING,
            "s": one_of("4", "6", "8"),
            "which": case(
                {
                    "rig": "a six-foot three-quarter hose onto a port with its core still in",
                    "one": "hose-3/4",
                    "two": "core-in",
                },
                {
                    "rig": "a six-foot half-inch hose onto a port with its core still in",
                    "one": "hose-1/2",
                    "two": "core-in",
                },
                {
                    "rig": "a six-foot charging hose of three-sixteenths bore and a core tool",
                    "one": "hose-3/16",
                    "two": "core-tool",
                },
                {
                    "rig": "a six-foot quarter-inch hose and a core tool",
                    "one": "hose-1/4",
                    "two": "core-tool",
                },
                {
                    "rig": "a six-foot three-quarter hose and a core tool",
                    "one": "hose-3/4",
                    "two": "core-tool",
                },
            ),
        },
        question=Choice(
            name="what-holds-the-rig-back",
            objective="find-bottleneck",
            asks="What holds it back most?",
            options=tuple(
                Option(
                    key=key,
                    text=text,
                    says="Most is lost in one part: {bottleneck}, {bottleneck_share} of the loss.",
                )
                for key, text in (
                    ("pump", "The pump"),
                    ("hose", "The hose"),
                    ("core-tool", "The core tool"),
                    ("valve-core", "The valve core"),
                )
            ),
            right=_rig("bottleneck", [{"part": "$one"}, {"part": "$two"}]),
            hint="The smallest hole on the way decides. The pumping speed card names it.",
        ),
    ),
    Template(
        level=2,
        kind="choice",
        situation=(
            "A pump of {pump_speed}, a six-foot quarter-inch hose and a core tool pull on a system "
            "at {pressure}. You may change one thing."
        ),
        draws={
            "p": READING,
            "which": case(
                {"s": "4", "t": "8"}, {"s": "5", "t": "10"}, {"s": "6", "t": "12"},
                {"s": "8", "t": "12"},
            ),
            "l": one_of("3", "4", "5"),
        },
        question=Choice(
            name="one-change",
            objective="find-bottleneck",
            asks="Which change gives the system the most speed?",
            options=(
                Option(
                    key="pump",
                    text="A pump of $t CFM",
                    says="It leaves {effective_speed} at the system. The hose is in the way.",
                    asked=_rig("effective_speed", NARROW, "$t CFM"),
                ),
                Option(
                    key="hose",
                    text="A three-eighths hose of the same length",
                    says="It leaves {effective_speed} at the system.",
                    asked=_rig("effective_speed", WIDE),
                ),
                Option(
                    key="short",
                    text="The same hose cut to $l feet",
                    says="It leaves {effective_speed} at the system. Shorter helps, wider more.",
                    asked=_rig(
                        "effective_speed", [{"part": "hose-1/4", "length": "$l ft"}, TOOL]
                    ),
                ),
            ),
            right=Rank.LARGEST,
            hint="Try each one in the card.",
        ),
    ),
)  # fmt: skip
