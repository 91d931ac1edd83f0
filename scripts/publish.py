"""Make a folder that any static host or plain file server can serve.

    python3 scripts/publish.py --address https://guide.example/path/ [--to build/published]

The address is where the folder will be: its path goes into the page for addresses that do
not exist, the sitemap and the _headers file. Everything else works under any path.
"""

import argparse
from pathlib import Path
from urllib.parse import urlsplit

from serve import build, with_environment
from steps import BUILD, StepFailed, main, say


def publish() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--address", required=True, help="where the site will be")
    parser.add_argument("--to", type=Path, default=BUILD / "published", help="build/published")
    options = parser.parse_args()
    address = options.address.rstrip("/") + "/"
    parts = urlsplit(address)
    if parts.scheme not in ("http", "https") or not parts.netloc:
        raise StepFailed("The address must be whole, such as https://guide.example/path/.")
    folder = options.to.absolute()
    if folder.exists() and not (folder / "service-worker.js").exists() and any(folder.iterdir()):
        raise StepFailed(f"{options.to} holds other things: name an empty or a new folder.")
    build()
    say(f"Publishing for {address}")
    with_environment("build_site.py", "--address", address, "--to", str(folder))
    files = [path for path in folder.rglob("*") if path.is_file()]
    size = sum(path.stat().st_size for path in files)
    say(f"{options.to} is ready to be copied: {len(files)} files, {size / 1e6:.0f} MB.")


if __name__ == "__main__":
    main(publish)
