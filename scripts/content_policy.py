"""The content policy of a page: nothing but our own files, and the inline scripts it has.

The theme writes two small inline scripts; each is allowed by its hash, so that any other
is refused. Python needs 'wasm-unsafe-eval'. ``frame-ancestors`` cannot stand in a page.
"""

from __future__ import annotations

import base64
import hashlib
import re

INLINE_SCRIPT = re.compile(r"<script(?![^>]*\bsrc=)([^>]*)>(.*?)</script>", re.S)
POLICY = (
    "default-src 'none'; script-src 'self' 'wasm-unsafe-eval' {hashes}; style-src 'self'; "
    "img-src 'self' data:; font-src 'self'; connect-src 'self'; worker-src 'self'; "
    "manifest-src 'self'; base-uri 'none'; form-action 'none'"
)
_FIRST = '<meta charset="utf-8">'


def with_policy(page: str) -> str:
    """Write the policy into the head of a page, before anything that it governs."""
    meta = f'<meta http-equiv="Content-Security-Policy" content="{policy_of(page)}">'
    return page.replace(_FIRST, _FIRST + meta, 1)


def policy_of(*pages: str) -> str:
    """Give the policy that allows the inline scripts of these pages and no others."""
    hashes = {
        f"'sha256-{base64.b64encode(hashlib.sha256(body.encode()).digest()).decode()}'"
        for page in pages
        for attributes, body in INLINE_SCRIPT.findall(page)
        if "json" not in attributes
    }
    return POLICY.format(hashes=" ".join(sorted(hashes)))
