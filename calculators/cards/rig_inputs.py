"""What a person says about a rig, shared by the cards that need one, and the rig made of it."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from calculators.card import Choice, Quantity, Rows
from calculators.cards.common import (
    BORE_UNITS,
    FLOW_UNITS,
    LENGTH_UNITS,
    TEMPERATURE,
    VACUUM,
)
from calculators.errors import OutOfRange
from calculators.hardware import PARTS
from calculators.physics import gases
from calculators.physics.rig import Rig, Tube

PUMP_SPEED = Quantity(
    name="pump_speed",
    label="Pump speed",
    symbol="S",
    hint="from its nameplate",
    si_unit="m³/s",
    us="CFM",
    si="L/s",
    units=FLOW_UNITS,
    minimum=1e-4,
    maximum=1.0,
    default="5 CFM",
    help="Free-air displacement. What is left of it at the system is another matter.",
)
ULTIMATE = replace(
    VACUUM,
    name="ultimate_pressure",
    label="Pump alone reads",
    symbol="p_u",
    hint="blank-off",
    minimum=1e-3,
    maximum=20_000.0,
    default="20 micron",
    help="The lowest the pump gets with its inlet capped, on a gauge you trust.",
)
GAS = Choice(
    name="gas",
    label="Gas",
    options=tuple((name, name[0].upper() + name[1:]) for name in gases.NAMES),
    default="air",
)
GAS_TEMPERATURE = replace(TEMPERATURE, label="Temperature of the gas")
START = replace(
    VACUUM,
    name="start_pressure",
    label="Start from",
    symbol="p₀",
    minimum=1.0,
    default="1 atm",
)
TARGET = replace(VACUUM, name="target_pressure", label="Target", symbol="p")
BORE = Quantity(
    name="bore",
    label="Bore",
    symbol="d",
    hint="if it differs",
    si_unit="m",
    us="in",
    si="mm",
    units=BORE_UNITS,
    minimum=1e-4,
    maximum=0.15,
    required=False,
    folded=True,
)
LENGTH = Quantity(
    name="length",
    label="Length",
    symbol="L",
    hint="if it differs",
    si_unit="m",
    us="ft",
    si="m",
    units=LENGTH_UNITS,
    minimum=0.0,
    maximum=1000.0,
    required=False,
    folded=True,
)
PART = Choice(
    name="part",
    label="Part",
    options=tuple((key, part.name[0].upper() + part.name[1:]) for key, part in PARTS.items()),
    default="hose-1/4",
)
LINES = {"all": None, "a": 0, "b": 1, "c": 2}
PATH = Rows(
    name="path",
    label="From the pump to the system",
    row="part",
    columns=(
        PART,
        BORE,
        LENGTH,
        Choice(
            name="line",
            label="What passes it",
            folded=True,
            options=(
                ("all", "All the gas"),
                ("a", "Side A only"),
                ("b", "Side B only"),
                ("c", "Side C only"),
            ),
            default="all",
        ),
    ),
    default=({"part": "hose-1/4"}, {"part": "core-tool"}),
    maximum=16,
    help=(
        "In order, starting at the pump. Hoses are listed by true bore, 6 ft long. Where two "
        "hoses pull side by side, mark one side A and the other side B."
    ),
)


def tube(row: Mapping[str, Any], *, index: int, rows: str = "path") -> Tube:
    """One part: the list's sizes, or those the reader gives instead."""
    part = PARTS[row["part"]]
    bore = part.inside_diameter if row["bore"] is None else row["bore"]
    length = part.length if row["length"] is None else row["length"]
    where = f"{rows}.{index}"
    if bore is None:
        raise OutOfRange(f"Part {index + 1}: type its bore.", input=f"{where}.bore")
    if length is None:
        raise OutOfRange(
            f"Part {index + 1}: type its length, 0 for an orifice.", input=f"{where}.length"
        )
    name = part.name
    if part.inside_diameter is not None and row["bore"] is not None:
        name = f"{part.kind.replace('-', ' ')} of your bore"
    return Tube(inside_diameter=bore, length=length, name=name, kind=part.kind)


def rig_of(
    *, pump_speed: float, ultimate_pressure: float, path: tuple[Mapping[str, Any], ...]
) -> Rig:
    """The rig that the rows describe: shared parts first, then up to three sides."""
    tubes = [(LINES[row["line"]], tube(row, index=index)) for index, row in enumerate(path)]
    sides = sorted({line for line, _ in tubes if line is not None})
    return Rig(
        pumping_speed=pump_speed,
        ultimate_pressure=ultimate_pressure,
        shared=tuple(part for line, part in tubes if line is None),
        branches=tuple(tuple(part for line, part in tubes if line == side) for side in sides),
    )


def gas_of(*, gas: str, temperature: float) -> gases.ThinGas:
    """The gas at its temperature, as the flow formulas take it."""
    return gases.thin_gas(gas=gases.named(gas), temperature=temperature)
