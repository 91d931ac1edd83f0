"""Did it hold?"""

from typing import Any

from calculators.card import Card, Choice, Cite, Example, Output, Quantity, Readings
from calculators.cards.common import (
    LEAK_UNITS,
    TEMPERATURE_UNITS,
    TIME_UNITS,
    VACUUM_UNITS,
    VOLUME_UNITS,
    fold,
)
from calculators.cards.decay_answer import compute
from calculators.physics import refrigerants
from calculators.physics.constants import MICRON

STEP_UNITS = ("micron", "mTorr", "Torr", "mmHg", "Pa", "hPa", "mbar")
VERDICTS = {
    "pass": "holds",
    "leak": "leak",
    "moisture": "levels off: water, or gas out of oil",
    "leak-and-moisture": "leak and gas inside",
    "undecided": "not decided",
}
CONFIDENCE = {
    "sure": "sure",
    "fair": "fair: met, but not by far",
}


def _leak(name: str, label: str, symbol: str) -> Output:
    return Output(
        name=name, label=label, symbol=symbol, si_unit="Pa·m³/s", us="micron·L/s", si="Pa·m³/s",
        figures=2,
    )  # fmt: skip


def _pressure(name: str, label: str, symbol: str) -> Output:
    return Output(
        name=name, label=label, symbol=symbol, si_unit="Pa", us="micron", si="Pa", figures=4
    )


def _loss(name: str, label: str, symbol: str) -> Output:
    return Output(
        name=name, label=label, symbol=symbol, si_unit="kg/s", us="lb/yr", si="kg/yr", figures=2
    )


def _temperature(name: str, label: str, symbol: str, **more: Any) -> Quantity:
    return Quantity(
        name=name, label=label, symbol=symbol, si_unit="K", us="°F", si="°C",
        units=TEMPERATURE_UNITS, minimum=200.0, maximum=373.15, required=False,
        **more,
    )  # fmt: skip


def _time(name: str, label: str, symbol: str) -> Output:
    return Output(name=name, label=label, symbol=symbol, si_unit="s", us="duration", si="duration")


CARD = Card(
    slug="decay",
    title="Decay test",
    question="Did it hold?",
    lede=(
        "Isolate the system, then write down the reading every minute or so. Type or paste the "
        "readings, or open a gauge's log."
    ),
    inputs=fold(
        (
            Readings(
                name="readings",
                label="Readings",
                default="0 310\n2 905\n4 1260\n6 1475\n8 1604\n10 1682",
                hint="minutes, micron",
                help=(
                    "One time and one pressure on each line. A first line such as “seconds, Pa” "
                    "names other units; clock times and dates work too."
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
            _temperature(
                "temperature",
                "Coldest part of the system",
                "T_c",
                hint="if you know it",
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
                    "About what ten minutes on 10 L with a five-micron gauge can show. Smaller "
                    "leaks need a pressure test."
                ),
            ),
            Quantity(
                name="isolation",
                label="Moment of isolation",
                symbol="t_0",
                hint="after the first reading, if the log starts before it",
                si_unit="s",
                us="min",
                si="min",
                units=TIME_UNITS,
                minimum=0.0,
                maximum=30.0 * 86_400.0,
                required=False,
            ),
            _temperature(
                "start_temperature",
                "Temperature at isolation",
                "T₁",
                hint="if it changed",
                help="With the one at the end, takes warming out of the rise.",
            ),
            _temperature(
                "end_temperature",
                "Temperature at the last reading",
                "T₂",
                hint="if it changed",
            ),
            Choice(
                name="refrigerant",
                label="Refrigerant in service",
                options=tuple((name, name) for name in refrigerants.NAMES),
                default="R-410A",
            ),
        ),
        "leak_of_concern",
        "isolation",
        "start_temperature",
        "end_temperature",
        "refrigerant",
    ),
    outputs=(
        Output(name="verdict", label="Verdict", choices=VERDICTS),
        Output(name="confidence", label="How sure", choices=CONFIDENCE),
        _pressure("final_pressure", "Last reading", "p₂"),
        _pressure("rise", "Rise", "Δp"),
        Output(
            name="rate_of_rise",
            label="Mean rate of rise",
            symbol="Δp/t",
            si_unit="Pa/s",
            us="micron/min",
            si="Pa/min",
            figures=3,
        ),
        _pressure("plateau", "Levels off at", "p_∞"),
        _pressure("lowest_plateau", "Plateau, at least (95 %)", "p_∞,low"),
        _pressure("highest_plateau", "Plateau, at most (95 %)", "p_∞,high"),
        Output(
            name="vapor_mass",
            label="As water vapor",
            symbol="m",
            si_unit="kg",
            us="mg",
            si="mg",
            figures=2,
        ),
        _leak("leak_rate", "Leak part", "Q"),
        _leak("lowest_leak_rate", "Leak part, at least (95 %)", "Q_low"),
        _leak("highest_leak_rate", "Leak part, at most (95 %)", "Q_high"),
        _leak("smallest_detectable_leak", "Could not have seen a leak under", "Q_min"),
        _loss("least_unseen_loss", "In service, at least", "m_min"),
        _loss("greatest_unseen_loss", "In service, up to", "m_max"),
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
        Cite("IAPWS-R14-08", "vapor pressure over ice, beside a plateau"),
        Cite("IAPWS-SR1-86", "vapor pressure over liquid water, beside a plateau"),
        Cite("COMMON-PRACTICE", "limit of 500 micron; holds of 5 to 10 minutes"),
    ),
    assumptions=(
        "The system was isolated at its own valves. Hoses let gas through and rise on their own.",
        "Unless you enter temperatures, the temperature stayed within about 2 K. Trapped gas rises "
        "by a third of a percent per kelvin, vapor over water by six percent.",
        "The gauge's scale is right to 10 % and does not drift.",
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
        Example(
            title="Out of a gauge's file: stamps and millibar",
            entries={
                "readings": (
                    "time;pressure [mbar]\n"
                    "2026-05-04T08:00:00;0,400\n2026-05-04T08:05:00;0,404\n"
                    "2026-05-04T08:10:00;0,405\n2026-05-04T08:20:00;0,406\n"
                    "2026-05-04T08:30:00;0,407"
                ),
                "volume": "12 L",
                "start_temperature": "72 °F",
                "end_temperature": "73 °F",
            },
            shows="Dates, decimal commas and other units are read as they stand.",
        ),
        Example(
            title="Bends, then keeps climbing: a bottling hall's glycol chiller",
            entries={
                "readings": (
                    "date,vacuum (micron)\n"
                    + "\n".join(
                        f"05/04/2026 {8 + minute // 60:02d}:{minute % 60:02d} AM,{reading}"
                        for minute, reading in (
                            (0, 300),
                            (5, 581),
                            (10, 716),
                            (15, 791),
                            (20, 839),
                            (25, 877),
                            (30, 911),
                            (35, 943),
                            (40, 974),
                            (45, 1004),
                            (50, 1034),
                            (55, 1065),
                            (60, 1095),
                        )
                    )
                ),
                "volume": "85 L",
            },
            shows="Gas inside explains the bend, but not the straight climb after it.",
        ),
    ),
)
