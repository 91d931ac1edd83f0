"""What is the inside volume of this system?"""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from calculators.card import Answer, Card, Choice, Cite, Example, Output, Quantity, Rows, Words
from calculators.cards.common import (
    BAROMETER,
    BORE_UNITS,
    GAUGE_PRESSURE_UNITS,
    LENGTH_UNITS,
    MASS_UNITS,
    VOLUME,
    VOLUME_UNITS,
    all_or_none,
    as_it_is,
    fold,
)
from calculators.cards.inside_volume_working import Piece, notes, table, working
from calculators.errors import CalculatorError, OutOfRange
from calculators.physics import inside_volume, tube_sizes
from calculators.physics.constants import MICRON
from calculators.physics.leak_rate import leak_rate

ONE_PERCENT = 0.01  # of the cylinder's pressure: the error of reading that is shown as a warning


def compute(
    *,
    tubes: Sequence[Mapping[str, float | str | None]],
    parts: Sequence[Mapping[str, float | str | None]],
    known_volume: float | None,
    known_pressure: float | None,
    system_pressure: float | None,
    final_pressure: float | None,
    barometer: float,
) -> Answer:
    """Inside volume [m3], counted from tubes and parts and, where given, measured.

    ``barometer`` lets pressures be entered as gauge readings; it cancels out.
    """
    tubing = [_tube(index, row) for index, row in enumerate(tubes)]
    others = [_part(index, row) for index, row in enumerate(parts)]
    counted = sum(piece.volume for piece in (*tubing, *others))
    measured, effect = _measured(
        known_volume=known_volume,
        known_pressure=known_pressure,
        system_pressure=system_pressure,
        final_pressure=final_pressure,
    )
    if not counted > 0.0 and measured is None:
        raise OutOfRange("Give at least one tube or part with a volume above zero.", input="tubes")
    volume = counted if measured is None else measured
    return Answer(
        outputs={
            "volume": volume,
            "tube_volume": sum(piece.volume for piece in tubing),
            "part_volume": sum(piece.volume for piece in others),
            "counted_volume": counted,
            "measured_volume": measured,
            "effect_of_reading": effect,
        },
        headline="The system holds" if measured is None else "By the nitrogen it took, it holds",
        notes=notes(counted, measured, bool(others)),
        working=working(tubing, others, measured is not None),
        tables=(table(tubing, others, counted),) if counted > 0.0 else (),
        values={
            "per_minute": leak_rate(volume=volume, rate_of_pressure_rise=MICRON / 60.0),
            "as_long": 600.0 * volume / 0.010,
        },
    )


def _tube(index: int, row: Mapping[str, float | str | None]) -> Piece:
    size, temper, length = str(row["size"]), str(row["temper"]), float(row["length"] or 0.0)
    bore = row["bore"]
    try:
        inside = (
            float(bore)
            if bore is not None
            else tube_sizes.inside_diameter(size=size, temper=temper)
        )
        volume = inside_volume.tube_volume(inside_diameter=inside, length=length)
    except CalculatorError as error:
        sentence = f"Tube {index + 1}: {error}"
        raise OutOfRange(sentence, input=f"tubes.{index}.temper") from error
    tube = tube_sizes.TUBES[size]
    return Piece(
        name="tube with a bore of your own" if bore is not None else f"{size} in, {temper}",
        volume=volume,
        bore=inside,
        length=length,
        outside=None if bore is not None else tube.outside_diameter,
    )


def _part(index: int, row: Mapping[str, float | str | None]) -> Piece:
    volume, capacity = row["volume"], row["water_capacity"]
    name = as_it_is(str(row["name"])) or dict(KINDS)[str(row["kind"])]
    if (volume is None) == (capacity is None):
        raise OutOfRange(
            f"{name.capitalize()}: give its volume or, for a cylinder, its water capacity: one "
            "of the two.",
            input=f"parts.{index}.volume",
        )
    if volume is not None:
        return Piece(name=name, volume=float(volume))
    mass = float(capacity or 0.0)
    return Piece(
        name=name, volume=inside_volume.cylinder_volume(water_capacity=mass), capacity=mass
    )


def _measured(**entries: float | None) -> tuple[float | None, float | None]:
    """Volume by expansion, and what one percent of the first pressure does to it."""
    given = all_or_none(
        entries,
        else_say=(
            "To measure the volume, give all four: the cylinder's volume and the three pressures."
        ),
    )
    if given is None:
        return None, None
    cylinder = given.pop("known_volume")
    try:
        volume = inside_volume.expansion_volume(known_volume=cylinder, **given)
    except OutOfRange as error:
        raise OutOfRange(str(error), input="final_pressure") from error
    effect = inside_volume.expansion_sensitivity(
        pressure_error=ONE_PERCENT * given["known_pressure"], **given
    )
    return volume, effect


# fmt: off
KINDS = (
    ("coil", "coil"), ("receiver", "receiver"), ("compressor", "compressor"),
    ("accumulator", "accumulator"), ("cylinder", "cylinder"), ("shell", "heat exchanger shell"),
    ("other", "other part"),
)
TEMPERS = (
    ("annealed", "annealed: soft coil"), ("drawn", "drawn: hard, straight"),
    ("heavy-annealed", "heavy-annealed: 3/4 in coil, 0.042 in wall"),
)
PRESSURE = Quantity(
    name="pressure", label="Pressure", symbol="p", si_unit="Pa", us="psig", si="barg",
    units=GAUGE_PRESSURE_UNITS, minimum=0.0, maximum=25e6, required=False,
)

INPUTS = (
    Rows(
        name="tubes", label="Tubes", row="tube", minimum=0, maximum=30,
        columns=(
            Choice(
                name="size", label="Size, outside", default="3/8",
                options=tuple((size, f"{size} in") for size in tube_sizes.TUBES),
            ),
            Choice(name="temper", label="Temper", options=TEMPERS, default="annealed"),
            Quantity(
                name="length", label="Length", symbol="L", si_unit="m", us="ft", si="m",
                units=LENGTH_UNITS, minimum=0.0, maximum=10_000.0, default="25 ft",
            ),
            Quantity(
                name="bore", label="True bore", symbol="d", hint="if not ASTM B280", si_unit="m",
                us="in", si="mm", units=BORE_UNITS, minimum=0.0005, maximum=1.0, required=False,
            ),
        ),
        default=(
            {"size": "3/8", "temper": "annealed", "length": "25 ft"},
            {"size": "3/4", "temper": "annealed", "length": "25 ft"},
        ),
    ),
    Rows(
        name="parts", label="Everything else", row="part", minimum=0, maximum=30,
        columns=(
            Choice(name="kind", label="Kind", options=KINDS, default="coil"),
            Words(name="name", label="Name"),
            Quantity(
                name="volume", label="Volume", symbol="V", si_unit="m³", us="L", si="L",
                units=VOLUME_UNITS, minimum=0.0, maximum=1000.0, required=False,
            ),
            Quantity(
                name="water_capacity", label="Or water capacity", symbol="m_w",
                hint="WC on a cylinder", si_unit="kg", us="lb", si="kg", units=MASS_UNITS,
                minimum=0.0, maximum=1e6, required=False,
            ),
        ),
        default=(
            {"kind": "coil", "name": "outdoor coil", "volume": "2.4 L"},
            {"kind": "coil", "name": "indoor coil", "volume": "1.6 L"},
            {"kind": "compressor", "name": "compressor", "volume": "2 L"},
        ),
        help="From the maker's data where you can; a guess is better than nothing.",
    ),
    replace(
        VOLUME, name="known_volume", label="Nitrogen cylinder: its volume", symbol="V₁",
        hint="to measure instead", default="", required=False,
    ),
    replace(PRESSURE, name="known_pressure", label="Its pressure before", symbol="p₁"),
    replace(PRESSURE, name="system_pressure", label="The system's pressure before", symbol="p₂"),
    replace(
        PRESSURE, name="final_pressure", label="Both, once joined and settled", symbol="p_f",
        help="Never above the lowest pressure rating of anything in the system.",
    ),
    BAROMETER,
)

INSIDE = Output(
    name="volume", label="Inside volume", symbol="V", si_unit="m³", us="L", si="L", figures=3,
)
OUTPUTS = (
    INSIDE,
    replace(INSIDE, name="tube_volume", label="Tubes"),
    replace(INSIDE, name="part_volume", label="Everything else"),
    replace(INSIDE, name="counted_volume", label="Counted, together", symbol="ΣV"),
    replace(INSIDE, name="measured_volume", label="Measured with nitrogen", symbol="V₂"),
    Output(
        name="effect_of_reading", label="Change if the last reading is off by 1 % of the first",
        symbol="δV/V", si_unit="1", us="%", si="%", figures=2,
    ),
)
# fmt: on

CARD = Card(
    slug="inside-volume",
    title="Inside volume",
    question="What is the inside volume of this system?",
    lede=(
        "Time, hold and leak all hang on the volume. Count the tubes and parts, or measure it "
        "with nitrogen."
    ),
    inputs=fold(
        INPUTS, "known_volume", "known_pressure", "system_pressure", "final_pressure", "barometer"
    ),
    outputs=OUTPUTS,
    compute=compute,
    primary="volume",
    sources=(
        Cite("ASTM-B280", "tables of standard dimensions"),
        Cite("IAPWS-R6-95", "density of water at 60 °F, for stamped water capacities"),
        Cite("PHYSICS", "expansion of nitrogen at one temperature"),
        Cite("FROM-MEMORY", "walls above 2-1/8 in and of the 1-5/8 in coil; volumes of parts"),
    ),
    assumptions=(
        "Tube has the standard's nominal bore. Its tolerances move the volume by up to 5 %.",
        "Empty: oil and liquid refrigerant take up room that is not counted.",
        "For the measurement: nitrogen, everything at room temperature again before the last "
        "reading, hoses counted with the cylinder.",
    ),
    cautions=("nitrogen", "stored-pressure", "cylinder"),
    examples=(
        Example(
            title="A village library's split system",
            entries={
                "tubes": [
                    {"size": "3/8", "temper": "annealed", "length": "50 ft"},
                    {"size": "7/8", "temper": "annealed", "length": "50 ft"},
                ],
                "parts": [
                    {"kind": "coil", "name": "outdoor coil", "volume": "2.6 L"},
                    {"kind": "coil", "name": "indoor coil", "volume": "1.8 L"},
                    {"kind": "compressor", "name": "compressor", "volume": "2.2 L"},
                ],
            },
            shows="The line set alone holds nearly half.",
        ),
        Example(
            title="A recovery cylinder stamped WC 47.7 lb",
            entries={
                "tubes": [],
                "parts": [{"kind": "cylinder", "name": "cylinder", "water_capacity": "47.7 lb"}],
            },
            shows="Pounds of water are a volume.",
        ),
        Example(
            title="A dairy's chiller, measured with nitrogen",
            entries={
                "tubes": [],
                "parts": [],
                "known_volume": "50 L",
                "known_pressure": "20 barg",
                "system_pressure": "0 barg",
                "final_pressure": "0.95 barg",
            },
            shows="A small cylinder on a large machine measures badly: see what one percent does.",
        ),
    ),
)
