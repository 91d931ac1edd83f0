"""Serve a built site on this machine, compressed, with the types browsers insist on.

    python scripts/site_server.py [--port 8000] [--folder build/site]

Standard library only; uses brotli when the environment has it.
"""

import argparse
import fnmatch
import functools
import gzip
import http.server
import sys
import threading
from email.utils import formatdate
from http import HTTPStatus
from pathlib import Path
from urllib.parse import unquote, urlsplit

from host_files import read_headers

try:
    import brotli
except ImportError:
    brotli = None

TYPES = {
    ".css": "text/css; charset=utf-8",
    ".csv": "text/csv; charset=utf-8",
    ".gz": "application/gzip",
    ".html": "text/html; charset=utf-8",
    ".ico": "image/x-icon",
    ".js": "text/javascript; charset=utf-8",
    ".json": "application/json",
    ".map": "application/json",
    ".mjs": "text/javascript; charset=utf-8",
    ".png": "image/png",
    ".svg": "image/svg+xml",
    ".txt": "text/plain; charset=utf-8",
    ".wasm": "application/wasm",
    ".webmanifest": "application/manifest+json",
    ".woff2": "font/woff2",
    ".xml": "application/xml",
    ".zip": "application/zip",
}
SQUEEZED = {".gz", ".ico", ".png", ".woff2"}  # compressing these again gains nothing
FOREVER = "public, max-age=31536000, immutable"


@functools.lru_cache(maxsize=500)
def compressed(path: Path, changed: float, coding: str) -> bytes:
    """Give a file's content in a coding; one written beside it is taken as it is."""
    if coding:
        beside = path.with_name(path.name + {"br": ".br", "gzip": ".gz"}[coding])
        if beside.is_file():
            return beside.read_bytes()
    content = path.read_bytes()
    if coding == "br":
        return brotli.compress(content, quality=5)
    return gzip.compress(content, 6, mtime=0) if coding == "gzip" else content


class Handler(http.server.BaseHTTPRequestHandler):
    """Answers GET and HEAD from one folder, as a static host does."""

    protocol_version = "HTTP/1.1"
    folder = Path()
    rules: tuple[tuple[str, str, str], ...] = ()  # of the folder's _headers

    def do_GET(self) -> None:
        """Send the file, its redirect to a folder, or the site's own 404 page."""
        asked = urlsplit(self.path)
        path = (self.folder / unquote(asked.path).lstrip("/")).resolve()
        if not path.is_relative_to(self.folder):
            path = self.folder / "404.html"
        if path.is_dir() and not asked.path.endswith("/"):
            return self.send(HTTPStatus.MOVED_PERMANENTLY, {"Location": f"{asked.path}/"})
        path = path / "index.html" if path.is_dir() else path
        found = path.is_file()
        path = path if found else self.folder / "404.html"
        if not path.is_file():
            return self.send(HTTPStatus.NOT_FOUND, {})
        self.send_file(path, HTTPStatus.OK if found else HTTPStatus.NOT_FOUND)

    do_HEAD = do_GET

    def send_file(self, path: Path, status: HTTPStatus) -> None:
        """Send one file, or say that the browser's copy is still good."""
        changed = path.stat().st_mtime
        tag = f'"{path.stat().st_mtime_ns:x}-{path.stat().st_size:x}"'
        headers = {
            "Cache-Control": FOREVER if "runtime" in path.parts else "no-cache",  # named by content
            "ETag": tag,
            "Last-Modified": formatdate(changed, usegmt=True),
            "Vary": "Accept-Encoding",
        }
        if status == HTTPStatus.OK and self.headers.get("If-None-Match") == tag:
            return self.send(HTTPStatus.NOT_MODIFIED, headers)
        accepted = {
            c.split(";")[0].strip() for c in self.headers.get("Accept-Encoding", "").split(",")
        }
        coding = next((c for c in ("br" if brotli else "", "gzip") if c in accepted), "")
        if path.suffix in SQUEEZED:
            coding = ""
        if coding:
            headers["Content-Encoding"] = coding
        headers["Content-Type"] = TYPES.get(path.suffix, "application/octet-stream")
        asked = urlsplit(self.path).path
        said = {name: value for on, name, value in self.rules if fnmatch.fnmatch(asked, on)}
        if status != HTTPStatus.OK:  # what is not there today may be tomorrow
            said = {name: value for name, value in said.items() if name != "Cache-Control"}
        headers |= said
        self.send(status, headers, compressed(path, changed, coding))

    def send(self, status: HTTPStatus, headers: dict[str, str], body: bytes = b"") -> None:
        """Write one response."""
        self.send_response(status)
        for name, value in headers.items():
            self.send_header(name, value)
        if status != HTTPStatus.NOT_MODIFIED:
            self.send_header("Content-Length", str(len(body)))
        if "X-Content-Type-Options" not in headers:
            self.send_header("X-Content-Type-Options", "nosniff")
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(body)
            self.server.sent += len(body)

    def log_message(self, *words: object) -> None:
        """Stay quiet: the terminal is for the address."""


class Server(http.server.ThreadingHTTPServer):
    """A server whose threads end with it, which forgives a closed tab and counts bytes."""

    daemon_threads = True
    sent = 0  # bytes of bodies so far, as they went over the wire

    def handle_error(self, request: object, client_address: object) -> None:
        """Pass over a browser that leaves in the middle, which is no error here."""
        if not isinstance(sys.exc_info()[1], ConnectionError):
            super().handle_error(request, client_address)


def start(folder: Path, port: int = 0, handler: type[Handler] = Handler) -> Server:
    """Serve a folder from a thread; port 0 takes any free one."""
    told = {"folder": folder.resolve(), "rules": tuple(read_headers(folder))}
    server = Server(("127.0.0.1", port), type("SiteHandler", (handler,), told))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    return server


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description="Serve a built site on this machine.")
    parser.add_argument("--port", type=int, default=8000)
    parser.add_argument("--folder", type=Path, default=Path("build/site"))
    options = parser.parse_args()
    try:
        server = start(options.folder, options.port)
    except OSError as error:
        raise SystemExit(
            f"Port {options.port} can't be used ({error.strerror}). Choose another with --port."
        ) from None
    print(f"The site is at http://localhost:{server.server_port}/ (Ctrl-C stops it)", flush=True)
    try:
        threading.Event().wait()
    except KeyboardInterrupt:
        print()
