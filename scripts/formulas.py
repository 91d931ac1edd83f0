"""TeX formulas in a page become MathML at build time."""

from __future__ import annotations

import html
import re

from latex2mathml.converter import convert

_MATH = re.compile(r'<(span|div) class="arithmatex">\s*(.*?)\s*</\1>', re.S)


def typeset(content: str) -> str:
    """Replace every formula that Markdown has marked in a page's HTML.

    Raises
    ------
    ValueError
        If a formula holds a command that the converter does not know.
    """
    return _MATH.sub(_formula, content)


def _formula(match: re.Match[str]) -> str:
    tex = html.unescape(match[2]).strip()
    block, inside = tex.startswith(r"\["), tex[2:-2].strip()
    formula = convert(inside, display="block" if block else "inline")
    # What it does not know passes through unsaid: as a backslash, or as a bare ampersand.
    if "\\" in formula or "<mi>&" in formula.replace("<mi>&#x", ""):
        raise ValueError(f"this formula did not become MathML whole: {inside}")
    label = html.escape(inside, quote=True)
    formula = formula.replace("<math ", f'<math alttext="{label}" ', 1)
    if not block:
        return formula
    return f'<div class="math-block" tabindex="0" role="group" aria-label="Formula">{formula}</div>'
