"""Whether a pump is good: the notes and the working of the answer."""

from calculators.card import Step, Text

JUDGMENT = {
    "good": (
        "Even at most, {highest}, it is under {good:micron|Pa;3}, which the trade takes for a "
        "pump in order."
    ),
    "fair": (
        "Between {good:micron|Pa;3} and {worst:micron|Pa;3}: the trade allows it at worst. "
        "Change the oil, warm, and look again."
    ),
    "poor": (
        "Even at least, {lowest}, it is over the {worst:micron|Pa;3} the trade allows at worst. "
        "Change the oil, twice if it was milky, then look at seals and valves."
    ),
    "undecided": (
        "With this gauge the blank-off is anywhere from {lowest} to {highest}, and the limits of "
        "{good:micron|Pa;3} and {worst:micron|Pa;3} lie inside. Use a finer gauge."
    ),
}


def notes(
    judgment: str, *, deep_enough: bool, reaches: bool, share: float | None, near_floor: bool
) -> tuple[Text, ...]:
    texts: list[Text] = [JUDGMENT[judgment]]
    if not reaches:
        texts.append("It will never reach {target}: its own blank-off is not below that.")
    elif not deep_enough:
        texts.append(
            "For {target} you want a blank-off under {wanted:micron|Pa;3}, a fifth of it: the "
            "nearer the floor, the longer the last stretch."
        )
    if share is not None:
        texts.append(
            "Its speed is within a fifth of the rating, as a sound pump's is."
            if share >= 0.8
            else "It moves only {share_of_rating} of its rating. Look for a closed ballast, a "
            "restriction in the connection, then for wear."
        )
    if near_floor:
        texts.append(
            "You stopped the watch close to the blank-off, where the pump slows down by itself. "
            "Stop at ten times the blank-off or higher."
        )
    texts.append(
        "If the floor is water vapor, the oil at {oil_temperature} holds water at "
        "{water_activity} of saturation. That little is enough: gas ballast drives it out, fresh "
        "oil removes it."
    )
    return tuple(texts)


def working(timed: bool) -> tuple[Step, ...]:
    steps = [
        Step(
            "What the gauge cannot know at this reading: its step and its accuracy, doubled.",
            "U = 2·√(r²/12 + a²/3)",
            "U = 2 × √(({resolution:Pa;4})²/12 + ({limit:Pa;4})²/3) = {doubt:Pa;3}",
        ),
        Step(
            "So the true blank-off lies here.",
            "p_u ± U",
            "{blank_off:Pa;4} ± {doubt:Pa;3}: from {lowest:micron;3} to {highest:micron;3}",
        ),
        Step(
            "Against what you want to reach.",
            "p_u / p_t",
            "{blank_off:Pa;4} / {target:Pa;4} = {share_of_target}",
        ),
    ]
    if timed:
        steps += [
            Step(
                "The speed from the fall of the pressure above the floor.",
                "S = (V/t)·ln((p₁ − p_u)/(p₂ − p_u))",
                "S = ({volume:L;4} / {duration:s;4}) × ln(({first_pressure:Pa;5} − "
                "{blank_off:Pa;4}) / ({last_pressure:Pa;5} − {blank_off:Pa;4})) = {speed:L/s;4}",
            ),
            Step(
                "Against its rating, and how well gauge and watch can tell.",
                "S / S_r",
                "{speed:L/s;4} / {rated_speed:L/s;4} = {share_of_rating} ± {speed_uncertainty} "
                "of it",
            ),
        ]
    steps.append(
        Step(
            "How wet the oil would be, were it all water: the share of the vapor pressure of "
            "water at the oil's temperature.",
            "a_w = p_u / p_sat(T_oil)",
            "a_w = {blank_off:Pa;4} / {wet_oil:Pa;5} = {water_activity:%;3}",
        )
    )
    return tuple(steps)
