"""The job record's form, and the documentation of its file, from calculators/job.

Markers: ``jobform:`` is the facts to fill in; ``jobfile: table`` lists every field of a job
file with what it may hold, ``link`` leads to the schema, ``example`` is a small file.
``publish`` writes the schema itself beside the page's assets.
"""

import html
import json
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from calculators.job import facts, schema

NAME = "job-file.schema.json"
KINDS = {"object": "object", "array": "list", "string": "text"}
EXAMPLE = {
    "format": schema.FORMAT,
    "version": schema.VERSION,
    "id": "3f0c6a52-8d1e-4a57-9c3b-2e5f7d90b164",
    "created": "2026-11-25T08:12:40.000+01:00",
    "changed": "2026-11-25T10:45:02.000+01:00",
    "facts": {"system": "Walk-in cooler", "site": "The bakery", "technician": "T. Oake"},
    "results": [
        {
            "id": "a81b6c0e-11f4-4a0f-8a2d-6a7f0d1c9e35",
            "card": "decay",
            "entries": {"readings": "0 305\n5 309\n10 312", "volume": "10 L"},
            "system": "us",
            "when": "2026-11-25T10:44:58.000+01:00",
            "said": "Holds, and nothing climbs",
        }
    ],
}


def form() -> str:
    """The facts of a job, to fill in."""
    return facts.form()


def link() -> str:
    """Where the schema is, from a page in a folder."""
    return (
        f'<p>The rules are a JSON Schema (2020-12): <a href="../../assets/{NAME}">{NAME}</a>. '
        f"This is version {schema.VERSION} of the format.</p>"
    )


def table() -> str:
    """Every field of the file: its name, whether it must be there, what it may hold."""
    rows = "".join(
        f'<tr><th scope="row"><code>{html.escape(name)}</code></th>'
        f"<td>{'always' if needed else 'if known'}</td>"
        f"<td>{html.escape(rule.get('description', ''))} <small>{_holds(rule)}</small></td></tr>"
        for name, needed, rule in _fields(schema.SCHEMA, "")
    )
    heads = "".join(f'<th scope="col">{each}</th>' for each in ("Field", "There", "Holds"))
    return (
        '<div class="scroll job-file" tabindex="0" role="region" aria-label="Fields of a job file">'
        f"<table><thead><tr>{heads}</tr></thead><tbody>{rows}</tbody></table></div>"
    )


def example() -> str:
    """A small job file, held to the schema before it is shown."""
    schema.check(EXAMPLE)
    text = html.escape(json.dumps(EXAMPLE, indent=2, ensure_ascii=False))
    return f'<pre tabindex="0" role="region" aria-label="A job file"><code>{text}</code></pre>'


def publish(site: Path) -> None:
    """Write the schema where the page links to it."""
    text = json.dumps(schema.SCHEMA, indent=2, ensure_ascii=False)
    (site / "assets" / NAME).write_text(f"{text}\n", encoding="utf-8")


def _fields(rule: Mapping[str, Any], place: str) -> Iterator[tuple[str, bool, Mapping[str, Any]]]:
    """The fields of an object and of what is in it, in the schema's order."""
    for name, each in rule.get("properties", {}).items():
        yield f"{place}{name}", name in rule.get("required", ()), each
        yield from _fields(each, f"{place}{name}.")
        yield from _fields(each.get("items", {}), f"{place}{name}[ ].")


def _holds(rule: Mapping[str, Any]) -> str:
    """What the schema allows, in a few words."""
    if "const" in rule:
        return f"Exactly <code>{html.escape(json.dumps(rule['const']))}</code>"
    if "enum" in rule:
        return "One of " + ", ".join(f"<code>{html.escape(each)}</code>" for each in rule["enum"])
    words = [KINDS[rule["type"]]]
    if "maxItems" in rule:
        words.append(f"up to {rule['maxItems']:,} entries")
    if "maxLength" in rule:
        words.append(f"up to {rule['maxLength']:,} characters")
    if rule.get("format") == "date-time":
        words.append("date and time with zone, as RFC 3339 writes them")
    elif "pattern" in rule:
        words.append(f"pattern <code>{html.escape(rule['pattern'])}</code>")
    return ", ".join(words)[:1].upper() + ", ".join(words)[1:]
