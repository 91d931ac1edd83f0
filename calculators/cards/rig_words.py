"""What cards about rigs say in common: which part holds a rig back, and how it is called."""

from dataclasses import dataclass

from calculators.physics.rig import SteadyFlow

SIDES = ("A", "B", "C")


@dataclass(frozen=True, kw_only=True)
class Bottleneck:
    """The part, or the pump, that the largest share of the pressure is lost in."""

    name: str
    kind: str
    share: float  # of the pressure above the pump's ultimate


def bottleneck(flow: SteadyFlow) -> Bottleneck:
    """What holds a rig back most at this throughput."""
    found = Bottleneck(name="pump", kind="pump", share=flow.pump_share)
    for part in flow.parts:
        if flow.share(part) > found.share:
            found = Bottleneck(name=part.part.name, kind=part.part.kind, share=flow.share(part))
    return found


def where(branch: int | None) -> str:
    """Name of the side a part stands in, blank where all the gas passes."""
    return "" if branch is None else f", side {SIDES[branch]}"
