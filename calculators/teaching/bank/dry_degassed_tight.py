"""Problems: the three aims, the order of the work, recovery and evacuation."""

from calculators.teaching import wrong_roads
from calculators.teaching.bank.places import A_SYSTEM
from calculators.teaching.draw import Between, case, one_of
from calculators.teaching.problem import Template
from calculators.teaching.question import Asked, Choice, Item, Numeric, Option, Order, WrongRoad

TEMPLATES = (
    Template(
        level=1,
        kind="fault",
        situation="You look after $place. $sign",
        draws={
            "place": A_SYSTEM,
            "which": case(
                {
                    "sign": "After isolating, the gauge climbs, slows down and levels off by "
                    "itself. It does so again after a longer pull.",
                    "key": "dry",
                },
                {
                    "sign": "Ice blocks the expansion valve on the first warm morning after "
                    "the job. Thawed, it runs for an hour.",
                    "key": "dry",
                },
                {
                    "sign": "The oil turns sour within a season, and copper shows up on steel.",
                    "key": "dry",
                },
                {
                    "sign": "It was pressure tested, holds perfectly and has no water in it, but "
                    "the pull was stopped early. Now the condenser runs at too high a pressure.",
                    "key": "degassed",
                },
                {
                    "sign": "Nitrogen from the last break was never pulled out. The charge was "
                    "weighed in right, yet the head pressure is far too high.",
                    "key": "degassed",
                },
                {
                    "sign": "After isolating, the gauge climbs by the same amount every minute "
                    "and never slows down.",
                    "key": "tight",
                },
                {
                    "sign": "It cooled well in spring. By autumn a third of the charge is gone.",
                    "key": "tight",
                },
            ),
        },
        question=Choice(
            name="which-aim-was-missed",
            objective="three-aims",
            asks="Which aim of the evacuation was missed?",
            options=(
                Option(
                    key="dry",
                    text="Dry",
                    says="Dry is about water: it boils, freezes, and makes acid with oil.",
                ),
                Option(
                    key="degassed",
                    text="Degassed",
                    says="Air and nitrogen do not condense. Left inside, they only add pressure.",
                ),
                Option(
                    key="tight",
                    text="Tight",
                    says="Tight is about what comes in later, or goes out.",
                ),
            ),
            right="$key",
            hint="Water, gas that was never pulled out, or gas that keeps passing the wall?",
        ),
    ),
    Template(
        level=2,
        kind="choice",
        situation="On $place you want to know whether it is $aim.",
        draws={
            "place": A_SYSTEM,
            "aim": one_of("degassed", "dry", "tight"),
        },
        question=Choice(
            name="what-shows-the-aim",
            objective="three-aims",
            asks="What do you look at?",
            options=(
                Option(
                    key="degassed",
                    text="How deep the reading gets at the system, away from the pump",
                    says="A deep reading there says that air and nitrogen are out.",
                ),
                Option(
                    key="dry",
                    text="Whether the gauge climbs and then levels off once the valve is shut",
                    says="Water goes on boiling until its own pressure stops it.",
                ),
                Option(
                    key="tight",
                    text="Whether the gauge keeps climbing at one pace once the valve is shut",
                    says="Air comes in at the same rate for as long as you watch.",
                ),
            ),
            right="$aim",
            hint="Each one leaves its own mark on the gauge.",
        ),
    ),
    Template(
        level=1,
        kind="order",
        situation="A part was changed on $place.",
        draws={"place": A_SYSTEM},
        take=5,
        question=Order(
            name="job-in-order",
            objective="order-of-work",
            asks="Put these steps of the job in order, first one at the top.",
            items=(
                Item("recover", "Recover the refrigerant by the rules"),
                Item("repair", "Change the part, with nitrogen flowing while you braze"),
                Item("pressure", "Test with dry nitrogen under pressure"),
                Item("gauge", "Prove the gauge against a second one"),
                Item("pump", "Prove the pump alone, then with the rig"),
                Item("pull", "Pull, and read the curve at the system"),
                Item("isolate", "Isolate, hold and judge"),
                Item("charge", "Weigh in the charge"),
                Item("record", "Leave the record with the owner"),
            ),
            because="Each step makes the next one worth doing.",
            hint="Big leaks are found under pressure, before any time is spent on a vacuum.",
        ),
    ),
    Template(
        level=1,
        kind="number",
        situation=(
            "A recovery machine on $place stops at {pressure}. The barometer stands at {barometer}."
        ),
        draws={
            "place": A_SYSTEM,
            "r": one_of("4", "5", "8", "10", "11", "20", "21"),
            "b": Between("28.6", "30.4", "0.1"),
        },
        question=Numeric(
            name="left-after-recovery",
            objective="recovery-is-not-drying",
            asks="What absolute pressure is left?",
            asked=Asked(
                "convert",
                "absolute_pressure",
                {"pressure": "$r inHg-vac", "barometer": "$b inHg"},
            ),
            because="That is hundreds of times above a target in micron.",
            wrong_roads=(
                WrongRoad(
                    name="vacuum reading taken as absolute",
                    method=wrong_roads.unit_taken_as("pressure", "inHg"),
                    says="Those inches count down from the barometer. Take them away from it.",
                ),
                WrongRoad(
                    name="an inch taken as a thousand micron",
                    method=wrong_roads.times(1 / 25.4),
                    says="You took an inch for a millimeter. An inch is over twenty-five of them.",
                ),
            ),
            hint="Take the reading away from the barometer.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "Recovery on $place ended with {pressure} absolute left inside. The owner asks why "
            "that does not dry the system as well."
        ),
        draws={"place": A_SYSTEM, "p": Between("9", "26", "0.5")},
        question=Numeric(
            name="boiling-after-recovery",
            objective="recovery-is-not-drying",
            asks="How warm would it have to be for water to boil at that pressure?",
            asked=Asked("boiling-point", "temperature", {"pressure": "$p inHg"}),
            absolute=0.6,
            because="No system is that warm, so its water stays where it is.",
            wrong_roads=(
                WrongRoad(
                    name="boiling point in open air",
                    method=wrong_roads.entered(pressure="1 atm"),
                    says="That is for open air. Some of the pressure has been taken away.",
                ),
                WrongRoad(
                    name="inches taken as millimeters",
                    method=wrong_roads.unit_taken_as("pressure", "mmHg"),
                    says="You read inches as millimeters. An inch is over twenty-five of them.",
                ),
            ),
            hint="The boiling point card takes inches of mercury too.",
        ),
    ),
    Template(
        level=2,
        kind="fault",
        situation="On $place $story",
        draws={
            "place": A_SYSTEM,
            "hours": one_of("two", "three", "four"),
            "which": case(
                {
                    "story": "the pull hangs after $hours hours. Then a joint is found that hisses "
                    "as soon as nitrogen goes in.",
                    "key": "pressure",
                },
                {
                    "story": "a torn seal lets the vacuum climb. Soap finds it in a minute, once "
                    "there is pressure inside.",
                    "key": "pressure",
                },
                {
                    "story": "the pull ends after $hours hours at a low reading. A second gauge on "
                    "the same tee reads ten times as much.",
                    "key": "gauge",
                },
                {
                    "story": "the reading was fine all day. In the evening it turns out that the "
                    "gauge never moved.",
                    "key": "gauge",
                },
                {
                    "story": "the reading at the pump was deep, so it was charged at once. A week "
                    "later there is ice in the valve.",
                    "key": "hold",
                },
                {
                    "story": "the pump was switched off at the target and the refrigerant let in "
                    "straight away. By autumn it is empty.",
                    "key": "hold",
                },
            ),
        },
        question=Choice(
            name="which-step-was-skipped",
            objective="order-of-work",
            asks="Which step was skipped?",
            options=(
                Option(
                    key="pressure",
                    text="The test with nitrogen under pressure",
                    says="Big leaks are found under pressure, before time is spent on a vacuum.",
                ),
                Option(
                    key="gauge",
                    text="Proving the gauge",
                    says="A gauge that was not compared with another can say anything.",
                ),
                Option(
                    key="hold",
                    text="Isolating and holding",
                    says="Only the hold shows whether it is dry and tight.",
                ),
            ),
            right="$key",
            hint="Which step would have shown the trouble in time?",
        ),
    ),
)
