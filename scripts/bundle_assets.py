"""Make one script and one style sheet of the many that a page is made of, with esbuild.

On a phone's link each file costs a trip, and what imports it a trip before that.
"""

import shutil
from pathlib import Path

from environment import esbuild
from steps import BUILD, ROOT

# From and to the same places whatever the site's folder: esbuild names parts after them too.
SOURCE, BUNDLED = "docs/assets", BUILD / "bundled"
WHOLE = ("js/guide.js", "css/all.css")  # what pages ask for
BY_NAME = ("js/job-file.js", "js/job-store.js")  # parts of it that tests ask for
AS_THEY_ARE = {"early.js"}  # asked for by itself; build_runtime.py packs the worker


def bundle(site: Path) -> None:
    """Bundle the scripts and styles of a built site, and take out what went into them."""
    shutil.rmtree(BUNDLED, ignore_errors=True)
    words = [f"{SOURCE}/{name}" for name in (*WHOLE, *BY_NAME)]
    words += [f"--outdir={BUNDLED.relative_to(ROOT).as_posix()}", f"--outbase={SOURCE}"]
    words += ["--chunk-names=js/[name]-[hash]", "--minify", "--format=esm", "--splitting"]
    words += ["--external:../vendor/*"]  # what is there keeps its address
    esbuild(*words, or_else="The scripts and styles could not be bundled.")
    for path in [*site.glob("assets/js/*.js"), *site.glob("assets/css/*.css")]:
        if path.name not in AS_THEY_ARE:
            path.unlink()
    shutil.copytree(BUNDLED, site / "assets", dirs_exist_ok=True)
