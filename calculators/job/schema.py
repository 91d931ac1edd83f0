"""What a job file may hold, as JSON Schema, and the check against it.

The schema is the documentation and the rule at once: the site publishes it,
and an imported file is held to it here. The check knows just the words of
JSON Schema that the schema uses.
"""

import re
from collections.abc import Iterator, Mapping
from datetime import datetime
from typing import Any

from calculators.cards import BY_SLUG
from calculators.errors import CalculatorError
from calculators.job.facts import FACTS, NOTES

FORMAT = "dry-and-tight-job"
VERSION = 1
_ENTRY = {"type": "string", "maxLength": 5_000_000}
_WORDS = {"type": "string", "maxLength": 200}
_NOTES = {"type": "string", "maxLength": 4000}
_ID = {"type": "string", "pattern": "^[A-Za-z0-9-]{8,64}$"}
_MOMENT = {
    "type": "string",
    "format": "date-time",
    "pattern": r"^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$",
}
_FACTS = {
    fact.key: {
        "description": f"{fact.title}. {fact.help}.",
        "type": "string",
        "maxLength": fact.longest,
    }
    for fact in (*FACTS, *NOTES)
}
_ENTRIES = {
    "description": "What was typed, under the names of the card's inputs: a text such as "
    "“500 micron”, or a list of rows of such texts. An input left out has the card's default.",
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
}
_RESULT = {
    "type": "object",
    "required": ["id", "card", "entries", "system", "when", "said"],
    "additionalProperties": False,
    "properties": {
        "id": {"description": "A name that no other result of the file has.", **_ID},
        "card": {"description": "The calculator that was asked.", "enum": sorted(BY_SLUG)},
        "system": {
            "description": "The units of the answer: us or si.",
            "enum": ["us", "si"],
        },
        "when": {"description": "When it was added.", **_MOMENT},
        "said": {
            "description": "The answer in one line, as it was then. The record computes it again "
            "and says so where it reads differently.",
            "type": "string",
            "maxLength": 1000,
        },
        "note": {"description": "A remark about this result.", **_NOTES},
        "entries": _ENTRIES,
    },
}

SCHEMA: Mapping[str, Any] = {
    "$schema": "https://json-schema.org/draft/2020-12/schema",
    "title": "A job record of Dry & Tight",
    "type": "object",
    "required": ["format", "version", "id", "created", "changed", "facts", "results"],
    "additionalProperties": False,
    "properties": {
        "format": {"description": "Says that this is a job file.", "const": FORMAT},
        "version": {
            "description": "The version of this format. It goes up when a file of the new kind "
            "could not be read by the old rules.",
            "const": VERSION,
        },
        "id": {"description": "A name that no other job has.", **_ID},
        "created": {"description": "When the job was started.", **_MOMENT},
        "changed": {"description": "When anything in it last changed.", **_MOMENT},
        "facts": {
            "description": "What the technician wrote; what is not known is left out.",
            "type": "object",
            "additionalProperties": False,
            "properties": _FACTS,
        },
        "results": {
            "description": "The answers that were added, in any order.",
            "type": "array",
            "maxItems": 200,
            "items": _RESULT,
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
        if "pattern" in rule and not re.fullmatch(rule["pattern"], value):
            yield place, "is not written as it should be"
        elif rule.get("format") == "date-time" and not _is_moment(value):
            yield place, "is no date and time"


def _is_moment(text: str) -> bool:
    try:
        datetime.fromisoformat(text)
    except ValueError:
        return False
    return True


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
