"""Compile wheels and zips to bytecode.

    node scripts/in_pyodide.mjs --optimize scripts/compile_archives.py ARCHIVE ...

Runs inside Pyodide, whose bytecode it is to be, and leaves the work to pyodide-build
(``_py_compile_archive``, what its own ``pyodide py-compile`` calls). Each result is beside
its archive: a wheel gets the tag of Pyodide's Python, a zip keeps its name.
"""

import sys
from pathlib import Path

sys.path.insert(0, "build/pyodide-build")

from pyodide_build._py_compile import _py_compile_archive

for archive in map(Path, sys.argv[1:]):
    made = _py_compile_archive(archive, verbose=False, compression_level=0)
    if made is None:
        sys.exit(f"{archive.name} could not be compiled.")
