"""Every calculator, in the order of the job. A new one is one line here."""

from calculators.card import Card
from calculators.cards import (
    altitude,
    boiling_point,
    compare_rigs,
    conductance,
    convert,
    decay,
    gauge_check,
    hold_time,
    inside_volume,
    leak_rate,
    moisture,
    pull_down,
    pump_check,
    pumping_speed,
    rig_check,
    saturation_pressure,
    triple_evacuation,
)

CARDS: tuple[Card, ...] = (
    boiling_point.CARD,
    saturation_pressure.CARD,
    convert.CARD,
    altitude.CARD,
    gauge_check.CARD,
    pump_check.CARD,
    rig_check.CARD,
    inside_volume.CARD,
    conductance.CARD,
    pumping_speed.CARD,
    compare_rigs.CARD,
    pull_down.CARD,
    moisture.CARD,
    triple_evacuation.CARD,
    decay.CARD,
    hold_time.CARD,
    leak_rate.CARD,
)
BY_SLUG = {card.slug: card for card in CARDS}
