"""Asking a card for a right answer, once for the same entries however often it is needed."""

import json
from functools import lru_cache

from calculators.cards import BY_SLUG
from calculators.evaluate import Evaluation, evaluate
from calculators.teaching.question import Asked

KEPT = 1024  # answers; marking asks the same one several times, variants of a set share many


def answered(asked: Asked, *, system: str = "us") -> Evaluation:
    """Ask the card that knows the right answer.

    Parameters
    ----------
    asked : Asked
        The card and what to enter.
    system : str
        "us" or "si": the units of the wording.

    Returns
    -------
    Evaluation
        What :func:`calculators.evaluate.evaluate` gives, kept for the next time.

    Raises
    ------
    Complaints
        If the card cannot use the entries.
    """
    return _answered(asked.card, json.dumps(asked.entries, ensure_ascii=False), system)


@lru_cache(maxsize=KEPT)
def _answered(card: str, entries: str, system: str) -> Evaluation:
    return evaluate(BY_SLUG[card], json.loads(entries), system=system)
