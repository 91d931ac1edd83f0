"""Settings for every test, natively and inside Pyodide."""

import sys

from hypothesis import settings

IN_PYODIDE = sys.platform == "emscripten"

# The same examples every time, and no test that depends on the clock.
settings.register_profile(
    "ours", deadline=None, derandomize=True, max_examples=25 if IN_PYODIDE else 100
)
settings.load_profile("ours")


def pytest_collection_modifyitems(config, items):
    """Leave out, inside Pyodide, what only a full Python can do."""
    if not IN_PYODIDE:
        return
    native = [item for item in items if item.get_closest_marker("native")]
    if native:
        config.hook.pytest_deselected(items=native)
        items[:] = [item for item in items if item not in native]


def pytest_ignore_collect(collection_path):
    """Leave such a file unread, inside Pyodide: it may import what is not there."""
    if IN_PYODIDE and collection_path.suffix == ".py":
        text = collection_path.read_text(encoding="utf-8")
        return True if "\npytestmark = pytest.mark.native" in text else None
    return None
