"""A case for the practice bench: a system, a rig, and a fault hidden by the case's number.

All sizes are our own illustrations of ordinary small systems, chosen so that
each fault shows within minutes; the places are invented.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TypeVar

from calculators.errors import OutOfRange
from calculators.hardware import PARTS
from calculators.physics.constants import MICRON, ZERO_CELSIUS
from calculators.physics.evacuation import Plant
from calculators.physics.evacuation_path import Path, path_of
from calculators.physics.rig import Rig, Tube
from calculators.teaching.bench_faults import FAULTS
from calculators.teaching.draw import pick

CFM = 0.3048**3 / 60.0  # m3/s
LARGEST = 9999
SEEPAGE = 5e-6  # Pa m3/s into any sound system, a thirteenth of the decay card's leak of concern
HOSES = {"hose-3/16": "3/16 in", "hose-1/4": "1/4 in", "hose-3/8": "3/8 in", "hose-1/2": "1/2 in"}
PLACES = (
    "A bakery's walk-in cooler, after a new filter drier",
    "A village library's split system, after a new line set",
    "A dairy's milk tank, after a compressor change",
    "A school kitchen's reach-in freezer, after a repaired joint",
    "A florist's cold room, after a new evaporator coil",
    "A ferry office's heat pump, after a move",
    "A mountain inn's ice maker, after a flooded coil",
    "A print shop's air conditioner, after a burnt-out motor",
)
# Rooms and hoses are drawn alike for as many faults as bear them, so that none gives one away.
ROOMS = (2.0, 4.0, 6.0, 18.0, 20.0, 22.0, 24.0)  # °C
WARM = (18.0, 20.0, 22.0, 24.0)
COLD = (2.0, 4.0, 6.0)
T = TypeVar("T")


@dataclass(frozen=True, kw_only=True)
class Case:
    """What stands on the bench, and how somebody left it; SI units."""

    number: int
    fault: str
    place: str
    plant: Plant
    pump: int  # CFM
    water: float = 0.0  # kg
    hose: str = "hose-1/4"
    cores_in: bool = False
    ballast_open: bool = False
    gauge_at: str = "system"
    wetness: float = 0.0  # Pa that water in the pump oil adds


def case_of(number: int) -> Case:
    """Give the case with a number; the same number is the same case everywhere.

    Parameters
    ----------
    number : int
        From 1 to 9999.

    Returns
    -------
    Case
        System, rig and hidden fault.

    Raises
    ------
    OutOfRange
        If there is no case with that number.
    """
    if not 1 <= number <= LARGEST:
        raise OutOfRange(f"Cases are numbered from 1 to {LARGEST:,}.", input="case")

    def one_of(what: str, choices: Sequence[T]) -> T:
        return choices[pick(len(choices), "bench", number, what)]

    def between(low: float, high: float, what: str = "size") -> float:
        return low + (high - low) * pick(1001, "bench", number, what) / 1000.0

    fault = one_of("fault", FAULTS).key
    plant = Plant(
        volume=one_of("volume", (6.0, 8.0, 10.0, 12.0)) * 1e-3,
        ambient=ZERO_CELSIUS + one_of("room", ROOMS),
        leak=SEEPAGE,
    )
    case = Case(
        number=number, fault=fault, place=one_of("place", PLACES), plant=plant,
        pump=one_of("pump", (4, 6, 8)), hose=one_of("hose", tuple(HOSES)),
    )  # fmt: skip
    if fault == "leak-system":
        return _with(replace(case, hose="hose-1/4"), leak=between(6e-3, 14e-3))
    if fault == "leak-rig":
        return _with(replace(case, hose="hose-1/4"), rig_leak=between(10e-3, 25e-3))
    if fault == "wet":
        warm = _with(case, ambient=ZERO_CELSIUS + one_of("warm", WARM))
        wet = _with(warm, wet_area=4e-3, heat_conductance=between(1.5, 3.0, "heat"))
        return replace(wet, water=between(8e-3, 15e-3), hose="hose-1/4")
    if fault == "frozen":
        icy = _with(
            case,
            ambient=ZERO_CELSIUS + one_of("cold", COLD),
            heat_conductance=between(0.05, 0.12, "heat"),
        )
        return replace(icy, water=between(5e-3, 9e-3), pump=8, hose="hose-1/2")
    if fault == "oil-gas":
        return _with(
            replace(case, hose="hose-1/4"), oil_pressure=between(300.0, 450.0),
            oil_capacity=between(0.04, 0.08, "capacity"), oil_time=between(700.0, 1100.0, "time"),
        )  # fmt: skip
    if fault == "gauge-dirty":
        return _with(case, gauge_offset=between(500.0, 900.0) * MICRON)
    if fault == "core-in":
        return replace(_with(case, volume=12e-3), cores_in=True, hose="hose-3/8")
    if fault == "pump-oil":
        return replace(case, wetness=between(500.0, 900.0) * MICRON)
    if fault == "ballast":
        return replace(case, ballast_open=True)
    if fault == "gauge-at-pump":
        return replace(_with(case, volume=12e-3), gauge_at="pump", hose="hose-3/16")
    return case


def _with(case: Case, **settings: float) -> Case:
    return replace(case, plant=replace(case.plant, **settings))


@lru_cache(maxsize=32)
def path(pump: int, hose: str, cores_in: bool) -> Path:
    """The rig of a pump [CFM], one hose and a core tool, as a table of speed.

    Parameters
    ----------
    pump : int
        Free-air displacement [CFM].
    hose : str
        Key of a hose in :data:`calculators.hardware.PARTS`.
    cores_in : bool
        Whether the valve core is still in the port.

    Returns
    -------
    Path
        As :func:`calculators.physics.evacuation_path.path_of` makes it.

    References
    ----------
    [FROM-MEMORY] sizes in :mod:`calculators.hardware`.
    """
    keys = [hose, "core-tool", "port", *(["core-in"] if cores_in else [])]
    tubes = []
    for key in keys:
        part = PARTS[key]
        assert part.inside_diameter is not None and part.length is not None
        tubes.append(Tube(inside_diameter=part.inside_diameter, length=part.length))
    return path_of(
        rig=Rig(pumping_speed=pump * CFM, ultimate_pressure=20.0 * MICRON, shared=tuple(tubes))
    )
