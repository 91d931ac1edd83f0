"""Lesson: the curve of a pull, and where its time goes."""

from calculators.teaching import wrong_roads
from calculators.teaching.lesson import Lesson, Objective, Worked
from calculators.teaching.question import Asked, Choice, Item, Numeric, Option, Order, WrongRoad

NARROW = [{"part": "hose-1/4"}, {"part": "core-tool"}]
WIDE = [{"part": "hose-3/8"}, {"part": "core-tool"}]


def _pull(output: str, **entries: object) -> Asked:
    return Asked("pull-down", output, {"volume": "8 L", "path": NARROW, **entries})


LESSON = Lesson(
    slug="the-pull-down-curve",
    title="The pull-down curve",
    aim="Know what a healthy pull looks like, where its time goes, and when it will never end.",
    objectives=(
        Objective("pull-time", "Work out how long a dry pull takes with your rig."),
        Objective("pull-slows", "Say which part of a pull takes longest, and why."),
        Objective("never-gets-there", "Tell when a pull levels off above its target."),
    ),
    worked=Worked(
        "pull-down",
        "A split in a village hall, on a three-eighths hose",
        {"volume": "8 L", "path": WIDE},
        shows="Dry, the whole pull takes minutes. If yours takes hours, something is inside.",
    ),
    questions=(
        Numeric(
            name="how-long",
            objective="pull-time",
            asks=(
                "A dry split of {volume}, a {pump_speed} pump, a six-foot quarter-inch hose and a "
                "core tool. How long does it take from open air to {target_pressure}?"
            ),
            asked=_pull("time"),
            relative=0.05,
            because="Water comes on top of that. This is the fastest it can be.",
            wrong_roads=(
                WrongRoad(
                    name="pump alone",
                    method=wrong_roads.other_output("time_pump_alone"),
                    says="That is the pump with no hose at all. The hose takes most of the time.",
                ),
                WrongRoad(
                    name="three-eighths hose",
                    method=wrong_roads.entered(path=WIDE),
                    says="That is right for a three-eighths hose. This one is a quarter inch.",
                ),
            ),
            hint="Fill in the pull-down card: volume, pump, hose, core tool.",
        ),
        Order(
            name="where-time-goes",
            objective="pull-slows",
            asks="The same pull, cut into pieces. Put the piece that takes least time at the top.",
            items=(
                Item(
                    "last",
                    "From {start_pressure} to {target_pressure}",
                    _pull("time", start_pressure="1,000 micron", target_pressure="300 micron"),
                ),
                Item(
                    "middle",
                    "From {start_pressure} to {target_pressure}",
                    _pull("time", start_pressure="10,000 micron", target_pressure="1,000 micron"),
                ),
                Item(
                    "upper",
                    "From {start_pressure} to {target_pressure}",
                    _pull("time", start_pressure="100,000 micron", target_pressure="10,000 micron"),
                ),
            ),
            because="The emptier the system, the less the hose lets through.",
            hint="The hose passes less and less on the way down.",
        ),
        Numeric(
            name="levels-off",
            objective="never-gets-there",
            asks=(
                "A leak feeds in {gas_load}. The rig is the same, and the pump alone reads "
                "{ultimate_pressure}. Where does the pull level off?"
            ),
            asked=_pull("limit_pressure", gas_load="30 micron·L/s", target_pressure="1,500 micron"),
            relative=0.05,
            because="There the hose takes out just what comes in.",
            wrong_roads=(
                WrongRoad(
                    name="blank-off of the pump",
                    method=wrong_roads.input_itself("ultimate_pressure"),
                    says="That is where the pump alone ends. With gas coming in it ends higher.",
                ),
                WrongRoad(
                    name="three-eighths hose",
                    method=wrong_roads.entered(path=WIDE),
                    says="That is right for a three-eighths hose. This one is a quarter inch.",
                ),
            ),
            hint="The card gives the pressure at which the pull would level off.",
        ),
        Choice(
            name="stalls-high",
            objective="never-gets-there",
            asks="Pump and rig were good this morning. The pull hangs at fifteen hundred micron. "
            "What do you do first?",
            options=(
                Option(
                    key="wait",
                    text="Let it run over lunch",
                    says="If gas keeps coming in, it will hang there after lunch too.",
                ),
                Option(
                    key="isolate",
                    text="Close the valve at the system and watch the gauge",
                    says="The shape of the rise tells you whether it is a leak or water.",
                ),
                Option(
                    key="pump",
                    text="Fetch a bigger pump",
                    says="The pump is not what holds it. Find out what comes in.",
                ),
            ),
            right="isolate",
        ),
    ),
)
