"""What a job file may hold, as JSON Schema, and the check against it.

The schema is the documentation and the rule at once: the site publishes it,
and an imported file is held to it here. The check knows just the words of
JSON Schema that the schema uses.
"""

import re
from collections.abc import Iterator, Mapping
from typing import Any

from calculators.cards import BY_SLUG
from calculators.errors import CalculatorError

FORMAT = "dry-and-tight-job"
VERSION = 1
_WORDS = {"type": "string", "maxLength": 200}
_NOTES = {"type": "string", "maxLength": 4000}
_ENTRY = {"type": "string", "maxLength": 5_000_000}
_MOMENT = {
    "type": "string",
    "pattern": r"^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d+)?)?(Z|[+-]\d\d:\d\d)?$",
}

SCHEMA: Mapping[str, Any] = {
    "$schema": "https://json-schema.org/draft/2020-12/schema",
    "title": "A job record of Dry & Tight",
    "type": "object",
    "required": ["format", "version", "id", "created", "changed", "facts", "results"],
    "additionalProperties": False,
    "properties": {
        "format": {"const": FORMAT},
        "version": {"const": VERSION},
        "id": {"type": "string", "pattern": "^[A-Za-z0-9-]{8,64}$"},
        "created": _MOMENT,
        "changed": _MOMENT,
        "facts": {
            "type": "object",
            "additionalProperties": False,
            "properties": {
                "site": _WORDS,
                "system": _WORDS,
                "refrigerant": _WORDS,
                "technician": _WORDS,
                "license": _WORDS,
                "gauge": _WORDS,
                "pump": _WORDS,
                "before": _NOTES,
                "pull": _NOTES,
                "charge": _NOTES,
                "untested": _NOTES,
            },
        },
        "results": {
            "type": "array",
            "maxItems": 200,
            "items": {
                "type": "object",
                "required": ["id", "card", "entries", "system", "when", "said"],
                "additionalProperties": False,
                "properties": {
                    "id": {"type": "string", "pattern": "^[A-Za-z0-9-]{8,64}$"},
                    "card": {"enum": sorted(BY_SLUG)},
                    "system": {"enum": ["us", "si"]},
                    "when": _MOMENT,
                    "said": {"type": "string", "maxLength": 1000},
                    "note": _NOTES,
                    "entries": {
                        "type": "object",
                        "additionalProperties": {
                            "anyOf": [
                                _ENTRY,
                                {
                                    "type": "array",
                                    "maxItems": 100,
                                    "items": {"type": "object", "additionalProperties": _WORDS},
                                },
                            ]
                        },
                    },
                },
            },
        },
    },
}

_KINDS: Mapping[str, type] = {"object": dict, "array": list, "string": str}
_NAMES = {"object": "a group of named values", "array": "a list", "string": "text"}


def check(job: Any) -> None:
    """Hold a job file to the schema.

    Parameters
    ----------
    job : object
        What the JSON of the file holds.

    Raises
    ------
    CalculatorError
        One sentence that names the first thing that is wrong, and where.
    """
    if not isinstance(job, Mapping) or job.get("format") != FORMAT:
        raise CalculatorError("This is not a job file: choose one that was saved from this guide.")
    if job.get("version") != VERSION:
        raise CalculatorError(
            f"This job file has version {str(job.get('version'))[:20]}; this guide reads version "
            f"{VERSION}. Update the guide and try again."
        )
    for place, wrong in _faults(job, SCHEMA, "the file"):
        raise CalculatorError(f"The job file cannot be used: {place} {wrong}.")


def _faults(value: Any, rule: Mapping[str, Any], place: str) -> Iterator[tuple[str, str]]:
    """Every place that breaks the rule, and how."""
    if "const" in rule and value != rule["const"]:
        yield place, f"must be {rule['const']}"
    if "enum" in rule and value not in rule["enum"]:
        yield place, f"is not one of {', '.join(rule['enum'])}"
    if "anyOf" in rule and all(any(_faults(value, each, place)) for each in rule["anyOf"]):
        yield place, "is neither text nor a list of rows"
    kind = rule.get("type")
    if kind and not isinstance(value, _KINDS[kind]):
        yield place, f"must be {_NAMES[kind]}"
    elif kind == "object":
        yield from _object_faults(value, rule, place)
    elif kind == "array":
        if len(value) > rule.get("maxItems", len(value)):
            yield place, f"has more than {rule['maxItems']} entries"
        for index, each in enumerate(value, 1):
            yield from _faults(each, rule["items"], f"{place}, number {index}")
    elif kind == "string":
        if len(value) > rule.get("maxLength", len(value)):
            yield place, f"is longer than {rule['maxLength']} characters"
        if "pattern" in rule and not re.search(rule["pattern"], value):
            yield place, "is not written as it should be"


def _object_faults(
    value: Mapping[str, Any], rule: Mapping[str, Any], place: str
) -> Iterator[tuple[str, str]]:
    known = rule.get("properties", {})
    others = rule.get("additionalProperties", True)
    for name in rule.get("required", ()):
        if name not in value:
            yield place, f"lacks “{name}”"
    for name, each in value.items():
        here = f"“{str(name)[:40]}”" if place == "the file" else f"{place}, “{str(name)[:40]}”"
        if name in known:
            yield from _faults(each, known[name], here)
        elif others is False:
            yield here, "is not known here"
        elif isinstance(others, Mapping):
            yield from _faults(each, others, here)
