"""HTML files as PDF, by a Chromium where the machine has one; nothing else needs it."""

import os
import shutil
import subprocess
import tempfile
from pathlib import Path

NAMES = (
    "chromium",
    "chromium-browser",
    "google-chrome",
    "google-chrome-stable",
    "chrome",
    "microsoft-edge",
    "msedge",
)
LONGEST_WAIT = 600  # s, for one file


def find_browser() -> str | None:
    """Find a Chromium: the one that BROWSER_BIN names, or one on the PATH."""
    named = os.environ.get("BROWSER_BIN")
    return shutil.which(named) if named else next(filter(None, map(shutil.which, NAMES)), None)


def print_to_pdf(browser: str, page: Path, target: Path) -> bool:
    """Print an HTML file as PDF; say whether that worked."""
    with tempfile.TemporaryDirectory() as profile:
        command = [
            browser, "--headless", "--disable-gpu", "--no-first-run", "--disable-sync",
            "--disable-background-networking", "--disable-component-update", "--disable-quic",
            "--no-pdf-header-footer", f"--user-data-dir={profile}", f"--print-to-pdf={target}",
        ]  # fmt: skip
        if hasattr(os, "geteuid") and os.geteuid() == 0:
            command.append("--no-sandbox")  # Chromium has no sandbox for root
        try:
            done = subprocess.run(
                [*command, page.resolve().as_uri()], capture_output=True, timeout=LONGEST_WAIT
            )
        except (OSError, subprocess.TimeoutExpired):
            return False
    return done.returncode == 0 and target.exists()
