"""Is the rig tight?"""

import math
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from calculators.card import Answer, Card, Choice, Cite, Example, Output, Step, Text
from calculators.cards.common import GAUGE_STEP, VACUUM, VOLUME, fold
from calculators.cards.rig_inputs import PATH, PUMP_SPEED, TARGET, ULTIMATE, gas_of, rig_of
from calculators.errors import OutOfRange
from calculators.physics.gases import REFERENCE_TEMPERATURE
from calculators.physics.rig import Rig
from calculators.physics.rig_flow import flow_at, system_pressure
from calculators.practice_limits import PRACTICE_LIMITS

LIMIT = PRACTICE_LIMITS["rig"].value  # Pa, what a tight rig gets below
HOLD = PRACTICE_LIMITS["hold-residential"].value  # s, for a false rise in plain numbers
BEARABLE = 0.5  # of the flow at the target: more, and the last decade drags on; from memory
SEEN = 2.0  # steps of the gauge: a smaller difference is none


def compute(
    *,
    ultimate_pressure: float,
    rig_reading: float,
    gauge_at: str,
    resolution: float,
    pump_speed: float,
    path: tuple[Mapping[str, Any], ...],
    target_pressure: float,
    volume: float,
) -> Answer:
    """Gas that comes in along a rig [Pa m3/s] from two readings [Pa], and what it spoils."""
    if rig_reading < ultimate_pressure - SEEN * resolution:
        raise OutOfRange(
            "The rig reads lower than the pump alone, which cannot be: let the pump warm up and "
            "read its blank-off again, with the same gauge.",
            input="rig_reading",
        )
    if target_pressure <= ultimate_pressure:
        raise OutOfRange(
            "The target must be above what the pump alone reads: the pump cannot get there.",
            input=TARGET.name,
        )
    rig = rig_of(pump_speed=pump_speed, ultimate_pressure=ultimate_pressure, path=path)
    air = gas_of(gas="air", temperature=REFERENCE_TEMPERATURE)
    seen = rig_reading - ultimate_pressure >= SEEN * resolution
    reading = rig_reading if seen else ultimate_pressure + SEEN * resolution
    most = pump_speed * (reading - ultimate_pressure)
    least = most
    if gauge_at == "far":
        least = flow_at(rig=rig, system_pressure=reading, gas=air).throughput
    limit = system_pressure(rig=rig, throughput=least, gas=air)
    passes = flow_at(rig=rig, system_pressure=target_pressure, gas=air).throughput
    share = least / passes
    holds = _volume(rig)
    return Answer(
        outputs={
            "judgment": _judgment(reading, share),
            "least_load": least,
            "most_load": most,
            "limit_pressure": limit,
            "share_at_target": share,
            "false_rise": least / (volume + holds),
            "greatest_false_rise": most / (volume + holds),
            "rig_rise": least / holds if holds > 0.0 else None,
            "rig_volume": holds,
        },
        headline="This rig is",
        notes=_notes(seen, gauge_at, share, limit),
        working=_working(gauge_at, seen),
        values={
            "reading": reading,
            "difference": reading - ultimate_pressure,
            "practice": LIMIT,
            "passes": passes,
            "in_a_hold": least / (volume + holds) * HOLD,
            "most_in_a_hold": most / (volume + holds) * HOLD,
            "hold": HOLD,
        },
    )


def _judgment(reading: float, share: float) -> str:
    if share >= BEARABLE:
        return "leaky"
    return "tight" if reading <= LIMIT else "fair"


def _volume(rig: Rig) -> float:
    """Inside volume of the path [m3]."""
    parts = [*rig.shared, *(part for branch in rig.branches for part in branch)]
    return math.fsum(math.pi / 4.0 * part.inside_diameter**2 * part.length for part in parts)


def _notes(seen: bool, gauge_at: str, share: float, limit: float) -> tuple[Text, ...]:
    said: list[Text] = []
    if not seen:
        said.append(
            "No difference that your gauge can show. The figures below are what could hide behind "
            "two of its steps."
        )
    if share >= BEARABLE:
        said.append(
            "At {target_pressure} the gas of the rig alone takes {share_at_target} of what can "
            "leave. Find it before you pull: halve the rig, cap it, read again."
        )
    else:
        said.append(
            "At {target_pressure} it takes {share_at_target} of what can leave, so the target "
            "itself is not in danger."
        )
    if limit > LIMIT:
        said.append("Common practice asks for {practice:micron|Pa;3} or less at the far end.")
    said.append(
        "In a decay test it does matter: with the rig left open to the system it fakes a rise of "
        "{in_a_hold:micron|Pa;2} to {most_in_a_hold:micron|Pa;2} in {hold:min}. Close the valve "
        "at the system, not the one at the pump."
    )
    said.append(
        "A steady reading cannot tell a leak from vapor out of hoses and oil. Shut the rig in and "
        "look at its curve: a leak climbs steadily, vapor levels off."
    )
    if gauge_at == "pump":
        said.append("A gauge at the pump sees little of what comes in at the far end. Move it.")
    return tuple(said)


def _working(gauge_at: str, seen: bool) -> tuple[Step, ...]:
    steps = [
        Step(
            "What the rig adds to the pump's own reading."
            if seen
            else "The gauge shows no difference: two of its steps are taken.",
            "Δp = p_rig − p_u",
            "Δp = {reading:Pa;4} − {ultimate_pressure:Pa;4} = {difference:Pa;4}",
        ),
        Step(
            "If all of it comes in at the pump end, the pump alone carries it."
            if gauge_at == "far"
            else "The gauge stands at the pump, so this much reaches the pump.",
            "Q_most = S·Δp",
            "Q_most = {pump_speed:m³/s;4} × {difference:Pa;4} = {most_load:Pa·m³/s;4}",
        ),
    ]
    if gauge_at == "far":
        steps.append(
            Step(
                "If all of it comes in at the far end, it has to come through the whole path: far "
                "less gas holds up the same reading. Found as on the pumping-speed card.",
                "Q_least = S_eff·p_rig",
                "Q_least = {least_load:Pa·m³/s;4}",
            )
        )
    steps += [
        Step(
            "Against what the rig can pass at your target.",
            "Q_least / Q(p_target)",
            "{least_load:Pa·m³/s;4} / {passes:Pa·m³/s;4} = {share_at_target:%;3}",
        ),
        Step(
            "Left open to the system in a decay test, it fills system and rig.",
            "dp/dt = Q / (V + V_rig)",
            "dp/dt = {least_load:Pa·m³/s;4} / ({volume:L;4} + {rig_volume:L;3}) "
            "= {false_rise:Pa/s;3} = {false_rise:micron/min;3}",
        ),
    ]
    return tuple(steps)


_LOAD = Output(
    name="least_load",
    label="Gas that comes in, at least",
    symbol="Q",
    si_unit="Pa·m³/s",
    us="micron·L/s",
    si="Pa·m³/s",
    figures=3,
)
_RISE = Output(
    name="false_rise",
    label="False rise of a decay test, at least",
    symbol="dp/dt",
    si_unit="Pa/s",
    us="micron/min",
    si="Pa/min",
    figures=2,
)
CARD = Card(
    slug="rig-check",
    title="Rig check",
    question="Is the rig tight?",
    lede="Read the pump alone, then the whole rig, capped where the system will be. The "
    "difference is gas that comes in along the way.",
    inputs=fold(
        (
            ULTIMATE,
            replace(
                VACUUM,
                name="rig_reading",
                label="Rig reads",
                hint="far end capped",
                symbol="p_rig",
                maximum=20_000.0,
                default="60 micron",
                help="After it has stopped falling.",
            ),
            Choice(
                name="gauge_at",
                label="Gauge stands",
                options=(("far", "At the far end"), ("pump", "At the pump")),
                default="far",
            ),
            GAUGE_STEP,
            PUMP_SPEED,
            PATH,
            TARGET,
            replace(VOLUME, help="Of the system, for what the rig would do to its decay test."),
        ),
        "gauge_at",
        "volume",
    ),
    outputs=(
        Output(
            name="judgment",
            label="Judgment",
            choices={
                "tight": "tight enough",
                "fair": "not tight, but usable",
                "leaky": "not fit for this target",
            },
        ),
        _LOAD,
        replace(_LOAD, name="most_load", label="Gas that comes in, at most"),
        Output(
            name="limit_pressure",
            label="A system on it could not get below",
            symbol="p_lim",
            si_unit="Pa",
            us="micron",
            si="Pa",
            figures=3,
        ),
        Output(
            name="share_at_target",
            label="Share of the flow at the target",
            si_unit="1",
            us="%",
            si="%",
            figures=2,
        ),
        _RISE,
        replace(_RISE, name="greatest_false_rise", label="False rise of a decay test, at most"),
        replace(_RISE, name="rig_rise", label="Shut in alone, the rig would rise by"),
        Output(
            name="rig_volume",
            label="The rig holds",
            symbol="V_rig",
            si_unit="m³",
            us="L",
            si="L",
            figures=2,
        ),
    ),
    compute=compute,
    primary="judgment",
    sources=(
        Cite("PHYSICS", "conservation of mass"),
        Cite("DUSHMAN-1962", "chapter 2: throughput and effective speed"),
        Cite("SHARIPOV-SELEZNEV-1998", "flow coefficient of a tube; closed form from memory"),
        Cite("COMMON-PRACTICE", "a rig below 100 micron; a hold of 10 minutes"),
        Cite("FROM-MEMORY", "true bores and lengths of the parts in the list"),
    ),
    assumptions=(
        "Air at 20 °C (68 °F), in steady flow.",
        "The pump takes in the same volume at every pressure, down to its ultimate.",
        "Both readings on the same gauge, each after it had settled.",
        "The same gas comes in during a decay test as while pumping.",
    ),
    cautions=("oil",),
    examples=(
        Example(
            title="A sound rig at the dairy in Vallgard",
            entries={
                "ultimate_pressure": "20 micron",
                "rig_reading": "60 micron",
                "path": [{"part": "hose-3/8"}, {"part": "core-tool"}],
            },
            shows="Tight enough for the pull, and still enough gas to spoil a decay test if the "
            "rig is left open to the system.",
        ),
        Example(
            title="A worn seal somewhere",
            entries={
                "ultimate_pressure": "25 micron",
                "rig_reading": "420 micron",
                "path": [{"part": "hose-3/8"}, {"part": "core-tool"}],
            },
            shows="The rig takes most of what it can carry for itself.",
        ),
    ),
)
