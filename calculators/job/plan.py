"""The steps of a job in the order of the work, and which results feed later ones."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from calculators.card import Quantity
from calculators.cards import BY_SLUG
from calculators.errors import CalculatorError
from calculators.evaluate import evaluate


@dataclass(frozen=True, kw_only=True)
class JobStep:
    """A step of the record: what it shows, the cards that belong to it, what it still wants."""

    key: str
    title: str
    cards: tuple[str, ...]
    missing: str
    needed: bool = True


STEPS = (
    JobStep(
        key="volume",
        title="Inside volume",
        cards=("inside-volume",),
        missing="Without a volume a decay test cannot say how small a leak it could see.",
    ),
    JobStep(
        key="gauge",
        title="Gauge",
        cards=("gauge-check", "convert"),
        missing="The gauge has not been proved on this job.",
    ),
    JobStep(
        key="pump",
        title="Pump",
        cards=("pump-check",),
        missing="The pump has not been proved on this job.",
    ),
    JobStep(
        key="rig",
        title="Rig",
        cards=("rig-check", "pumping-speed", "conductance", "compare-rigs"),
        missing="The rig has not been proved on this job.",
    ),
    JobStep(
        key="pull",
        title="Pull",
        cards=(
            "pull-down",
            "boiling-point",
            "saturation-pressure",
            "moisture",
            "triple-evacuation",
            "altitude",
        ),
        missing="Nothing is written of the pull.",
    ),
    JobStep(
        key="hold",
        title="Hold",
        cards=("hold-time",),
        missing="How long it had to hold is not written.",
    ),
    JobStep(
        key="decay",
        title="Decay test",
        cards=("decay", "leak-rate"),
        missing="There is no decay test: nothing shows that it is tight and dry.",
    ),
)
STEP_OF = {slug: step.key for step in STEPS for slug in step.cards}

# (card, input) takes what another card of the job was told or found.
_VOLUME = ("inside-volume", "volume")
_STEP = ("gauge-check", "resolution")
_ACCURACY = ("gauge-check", "accuracy")
_BLANK_OFF = ("pump-check", "blank_off")
_PUMP_SPEED = ("pump-check", "rated_speed")
_PATH = ("rig-check", "path")
FEEDS: Mapping[tuple[str, str], tuple[str, str]] = {
    ("decay", "volume"): _VOLUME,
    ("decay", "resolution"): _STEP,
    ("hold-time", "volume"): _VOLUME,
    ("hold-time", "resolution"): _STEP,
    ("leak-rate", "volume"): _VOLUME,
    ("leak-rate", "resolution"): _STEP,
    ("moisture", "volume"): _VOLUME,
    ("moisture", "ultimate_pressure"): _BLANK_OFF,
    ("moisture", "pump_speed"): _PUMP_SPEED,
    ("pull-down", "volume"): _VOLUME,
    ("pull-down", "ultimate_pressure"): _BLANK_OFF,
    ("pull-down", "pump_speed"): _PUMP_SPEED,
    ("pull-down", "path"): _PATH,
    ("compare-rigs", "volume"): _VOLUME,
    ("pumping-speed", "ultimate_pressure"): _BLANK_OFF,
    ("pumping-speed", "pump_speed"): _PUMP_SPEED,
    ("pumping-speed", "path"): _PATH,
    ("pump-check", "accuracy"): _ACCURACY,
    ("pump-check", "resolution"): _STEP,
    ("rig-check", "ultimate_pressure"): _BLANK_OFF,
    ("rig-check", "pump_speed"): _PUMP_SPEED,
    ("rig-check", "resolution"): _STEP,
    ("rig-check", "volume"): _VOLUME,
    ("triple-evacuation", "volume"): _VOLUME,
}


def latest(job: Mapping[str, Any], card: str) -> Mapping[str, Any] | None:
    """Give the job's newest result of a card, or nothing."""
    results = in_order(each for each in job["results"] if each["card"] == card)
    return results[-1] if results else None


def in_order(results: Iterable[Mapping[str, Any]]) -> list[Mapping[str, Any]]:
    """Results by the moment they were added, whatever zone their clock was in."""
    return sorted(results, key=lambda each: datetime.fromisoformat(each["when"]))


def fed_entries(job: Mapping[str, Any], card: str) -> dict[str, Any]:
    """Entries that a job already knows for a card, as texts that a person could have typed.

    Parameters
    ----------
    job : mapping
        A checked job file.
    card : str
        Slug of the card to fill.

    Returns
    -------
    dict
        Input name to text, or rows; only what the job knows.
    """
    entries: dict[str, Any] = {}
    for (slug, name), (source, wanted) in FEEDS.items():
        if slug == card and (result := latest(job, source)):
            entry = _known(result, wanted)
            if entry:
                entries[name] = entry
    return entries


def _known(result: Mapping[str, Any], wanted: str) -> Any:
    """An entry of a result as it was typed, or an output in its own SI unit."""
    card = BY_SLUG[result["card"]]
    if any(each.name == wanted for each in card.inputs):
        default = next(getattr(i, "default", "") for i in card.inputs if i.name == wanted)
        return result["entries"].get(wanted) or default
    try:
        evaluation = evaluate(card, result["entries"], system=result["system"])
    except CalculatorError:
        return None
    value = evaluation.answer.outputs[wanted]
    out = next(each for each in card.outputs if each.name == wanted)
    return None if value is None else evaluation.say(f"{{{wanted}:{out.us}|{out.si};5}}")


def names(entries: Mapping[str, Any], card: str) -> str:
    """Name the inputs that a job fills, in the card's own words."""
    labels = [
        each.label.lower()
        for each in BY_SLUG[card].inputs
        if each.name in entries and (isinstance(each, Quantity) or each.name == "path")
    ]
    return ", ".join(labels)
