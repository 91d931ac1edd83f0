"""The service worker of a built site: what it keeps, and its one file.

Workbox does the work; service_worker.js says how, and esbuild makes one file of both.
"""

import base64
import hashlib
import json
from pathlib import Path

from environment import esbuild
from steps import ROOT

SOURCE = ROOT / "scripts" / "service_worker.js"
NAME = "service-worker.js"
FORMS = {".br", ".gz", ".map"}  # other forms of a file, which no page asks for by name
FOR_OTHERS = {NAME, "_headers", "robots.txt", "sitemap.xml"}  # for hosts and search engines


def files_kept(site: Path) -> dict[str, str]:
    """Give the address and the SHA-256 in base64 of every file that a page can ask for."""
    kept = {}
    for path in sorted(site.rglob("*")):
        name = path.relative_to(site).as_posix()
        if path.is_file() and path.suffix not in FORMS and name not in FOR_OTHERS:
            digest = base64.b64encode(hashlib.sha256(path.read_bytes()).digest()).decode()
            kept["./" + name.removesuffix("index.html")] = digest
    return kept


def write_service_worker(site: Path) -> None:
    """Write the service worker at the top of the site, so that its scope is all of it."""
    words = ["--minify", "--format=iife", '--define:process.env.NODE_ENV="production"']
    bundle = esbuild(SOURCE, *words, or_else="The service worker could not be bundled.")
    files = json.dumps(files_kept(site), separators=(",", ":"))
    (site / NAME).write_text(bundle.replace("__FILES__", files), "utf-8")
