"""The table of the law: how far refrigerant is recovered, and what that is not."""

from calculators.outputs.reference_table import ReferenceTable, Row, asking
from calculators.practice_limits import RECOVERY_BAROMETER, RECOVERY_LEVELS


def _recovery() -> tuple[Row, ...]:
    rows: list[Row] = []
    for level in RECOVERY_LEVELS:
        unit = "mmHg" if level.absolute else "inHg-vac"
        depth = f"{level.since} {'mmHg absolute' if level.absolute else 'inHg of vacuum'}"
        level_at = asking(
            "convert", pressure=f"{level.since} {unit}", barometer=f"{RECOVERY_BAROMETER} inHg"
        )
        asked = level_at(output="absolute_pressure", unit="micron", figures=3)
        boils = asking("boiling-point", pressure=f"{asked.value():.6g} Pa")
        rows.append(
            (
                level.appliance,
                depth,
                asked,
                boils(output="temperature", unit="°F", decimals=0),
                boils(output="temperature", unit="°C", decimals=0),
            )
        )
    return tuple(rows)


TABLES = (
    ReferenceTable(
        id="recovery",
        caption="Recovery levels of 40 CFR 82, Subpart F",
        says=(
            "Where refrigerant must be recovered to before a system is opened in the United "
            "States, with a machine made since 15 November 1993, and where water boils at that "
            "pressure."
        ),
        heads=("Appliance", "Recover to", "micron", "Water boils, °F", "°C"),
        made=_recovery,
    ),
)
