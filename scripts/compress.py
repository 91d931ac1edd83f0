"""Write brotli and gzip forms of files beside them, for servers that send them as they are."""

import gzip
from pathlib import Path

import brotli


def precompress(path: Path, quality: int = 9) -> None:
    """Write path.br and path.gz.

    At 9 brotli takes a second for all of Pyodide; 11 takes half a minute and saves a tenth.
    """
    content = path.read_bytes()
    packed = {
        ".br": brotli.compress(content, quality=quality),
        ".gz": gzip.compress(content, mtime=0),
    }
    for end, form in packed.items():
        path.with_name(path.name + end).write_bytes(form)
