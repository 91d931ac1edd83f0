"""Every lesson, in the order of the course. A new one is one line here and one page."""

from calculators.teaching.lesson import Lesson
from calculators.teaching.lessons import (
    below_the_triple_point,
    dry_degassed_tight,
    gauge_and_barometer,
    water_boils_cold,
    what_a_micron_is,
    why_a_dial_cant_show_it,
)

LESSONS: tuple[Lesson, ...] = (
    what_a_micron_is.LESSON,
    why_a_dial_cant_show_it.LESSON,
    gauge_and_barometer.LESSON,
    dry_degassed_tight.LESSON,
    water_boils_cold.LESSON,
    below_the_triple_point.LESSON,
)
BY_LESSON = {lesson.slug: lesson for lesson in LESSONS}
