"""Write brotli and gzip forms of files beside them, for servers that send them as they are."""

import gzip
import hashlib
import shutil
from pathlib import Path

import brotli

from steps import BUILD

CODINGS = {".br": brotli.compress, ".gz": lambda content: gzip.compress(content, 9, mtime=0)}


def precompress(path: Path) -> None:
    """Write path.br and path.gz; the best compression is slow, so build/compressed keeps it."""
    content = path.read_bytes()
    kept = BUILD / "compressed" / hashlib.sha256(content).hexdigest()
    kept.parent.mkdir(parents=True, exist_ok=True)
    for end, compress in CODINGS.items():
        copy = kept.with_suffix(end)
        if not copy.exists():
            copy.write_bytes(compress(content))
        shutil.copyfile(copy, path.with_name(path.name + end))
