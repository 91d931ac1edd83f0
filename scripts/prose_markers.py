"""Markers of the guide's own prose, beside those of cards and lessons in site_hooks.py.

``PAGES`` make Markdown, in which the others are then filled: ``procedure:``, ``stuck: tree``
or ``table``, ``glossary:``, ``symbols:``, ``unitlist:``, ``bibliography:``, ``hazards:``.
``TEXTS`` make words: ``practice: key [in=unit]``, ``unit: name in=unit``, ``recovery: what``,
``boiling: reading ...``, ``bank: what``. ``BLOCKS`` make HTML: ``cautions: key ...``,
``shape: name``, ``speed: part``, ``problems:`` (to practice), ``assignment:`` (to make one),
``syllabus:``.
"""

import glossary
import job_steps
import reference_lists
import speed_report
import stuck

from calculators.outputs import class_pages, html

PAGES = {
    "procedure": job_steps.procedure,
    "stuck": stuck.stuck,
    "glossary": glossary.glossary,
    "symbols": reference_lists.symbols,
    "unitlist": reference_lists.unitlist,
    "bibliography": reference_lists.bibliography,
    "hazards": reference_lists.hazards,
}
TEXTS = {
    "practice": reference_lists.practice,
    "unit": reference_lists.unit,
    "recovery": reference_lists.recovery,
    "boiling": reference_lists.boiling,
    "bank": class_pages.bank_size,
}
BLOCKS = {
    "cautions": lambda *keys: html.cautions(keys),
    "shape": reference_lists.shape,
    "speed": speed_report.part,
    "problems": class_pages.practice,
    "assignment": class_pages.assignment_form,
    "syllabus": class_pages.syllabus,
}
