"""Print which library files answering needs.

    node scripts/in_pyodide.mjs --app ZIP scripts/trace_used_files.py

Runs inside Pyodide: asks every question, then looks at which modules were imported and
which files were opened. Nobody keeps a list of modules by hand, apart from the few below.
"""

import importlib
import json
import site
import sys

# Wanted when something goes wrong, which the questions cannot bring about.
ALSO = ("encodings.ascii", "encodings.latin_1", "linecache", "tokenize", "traceback", "warnings")

# Taken along only because others import them if they are there, and do without if not.
LEFT_OUT = ("bz2", "compression", "lzma", "ssl")

STDLIB = "/lib/python{}{}.zip/".format(*sys.version_info)
PACKAGES = site.getsitepackages()[0] + "/"
opened: set[str] = set()


def note(event: str, details: tuple) -> None:
    """Keep the name of every file that is opened."""
    if event == "open" and isinstance(details[0], str):
        opened.add(details[0])


sys.addaudithook(note)
every_question = importlib.import_module("every_question")
for asked in every_question.ASKABLE:
    every_question.replies(asked)
for name in ALSO:
    importlib.import_module(name)

specs = [getattr(module, "__spec__", None) for module in [*sys.modules.values()]]
used = opened | {str(spec.origin) for spec in specs if spec}


def under(folder: str) -> list[str]:
    """Give the used files of a folder or archive by their names inside it."""
    names = (name.removeprefix(folder) for name in used if name.startswith(folder))
    return sorted(name for name in names if name.split("/")[0].split(".")[0] not in LEFT_OUT)


print(json.dumps({"stdlib": under(STDLIB), "packages": under(PACKAGES)}))
