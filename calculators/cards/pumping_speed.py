"""What is left of my pump at the system?"""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from calculators.card import Answer, Card, Cite, Example, Output
from calculators.cards.common import VACUUM, fold
from calculators.cards.pumping_speed_working import (
    chart,
    notes,
    parts_table,
    pumps_table,
    speed_table,
    working,
)
from calculators.cards.rig_inputs import (
    GAS,
    GAS_TEMPERATURE,
    PATH,
    PUMP_SPEED,
    ULTIMATE,
    gas_of,
    rig_of,
)
from calculators.cards.rig_words import bottleneck
from calculators.errors import OutOfRange
from calculators.hardware import KINDS
from calculators.physics.rig_flow import flow_at


def compute(
    *,
    pressure: float,
    pump_speed: float,
    ultimate_pressure: float,
    path: tuple[Mapping[str, Any], ...],
    gas: str,
    temperature: float,
) -> Answer:
    """Effective speed at the system [m3/s] at a pressure [Pa], and where the rest is lost."""
    rig = rig_of(pump_speed=pump_speed, ultimate_pressure=ultimate_pressure, path=path)
    thin = gas_of(gas=gas, temperature=temperature)
    try:
        flow = flow_at(rig=rig, system_pressure=pressure, gas=thin)
    except OutOfRange as error:
        raise OutOfRange(str(error), input="pressure") from error
    worst = bottleneck(flow)
    return Answer(
        outputs={
            "effective_speed": flow.effective_speed,
            "share_left": flow.effective_speed / pump_speed,
            "pump_pressure": flow.pump_pressure,
            "reading_ratio": pressure / flow.pump_pressure,
            "bottleneck": worst.kind,
            "bottleneck_share": worst.share,
            "throughput": flow.throughput,
        },
        headline="At {pressure}, of {pump_speed} there is left at the system",
        notes=notes(flow, worst),
        working=working(flow, thin),
        tables=(parts_table(flow), speed_table(rig, thin), pumps_table(rig, thin, pressure)),
        chart=chart(rig, thin, flow),
        values={
            "thing": gas,
            "viscosity": thin.viscosity,
            "worst": worst.name,
            "system": flow.system_pressure,
        },
    )


CARD = Card(
    slug="pumping-speed",
    title="Pumping speed at the system",
    question="What is left of my pump at the system?",
    lede="The pump pulls at its own inlet. What the system feels is what the path lets through, "
    "and near your target that can be a few percent.",
    inputs=fold(
        (
            replace(
                VACUUM,
                label="Pressure at the system",
                help="Read at the system, not at the pump.",
            ),
            PUMP_SPEED,
            ULTIMATE,
            PATH,
            GAS,
            GAS_TEMPERATURE,
        ),
        "gas",
        "temperature",
    ),
    outputs=(
        Output(
            name="effective_speed",
            label="Effective pumping speed",
            symbol="S_eff",
            si_unit="m³/s",
            us="CFM",
            si="L/s",
            figures=3,
        ),
        Output(
            name="share_left",
            label="Of the pump's speed that is",
            symbol="S_eff/S",
            si_unit="1",
            us="%",
            si="%",
            figures=2,
        ),
        Output(
            name="pump_pressure",
            label="A gauge at the pump reads",
            symbol="p_pump",
            si_unit="Pa",
            us="micron",
            si="Pa",
            figures=3,
        ),
        Output(
            name="reading_ratio",
            label="Too low by a factor of",
            symbol="p/p_pump",
            si_unit="1",
            us="1",
            si="1",
            figures=3,
        ),
        Output(name="bottleneck", label="What holds it back most", choices=KINDS),
        Output(
            name="bottleneck_share",
            label="Its share of the pressure lost",
            symbol="",
            si_unit="1",
            us="%",
            si="%",
            figures=2,
        ),
        Output(
            name="throughput",
            label="Throughput",
            symbol="Q",
            si_unit="Pa·m³/s",
            us="micron·CFM",
            si="Pa·m³/s",
            figures=3,
        ),
    ),
    compute=compute,
    primary="effective_speed",
    sources=(
        Cite("DUSHMAN-1962", "chapter 2: conductances in series and parallel, effective speed"),
        Cite("SHARIPOV-SELEZNEV-1998", "flow coefficient of a tube; closed form from memory"),
        Cite("SANTELER-1986", "ends of short tubes"),
        Cite("FUJIMOTO-USAMI-1984", "orifices"),
        Cite("BLASIUS-1913", "turbulent friction near atmospheric pressure"),
        Cite("FROM-MEMORY", "true bores and lengths of the parts in the list; sizes of pumps"),
    ),
    assumptions=(
        "The pump takes in the same volume at every pressure, down to its ultimate.",
        "Steady flow of one gas at one temperature; straight, round, smooth bores of one size.",
        "Nothing leaks or gives off gas along the path.",
    ),
    cautions=("refrigerant", "oil"),
    examples=(
        Example(
            title="One 1/4 in hose through a manifold, at the bakery in Ostermoor",
            entries={
                "pressure": "500 micron",
                "pump_speed": "8 CFM",
                "path": [
                    {"part": "hose-1/4"},
                    {"part": "manifold-1/4"},
                    {"part": "hose-1/4", "length": "5 ft"},
                    {"part": "core-in"},
                ],
            },
            shows="Two hoses, a manifold and a core: under a hundredth of the pump is left.",
        ),
        Example(
            title="Two sides pulled at once, at the dairy in Vallgard",
            entries={
                "pressure": "500 micron",
                "pump_speed": "8 CFM",
                "path": [
                    {"part": "hose-3/8", "line": "a"},
                    {"part": "core-tool", "line": "a"},
                    {"part": "hose-3/4", "length": "4 ft", "line": "b"},
                    {"part": "core-tool-5/16", "line": "b"},
                ],
            },
            shows="Each side has its own hose and core tool; they meet in the system.",
        ),
    ),
)
