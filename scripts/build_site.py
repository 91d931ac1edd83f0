"""Build the pages with MkDocs into build/site and put the browser runtime among them.

Run by the environment's Python, after scripts/build_runtime.py.
"""

import shutil
import sys

from build_runtime import RUNTIME
from steps import BUILD, ROOT, files_under, fingerprint, main, run, step

SITE = BUILD / "site"
VENDOR = ROOT / "docs" / "assets" / "vendor"


def place_assets() -> None:
    """Fill docs/assets/vendor with the fonts and the chart library."""
    command = [sys.executable, "scripts/place_assets.py"]
    run(command, or_else="The fonts and the chart library could not be placed.")


def pages() -> None:
    """Build beside the old site and change over at the end, so that a server never sees half."""
    new = BUILD / "site.new"
    command = [sys.executable, "-m", "mkdocs", "build", "--strict", "--quiet", "--site-dir", new]
    run(
        command,
        or_else="MkDocs could not build the pages.",
        env={"NO_MKDOCS_2_WARNING": "1", "SOURCE_DATE_EPOCH": "315532800"},
    )
    shutil.copytree(RUNTIME, new / "assets" / "runtime", dirs_exist_ok=True)
    shutil.rmtree(SITE, ignore_errors=True)
    new.rename(SITE)


def build() -> None:
    locked = [ROOT / "package-lock.json", ROOT / "requirements.txt"]
    key = fingerprint([*locked, ROOT / "scripts" / "place_assets.py"])
    stamp = BUILD / "vendor.made-from"
    step("Fonts and chart library", place_assets, key=key, makes=VENDOR, stamp=stamp)
    folders = ("calculators", "docs", "mkdocs.yml", "scripts", "tests/published_values")
    written = files_under(*(ROOT / name for name in folders))
    key = fingerprint([*locked, *written, RUNTIME / "manifest.js"])
    step("Pages", pages, key=key, makes=SITE)


if __name__ == "__main__":
    main(build)
