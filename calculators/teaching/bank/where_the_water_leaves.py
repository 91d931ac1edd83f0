"""Problems: where on the way down the water leaves, and the heat it takes."""

from calculators.teaching import wrong_roads
from calculators.teaching.bank.places import A_SYSTEM
from calculators.teaching.draw import one_of
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


def _drying(output: str, pressure: str, water: str = "10 g", **entries: str) -> Asked:
    return Asked("moisture", output, {"pressure": pressure, "water": water, **entries})


DEEP = one_of("400", "500", "600", "800", "1,000")
HIGH = one_of("5,000", "5,500", "6,000", "7,000", "8,000")
GRAMS = one_of("2", "3", "5", "8", "12", "15", "20", "25")
ONE_GRAM = WrongRoad(
    name="one gram",
    method=wrong_roads.entered(water="1 g"),
    says="That is for one gram. There are more: {water}.",
)

TEMPLATES = (
    Template(
        level=1,
        kind="number",
        situation="{water} of water are left in $place. The gauge stands at {pressure}.",
        draws={"place": A_SYSTEM, "p": DEEP, "w": GRAMS},
        question=Numeric(
            name="room-for-the-vapor",
            objective="vapor-room",
            asks="How much room does that water fill as vapor?",
            asked=_drying("vapor_volume", "$p micron", "$w g"),
            relative=0.03,
            because="All of that has to pass the hose.",
            wrong_roads=(
                ONE_GRAM,
                WrongRoad(
                    name="ten times the pressure",
                    method=wrong_roads.times(0.1),
                    says="Ten times too little. Check the noughts of the reading.",
                ),
            ),
            hint="Use the moisture card. Look for the line with the vapor's volume.",
        ),
    ),
    Template(
        level=1,
        kind="order",
        situation="The same few grams of water turn to vapor at four readings.",
        draws={
            "a": one_of("300", "350", "400"),
            "b": one_of("900", "1,000", "1,200"),
            "c": one_of("3,000", "3,500", "4,000"),
            "d": one_of("9,000", "10,000", "12,000"),
        },
        question=Order(
            name="vapor-volumes-in-order",
            objective="vapor-room",
            asks="Put the reading at which the vapor needs the least room at the top.",
            items=tuple(
                Item(key, "{pressure}", _drying("vapor_volume", f"${key} micron"))
                for key in ("a", "b", "c", "d")
            ),
            because="Vapor spreads out as the pressure falls. Deep down it fills a whole room.",
            hint="Half the pressure, twice the room.",
        ),
    ),
    Template(
        level=2,
        kind="number",
        situation=(
            "{water} of water have turned to ice in $place at {pressure}. One hose, "
            "{hose_length} of {hose_bore} bore, leads to a pump of {pump_speed}."
        ),
        draws={"place": A_SYSTEM, "p": DEEP, "w": one_of("5", "10", "20"),
               "s": one_of("4", "6", "8")},
        question=Numeric(
            name="time-for-the-ice",
            objective="water-leaves-early",
            asks="How long does it take to get it out, at best?",
            asked=_drying(
                "removal_time", "$p micron", "$w g", hose_bore="1/4 in", hose_length="6 ft",
                pump_speed="$s CFM",
            ),
            relative=0.05,
            because="That is why you get the water out before it freezes.",
            wrong_roads=(
                WrongRoad(
                    name="higher reading",
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
    ),
    Template(
        level=2,
        kind="choice",
        situation="{water} of water lie in $place. Same pump, same hose, same puddle.",
        draws={
            "place": A_SYSTEM,
            "w": one_of("5", "10", "20"),
            "a": one_of("400", "500", "600"),
            "b": one_of("1,200", "1,500", "2,000"),
            "c": one_of("5,000", "6,000", "7,000"),
        },
        question=Choice(
            name="soonest-reading",
            objective="water-leaves-early",
            asks="At which reading does the water leave soonest?",
            options=tuple(
                Option(
                    key=key,
                    text="At {pressure}",
                    says="There it takes {removal_time}. The denser the vapor, the more passes.",
                    asked=_drying("removal_time", f"${key} micron", "$w g"),
                )
                for key in ("a", "b", "c")
            ),
            right=Rank.SMALLEST,
            hint="Dense vapor carries more water through the same hose.",
        ),
    ),
    Template(
        level=1,
        kind="number",
        situation="{water} of water lie in $place. The gauge stands at {pressure}.",
        draws={"place": A_SYSTEM, "p": HIGH, "w": GRAMS},
        question=Numeric(
            name="heat-for-the-water",
            objective="heat-for-water",
            asks="How much heat must reach that water to turn it all to vapor?",
            asked=_drying("heat_needed", "$p micron", "$w g"),
            relative=0.03,
            because="It comes through the metal around the water. Cold metal is slow to give it.",
            wrong_roads=(
                ONE_GRAM,
                WrongRoad(
                    name="heat to melt ice",
                    method=wrong_roads.times(334 / 2490),
                    says="That much melts ice. To turn water to vapor takes over seven times more.",
                ),
            ),
            hint="The moisture card gives the heat in all.",
        ),
    ),
    Template(
        level=3,
        kind="fault",
        situation="You dry $place. $sign",
        draws={
            "place": A_SYSTEM,
            "sign": one_of(
                "The gauge hangs a little above the triple point, and a bend feels ice cold.",
                "A bigger pump made the gauge fall faster. Now it hangs, and frost shows below.",
                "The pull hangs, and each time the lamp beside the pipe goes off the gauge dips.",
                "It is a frosty morning, the pull hangs, and the pump is known to be good.",
            ),
        },
        question=Choice(
            name="what-brings-it-out",
            objective="heat-for-water",
            asks="What brings the water out soonest?",
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
                    text="Gentle warmth on the cold part",
                    says="Water leaves as fast as heat reaches it. Give it heat.",
                ),
            ),
            right="heat",
            hint="What does water need in order to boil?",
        ),
    ),
)  # fmt: skip
