"""Where the problems happen: places of our own invention, by the size of their systems."""

from calculators.teaching.draw import OneOf, one_of

SPLITS = (
    "a village library's split system",
    "the split system of a bookbinder's shop",
    "a town hall's split system",
    "a music school's split system",
    "the split system of a weaver's studio",
    "a signal box museum's split system",
    "the split system of a toy repair shop",
    "a chess club's split system",
)
WALK_INS = (
    "a bakery's walk-in cooler",
    "a florist's cold room",
    "a fish market's walk-in cooler",
    "a school kitchen's cold room",
    "a cider press's cold store",
    "a cheese cellar's walk-in cooler",
    "a mushroom farm's cold room",
    "a monastery kitchen's walk-in cooler",
)
FREEZERS = (
    "an ice cream parlor's freezer",
    "a bakery's blast freezer",
    "a fish market's freezer room",
    "a village butcher's freezer",
    "a berry farm's freezer room",
    "a seed bank's freezer",
)
CHILLERS = (
    "a dairy's chiller",
    "a greenhouse's chiller",
    "a brewery's chiller",
    "a laundry's chiller",
    "an ice rink's chiller",
    "a paper mill's chiller",
)

A_SPLIT: OneOf = one_of(*SPLITS)
A_WALK_IN: OneOf = one_of(*WALK_INS)
A_FREEZER: OneOf = one_of(*FREEZERS)
A_CHILLER: OneOf = one_of(*CHILLERS)
A_SMALL_SYSTEM: OneOf = one_of(*SPLITS, *WALK_INS)
A_SYSTEM: OneOf = one_of(*SPLITS, *WALK_INS, *FREEZERS, *CHILLERS)
