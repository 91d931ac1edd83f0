"""Barometer against altitude: the rows of the 1976 model and reference libraries."""

import pytest
from published import agrees

from calculators.errors import OutOfRange
from calculators.physics.atmosphere import HIGHEST_ALTITUDE, barometer_at, geopotential_height

# Source: U.S. Standard Atmosphere 1976, table I, Z [m], P [mbar], digits as printed;
# rows from memory of the printed table, each reproduced by the ambiance library below.
USSA_TABLE_I = [
    (0, "1013.25"),
    (1000, "898.76"),
    (2000, "795.01"),
    (3000, "701.21"),
    (5000, "540.48"),
    (10000, "265.00"),
]


@pytest.mark.parametrize(("altitude", "printed"), USSA_TABLE_I)
def test_barometer_is_table_i(altitude, printed):
    # The printed table carries five figures of its own rounding; one unit of the last is allowed.
    assert abs(barometer_at(altitude=float(altitude)) / 100 - float(printed)) <= 0.011


@pytest.mark.parametrize("altitude", [-400.0, 0.0, 500.0, 1609.344, 3048.0, 8000.0, 11000.0])
def test_barometer_agrees_with_ambiance(altitude):
    ambiance = pytest.importorskip("ambiance")

    reference = float(ambiance.Atmosphere(altitude).pressure[0])

    assert barometer_at(altitude=altitude) == pytest.approx(reference, rel=2e-6)


@pytest.mark.parametrize("altitude", [0.0, 1500.0, 3000.0])
def test_barometer_agrees_with_fluids(altitude):
    fluids = pytest.importorskip("fluids")

    assert barometer_at(altitude=altitude) == pytest.approx(
        fluids.ATMOSPHERE_1976(altitude).P, rel=2e-6
    )


def test_a_mile_up_the_dial_ends_at_24_6_inches():
    # 5,280 ft, from the model: 24.637 inHg.
    assert agrees(barometer_at(altitude=1609.344) / 3386.388640341, "24.637")


def test_geopotential_height_is_the_models_own():
    # Source: U.S. Standard Atmosphere 1976: 11,019 m geometric is 11,000 m geopotential.
    assert agrees(geopotential_height(altitude=11_019.0) / 1000, "11.000")


@pytest.mark.parametrize("altitude", [-501.0, HIGHEST_ALTITUDE + 1, float("nan")])
def test_barometer_refuses_what_the_model_does_not_cover(altitude):
    with pytest.raises(OutOfRange):
        barometer_at(altitude=altitude)
