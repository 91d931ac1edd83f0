"""The same quantity in another unit gives the same answer to 1e-12, rows included."""

import math

import pytest

from calculators import units
from calculators.card import Quantity, Rows
from calculators.cards import (
    gauge_check,
    inside_volume,
    leak_rate,
    moisture,
    pump_check,
    triple_evacuation,
)
from calculators.evaluate import evaluate

# Entries that fill every input, so that none goes untested for being blank.
FILLED = [
    (
        inside_volume.CARD,
        {
            "tubes": [{"size": "3/8", "length": "25 ft", "bore": "8 mm"}],
            "parts": [
                {"kind": "coil", "volume": "2.4 L"},
                {"kind": "cylinder", "water_capacity": "47.7 lb"},
            ],
            "known_volume": "10 L",
            "known_pressure": "2 MPa",
            "system_pressure": "101 kPa",
            "final_pressure": "0.9 MPa",
        },
    ),
    (gauge_check.CARD, {"earlier_difference": "8 micron", "elapsed": "400 d"}),
    (
        pump_check.CARD,
        {
            "volume": "50 L",
            "first_pressure": "100 kPa",
            "last_pressure": "1 Torr",
            "duration": "36 s",
        },
    ),
    (moisture.CARD, {"heat": "30 W"}),
    (
        triple_evacuation.CARD,
        {
            "pulls": [
                {"evacuated_to": "1500 micron", "broken_to": "120 kPa"},
                {"evacuated_to": "500 micron"},
            ],
            "water": "40 g",
        },
    ),
    (leak_rate.CARD, {"last_temperature": "19.5 °C", "service_pressure": "1.5 MPa"}),
]


def entries_in_other_units(card, filled):
    """Every single change of unit that leaves the meaning alone."""
    entered = evaluate(card, filled).entered
    for each in card.inputs:
        if isinstance(each, Quantity):
            for unit in plain(each):
                yield each.name, unit, {**filled, each.name: text(entered[each.name].si, unit)}
        elif isinstance(each, Rows):
            for index, row in enumerate(entered[each.name]):
                for column in each.columns:
                    if not isinstance(column, Quantity) or row[column.name] is None:
                        continue
                    for unit in plain(column):
                        rows = [dict(one) for one in filled[each.name]]
                        rows[index][column.name] = text(row[column.name].si, unit)
                        yield (
                            f"{each.name}.{index}.{column.name}",
                            unit,
                            {
                                **filled,
                                each.name: rows,
                            },
                        )


def plain(quantity):
    return [unit for unit in quantity.units if not units.UNITS[unit].gauge]


def text(si, unit):
    return f"{units.from_si(si, unit)!r} {unit}"


@pytest.mark.parametrize(("card", "filled"), FILLED, ids=[card.slug for card, _ in FILLED])
def test_the_unit_does_not_matter(card, filled):
    base = evaluate(card, filled)
    assert all(value is not None for value in base.entered.values())

    for name, unit, entries in entries_in_other_units(card, filled):
        other = evaluate(card, entries).answer.outputs
        for output, value in base.answer.outputs.items():
            if isinstance(value, float):
                assert math.isclose(other[output], value, rel_tol=1e-12, abs_tol=1e-300), (
                    name, unit, output, other[output] / value - 1.0,
                )  # fmt: skip
            else:
                assert other[output] == value, (name, unit, output)
