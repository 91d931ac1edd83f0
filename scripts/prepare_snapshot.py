"""Bring a Python up to where it answers; its memory is then the snapshot.

Run inside Pyodide by make_snapshot.mjs. Every card answers once, in both systems of units, so
that what the first answer has to make is made already.
"""

import gc
import json
import os
import random
import sys

from calculators.cards import CARDS
from calculators.outputs.browser import reply

for card in CARDS:
    for system in ("us", "si"):
        asked = {"do": "answer", "card": card.slug, "entries": {}, "system": system}
        if not json.loads(reply(json.dumps(asked)))["ok"]:
            raise SystemExit(f"{card.slug} does not answer its own example.")

# Nothing of the machine or the moment stays behind; the worker seeds the generator anew.
random.seed(0)
sys.argv[:] = [""]
sys.path.remove("")  # Pyodide puts it in front again when it restores
wanted = {
    "HOME",
    "LANG",
    "LD_LIBRARY_PATH",
    "LOGNAME",
    "PATH",
    "PWD",
    "PYTHONHASHSEED",
    "PYTHONINSPECT",
    "USER",
    "_",
}
if extra := set(os.environ) - wanted:
    raise SystemExit(f"The environment holds what the snapshot must not: {sorted(extra)}")
del asked, card, extra, system, wanted
gc.collect()
