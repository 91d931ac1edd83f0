"""The reference tables: what each asks of which card. A new one is one entry in its module."""

from calculators.outputs.reference import hold, pressure, recovery, rig, water
from calculators.outputs.reference_table import ReferenceTable

TABLES: tuple[ReferenceTable, ...] = (
    *water.TABLES,
    *pressure.TABLES,
    *rig.TABLES,
    *hold.TABLES,
    *recovery.TABLES,
)
BY_ID = {table.id: table for table in TABLES}
