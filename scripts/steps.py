"""Say what is being done, do it once, and fail in one sentence.

Standard library only: this runs before anything is installed.
"""

import hashlib
import os
import subprocess
import sys
import time
from collections.abc import Callable, Iterable, Mapping
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
BUILD = ROOT / "build"


class StepFailed(Exception):
    """A step could not be done; the message is the sentence to show."""


def say(text: str) -> None:
    print(text, flush=True)


def files_under(*paths: Path) -> list[Path]:
    """Every file of the given files and folders, sorted; caches left out."""
    found: list[Path] = []
    for path in paths:
        inside = path.rglob("*") if path.is_dir() else [path]
        found += [p for p in inside if p.is_file() and "__pycache__" not in p.parts]
    return sorted(found)


def fingerprint(paths: Iterable[Path], *also: str) -> str:
    """Hash the names and the contents of files, and any other words."""
    total = hashlib.sha256("\0".join(also).encode())
    for path in paths:
        total.update(os.path.relpath(path, ROOT).encode() + b"\0")
        total.update(hashlib.sha256(path.read_bytes()).digest())
    return total.hexdigest()


def step(
    title: str, do: Callable[[], object], *, key: str, makes: Path, stamp: Path | None = None
) -> None:
    """Do a piece of set-up unless what it makes is there, made from the same inputs.

    ``key`` is the fingerprint of the inputs. It is kept in ``stamp``, by default beside
    what is made.
    """
    stamp = stamp or makes.with_name(makes.name + ".made-from")
    if makes.exists() and stamp.exists() and stamp.read_text() == key:
        say(f"  {title}: unchanged")
        return
    say(f"  {title} ...")
    began = time.monotonic()
    do()
    stamp.parent.mkdir(parents=True, exist_ok=True)
    stamp.write_text(key)
    say(f"  {title}: done in {time.monotonic() - began:.1f} s")


def run(command: list[str | Path], *, or_else: str, env: Mapping[str, str] | None = None) -> str:
    """Run a tool quietly and return what it printed.

    When it fails, ``or_else`` is the sentence; the tool's own words go to build/log.
    """
    name = Path(command[0]).name
    try:
        done = subprocess.run(
            [str(word) for word in command],
            cwd=ROOT,
            env={**os.environ, **(env or {})},
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
            encoding="utf-8",
            errors="replace",
        )
    except OSError as error:
        raise StepFailed(f"{or_else} ({name} did not start: {error.strerror})") from None
    if done.returncode:
        log = BUILD / "log" / f"{name}.txt"
        log.parent.mkdir(parents=True, exist_ok=True)
        log.write_text(done.stdout, encoding="utf-8")
        raise StepFailed(f"{or_else} {_gist(done.stdout)}(All of it: {log.relative_to(ROOT)})")
    return done.stdout


def _gist(printed: str) -> str:
    """Pick the line of a tool's output that says what was wrong: its last error, or its last."""
    lines = [line.strip() for line in printed.splitlines() if line.strip()]
    errors = [line for line in lines if line.startswith("ERROR") or "Error: " in line]
    gist = (errors or lines or [""])[-1].removeprefix("ERROR").lstrip(" -:")[:300]
    return f"It said: {gist} " if gist else ""


def main(do: Callable[[], int | None]) -> None:
    """Run a script's body; turn a failed step or Ctrl-C into a sentence and a status."""
    try:
        sys.exit(do() or 0)
    except StepFailed as failed:
        sys.exit(f"\n{failed}")
    except KeyboardInterrupt:
        sys.exit("\nStopped.")
