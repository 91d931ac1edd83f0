"""The inside volume: its pieces, and the notes, the working and the table of the answer."""

from collections.abc import Sequence
from typing import NamedTuple

from calculators.card import Column, Step, Table, Text, say


class Piece(NamedTuple):
    """One tube or part [m3, m, kg]; what does not apply to it is None."""

    name: str
    volume: float
    bore: float | None = None
    length: float | None = None
    outside: float | None = None
    capacity: float | None = None


def notes(counted: float, measured: float | None, has_parts: bool) -> tuple[Text, ...]:
    texts: list[Text] = []
    if measured is None and not has_parts:
        texts.append(
            "Tubes alone are seldom the whole: coils, receiver, compressor and accumulator often "
            "hold more. Add them."
        )
    if measured is not None:
        texts.append(
            "If the last reading is off by one percent of the first, the volume changes by "
            "{effect_of_reading}. A cylinder nearer the size of the system makes that smaller."
        )
    if measured is not None and counted > 0.0:
        texts.append(
            "Counting gives {counted_volume}. If that differs much, a valve is shut, a part is "
            "missing from the list, or the gas has not settled."
        )
    texts.append(
        "In this volume, one micron a minute is {per_minute:micron·L/s|Pa·m³/s;3} of gas coming "
        "in. What takes 10 minutes to show in 10 L takes {as_long:duration} here."
    )
    return tuple(texts)


def working(tubes: Sequence[Piece], parts: Sequence[Piece], measured: bool) -> tuple[Step, ...]:
    steps = [_tube(tube) for tube in tubes] + [_part(part) for part in parts]
    if tubes or parts:
        steps.append(
            Step(
                "All together.",
                "V = ΣVᵢ",
                "{tube_volume:L;5} + {part_volume:L;5} = {counted_volume:L;5}",
            )
        )
    if measured:
        steps += [
            Step(
                "What left the cylinder went into the system, at one temperature. Only differences "
                "count, so gauge pressures serve as well.",
                "V₂ = V₁·(p₁ − p_f) / (p_f − p₂)",
                "V₂ = {known_volume:L;5} × ({known_pressure:kPa;5} − {final_pressure:kPa;5}) / "
                "({final_pressure:kPa;5} − {system_pressure:kPa;5}) = {measured_volume:L;5}",
            ),
            Step(
                "What an error of one percent of the first pressure does to it, in the last.",
                "δV/V = (p₁ − p₂) / ((p₁ − p_f)·(p_f − p₂)) · 0.01·p₁",
                "δV/V = {effect_of_reading}",
            ),
        ]
    return tuple(steps)


def _tube(tube: Piece) -> Step:
    bore, length = tube.bore or 0.0, tube.length or 0.0
    if tube.outside is None:
        inside = say("d = {bore:in;4} = {bore:mm;4}", bore=bore)
        says = "Tube with the bore you gave."
    else:
        wall = 0.5 * (tube.outside - bore)
        inside = say(
            "d = {outside:in;4} − 2 × {wall:in;3} = {bore:in;4}",
            outside=tube.outside,
            wall=wall,
            bore=bore,
        )
        says = f"Tube, {tube.name}: outside diameter less two walls."
    return Step(
        says,
        "V = (π/4)·d²·L",
        say(
            inside.text + ",  V = (π/4) × ({bore:mm;5})² × {length:m;4} = {volume:L;4}",
            **inside.values,
            length=length,
            volume=tube.volume,
        ),
    )


def _part(part: Piece) -> Step:
    if part.capacity is None:
        return Step(
            f"{part.name.capitalize()}, as given.",
            "V",
            say("V = {volume:L;4}", volume=part.volume),
        )
    return Step(
        f"{part.name.capitalize()}: the water that fills it, at 999.01 kg/m³.",
        "V = m / ρ",
        say(
            "V = {mass:kg;4} / 999.01 kg/m³ = {volume:L;4}", mass=part.capacity, volume=part.volume
        ),
    )


def table(tubes: Sequence[Piece], parts: Sequence[Piece], counted: float) -> Table:
    return Table(
        caption="Piece by piece",
        columns=(
            Column("Piece"),
            Column("Bore", "in", "mm", figures=4),
            Column("Length", "ft", "m", figures=4),
            Column("Volume", "L", "L", figures=3),
            Column("Share", "%", "%", figures=2),
        ),
        rows=tuple(
            (piece.name, piece.bore, piece.length, piece.volume, piece.volume / counted)
            for piece in (*tubes, *parts)
        ),
        open=True,
    )
