"""Nitrogen breaks: worked examples of vacuum purging in chemical engineering."""

import math

from calculators.physics import dilution
from calculators.physics.constants import MICRON, STANDARD_ATMOSPHERE, TORR
from published_values.checks import Published, Subject


def cycles_to_five_ppm() -> float:
    """Cycles from 21 % to 5 ppm, from the fraction that two of them leave."""
    two = dilution.pulls(
        start_pressure=STANDARD_ATMOSPHERE,
        evacuated_to=[6 * TORR, 6 * TORR],
        broken_to=[STANDARD_ATMOSPHERE],
    )[1].fraction_left
    return math.log(5e-4 / 21.0) / (0.5 * math.log(two))


def pound_moles() -> float:
    """Nitrogen for four purges of 1,000 gal [lb mol]."""
    moles = dilution.nitrogen_amount(
        volume=1000 * 3.785411784e-3,
        temperature=(75 + 459.67) / 1.8,
        evacuated_to=[20 * TORR] * 4,
        broken_to=[STANDARD_ATMOSPHERE] * 4,
    )
    return moles / 453.59237


def third_pull() -> dilution.Pull:
    return dilution.pulls(
        start_pressure=STANDARD_ATMOSPHERE,
        evacuated_to=[1500 * MICRON] * 3,
        broken_to=[STANDARD_ATMOSPHERE] * 2,
    )[-1]


SUBJECT = Subject(
    title="Nitrogen breaks",
    published=(
        Published(
            what="Cycles with 6 mmHg from air to 5 ppm of oxygen",
            printed="2.20",
            unit="cycles",
            ours=cycles_to_five_ppm,
            source="A worked problem after C. Branan, Rules of Thumb for Chemical Engineers",
        ),
        Published(
            what="Nitrogen for four purges of 1,000 gal at 20 mmHg",
            printed="1.33",
            unit="lb·mol",
            ours=pound_moles,
            source="CROWL-LOUVAR",
            locator="example on vacuum purging",
            from_memory=True,
        ),
        Published(
            what="Air left by three pulls to 1,500 micron",
            printed="0.005843",
            unit="micron",
            ours=lambda: third_pull().partial_pressure / MICRON,
            source="PHYSICS",
            locator="by hand: 1,500 × (1,500 / 760,000)²",
        ),
        Published(
            what="The same as a share of the air that was there",
            printed="7.69e-9",
            unit="1",
            ours=lambda: third_pull().fraction_left,
            source="PHYSICS",
            locator="by hand: (1,500 / 760,000)³",
        ),
    ),
)
