"""A rig: a pump and the path from it to the system, in steady flow.

Every part is a tube (of length 0 for an orifice such as a valve core). Parts
that all the gas passes stand in series next to the pump; after them the path
may part into branches, which meet again in the system. The throughput is the
same in every part of a series, so the pressure is found by walking from the
pump to the system, each part at its own pressures.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from calculators.errors import OutOfRange
from calculators.physics import tube_flow
from calculators.physics.gases import ThinGas
from calculators.physics.root import rising_root


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
        return self.throughput / self.drop


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


def steady_flow(*, rig: Rig, throughput: float, gas: ThinGas) -> SteadyFlow:
    """The pressures along a rig that passes a throughput.

    Parameters
    ----------
    rig : Rig
        Pump and path.
    throughput : float
        Throughput at the pump [Pa m3/s], scalar, above zero.
    gas : ThinGas
        The gas at its temperature.

    Returns
    -------
    SteadyFlow
        Pressures from the pump to the system, and every part's share.

    References
    ----------
    [PHYSICS] conservation of mass; the parts from :mod:`tube_flow`.
    """
    flows = list(_walk(rig, throughput, gas))
    pump_pressure = rig.ultimate_pressure + throughput / rig.pumping_speed
    return SteadyFlow(
        throughput=throughput,
        system_pressure=flows[-1].inlet_pressure if flows else pump_pressure,
        pump_pressure=pump_pressure,
        ultimate_pressure=rig.ultimate_pressure,
        parts=tuple(flows),
    )


def system_pressure(*, rig: Rig, throughput: float, gas: ThinGas) -> float:
    """Pressure of the system that a rig holds against a throughput.

    Parameters
    ----------
    rig : Rig
        Pump and path.
    throughput : float
        Throughput [Pa m3/s], scalar; 0 gives the ultimate pressure of the pump.
    gas : ThinGas
        The gas at its temperature.

    Returns
    -------
    float
        Pressure at the system [Pa], scalar; rises with the throughput.

    References
    ----------
    [PHYSICS] conservation of mass; the parts from :mod:`tube_flow`.
    """
    if throughput <= 0.0:
        return rig.ultimate_pressure
    return steady_flow(rig=rig, throughput=throughput, gas=gas).system_pressure


def flow_at(*, rig: Rig, system_pressure: float, gas: ThinGas) -> SteadyFlow:
    """The steady flow of a rig on a system at a pressure.

    Parameters
    ----------
    rig : Rig
        Pump and path.
    system_pressure : float
        Pressure at the system [Pa], scalar.
    gas : ThinGas
        The gas at its temperature.

    Returns
    -------
    SteadyFlow
        Throughput and pressures.

    Raises
    ------
    OutOfRange
        If the system is not above the ultimate pressure of the pump.

    References
    ----------
    [PHYSICS] inverse of :func:`steady_flow`.
    """
    above = system_pressure - rig.ultimate_pressure
    if not above > 0.0:
        raise OutOfRange(
            "At or below its ultimate pressure the pump removes nothing: "
            "the system must be above it."
        )

    def surplus(log_throughput: float) -> float:
        flow = steady_flow(rig=rig, throughput=math.exp(log_throughput), gas=gas)
        return math.log((flow.system_pressure - rig.ultimate_pressure) / above)

    resistance = 1.0 / rig.pumping_speed + sum(
        1.0 / _small_conductance(parts, system_pressure, gas) for parts in (rig.shared,) if parts
    )
    if rig.branches:
        resistance += 1.0 / sum(
            _small_conductance(branch, system_pressure, gas) for branch in rig.branches
        )
    log_throughput = rising_root(surplus, guess=math.log(above / resistance))
    return steady_flow(rig=rig, throughput=math.exp(log_throughput), gas=gas)


def _walk(rig: Rig, throughput: float, gas: ThinGas) -> Iterator[PartFlow]:
    """Every part from the pump to the system; the last one ends in the system."""
    pressure = rig.ultimate_pressure + throughput / rig.pumping_speed
    for flow in _series(rig.shared, None, pressure, throughput, gas):
        pressure = flow.inlet_pressure
        yield flow
    if rig.branches:
        flows = _split(rig.branches, pressure, throughput, gas)
        for index, (branch, own) in enumerate(zip(rig.branches, flows, strict=True)):
            yield from _series(branch, index, pressure, own, gas)


def _series(
    parts: tuple[Tube, ...], branch: int | None, pressure: float, throughput: float, gas: ThinGas
) -> Iterator[PartFlow]:
    for part in parts:
        inlet = tube_flow.inlet_pressure(
            inside_diameter=part.inside_diameter,
            length=part.length,
            outlet_pressure=pressure,
            throughput=throughput,
            gas=gas,
        )
        yield PartFlow(
            part=part,
            branch=branch,
            throughput=throughput,
            inlet_pressure=inlet,
            outlet_pressure=pressure,
        )
        pressure = inlet


def _end(parts: tuple[Tube, ...], pressure: float, throughput: float, gas: ThinGas) -> float:
    for flow in _series(parts, None, pressure, throughput, gas):
        pressure = flow.inlet_pressure
    return pressure


def _split(
    branches: tuple[tuple[Tube, ...], ...], pressure: float, throughput: float, gas: ThinGas
) -> tuple[float, ...]:
    """Throughput of each branch, such that all of them reach the same system pressure."""
    first, *others = branches
    rest = tuple(others)
    sizes = [[(part.inside_diameter, part.length) for part in branch] for branch in branches]
    if all(each == sizes[0] for each in sizes):
        return (throughput / len(branches),) * len(branches)

    def parted(log_ratio: float) -> tuple[float, tuple[float, ...]]:
        own = throughput / (1.0 + math.exp(-log_ratio))
        return own, _split(rest, pressure, throughput - own, gas)

    def surplus(log_ratio: float) -> float:
        own, flows = parted(log_ratio)
        end = _end(first, pressure, own, gas)
        other_end = _end(rest[0], pressure, flows[0], gas)
        return math.log((end - pressure) / (other_end - pressure))

    mine = _small_conductance(first, pressure, gas)
    theirs = sum(_small_conductance(branch, pressure, gas) for branch in rest)
    own, flows = parted(rising_root(surplus, guess=math.log(mine / theirs)))
    return own, *flows


def _small_conductance(parts: tuple[Tube, ...], pressure: float, gas: ThinGas) -> float:
    """Conductance of parts in series for a small pressure difference."""
    return 1.0 / sum(
        1.0
        / tube_flow.conductance(
            inside_diameter=part.inside_diameter,
            length=part.length,
            mean_pressure=pressure,
            gas=gas,
        )
        for part in parts
    )
