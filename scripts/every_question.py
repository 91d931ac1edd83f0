"""Ask the worker's entry point every question that a card suggests; print the replies.

Runs natively and inside Pyodide alike: the build asks to find out which modules answering
needs, the tests ask to compare the two.
"""

import json
from collections.abc import Iterator

from calculators.card import Card
from calculators.cards import CARDS
from calculators.outputs.browser import reply

NONSENSE = ("", "many", "-1", "0", "nan", "inf", "1e400", "5 furlong", "1,2,3", "é\x00")


def questions(card: Card) -> Iterator[tuple[str, dict]]:
    """Yield a name and a question: defaults, examples, conversions and bad entries."""
    filled = {"default": {}}
    filled |= {f"example {n}": dict(e.entries) for n, e in enumerate(card.examples, 1)}
    for what, entries in filled.items():
        for system in ("us", "si"):
            for do in ("answer", "convert"):
                question = {"do": do, "card": card.slug, "entries": entries, "system": system}
                yield f"{card.slug}: {do}, {what}, {system}", {**question, "data": True}
    for each in card.inputs:
        for text in NONSENSE:
            question = {"do": "answer", "card": card.slug, "entries": {each.name: text}}
            yield f"{card.slug}: {each.name} = {text!r}", {**question, "system": "us"}


def replies(card: Card) -> dict[str, dict]:
    """Answer all of a card's questions."""
    return {name: json.loads(reply(json.dumps(asked))) for name, asked in questions(card)}


if __name__ == "__main__":
    everything = {name: said for card in CARDS for name, said in replies(card).items()}
    print(json.dumps(everything))
