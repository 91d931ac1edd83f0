"""The page that bench_start.py compares with: plain PyScript, the same calculation.

It is what a reader of PyScript's own documentation would write: one script, one config that
names wheels, Pyodide as it is published. Its files come from the registries that the guide's
come from, lie on this machine, and are compressed as hard as the guide's.
"""

import hashlib
import json
import os
import re
import shutil
import sys
from pathlib import Path

from build_site import compress
from environment import NODE_MODULES, node
from host_files import FOREVER
from steps import BUILD, ROOT, files_under, fingerprint, run, step

HERE = Path(__file__).resolve().parent
PACKAGES = BUILD / "plain-page-packages"  # PyScript, and Lighthouse for bench_lighthouse.py
FOLDER = BUILD / "plain-page"
# Kept by the browser without asking again, as the guide's runtime is.
KEPT = ("core", "pyodide", "wheels")
HEADERS = "".join(f"/{name}/*\n  Cache-Control: {FOREVER}\n" for name in KEPT)
PYODIDE = NODE_MODULES / "pyodide"
NEEDED = ("pint", "flexcache", "flexparser", "platformdirs", "typing-extensions")


def packages() -> Path:
    """Install what only the benchmark needs, and give its node_modules."""
    locked = [HERE / name for name in (".npmrc", "package.json", "package-lock.json")]
    made = PACKAGES / "node_modules"

    def install() -> None:
        PACKAGES.mkdir(parents=True, exist_ok=True)
        for file in locked:
            shutil.copy(file, PACKAGES)
        exe = node()
        npm = shutil.which("npm", path=str(exe.parent))
        path = os.pathsep.join([str(exe.parent), os.environ.get("PATH", "")])
        command = [npm, "ci", "--no-progress", "--prefix", PACKAGES]
        run(command, or_else="The benchmark's packages could not be installed.", env={"PATH": path})

    step("Packages of the benchmark", install, key=fingerprint(locked), makes=made)
    return made


def make() -> Path:
    """Put the page and all that it loads into one folder, and give that."""
    core = packages() / "@pyscript" / "core" / "dist"
    inputs = [*files_under(HERE, ROOT / "calculators"), ROOT / "requirements.txt"]
    key = fingerprint([*inputs, ROOT / "package-lock.json"])
    step("Plain PyScript page", lambda: _make(core), key=key, makes=FOLDER)
    return FOLDER


def _make(core: Path) -> None:
    new = FOLDER.with_name(FOLDER.name + ".new")
    shutil.rmtree(new, ignore_errors=True)
    shutil.copytree(core, new / "core", ignore=shutil.ignore_patterns("*.map"))
    for name in ("index.html", "answer.py"):
        shutil.copy(HERE / name, new)
    lock = json.loads((PYODIDE / "pyodide-lock.json").read_text())
    wheels = _wheels(new / "wheels", lock["packages"]["micropip"]["version"])
    pyodide = new / "pyodide"
    pyodide.mkdir()
    for name in ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip"):
        shutil.copy(PYODIDE / name, pyodide)
    # PyScript installs with micropip, which Pyodide's list of packages has to lead it to.
    micropip = next(wheel for wheel in wheels if wheel.name.startswith("micropip-"))
    wheels.remove(micropip)
    micropip = micropip.rename(pyodide / micropip.name)
    entry = lock["packages"]["micropip"]
    entry["file_name"] = micropip.name
    entry["sha256"] = hashlib.sha256(micropip.read_bytes()).hexdigest()
    (pyodide / "pyodide-lock.json").write_text(json.dumps(lock, separators=(",", ":")))
    config = {
        "interpreter": "/pyodide/pyodide.mjs",
        "packages": [f"/wheels/{wheel.name}" for wheel in wheels],
    }
    (new / "pyscript.json").write_text(json.dumps(config, indent=2))
    (new / "_headers").write_text(HEADERS)
    compress(new)
    shutil.rmtree(FOLDER, ignore_errors=True)
    new.rename(FOLDER)


def _wheels(folder: Path, micropip: str) -> list[Path]:
    """Fetch the wheels that the calculators need and build theirs."""
    pins = dict(re.findall(r"^([\w-]+)==(\S+)", (ROOT / "requirements.txt").read_text(), re.M))
    wanted = [f"micropip=={micropip}", *(f"{name}=={pins[name]}" for name in NEEDED)]
    download = [sys.executable, "-m", "pip", "download", "--quiet", "--no-deps", "--dest", folder]
    download += ["--only-binary=:all:", "--python-version=3.14", "--disable-pip-version-check"]
    run([*download, *wanted], or_else="The wheels of the plain page could not be fetched.")
    build = [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", folder]
    run(build, or_else="The wheel of calculators/ could not be built.")
    return sorted(folder.glob("*.whl"))
