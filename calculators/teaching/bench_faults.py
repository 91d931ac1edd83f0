"""What can be wrong on the practice bench, and what tells one fault from another."""

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Fault:
    """A hidden fault.

    ``name`` is what a learner picks; ``was`` says what it was; ``looks`` how
    it shows on a trace; ``sooner`` the shortest way to it; ``near`` lists
    faults that share the cure, or most of it.
    """

    key: str
    name: str
    was: str
    looks: str
    sooner: str
    near: tuple[str, ...] = ()


FAULTS = (
    Fault(
        key="none",
        name="Nothing is wrong",
        was="Nothing was wrong: the system was dry and tight, and the rig was sound.",
        looks="A sound system goes down without a stop and, shut in, stands nearly still.",
        sooner=(
            "Pull to 500 micron or less, shut the valve at the system, and hold until the decay "
            "judge passes it. Nothing else proves it."
        ),
    ),
    Fault(
        key="leak-system",
        name="A leak at the system",
        was="The system leaked.",
        looks="Shut in, a leak at the system climbs in a straight line and does not slow down.",
        sooner=(
            "As soon as the pull stops falling, shut the valve at the system. A few minutes tell "
            "a straight line from a bend."
        ),
        near=("leak-rig",),
    ),
    Fault(
        key="leak-rig",
        name="A leak at the rig",
        was="The rig leaked, between the pump and the valve; the system was tight.",
        looks=(
            "With a leak at the rig the pull stops falling, but the system, shut in, stands "
            "still. The rig on its own, pump off, climbs fast."
        ),
        sooner=(
            "Shut the valve at the system, switch the pump off and put the gauge at the pump: so "
            "small a space shows a leak within seconds."
        ),
        near=("leak-system",),
    ),
    Fault(
        key="wet",
        name="Liquid water in the system",
        was="There was liquid water in the system.",
        looks=(
            "Liquid water holds the pull above 4,600 micron. Shut in, the reading climbs fast, "
            "bends and levels off; warmth drives it up."
        ),
        sooner=(
            "Shut the valve while the pull stands still: within minutes the reading climbs past "
            "4,600 micron and bends. No leak bends."
        ),
        near=("frozen",),
    ),
    Fault(
        key="frozen",
        name="Ice in the system",
        was="Water in the system had frozen.",
        looks=(
            "Ice holds the pull below 4,600 micron for a long time. Shut in, the reading climbs "
            "and bends toward 4,600 micron; warmth drives it up."
        ),
        sooner=(
            "When a pull stands still below 4,600 micron, warm the low spots for two minutes: "
            "over ice the reading climbs at once."
        ),
        near=("wet",),
    ),
    Fault(
        key="pump-oil",
        name="Wet oil in the pump",
        was="The pump's oil was full of water, so the pump could not get deep.",
        looks=(
            "With wet pump oil the gauge at the pump stays high with the valve shut. Fresh oil "
            "brings it down."
        ),
        sooner=(
            "Shut the valve, leave the pump on and put the gauge at the pump. A good pump alone "
            "gets below 50 micron within minutes. Then rule out the ballast, and change the oil."
        ),
        near=("ballast",),
    ),
    Fault(
        key="oil-gas",
        name="Refrigerant in the system's oil",
        was="Refrigerant was coming out of the oil in the system.",
        looks=(
            "Gas out of oil levels off when shut in, well below the 4,600 micron that water comes "
            "to, and lower after each further pull."
        ),
        sooner=(
            "Shut the valve for ten minutes, pull again, and shut it once more. Water comes back "
            "to the same height; gas out of oil to a lower one."
        ),
    ),
    Fault(
        key="ballast",
        name="The gas ballast was left open",
        was="The gas ballast had been left open.",
        looks="An open ballast holds the pump at some hundred micron until it is shut.",
        sooner="Shut the ballast when the pull stands still: the reading falls within a minute.",
        near=("pump-oil",),
    ),
    Fault(
        key="core-in",
        name="A valve core was left in",
        was="A valve core had been left in the port.",
        looks=(
            "A core left in makes the pull slow from the start. The gauge at the pump is far "
            "lower than at the system, and pulling the core speeds up the fall."
        ),
        sooner=(
            "Put the gauge at the pump and back early in the pull. A large difference means a "
            "narrow place between the two."
        ),
    ),
    Fault(
        key="gauge-dirty",
        name="The gauge is dirty and reads high",
        was="The gauge was dirty: it read high by a fixed amount.",
        looks=(
            "A dirty gauge stops falling at some hundred micron wherever it sits, stands still "
            "when shut in, and a second gauge beside it reads less."
        ),
        sooner="Read a second gauge beside it as soon as the pull stands still. It takes a minute.",
    ),
    Fault(
        key="gauge-at-pump",
        name="The gauge sat at the pump",
        was="The gauge sat at the pump, where it reads what the pump has, not the system.",
        looks=(
            "A gauge at the pump falls very fast and looks deep. Moved to the system it reads "
            "many times more; with the valve shut it cannot see the system at all."
        ),
        sooner=(
            "A reading that falls much faster than such a hose allows is no gift: put the gauge "
            "at the system in the first minutes."
        ),
    ),
)  # fmt: skip
BY_FAULT = {fault.key: fault for fault in FAULTS}
