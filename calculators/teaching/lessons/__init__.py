"""Every lesson, in the order of the course. A new one is one line here and one page."""

from calculators.teaching.lesson import Lesson
from calculators.teaching.lessons import (
    below_the_triple_point,
    dry_degassed_tight,
    from_microns_to_grams,
    from_viscous_to_molecular,
    gauge_and_barometer,
    gauge_pump_rig,
    how_long_to_hold,
    reading_the_decay,
    the_bottleneck,
    the_pull_down_curve,
    triple_evacuation,
    water_boils_cold,
    what_a_decay_test_cant_prove,
    what_a_micron_is,
    where_the_water_leaves,
    why_a_dial_cant_show_it,
)

LESSONS: tuple[Lesson, ...] = (
    what_a_micron_is.LESSON,
    why_a_dial_cant_show_it.LESSON,
    gauge_and_barometer.LESSON,
    dry_degassed_tight.LESSON,
    water_boils_cold.LESSON,
    below_the_triple_point.LESSON,
    where_the_water_leaves.LESSON,
    from_viscous_to_molecular.LESSON,
    the_bottleneck.LESSON,
    the_pull_down_curve.LESSON,
    gauge_pump_rig.LESSON,
    triple_evacuation.LESSON,
    reading_the_decay.LESSON,
    how_long_to_hold.LESSON,
    from_microns_to_grams.LESSON,
    what_a_decay_test_cant_prove.LESSON,
)
BY_LESSON = {lesson.slug: lesson for lesson in LESSONS}
