"""Two questions, asked of all that the readings allow.

Is there a leak of concern: yes, no, or not to be told? Is there gas from inside
that matters: yes, no, or not to be told? Two plain answers make a verdict; any
other makes the test undecided.
"""

import math

from calculators.physics.leak_rate import STEPS_TO_BE_SEEN
from calculators.physics.rise_bounds import stretch
from calculators.physics.rise_findings import MATERIAL_SHARE, Findings

HOLD_AT_LEAST = 300.0  # s; common practice: a cylinder is held 5 to 10 min
USUAL_HOLD = 600.0  # s; common practice: a residential system is held about 10 min
SETTLED_AFTER = 180.0  # s; common practice: pressures even out in 1 to 2 min; no shape before
LOOK_AHEAD = 10.0  # lengths of the log over which a pass must stay below the limit at worst
FARTHER = 2.5  # times as far at the likely rise: gas from walls slows down over decades of time
HIDDEN_SHARE = 0.15  # of the rise: a leak that gas may hide without spoiling the verdict
FEWEST_FOR_BOTH = 6  # readings in the described part; a bend and a line take five numbers
LEVELED = 0.15  # of the gas that came: the most that may be left of gas that has leveled off
CLEAR = 2.0  # times what it takes: then a verdict is called sure rather than fair


class Case:
    """One test on its way to a verdict.

    Rises here are over the described part of the log [Pa]; ``ahead`` is in its
    lengths.
    """

    def __init__(
        self,
        found: Findings,
        limit: float,
        volume: float | None,
        concern: float,
        isolation: float,
    ) -> None:
        self.found, self.limit, self.volume = found, limit, volume
        self.concern, self.isolation = concern, isolation
        self.duration = found.points[-1].time - found.points[0].time
        self.ahead = LOOK_AHEAD * self.duration / found.length
        # The leak of concern as a rise; without a volume, none can be named.
        self.concern_rise = concern * found.length / volume if volume else math.inf
        # What must show in the whole log, as a rise over the described part of it.
        self.visible = STEPS_TO_BE_SEEN * found.step * found.length / self.duration
        self.steepest = max(found.steepest, self.visible)

    def decide(self) -> tuple[str, str]:
        """Verdict code and what decided it."""
        found = self.found
        if self.falls():
            return "undecided", "falling"
        if self.holds():
            return "pass", "flat" if found.rise < STEPS_TO_BE_SEEN * found.step else "slow"
        gas = found.bent and found.material(found.gas)
        leak = found.straight and not found.slackens and found.material(found.slope.low)
        if self.duration < SETTLED_AFTER and (gas or leak):
            return "undecided", "unsettled"
        if leak and self.leak_matters():
            if not gas:
                return "leak", "straight"
            few = len(found.fits.data.x) < FEWEST_FOR_BOTH
            if few or found.left > HIDDEN_SHARE * found.slope.low:
                return "undecided", "bending"
            return ("leak-and-moisture", "bend and climb") if self.gas_matters() else (
                "leak", "climb after gas"
            )  # fmt: skip
        if gas:
            return self.gas_alone()
        if found.rise < STEPS_TO_BE_SEEN * found.step:
            if found.end > self.limit:
                return "undecided", "not deep enough"
            return "undecided", "short" if self.short() else "near limit"
        return "undecided", "shape"

    def gas_alone(self) -> tuple[str, str]:
        """Verdict where gas is seen and no leak that matters is proven."""
        found = self.found
        hidden = max(HIDDEN_SHARE * found.rise, self.visible)
        most = min(found.slope.high, found.steepest)
        if found.left > LEVELED * found.gas or most > hidden:
            return "undecided", "bending"
        if found.plateau and found.plateau.low > self.limit:
            return "moisture", "plateau"
        if found.plateau and found.plateau.high < self.limit:
            return "undecided", "settling"
        return "undecided", "near limit"

    def short(self) -> bool:
        """Say whether more time would let a flat log pass."""
        at_least = HOLD_AT_LEAST if self.volume else USUAL_HOLD
        return self.duration < at_least or self.steepest > self.concern_rise

    def leak_matters(self) -> bool:
        """Say whether a proven leak is of concern, by its size or by where it leads."""
        low = self.found.slope.low
        return low >= self.concern_rise or self.found.end + low * self.ahead > self.limit

    def gas_matters(self) -> bool:
        """Say whether gas alone would break the limit, or takes a good part of it."""
        return self.found.first + self.found.gas > self.limit or self.found.gas > 0.1 * self.limit

    def falls(self) -> bool:
        """Say whether the pressure was still falling in the second half."""
        found = self.found
        late = stretch(found.fits, found.noise, start=0.5) or stretch(
            found.fits, found.noise, start=0.0
        )
        if late is None:
            return False
        return -0.5 * late.slope > max(STEPS_TO_BE_SEEN * found.step, 0.02 * found.end)

    def holds(self) -> bool:
        """Say whether nothing the readings allow breaks the limit or hides a leak of concern."""
        found = self.found
        top = found.end + 2.0 * math.sqrt(found.noise.moving / found.noise.independent)
        late = stretch(found.fits, found.noise, start=1 / 3) or stretch(
            found.fits, found.noise, start=0.0
        )
        likely = max(late.slope, 0.0) if late else 0.0
        return (
            not self.short()
            and top + found.steepest * self.ahead <= self.limit
            and found.end + likely * self.ahead * FARTHER <= self.limit
            and self.steepest <= self.concern_rise
        )

    def margin(self, code: str) -> float:
        """How many times over the deciding conditions are met; zero where nothing is decided."""
        found = self.found
        room = self.limit - found.end
        if code == "pass":
            return min(
                self.concern_rise / self.steepest, room / max(found.steepest * self.ahead, 1e-9)
            )
        if code == "moisture":
            hidden = max(HIDDEN_SHARE * found.rise, self.visible)
            most = max(min(found.slope.high, found.steepest), 1e-9)
            plateau = found.plateau
            assert plateau is not None
            over = (plateau.best - self.limit) / max(plateau.best - plateau.low, 1e-9)
            return min(hidden / most, LEVELED * found.gas / max(found.left, 1e-9), over)
        if code in ("leak", "leak-and-moisture"):
            low = found.slope.low
            proven = (found.fits.slow - found.fits.best_both().misfit) / found.proof()
            leads = low * self.ahead / room if room > 0.0 else math.inf
            matters = max(low / self.concern_rise, leads)
            seen = low / max(STEPS_TO_BE_SEEN * found.step, MATERIAL_SHARE * abs(found.rise))
            return min(proven, matters, seen)
        return 0.0
