"""What a person writes of a job in their own words: each fact's key, label and form field."""

from dataclasses import dataclass

from calculators.outputs.element import Element, tag, text_of


@dataclass(frozen=True, kw_only=True)
class Fact:
    """A line, or with ``lines`` a few lines, of free text."""

    key: str
    title: str
    help: str
    lines: int = 1

    @property
    def longest(self) -> int:
        """Characters that fit."""
        return 200 if self.lines == 1 else 4000


FACTS = (
    Fact(key="system", title="System", help="The owner's name for it, and its nameplate"),
    Fact(key="site", title="Site", help="Where it stands"),
    Fact(key="refrigerant", title="Refrigerant", help="And its safety class"),
    Fact(key="technician", title="Technician", help="Who did it"),
    Fact(key="license", title="License", help="Where you need one"),
    Fact(key="gauge", title="Gauge", help="Kind, number, last calibration"),
    Fact(key="pump", title="Pump", help="Kind, number, last oil change"),
)
NOTES = (
    Fact(
        key="before",
        title="Before the pull",
        help="Recovery: amount and level. Nitrogen test: pressure, start, end, temperatures",
        lines=3,
    ),
    Fact(
        key="pull",
        title="During the pull",
        help="Start and end, readings with times, breaks with nitrogen, what you warmed",
        lines=3,
    ),
    Fact(
        key="charge",
        title="After the hold",
        help="Charge by weight, leak search and with what",
        lines=3,
    ),
    Fact(
        key="untested",
        title="Not tested",
        help="The part behind the closed valve, the hold cut short",
        lines=3,
    ),
)


def form() -> str:
    """The facts as a form, empty, as the page is built with it."""
    notes = ", ".join(each.title[:1].lower() + each.title[1:] for each in NOTES)
    fold = tag(
        "details",
        tag("summary", "Notes: ", tag("span", notes)),
        tag("div", [_field(each) for each in NOTES]),
        class_="fold",
    )
    facts = tag("div", [_field(each) for each in FACTS], class_="job-fields")
    return text_of(tag("form", facts, fold, class_="ask", novalidate=True))


def _field(fact: Fact) -> Element:
    identity = f"job-{fact.key}"
    described = {"id": identity, "name": fact.key, "aria_describedby": f"{identity}-help"}
    shared = {**described, "maxlength": fact.longest, "autocomplete": "off"}
    if fact.lines > 1:
        control = tag("textarea", rows=fact.lines, **shared)
    else:
        control = tag("div", tag("input", type="text", **shared), class_="field")
    return tag(
        "div",
        tag("label", fact.title, for_=identity),
        control,
        tag("p", fact.help, class_="help", id=f"{identity}-help"),
        class_="ask-row",
        data_kind="words",
    )
