"""How long will the pull take?"""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from calculators.card import Answer, Card, Cite, Example, Output, Quantity
from calculators.cards.common import LEAK_UNITS, VOLUME, fold
from calculators.cards.pull_down_working import chart, decades_table, notes, working
from calculators.cards.rig_inputs import (
    GAS,
    GAS_TEMPERATURE,
    PATH,
    PUMP_SPEED,
    START,
    TARGET,
    ULTIMATE,
    gas_of,
    rig_of,
)
from calculators.cards.rig_words import bottleneck
from calculators.errors import OutOfRange
from calculators.hardware import KINDS
from calculators.physics.pull_down import PullDown, pull_down
from calculators.physics.rig import Rig
from calculators.physics.rig_flow import flow_at

LARGER = 1.6  # times the pump: from 5 to 8 CFM


def compute(
    *,
    volume: float,
    start_pressure: float,
    target_pressure: float,
    pump_speed: float,
    ultimate_pressure: float,
    path: tuple[Mapping[str, Any], ...],
    gas_load: float,
    gas: str,
    temperature: float,
) -> Answer:
    """Time from a start to a target pressure [s, Pa], and why it takes so long or forever."""
    if target_pressure >= start_pressure:
        raise OutOfRange("The target must be below the pressure you start from.", input=TARGET.name)
    rig = rig_of(pump_speed=pump_speed, ultimate_pressure=ultimate_pressure, path=path)
    thin = gas_of(gas=gas, temperature=temperature)

    def pull(with_rig: Rig) -> PullDown:
        return pull_down(
            rig=with_rig,
            gas=thin,
            volume=volume,
            start_pressure=start_pressure,
            target_pressure=target_pressure,
            gas_load=gas_load,
        )

    try:
        done = pull(rig)
    except OutOfRange as error:
        raise OutOfRange(str(error), input=START.name) from error
    last = done.moments[-1].system_pressure
    flow = flow_at(rig=rig, system_pressure=last, gas=thin)
    worst = bottleneck(flow)
    alone = pull(Rig(pumping_speed=pump_speed, ultimate_pressure=ultimate_pressure))
    larger = pull(replace(rig, pumping_speed=LARGER * pump_speed))
    most = (
        flow_at(rig=rig, system_pressure=target_pressure, gas=thin).throughput
        if target_pressure > ultimate_pressure
        else 0.0
    )
    return Answer(
        outputs={
            "time": done.time,
            "limit_pressure": done.limit_pressure,
            "bottleneck": worst.kind,
            "bottleneck_share": worst.share,
            "effective_speed": flow.effective_speed,
            "pump_pressure": flow.pump_pressure,
            "time_pump_alone": alone.time,
            "time_larger_pump": larger.time,
        },
        headline="From {start_pressure} to {target_pressure} takes"
        if done.arrives
        else "{target_pressure} is reached",
        notes=notes(done, worst, ultimate_pressure, alone, larger),
        working=working(done, most),
        tables=(decades_table(done),),
        chart=chart(done, alone if alone.arrives else None),
        values={
            "worst": worst.name,
            "last": last,
            "throughput": flow.throughput,
            "net": flow.throughput - gas_load,
            "most": most,
            "larger_pump": LARGER * pump_speed,
            "times": done.time / alone.time if done.time and alone.time else 0.0,
        },
    )


_TIME = Output(name="time", label="Time", symbol="t", si_unit="s", us="duration", si="duration")
CARD = Card(
    slug="pull-down",
    title="Pull-down time",
    question="How long will the pull take?",
    lede="For dry gas. Water takes its own time on top: this is the fastest the pull can be.",
    inputs=fold(
        (
            replace(VOLUME, help="Not known? Work it out with the inside-volume calculator."),
            START,
            TARGET,
            PUMP_SPEED,
            ULTIMATE,
            PATH,
            Quantity(
                name="gas_load",
                label="Gas that keeps coming in",
                symbol="Q_L",
                hint="leaks and vapor",
                si_unit="Pa·m³/s",
                us="micron·L/s",
                si="Pa·m³/s",
                units=LEAK_UNITS,
                minimum=0.0,
                maximum=1000.0,
                default="0 micron·L/s",
            ),
            GAS,
            GAS_TEMPERATURE,
        ),
        "start_pressure",
        "gas_load",
        "gas",
        "temperature",
    ),
    outputs=(
        replace(_TIME, blank="never"),
        Output(
            name="limit_pressure",
            label="The pull would level off at",
            symbol="p_lim",
            si_unit="Pa",
            us="micron",
            si="Pa",
            figures=3,
        ),
        Output(name="bottleneck", label="What holds it back at the end", choices=KINDS),
        Output(
            name="bottleneck_share",
            label="Its share of the pressure lost",
            si_unit="1",
            us="%",
            si="%",
            figures=2,
        ),
        Output(
            name="effective_speed",
            label="Speed left at the end",
            symbol="S_eff",
            si_unit="m³/s",
            us="CFM",
            si="L/s",
            figures=3,
        ),
        Output(
            name="pump_pressure",
            label="A gauge at the pump reads then",
            symbol="p_pump",
            si_unit="Pa",
            us="micron",
            si="Pa",
            figures=3,
        ),
        replace(_TIME, name="time_pump_alone", label="With no hose at all"),
        replace(_TIME, name="time_larger_pump", label="With a pump 1.6 times as fast"),
    ),
    compute=compute,
    primary="time",
    sources=(
        Cite("DUSHMAN-1962", "chapter 2: pump-down, conductances in series and parallel"),
        Cite("PHYSICS", "time as an integral over the throughput"),
        Cite("SHARIPOV-SELEZNEV-1998", "flow coefficient of a tube; closed form from memory"),
        Cite("SANTELER-1986", "ends of short tubes"),
        Cite("FUJIMOTO-USAMI-1984", "orifices"),
        Cite("BLASIUS-1913", "turbulent start"),
        Cite("SHAPIRO-1953", "chapter 6: friction, speeding-up and choking of a gas in a tube"),
        Cite("FROM-MEMORY", "true bores and lengths of the parts in the list"),
    ),
    assumptions=(
        "Dry gas, all at one temperature, and the hoses adjust at once.",
        "The pump takes in the same volume at every pressure, down to its ultimate.",
        "The gas that keeps coming in is steady. Water and oil give off less as they dry.",
        "A system without dead ends: a closed valve or a long branch makes it slower.",
    ),
    cautions=("refrigerant", "electricity", "oil"),
    examples=(
        Example(
            title="A split system of 10 L in the library at Hollin",
            entries={"volume": "10 L", "path": [{"part": "hose-1/4"}]},
            shows="Nearly half of the time goes into the last step, from 1,000 to 500 micron.",
        ),
        Example(
            title="The same with a 3/4 in hose",
            entries={"volume": "10 L", "path": [{"part": "hose-3/4"}]},
        ),
        Example(
            title="A leaking walk-in cooler that never gets there",
            entries={
                "volume": "25 L",
                "target_pressure": "200 micron",
                "path": [{"part": "hose-3/8"}, {"part": "core-tool"}],
                "gas_load": "40 micron·L/s",
            },
            shows="The rig takes out as much as comes in before the target is reached.",
        ),
    ),
)
