"""Barometer against altitude: a mile up, and the ends of the model; see published_values."""

import pytest
from published import agrees

from calculators.errors import OutOfRange
from calculators.physics.atmosphere import HIGHEST_ALTITUDE, barometer_at


def test_a_mile_up_the_dial_ends_at_24_6_inches():
    # 5,280 ft, from the model: 24.637 inHg.
    assert agrees(barometer_at(altitude=1609.344) / 3386.388640341, "24.637")


@pytest.mark.parametrize("altitude", [-501.0, HIGHEST_ALTITUDE + 1, float("nan")])
def test_barometer_refuses_what_the_model_does_not_cover(altitude):
    with pytest.raises(OutOfRange):
        barometer_at(altitude=altitude)
