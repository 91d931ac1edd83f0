"""The _headers file of a site: what a host is to say with each file.

Many static hosts read a file of this name and form: a path, then its headers, indented. A host
that does not may be told the same in its own way, or left alone: the pages bring their policy.
"""

import re
from pathlib import Path
from urllib.parse import urlsplit

from content_policy import policy_of

FOREVER = "public, max-age=31536000, immutable"
# A name that changes with the content: a hash in it, or a folder with a version.
NAMED_BY_CONTENT = re.compile(r"-[0-9a-f]{12}\.|/pyodide-[\d.]+/")


def policy(site: Path) -> str:
    """Give the one content policy that fits every page of the site."""
    pages = [page.read_text("utf-8") for page in sorted(site.rglob("*.html"))]
    return f"{policy_of(*pages)}; frame-ancestors 'none'"


def write_headers(site: Path, address: str) -> None:
    """Write _headers for a site that will be at this address."""
    base = urlsplit(address).path.rstrip("/")
    rules = {
        f"{base}/*": [
            f"Content-Security-Policy: {policy(site)}",
            "Referrer-Policy: no-referrer",
            "X-Content-Type-Options: nosniff",
        ]
    }
    for path in sorted((site / "assets").rglob("*")):
        name = f"{base}/{path.relative_to(site).as_posix()}"
        if path.is_file() and path.suffix not in (".br", ".gz"):
            said = [f"Cache-Control: {FOREVER}"] if NAMED_BY_CONTENT.search(name) else []
            said += ["Content-Type: application/wasm"] if path.suffix == ".wasm" else []
            if said:
                rules[name] = said
    text = "\n".join("\n  ".join([path, *said]) for path, said in rules.items())
    (site / "_headers").write_text(text + "\n", "utf-8")


def read_headers(site: Path) -> list[tuple[str, str, str]]:
    """Give the rules of a site's _headers as path, name and value; none if it has none."""
    file, rules, path = site / "_headers", [], ""
    for line in file.read_text("utf-8").splitlines() if file.is_file() else []:
        if line.startswith(" "):
            name, value = line.strip().split(": ", 1)
            rules.append((path, name, value))
        else:
            path = line
    return rules
