"""Every calculator, in the order of the job. A new one is one line here."""

from calculators.card import Card
from calculators.cards import (
    altitude,
    boiling_point,
    convert,
    decay,
    hold_time,
    saturation_pressure,
)

CARDS: tuple[Card, ...] = (
    boiling_point.CARD,
    saturation_pressure.CARD,
    convert.CARD,
    altitude.CARD,
    decay.CARD,
    hold_time.CARD,
)
BY_SLUG = {card.slug: card for card in CARDS}
