"""A browser that gets a quarter of its time, as if the processor were about four times slower.

    with slowed(): ...

The browser's own throttling slows its pages and not their workers, so all of its processes are
stopped for three quarters of every 12 ms. Works where /proc and signals do, that is on Linux.
"""

import os
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

SHARE, PERIOD = 0.25, 0.012  # of the time; s
LOOK_AGAIN = 0.1  # s between looks for processes that have come since


@contextmanager
def slowed() -> Iterator[None]:
    """Slow every browser that this process has started, or starts meanwhile."""
    if not Path("/proc/self/stat").exists():
        raise OSError("there is no /proc here, by which the browser's processes are found")
    command = [sys.executable, __file__, str(os.getpid())]
    with subprocess.Popen(command, stdin=subprocess.PIPE) as slower:
        try:
            yield
        finally:
            slower.stdin.close()  # which ends it, once it has let all of them go on
            slower.wait(timeout=10)


def browsers_of(parent: int) -> list[int]:
    """Give the browser processes that descend from a process."""
    parents: dict[int, int] = {}
    names: dict[int, str] = {}
    for stat in Path("/proc").glob("[0-9]*/stat"):
        with suppress(OSError):
            before, _, after = stat.read_text().rpartition(")")
            number, _, name = before.partition(" (")
            parents[int(number)], names[int(number)] = int(after.split()[1]), name

    def descends(number: int) -> bool:
        while number in parents and number != parent:
            number = parents[number]
        return number == parent

    found = (number for number in parents if descends(number))
    return [number for number in found if names[number].startswith(("chrom", "headless_shell"))]


def _send(signal_: int, processes: list[int]) -> None:
    for number in processes:
        with suppress(ProcessLookupError):
            os.kill(number, signal_)


def _slow(parent: int) -> None:
    """Stop and let go on, until the other end of standard input is closed."""
    os.set_blocking(0, False)
    looked, processes = 0.0, []
    try:
        while _is_open():
            began = time.monotonic()
            if began - looked > LOOK_AGAIN:
                looked, processes = began, browsers_of(parent)
            _send(signal.SIGSTOP, processes)
            time.sleep(PERIOD * (1 - SHARE))
            _send(signal.SIGCONT, processes)
            time.sleep(PERIOD * SHARE)
    finally:
        _send(signal.SIGCONT, browsers_of(parent))


def _is_open() -> bool:
    try:
        return os.read(0, 1) != b""
    except BlockingIOError:
        return True


if __name__ == "__main__":
    _slow(int(sys.argv[1]))
