"""Lesson: pump, hose and core as one path, and its narrowest place."""

from calculators.teaching import wrong_roads
from calculators.teaching.lesson import Lesson, Objective, Worked
from calculators.teaching.question import Asked, Choice, Numeric, Option, Rank, WrongRoad

NARROW = [{"part": "hose-1/4"}, {"part": "core-tool"}]
WIDE = [{"part": "hose-3/8"}, {"part": "core-tool"}]
CORE_LEFT_IN = [{"part": "hose-3/4"}, {"part": "core-in"}]


def _rig(output: str, path: list[dict[str, str]], pump_speed: str = "6 CFM") -> Asked:
    entries = {"pressure": "500 micron", "pump_speed": pump_speed, "path": path}
    return Asked("pumping-speed", output, entries)


LESSON = Lesson(
    slug="the-bottleneck",
    title="The bottleneck: pump, hose, core",
    aim="Find what holds your rig back, and stop believing a gauge at the pump.",
    objectives=(
        Objective("effective-speed", "Find what is left of a pump at the system."),
        Objective("find-bottleneck", "Name the part that holds a rig back most."),
        Objective("gauge-place", "Say why a gauge at the pump reads too low."),
    ),
    worked=Worked(
        "pumping-speed",
        "A six CFM pump on a narrow hose, at a village library",
        {"pressure": "500 micron", "pump_speed": "6 CFM", "path": NARROW},
        shows="Most of the pump never reaches the system.",
    ),
    questions=(
        Numeric(
            name="left-at-system",
            objective="effective-speed",
            asks=(
                "A {pump_speed} pump pulls through a six-foot quarter-inch hose and a core tool. "
                "The system is at {pressure}. What pumping speed is left at the system?"
            ),
            asked=_rig("effective_speed", NARROW),
            relative=0.05,
            because="The number on the pump holds at the pump's own inlet only.",
            wrong_roads=(
                WrongRoad(
                    name="speed on the pump",
                    method=wrong_roads.input_itself("pump_speed"),
                    says="That is the speed at the pump. The hose lets only a little through.",
                ),
                WrongRoad(
                    name="three-eighths hose",
                    method=wrong_roads.entered(path=WIDE),
                    says="That is right for a three-eighths hose. This one is a quarter inch.",
                ),
            ),
            hint="Fill in the pumping speed card: the pump, then the hose, then the core tool.",
        ),
        Numeric(
            name="gauge-at-pump",
            objective="gauge-place",
            asks="The same rig at {pressure} at the system. What does a gauge at the pump read?",
            asked=_rig("pump_pressure", NARROW),
            relative=0.05,
            because="The pressure falls along the hose. At the pump it is always lower.",
            wrong_roads=(
                WrongRoad(
                    name="same at both ends",
                    method=wrong_roads.input_itself("pressure"),
                    says="Gas only flows when the pressure falls along the way. Yours did not.",
                ),
            ),
            hint="It is one of the lines under the answer of the pumping speed card.",
        ),
        Choice(
            name="what-holds-it-back",
            objective="find-bottleneck",
            asks="A three-quarter hose ends in a port with its valve core left in. At {pressure}, "
            "what holds the rig back most?",
            options=(
                Option(
                    key="hose",
                    text="The hose",
                    says="The hose is long but very wide. Look for the smallest hole.",
                ),
                Option(
                    key="pump",
                    text="The pump",
                    says="The pump is idle here: almost nothing reaches it.",
                ),
                Option(
                    key="valve-core",
                    text="The valve core",
                    says="A core leaves a hole the size of a pin. Take it out with a core tool.",
                ),
            ),
            right=_rig("bottleneck", CORE_LEFT_IN),
            hint="The smallest hole on the way decides.",
        ),
        Choice(
            name="best-change",
            objective="find-bottleneck",
            asks="You have the quarter-inch hose and the {pump_speed} pump. Which one change "
            "gives the system the most speed at {pressure}?",
            options=(
                Option(
                    key="pump",
                    text="A pump twice as big",
                    says="It leaves {effective_speed} at the system. The hose is in the way.",
                    asked=_rig("effective_speed", NARROW, pump_speed="12 CFM"),
                ),
                Option(
                    key="hose",
                    text="A three-eighths hose",
                    says="It leaves {effective_speed} at the system.",
                    asked=_rig("effective_speed", WIDE),
                ),
                Option(
                    key="short",
                    text="The same hose at two thirds of its length",
                    says="It leaves {effective_speed} at the system. Shorter helps, wider more.",
                    asked=_rig(
                        "effective_speed", [{"part": "hose-1/4", "length": "4 ft"}, NARROW[1]]
                    ),
                ),
            ),
            right=Rank.LARGEST,
            hint="Try each one in the card.",
        ),
    ),
)
