"""Symptoms to causes: docs/stuck.toml as a tree to tap through, and as a table for paper."""

import tomllib
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from calculators.cards import BY_SLUG

SOURCE = Path(__file__).resolve().parents[1] / "docs" / "stuck.toml"


@dataclass(frozen=True, kw_only=True)
class Cause:
    """What may be behind a symptom, how to know it, and what to do."""

    is_: str
    sign: str
    do: str
    card: str = ""
    page: str = ""


@dataclass(frozen=True, kw_only=True)
class Symptom:
    """What a technician sees, the next check, and the causes in order."""

    id: str
    when: str
    sees: str
    check: str
    causes: tuple[Cause, ...]


@cache
def symptoms() -> tuple[dict[str, str], tuple[Symptom, ...]]:
    """Read the file: the moments of a job by key, and every symptom."""
    whole = tomllib.loads(SOURCE.read_text(encoding="utf-8"))
    read = []
    for entry in whole["symptom"]:
        causes = tuple(Cause(is_=cause.pop("is"), **cause) for cause in entry.pop("causes"))
        if entry["when"] not in whole["when"]:
            raise ValueError(f"{SOURCE.name}: {entry['id']} has no such moment")
        read.append(Symptom(causes=causes, **entry))
    return whole["when"], tuple(read)


def stuck(form: str) -> str:
    """Markdown of the whole as a ``tree`` or a ``table``."""
    return {"tree": _tree, "table": _table}[form]()


def _tree() -> str:
    moments, every = symptoms()
    parts = ['<div class="tree" markdown>\n']
    for key, moment in moments.items():
        parts.append(
            f'<details class="moment" name="moment" markdown>\n<summary>{moment}</summary>\n'
        )
        parts += [_branch(each) for each in every if each.when == key]
        parts.append("</details>\n")
    return "\n".join([*parts, "</div>\n"])


def _branch(symptom: Symptom) -> str:
    causes = [
        f"{number}. **{cause.is_}**, if {cause.sign}. {cause.do}{_link(cause)}"
        for number, cause in enumerate(symptom.causes, 1)
    ]
    return "\n".join(
        [
            '<details class="symptom" name="symptom" markdown>',
            f"<summary>{symptom.sees}</summary>\n",
            # The name is inside, so that a link to it opens the whole branch.
            f"**Check first.** {symptom.check}\n{{: #{symptom.id} }}\n",
            *causes,
            "\n</details>\n",
        ]
    )


def _link(cause: Cause) -> str:
    if cause.card:
        title = BY_SLUG[cause.card].title
        return f" [{title}](calculators/{cause.card}.md){{ .settles }}"
    return f" [Read more]({cause.page}.md){{ .settles }}" if cause.page else ""


def _table() -> str:
    moments, every = symptoms()
    parts = []
    for key, moment in moments.items():
        parts += [
            f"### {moment}\n",
            "| You see | Check first | Likely, in order |",
            "| --- | --- | --- |",
        ]
        for each in (each for each in every if each.when == key):
            causes = "<br>".join(
                f"{number}. {cause.is_}: {cause.sign}. *{cause.do}*"
                for number, cause in enumerate(each.causes, 1)
            )
            parts.append(f"| {each.sees} | {each.check} | {causes} |")
        parts.append("")
    return "\n".join(parts)
