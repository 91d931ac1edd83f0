"""Which rig, and is it worth it?"""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from calculators.card import Answer, Card, Choice, Cite, Example, Output, Rows, Words
from calculators.cards.common import VOLUME, fold
from calculators.cards.compare_rigs_working import (
    Entrant,
    chart,
    held_back_by,
    notes,
    ratios,
    speeds_table,
    times_table,
    working,
)
from calculators.cards.rig_inputs import (
    BORE,
    GAS,
    GAS_TEMPERATURE,
    LENGTH,
    PUMP_SPEED,
    START,
    TARGET,
    ULTIMATE,
    gas_of,
    tube,
)
from calculators.errors import OutOfRange
from calculators.hardware import PARTS
from calculators.physics.gases import ThinGas
from calculators.physics.pull_down import pull_down
from calculators.physics.rig import Rig

HOSES = tuple(key for key, part in PARTS.items() if part.kind in ("hose", "own"))
ENDS = ("core-tool", "core-tool-5/16", "port", "core-in")


def compute(
    *,
    rigs: tuple[Mapping[str, Any], ...],
    volume: float,
    start_pressure: float,
    target_pressure: float,
    gas: str,
    temperature: float,
) -> Answer:
    """Times of rigs to a target [s, Pa], and how much faster the best of them is."""
    if target_pressure >= start_pressure:
        raise OutOfRange("The target must be below the pressure you start from.", input=TARGET.name)
    thin = gas_of(gas=gas, temperature=temperature)
    entrants = tuple(
        _entrant(
            index, row, thin, volume=volume, start_pressure=start_pressure, target=target_pressure
        )
        for index, row in enumerate(rigs)
    )
    arrived = sorted(
        (each for each in entrants if each.pull.arrives), key=lambda each: each.pull.time or 0.0
    )
    pair = ratios(arrived[0], arrived[-1], target_pressure, thin) if len(arrived) > 1 else None
    return Answer(
        outputs={
            "time_ratio": pair["times"] if pair else None,
            "fastest": float(arrived[0].number) if arrived else None,
            "fastest_time": arrived[0].pull.time if arrived else None,
            "slowest_time": arrived[-1].pull.time if pair else None,
            "speed_ratio": pair["speeds"] if pair else None,
            "conductance_ratio": pair["hoses"] if pair else None,
            "fourth_power": pair["fourth"] if pair else None,
        },
        headline=_headline(len(arrived)),
        notes=notes(entrants, arrived, pair),
        working=working(arrived, pair),
        tables=(times_table(entrants, target_pressure), speeds_table(entrants, thin)),
        chart=chart(entrants, thin, start_pressure, pair),
        values={
            "fast": arrived[0].name if arrived else "",
            "slow": arrived[-1].name if arrived else "",
            "slow_worst": held_back_by(arrived[-1], target_pressure, thin) if arrived else "",
            **(pair or {}),
        },
    )


def _headline(arrived: int) -> str:
    if arrived > 1:
        return "To {target_pressure}: {fast} {fastest_time}, {slow} {slowest_time}. Times faster"
    if arrived:
        return "Only {fast} gets to {target_pressure}, in {fastest_time}. Times faster"
    return "None of these gets to {target_pressure}. Times faster"


def _entrant(
    index: int,
    row: Mapping[str, Any],
    gas: ThinGas,
    *,
    volume: float,
    start_pressure: float,
    target: float,
) -> Entrant:
    where = f"rigs.{index}"
    try:
        hose = tube({**row, "part": row["hose"]}, index=index)
    except OutOfRange as error:
        field = error.input.rpartition(".")[2]
        raise OutOfRange(
            f"Rig {index + 1}: type the {field} of its hose.", input=f"{where}.{field}"
        ) from error
    ends = () if row["end"] == "none" else (tube({"part": row["end"], **_LISTED}, index=index),)
    count = int(row["hoses"])
    rig = Rig(
        pumping_speed=row["pump_speed"],
        ultimate_pressure=row["ultimate_pressure"],
        branches=((hose, *ends),) * count,
    )
    try:
        pull = pull_down(
            rig=rig,
            gas=gas,
            volume=volume,
            start_pressure=start_pressure,
            target_pressure=target,
        )
    except OutOfRange as error:
        raise OutOfRange(f"Rig {index + 1}: {error}", input=f"{where}.ultimate_pressure") from error
    return Entrant(
        number=index + 1,
        name=row["name"] or f"Rig {index + 1}",
        hose=hose,
        hoses=count,
        rig=rig,
        pull=pull,
    )


_LISTED = {"bore": None, "length": None}
_RATIO = Output(
    name="time_ratio",
    label="Times faster over the whole pull",
    si_unit="1",
    us="1",
    si="1",
    figures=3,
    blank="nothing to compare",
)
_TIME = Output(
    name="fastest_time",
    label="Its time",
    symbol="t",
    si_unit="s",
    us="duration",
    si="duration",
)
CARD = Card(
    slug="compare-rigs",
    title="Compare rigs",
    question="Which rig, and is it worth it?",
    lede="Side by side: times to your target, and what each rig is worth at every pressure. "
    "“Sixteen times faster” gets its number.",
    inputs=fold(
        (
            Rows(
                name="rigs",
                label="Rigs",
                row="rig",
                columns=(
                    Words(name="name", label="Name", longest=30),
                    Choice(
                        name="hose",
                        label="Hose",
                        options=tuple(
                            (key, PARTS[key].name[0].upper() + PARTS[key].name[1:]) for key in HOSES
                        ),
                        default="hose-1/4",
                    ),
                    BORE,
                    LENGTH,
                    Choice(
                        name="hoses",
                        label="Side by side",
                        options=(("1", "One hose"), ("2", "Two hoses"), ("3", "Three hoses")),
                        default="1",
                    ),
                    Choice(
                        name="end",
                        label="At the system",
                        options=(
                            ("none", "No narrowing"),
                            *(
                                (key, PARTS[key].name[0].upper() + PARTS[key].name[1:])
                                for key in ENDS
                            ),
                        ),
                        default="none",
                    ),
                    replace(PUMP_SPEED, hint="", help=""),
                    replace(ULTIMATE, hint="", help=""),
                ),
                default=(
                    {"name": "1/4 in hose", "hose": "hose-1/4"},
                    {"name": "1/2 in hose", "hose": "hose-1/2"},
                ),
                minimum=2,
                maximum=5,
                help="Hoses are listed by true bore, 6 ft long. Side by side, each has a port.",
            ),
            VOLUME,
            START,
            TARGET,
            GAS,
            GAS_TEMPERATURE,
        ),
        "start_pressure",
        "gas",
        "temperature",
    ),
    outputs=(
        _RATIO,
        Output(
            name="fastest",
            label="The fastest is rig number",
            si_unit="1",
            us="1",
            si="1",
            decimals=0,
        ),
        replace(_TIME),
        replace(_TIME, name="slowest_time", label="Time of the slowest that gets there"),
        replace(_RATIO, name="speed_ratio", label="Gain in speed at the system, at the target"),
        replace(_RATIO, name="conductance_ratio", label="Gain in conductance of the hoses there"),
        replace(_RATIO, name="fourth_power", label="Gain that the d⁴ rule promises"),
    ),
    compute=compute,
    primary="time_ratio",
    sources=(
        Cite("DUSHMAN-1962", "chapter 2: pump-down, conductances in series and parallel"),
        Cite("SHARIPOV-SELEZNEV-1998", "flow coefficient of a tube; closed form from memory"),
        Cite("SANTELER-1986", "ends of short tubes"),
        Cite("FUJIMOTO-USAMI-1984", "orifices"),
        Cite("BLASIUS-1913", "turbulent start"),
        Cite("COMMON-PRACTICE", "“sixteen times faster”"),
        Cite("FROM-MEMORY", "true bores and lengths of the parts in the list"),
    ),
    assumptions=(
        "Dry gas, all at one temperature, and the hoses adjust at once.",
        "Each pump takes in the same volume at every pressure, down to its ultimate.",
        "Straight, smooth hoses of one bore. Crimps, depressors and couplings narrow a real one: "
        "type its true bore.",
        "Nothing leaks or gives off gas.",
    ),
    cautions=("refrigerant", "oil"),
    examples=(
        Example(
            title="1/4 in against 1/2 in, the case where the rule says 16",
            entries={
                "rigs": [
                    {"name": "1/4 in hose", "hose": "hose-1/4"},
                    {"name": "1/2 in hose", "hose": "hose-1/2"},
                ],
                "volume": "10 L",
            },
            shows="Sixteen is the fourth power of two: true of the hose alone in viscous flow. The "
            "pull is faster by about six.",
        ),
        Example(
            title="A bigger pump or a bigger hose, for the cold store in Brannock",
            entries={
                "rigs": [
                    {"name": "as it is", "end": "core-tool"},
                    {"name": "8 CFM pump", "end": "core-tool", "pump_speed": "8 CFM"},
                    {"name": "3/8 in hoses", "end": "core-tool", "hose": "hose-3/8", "hoses": "2"},
                ],
                "volume": "60 L",
            },
            shows="The larger pump gains a few percent. Two wider hoses gain far more.",
        ),
    ),
)
