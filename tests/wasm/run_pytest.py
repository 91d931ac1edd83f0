"""Run pytest inside Pyodide, on the very archives that a browser gets.

    node scripts/in_pyodide.mjs --stdlib ZIP --app ZIP tests/wasm/run_pytest.py [ARGUMENTS]

pytest needs more of the standard library than answering does, so the rest of it stands
behind what is shipped. Code of ours that reaches for the rest fails here, as it would there.
"""

import builtins
import importlib
import importlib.abc
import json
import os
import site
import sys
import tempfile
import zipimport
from importlib.machinery import FrozenImporter
from pathlib import Path

WHOLE_STDLIB = "build/bytecode/python_stdlib.zip"
USED = json.loads(Path("build/bytecode/used.json").read_text())


def module_name(file: str) -> str:
    """Turn json/decoder.pyc into json.decoder and json/__init__.pyc into json."""
    return file.rpartition(".")[0].removesuffix("/__init__").replace("/", ".")


SHIPPED = {module_name(file) for file in USED["stdlib"]}
ANSWERING = {module_name(file) for file in USED["packages"]}


class Rest(importlib.abc.MetaPathFinder):
    """Finds what is left out of the shipped standard library."""

    def find_spec(self, name, path=None, target=None):
        """Look the module up at its place in the whole library."""
        folder = "/".join([os.path.abspath(WHOLE_STDLIB), *name.split(".")[:-1]])
        try:
            return zipimport.zipimporter(folder).find_spec(name)
        except zipimport.ZipImportError:
            return None


def asked_by_answering() -> bool:
    """Say whether the nearest code of ours on the stack is part of what a browser runs."""
    frame = sys._getframe(2)
    while frame:
        name = frame.f_globals.get("__name__", "")
        if name in ANSWERING:
            return True
        if name.startswith(("calculators.", "test_", "tests.")):
            return False
        frame = frame.f_back
    return False


def guard_imports(left_out: set[str]) -> None:
    """Make every import of a module that is left out fail where a browser's would."""
    plain = builtins.__import__

    def guarded(name, globals=None, locals=None, fromlist=(), level=0):
        wanted = {name, *(f"{name}.{item}" for item in fromlist or ())}
        if level == 0 and wanted & left_out and asked_by_answering():
            raise ModuleNotFoundError(
                f"{name} is left out of the shipped standard library; "
                "if answering needs it, name it in scripts/trace_used_files.py",
                name=name,
            )
        return plain(name, globals, locals, fromlist, level)

    builtins.__import__ = guarded


sys.meta_path.append(Rest())
zipfile = importlib.import_module("zipfile")
for wheel in sorted(Path("build/wasm-wheels").glob("*.whl")):
    zipfile.ZipFile(wheel).extractall(site.getsitepackages()[0])
importlib.invalidate_caches()
with zipfile.ZipFile(WHOLE_STDLIB) as whole:
    left_out = {module_name(file) for file in whole.namelist()} - SHIPPED
guard_imports({name for name in left_out if not FrozenImporter.find_spec(name)})

os.environ["HYPOTHESIS_STORAGE_DIRECTORY"] = tempfile.mkdtemp()
OPTIONS = ["-p", "no:cacheprovider", "-p", "no:faulthandler", "-o", "pythonpath=tests"]
sys.exit(importlib.import_module("pytest").main([*OPTIONS, *sys.argv[1:]]))
