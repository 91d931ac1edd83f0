"""The levels and times of the trade, each said once: what prose and cards compare with.

A rule of thumb has no source and is marked "COMMON-PRACTICE". Legal levels
name their paragraph. Prose takes them with ``<!-- practice: key -->``.
"""

from dataclasses import dataclass

from calculators.card import Cite
from calculators.physics.constants import MICRON, TORR

MINUTE = 60.0  # s
INCH_OF_MERCURY = 25.4 * TORR  # Pa, within 1e-7 of the conventional inch at 32 °F (NIST-SP811)
COMMON_PRACTICE = Cite("COMMON-PRACTICE")


@dataclass(frozen=True, kw_only=True)
class PracticeLimit:
    """A level or a time to compare with; with ``upper``, a range.

    ``value`` and ``upper`` are in SI; ``us`` and ``si`` name the units shown.
    """

    says: str
    value: float
    us: str
    si: str
    upper: float | None = None
    source: Cite = COMMON_PRACTICE


def _level(micron: float, says: str) -> PracticeLimit:
    return PracticeLimit(says=says, value=micron * MICRON, us="micron", si="Pa")


def _time(minutes: float, says: str, upper: float | None = None) -> PracticeLimit:
    longest = None if upper is None else upper * MINUTE
    return PracticeLimit(says=says, value=minutes * MINUTE, upper=longest, us="min", si="min")


PRACTICE_LIMITS = {
    "target": _level(500, "Pull to this or below, at the system, before you isolate."),
    "pump": _level(50, "A good pump, alone on the gauge, gets below this."),
    "pump-worst": _level(100, "A pump that can't get below this is not fit to use."),
    "rig": _level(100, "Pump, hoses and core tools together, capped off, get below this."),
    "hold-residential": _time(10, "Usual hold of a residential split system."),
    "hold-cylinder": _time(5, "Usual hold of a recovery cylinder.", upper=10),
    "cylinder-end": _level(100, "A good cylinder still stands at or below this at the end."),
    "cylinder-rise": _level(5, "The rise that a good cylinder stays within."),
    "first-pull": _level(1500, "Depth of the pulls before a nitrogen break."),
    "pump-warm-up": _time(5, "Run a pump this long before you judge it.", upper=10),
    "blank-off-wait": _time(5, "Give a blanked-off reading this long to settle.", upper=10),
    "gauge-settle": _time(5, "Let two gauges stand this long before you compare them."),
    "equalize": _time(1, "After the valve closes, pressures even out for this long.", upper=2),
    "nitrogen-wait": _time(10, "Let nitrogen stand this long to mix and to warm."),
    "stall-high": _level(1500, "Where a wet, oily or choked pull often stops falling."),
    "stall-water": _level(4600, "Where freezing water holds a pull; the triple point, rounded."),
    "en-378": PracticeLimit(
        says="Pressure to reach before charging under EN 378.",
        value=270.0,
        us="micron",
        si="Pa",
        source=Cite("FROM-MEMORY", "EN 378-2 and EN 378-4, remembered as 270 Pa or less"),
    ),
}


# --- recovery, before a system is opened: the law's levels, not dryness -----


@dataclass(frozen=True, kw_only=True)
class RecoveryLevel:
    """One row of the table: depth by the age of the recovery machine.

    ``before`` and ``since`` 15 November 1993 are inches of mercury vacuum
    below 29.9 inHg, or with ``absolute`` millimeters of mercury absolute.
    """

    appliance: str
    before: int
    since: int
    absolute: bool = False

    def pressure(self, *, since_1993: bool = True) -> float:
        """Absolute pressure that the row asks for [Pa]."""
        level = self.since if since_1993 else self.before
        if self.absolute:
            return level * TORR
        return (RECOVERY_BAROMETER - level) * INCH_OF_MERCURY


RECOVERY_BAROMETER = 29.9  # inHg, "relative to standard atmospheric pressure" (40-CFR-82)
RECOVERY_SOURCE = Cite("40-CFR-82", "section 82.156, table 1")
RECOVERY_LEVELS = (
    RecoveryLevel(appliance="Very high-pressure appliance", before=0, since=0),
    RecoveryLevel(appliance="High-pressure appliance, full charge under 200 lb", before=0, since=0),
    RecoveryLevel(
        appliance="High-pressure appliance, full charge of 200 lb or more", before=4, since=10
    ),
    RecoveryLevel(
        appliance="Medium-pressure appliance, full charge under 200 lb", before=4, since=10
    ),
    RecoveryLevel(
        appliance="Medium-pressure appliance, full charge of 200 lb or more", before=4, since=15
    ),
    RecoveryLevel(appliance="Low-pressure appliance", before=25, since=25, absolute=True),
)
