"""How long a rig takes to pull a volume down, and where it levels off.

The gas in the system leaves at the throughput of the rig and comes in at the
gas load, so V dp/dt = -(Q(p) - Q_load). Nothing is stepped through time: the
steady flow gives p for every Q, and the time is an integral over Q.
"""

import math
from dataclasses import dataclass
from itertools import pairwise

from calculators.errors import OutOfRange
from calculators.physics.gases import ThinGas
from calculators.physics.rig import Rig
from calculators.physics.rig_flow import flow_at, steady_flow, system_pressure

_PANEL = 0.5  # widest panel of the rule, in ln(throughput)
_NEAR = 1e-6  # nearer to its limit than this share, a pull is said never to arrive


@dataclass(frozen=True, kw_only=True)
class Moment:
    """One moment of a pull: time [s], pressures [Pa] and throughput [Pa m3/s]."""

    time: float
    system_pressure: float
    pump_pressure: float
    throughput: float


@dataclass(frozen=True, kw_only=True)
class PullDown:
    """A pull from its start to its target, or toward the limit that keeps it from there.

    ``limit_pressure`` [Pa] is where the pull would level off. ``moments`` run
    in time from the start to ``target_pressure``, or to 2 % above the limit if
    the target lies below.
    """

    volume: float
    gas_load: float
    target_pressure: float
    limit_pressure: float
    moments: tuple[Moment, ...]

    @property
    def arrives(self) -> bool:
        """Whether the target is ever reached."""
        return _arrives(self.target_pressure, self.limit_pressure)

    @property
    def time(self) -> float | None:
        """Time to the target [s], or None if it is never reached."""
        return self.moments[-1].time if self.arrives else None

    def time_to(self, pressure: float) -> float | None:
        """Time from the start to a pressure [s], or None where the pull does not get.

        Between the moments a cubic takes the exact slope at both ends.
        """
        if pressure >= self.moments[0].system_pressure:
            return 0.0
        for before, after in pairwise(self.moments):
            if after.system_pressure <= pressure:
                return self._between(before, after, pressure)
        return None

    def _between(self, before: Moment, after: Moment, pressure: float) -> float:
        ends = [
            math.log(moment.system_pressure - self.limit_pressure) for moment in (before, after)
        ]
        width = ends[1] - ends[0]
        s = (math.log(pressure - self.limit_pressure) - ends[0]) / width
        start_slope, end_slope = (
            -self.volume
            * (moment.system_pressure - self.limit_pressure)
            / (moment.throughput - self.gas_load)
            * width
            for moment in (before, after)
        )
        gained = after.time - before.time
        return before.time + s * (
            start_slope * (1.0 - s) ** 2 + gained * s * (3.0 - 2.0 * s) - end_slope * s * (1.0 - s)
        )


def pull_down(
    *,
    rig: Rig,
    gas: ThinGas,
    volume: float,
    start_pressure: float,
    target_pressure: float,
    gas_load: float = 0.0,
) -> PullDown:
    """Pull a volume from a start to a target pressure with a rig.

    Parameters
    ----------
    rig : Rig
        Pump and path.
    gas : ThinGas
        The gas at its temperature.
    volume : float
        Volume of the system [m3], scalar.
    start_pressure : float
        Pressure at the start [Pa], scalar.
    target_pressure : float
        Pressure to reach [Pa], scalar.
    gas_load : float
        Steady throughput of leaks and vapor into the system [Pa m3/s], scalar.

    Returns
    -------
    PullDown
        The pull, moment by moment; see there for a target that is never reached.

    Raises
    ------
    OutOfRange
        If volume, pressures or load make no pull.

    Notes
    -----
    With x = Q - Q_load and D = p - p_limit, both zero together, integration by
    parts turns t = V * integral of dp/x into V * ([D/x] + integral of D/x dln x).
    D/x changes slowly, so Simpson's rule in ln x gives five digits in some fifty points.
    Quasi-steady: the gas in the hoses is taken to adjust at once.

    References
    ----------
    [DUSHMAN-1962] chapter 2 for the balance; [PHYSICS] for the rule.
    """
    if not 0.0 < volume < math.inf:
        raise OutOfRange("The volume must be above zero.")
    if not 0.0 <= gas_load < math.inf:
        raise OutOfRange("The gas load must be zero or more.")
    if not 0.0 < target_pressure < start_pressure < math.inf:
        raise OutOfRange("The target must be above zero and below the starting pressure.")
    limit = system_pressure(rig=rig, throughput=gas_load, gas=gas)
    if start_pressure <= limit * (1.0 + _NEAR):
        raise OutOfRange(
            "The pressure cannot fall at all: at the start as much gas comes in as the rig removes."
        )
    arrives = _arrives(target_pressure, limit)
    end = target_pressure if arrives else min(1.02 * limit, 0.5 * (limit + start_pressure))
    first = _excess(rig, start_pressure, gas_load, gas)
    last = _excess(rig, end, gas_load, gas)
    panels = max(4, math.ceil((first - last) / _PANEL))
    step = 0.5 * (first - last) / panels
    logs = [first - step * index for index in range(2 * panels + 1)]
    flows = [steady_flow(rig=rig, throughput=gas_load + math.exp(log), gas=gas) for log in logs]
    # The ends are known exactly; the walk through the rig need not be asked again.
    pressures = [start_pressure, *(flow.system_pressure for flow in flows[1:-1]), end]
    heights = [
        (pressure - limit) / math.exp(log) for pressure, log in zip(pressures, logs, strict=True)
    ]
    areas = [0.0]
    for left, middle, right in zip(heights[::2], heights[1::2], heights[2::2], strict=False):
        areas.append(areas[-1] + step / 12.0 * (5.0 * left + 8.0 * middle - right))
        areas.append(areas[-1] + step / 12.0 * (8.0 * middle + 5.0 * right - left))
    return PullDown(
        volume=volume,
        gas_load=gas_load,
        target_pressure=target_pressure,
        limit_pressure=limit,
        moments=tuple(
            Moment(
                time=volume * (heights[0] - height + area),
                system_pressure=pressure,
                pump_pressure=flow.pump_pressure,
                throughput=flow.throughput,
            )
            for height, area, pressure, flow in zip(heights, areas, pressures, flows, strict=True)
        ),
    )


def _arrives(target_pressure: float, limit_pressure: float) -> bool:
    return target_pressure > limit_pressure * (1.0 + _NEAR)


def _excess(rig: Rig, pressure: float, gas_load: float, gas: ThinGas) -> float:
    """Logarithm of the throughput above the gas load, at a pressure of the system."""
    flow = flow_at(rig=rig, system_pressure=pressure, gas=gas)
    return math.log(flow.throughput - gas_load)
