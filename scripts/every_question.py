"""Ask the worker's entry point every question that a card suggests; print the replies.

Runs natively and inside Pyodide alike: the build asks to find out which modules answering
needs, the tests ask to compare the two.
"""

import json
from collections.abc import Iterator

from calculators.cards import CARDS
from calculators.outputs.browser import reply

NONSENSE = ("", "many", "-1", "0", "nan", "inf", "1e400", "5 furlong", "1,2,3", "é\x00")


def questions() -> Iterator[tuple[str, dict]]:
    """Yield a name and a question: defaults, examples, conversions and bad entries."""
    for card in CARDS:
        filled = {"default": {}}
        filled |= {f"example {n}": dict(e.entries) for n, e in enumerate(card.examples, 1)}
        filled |= {
            f"{each.name} = {text!r}": {each.name: text}
            for each in card.inputs
            for text in NONSENSE
        }
        for what, entries in filled.items():
            for system in ("us", "si"):
                for do in ("answer", "convert"):
                    question = {"do": do, "card": card.slug, "entries": entries, "system": system}
                    question["data"] = True
                    yield f"{card.slug}, {what}, {do}, {system}", question


def replies() -> dict[str, dict]:
    """Answer them all."""
    return {name: json.loads(reply(json.dumps(asked))) for name, asked in questions()}


if __name__ == "__main__":
    print(json.dumps(replies(), ensure_ascii=False, indent=1))
