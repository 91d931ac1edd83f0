"""Make build/runtime: Pyodide, the standard library it needs, and the calculators.

Everything is bytecode made inside Pyodide and only what answering uses, so that a browser
starts Python in about a second. Run by the environment's Python; see scripts/README.md.
"""

import hashlib
import json
import shutil
import sys
import zipfile
from pathlib import Path
from typing import Any

from compress import precompress
from environment import NODE_MODULES, esbuild, node, pyodide_build
from steps import BUILD, ROOT, StepFailed, files_under, fingerprint, main, run, step

sys.path.insert(0, str(ROOT))
from calculators import units
from calculators.outputs.browser import reply

WHEELS, BYTECODE, RUNTIME = BUILD / "wheels", BUILD / "bytecode", BUILD / "runtime"
PYODIDE = NODE_MODULES / "pyodide"
SCRIPTS = [
    ROOT / "scripts" / name
    for name in (
        "build_runtime.py",
        "compile_archives.py",
        "every_question.py",
        "in_pyodide.mjs",
        "make_snapshot.mjs",
        "prepare_snapshot.py",
        "trace_used_files.py",
    )
]

WORKER = [ROOT / "docs/assets/js" / name for name in ("worker.js", "snapshot.js")]


def in_pyodide(*words: str | Path, or_else: str) -> str:
    """Run in_pyodide.mjs with these words and give what it printed."""
    return run([node(), "scripts/in_pyodide.mjs", "--optimize", *words], or_else=or_else)


def compile_archives(archives: list[Path]) -> None:
    """Leave the bytecode of wheels and zips in build/bytecode."""
    BYTECODE.mkdir(parents=True, exist_ok=True)
    copies = [Path(shutil.copy(archive, BYTECODE)) for archive in archives]
    inside = [copy.relative_to(ROOT).as_posix() for copy in copies]
    words = ("scripts/compile_archives.py", *inside)
    in_pyodide(*words, or_else="Compiling to bytecode failed.")
    for copy in copies:
        old = copy if copy.suffix == ".whl" else copy.with_name(copy.name + ".old")
        old.unlink()


def standard_library() -> None:
    """Compile the standard library; compress Pyodide."""
    shutil.rmtree(BYTECODE, ignore_errors=True)
    compile_archives([PYODIDE / "python_stdlib.zip"])
    version = json.loads((PYODIDE / "package.json").read_text())["version"]
    folder = BYTECODE / "pyodide" / f"pyodide-{version}"
    folder.mkdir(parents=True)
    for name in ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm"):
        precompress(Path(shutil.copyfile(PYODIDE / name, folder / name)))


def unit_lines() -> str:
    """Write what pint says of every unit as a module, so that a browser needs no pint."""
    lines = {name: units._line(name) for name in units.UNITS}
    return f"LINES = {lines!r}\n"


def our_wheel() -> Path:
    """Build the wheel of calculators/, add the unit lines and compile it."""
    for old in [*WHEELS.glob("calculators-*"), *BYTECODE.glob("calculators-*")]:
        old.unlink()
    command = [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", WHEELS]
    run(command, or_else="The wheel of calculators/ could not be built.")
    wheel = next(WHEELS.glob("calculators-*.whl"))
    with zipfile.ZipFile(wheel, "a") as opened:
        opened.writestr("calculators/unit_lines.py", unit_lines())
    compile_archives([wheel])
    return next(BYTECODE.glob("calculators-*.whl"))


def pack(archives: list[Path], out: Path, wanted=lambda name: True) -> None:
    """Copy members into one archive: sorted, without dates, stored so that HTTP compresses."""
    with zipfile.ZipFile(out, "w", zipfile.ZIP_STORED) as made:
        for archive in archives:
            with zipfile.ZipFile(archive) as source:
                for name in sorted(source.namelist()):
                    if wanted(name) and not name.endswith("/"):
                        made.writestr(zipfile.ZipInfo(name), source.read(name))


def runtime() -> None:
    """Trace what answering uses, pack that, and make the worker that starts it."""
    new = BUILD / "runtime.new"
    shutil.rmtree(new, ignore_errors=True)
    shutil.copytree(BYTECODE / "pyodide", new)
    pyodide = next(new.iterdir())
    whole, whole_stdlib = our_wheel(), BYTECODE / "python_stdlib.zip"
    options = ("--stdlib", whole_stdlib, "--app", whole, "scripts/trace_used_files.py")
    traced = in_pyodide(*options, or_else="The calculators do not answer inside Pyodide.")
    used = json.loads(traced)
    (BYTECODE / "used.json").write_text(traced)
    stdlib, app = new / "python.zip", new / "calculators.zip"
    pack([whole_stdlib], stdlib, set(used["stdlib"]).__contains__)
    pack([whole], app, lambda name: name.startswith("calculators/"))
    options = ("--stdlib", stdlib, "--app", app, "scripts/every_question.py")
    in_pyodide(*options, or_else="The trimmed runtime does not answer.")

    image = new / "started.bin"
    made = make_snapshot(stdlib, app, image)
    stdlib, app, image = (hashed(path) for path in (stdlib, app, image))
    wasm = f"{pyodide.name}/pyodide.asm.wasm"
    info = json.loads((PYODIDE / "pyodide-lock.json").read_text())["info"]
    manifest = {
        "pyodide": f"{pyodide.name}/",
        "stdlib": stdlib.name,
        "calculators": app.name,
        "snapshot": {"file": image.name, **made},
        "lock": {"info": info, "packages": {}},
        "bytes": {
            name: (new / name).stat().st_size for name in (wasm, stdlib.name, app.name, image.name)
        },
    }
    for path in (stdlib, app, image, worker(manifest, new)):
        precompress(path)
    shutil.rmtree(RUNTIME, ignore_errors=True)
    new.rename(RUNTIME)


def worker(manifest: dict[str, Any], folder: Path) -> Path:
    """Make one file of worker.js and its imports, with the names of all that it fetches.

    Whoever opens it fetches nothing before the runtime itself, and a page of one build never
    meets a worker of another.
    """
    code = esbuild(WORKER[0], "--format=esm", or_else="The worker could not be bundled.")
    path = folder / "worker.js"
    path.write_text(code.replace("__MANIFEST__", json.dumps(manifest)), "utf-8")
    return hashed(path)


def make_snapshot(stdlib: Path, app: Path, out: Path) -> dict[str, str]:
    """Store the memory of a Python that answers; say what tells the worker that it fits."""
    archives = ("--stdlib", stdlib, "--app", app, "--out", out)
    command = [node(), "scripts/make_snapshot.mjs", *archives, "scripts/prepare_snapshot.py"]
    printed = run(command, or_else="The memory snapshot could not be made.")
    question = {"do": "answer", "card": "boiling-point", "entries": {}, "system": "us"}
    ask = json.dumps(question)
    return {**json.loads(printed), "ask": ask, "says": json.loads(reply(ask))["say"]}


def hashed(path: Path) -> Path:
    """Put a hash of the content into the name, so that a browser may keep it for good."""
    digest = hashlib.sha256(path.read_bytes()).hexdigest()[:12]
    return path.rename(path.with_stem(f"{path.stem}-{digest}"))


def build() -> None:
    pyodide_build()
    pinned = [ROOT / f"requirements{which}.txt" for which in ("", "-runtime")]
    pins = fingerprint([*pinned, ROOT / "package-lock.json", *SCRIPTS[:2]])
    step("Bytecode of Python", standard_library, key=pins, makes=BYTECODE)
    ours = [*files_under(ROOT / "calculators"), *SCRIPTS, *WORKER, ROOT / "pyproject.toml"]
    key = fingerprint(ours, pins)
    step("Browser runtime", runtime, key=key, makes=RUNTIME)
    if not any(RUNTIME.glob("worker-*.js")):
        raise StepFailed("The browser runtime is not whole: remove build/ and run this again.")


if __name__ == "__main__":
    main(build)
