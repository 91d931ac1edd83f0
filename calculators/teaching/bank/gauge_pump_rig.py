"""Problems: proving the gauge, the pump and the rig before the pull."""

from calculators.teaching import wrong_roads
from calculators.teaching.bank.places import A_SYSTEM
from calculators.teaching.draw import Between, Round, case, one_of, total_of
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

GAUGES = {
    "reading": "$a micron",
    "accuracy": "$u %",
    "reference": "$b micron",
    "reference_accuracy": "$w %",
}

TEMPLATES = (
    Template(
        level=1,
        kind="choice",
        situation=(
            "Two gauges on one tee at $place. Yours reads {reading} and is good to {accuracy}. "
            "The other reads {reference} and is good to {reference_accuracy}."
        ),
        draws={
            "place": A_SYSTEM,
            "b": Between("300", "900", "10"),
            "which": case(
                {"u": "10", "w": "5", "d": Between("4", "20", "2")},
                {"u": "10", "w": "10", "d": Between("6", "24", "2")},
                {"u": "5", "w": "5", "d": Between("200", "320", "10")},
                {"u": "10", "w": "5", "d": Between("250", "400", "10")},
            ),
            "a": total_of("b", "d"),
        },
        question=Choice(
            name="do-the-gauges-agree",
            objective="prove-gauge",
            asks="Do they agree?",
            options=(
                Option(
                    key="agree",
                    text="Yes, within what they can know",
                    says="They differ by {difference}. Up to {allowed_difference} is within both.",
                ),
                Option(
                    key="disagree",
                    text="No, one of them is wrong",
                    says="They differ by {difference}; {allowed_difference} would be within both.",
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
    ),
    Template(
        level=3,
        kind="number",
        situation=(
            "A gauge good to {accuracy} reads {reading} beside a reference of "
            "{reference_accuracy} that reads {reference}."
        ),
        draws={
            "b": Between("400", "1000", "20"),
            "d": Between("10", "60", "10"),
            "a": total_of("b", "d"),
            "u": one_of("10", "15"),
            "w": one_of("5", "6"),
        },
        question=Numeric(
            name="how-far-apart-they-may-be",
            objective="prove-gauge",
            asks="How far apart may the two be and still agree?",
            asked=Asked("gauge-check", "allowed_difference", GAUGES),
            relative=0.03,
            because="The two uncertainties add up as the sides of a right angle do.",
            wrong_roads=(
                WrongRoad(
                    name="own accuracy alone",
                    method=wrong_roads.other_output("uncertainty"),
                    says="That is your gauge alone. The reference may be off as well.",
                ),
                WrongRoad(
                    name="accuracy of the reference alone",
                    method=wrong_roads.other_output("reference_uncertainty"),
                    says="That is the reference alone. Your gauge may be off as well.",
                ),
            ),
            hint="Use the gauge check card.",
        ),
    ),
    Template(
        level=1,
        kind="choice",
        situation=(
            "The pump alone reads {blank_off} on a gauge good to {accuracy}. Oil warm, ballast "
            "shut."
        ),
        draws={
            "u": one_of("5", "10"),
            "which": case(
                {"p": Between("8", "40", "2")},
                {"p": Between("62", "84", "2")},
                {"p": Between("140", "900", "20")},
            ),
        },
        question=Choice(
            name="how-is-the-pump",
            objective="prove-pump",
            asks="How is the pump?",
            options=tuple(
                Option(
                    key=key,
                    text=text,
                    says="Its blank-off is from {lowest} to {highest}. Compare with the limits.",
                )
                for key, text in (
                    ("good", "Good"),
                    ("fair", "Worn or wet: change the oil and try again"),
                    ("poor", "Not fit for this work"),
                    ("undecided", "This gauge can't tell"),
                )
            ),
            right=Asked("pump-check", "judgment", {"blank_off": "$p micron", "accuracy": "$u %"}),
            hint="Use the pump check card.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "The pump alone reads {blank_off}. The gauge is good to {accuracy} and shows steps of "
            "{resolution}."
        ),
        draws={
            "p": Between("20", "200", "5"),
            "u": one_of("10", "15", "20"),
        },
        question=Numeric(
            name="highest-blank-off",
            objective="prove-pump",
            asks="How high may its true blank-off be?",
            asked=Asked("pump-check", "highest", {"blank_off": "$p micron", "accuracy": "$u %"}),
            relative=0.02,
            because="Judge the pump by the worst that the gauge allows.",
            wrong_roads=(
                WrongRoad(
                    name="the reading itself",
                    method=wrong_roads.input_itself("blank_off"),
                    says="That is the reading. The truth may lie above it.",
                ),
                WrongRoad(
                    name="the low end",
                    method=wrong_roads.other_output("lowest"),
                    says="That is how low it may be. The high end was asked.",
                ),
            ),
            hint="The pump check card gives both ends.",
        ),
    ),
    Template(
        level=2,
        kind="choice",
        situation=(
            "The pump alone reads {ultimate_pressure}. With a quarter-inch hose and a core tool "
            "on it, capped off, it stops at {rig_reading}."
        ),
        draws={
            "u": Between("15", "30", "1"),
            "which": case(
                {"r": Between("35", "48", "1")},
                {"r": Between("300", "450", "10")},
                {"r": Between("550", "900", "10")},
            ),
        },
        question=Choice(
            name="how-is-the-rig",
            objective="prove-rig",
            asks="What do you say of the rig?",
            options=tuple(
                Option(
                    key=key,
                    text=text,
                    says="No system on it could get below {limit_pressure}.",
                )
                for key, text in (
                    ("tight", "Tight enough"),
                    ("fair", "Not tight, but usable"),
                    ("leaky", "Not fit for this target"),
                )
            ),
            right=Asked(
                "rig-check",
                "judgment",
                {"ultimate_pressure": "$u micron", "rig_reading": "$r micron"},
            ),
            hint="Use the rig check card.",
        ),
    ),
    Template(
        level=3,
        kind="fault",
        situation=(
            "Before the pull on $place: the pump alone reads $pump micron, the rig capped off "
            "$rig micron, and a second gauge on the same tee $second micron where yours shows "
            "$rig. $more"
        ),
        draws={
            "place": A_SYSTEM,
            "which": case(
                {
                    "pump": Between("250", "400", "10"),
                    "over": Between("2", "12", "2"),
                    "rig": total_of("pump", "over"),
                    "off": Between("2", "8", "1"),
                    "second": total_of("rig", "-off"),
                    "more": "Oil and ballast were not looked at.",
                    "key": "pump",
                },
                {
                    "pump": Between("18", "30", "1"),
                    "rig": Between("420", "800", "20"),
                    "off": Between("2", "8", "1"),
                    "second": total_of("rig", "-off"),
                    "more": "Shut in, the rig climbs at one pace.",
                    "key": "rig",
                },
                {
                    "pump": Between("260", "340", "10"),
                    "over": Between("2", "12", "2"),
                    "rig": total_of("pump", "over"),
                    "second": Between("22", "38", "1"),
                    "more": "The second gauge was calibrated last month.",
                    "key": "gauge",
                },
            ),
        },
        question=Choice(
            name="which-one-is-at-fault",
            objective="prove-rig",
            asks="What is at fault?",
            options=(
                Option(
                    key="gauge",
                    text="Your gauge",
                    says="A second gauge on the same tee settles whether to believe the first.",
                ),
                Option(
                    key="pump",
                    text="The pump",
                    says="Believe the gauge first. Then look at the pump with nothing on it.",
                ),
                Option(
                    key="rig",
                    text="The rig",
                    says="The rig is at fault when the pump alone is good and the two are not.",
                ),
            ),
            right="$key",
            hint="First the gauge, then the pump, then the rig: which number is the odd one?",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "A thermal gauge was set in air. Now $place holds only {gas}, truly at {reference}."
        ),
        draws={
            "place": A_SYSTEM,
            "g": one_of("water vapor", "R-32", "R-134a", "R-290", "R-410A", "R-22"),
            "p": Round("100", "700"),
        },
        question=Numeric(
            name="gauge-in-another-gas",
            objective="gas-and-gauge",
            asks="What does the gauge read?",
            asked=Asked(
                "gauge-check",
                "reading_in_gas",
                {"reference": "$p micron", "gas": "$g", "kind": "thermal"},
            ),
            relative=0.05,
            because="Such a gauge feels heat, and each gas carries heat in its own way.",
            wrong_roads=(
                WrongRoad(
                    name="gas left out",
                    method=wrong_roads.input_itself("reference"),
                    says="That is the true pressure. The gauge feels heat, not pressure.",
                ),
                WrongRoad(
                    name="factor turned round",
                    method=wrong_roads.divided_by("reference", "gas_factor"),
                    says="You divided by the factor. The reading is the truth times the factor.",
                ),
            ),
            hint="The gauge check card tells what a thermal gauge shows in that gas.",
        ),
    ),
    Template(
        level=1,
        kind="order",
        situation="You set up beside $place.",
        draws={"place": A_SYSTEM},
        take=5,
        question=Order(
            name="proofs-before-the-pull",
            objective="prove-order",
            asks="Put these steps in order, first one at the top.",
            items=(
                Item("warm", "Let the pump run until its oil is warm"),
                Item("gauge", "Compare the gauge with a second one"),
                Item("pump", "Read the pump alone, with the gauge right on it"),
                Item("hoses", "Add hoses and core tools, capped off, and read again"),
                Item("shut-in", "Shut the rig in and watch it for a while"),
                Item("cores", "Connect to the system and take the cores out"),
                Item("pull", "Open to the system and pull"),
            ),
            because="Each proof leans on the one before. A bad gauge makes the rest worthless.",
            hint="What do you need in order to judge the next thing?",
        ),
    ),
    Template(
        level=1,
        kind="choice",
        situation="One thermal gauge, set in air. The true pressure is $p micron each time.",
        draws={
            "p": Round("100", "700"),
            "low": one_of("nitrogen", "R-744"),
            "high": one_of("water vapor", "helium", "R-134a", "R-290"),
        },
        question=Choice(
            name="gas-that-reads-highest",
            objective="gas-and-gauge",
            asks="In which gas does it read highest?",
            options=tuple(
                Option(
                    key=key,
                    text=text,
                    says="There it reads {reading_in_gas}. The gauge feels heat, not pressure.",
                    asked=Asked(
                        "gauge-check",
                        "reading_in_gas",
                        {"reference": "$p micron", "gas": gas, "kind": "thermal"},
                    ),
                )
                for key, text, gas in (
                    ("air", "In air", "air"),
                    ("one", "In $low", "$low"),
                    ("two", "In $high", "$high"),
                )
            ),
            right=Rank.LARGEST,
            hint="Ask the gauge check card for each gas.",
        ),
    ),
    Template(
        level=2,
        kind="fault",
        situation="At $place $skipped Then the pull hangs at $p micron.",
        draws={
            "place": A_SYSTEM,
            "p": Between("700", "1600", "50"),
            "which": case(
                {"skipped": "the pump was never read alone.", "key": "pump"},
                {"skipped": "the gauge agreed with a second one, and the rig was connected "
                 "straight to the system.", "key": "pump"},
                {"skipped": "the gauge was taken out of its box and used.", "key": "gauge"},
                {"skipped": "the gauge had been dropped, and nobody looked at it again.",
                 "key": "gauge"},
                {"skipped": "gauge and pump were proved, but the hoses were not capped off and "
                 "read.", "key": "rig"},
                {"skipped": "the pump alone read well. New hoses were then put on in a hurry.",
                 "key": "rig"},
            ),
        },
        question=Choice(
            name="proof-that-is-missing",
            objective="prove-order",
            asks="Which is the first proof to make up for?",
            options=(
                Option(
                    key="gauge",
                    text="The gauge against a second one",
                    says="Everything else is read on the gauge, so it comes first.",
                ),
                Option(
                    key="pump",
                    text="The pump alone",
                    says="With a gauge you trust, the pump is next: alone, oil warm.",
                ),
                Option(
                    key="rig",
                    text="The rig, capped off",
                    says="With gauge and pump good, what is added next is the rig.",
                ),
            ),
            right="$key",
            hint="Gauge, pump, rig, system: which of them is the first not yet proved?",
        ),
    ),
)  # fmt: skip
