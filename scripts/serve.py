"""Set everything up, build the site and serve it on this machine.

    python3 scripts/serve.py [--port 8000] [--build-only]

Needs Python 3.11 or newer with pip, and nothing else. Each step is skipped when nothing
that it is made from has changed.
"""

import argparse
import subprocess
import sys

from environment import PYTHON, npm_packages, python_packages
from steps import ROOT, main, say


def with_environment(script: str, *words: str) -> None:
    """Run one of our scripts with the environment's Python; it says itself what went wrong."""
    command = [str(PYTHON), f"scripts/{script}", *words]
    status = subprocess.run(command, cwd=ROOT, stdin=subprocess.DEVNULL).returncode
    if status:
        sys.exit(status)


def build(requirements: str = "requirements.txt") -> None:
    """Do every step up to a site in build/site."""
    say("Setting up")
    python_packages(requirements)
    npm_packages()
    say("Building")
    with_environment("build_runtime.py")
    with_environment("build_site.py")


def serve() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--port", type=int, default=8000, help="port on localhost (8000)")
    parser.add_argument("--build-only", action="store_true", help="build, but do not serve")
    options = parser.parse_args()
    build()
    if options.build_only:
        say("The site is in build/site.")
        return
    command = [str(PYTHON), "scripts/site_server.py", "--port", str(options.port)]
    sys.exit(subprocess.run(command, cwd=ROOT).returncode)


if __name__ == "__main__":
    main(serve)
