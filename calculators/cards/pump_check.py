"""Is the pump good?"""

from dataclasses import replace

from calculators.card import Answer, Card, Cite, Example, Output, Quantity
from calculators.cards.common import (
    DURATION,
    FLOW_UNITS,
    GAUGE_STEP,
    TEMPERATURE,
    VACUUM,
    VOLUME,
    all_or_none,
    fold,
)
from calculators.cards.pump_check_working import notes, working
from calculators.errors import CalculatorError, OutOfRange
from calculators.physics import gauges, pump_speed
from calculators.practice_limits import PRACTICE_LIMITS

GOOD = PRACTICE_LIMITS["pump"].value  # Pa, blank-off of a pump in order
WORST = PRACTICE_LIMITS["pump-worst"].value  # Pa, the most a pump may show
TARGET_SHARE = 0.2  # of the target: above it the last decade drags on; common practice
TIMING_ERROR = 1.0  # s, starting and stopping a watch by hand; from memory


def compute(
    *,
    blank_off: float,
    accuracy: float,
    resolution: float,
    oil_temperature: float,
    target: float,
    rated_speed: float,
    volume: float | None,
    first_pressure: float | None,
    last_pressure: float | None,
    duration: float | None,
) -> Answer:
    """Judge the blank-off [Pa] and the speed [m3/s] of a pump."""
    doubt = gauges.expanded_uncertainty(
        standard_uncertainty=gauges.gauge_uncertainty(step=resolution, limit=accuracy * blank_off)
    )
    lowest, highest = max(0.0, blank_off - doubt), blank_off + doubt
    judgment = _judgment(lowest, highest)
    speed, doubt_of_speed = _speed(
        blank_off,
        accuracy,
        resolution,
        volume=volume,
        first_pressure=first_pressure,
        last_pressure=last_pressure,
        duration=duration,
    )
    activity = pump_speed.water_activity(vapor_pressure=blank_off, oil_temperature=oil_temperature)
    return Answer(
        outputs={
            "judgment": judgment,
            "lowest": lowest,
            "highest": highest,
            "share_of_target": blank_off / target,
            "speed": speed,
            "share_of_rating": None if speed is None else speed / rated_speed,
            "speed_uncertainty": doubt_of_speed,
            "water_activity": activity,
        },
        headline="This pump is",
        notes=notes(
            judgment,
            deep_enough=highest <= TARGET_SHARE * target,
            reaches=blank_off < target,
            share=None if speed is None else speed / rated_speed,
            near_floor=last_pressure is not None and last_pressure < 10.0 * blank_off,
        ),
        working=working(speed is not None),
        values={
            "doubt": doubt,
            "limit": accuracy * blank_off,
            "good": GOOD,
            "worst": WORST,
            "wanted": TARGET_SHARE * target,
            "wet_oil": blank_off / activity,
            "timing": TIMING_ERROR,
        },
    )


def _judgment(lowest: float, highest: float) -> str:
    if highest <= GOOD:
        return "good"
    if lowest > WORST:
        return "poor"
    return "fair" if lowest > GOOD and highest <= WORST else "undecided"


def _speed(
    blank_off: float, accuracy: float, resolution: float, **entries: float | None
) -> tuple[float | None, float | None]:
    """Speed, and its relative expanded uncertainty with the volume taken as known."""
    given = all_or_none(
        entries,
        else_say=(
            "For the speed give all four: volume, first and last pressure, and the time between."
        ),
    )
    if given is None:
        return None, None
    volume = given.pop("volume")
    try:
        speed = pump_speed.pull_down_speed(volume=volume, ultimate_pressure=blank_off, **given)
    except CalculatorError as error:
        raise OutOfRange(str(error), input="last_pressure") from error

    def doubt(pressure: float) -> float:
        return gauges.gauge_uncertainty(step=resolution, limit=accuracy * pressure)

    relative = pump_speed.pull_down_speed_uncertainty(
        ultimate_pressure=blank_off,
        volume_error=0.0,
        duration_error=TIMING_ERROR,
        first_error=doubt(given["first_pressure"]),
        last_error=doubt(given["last_pressure"]),
        **given,
    )
    return speed, gauges.expanded_uncertainty(standard_uncertainty=relative)


# fmt: off
INPUTS = (
    replace(
        VACUUM, name="blank_off", label="Blank-off reading", symbol="p_u", default="35 micron",
        maximum=20_000.0,
        help="Gauge straight on the pump, oil warm, gas ballast shut, nothing else attached.",
    ),
    Quantity(
        name="accuracy", label="Accuracy of the gauge", symbol="a", hint="± of the reading",
        si_unit="1", us="%", si="%", units=("%",), minimum=0.0, maximum=1.0, default="10 %",
    ),
    GAUGE_STEP,
    replace(
        TEMPERATURE, name="oil_temperature", label="Temperature of the oil", symbol="T_oil",
        minimum=263.15, maximum=393.15, default="140 °F",
    ),
    replace(VACUUM, name="target", label="What you want to reach", symbol="p_t"),
    Quantity(
        name="rated_speed", label="Rated speed", symbol="S_r", si_unit="m³/s", us="CFM", si="m³/h",
        units=FLOW_UNITS, minimum=1e-6, maximum=1.0, default="5 CFM",
    ),
    replace(
        VOLUME, label="Volume pulled down", hint="for the speed", default="", required=False,
        help="A clean dry cylinder with a short wide connection. Count the connection too.",
    ),
    replace(VACUUM, name="first_pressure", label="From", symbol="p₁", default="", required=False),
    replace(VACUUM, name="last_pressure", label="Down to", symbol="p₂", default="",
            required=False),
    replace(DURATION, label="Took", units=("s", "min", "h"), us="s", si="s", default="",
            required=False),
)

OUTPUTS = (
    Output(
        name="judgment", label="This pump is",
        choices={
            "good": "good", "fair": "worn or wet", "poor": "not fit for this work",
            "undecided": "not decided by this gauge",
        },
    ),
    Output(name="lowest", label="Blank-off, at least", symbol="p_u,min", si_unit="Pa", us="micron",
           si="Pa", figures=3),
    Output(name="highest", label="Blank-off, at most", symbol="p_u,max", si_unit="Pa", us="micron",
           si="Pa", figures=3),
    Output(name="share_of_target", label="Blank-off over target", symbol="p_u/p_t", si_unit="1",
           us="%", si="%", figures=3),
    Output(name="speed", label="Measured speed", symbol="S", si_unit="m³/s", us="CFM", si="m³/h",
           figures=3),
    Output(name="share_of_rating", label="Of its rating", symbol="S/S_r", si_unit="1", us="%",
           si="%", figures=3),
    Output(name="speed_uncertainty", label="Uncertainty of the speed (k = 2)", symbol="U(S)/S",
           si_unit="1", us="%", si="%", figures=2),
    Output(name="water_activity", label="Oil this wet would explain it", symbol="a_w", si_unit="1",
           us="%", si="%", figures=2),
)
# fmt: on

CARD = Card(
    slug="pump-check",
    title="Pump check",
    question="Is the pump good?",
    lede=(
        "A pump shows what it is worth with its inlet shut, on a stopwatch with a known volume, "
        "and by the water in its oil."
    ),
    inputs=fold(INPUTS, "oil_temperature", "volume", "first_pressure", "last_pressure", "duration"),
    outputs=OUTPUTS,
    compute=compute,
    primary="judgment",
    sources=(
        Cite("COMMON-PRACTICE", "blank-off under 50 micron, 100 at worst; a fifth of the target"),
        Cite("FROM-MEMORY", "a sound pump within a fifth of its rating; a watch good to 1 s"),
        Cite("ISO-21360-1", "pump-down method"),
        Cite("GUM", "5.1.2, 6.2.1 and F.2.2.1"),
        Cite("IAPWS-SR1-86", "vapor pressure of water at the temperature of the oil"),
    ),
    assumptions=(
        "A blank-off reading is the pump, its oil's vapor and the gauge together.",
        "The speed is one number over the whole pull: keep both pressures above ten times the "
        "blank-off and the connection short and wide.",
        "Gas cools as it expands and warms after: a fast pull flatters the pump by a few percent.",
        "The volume is taken as exact; a watch stopped by hand is good to 1 s.",
    ),
    cautions=("electricity", "oil", "hot-surface", "lifting"),
    examples=(
        Example(
            title="A pump that has seen oil changes",
            entries={"blank_off": "25 micron", "accuracy": "10 %"},
            shows="Good whichever way the gauge errs.",
        ),
        Example(
            title="Wet oil at a village library",
            entries={"blank_off": "180 micron", "oil_temperature": "140 °F"},
            shows="A tenth of a percent of saturation in the oil is enough. Change it, warm.",
        ),
        Example(
            title="A dairy's 40 m³/h pump on a 50 L vessel",
            entries={
                "blank_off": "3 Pa",
                "accuracy": "5 %",
                "resolution": "0.1 Pa",
                "target": "60 Pa",
                "rated_speed": "40 m³/h",
                "volume": "50 L",
                "first_pressure": "100 kPa",
                "last_pressure": "100 Pa",
                "duration": "36 s",
            },
            shows="A little under its rating, within what gauge and watch can tell.",
        ),
    ),
)
