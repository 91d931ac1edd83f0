"""The words of the trade: docs/look-up/glossary.toml as a page of definitions."""

import re
import tomllib
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from calculators.cards import BY_SLUG

SOURCE = Path(__file__).resolve().parents[1] / "docs" / "look-up" / "glossary.toml"


@dataclass(frozen=True, kw_only=True)
class Term:
    """A word, what it means, and where to go on from it."""

    name: str
    means: str
    see: tuple[str, ...] = ()
    card: str = ""
    page: str = ""

    @property
    def anchor(self) -> str:
        """The word as a page address."""
        return re.sub(r"[^a-z0-9]+", "-", self.name.lower()).strip("-")


@cache
def terms() -> tuple[Term, ...]:
    """Read the file, in its order."""
    entries = tomllib.loads(SOURCE.read_text(encoding="utf-8"))["term"]
    return tuple(Term(**{**entry, "see": tuple(entry.get("see", ()))}) for entry in entries)


def glossary() -> str:
    """Markdown of the page: one list of definitions to a letter."""
    anchors = {term.name: term.anchor for term in terms()}
    letters = sorted({term.name[0].upper() for term in terms()})
    parts = ['<p class="letters">', *(f'<a href="#{c.lower()}">{c}</a>' for c in letters), "</p>\n"]
    for letter in letters:
        parts.append(f"## {letter} {{ #{letter.lower()} }}\n")
        for term in (term for term in terms() if term.name[0].upper() == letter):
            parts.append(f"{term.name} {{ #{term.anchor} }}")
            parts.append(f":   {term.means}{_more(term, anchors)}\n")
    return "\n".join(parts)


def _more(term: Term, anchors: dict[str, str]) -> str:
    see = [f"[{name.lower()}](#{anchors[name]})" for name in term.see]
    links = [f"See {' and '.join(see)}."] if see else []
    if term.card:
        links.append(f"[{BY_SLUG[term.card].title}](../calculators/{term.card}.md)")
    if term.page:
        links.append(f"[Read more](../{term.page}.md)")
    return f" <span class='more-of'>{' '.join(links)}</span>" if links else ""
