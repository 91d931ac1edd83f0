"""Common parts of a rig and common pumps: true bores and sizes, no makes.

None of these sizes has a standard behind it that we could lay beside it: every
row is written down from memory of ordinary parts and can be overridden.
Measure yours with a drill shank if it matters: it goes with the fourth power.
"""

from dataclasses import dataclass

from calculators.card import Cite

FROM_MEMORY = Cite("FROM-MEMORY")

_MM = 1e-3  # m
_INCH = 0.0254  # m
_FOOT = 0.3048  # m
_CFM = _FOOT**3 / 60.0  # m3/s
_MICRON = 101325.0 / 760_000.0  # Pa


@dataclass(frozen=True, kw_only=True)
class Part:
    """A part of a rig: its narrowest bore [m], its length [m], what kind it is.

    A part without bore or length is one whose sizes the reader gives.
    """

    name: str
    kind: str
    inside_diameter: float | None
    length: float | None
    note: str = ""
    source: Cite = FROM_MEMORY


@dataclass(frozen=True, kw_only=True)
class Pump:
    """A pump by its free-air displacement [m3/s] and usual ultimate pressure [Pa]."""

    name: str
    displacement: float
    ultimate_pressure: float
    source: Cite = FROM_MEMORY


def _hose(bore: str, inches: float, feet: float = 6.0, note: str = "") -> Part:
    return Part(
        name=f"{bore} in bore hose",
        kind="hose",
        inside_diameter=inches * _INCH,
        length=feet * _FOOT,
        note=note,
    )


def _fitting(name: str, kind: str, bore_mm: float, length_mm: float, note: str = "") -> Part:
    return Part(
        name=name, kind=kind, inside_diameter=bore_mm * _MM, length=length_mm * _MM, note=note
    )


PARTS = {
    "hose-3/16": _hose(
        "3/16", 3 / 16, note="what a charging hose with 1/4 in ends often has inside"
    ),
    "hose-1/4": _hose("1/4", 1 / 4),
    "hose-3/8": _hose("3/8", 3 / 8),
    "hose-1/2": _hose("1/2", 1 / 2),
    "hose-3/4": _hose("3/4", 3 / 4),
    "flare-1/4": _fitting("1/4 in flare end", "fitting", 4.0, 20.0, "3 to 4.5 mm"),
    "flare-3/8": _fitting("3/8 in flare end", "fitting", 7.0, 25.0),
    "depressor": _fitting("hose end with core depressor", "fitting", 2.5, 5.0, "about 5 mm² free"),
    "core-tool": _fitting("core tool with its core out", "core-tool", 5.0, 80.0),
    "core-tool-5/16": _fitting("5/16 in core tool with its core out", "core-tool", 6.0, 90.0),
    "port": _fitting("1/4 in service port with its core out", "fitting", 4.5, 25.0),
    "core-in": _fitting(
        "valve core left in", "valve-core", 1.38, 0.0, "1 to 2 mm² free; taken as an orifice"
    ),
    "manifold-1/4": _fitting("manifold with 1/4 in ports", "manifold", 5.0, 150.0),
    "manifold-3/8": _fitting("manifold with 3/8 in ports", "manifold", 8.0, 180.0),
    "ball-valve-3/8": _fitting("3/8 in ball valve", "fitting", 8.5, 60.0),
    "own": Part(name="part of your own size", kind="own", inside_diameter=None, length=None),
}

# What holds a rig back, in words.
KINDS = {
    "pump": "the pump",
    "hose": "a hose",
    "fitting": "a fitting",
    "core-tool": "a core tool",
    "valve-core": "a valve core left in",
    "manifold": "the manifold",
    "own": "a part of your own size",
}

# Two-stage rotary vane pumps of the trade, in good order and with fresh oil.
PUMPS = tuple(
    Pump(name=f"{cfm} CFM pump", displacement=cfm * _CFM, ultimate_pressure=20.0 * _MICRON)
    for cfm in (2, 4, 6, 8, 10, 12)
)
