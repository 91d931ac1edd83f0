"""A server behind a phone's link: so many bits a second for all connections, so long a way.

The server does the shaping, since a browser's own does not reach service workers.
"""

import threading
import time
from http import HTTPStatus
from typing import Any

import site_server

BITS_PER_SECOND = 9e6
DELAY = 0.060  # s, for a new connection, and again for every request
PIECE = 8192  # bytes sent in one go, so that connections take turns


class Link:
    """One pipe that every connection shares: a piece waits until those before it are through."""

    def __init__(self, bits_per_second: float = BITS_PER_SECOND) -> None:
        self.seconds_per_byte = 8 / bits_per_second
        self.turn = threading.Lock()
        self.free_at = 0.0

    def take(self, size: int) -> float:
        """Book the pipe for so many bytes; give the time on the clock at which they are out."""
        with self.turn:
            self.free_at = max(self.free_at, time.monotonic()) + size * self.seconds_per_byte
            return self.free_at


class _Pipe:
    """What the handler writes to: passes pieces on no faster than the link does."""

    def __init__(self, to: Any, link: Link) -> None:
        self.to, self.link = to, link

    def write(self, content: bytes) -> int:
        for start in range(0, len(content), PIECE):
            piece = content[start : start + PIECE]
            time.sleep(max(0.0, self.link.take(len(piece)) - time.monotonic()))
            self.to.write(piece)
        return len(content)

    def __getattr__(self, name: str) -> Any:
        return getattr(self.to, name)


class Handler(site_server.Handler):
    """Answers as the plain server does, over the link."""

    link = Link()

    def setup(self) -> None:
        """Open a connection, which is a way there and back."""
        time.sleep(DELAY)
        super().setup()
        self.wfile = _Pipe(self.wfile, self.link)

    def send(self, status: HTTPStatus, headers: dict[str, str], body: bytes = b"") -> None:
        """Answer after another way there and back."""
        time.sleep(DELAY)
        super().send(status, headers, body)
