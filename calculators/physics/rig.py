"""A rig: a pump and the path from it to the system, and what flows in it.

Every part is a tube (of length 0 for an orifice such as a valve core). Parts
that all the gas passes stand in series next to the pump; after them the path
may part into branches, which meet again in the system.
"""

import math
from dataclasses import dataclass

from calculators.errors import OutOfRange

SMALLEST_DROP = 1e-15  # of the pressure: below it a float shows no drop at all


@dataclass(frozen=True, kw_only=True)
class Tube:
    """One part of the path: bore [m] and length [m], with a name and a kind for people."""

    inside_diameter: float
    length: float
    name: str = ""
    kind: str = ""

    def __post_init__(self) -> None:
        """Refuse a part that cannot exist."""
        if not 0.0 < self.inside_diameter < math.inf:
            raise OutOfRange(f"{self.name or 'A part'} needs a bore above zero.")
        if not 0.0 <= self.length < math.inf:
            raise OutOfRange(f"{self.name or 'A part'} needs a length of zero or more.")


@dataclass(frozen=True, kw_only=True)
class Rig:
    """Pump and path. ``shared`` starts at the pump; each branch starts where it ends.

    The pump takes in a constant volume flow ``pumping_speed`` [m3/s], less
    what leaks back: it passes S (p - p_u) and stops at its
    ``ultimate_pressure`` [Pa].
    """

    pumping_speed: float
    ultimate_pressure: float
    shared: tuple[Tube, ...] = ()
    branches: tuple[tuple[Tube, ...], ...] = ()

    def __post_init__(self) -> None:
        """Refuse a pump that cannot exist and a branch of nothing."""
        if not 0.0 < self.pumping_speed < math.inf:
            raise OutOfRange("The pump needs a speed above zero.")
        if not 0.0 < self.ultimate_pressure < math.inf:
            raise OutOfRange("The pump needs an ultimate pressure above zero.")
        if not all(self.branches):
            raise OutOfRange("A branch needs at least one part.")


@dataclass(frozen=True, kw_only=True)
class PartFlow:
    """What happens in one part: its throughput [Pa m3/s], end pressures [Pa], branch."""

    part: Tube
    branch: int | None  # None where all the gas passes
    throughput: float
    inlet_pressure: float
    outlet_pressure: float

    @property
    def drop(self) -> float:
        """Pressure lost in this part [Pa]."""
        return self.inlet_pressure - self.outlet_pressure

    @property
    def conductance(self) -> float:
        """Throughput over pressure drop [m3/s]."""
        return self.throughput / max(self.drop, SMALLEST_DROP * self.inlet_pressure)


@dataclass(frozen=True, kw_only=True)
class SteadyFlow:
    """A rig passing one throughput: pressures [Pa] and the flow in every part."""

    throughput: float
    system_pressure: float
    pump_pressure: float
    ultimate_pressure: float
    parts: tuple[PartFlow, ...]

    @property
    def effective_speed(self) -> float:
        """Effective pumping speed, throughput over system pressure [m3/s]."""
        return self.throughput / self.system_pressure

    @property
    def pump_share(self) -> float:
        """Share of the pressure above the ultimate that the pump itself keeps [1]."""
        lost = self.system_pressure - self.ultimate_pressure
        return (self.pump_pressure - self.ultimate_pressure) / lost

    def share(self, part: PartFlow) -> float:
        """Share of the pressure above the ultimate that is lost in this part [1]."""
        return part.drop / (self.system_pressure - self.ultimate_pressure)
