"""Imports point down: physics knows no units, cards know no pages."""

import ast
from pathlib import Path

import pytest

import calculators

ROOT = Path(calculators.__file__).parent
STANDARD = {
    "abc", "argparse", "base64", "bisect", "collections", "csv", "dataclasses", "datetime",
    "decimal",
    "enum", "fractions", "functools", "hashlib", "heapq", "html", "io", "itertools", "json",
    "math", "operator", "os", "pathlib", "random", "re", "shutil", "statistics",
    "string", "subprocess", "sys", "tempfile",
    "textwrap", "time", "typing", "unicodedata", "urllib", "xml", "zipfile",
}  # fmt: skip

# What each layer may import: of ours, and of others.
MAY_IMPORT = {
    "errors": (set(), set()),
    "sources": (set(), {"dataclasses"}),
    "cautions": (set(), {"dataclasses"}),
    "practice_limits": ({"card", "physics"}, {"dataclasses", "collections", "typing"}),
    "physics": ({"errors", "physics"}, {"math", "dataclasses", "collections", "typing", "functools",
                                        "itertools", "bisect", "operator"}),
    "unit_list": (set(), {"dataclasses"}),
    "units": ({"errors", "unit_lines", "unit_list"}, {"pint", *STANDARD}),
    "card": (set(), {"dataclasses", "collections", "typing"}),
    "readings": ({"errors", "units", "reading_cells", "reading_rows"}, STANDARD),
    "reading_rows": ({"reading_cells"}, STANDARD),
    "reading_cells": ({"errors", "units"}, STANDARD),
    "wording": ({"card", "units"}, STANDARD),
    "hardware": ({"card", "errors", "physics"}, {"dataclasses", "collections", "typing"}),
    "cards": (
        {"card", "cards", "errors", "physics", "hardware", "practice_limits", "readings"},
        {"math", "dataclasses", "collections", "typing", "functools", "itertools"},
    ),
    "evaluate": ({"card", "errors", "readings", "units", "wording"}, STANDARD),
}  # fmt: skip


def modules():
    return sorted(ROOT.rglob("*.py"))


def layer(path: Path) -> str:
    first = path.relative_to(ROOT).parts[0]
    return first.removesuffix(".py")


def imports(path: Path):
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path.name}: write imports in full"
            if node.module == "calculators":
                yield from (f"calculators.{alias.name}" for alias in node.names)
            else:
                yield node.module


def allows(name: str, ours: set[str], others: set[str]) -> bool:
    first, *rest = name.split(".")
    return rest[0] in ours if first == "calculators" else first in others


@pytest.mark.parametrize("path", modules(), ids=lambda path: str(path.relative_to(ROOT)))
def test_imports_point_down(path):
    allowed = MAY_IMPORT.get(layer(path))
    if allowed is None:  # outputs, and what stands on top of them, may import everything below
        allowed = ({p.name.removesuffix(".py") for p in ROOT.iterdir()}, STANDARD)
    ours, others = allowed

    wrong = [name for name in imports(path) if not allows(name, ours, others)]

    assert not wrong, f"{path.relative_to(ROOT)} imports {wrong}"


def test_nothing_but_the_top_imports_outputs():
    for path in modules():
        if layer(path) in MAY_IMPORT:
            assert not any(name.startswith("calculators.outputs") for name in imports(path)), path
