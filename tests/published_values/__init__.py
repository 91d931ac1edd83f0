"""Every value that somebody published, once: run as tests and shown on the verification page."""

from published_values import (
    air,
    flow,
    gauge_readings,
    leaks,
    purging,
    quantities,
    thin_gases,
    tubes,
    water,
)
from published_values.checks import Subject

SUBJECTS: tuple[Subject, ...] = (
    water.SUBJECT,
    quantities.SUBJECT,
    air.SUBJECT,
    thin_gases.SUBJECT,
    flow.SUBJECT,
    purging.SUBJECT,
    leaks.SUBJECT,
    gauge_readings.SUBJECT,
    tubes.SUBJECT,
)
