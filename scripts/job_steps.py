"""The steps of a job page, to tick with a glove on; and the whole job from the same steps.

A page writes its steps as a numbered list inside ``<div class="steps" markdown>``, each
beginning with what to do in bold. The whole procedure takes those bold words, so nothing is
written twice.
"""

import re
from collections.abc import Iterator
from pathlib import Path

DOCS = Path(__file__).resolve().parents[1] / "docs"
FOLDER = DOCS / "on-the-job"
ORDER = (
    "before-you-start",
    "prove-the-gauge",
    "prove-the-pump",
    "prove-the-rig",
    "set-up",
    "pull",
    "hold",
    "break-and-charge",
    "record",
)
SOURCE = re.compile(r'<div class="steps" markdown>\n(.*?)\n</div>', re.S)
ITEM = re.compile(r"^\d+\. +\*\*(.+?)\*\*", re.M | re.S)
MADE = re.compile(r'<div class="steps"(?: data-page="([a-z-]+)")?>\s*<ol>(.*?)</ol>\s*</div>', re.S)
STEP = re.compile(r"<li>\s*(?:<p>)?<strong>(.*?)</strong>\s*(.*?)(?:</p>)?\s*</li>", re.S)


def steps_of(page: str) -> tuple[str, list[str]]:
    """Title of a job page, and what each of its steps says to do."""
    text = (FOLDER / f"{page}.md").read_text(encoding="utf-8")
    title = re.search(r"^# (.+)$", text, re.M)
    lists = SOURCE.findall(text)
    if not title or len(lists) != 1:
        raise ValueError(f"{page}.md needs one title and one list of steps")
    return title[1], [" ".join(step.split()) for step in ITEM.findall(lists[0])]


def procedure() -> str:
    """The whole job as Markdown: every page's steps under its name, each linked."""
    return "\n".join(_parts())


def _parts() -> Iterator[str]:
    for number, page in enumerate(ORDER, 1):
        title, steps = steps_of(page)
        heading = f"## {number}. [{title}]({page}.md) {{ #{page} }}"
        yield f'<section class="part" markdown>\n\n{heading}\n'
        yield f'<div class="steps" data-page="{page}" markdown>\n'
        yield from (f"{count}. **{step}**" for count, step in enumerate(steps, 1))
        yield "\n</div>\n\n</section>\n"


def tickable(content: str, page: str) -> str:
    """Turn the lists of steps of a finished page into ones that can be ticked."""
    return MADE.sub(lambda m: _list(m[2], m[1] or page), content)


def _list(items: str, page: str) -> str:
    steps = [_step(do, more) for do, more in STEP.findall(items)]
    if len(steps) != items.count("<li>"):
        raise ValueError(f"{page}: every step begins with what to do, in bold")
    return f'<job-steps page="{page}"><ol class="steps">{"".join(steps)}</ol></job-steps>'


def _step(do: str, more: str) -> str:
    detail = f"<p>{more.strip()}</p>" if more.strip() else ""
    return f'<li><label><input type="checkbox"><b>{do}</b></label>{detail}</li>'
