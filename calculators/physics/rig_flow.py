"""Steady flow in a rig: the pressures that a throughput needs, and the other way round.

The throughput is the same in every part of a series, so the pressure is found
by walking from the pump to the system, each part at its own pressures.
"""

import math
from collections.abc import Iterator
from dataclasses import replace

from calculators.errors import OutOfRange
from calculators.physics import tube_conductance, tube_flow
from calculators.physics.gases import ThinGas
from calculators.physics.rig import SMALLEST_DROP, PartFlow, Rig, SteadyFlow, Tube
from calculators.physics.root import rising_root

_EVEN = 1e-6  # of the throughput: sides share it to far better than this


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


def flow_curve(
    *, rig: Rig, lowest_pressure: float, highest_pressure: float, points: int, gas: ThinGas
) -> tuple[SteadyFlow, ...]:
    """Steady flows of a rig from one system pressure to another, evenly in ln(throughput).

    Parameters
    ----------
    rig : Rig
        Pump and path.
    lowest_pressure, highest_pressure : float
        Pressures of the system at both ends [Pa], scalar.
    points : int
        How many flows, two or more.
    gas : ThinGas
        The gas at its temperature.

    Returns
    -------
    tuple of SteadyFlow
        From the lowest pressure up.

    Raises
    ------
    OutOfRange
        If the lowest pressure is not above the ultimate pressure of the pump.

    References
    ----------
    See :func:`steady_flow`; only the ends need a search.
    """
    first, last = (
        flow_at(rig=rig, system_pressure=pressure, gas=gas)
        for pressure in (lowest_pressure, highest_pressure)
    )
    step = math.log(last.throughput / first.throughput) / (points - 1)
    between = (
        steady_flow(rig=rig, throughput=first.throughput * math.exp(step * index), gas=gas)
        for index in range(1, points - 1)
    )
    return (first, *between, last)


def _walk(rig: Rig, throughput: float, gas: ThinGas) -> Iterator[PartFlow]:
    """Every part from the pump to the system; the last one ends in the system."""
    pressure = rig.ultimate_pressure + throughput / rig.pumping_speed
    for flow in _series(rig.shared, pressure, throughput, gas):
        pressure = flow.inlet_pressure
        yield flow
    if not rig.branches:
        return
    flows = _split(rig.branches, pressure, throughput, gas)
    done: dict[tuple[tuple[Tube, ...], float], tuple[PartFlow, ...]] = {}
    for index, (branch, own) in enumerate(zip(rig.branches, flows, strict=True)):
        if (branch, own) not in done:  # equal sides are walked once
            done[branch, own] = tuple(_series(branch, pressure, own, gas))
        for flow in done[branch, own]:
            yield replace(flow, branch=index)


def _series(
    parts: tuple[Tube, ...], pressure: float, throughput: float, gas: ThinGas
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
            branch=None,
            throughput=throughput,
            inlet_pressure=inlet,
            outlet_pressure=pressure,
        )
        pressure = inlet


def _end(parts: tuple[Tube, ...], pressure: float, throughput: float, gas: ThinGas) -> float:
    for flow in _series(parts, pressure, throughput, gas):
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
        drops = (
            _end(parts, pressure, flow, gas) - pressure
            for parts, flow in ((first, own), (rest[0], flows[0]))
        )
        mine, theirs = (max(drop, SMALLEST_DROP * pressure) for drop in drops)
        return math.log(mine / theirs)

    mine, *theirs = (_small_conductance(branch, pressure, gas) for branch in branches)
    guess = math.log(mine / math.fsum(theirs))
    own, flows = parted(rising_root(surplus, guess=guess, tolerance=_EVEN))
    return own, *flows


def _small_conductance(parts: tuple[Tube, ...], pressure: float, gas: ThinGas) -> float:
    """Conductance of parts in series for a small pressure difference."""
    return 1.0 / sum(
        1.0
        / tube_conductance.conductance(
            inside_diameter=part.inside_diameter,
            length=part.length,
            mean_pressure=pressure,
            gas=gas,
        )
        for part in parts
    )
