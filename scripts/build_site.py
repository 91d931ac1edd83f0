"""Build the pages with MkDocs, put the browser runtime among them and make them work offline.

    build_site.py [--address https://guide.example/path/ --to FOLDER]

Run by the environment's Python, after scripts/build_runtime.py. Without arguments it fills
build/site, for this machine; publish.py gives both.
"""

import argparse
import shutil
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

from build_runtime import RUNTIME
from bundle_assets import bundle
from compress import precompress
from environment import node
from host_files import write_headers
from offline import write_service_worker
from steps import BUILD, ROOT, files_under, fingerprint, main, run, step

SITE = BUILD / "site"
VENDOR = ROOT / "docs" / "assets" / "vendor"
LOCAL = "http://localhost:8000/"  # where serve.py shows the site
UNUSED = ("stylesheets", "images", "javascripts/lunr")  # of the theme: no page of ours asks for it
PACKED = {"", ".br", ".gz", ".png", ".woff2"}  # compressing these gains nothing ("": _headers)


def place_assets() -> None:
    """Fill docs/assets/vendor with the fonts and the libraries."""
    command = [sys.executable, "scripts/place_assets.py"]
    run(command, or_else="The fonts and the libraries could not be placed.")


def make_site(to: Path, address: str = LOCAL) -> None:
    """Build beside the old site and change over at the end, so that a server never sees half."""
    new = to.with_name(to.name + ".new")
    command = [sys.executable, "-m", "mkdocs", "build", "--strict", "--quiet", "--site-dir", new]
    run(
        command,
        or_else="MkDocs could not build the pages.",
        env={
            "NO_MKDOCS_2_WARNING": "1",
            "SITE_ADDRESS": address,
            "SOURCE_DATE_EPOCH": "315532800",
        },
    )
    shutil.copytree(RUNTIME, new / "assets" / "runtime", dirs_exist_ok=True)
    draw = [node(), "scripts/draw_icons.mjs", new / "assets" / "icons"]
    run(draw, or_else="The icons could not be drawn.")
    leave_out_unused(new)
    bundle(new)
    write_headers(new, address)
    write_service_worker(new)
    if to != SITE:
        compress(new)
    shutil.rmtree(to, ignore_errors=True)
    new.rename(to)


def leave_out_unused(site: Path) -> None:
    """Take out of the theme what no page of ours asks for, so that no device keeps it."""
    for name in UNUSED:
        shutil.rmtree(site / "assets" / name, ignore_errors=True)
    for path in (*site.rglob("*.map"), site / "sitemap.xml.gz"):
        path.unlink(missing_ok=True)


def compress(site: Path) -> None:
    """Write compressed forms of all that gains by it, as small as they get."""
    paths = [path for path in files_under(site) if path.suffix not in PACKED]
    with ThreadPoolExecutor() as threads:
        list(threads.map(lambda path: precompress(path, quality=11), paths))


def build() -> None:
    parser = argparse.ArgumentParser(description="Build the pages of the site.")
    parser.add_argument("--address", default=LOCAL)
    parser.add_argument("--to", type=Path, default=SITE)
    options = parser.parse_args()
    locked = [ROOT / "package-lock.json", ROOT / "requirements.txt"]
    key = fingerprint([*locked, ROOT / "scripts" / "place_assets.py"])
    stamp = BUILD / "vendor.made-from"
    step("Fonts and libraries", place_assets, key=key, makes=VENDOR, stamp=stamp)
    if options.to != SITE:
        make_site(options.to.absolute(), options.address)
        return
    folders = ("calculators", "docs", "mkdocs.yml", "scripts", "tests/published_values")
    written = files_under(*(ROOT / name for name in folders))
    key = fingerprint([*locked, *written, *RUNTIME.glob("worker-*.js")])
    step("Pages", lambda: make_site(SITE), key=key, makes=SITE)


if __name__ == "__main__":
    main(build)
