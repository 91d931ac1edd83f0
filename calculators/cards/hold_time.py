"""How long must it hold?"""

from typing import NamedTuple

from calculators.card import (
    Answer,
    Axis,
    Card,
    Chart,
    Choice,
    Cite,
    Column,
    Example,
    Mark,
    Output,
    Quantity,
    Series,
    Step,
    Table,
    Text,
)
from calculators.cards.common import LEAK_UNITS, VOLUME_UNITS
from calculators.errors import OutOfRange
from calculators.physics.leak_rate import STEPS_TO_BE_SEEN
from calculators.physics.pressure_rise import hold_time

LITER = 1e-3  # m3
MINUTE, HOUR = 60.0, 3600.0  # s


class TypicalSystem(NamedTuple):
    """A kind of system: its label, usual volume [m3], and the trade's holds [s].

    Volumes are from memory of the sizes met in the trade; holds are common
    practice, from ``shortest`` to ``longest``.
    """

    label: str
    volume: float
    shortest: float
    longest: float


SYSTEMS = {
    "recovery-cylinder": TypicalSystem(
        "Recovery cylinder, 27 L", 27 * LITER, 5 * MINUTE, 10 * MINUTE
    ),
    "residential-split": TypicalSystem(
        "Residential split, 10 L", 10 * LITER, 10 * MINUTE, 15 * MINUTE
    ),
    "light-commercial": TypicalSystem(
        "Light commercial, 30 L", 30 * LITER, 15 * MINUTE, 30 * MINUTE
    ),
    "walk-in": TypicalSystem("Walk-in cooler, 40 L", 40 * LITER, 15 * MINUTE, 30 * MINUTE),
    "rack": TypicalSystem("Rack with its lines, 500 L", 500 * LITER, 1 * HOUR, 12 * HOUR),
    "large-chiller": TypicalSystem("Large chiller, 3,000 L", 3000 * LITER, 4 * HOUR, 24 * HOUR),
}


def compute(*, system: str, volume: float | None, resolution: float, leak_rate: float) -> Answer:
    """Hold [s] that shows a leak [Pa m3/s] on a gauge's step [Pa] in a volume [m3]."""
    typical = SYSTEMS.get(system)
    if typical is None and volume is None:
        raise OutOfRange("Type the volume, or choose a typical system.", input="volume")
    inside = volume if volume is not None else typical.volume  # type: ignore[union-attr]
    needed = hold_time(volume=inside, resolution=resolution, leak_rate=leak_rate)
    notes = _compared(typical, needed)
    return Answer(
        outputs={
            "hold_time": needed,
            "system_volume": inside,
            "least_practice": typical.shortest if typical else None,
            "most_practice": typical.longest if typical else None,
            "rise_seen": STEPS_TO_BE_SEEN * resolution,
        },
        headline="To show a leak of {leak_rate}, hold for",
        notes=tuple(notes),
        working=(
            Step(
                "The rise that counts as seen: five steps of the gauge.",
                "Δp = k·r",
                "Δp = 5 × {resolution:Pa;4} = {rise_seen:Pa;4} = {rise_seen:micron;4}",
            ),
            Step(
                "The gas that makes this rise in the volume, as pressure times volume.",
                "Δp·V",
                "{rise_seen:Pa;4} × {system_volume:m³;4} = {gas:1;4} Pa·m³",
            ),
            Step(
                "The leak brings that in after",
                "t = k·r·V / Q",
                "t = {gas:1;4} Pa·m³ / {leak_rate:Pa·m³/s;4} = {hold_time:s;4} = "
                "{hold_time:duration}",
            ),
        ),
        tables=(_every_system(resolution, leak_rate),),
        chart=_chart(inside, resolution, leak_rate, needed, typical),
        values={"gas": STEPS_TO_BE_SEEN * resolution * inside},
    )


def _compared(typical: TypicalSystem | None, needed: float) -> list[Text]:
    """Set the computed hold beside common practice, and say why they differ."""
    if typical is None:
        return [
            "Common practice, for comparison: about 10 minutes for a residential system, 5 to 10 "
            "for a cylinder, hours for a large chiller."
        ]
    practice = "Common practice here: {least_practice:duration} to {most_practice:duration}."
    if needed < typical.shortest:
        return [
            practice + " That is longer than this leak needs on this gauge. The rest of the time "
            "lets pressures even out and gives water and oil time to show."
        ]
    if needed > typical.longest:
        return [
            practice + " That is too short to show this leak: the volume is large for the gauge's "
            "step. Hold longer, use a finer gauge, or rely on a pressure test for leaks this size."
        ]
    return [practice + " The two agree."]


def _every_system(resolution: float, leak_rate: float) -> Table:
    rows = tuple(
        (
            each.label,
            hold_time(volume=each.volume, resolution=resolution, leak_rate=leak_rate),
            each.shortest,
            each.longest,
        )
        for each in SYSTEMS.values()
    )
    return Table(
        caption="The same leak and gauge on other systems",
        columns=(
            Column("System"),
            Column("Hold", "duration", "duration"),
            Column("Practice, from", "duration", "duration"),
            Column("to", "duration", "duration"),
        ),
        rows=rows,
    )


def _chart(
    volume: float,
    resolution: float,
    leak_rate: float,
    needed: float,
    typical: TypicalSystem | None,
) -> Chart:
    leaks = [leak_rate * 10.0 ** (step / 20.0) for step in range(-20, 21)]
    holds = [hold_time(volume=volume, resolution=resolution, leak_rate=each) for each in leaks]
    series = [Series(label="hold", role="curve", x=tuple(leaks), y=tuple(holds))]
    if typical:
        series.insert(
            0,
            Series(
                label="common practice",
                role="band",
                x=tuple(leaks),
                y=tuple(typical.shortest for _ in leaks),
                upper=tuple(typical.longest for _ in leaks),
            ),
        )
    return Chart(
        title="Hold against the leak that must show",
        x=Axis(label="Leak", us="micron·L/s", si="Pa·m³/s", log=True),
        y=Axis(label="Hold", us="min", si="min", log=True),
        series=tuple(series),
        marks=(Mark(axis="x", at=leak_rate, label="yours"),),
        summary="In {system_volume} a leak of {leak_rate} shows after {hold_time:duration}.",
    )


def _time(name: str, label: str, symbol: str) -> Output:
    return Output(name=name, label=label, symbol=symbol, si_unit="s", us="duration", si="duration")


CARD = Card(
    slug="hold-time",
    title="Hold time",
    question="How long must it hold?",
    lede=(
        "Long enough that a leak that matters moves your gauge by five steps. That takes longer "
        "the larger the system is."
    ),
    inputs=(
        Choice(
            name="system",
            label="System",
            options=(
                *((key, each.label) for key, each in SYSTEMS.items()),
                ("other", "Another, volume below"),
            ),
            default="residential-split",
        ),
        Quantity(
            name="volume",
            label="Inside volume",
            symbol="V",
            hint="if you know it better",
            si_unit="m³",
            us="L",
            si="L",
            units=VOLUME_UNITS,
            minimum=1e-5,
            maximum=1000.0,
            required=False,
        ),
        Quantity(
            name="resolution",
            label="Step of the gauge",
            symbol="r",
            si_unit="Pa",
            us="micron",
            si="Pa",
            units=("micron", "mTorr", "Torr", "mmHg", "Pa", "hPa", "mbar"),
            minimum=1e-4,
            maximum=1000.0,
            default="1 micron",
            help="The smallest change its display shows at these readings.",
        ),
        Quantity(
            name="leak_rate",
            label="Leak that must show",
            symbol="Q",
            si_unit="Pa·m³/s",
            us="micron·L/s",
            si="Pa·m³/s",
            units=LEAK_UNITS,
            minimum=1e-9,
            maximum=10.0,
            default="0.5 micron·L/s",
            help="The smallest leak that you would not want to miss.",
        ),
    ),
    outputs=(
        _time("hold_time", "Hold", "t"),
        Output(
            name="system_volume",
            label="Inside volume",
            symbol="V",
            si_unit="m³",
            us="L",
            si="L",
            figures=3,
        ),
        _time("least_practice", "Common practice, from", "t_min"),
        _time("most_practice", "Common practice, to", "t_max"),
        Output(
            name="rise_seen",
            label="Rise that counts as seen",
            symbol="Δp",
            si_unit="Pa",
            us="micron",
            si="Pa",
            figures=3,
        ),
    ),
    compute=compute,
    primary="hold_time",
    sources=(
        Cite("PHYSICS", "V dp/dt = Q in a closed volume"),
        Cite("GUM", "F.2.2.1, uncertainty of a reading in steps"),
        Cite("COMMON-PRACTICE", "holds by kind of system"),
        Cite("FROM-MEMORY", "volumes of typical systems"),
    ),
    assumptions=(
        "Five steps of the gauge: twelve times the uncertainty of a difference of two readings, so "
        "that lag and a first unsteady minute do not decide.",
        "The leak feeds in at a steady rate, as it does into any vacuum, and the temperature is "
        "steady.",
        "The volumes of typical systems are rough. Yours decides.",
    ),
    cautions=("refrigerant", "electricity"),
    examples=(
        Example(
            title="A village library's split system",
            entries={"system": "residential-split"},
            shows="The formula asks for less than the trade's ten minutes.",
        ),
        Example(
            title="A dairy's large chiller",
            entries={"system": "large-chiller"},
            shows="The same leak and gauge take three hundred times as long.",
        ),
        Example(
            title="A recovery cylinder on a coarse gauge",
            entries={"system": "recovery-cylinder", "resolution": "5 micron"},
            shows="With five-micron steps the usual ten minutes are too short.",
        ),
    ),
)
