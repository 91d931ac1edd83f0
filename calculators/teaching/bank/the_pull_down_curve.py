"""Problems: the curve of a pull, and where its time goes."""

from typing import Any

from calculators.teaching import wrong_roads
from calculators.teaching.bank.places import A_SMALL_SYSTEM
from calculators.teaching.draw import Times, case, one_of
from calculators.teaching.problem import Template
from calculators.teaching.question import Asked, Choice, Item, Numeric, Option, Order, WrongRoad

NARROW = [{"part": "hose-1/4"}, {"part": "core-tool"}]
WIDE = [{"part": "hose-3/8"}, {"part": "core-tool"}]


def _pull(output: str, **entries: Any) -> Asked:
    return Asked("pull-down", output, {"volume": "$v L", "path": NARROW, **entries})


def _piece(start: str, end: str) -> Asked:
    return _pull("time", start_pressure=f"{start} micron", target_pressure=f"{end} micron")


VOLUME = one_of("5", "6", "8", "10", "12", "15")
SPEED = one_of("4", "5", "6", "8")
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
            "Dry and tight, $place holds {volume}. A pump of {pump_speed} pulls on it through a "
            "six-foot quarter-inch hose and a core tool."
        ),
        draws={"place": A_SMALL_SYSTEM, "v": VOLUME, "s": SPEED},
        question=Numeric(
            name="time-of-a-dry-pull",
            objective="pull-time",
            asks="How long does it take from open air to {target_pressure}?",
            asked=_pull("time", pump_speed="$s CFM"),
            relative=0.05,
            because="Water comes on top of that. This is the fastest it can be.",
            wrong_roads=(
                WrongRoad(
                    name="pump alone",
                    method=wrong_roads.other_output("time_pump_alone"),
                    says="That is the pump with no hose at all. The hose takes most of the time.",
                ),
                WIDER_HOSE,
                WrongRoad(
                    name="gallons for liters",
                    method=wrong_roads.unit_taken_as("volume", "gal"),
                    says="You took liters for gallons. A gallon is almost four liters.",
                ),
            ),
            hint="Fill in the pull-down card: volume, pump, hose, core tool.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "On $place, {volume}, a pump of {pump_speed} pulls through a six-foot quarter-inch "
            "hose "
            "and a core tool. Somebody offers a pump more than half again as fast."
        ),
        draws={"place": A_SMALL_SYSTEM, "v": VOLUME, "s": SPEED},
        question=Numeric(
            name="half-again-the-pump",
            objective="pull-slows",
            asks="How long does the pull to {target_pressure} take with a pump 1.6 times as fast?",
            asked=_pull("time_larger_pump", pump_speed="$s CFM"),
            relative=0.05,
            because="The hose takes the time. It does not care how big the pump is.",
            wrong_roads=(
                WrongRoad(
                    name="time divided by the gain",
                    method=wrong_roads.other_times("time", 1 / 1.6),
                    says="You divided the time by the gain of the pump. The hose did not change.",
                ),
                WrongRoad(
                    name="pump alone",
                    method=wrong_roads.other_output("time_pump_alone"),
                    says="That is the pump with no hose at all.",
                ),
            ),
            hint="The pull-down card gives it as a line of its own.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "A leak feeds {gas_load} into $place, which holds {volume}. A 5 CFM pump pulls through "
            "a six-foot quarter-inch hose and a core tool; alone it reads {ultimate_pressure}."
        ),
        draws={
            "place": A_SMALL_SYSTEM,
            "v": VOLUME,
            "q": one_of("15", "20", "25", "30", "40", "50", "60"),
        },
        question=Numeric(
            name="where-it-levels-off",
            objective="never-gets-there",
            asks="Where does the pull level off?",
            asked=_pull("limit_pressure", gas_load="$q micron·L/s", target_pressure="5,000 micron"),
            relative=0.05,
            because="There the hose takes out just what comes in.",
            wrong_roads=(
                WrongRoad(
                    name="blank-off of the pump",
                    method=wrong_roads.input_itself("ultimate_pressure"),
                    says="That is where the pump alone ends. With gas coming in it ends higher.",
                ),
                WIDER_HOSE,
            ),
            hint="The card gives the pressure at which the pull would level off.",
        ),
    ),
    Template(
        level=1,
        kind="order",
        situation="The pull on $place, $v L through a quarter-inch hose, is cut into pieces.",
        draws={"place": A_SMALL_SYSTEM, "v": VOLUME},
        take=3,
        question=Order(
            name="where-the-time-goes",
            objective="pull-slows",
            asks="Put the piece that takes least time at the top.",
            items=tuple(
                Item(
                    key,
                    "From {start_pressure} to {target_pressure}",
                    _piece(start, end),
                )
                for key, start, end in (
                    ("upper", "100,000", "10,000"),
                    ("middle", "10,000", "1,000"),
                    ("lower", "1,000", "300"),
                    ("last", "300", "100"),
                )
            ),
            because="The emptier the system, the less the hose lets through.",
            hint="The hose passes less and less on the way down.",
        ),
    ),
    Template(
        level=1,
        kind="curve",
        situation="This is a dry pull on $place, {volume} through a quarter-inch hose.",
        draws={
            "place": A_SMALL_SYSTEM,
            "v": VOLUME,
            "p": one_of("10,000", "3,000", "1,000"),
            "q": Times("p", "0.3"),
            "r": Times("p", "6"),
        },
        figure=_pull("time", target_pressure="200 micron"),
        line="fit",
        question=Choice(
            name="read-the-pull",
            objective="pull-time",
            asks="After what time does it pass $p micron?",
            options=tuple(
                Option(
                    key=key,
                    text="{time}",
                    says="That is where the curve passes {target_pressure}.",
                    asked=_pull("time", target_pressure=f"${name} micron"),
                )
                for key, name in (("right", "p"), ("deeper", "q"), ("earlier", "r"))
            ),
            right="right",
            hint="The scale on the left is logarithmic: each heavy line is ten times the next.",
        ),
    ),
    Template(
        level=2,
        kind="curve",
        situation="A pull on $place does not go on falling.",
        draws={
            "place": A_SMALL_SYSTEM,
            "v": VOLUME,
            "q": one_of("20", "30", "40", "50"),
            "more": Times("q", "3"),
            "less": Times("q", "0.25"),
        },
        figure=_pull("limit_pressure", gas_load="$q micron·L/s", target_pressure="500 micron"),
        line="fit",
        question=Choice(
            name="read-the-level",
            objective="never-gets-there",
            asks="At about which reading does it level off?",
            options=tuple(
                Option(
                    key=key,
                    text="{limit_pressure:micron;2}",
                    says="Follow the flat end of the curve to the left: read it on the log scale.",
                    asked=_pull(
                        "limit_pressure",
                        gas_load=f"${name} micron·L/s",
                        target_pressure="8,000 micron",
                    ),
                )
                for key, name in (("right", "q"), ("above", "more"), ("below", "less"))
            ),
            right="right",
            hint="Each heavy line of the scale is ten times the next.",
        ),
    ),
    Template(
        level=2,
        kind="fault",
        situation="The pull on $place hangs at $p micron. $sign",
        draws={
            "place": A_SMALL_SYSTEM,
            "p": one_of("900", "1,200", "1,500", "1,800", "2,200"),
            "which": case(
                {
                    "sign": "With the valve at the system shut, the rig and the pump fall to "
                    "thirty micron at once.",
                    "key": "system",
                },
                {
                    "sign": "Shut off at the system, the rig still hangs at the same reading. "
                    "The pump alone falls deep.",
                    "key": "rig",
                },
                {
                    "sign": "Shut off right at its inlet, the pump itself gets no deeper than "
                    "that.",
                    "key": "pump",
                },
                {
                    "sign": "The rig capped off and the pump alone were both good this morning, "
                    "and they still are.",
                    "key": "system",
                },
                {
                    "sign": "A second hose in place of the first one brings it down within a "
                    "minute.",
                    "key": "rig",
                },
                {
                    "sign": "Warm new oil in the pump brings the gauge at its inlet down, and then "
                    "the system too.",
                    "key": "pump",
                },
            ),
        },
        question=Choice(
            name="where-it-hangs",
            objective="never-gets-there",
            asks="Where is the fault?",
            options=(
                Option(
                    key="system",
                    text="In the system: a leak or water",
                    says="What is good without the system is not to blame for it.",
                ),
                Option(
                    key="rig",
                    text="In the rig: a hose, a seal or a core tool",
                    says="The rig is what stands between the pump and the system.",
                ),
                Option(
                    key="pump",
                    text="In the pump or its oil",
                    says="The pump has to be judged alone, with nothing behind it.",
                ),
            ),
            right="$key",
            hint="Take parts away one by one. Which one takes the trouble with it?",
        ),
    ),
)  # fmt: skip
