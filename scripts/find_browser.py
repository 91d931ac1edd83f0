"""Find a Chromium for the browser tests, installing one where that can be done."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

from steps import StepFailed, main, say

NAMES = (
    "chromium",
    "chromium-browser",
    "google-chrome",
    "google-chrome-stable",
    "chrome",
    "microsoft-edge",
)
MAC = ("/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
       "/Applications/Chromium.app/Contents/MacOS/Chromium")  # fmt: skip
# Headless, quiet, and asking nothing of the network by itself.
ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


def works(program: str) -> bool:
    """Say whether a program starts at all: some are only a hint to install something."""
    try:
        return (
            subprocess.run([program, "--version"], capture_output=True, timeout=60).returncode == 0
        )
    except (OSError, subprocess.TimeoutExpired):
        return False


def find() -> str | None:
    """Look at BROWSER_BIN, the PATH, the usual places, and Playwright's own."""
    named = os.environ.get("BROWSER_BIN")
    if named:
        if works(named):
            return named
        raise StepFailed(f"BROWSER_BIN names {named}, which does not start.")
    for place in [*filter(None, map(shutil.which, NAMES)), *MAC]:
        if Path(place).exists() and works(place):
            return place
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        own = playwright.chromium.executable_path
    return own if Path(own).exists() else None


def install() -> None:
    """Try the system's packages, if allowed to, and then Playwright's download."""
    tries = [[[sys.executable, "-m", "playwright", "install", "--only-shell", "chromium"]]]
    if shutil.which("apt-get") and os.geteuid() == 0:
        get = ["apt-get", "install", "--yes", "--no-install-recommends", "chromium"]
        tries.insert(0, [["apt-get", "update"], get])
    quiet = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    for commands in tries:
        say(f"  Chromium: installing with {Path(commands[-1][0]).name} ...")
        runs = (subprocess.run(c, capture_output=True, timeout=600, env=quiet) for c in commands)
        if all(run.returncode == 0 for run in runs) and find():
            return


def browser() -> str:
    """Give a Chromium that works, or say how to get one."""
    found = find()
    if not found:
        install()
        found = find()
    if not found:
        raise StepFailed(
            "The browser tests need Chromium, and it could not be installed: install it, "
            "or set BROWSER_BIN to a Chrome or Edge."
        )
    return found


if __name__ == "__main__":
    main(lambda: say(f"  Chromium: {browser()}"))
