"""The practice bench as the page is built with it: everything shut, nothing running."""

from calculators import wording
from calculators.outputs.bench import UNITS
from calculators.outputs.element import Element, tag, text_of
from calculators.physics.constants import STANDARD_ATMOSPHERE
from calculators.teaching.bench_actions import CONTROLS, Control
from calculators.teaching.bench_faults import FAULTS
from calculators.teaching.bench_session import LONGEST, TICK, shown

SPEEDS = (1, 10, 60, 240)
VIEWS = (("whole", "Whole"), ("last", "Since last action"))


def bench() -> str:
    """The bench as it stands before the first question."""
    return text_of(
        tag(
            "practice-bench", _case(), _instrument(), _controls(), _log(), _naming(),
            state="static", data_tick=f"{TICK:g}",
            data_longest=f"{LONGEST:g}", data_search_exclude=True,
        )
    )  # fmt: skip


def _case() -> Element:
    return tag(
        "section",
        tag("div", tag("p", "A case is being set up.", data_part="situation"),
            class_="bench-situation"),
        tag(
            "form",
            tag("label", "Case", for_="bench-case"),
            tag("div", tag("input", id="bench-case", name="case", inputmode="numeric",
                           autocomplete="off", aria_describedby="bench-complaint"),
                class_="field"),
            tag("button", "Set up", type="submit"),
            tag("button", "Another", type="button", data_bench="another",
                aria_label="Another case"),
            tag("p", class_="complaint", id="bench-complaint", data_part="complaint", hidden=True),
            class_="bench-choose", novalidate=True,
        ),
        class_="bench-case", aria_label="The case",
    )  # fmt: skip


def _instrument() -> Element:
    """Gauge, clock and trace: what stays in sight while the controls are pressed."""
    unit = UNITS["us"]
    return tag(
        "section",
        tag("p", tag("b", wording.number(shown(STANDARD_ATMOSPHERE, unit)), data_part="reading"),
            " ", tag("span", unit, data_part="unit"), class_="bench-reading"),
        tag("p", tag("b", "0:00:00", data_part="clock"), " ",
            tag("span", "on the bench's clock"), class_="bench-clock"),
        tag("figure", tag("div", class_="plot"), tag("p", class_="bench-readout", role="status"),
            class_="chart"),
        tag(
            "div",
            tag("button", "Stop", type="button", data_speed="0", aria_pressed="true",
                disabled=True),
            [tag("button", f"{n}×", type="button", data_speed=n, aria_pressed="false",
                 aria_label=f"Run {n} times as fast as life", disabled=True) for n in SPEEDS],
            class_="bench-speeds", role="group", aria_label="How fast time goes",
        ),
        tag("p", class_="bench-says", data_part="says", role="status"),
        class_="bench-instrument", aria_label="Gauge, clock and trace",
    )  # fmt: skip


def _controls() -> Element:
    views = [
        tag("button", label, type="button", data_view=view,
            aria_pressed="true" if view == "whole" else "false")
        for view, label in VIEWS
    ]  # fmt: skip
    trace = tag(
        "div",
        tag("p", "Trace", id="bench-view"),
        tag("div", views, class_="bench-choices"),
        role="group", aria_labelledby="bench-view", class_="bench-control bench-view",
    )  # fmt: skip
    return tag(
        "section", trace, [_control(each) for each in CONTROLS],
        class_="bench-controls", aria_label="What you can do",
    )  # fmt: skip


def _control(control: Control) -> Element:
    one = len(control.choices) == 1
    buttons = [
        tag("button", label, type="button", data_control=control.key, data_value=value,
            aria_pressed=None if one else "false", disabled=True)
        for value, label, _ in control.choices
    ]  # fmt: skip
    name = f"bench-{control.key}"
    found = tag("span", "as you found it", class_="hint", data_part="as-found")
    return tag(
        "div",
        tag("p", control.label, None if control.seen else " ", None if control.seen else found,
            id=name),
        tag("div", buttons, class_="bench-choices"),
        role="group", aria_labelledby=name, class_="bench-control", data_of=control.key,
    )  # fmt: skip


def _log() -> Element:
    return tag(
        "section",
        tag("h2", "What you did", id="bench-log"),
        tag("ol", data_part="log"),
        tag("p", "Nothing yet. Switch the pump on and let time run.", data_part="no-log"),
        class_="bench-log", aria_labelledby="bench-log",
    )  # fmt: skip


def _naming() -> Element:
    options = [
        tag("label", tag("input", type="radio", name="named", value=each.key),
            tag("span", each.name), class_="quiz-option")
        for each in FAULTS
    ]  # fmt: skip
    return tag(
        "section",
        tag(
            "details",
            tag("summary", "Say what is wrong"),
            tag(
                "form",
                tag("fieldset", tag("legend", "What is wrong here?"), options),
                tag("button", "Mark it", type="submit", class_="quiz-check"),
                class_="bench-name", novalidate=True,
            ),
        ),
        tag("div", data_part="mark", aria_live="polite"),
        tag("button", "Take another case", type="button", data_bench="another",
            class_="bench-next", hidden=True),
        class_="bench-naming", aria_label="Say what is wrong",
    )  # fmt: skip
