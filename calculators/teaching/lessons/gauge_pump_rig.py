"""Lesson: proving the gauge, the pump and the rig before the pull."""

from calculators.teaching import wrong_roads
from calculators.teaching.lesson import Lesson, Objective, Worked
from calculators.teaching.question import Asked, Choice, Item, Numeric, Option, Order, WrongRoad

GAUGES = {
    "reading": "560 micron",
    "accuracy": "10 %",
    "reference": "510 micron",
    "reference_accuracy": "5 %",
}

LESSON = Lesson(
    slug="gauge-pump-rig",
    title="Prove the gauge, the pump and the rig",
    aim="Know that what you read is true before you trust a pull to it.",
    objectives=(
        Objective("prove-gauge", "Compare two gauges and say whether they agree."),
        Objective("prove-pump", "Judge a pump by its blank-off reading."),
        Objective("prove-rig", "Judge a rig from its reading with the ends capped."),
        Objective("gas-and-gauge", "Say what a thermal gauge does in water vapor."),
        Objective("prove-order", "Put the three proofs in order, and say why."),
    ),
    worked=Worked(
        "gauge-check",
        "Two gauges on one tee at a dairy",
        GAUGES,
        shows="They differ. Whether that matters depends on what each can know.",
    ),
    questions=(
        Order(
            name="proofs-in-order",
            objective="prove-order",
            asks="Put the proofs in order, first one at the top.",
            items=(
                Item("gauge", "The gauge against a second gauge"),
                Item("pump", "The pump alone, with the gauge right on it"),
                Item("rig", "The pump with hoses and core tools, capped off"),
                Item("system", "All of it on the system"),
            ),
            because="Each proof leans on the one before. A bad gauge makes the rest worthless.",
            hint="What do you need in order to judge the pump?",
        ),
        Choice(
            name="do-they-agree",
            objective="prove-gauge",
            asks=(
                "Your gauge reads {reading} and is good to {accuracy}. A second one reads "
                "{reference} and is good to {reference_accuracy}. Do they agree?"
            ),
            options=(
                Option(
                    key="agree",
                    text="Yes, within what they can know",
                    says="They differ by {difference}. Up to {allowed_difference} is within both.",
                ),
                Option(
                    key="disagree",
                    text="No, one of them is wrong",
                    says=(
                        "They differ by {difference}. With such gauges up to {allowed_difference} "
                        "means nothing."
                    ),
                ),
                Option(
                    key="undecided",
                    text="Nobody can tell with such gauges",
                    says="They are coarse, but not that coarse. Ask the gauge check card.",
                ),
            ),
            right=Asked("gauge-check", "agreement", GAUGES),
            hint="Use the gauge check card.",
        ),
        Choice(
            name="is-the-pump-good",
            objective="prove-pump",
            asks=(
                "The pump alone reads {blank_off}, on a gauge good to {accuracy}, ballast shut "
                "and oil warm. How is the pump?"
            ),
            options=(
                Option(
                    key="good",
                    text="Good",
                    says="Too high for that. It is somewhere from {lowest} to {highest}.",
                ),
                Option(
                    key="fair",
                    text="Worn or wet",
                    says=(
                        "It may do, but slowly. Change the oil while it is warm, and read again."
                    ),
                ),
                Option(
                    key="poor",
                    text="Not fit for this work",
                    says="It is not that bad: somewhere from {lowest} to {highest}.",
                ),
            ),
            right=Asked("pump-check", "judgment", {"blank_off": "78 micron", "accuracy": "10 %"}),
            hint="Use the pump check card.",
        ),
        Choice(
            name="is-the-rig-tight",
            objective="prove-rig",
            asks=(
                "The pump alone reads {ultimate_pressure}. With a quarter-inch hose and a core "
                "tool on it, capped off, it stops at {rig_reading}. What do you say of the rig?"
            ),
            options=(
                Option(
                    key="tight",
                    text="Tight enough",
                    says="At {target_pressure} its own gas takes {share_at_target} of the flow.",
                ),
                Option(
                    key="leaky",
                    text="It leaks or gives off gas",
                    says=(
                        "No system on it could get below {rig_reading}. Find the part before you "
                        "blame the system."
                    ),
                ),
                Option(
                    key="pump",
                    text="The pump is worn",
                    says="The pump alone was good. What you added is what spoils it.",
                ),
            ),
            right=Asked(
                "rig-check",
                "judgment",
                {"ultimate_pressure": "25 micron", "rig_reading": "420 micron"},
            ),
            hint="Use the rig check card.",
        ),
        Numeric(
            name="gauge-in-vapor",
            objective="gas-and-gauge",
            asks=(
                "A thermal gauge was set in air. Now the system holds only {gas}, truly at "
                "{reference}. What does the gauge read?"
            ),
            asked=Asked(
                "gauge-check",
                "reading_in_gas",
                {"reference": "400 micron", "gas": "water vapor", "kind": "thermal"},
            ),
            relative=0.05,
            because="Water vapor carries heat better than air, so the gauge reads high.",
            wrong_roads=(
                WrongRoad(
                    name="gas left out",
                    method=wrong_roads.input_itself("reference"),
                    says="That is the true pressure. The gauge feels heat, and vapor carries more.",
                ),
                WrongRoad(
                    name="factor turned round",
                    method=wrong_roads.divided_by("reference", "gas_factor"),
                    says="You divided. In water vapor the gauge reads higher than the truth.",
                ),
            ),
            hint="The gauge check card tells what a thermal gauge shows in that gas.",
        ),
    ),
)
