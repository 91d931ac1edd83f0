"""How much water can leave, how fast, and will it freeze?"""

from dataclasses import replace

from calculators.card import Answer, Card, Choice, Cite, Example, Output, Quantity
from calculators.cards.common import (
    BORE_UNITS,
    FLOW_UNITS,
    LENGTH_UNITS,
    MASS_UNITS,
    TEMPERATURE,
    VACUUM,
    VOLUME,
    fold,
)
from calculators.cards.moisture_working import chart, notes, table, working
from calculators.errors import OutOfRange
from calculators.physics.constants import WATER_TRIPLE_PRESSURE, WATER_TRIPLE_TEMPERATURE
from calculators.physics.drying import Drying, drying, heat_to_stay_liquid
from calculators.physics.moisture import (
    heat_of_evaporation,
    share_evaporated_to_freezing_point,
    share_evaporated_to_ice,
    vapor_mass,
    vapor_volume,
)
from calculators.physics.rig import Rig, Tube
from calculators.physics.water import saturation_pressure


def compute(
    *,
    pressure: float,
    temperature: float,
    water: float,
    heat: float | None,
    pump_speed: float,
    ultimate_pressure: float,
    hose_bore: float,
    hose_length: float,
    hoses: str,
    volume: float,
) -> Answer:
    """Rate [kg/s], time [s] and heat [J, W] of drying at a pressure [Pa], and freezing."""
    hose = Tube(inside_diameter=hose_bore, length=hose_length, name="The hose")
    rig = Rig(
        pumping_speed=pump_speed,
        ultimate_pressure=ultimate_pressure,
        branches=((hose,),) * int(hoses),
    )

    def at(reading: float) -> Drying:
        return drying(rig=rig, pressure=reading, temperature=temperature)

    try:
        here = at(pressure)
    except OutOfRange as error:
        raise OutOfRange(str(error), input="pressure") from error
    critical = heat_to_stay_liquid(rig=rig, temperature=temperature)
    latent = heat_of_evaporation(temperature=here.water_temperature)
    heat_limits = heat is not None and heat < here.heat
    rate = heat / latent if heat is not None and heat_limits else here.rate
    wet = saturation_pressure(temperature=temperature)
    boils = pressure < wet
    liquid = temperature > WATER_TRIPLE_TEMPERATURE
    freezing = _freezing(liquid, pressure, heat, critical)
    return Answer(
        outputs={
            "removal_time": water / rate,
            "removal_rate": rate,
            "effective_speed": here.flow.effective_speed,
            "water_temperature": here.water_temperature,
            "freezing": freezing,
            "heat_to_stay_liquid": critical,
            "heat_rate": rate * latent,
            "heat_needed": water * latent,
            "vapor_volume": vapor_volume(mass=water, pressure=pressure, temperature=temperature),
            "vapor_mass": vapor_mass(
                pressure=here.vapor_pressure, volume=volume, temperature=temperature
            ),
            "share_to_cool": share_evaporated_to_freezing_point(temperature=temperature)
            if liquid
            else None,
            "share_to_ice": share_evaporated_to_ice(temperature=temperature) if liquid else None,
        },
        headline="With that heat this much water takes" if heat_limits else _AT_BEST,
        notes=notes(freezing, boils, pressure < WATER_TRIPLE_PRESSURE, heat_limits),
        working=working(boils, heat_limits, liquid),
        tables=(table(at, ultimate_pressure, water),),
        chart=chart(at, pressure, ultimate_pressure, wet),
        values={
            "wet": wet,
            "vapor_pressure": here.vapor_pressure,
            "triple": WATER_TRIPLE_PRESSURE,
            "pump_pressure": here.flow.pump_pressure,
            "throughput": here.flow.throughput,
            "latent": latent,
            "rig_rate": here.rate,
        },
    )


_AT_BEST = "At best this much water takes"


def _freezing(liquid: bool, pressure: float, heat: float | None, critical: float) -> str:
    if not liquid:
        return "ice"
    if critical == 0.0:
        return "cannot"
    if heat is not None:
        return "freezes" if heat < critical else "stays"
    return "can" if pressure < WATER_TRIPLE_PRESSURE else "not-yet"


# fmt: off
INPUTS = (
    replace(
        VACUUM, label="Reading at the system", default="5,000 micron",
        help="At the wet part, not at the pump: a gauge at the pump reads far too low.",
    ),
    replace(
        TEMPERATURE, label="Temperature where the water is", minimum=238.15, maximum=333.15,
    ),
    Quantity(
        name="water", label="Water to remove", symbol="m", si_unit="kg", us="g", si="g",
        units=MASS_UNITS, minimum=1e-6, maximum=1000.0, default="10 g",
        help="A teaspoon is 5 g; a shot glass 40 g.",
    ),
    Quantity(
        name="heat", label="Heat reaching the water", symbol="P", hint="if you know it",
        si_unit="W", us="W", si="W", units=("W", "kW", "Btu/h"), minimum=0.01, maximum=1e6,
        required=False,
        help="A bare tube in still air gives some watts a foot; a heat gun a few hundred.",
    ),
    Quantity(
        name="pump_speed", label="Pump speed", symbol="S", hint="rated", si_unit="m³/s", us="CFM",
        si="L/s", units=FLOW_UNITS, minimum=1e-6, maximum=1.0, default="5 CFM",
    ),
    replace(
        VACUUM, name="ultimate_pressure", label="Blank-off of the pump", symbol="p_u",
        maximum=20_000.0, default="50 micron",
    ),
    Quantity(
        name="hose_bore", label="Hose, true bore", symbol="d", si_unit="m", us="in", si="mm",
        units=BORE_UNITS, minimum=0.0005, maximum=0.2, default="1/4 in",
        help="Inside the narrowest place: crimped ends are often smaller than the name.",
    ),
    Quantity(
        name="hose_length", label="Hose, length", symbol="L", si_unit="m", us="ft", si="m",
        units=LENGTH_UNITS, minimum=0.0, maximum=100.0, default="6 ft",
    ),
    Choice(
        name="hoses", label="Hoses from pump to system", default="1",
        options=(("1", "one"), ("2", "two alike"), ("3", "three alike")),
    ),
    VOLUME,
)

OUTPUTS = (
    Output(
        name="removal_time", label="Time for this much water", symbol="t", si_unit="s",
        us="duration", si="duration",
    ),
    Output(
        name="removal_rate", label="Water leaving, at best", symbol="ṁ", si_unit="kg/s", us="g/h",
        si="g/h", figures=3,
    ),
    Output(
        name="freezing", label="Will it freeze?",
        choices={
            "ice": "it is ice already", "cannot": "no, the pump is too weak", "freezes": "yes",
            "stays": "no, with that heat", "can": "it can", "not-yet": "not at this reading",
        },
    ),
    Output(
        name="heat_to_stay_liquid", label="Heat that keeps it from freezing", symbol="P₀",
        si_unit="W", us="W", si="W", figures=2,
    ),
    Output(
        name="water_temperature", label="Water boils or sublimes at", symbol="T_w", si_unit="K",
        us="°F", si="°C", decimals=1,
    ),
    Output(
        name="effective_speed", label="Pump left at the system, for vapor", symbol="S_eff",
        si_unit="m³/s", us="CFM", si="L/s", figures=3,
    ),
    Output(
        name="heat_rate", label="Heat it draws", symbol="P", si_unit="W", us="W", si="W", figures=3,
    ),
    Output(
        name="heat_needed", label="Heat in all", symbol="E", si_unit="J", us="Btu", si="kJ",
        figures=3,
    ),
    Output(
        name="vapor_volume", label="As vapor it fills", symbol="V", si_unit="m³", us="ft³", si="L",
        figures=3,
    ),
    Output(
        name="vapor_mass", label="Water in the system as vapor now", symbol="m_v", si_unit="kg",
        us="mg", si="mg", figures=3,
    ),
    Output(
        name="share_to_cool", label="Boils off before the rest is at freezing, with no heat",
        symbol="x₀", si_unit="1", us="%", si="%", figures=3,
    ),
    Output(
        name="share_to_ice", label="Boils off before the rest is all ice, with no heat",
        symbol="x₁", si_unit="1", us="%", si="%", figures=3,
    ),
)
# fmt: on

CARD = Card(
    slug="moisture",
    title="Moisture",
    question="How much water can leave, how fast, and will it freeze?",
    lede=(
        "Water leaves as vapor, and vapor needs room and heat. Most of it leaves before the gauge "
        "shows anything to be proud of."
    ),
    inputs=fold(INPUTS, "heat", "hoses", "volume"),
    outputs=OUTPUTS,
    compute=compute,
    primary="removal_time",
    sources=(
        Cite("IAPWS-SR1-86", "saturation pressure of liquid water"),
        Cite("IAPWS-R14-08", "sublimation pressure of ice"),
        Cite("IAPWS-R6-95", "heat of vaporization"),
        Cite("IAPWS-R10-06", "heat of fusion and sublimation"),
        Cite("PHYSICS", "flow of vapor through pump and hose"),
    ),
    assumptions=(
        "Steady flow of water vapor alone, at the temperature of the system, through smooth "
        "straight hoses with the bore you give.",
        "The pump keeps its rated speed for vapor: gas ballast open, oil warm and dry.",
        "The wet surface keeps up. Free water does; water in oil or in a drier does not.",
        "The upper bound of a rate, so the lower bound of a time.",
    ),
    cautions=("refrigerant", "nitrogen", "electricity", "hot-surface", "oil"),
    examples=(
        Example(
            title="Ten grams in a village library's split system, at 500 micron",
            entries={"pressure": "500 micron", "water": "10 g", "hose_bore": "1/4 in"},
            shows="A deep reading with water inside is a bad place to wait.",
        ),
        Example(
            title="The same at 5,000 micron, through two wide hoses",
            entries={
                "pressure": "5,000 micron",
                "water": "10 g",
                "hose_bore": "3/4 in",
                "hoses": "2",
            },
            shows="Higher up and through wider hoses the same water leaves in minutes.",
        ),
        Example(
            title="A dairy's chiller barrel with a trickle of warm water through the tubes",
            entries={
                "pressure": "8 mbar",
                "temperature": "12 °C",
                "water": "2 kg",
                "heat": "1.5 kW",
                "pump_speed": "40 m³/h",
                "ultimate_pressure": "5 Pa",
                "hose_bore": "38 mm",
                "hose_length": "3 m",
                "volume": "3 m³",
            },
            shows="Warm water in the tubes is worth more than a bigger pump.",
        ),
    ),
)
