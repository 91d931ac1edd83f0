"""Did it hold?"""

from calculators.card import (
    Answer,
    Card,
    Choice,
    Cite,
    Column,
    Example,
    Output,
    Quantity,
    Readings,
    Table,
    Text,
    Verdict,
    say,
)
from calculators.cards import decay_views, decay_words
from calculators.cards.common import (
    LEAK_UNITS,
    TEMPERATURE_UNITS,
    TIME_UNITS,
    VACUUM_UNITS,
    VOLUME_UNITS,
)
from calculators.physics import refrigerants
from calculators.physics.constants import MICRON, ZERO_CELSIUS
from calculators.physics.gases import GASES
from calculators.physics.leak_rate import leak_rate, service_loss
from calculators.physics.moisture import vapor_mass
from calculators.physics.pressure_rise import rate_of_pressure_rise
from calculators.physics.rise_judgment import Judgment, judge_rise
from calculators.physics.water import saturation_pressure
from calculators.readings import ReadingLog

ROOM = ZERO_CELSIUS + 20.0  # K; where leaks are counted and refrigerant stands at rest
STEP_UNITS = ("micron", "mTorr", "Torr", "mmHg", "Pa", "hPa", "mbar")
VERDICTS = {
    "pass": "holds",
    "leak": "leak",
    "moisture": "levels off: water, or gas out of oil",
    "leak-and-moisture": "leak and gas inside",
    "undecided": "not decided",
}


def compute(
    *,
    readings: ReadingLog,
    limit: float,
    volume: float | None,
    temperature: float | None,
    resolution: float,
    leak_of_concern: float,
    isolation: float | None,
    refrigerant: str,
) -> Answer:
    """Verdict on a log of pressures [Pa], with the leak rate [Pa m3/s] behind it."""
    found = judge_rise(
        time=readings.times,
        pressure=readings.pressures,
        resolution=resolution,
        limit=limit,
        volume=volume,
        leak_of_concern=leak_of_concern,
        isolation=isolation,
    )
    outputs, values = _numbers(found, volume, refrigerant)
    water, water_notes = _water(found, volume, temperature)
    values |= {
        "more": max((found.needed or 0.0) - found.duration, 60.0),
        **water,
    }
    steps = decay_words.advice(found)
    return Answer(
        outputs=outputs,
        verdict=Verdict(
            code=found.code,
            says=decay_words.SAYS[found.reason],
            because=decay_words.reasons(found, volume=volume, limit=limit),
        ),
        notes=(*water_notes, *(say("{note}", note=note) for note in readings.notes)),
        working=decay_views.working(found, volume=volume),
        tables=(
            Table(
                caption="What to do next",
                columns=(Column("Order"), Column("Do this")),
                rows=tuple((str(n), text) for n, text in enumerate(steps, start=1)),
                open=True,
            ),
            decay_views.readings_table(found),
        ),
        chart=decay_views.chart(found, limit=limit),
        values=values,
    )


def _numbers(
    found: Judgment, volume: float | None, refrigerant: str
) -> tuple[dict[str, float | str | None], dict[str, float | str]]:
    """The outputs, and the values that the sentences need beside them."""
    rise = found.final_pressure - found.first_pressure
    outputs: dict[str, float | str | None] = {
        "verdict": found.code,
        "final_pressure": found.final_pressure,
        "rise": rise,
        "rate_of_rise": rate_of_pressure_rise(
            first_pressure=found.first_pressure,
            last_pressure=found.final_pressure,
            duration=found.duration,
        ),
        "leak_rate": None,
        "lowest_leak_rate": None,
        "highest_leak_rate": None,
        "plateau": found.plateau.best if found.plateau else None,
        "projected_pressure": found.projected.best,
        "hold_time": found.hold,
        "crossing_time": found.crossing,
        "smallest_detectable_leak": found.unseen,
        "needed_time": found.needed,
    }
    values: dict[str, float | str] = {
        "duration": found.duration,
        "first_reading": found.first_pressure,
        "slope": found.slope.best,
        "hold": found.hold,
        "projected_low": found.projected.low,
        "projected_high": found.projected.high,
        "step": max(point.step for point in found.found.points),
    }
    if volume is not None and found.unseen is not None:
        low, best, high = (
            leak_rate(volume=volume, rate_of_pressure_rise=each) for each in found.slope
        )
        outputs |= {"leak_rate": best, "lowest_leak_rate": low, "highest_leak_rate": high}
        loss = service_loss(
            leak_rate=found.unseen,
            refrigerant=GASES[refrigerant],
            service_pressure=refrigerants.vapor_pressure(refrigerant=refrigerant, temperature=ROOM),
            temperature=ROOM,
        )
        values |= {"unseen_least": loss.molecular, "unseen_greatest": loss.laminar}
    return outputs, values


def _water(
    found: Judgment, volume: float | None, temperature: float | None
) -> tuple[dict[str, float | str], list[Text]]:
    """Compare a plateau with what water at the coldest part would give."""
    if found.code not in ("moisture", "leak-and-moisture") or not found.plateau:
        return {}, []
    values: dict[str, float | str] = {"plateau_best": found.plateau.best}
    notes: list[Text] = []
    if temperature is not None:
        full = saturation_pressure(temperature=temperature)
        values["full"] = full
        if found.plateau.best > 1.15 * full:
            notes.append(
                "Water at {temperature} would level off at {full:micron|Pa;4}, lower than this: "
                "gas out of oil, air still evening out, or a part warmer than you think."
            )
        elif found.plateau.high >= 0.85 * full:
            notes.append(
                "Water at {temperature} gives {full:micron|Pa;4}: as much as this. There is water "
                "left that the reading does not measure."
            )
        else:
            notes.append(
                "Water lying in the open at {temperature} would give {full:micron|Pa;4}. This is "
                "far less, so it is a limited amount: the last of the water, water held by oil or "
                "a drier, or ice colder than that."
            )
    if volume is not None:
        gained = max(found.plateau.best - found.first_pressure, 0.0)
        values["mass"] = vapor_mass(pressure=gained, volume=volume, temperature=ROOM)
        notes.append("If it is water, the rise is {mass:mg;2} of vapor in {volume}.")
    return values, notes


def _leak(name: str, label: str, symbol: str) -> Output:
    return Output(
        name=name, label=label, symbol=symbol, si_unit="Pa·m³/s", us="micron·L/s", si="Pa·m³/s",
        figures=2,
    )  # fmt: skip


def _pressure(name: str, label: str, symbol: str) -> Output:
    return Output(
        name=name, label=label, symbol=symbol, si_unit="Pa", us="micron", si="Pa", figures=4
    )


def _time(name: str, label: str, symbol: str) -> Output:
    return Output(
        name=name, label=label, symbol=symbol, si_unit="s", us="duration", si="duration"
    )


CARD = Card(
    slug="decay",
    title="Decay test",
    question="Did it hold?",
    lede=(
        "Isolate the system, then write down the reading every minute or so. Type or paste the "
        "readings, or open a gauge's log."
    ),
    inputs=(
        Readings(
            name="readings",
            label="Readings",
            default="0 310\n2 905\n4 1260\n6 1475\n8 1604\n10 1682",
            hint="minutes, micron",
            help=(
                "One time and one pressure on each line. A first line such as “seconds, Pa” names "
                "other units; clock times and dates work too."
            ),
        ),
        Quantity(
            name="limit",
            label="Limit",
            symbol="p_lim",
            hint="not to be passed",
            si_unit="Pa",
            us="micron",
            si="Pa",
            units=VACUUM_UNITS,
            minimum=10.0 * MICRON,
            maximum=101_325.0,
            default="500 micron",
            help="500 micron or less is common practice.",
        ),
        Quantity(
            name="volume",
            label="Inside volume",
            symbol="V",
            hint="if you know it",
            si_unit="m³",
            us="L",
            si="L",
            units=VOLUME_UNITS,
            minimum=1e-5,
            maximum=1000.0,
            required=False,
            help="Without it a rise cannot be turned into a leak.",
        ),
        Quantity(
            name="temperature",
            label="Coldest part of the system",
            symbol="T_c",
            hint="if you know it",
            si_unit="K",
            us="°F",
            si="°C",
            units=TEMPERATURE_UNITS,
            minimum=200.0,
            maximum=373.15,
            required=False,
            help="Tells whether a plateau can be water lying there.",
        ),
        Quantity(
            name="resolution",
            label="Step of the gauge",
            symbol="r",
            si_unit="Pa",
            us="micron",
            si="Pa",
            units=STEP_UNITS,
            minimum=1e-4,
            maximum=1000.0,
            default="1 micron",
            help="The smallest change its display shows at these readings.",
        ),
        Quantity(
            name="leak_of_concern",
            label="Leak of concern",
            symbol="Q_c",
            hint="that a pass must rule out",
            si_unit="Pa·m³/s",
            us="micron·L/s",
            si="Pa·m³/s",
            units=LEAK_UNITS,
            minimum=1e-9,
            maximum=10.0,
            default="0.5 micron·L/s",
            help=(
                "About what ten minutes on 10 L with a five-micron gauge can show. Smaller leaks "
                "need a pressure test."
            ),
        ),
        Quantity(
            name="isolation",
            label="Moment of isolation",
            symbol="t_0",
            hint="if the log starts before it",
            si_unit="s",
            us="min",
            si="min",
            units=TIME_UNITS,
            minimum=-1e9,
            maximum=1e9,
            required=False,
        ),
        Choice(
            name="refrigerant",
            label="Refrigerant in service",
            options=tuple((name, name) for name in refrigerants.NAMES),
            default="R-410A",
        ),
    ),
    outputs=(
        Output(name="verdict", label="Verdict", choices=VERDICTS),
        _pressure("final_pressure", "Last reading", "p₂"),
        _pressure("rise", "Rise", "Δp"),
        Output(
            name="rate_of_rise", label="Mean rate of rise", symbol="Δp/t", si_unit="Pa/s",
            us="micron/min", si="Pa/min", figures=3,
        ),
        _pressure("plateau", "Levels off at", "p_∞"),
        _leak("leak_rate", "Leak part", "Q"),
        _leak("lowest_leak_rate", "Leak part, at least (95 %)", "Q_low"),
        _leak("highest_leak_rate", "Leak part, at most (95 %)", "Q_high"),
        _leak("smallest_detectable_leak", "Could not have seen a leak under", "Q_min"),
        _time("hold_time", "Recommended hold", "t_h"),
        _pressure("projected_pressure", "At the end of that hold", "p_h"),
        _time("crossing_time", "Passes the limit after", "t_lim"),
        _time("needed_time", "Hold that would decide", "t_n"),
    ),
    compute=compute,
    primary="verdict",
    sources=(
        Cite("40-CFR-1065", "section 1065.644"),
        Cite("GUM", "F.2.2.1"),
        Cite("PHYSICS", "shapes of a rise; what the scatter leaves room for"),
        Cite("COMMON-PRACTICE", "limit of 500 micron; holds of 5 to 10 minutes"),
    ),
    assumptions=(
        "The system was isolated at its own valves. Hoses let gas through and rise on their own.",
        "The temperature stayed within 1 K. Trapped gas rises by a third of a percent per kelvin, "
        "water vapor by six percent.",
        "A leak feeds in at a steady rate; gas from inside slows down. Gas too slow to bend within "
        "three times the test looks like a leak.",
        "A vacuum of this kind proves dryness and the absence of gross leaks. Small leaks are "
        "found under nitrogen pressure.",
    ),
    cautions=("refrigerant", "electricity", "nitrogen"),
    examples=(
        Example(
            title="Levels off: a bakery's walk-in cooler",
            entries={
                "readings": "0 310, 2 905, 4 1260, 6 1475, 8 1604, 10 1682",
                "volume": "10 L",
                "temperature": "68 °F",
            },
            shows="The climb slows down. No leak does that.",
        ),
        Example(
            title="A recovery cylinder that holds",
            entries={"readings": "0 95, 10 100", "volume": "27 L"},
            shows="Five micron in ten minutes, and still at 100: common practice passes it.",
        ),
        Example(
            title="A dairy's chiller, judged too soon",
            entries={"readings": "0 300, 1 301", "volume": "3000 L"},
            shows="In 3,000 L a minute shows nothing, not even a large leak.",
        ),
        Example(
            title="A village library's split system that leaks",
            entries={
                "readings": "0 300, 2 320, 4 341, 6 361, 8 380, 10 401",
                "volume": "8 L",
            },
            shows="A straight climb, minute after minute.",
        ),
    ),
)
