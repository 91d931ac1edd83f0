"""Lists that the cards and the package hold already: symbols, units, sources, levels."""

import re
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path

from calculators import units, wording
from calculators.card import Card, Cite, Quantity, Rows
from calculators.cards import BY_SLUG, CARDS
from calculators.cautions import CAUTIONS, DEFERS
from calculators.evaluate import evaluate
from calculators.outputs.answer import SHAPES
from calculators.practice_limits import PRACTICE_LIMITS, RECOVERY_LEVELS, RECOVERY_SOURCE
from calculators.sources import BIBLIOGRAPHY, Source

PACKAGE = Path(__file__).resolve().parents[1] / "calculators"
KINDS = {
    "publication": "Standards, rules, papers and books",
    "library": "Open libraries",
    "derivation": "Derived here",
    "practice": "Common practice",
    "memory": "From memory",
}


# --- numbers in prose --------------------------------------------------------


def practice(key: str, *settings: str) -> str:
    """A level or a time of the trade, in both systems, or ``in=`` one unit."""
    limit = PRACTICE_LIMITS[key]
    wanted = dict(each.split("=", 1) for each in settings).get("in")
    shown = [wanted] if wanted else list(dict.fromkeys((limit.us, limit.si)))
    # Numbers and their units stay on one line.
    texts = [_amount(limit.value, limit.upper, u).replace(" ", "\N{NO-BREAK SPACE}") for u in shown]
    return texts[0] if len(texts) == 1 else f"{texts[0]} ({texts[1]})"


def _amount(value: float, upper: float | None, unit: str) -> str:
    if upper is None:
        return wording.quantity(value, unit, figures=3)
    lower = wording.number(units.from_si(value, unit), figures=3)
    return f"{lower} to {wording.quantity(upper, unit, figures=3)}"


def unit(name: str, *settings: str) -> str:
    """What one of a unit is ``in=`` another."""
    other = dict(each.split("=", 1) for each in settings)["in"]
    return wording.quantity(units.to_si(1.0, name), other)


def recovery(what: str) -> str:
    """The deepest level of recovery above open air: its pressure, or where water boils there."""
    pressure = min(row.pressure() for row in RECOVERY_LEVELS if not row.absolute)
    if what == "pressure":
        micron, kpa = (wording.quantity(pressure, name, figures=3) for name in ("micron", "kPa"))
        return f"{micron} ({kpa})"
    boiling = evaluate(BY_SLUG["boiling-point"], {"pressure": f"{pressure} Pa"})
    return boiling.say("{temperature:°F;3} ({temperature:°C;3})")


def boiling(*readings: str) -> str:
    """Boiling points of a few readings in micron, as a small table."""
    rows = ["| Micron | Water leaves at | As |", "| ---: | ---: | --- |"]
    for reading in readings:
        found = evaluate(BY_SLUG["boiling-point"], {"pressure": f"{reading} micron"})
        answer = found.say("{temperature:°F;.0} / {temperature:°C;.0} | {phase}")
        rows.append(f"| {reading} | {answer} |")
    return "\n".join(rows)


# --- shapes of a curve, drawn as the verdicts are --------------------------------

PULLS = {
    "straight": "M8 7 L38 36 C44 41 54 43 66 43",
    "shelf": "M8 7 L20 19 H44 L58 39 C60 42 63 43 66 43",
    "ice": "M8 7 L24 24 H46 V36 C52 40 60 41 66 41",
    "creep": "M8 7 C16 22 36 27 66 29",
    "saw": "M8 7 L24 27 L30 14 L42 34 L48 20 L62 40",
    "plunge": "M8 7 C9 32 11 43 20 43 H66",
}


def shape(name: str) -> str:
    """A curve of pressure against time, of a pull or of a hold."""
    trace = {**SHAPES, **PULLS}[name]
    code = f' data-code="{name}"' if name in SHAPES else ""
    return (
        f'<svg class="shape" viewBox="0 0 72 52" aria-hidden="true"{code}>'
        f'<path class="axes" d="M5 47V5M5 47H67"/><path class="trace" d="{trace}"/></svg>'
    )


# --- whole lists ---------------------------------------------------------------


def _quantities(card: Card) -> Iterator[tuple[str, str, str, str, str]]:
    for each in card.inputs:
        for one in each.columns if isinstance(each, Rows) else (each,):
            if isinstance(one, Quantity):
                yield one.symbol, one.label, one.si_unit, one.us, one.si
    for out in card.outputs:
        if out.si_unit is not None:
            yield out.symbol, out.label, out.si_unit, out.us, out.si


def symbols() -> str:
    """Every symbol of the cards: what it stands for, its units, where it is used."""
    found: dict[tuple[str, str], tuple[set[str], dict[str, None], dict[str, None]]] = {}
    for card in CARDS:
        for symbol, label, si_unit, us, si in _quantities(card):
            if symbol:
                shown, labels, cards = found.setdefault((symbol, si_unit), (set(), {}, {}))
                shown.update((us, si))
                labels[label] = None
                cards[f"[{card.title}](../calculators/{card.slug}.md)"] = None
    rows = ["| Symbol | Stands for | Units | Used in |", "| --- | --- | --- | --- |"]
    for (symbol, si_unit), (shown, labels, cards) in sorted(
        found.items(), key=lambda item: (item[0][0].lower(), item[0])
    ):
        named = ", ".join(dict.fromkeys([si_unit, *sorted(shown)]))
        named = re.sub(r"^1(?:, )?", "", named) or "none"
        letter, _, below = symbol.partition("_")
        written = f"{letter}<sub>{below}</sub>" if below else symbol
        rows.append(f"| {written} | {'; '.join(labels)} | {named} | {', '.join(cards)} |")
    return "\n".join(rows).replace("Δ°", "°").replace("K difference", "K")


def unitlist() -> str:
    """Every unit that an entry may have, by what it measures, with its size in SI."""
    by_dimension: dict[str, list[str]] = defaultdict(list)
    for each in units.UNITS.values():
        other = ", ".join(f"`{alias}`" for alias in each.aliases)
        by_dimension[each.dimension].append(f"| `{each.name}` | {other} | {_size(each)} |")
    parts = []
    for dimension, rows in by_dimension.items():
        parts += [
            f"### {dimension.capitalize()}\n",
            "| Write | Or | One is |",
            "| --- | --- | --- |",
        ]
        parts += [*rows, ""]
    return "\n".join(parts)


def _size(each: units.Unit) -> str:
    si = units.SI[each.dimension]
    if each.dimension == "temperature":
        return {"K": "the SI unit", "°C": "K − 273.15", "°F": "°C × 9/5 + 32"}[each.name]
    if each.name == si:
        return "the SI unit"
    barometer = units.to_si(1.0, "atm") if each.gauge else None
    size = units.to_si(1.0, each.name, barometer=barometer) - (barometer or 0.0)
    away = {1: " above the barometer", -1: " below the barometer", 0: ""}[each.gauge]
    return wording.quantity(abs(size), si, figures=6) + away


def bibliography() -> str:
    """Every source once, by kind, with what rests on it."""
    used = uses()
    parts = []
    for kind, heading in KINDS.items():
        entries = {key: source for key, source in BIBLIOGRAPHY.items() if source.kind == kind}
        if entries:
            parts.append(f"## {heading} {{ #{kind} }}\n")
        for key, source in entries.items():
            parts.append(f"{key} {{ #{key.lower()} }}")
            parts.append(f":   {_reference(source)} <span class='more-of'>{used[key]}</span>\n")
    unknown = {source.kind for source in BIBLIOGRAPHY.values()} - set(KINDS)
    if unknown:
        raise ValueError(f"no heading for sources of kind {', '.join(sorted(unknown))}")
    return "\n".join(parts)


def _reference(source: Source) -> str:
    words = [source.author, source.title, source.publisher, source.year]
    text = ". ".join(word for word in words if word)
    return f"{text}. doi:{source.doi}." if source.doi else f"{text}."


def uses() -> dict[str, str]:
    """Per key of the bibliography, what cites it, as Markdown; a key nobody cites is an error."""
    found: dict[str, dict[str, None]] = defaultdict(dict)
    for card in CARDS:
        for cite in card.sources:
            where = f", {cite.locator}" if cite.locator else ""
            found[cite.key][f"[{card.title}](../calculators/{card.slug}.md){where}"] = None
    cites: list[Cite] = [limit.source for limit in PRACTICE_LIMITS.values()] + [RECOVERY_SOURCE]
    for cite in cites:
        where = f", {cite.locator}" if cite.locator else ""
        found[cite.key][f"levels of the trade and the law{where}"] = None
    for path in sorted((PACKAGE / "physics").glob("*.py")):
        text = path.read_text(encoding="utf-8")
        for key in BIBLIOGRAPHY:
            if re.search(rf"(?<![\w-]){key}(?![\w-])", text):
                found[key][f"`physics/{path.name}`"] = None
    unused = set(BIBLIOGRAPHY) - set(found)
    if unused:
        raise ValueError(f"nothing cites {', '.join(sorted(unused))}")
    return {key: f"Used in {'; '.join(places)}." for key, places in found.items()}


def hazards() -> str:
    """Every caution in full."""
    parts = [f"**{DEFERS}**\n"]
    for key, caution in CAUTIONS.items():
        parts.append(f"## {caution.title} {{ #{key} }}\n\n**{caution.short}**\n")
        parts.append(f"Who can be hurt: {caution.who}\n\nHow: {caution.how}\n\nUsual practice:\n")
        parts += [*(f"- {text}" for text in caution.practice), ""]
    return "\n".join(parts)
