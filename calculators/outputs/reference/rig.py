"""Tables of the rig: what tube holds, what hoses pass, how long a pull takes."""

from calculators.hardware import PARTS
from calculators.outputs.reference_table import Ask, ReferenceTable, Row, asking, heading
from calculators.physics.tube_sizes import TUBES

HOSES = ("hose-3/16", "hose-1/4", "hose-3/8", "hose-1/2", "hose-3/4")
BORES = tuple(f"{PARTS[hose].name.removesuffix(' in bore hose')} in" for hose in HOSES)


OF_HOSES = {"hose": PARTS["hose-1/4"].length or 0.0}


def _tubes() -> tuple[Row, ...]:
    def volume(size: str, temper: str, length: str) -> str | Ask:
        wall = TUBES[size].annealed_wall if temper == "annealed" else TUBES[size].drawn_wall
        if wall is None:
            return "–"
        tube = {"size": size, "temper": temper, "length": length}
        ask = asking("inside-volume", tubes=[tube], parts=[])
        return ask(output="tube_volume", unit="L", figures=3)

    return tuple(
        (
            f"{size} in",
            *(
                volume(size, temper, length)
                for temper in ("annealed", "drawn")
                for length in ("10 ft", "10 m")
            ),
        )
        for size in TUBES
    )


def _conductance(unit: str) -> tuple[Row, ...]:
    def cell(hose: str, micron: int) -> Ask:
        ask = asking("conductance", part=hose, pressure=f"{micron} micron")
        return ask(output="conductance", unit=unit, figures=2)

    return tuple(
        (heading(micron), *(cell(hose, micron) for hose in HOSES))
        for micron in (1, 10, 20, 50, 100, 200, 500, 1_000, 2_000, 5_000, 10_000)
    )


def _pull_down_times() -> tuple[Row, ...]:
    def cell(hose: str, liters: int) -> Ask:
        ask = asking("pull-down", volume=f"{liters} L", path=[{"part": hose}])
        return ask(output="time", unit="duration")

    return tuple(
        (f"{heading(liters)} L", *(cell(hose, liters) for hose in HOSES))
        for liters in (3, 5, 10, 20, 50, 100, 300, 1_000)
    )


TABLES = (
    ReferenceTable(
        id="tube-volumes",
        caption="What copper tube holds",
        says=(
            "Liters inside tube of ASTM B280 by its outside diameter, soft coil or hard straight "
            "length."
        ),
        heads=(
            "Size",
            "Soft 10 ft, L",
            "Soft 10 m, L",
            "Hard 10 ft, L",
            "Hard 10 m, L",
        ),
        made=_tubes,
    ),
    ReferenceTable(
        id="conductance",
        caption="What a hose passes, in CFM",
        says=(
            "Conductance of {hose:ft} hoses by true bore at the mean pressure in the hose, for "
            "air at {temperature}. A hose twice as long passes half as much."
        ),
        heads=("Mean pressure, micron", *BORES),
        made=lambda: _conductance("CFM"),
        values=OF_HOSES,
    ),
    ReferenceTable(
        id="conductance-si",
        caption="What a hose passes, in L/s",
        says=(
            "Conductance of {hose:m;3} hoses by true bore at the mean pressure in the hose, for "
            "air at {temperature:°C}. A hose twice as long passes half as much."
        ),
        heads=("Mean pressure, micron", *BORES),
        made=lambda: _conductance("L/s"),
        values=OF_HOSES,
    ),
    ReferenceTable(
        id="pull-down-times",
        caption="Time to {target_pressure}, by volume and hose",
        says=(
            "Dry air from {start_pressure} to {target_pressure} with a {pump_speed} pump "
            "({ultimate_pressure} on blank-off) through one hose of {hose:ft} ({hose:m;3}). Water, "
            "oil and leaks make it longer."
        ),
        heads=("Volume", *BORES),
        made=_pull_down_times,
        values=OF_HOSES,
    ),
)
