"""How much water leaves: the notes, the working, the table and the chart of the answer."""

from collections.abc import Callable

from calculators.card import Axis, Chart, Column, Mark, Series, Step, Table, Text
from calculators.physics.constants import MICRON, WATER_TRIPLE_PRESSURE
from calculators.physics.drying import Drying

At = Callable[[float], Drying]  # what leaves with the wet part at a pressure
PRESSURES = tuple(
    micron * MICRON for micron in (20_000, 10_000, 4_600, 2_000, 1_000, 500, 200, 100)
)

FREEZING = {
    "ice": (
        "At {temperature} the water is ice already. It leaves only by subliming, slowly: warm it "
        "above freezing first."
    ),
    "cannot": (
        "This pump does not get below {triple:micron|Pa;4}, so it cannot freeze water. It cannot "
        "dry the system either."
    ),
    "freezes": (
        "Pull on and it freezes: this rig can draw off {heat_to_stay_liquid}, more heat than the "
        "{heat} you give. Throttle, break with nitrogen, or warm it. A bigger pump makes it worse."
    ),
    "stays": (
        "It stays liquid: the {heat} you give is more than the {heat_to_stay_liquid} this rig can "
        "draw off at the freezing point."
    ),
    "can": (
        "It can freeze at this reading. Unless {heat_to_stay_liquid} of heat reaches the water, "
        "this rig draws it down to ice, and ice at {pressure} leaves slowly."
    ),
    "not-yet": (
        "At this reading it does not freeze. Pull on, and it can: below {triple:micron|Pa;4}, "
        "unless {heat_to_stay_liquid} of heat reaches the water."
    ),
}


TOO_LOW = (
    "With so much heat the reading at the water stands above {triple:micron|Pa;4}. If yours is "
    "lower, the gauge is not at the water, or there is none left."
)


def notes(freezing: str, boils: bool, ice: bool, heat_limits: bool) -> tuple[Text, ...]:
    texts: list[Text] = []
    if not boils:
        texts.append(
            "At this reading water at {temperature} does not boil: its vapor pressure is only "
            "{wet:micron|Pa;4}. What leaves is the vapor in the air, and the air is soon gone."
        )
    texts.append(FREEZING[freezing])
    if freezing == "stays" and ice:
        texts.append(TOO_LOW)
    if heat_limits:
        texts.append("Heat is the limit here, not the rig: the rig could carry {rig_rate:g/h;3}.")
    texts.append(
        "This is the most the rig can carry. Water in oil, in a drier or behind a kinked tube "
        "leaves slower."
    )
    return tuple(texts)


def working(boils: bool, heat_limits: bool, liquid: bool) -> tuple[Step, ...]:
    steps = [
        Step(
            "At your temperature water has this vapor pressure. Your reading is below it, so all "
            "the gas can be vapor."
            if boils
            else "Your reading is above the vapor pressure of the water: only a part is vapor.",
            "p_w = min(p, p_sat(T))",
            "p_sat = {wet:Pa;5}, p = {pressure:Pa;5}, p_w = {vapor_pressure:Pa;5}",
        ),
        Step(
            "Water that boils at that pressure is as cold as this, unless heat reaches it faster.",
            "p_sat(T_w) = p_w",
            "T_w = {water_temperature:K;5} = {water_temperature:°F|°C;.1}",
        ),
        Step(
            "The same flow passes hose and pump; the walk from pump to system gives its size.",
            "Q = S·(p_pump − p_u) = C·(p − p_pump)",
            "p_pump = {pump_pressure:Pa;4} ({pump_pressure:micron;3}), Q = {throughput:Pa·m³/s;4}",
        ),
        Step(
            "So much of the pump is left at the system, for water vapor.",
            "S_eff = Q / p",
            "S_eff = {throughput:Pa·m³/s;4} / {pressure:Pa;5} = {effective_speed:L/s;3}",
        ),
        Step(
            "As grams of water.",
            "ṁ = S_eff·p_w·M / (R·T)",
            "ṁ = {effective_speed:m³/s;3} × {vapor_pressure:Pa;5} × 18.0153 g/mol / "
            "(8.31446 J/(mol·K) × {temperature:K;5}) = {rig_rate:g/h;4}",
        ),
    ]
    if heat_limits:
        steps.append(
            Step(
                "The heat you give boils off less than that, so it decides.",
                "ṁ = P / h",
                "ṁ = {heat} / {latent:kJ/kg;5} = {removal_rate:g/h;4}",
            )
        )
    steps += [
        Step(
            "The time for your water.",
            "t = m / ṁ",
            "t = {water:g;4} / {removal_rate:g/h;4} = {removal_time:duration}",
        ),
        Step(
            "The heat it takes along, in all and per second.",
            "E = m·h,  P = ṁ·h",
            "E = {water:g;4} × {latent:kJ/kg;5} = {heat_needed:kJ;3},  P = {heat_rate:W;3}",
        ),
        Step(
            "The heat this rig draws off at the freezing point, where the vapor pressure is "
            "{triple:Pa;6}. With less than that, the water turns to ice.",
            "P₀ = S_eff(611.657 Pa)·611.657 Pa·M·h / (R·T)",
            "P₀ = {heat_to_stay_liquid:W;3}",
        ),
    ]
    if liquid:
        steps.append(
            Step(
                "With no heat at all, boiling cools the rest: first to freezing, then to ice.",
                "1 − exp(−c·ΔT/h),  then L / (h + L) of what is left",
                "{share_to_cool:%;3} is gone when the rest reaches freezing, "
                "{share_to_ice:%;3} when all of it is ice",
            )
        )
    return tuple(steps)


def table(at: At, ultimate: float, water: float) -> Table:
    rows = []
    for pressure in PRESSURES:
        if pressure <= 1.05 * ultimate:
            continue
        here = at(pressure)
        rows.append(
            (
                pressure,
                here.rate,
                water / here.rate,
                here.water_temperature,
                here.flow.effective_speed,
                here.heat,
            )
        )
    return Table(
        caption="What the rig carries, reading by reading",
        columns=(
            Column("Reading", "micron", "Pa", figures=4),
            Column("Water leaving", "g/h", "g/h", figures=2),
            Column("Your water takes", "duration", "duration"),
            Column("Water boils or sublimes at", "°F", "°C", decimals=0),
            Column("Effective speed", "CFM", "L/s", figures=2),
            Column("Heat it draws", "W", "W", figures=2),
        ),
        rows=tuple(rows),
        open=True,
    )


def chart(at: At, pressure: float, ultimate: float, wet: float) -> Chart:
    first = max(1.02 * ultimate, min(max(1.2 * ultimate, 100 * MICRON), pressure))
    last = max(100_000 * MICRON, 4.0 * wet, 1.5 * pressure)
    pressures = [first * (last / first) ** (step / 36) for step in range(37)]
    return Chart(
        title="Water leaving against the pressure at the wet part",
        x=Axis(label="Reading at the system", us="micron", si="Pa", log=True),
        y=Axis(label="Water leaving", us="g/h", si="g/h", log=True),
        series=(
            Series(
                label="",
                role="curve",
                x=tuple(pressures),
                y=tuple(at(each).rate for each in pressures),
            ),
            Series(label="your reading", role="reading", x=(pressure,), y=(at(pressure).rate,)),
        ),
        marks=(
            Mark(axis="x", at=WATER_TRIPLE_PRESSURE, label="freeze"),
            Mark(axis="x", at=wet, label="boil"),
        ),
        summary=(
            "The dot is your reading. Between {wet:micron|Pa;3}, where your water starts to boil, "
            "and {triple:micron|Pa;4}, where ice begins, the rig carries most. Below, the rate "
            "falls faster than the pressure."
        ),
    )
