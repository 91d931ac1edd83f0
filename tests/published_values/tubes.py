"""Copper tube: bores and contents that standards and data sheets print."""

import math
from functools import partial

from calculators.physics import inside_volume, tube_sizes
from published_values.checks import Published, Subject

INCH = 0.0254
FOOT = 0.3048
GALLON = 231 * INCH**3  # United States

# An engineering table of ASTM B280: size, temper, inside diameter [in] and area of the bore
# [sq in], digits as printed. Its 0.0129 of 3/16 takes a bore of 0.128 where 0.187 - 2 x 0.030 is
# 0.127; the row stands with the bore that its walls give.
B280 = [
    ("1/8", "annealed", "0.065", "0.0033"),
    ("3/16", "annealed", "0.127", None),
    ("1/4", "annealed", "0.190", "0.0284"),
    ("5/16", "annealed", "0.248", "0.0483"),
    ("3/8", "annealed", "0.311", "0.076"),
    ("3/8", "drawn", "0.315", "0.078"),
    ("1/2", "annealed", "0.436", "0.149"),
    ("1/2", "drawn", "0.430", "0.145"),
    ("5/8", "annealed", "0.555", "0.242"),
    ("5/8", "drawn", "0.545", "0.233"),
    ("3/4", "annealed", "0.680", "0.363"),
    ("3/4", "heavy-annealed", "0.666", "0.348"),
    ("3/4", "drawn", "0.666", "0.348"),
    ("7/8", "annealed", "0.785", "0.484"),
    ("7/8", "drawn", "0.785", "0.484"),
    ("1-1/8", "annealed", "1.025", "0.825"),
    ("1-1/8", "drawn", "1.025", "0.825"),
    ("1-3/8", "annealed", "1.265", "1.26"),
    ("1-3/8", "drawn", "1.265", "1.26"),
]

# A data sheet of ASTM B88 type L, which has the walls of drawn B280 tube from 3/8 up: size,
# inside diameter [in], contents [gal/ft], as printed. Two contents are left out as misprints,
# 0.0174 for 3/4 (its bore gives 0.0181) and 0.571 for 4-1/8 (0.622).
TYPE_L = [
    ("3/8", "0.315", "0.00405"),
    ("1/2", "0.43", "0.00753"),
    ("5/8", "0.545", "0.0121"),
    ("3/4", "0.666", None),
    ("7/8", "0.785", "0.0251"),
    ("1-1/8", "1.025", "0.0429"),
    ("1-3/8", "1.265", "0.0655"),
    ("1-5/8", "1.505", "0.0925"),
    ("2-1/8", "1.985", "0.161"),
    ("2-5/8", "2.465", "0.248"),
    ("3-1/8", "2.945", "0.354"),
    ("3-5/8", "3.425", "0.478"),
    ("4-1/8", "3.905", None),
]
TEMPER = {"annealed": "soft", "heavy-annealed": "soft, heavy wall", "drawn": "hard"}


def bore(size: str, temper: str) -> float:
    """Bore [in]."""
    return tube_sizes.inside_diameter(size=size, temper=temper) / INCH


def area(size: str, temper: str) -> float:
    """Area of the bore [sq in]."""
    return math.pi / 4 * bore(size, temper) ** 2


def contents(size: str) -> float:
    """What a foot of drawn tube holds [gal]."""
    inside = tube_sizes.inside_diameter(size=size, temper="drawn")
    return inside_volume.tube_volume(inside_diameter=inside, length=FOOT) / GALLON


SUBJECT = Subject(
    title="Copper tube",
    published=(
        *(
            Published(
                what=f"Bore of {size} in, {TEMPER[temper]}",
                printed=printed,
                unit="in",
                ours=partial(bore, size, temper),
                source="ASTM-B280",
                locator="as an engineering table prints it",
            )
            for size, temper, printed, _ in B280
        ),
        *(
            Published(
                what=f"Area of the bore of {size} in, {TEMPER[temper]}",
                printed=printed,
                unit="in²",
                ours=partial(area, size, temper),
                source="ASTM-B280",
                locator="as an engineering table prints it",
            )
            for size, temper, _, printed in B280
            if printed
        ),
        *(
            Published(
                what=f"Bore of {size} in, hard",
                printed=printed,
                unit="in",
                ours=partial(bore, size, "drawn"),
                source="A data sheet of ASTM B88 type L, whose walls are the same",
            )
            for size, printed, _ in TYPE_L
        ),
        *(
            Published(
                what=f"Contents of 1 ft of {size} in, hard",
                printed=printed,
                unit="gal",
                ours=partial(contents, size),
                source="A data sheet of ASTM B88 type L, whose walls are the same",
                within=6e-3,
                because="the sheet's contents differ from its own bores by up to 0.4 %",
            )
            for size, _, printed in TYPE_L
            if printed
        ),
    ),
)
