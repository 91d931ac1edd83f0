"""Lesson: where on the way down the water leaves, and the heat it takes."""

from calculators.teaching import wrong_roads
from calculators.teaching.lesson import Lesson, Objective, Worked
from calculators.teaching.question import Asked, Choice, Numeric, Option, Rank, WrongRoad


def _drying(output: str, pressure: str, **entries: str) -> Asked:
    return Asked("moisture", output, {"pressure": pressure, "water": "10 g", **entries})


LESSON = Lesson(
    slug="where-the-water-leaves",
    title="Where the water leaves",
    aim="Know at which readings most of the water goes, and why heat is worth more than depth.",
    objectives=(
        Objective("vapor-room", "Say how much room a little water takes up as vapor."),
        Objective("water-leaves-early", "Find the readings at which water leaves fastest."),
        Objective("heat-for-water", "Say how much heat water takes, and where it comes from."),
    ),
    worked=Worked(
        "moisture",
        "A spoonful of water in a bakery's cooler",
        {"pressure": "6,000 micron", "water": "5 g", "hose_bore": "3/8 in"},
        shows="High up on the curve a spoonful goes in minutes.",
    ),
    questions=(
        Numeric(
            name="room-for-vapor",
            objective="vapor-room",
            asks="{water} of water turns to vapor at {pressure}. How much room does it fill?",
            asked=_drying("vapor_volume", "500 micron", water="1 g"),
            because="All of that has to pass the hose, from one small drop.",
            wrong_roads=(
                WrongRoad(
                    name="vapor at ten times the pressure",
                    method=wrong_roads.times(0.1),
                    says="Ten times too little. Check the noughts of the reading.",
                ),
            ),
            hint="Use the moisture card. Look for the line with the vapor's volume.",
        ),
        Choice(
            name="fastest-reading",
            objective="water-leaves-early",
            asks="The same hose, pump and puddle. At which reading does the water leave soonest?",
            options=(
                Option(
                    key="deep",
                    text="At {pressure}",
                    says=(
                        "There it takes {removal_time}. Thin vapor needs far more room, and the "
                        "hose passes less of it."
                    ),
                    asked=_drying("removal_time", "500 micron"),
                ),
                Option(
                    key="middle",
                    text="At {pressure}",
                    says="There it takes {removal_time}. Higher up it goes sooner.",
                    asked=_drying("removal_time", "1,500 micron"),
                ),
                Option(
                    key="high",
                    text="At {pressure}",
                    says=(
                        "There it takes {removal_time}. The vapor is dense, so the same hose "
                        "carries much more water."
                    ),
                    asked=_drying("removal_time", "6,000 micron"),
                ),
            ),
            right=Rank.SMALLEST,
            hint="Dense vapor carries more water through the same hose.",
        ),
        Numeric(
            name="time-deep",
            objective="water-leaves-early",
            asks=(
                "{water} of water has turned to ice at {pressure}. One hose of {hose_bore} bore, "
                "{hose_length} long, and a {pump_speed} pump. How long does it take at best?"
            ),
            asked=_drying("removal_time", "500 micron", hose_bore="1/4 in", hose_length="6 ft"),
            relative=0.05,
            because="That is why you get the water out before it freezes.",
            wrong_roads=(
                WrongRoad(
                    name="time at the higher reading",
                    method=wrong_roads.entered(pressure="5,000 micron"),
                    says="That is the time higher up. At {pressure} it takes far longer.",
                ),
                WrongRoad(
                    name="a wide hose",
                    method=wrong_roads.entered(hose_bore="3/8 in"),
                    says="That holds for a wider hose. Check the bore.",
                ),
            ),
            hint="Fill in the moisture card just as it stands here.",
        ),
        Numeric(
            name="heat-for-water",
            objective="heat-for-water",
            asks="How much heat must reach {water} of water to turn it all to vapor at {pressure}?",
            asked=_drying("heat_needed", "6,000 micron"),
            relative=0.03,
            because="It comes through the metal around the water. Cold metal is slow to give it.",
            wrong_roads=(
                WrongRoad(
                    name="heat for one gram",
                    method=wrong_roads.entered(water="1 g"),
                    says="That is the heat for one gram. There are more.",
                ),
            ),
            hint="The moisture card gives the heat in all.",
        ),
        Choice(
            name="what-helps",
            objective="heat-for-water",
            asks="A pull hangs just above the triple point. What brings the water out soonest?",
            options=(
                Option(
                    key="pump",
                    text="A bigger pump",
                    says="It cools the water faster. It makes ice, not vapor.",
                ),
                Option(
                    key="wait",
                    text="More time at a deeper reading",
                    says="Deeper, the water is ice, and ice is slow to leave.",
                ),
                Option(
                    key="heat",
                    text="Warm air on the cold part",
                    says="Water leaves as fast as heat reaches it. Give it heat.",
                ),
            ),
            right="heat",
        ),
    ),
)
