"""From a log of readings to the decay card's answer."""

import math

from calculators.card import Answer, Column, Table, Text, Verdict, say
from calculators.cards import decay_words, decay_working
from calculators.physics import refrigerants
from calculators.physics.constants import ZERO_CELSIUS
from calculators.physics.gases import GASES
from calculators.physics.leak_rate import leak_rate, service_loss
from calculators.physics.moisture import vapor_mass
from calculators.physics.pressure_rise import rate_of_pressure_rise
from calculators.physics.rise_judgment import Judgment, judge_rise
from calculators.physics.water import phase_at_temperature, saturation_pressure
from calculators.readings import ReadingLog

ROOM = ZERO_CELSIUS + 20.0  # K; where vapor is counted and refrigerant stands at rest
AS_MUCH, MORE = 0.85, 1.15  # of the vapor pressure of water: level with it, above it


def compute(
    *,
    readings: ReadingLog,
    limit: float,
    volume: float | None,
    temperature: float | None,
    resolution: float,
    leak_of_concern: float,
    isolation: float | None,
    start_temperature: float | None,
    end_temperature: float | None,
    refrigerant: str,
) -> Answer:
    """Verdict on a log of pressures [Pa], with the leak rate [Pa m3/s] behind it."""
    found = judge_rise(
        time=readings.times,
        pressure=readings.pressures,
        resolution=resolution,
        limit=limit,
        volume=volume,
        leak_of_concern=leak_of_concern,
        isolation=None if isolation is None else readings.times[0] + isolation,
        start_temperature=start_temperature,
        end_temperature=end_temperature,
        coldest=temperature,
    )
    warmed = start_temperature is not None and end_temperature is not None
    outputs = _outputs(found, volume)
    values: dict[str, float | str] = {
        "duration": found.duration,
        "first_reading": found.first_pressure,
        "slope": found.slope.best,
        "hold": found.hold,
        "projected_low": found.projected.low,
        "projected_high": found.projected.high,
        "step": found.found.step,
        "more": _round_up((found.needed or 0.0) - found.duration),
    }
    if found.unseen is not None:
        loss = service_loss(
            leak_rate=found.unseen,
            refrigerant=GASES[refrigerant],
            service_pressure=refrigerants.vapor_pressure(refrigerant=refrigerant, temperature=ROOM),
            temperature=ROOM,
        )
        outputs |= {"least_unseen_loss": loss.molecular, "greatest_unseen_loss": loss.laminar}
    water = _water(found, volume, temperature, values)
    if volume is not None and found.code in ("moisture", "leak-and-moisture"):
        outputs["vapor_mass"] = vapor_mass(
            pressure=max(found.found.gas + found.found.left, 0.0), volume=volume, temperature=ROOM
        )
    steps = decay_words.NEXT[found.reason]
    handled = tuple(say("{note}", note=note) for note in readings.notes)
    return Answer(
        outputs=outputs,
        verdict=Verdict(
            code=found.code,
            says=decay_words.says(found, limit=limit),
            because=(*decay_words.reasons(found, volume=volume), *water),
        ),
        notes=(*_set_aside(found, given=isolation is not None), *handled),
        working=decay_working.working(found, volume=volume, warmed=warmed),
        tables=(
            Table(
                caption="What to do next",
                columns=(Column("Step"), Column("Do this")),
                rows=tuple((str(n), text) for n, text in enumerate(steps, start=1)),
                open=True,
            ),
            decay_working.shapes_table(found),
            decay_working.readings_table(found),
        ),
        chart=decay_working.chart(found, limit=limit),
        values=values,
    )


def _round_up(seconds: float) -> float:
    """Whole minutes for a hold of up to two hours, tens of minutes beyond [s]."""
    whole = 60.0 if seconds <= 7200.0 else 600.0
    return max(math.ceil(seconds / whole - 1e-9), 1) * whole


def _outputs(found: Judgment, volume: float | None) -> dict[str, float | str | None]:
    leak = (
        [leak_rate(volume=volume, rate_of_pressure_rise=each) for each in found.slope]
        if volume is not None
        else [None, None, None]
    )
    plateau = found.plateau if found.code in ("moisture", "leak-and-moisture") else None
    return {
        "verdict": found.code,
        "confidence": None if found.code == "undecided" else "sure" if found.sure else "fair",
        "final_pressure": found.final_pressure,
        "rise": found.final_pressure - found.first_pressure,
        "rate_of_rise": rate_of_pressure_rise(
            first_pressure=found.first_pressure,
            last_pressure=found.final_pressure,
            duration=found.duration,
        ),
        "plateau": plateau.best if plateau else None,
        "lowest_plateau": plateau.low if plateau else None,
        "highest_plateau": plateau.high if plateau else None,
        "vapor_mass": None,
        "leak_rate": leak[1],
        "lowest_leak_rate": leak[0],
        "highest_leak_rate": leak[2],
        "smallest_detectable_leak": found.unseen,
        "least_unseen_loss": None,
        "greatest_unseen_loss": None,
        "hold_time": found.hold,
        "projected_pressure": found.projected.best,
        "crossing_time": found.crossing,
        "needed_time": found.needed,
    }


def _water(
    found: Judgment,
    volume: float | None,
    temperature: float | None,
    values: dict[str, float | str],
) -> list[Text]:
    """Compare a plateau with what water at the coldest part would give."""
    if found.code not in ("moisture", "leak-and-moisture") or not found.plateau:
        return []
    lines: list[Text] = []
    if temperature is not None:
        full = saturation_pressure(temperature=temperature)
        values |= {"full": full, "water": phase_at_temperature(temperature=temperature)}
        values["water"] = "Ice" if values["water"] == "ice" else "Liquid water"
        if found.plateau.best > MORE * full:
            lines.append(
                "{water} at {temperature} would level off at {full:micron|Pa;4}, lower than this: "
                "gas out of oil, or a part warmer than you think."
            )
        elif found.plateau.high >= AS_MUCH * full:
            lines.append(
                "{water} at {temperature} levels off at {full:micron|Pa;4}, and so does this. "
                "How much of it there is, the reading does not tell."
            )
        else:
            lines.append(
                "{water} lying at {temperature} would give {full:micron|Pa;4}. This is far less, "
                "so it is a limited amount: the last of the water, water or refrigerant out of "
                "oil, or ice somewhere colder."
            )
    if volume is not None:
        lines.append("If it is water, it is {vapor_mass} of vapor in {volume}.")
    return lines


def _set_aside(found: Judgment, *, given: bool) -> list[Text]:
    """Say which readings were not judged, and why."""
    notes: list[Text] = []
    facts = found.found
    if found.isolation_proposed and not given:
        notes.append(
            say(
                "The pressure still fell until {at:duration} into the log: that was taken as the "
                "moment of isolation. Enter another if you know it.",
                at=found.isolation - found.first_time,
            )
        )
    if facts.evening > 0.0:
        notes.append(
            say(
                "The first {rise:micron|Pa;2} were set aside as pressures evening out.",
                rise=facts.evening,
            )
        )
    return notes
