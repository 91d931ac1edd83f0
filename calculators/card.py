"""What a calculator is, as frozen data: its inputs, outputs, working, sources.

A card holds no behavior beyond the one function it names. The page, the
command line, the problems and the tables are all read from it.

Every text in an answer is a template that :mod:`calculators.wording` fills:
``{name}`` shows an input as it was typed or an output in its own unit,
``{name:Pa}`` converts, ``{name:°F|°C}`` picks by the reader's system, and
``;6`` or ``;.1`` after the unit asks for significant figures or decimals.
A card therefore never formats a number and never meets a unit registry.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any


@dataclass(frozen=True)
class Line:
    """A template with values of its own, beside those of the whole answer."""

    text: str
    values: Mapping[str, float | str] = field(default_factory=dict)


def say(text: str, **values: float | str) -> Line:
    """Make a line of text whose placeholders have their own values."""
    return Line(text, values)


Text = str | Line


# --- what a person enters -------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class Quantity:
    """A number with a unit.

    ``us`` and ``si`` are the units shown first to each kind of reader and
    ``units`` is the whole menu. ``minimum`` and ``maximum`` are in
    ``si_unit``, inclusive. ``default`` is text as a person types it; an
    input that may stay blank has ``required=False`` and arrives as ``None``.
    One that few people change is ``folded`` away, here as in every kind.
    """

    name: str
    label: str
    symbol: str
    si_unit: str
    us: str
    si: str
    units: tuple[str, ...]
    minimum: float
    maximum: float
    default: str = ""
    hint: str = ""
    help: str = ""
    required: bool = True
    folded: bool = False


@dataclass(frozen=True, kw_only=True)
class Choice:
    """One of a short list: ``options`` holds (value, label) pairs."""

    name: str
    label: str
    options: tuple[tuple[str, str], ...]
    default: str
    hint: str = ""
    help: str = ""
    folded: bool = False


@dataclass(frozen=True, kw_only=True)
class Words:
    """A few words of the person's own, such as the name of a rig."""

    name: str
    label: str
    default: str = ""
    hint: str = ""
    help: str = ""
    folded: bool = False
    longest: int = 60


@dataclass(frozen=True, kw_only=True)
class Readings:
    """A log of times and pressures, typed, pasted or read from a file."""

    name: str
    label: str
    default: str
    hint: str = ""
    help: str = ""
    folded: bool = False


@dataclass(frozen=True, kw_only=True)
class Rows:
    """A list of like things, such as the hoses of a rig.

    ``row`` is the noun for one of them; ``default`` holds a mapping of texts
    per row, and a column that a row leaves out takes the column's default.
    """

    name: str
    label: str
    row: str
    columns: tuple[Quantity | Choice | Words, ...]
    default: tuple[Mapping[str, str], ...]
    minimum: int = 1
    maximum: int = 20
    hint: str = ""
    help: str = ""
    folded: bool = False


Input = Quantity | Choice | Words | Readings | Rows


# --- what comes back ------------------------------------------------------


@dataclass(frozen=True, kw_only=True)
class Output:
    """A result. A word instead of a number has ``choices`` (code to label).

    ``blank`` is said where there is no value.
    """

    name: str
    label: str
    symbol: str = ""
    si_unit: str | None = None
    us: str = ""
    si: str = ""
    figures: int = 4
    decimals: int | None = None
    choices: Mapping[str, str] | None = None
    blank: str = "not given"


@dataclass(frozen=True, kw_only=True)
class Verdict:
    """A judgment: its code, the sentence that says it, and the reasons."""

    code: str
    says: Text
    because: tuple[Text, ...] = ()


@dataclass(frozen=True)
class Step:
    """One step of the working: a sentence, a formula, the numbers put in."""

    says: Text
    formula: str = ""
    numbers: Text = ""
    values: Mapping[str, float | str] = field(default_factory=dict)


@dataclass(frozen=True)
class Column:
    """A column of a table; without units its cells are words."""

    label: str
    us: str = ""
    si: str = ""
    figures: int = 4
    decimals: int | None = None


@dataclass(frozen=True)
class Table:
    """Rows of SI numbers or words under labeled columns."""

    caption: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[float | str | None, ...], ...]
    open: bool = False


@dataclass(frozen=True, kw_only=True)
class Axis:
    """A chart's axis: label, unit for each kind of reader, linear or log."""

    label: str
    us: str
    si: str
    log: bool = False


@dataclass(frozen=True, kw_only=True)
class Series:
    """Points, a line or a band. ``role``: reading, fit, curve or band."""

    label: str
    role: str
    x: tuple[float, ...]
    y: tuple[float, ...]
    upper: tuple[float, ...] | None = None


@dataclass(frozen=True, kw_only=True)
class Mark:
    """A labeled line across the chart at one value of one axis."""

    axis: str
    at: float
    label: Text


@dataclass(frozen=True, kw_only=True)
class Chart:
    """What to draw, in SI numbers, with a sentence that says what it shows."""

    title: str
    x: Axis
    y: Axis
    series: tuple[Series, ...]
    marks: tuple[Mark, ...] = ()
    summary: Text = ""


@dataclass(frozen=True, kw_only=True)
class Answer:
    """What a card's function returns: SI numbers and templates, no text made up."""

    outputs: Mapping[str, float | str | None]
    headline: Text = ""
    verdict: Verdict | None = None
    notes: tuple[Text, ...] = ()
    working: tuple[Step, ...] = ()
    tables: tuple[Table, ...] = ()
    chart: Chart | None = None
    values: Mapping[str, float | str] = field(default_factory=dict)


# --- the card -------------------------------------------------------------


@dataclass(frozen=True)
class Cite:
    """A key of the bibliography and the place within that source."""

    key: str
    locator: str = ""


@dataclass(frozen=True, kw_only=True)
class Example:
    """A worked example: a title, what is entered, and what it shows."""

    title: str
    entries: Mapping[str, Any]
    shows: str = ""


@dataclass(frozen=True, kw_only=True)
class Card:
    """Everything about one calculator, said once."""

    slug: str
    title: str
    question: str
    lede: str
    inputs: tuple[Input, ...]
    outputs: tuple[Output, ...]
    compute: Callable[..., Answer]
    primary: str
    sources: tuple[Cite, ...]
    assumptions: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    examples: tuple[Example, ...] = ()

    def __post_init__(self) -> None:
        """Refuse a card that contradicts itself."""
        names = [each.name for each in (*self.inputs, *self.outputs)]
        if len(names) != len(set(names)):
            raise TypeError(f"{self.slug}: an input or output name is used twice")
        if self.primary not in {each.name for each in self.outputs}:
            raise TypeError(f"{self.slug}: primary output {self.primary!r} does not exist")
