"""What does each nitrogen break leave behind?"""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from calculators.card import (
    Answer,
    Card,
    Cite,
    Example,
    Output,
    Quantity,
    Rows,
)
from calculators.cards.common import (
    BAROMETER,
    GAUGE_PRESSURE_UNITS,
    MASS_UNITS,
    TEMPERATURE,
    VACUUM,
    VOLUME,
    fold,
)
from calculators.cards.triple_evacuation_working import chart, notes, table, working
from calculators.errors import OutOfRange
from calculators.physics import dilution
from calculators.physics.gases import GASES
from calculators.physics.moisture import vapor_mass
from calculators.physics.water import saturation_pressure


def compute(
    *,
    pulls: Sequence[Mapping[str, float | None]],
    volume: float,
    temperature: float,
    water: float | None,
    dew_point: float,
    barometer: float,
) -> Answer:
    """Follow air [Pa], nitrogen and water vapor [kg] through pulls and breaks."""
    lows = [float(pull["evacuated_to"] or 0.0) for pull in pulls]
    breaks = [float(pull["broken_to"] or barometer) for pull in pulls[:-1]]
    try:
        states = dilution.pulls(start_pressure=barometer, evacuated_to=lows, broken_to=breaks)
    except OutOfRange as error:
        raise OutOfRange(str(error), input="pulls") from error
    wet = saturation_pressure(temperature=temperature)
    carried = [
        dilution.vapor_carried(
            volume=volume,
            temperature=temperature,
            vapor_pressure=min(wet, high),
            high_pressure=high,
            low_pressure=low,
        )
        for high, low in zip([barometer, *breaks], lows, strict=True)
    ]
    nitrogen = dilution.nitrogen_amount(
        volume=volume, temperature=temperature, evacuated_to=lows[:-1], broken_to=breaks
    )
    brought = len(breaks) * vapor_mass(
        pressure=saturation_pressure(temperature=dew_point), volume=volume, temperature=temperature
    )
    last = states[-1]
    return Answer(
        outputs={
            "air_left": last.partial_pressure,
            "share_left": last.fraction_left,
            "vapor_per_break": max(carried),
            "vapor_carried": sum(carried),
            "water_left": None if water is None else max(0.0, water - sum(carried)),
            "nitrogen": nitrogen * GASES["nitrogen"].molar_mass,
            "moisture_brought": brought,
        },
        headline="Of the air you started with there remains",
        notes=notes(water, sum(carried), min(lows) < wet, len(lows)),
        working=working(lows, breaks, barometer, states),
        tables=(table(states, breaks, carried),),
        chart=chart(states, barometer),
        values={
            "wet": wet,
            "lowest": min(lows),
            "dew_pressure": saturation_pressure(temperature=dew_point),
            "vapor_mass": vapor_mass(pressure=wet, volume=volume, temperature=temperature),
            "nitrogen_moles": GASES["nitrogen"].molar_mass,
        },
    )


# fmt: off
INPUTS = (
    Rows(
        name="pulls", label="Pulls and breaks", row="pull", maximum=10,
        columns=(
            replace(
                VACUUM, name="evacuated_to", label="Pull down to", symbol="pₙ",
                default="1500 micron",
            ),
            Quantity(
                name="broken_to", label="Break up to", symbol="p_break",
                hint="blank: the barometer", si_unit="Pa", us="psig", si="barg",
                units=GAUGE_PRESSURE_UNITS, minimum=100.0, maximum=4e6, required=False,
            ),
        ),
        default=(
            {"evacuated_to": "1500 micron"},
            {"evacuated_to": "1500 micron"},
            {"evacuated_to": "500 micron"},
        ),
        help="The last pull is followed by the charge, so its break does not count.",
    ),
    VOLUME,
    replace(TEMPERATURE, minimum=233.15, maximum=333.15),
    Quantity(
        name="water", label="Liquid water inside", symbol="m_w", hint="if you suspect some",
        si_unit="kg", us="g", si="g", units=MASS_UNITS, minimum=0.0, maximum=1000.0,
        required=False,
    ),
    replace(
        TEMPERATURE, name="dew_point", label="Dew point of the nitrogen", symbol="T_dew",
        minimum=183.15, maximum=293.15, default="-76 °F",
        help="On the cylinder's certificate; −60 °C (−76 °F) or drier is usual.",
    ),
    BAROMETER,
)

OUTPUTS = (
    Output(
        name="air_left", label="Partial pressure of air left", symbol="p_air", si_unit="Pa",
        us="micron", si="Pa", figures=3,
    ),
    Output(
        name="share_left", label="Share of the air left", symbol="f", si_unit="1", us="1", si="1",
        figures=3,
    ),
    Output(
        name="vapor_per_break", label="Water one break can carry, at most", symbol="m",
        si_unit="kg", us="g", si="g", figures=3,
    ),
    Output(
        name="vapor_carried", label="Water all pulls can carry as vapor, at most", symbol="Σm",
        si_unit="kg", us="g", si="g", figures=3,
    ),
    Output(
        name="water_left", label="Liquid water the breaks leave", symbol="m_w", si_unit="kg",
        us="g", si="g", figures=3,
    ),
    Output(
        name="nitrogen", label="Nitrogen used", symbol="m_N₂", si_unit="kg", us="oz", si="g",
        figures=3,
    ),
    Output(
        name="moisture_brought", label="Water the nitrogen brings in", symbol="m_in", si_unit="kg",
        us="mg", si="mg", figures=2,
    ),
)
# fmt: on

CARD = Card(
    slug="triple-evacuation",
    title="Triple evacuation",
    question="What does each nitrogen break leave behind?",
    lede=(
        "Pull, break with dry nitrogen, pull again. It is superb at thinning out air, and no "
        "help at all against a puddle."
    ),
    inputs=fold(INPUTS, "dew_point", "barometer"),
    outputs=OUTPUTS,
    compute=compute,
    primary="air_left",
    sources=(
        Cite("CROWL-LOUVAR", "vacuum purging"),
        Cite("IAPWS-SR1-86", "saturation pressure of water"),
        Cite("IAPWS-R14-08", "vapor pressure of ice, at the nitrogen's dew point"),
        Cite("COMMON-PRACTICE", "three pulls, 1,500 micron, then the final target"),
    ),
    assumptions=(
        "Gas mixes fully at every break, everything at one temperature.",
        "The system starts full of air at the barometer.",
        "The vapor figures take liquid water as present and the gas over it as soaked: the most "
        "that breaks can do.",
    ),
    cautions=("nitrogen", "stored-pressure", "asphyxiation"),
    examples=(
        Example(
            title="Three pulls on a village library's split system",
            entries={
                "pulls": [
                    {"evacuated_to": "1,500 micron", "broken_to": "2 psig"},
                    {"evacuated_to": "1,500 micron", "broken_to": "2 psig"},
                    {"evacuated_to": "500 micron"},
                ],
                "volume": "10 L",
            },
            shows="Two breaks already leave less air than any pump could.",
        ),
        Example(
            title="A dairy's chiller with a cupful of water inside",
            entries={
                "pulls": [
                    {"evacuated_to": "200 Pa", "broken_to": "1 bar"},
                    {"evacuated_to": "200 Pa", "broken_to": "1 bar"},
                    {"evacuated_to": "60 Pa"},
                ],
                "volume": "3 m³",
                "temperature": "15 °C",
                "water": "250 g",
            },
            shows="In a large volume the vapor counts; a puddle still has to boil.",
        ),
    ),
)
