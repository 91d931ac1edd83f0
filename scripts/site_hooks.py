"""The one MkDocs hook: fills the markers of a page and makes it fit the content policy.

Markers, each an HTML comment: ``question: slug``, ``lede: slug``, ``card: slug``,
``example: slug N``, ``range: slug``, ``sources: slug``, ``index: folder`` and
``value: slug output [input="text" ...] [in=unit]``; for lessons ``lesson: slug`` (its title),
``aim: slug``, ``worked: slug``, ``quiz: slug`` and ``lessons: folder``; for the guide's prose
those of prose_markers.py. Everything they give comes from the cards, the lessons and the data
beside the pages; this file renders nothing itself.
"""

from __future__ import annotations

import html
import re
import shlex
import sys
from collections import Counter
from pathlib import Path
from typing import Any

from mkdocs.exceptions import PluginError

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE.parent), str(HERE)]

import figures  # noqa: E402
import formulas  # noqa: E402
import job_file  # noqa: E402
import job_steps  # noqa: E402
import prose_markers  # noqa: E402
import static_chart  # noqa: E402
import verification  # noqa: E402
from content_policy import with_policy  # noqa: E402
from steps import BUILD  # noqa: E402

from calculators import wording  # noqa: E402
from calculators.cards import BY_SLUG, CARDS  # noqa: E402
from calculators.evaluate import evaluate  # noqa: E402
from calculators.outputs import bench_page, lesson, needle, reference_table  # noqa: E402
from calculators.outputs import html as pieces  # noqa: E402
from calculators.outputs.chart import as_chart  # noqa: E402
from calculators.outputs.reference import BY_ID as TABLES  # noqa: E402

MARKER = re.compile(r"<!--\s*([a-z]+):\s*(.*?)\s*-->", re.S)
TASK = re.compile(r'<input type="checkbox" disabled( checked)?\s*/?>')
TABLE = re.compile(r"(?<!<div class=\"scroll\">)<table>.*?</table>", re.S)
EMPTY_HEADER = re.compile(r"<th[^>]*>\s*</th>")
HEADING = re.compile(r"<h[1-3][^>]*>(.*?)</h[1-3]>", re.S)


# --- markers ---------------------------------------------------------------


def card(slug: str) -> str:
    """The live card, its chart drawn, left out of the search index."""
    one = BY_SLUG[slug]
    whole = pieces.whole_card(one).replace("<worked-card", "<worked-card data-search-exclude", 1)
    evaluation = evaluate(one, {})
    if evaluation.answer.chart:
        drawing = static_chart.draw(as_chart(evaluation), slug)
        whole = whole.replace('<div class="plot">', f'<div class="plot">{drawing}', 1)
    return whole


def value(slug: str, output: str, *settings: str) -> str:
    """One computed number: as its card shows it, the other system's beside it."""
    entries = dict(each.split("=", 1) for each in settings)
    unit = entries.pop("in", "")
    evaluation = evaluate(BY_SLUG[slug], entries)
    # An entry can be shown too, beside what comes of it.
    out = next((each for each in BY_SLUG[slug].outputs if each.name == output), None)
    if out is None or unit or out.si_unit is None or out.us == out.si:
        return evaluation.say(f"{{{output}:{unit}}}")
    si = evaluation.answer.outputs[output]
    other = wording.quantity(si, out.si, figures=out.figures, decimals=out.decimals)
    return f"{evaluation.say(f'{{{output}}}')} ({other})"


def index(folder: str) -> str:
    """Every calculator by the question it answers, linked from a page beside or above them."""
    entry = (
        f'<li><a href="{folder}'
        + '{slug}/"><b>{question}</b></a><span>{title}</span><p>{lede}</p></li>'
    )
    fields = ("slug", "question", "title", "lede")
    rows = [
        entry.format(**{name: html.escape(getattr(each, name)) for name in fields})
        for each in CARDS
    ]
    return f'<ol class="questions">{"".join(rows)}</ol>'


TEXTS = {
    "question": lambda slug: BY_SLUG[slug].question,
    "lede": lambda slug: BY_SLUG[slug].lede,
    "value": value,
    "lesson": lambda slug: lesson.BY_LESSON[slug].title,
    **prose_markers.TEXTS,
}
BLOCKS = {
    "card": card,
    "example": lambda slug, number: pieces.worked_example(BY_SLUG[slug], int(number)),
    "range": lambda slug: pieces.ranges(BY_SLUG[slug]) + pieces.cautions(BY_SLUG[slug].cautions),
    "sources": lambda slug: pieces.sources(BY_SLUG[slug]),
    "index": index,
    "figure": figures.html,
    "verification": lambda part: getattr(verification, part)(),
    "table": lambda name, folder: reference_table.html(TABLES[name], folder),
    "aim": lesson.aim,
    "worked": lesson.worked,
    "quiz": lesson.quiz,
    "lessons": lesson.lesson_list,
    "bench": lambda _: bench_page.bench(),
    "needle": lambda _: needle.needle(),
    "jobform": job_file.form,
    "jobfile": lambda part: getattr(job_file, part)(),
    **prose_markers.BLOCKS,
}


def _filled(text: str, makers: dict[str, Any], page: Any) -> str:
    def fill(match: re.Match[str]) -> str:
        if match[1] not in makers:
            return match[0]
        try:
            return makers[match[1]](*shlex.split(match[2]))
        except Exception as error:
            raise PluginError(f"{page.file.src_uri}: {match[0]}: {error}") from error

    return MARKER.sub(fill, text)


# --- what MkDocs calls -------------------------------------------------------


def on_config(config: Any, **_: Any) -> Any:
    """Tell the pages which worker has their Python: its name says what is in it."""
    worker = next((BUILD / "runtime").glob("worker-*.js"), None)
    if worker is None:
        raise PluginError("The browser runtime is not there: build with scripts/serve.py.")
    config.extra["worker"] = f"assets/runtime/{worker.name}"
    return config


def on_page_markdown(markdown: str, page: Any, **_: Any) -> str:
    """Put words and numbers of cards into the prose."""
    return _filled(_filled(markdown, prose_markers.PAGES, page), TEXTS, page)


def on_page_content(content: str, page: Any, **_: Any) -> str:
    """Put cards and formulas into the page, names on check boxes, tables into boxes."""
    try:
        content = formulas.typeset(content)
    except ValueError as error:
        raise PluginError(f"{page.file.src_uri}: {error}") from error
    content = TASK.sub(
        lambda m: f'{m[0][:-1].rstrip("/ ")} aria-label="{"done" if m[1] else "to do"}">', content
    )
    content = job_steps.tickable(content, Path(page.file.src_uri).stem)
    content = content.replace("<pre>", '<pre tabindex="0">')  # it scrolls sideways on a phone
    return _filled(_boxed(content), BLOCKS, page)


def _boxed(content: str) -> str:
    """Put each table into a box that scrolls, named after the heading that it stands under."""
    named: Counter[str] = Counter()

    def box(match: re.Match[str]) -> str:
        headings = HEADING.findall(content, 0, match.start())
        under = re.sub("<[^>]+>", "", headings[-1]).strip().replace('"', "&quot;")
        named[under] += 1
        label = f"Table: {under}" + (f", {named[under]}" if named[under] > 1 else "")
        opening = f'<div class="scroll" tabindex="0" role="region" aria-label="{label}">'
        return f"{opening}{EMPTY_HEADER.sub('<td></td>', match[0])}</div>"

    return TABLE.sub(box, content)


def on_post_page(output: str, **_: Any) -> str:
    """Write the content policy into a page."""
    return with_policy(output)


def on_post_template(output: str, template_name: str, **_: Any) -> str:
    """Write the content policy into a page that has no source, such as 404.html."""
    return with_policy(output) if template_name.endswith(".html") else output


def on_post_build(config: Any, **_: Any) -> None:
    """Put the schema of the job file beside the pages."""
    job_file.publish(Path(config.site_dir))
