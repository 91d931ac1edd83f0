"""Copper tube for refrigeration service, ASTM B280: what a size really is inside.

The size is the outside diameter. Soft coils (annealed) and hard straight
lengths (drawn) of one size have different walls, and so different volumes.
All in inches, as the standard prints them::

    size     outside  annealed   drawn
    1/8      0.125    0.030      -
    3/16     0.187    0.030      -
    1/4      0.250    0.030      0.025
    5/16     0.312    0.032      -
    3/8      0.375    0.032      0.030
    1/2      0.500    0.032      0.035
    5/8      0.625    0.035      0.040
    3/4      0.750    0.035      0.042    (annealed also 0.042: the heavy wall)
    7/8      0.875    0.045      0.045
    1-1/8    1.125    0.050      0.050
    1-3/8    1.375    0.055      0.055
    1-5/8    1.625    0.060      0.060
    2-1/8    2.125    -          0.070
    2-5/8    2.625    -          0.080
    3-1/8    3.125    -          0.090
    3-5/8    3.625    -          0.100
    4-1/8    4.125    -          0.110

Drawn walls to 2-1/8 from table 1 of ASTM B280-20, above that from memory (the
same as ASTM B88 type L, whose inside diameters they reproduce). Annealed walls
from an engineering table of B280; the coil of 1-5/8 from memory.
"""

from dataclasses import dataclass

from calculators.errors import OutOfRange

INCH = 0.0254  # m, exact (NIST-SP811, appendix B.8)


@dataclass(frozen=True, kw_only=True)
class Tube:
    """One size of tube: outside diameter and walls [m]; a wall it is not made in is None."""

    size: str
    outside_diameter: float
    annealed_wall: float | None = None
    heavy_annealed_wall: float | None = None
    drawn_wall: float | None = None


def _tube(
    size: str,
    outside: float,
    annealed: float | None,
    drawn: float | None,
    heavy: float | None = None,
) -> Tube:
    def meters(inches: float | None) -> float | None:
        return None if inches is None else inches * INCH

    return Tube(
        size=size,
        outside_diameter=outside * INCH,
        annealed_wall=meters(annealed),
        heavy_annealed_wall=meters(heavy),
        drawn_wall=meters(drawn),
    )


TUBES = {
    tube.size: tube
    for tube in (
        _tube("1/8", 0.125, 0.030, None),
        _tube("3/16", 0.187, 0.030, None),
        _tube("1/4", 0.250, 0.030, 0.025),
        _tube("5/16", 0.312, 0.032, None),
        _tube("3/8", 0.375, 0.032, 0.030),
        _tube("1/2", 0.500, 0.032, 0.035),
        _tube("5/8", 0.625, 0.035, 0.040),
        _tube("3/4", 0.750, 0.035, 0.042, 0.042),
        _tube("7/8", 0.875, 0.045, 0.045),
        _tube("1-1/8", 1.125, 0.050, 0.050),
        _tube("1-3/8", 1.375, 0.055, 0.055),
        _tube("1-5/8", 1.625, 0.060, 0.060),
        _tube("2-1/8", 2.125, None, 0.070),
        _tube("2-5/8", 2.625, None, 0.080),
        _tube("3-1/8", 3.125, None, 0.090),
        _tube("3-5/8", 3.625, None, 0.100),
        _tube("4-1/8", 4.125, None, 0.110),
    )
}
TEMPERS = ("annealed", "heavy-annealed", "drawn")


def inside_diameter(*, size: str, temper: str) -> float:
    """Inside diameter of a tube, outside diameter less two walls.

    Parameters
    ----------
    size : str
        Outside diameter as the trade writes it, one of ``TUBES``.
    temper : str
        ``"annealed"`` (soft coil), ``"heavy-annealed"`` (the 0.042 in wall
        of 3/4) or ``"drawn"`` (hard straight length).

    Returns
    -------
    float
        Inside diameter [m], scalar.

    Raises
    ------
    OutOfRange
        If the standard has no such size, or does not make it in that temper.

    References
    ----------
    [ASTM-B280] tables of standard dimensions, module table.
    """
    if size not in TUBES:
        raise OutOfRange(f"ASTM B280 has no size {size}; choose {', '.join(TUBES)}.")
    tube = TUBES[size]
    walls = {
        "annealed": tube.annealed_wall,
        "heavy-annealed": tube.heavy_annealed_wall,
        "drawn": tube.drawn_wall,
    }
    wall = walls.get(temper)
    if wall is None:
        made = " or ".join(name for name, thickness in walls.items() if thickness is not None)
        raise OutOfRange(f"{size} in tube is made {made} only: choose that, or type the true bore.")
    return tube.outside_diameter - 2.0 * wall
