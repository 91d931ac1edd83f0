"""The problem bank: every template, lesson by lesson. A new one is an entry in its file."""

from calculators.teaching.bank import (
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
from calculators.teaching.lesson import Lesson
from calculators.teaching.lessons import LESSONS
from calculators.teaching.problem import Template

TEMPLATES: tuple[Template, ...] = (
    *what_a_micron_is.TEMPLATES,
    *why_a_dial_cant_show_it.TEMPLATES,
    *gauge_and_barometer.TEMPLATES,
    *dry_degassed_tight.TEMPLATES,
    *water_boils_cold.TEMPLATES,
    *below_the_triple_point.TEMPLATES,
    *where_the_water_leaves.TEMPLATES,
    *from_viscous_to_molecular.TEMPLATES,
    *the_bottleneck.TEMPLATES,
    *the_pull_down_curve.TEMPLATES,
    *gauge_pump_rig.TEMPLATES,
    *triple_evacuation.TEMPLATES,
    *reading_the_decay.TEMPLATES,
    *how_long_to_hold.TEMPLATES,
    *from_microns_to_grams.TEMPLATES,
    *what_a_decay_test_cant_prove.TEMPLATES,
)
BY_NAME = {template.name: template for template in TEMPLATES}
LESSON_OF: dict[str, Lesson] = {
    objective.name: lesson for lesson in LESSONS for objective in lesson.objectives
}
