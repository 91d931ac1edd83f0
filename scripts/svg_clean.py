"""Turn a drawing of matplotlib into an SVG element that fits our pages.

The content policy forbids style attributes and elements, the page brings the font and the
colors, several drawings share one page, and the same drawing must give the same bytes. So:
presentation attributes instead of styles, CSS variables instead of colors, no font of its
own, ids that carry the drawing's name, and nothing in it that is not drawn.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from xml.etree import ElementTree

SVG = "http://www.w3.org/2000/svg"
KEPT = {
    "clip-path", "fill", "fill-opacity", "fill-rule", "font-size", "font-style", "font-weight",
    "opacity", "stroke", "stroke-dasharray", "stroke-dashoffset", "stroke-linecap",
    "stroke-linejoin", "stroke-opacity", "stroke-width", "text-anchor",
}  # fmt: skip
DROPPED = {"font-family"}  # the page's own, by inheritance
CLASS = "class-"  # an artist's gid that begins so names a class for the page's style sheet
POINTS = {"d", "x", "y", "width", "height", "transform", "points"}
_TARGET = re.compile(r"#([^)]+)")

Element = ElementTree.Element


def clean(svg: str, *, name: str, label: str, colors: Mapping[str, str]) -> str:
    """Give a file that matplotlib wrote as an element to stand in a page.

    Parameters
    ----------
    svg : str
        The file, written with ``svg.fonttype`` "none".
    name : str
        Prefix that makes the ids the drawing's own on a page.
    label : str
        What the drawing shows, for those who cannot see it.
    colors : mapping
        Each color used, in lower case as ``#rrggbb``, to what stands for it in the page.

    Returns
    -------
    str
        ``<svg role="img" ...>``, the size left to the page.

    Raises
    ------
    ValueError
        If a color or a style is used that is not provided for.
    """
    root = ElementTree.fromstring(svg)
    for parent in list(root.iter()):
        for child in list(parent):
            if child.tag in (f"{{{SVG}}}metadata", f"{{{SVG}}}style"):
                parent.remove(child)
    for each in root.iter():
        _plain(each, colors)
    _rename(root, name)
    _unwrap(root)
    root.attrib = {
        "viewBox": root.get("viewBox", ""),
        "role": "img",
        "aria-label": label,
        "stroke-linejoin": "round",
    }
    ElementTree.register_namespace("", SVG)
    return ElementTree.tostring(root, encoding="unicode")


def _plain(each: Element, colors: Mapping[str, str]) -> None:
    """Write styles as attributes, shorten numbers, drop what says nothing."""
    for declaration in filter(None, (s.strip() for s in each.attrib.pop("style", "").split(";"))):
        key, value = (part.strip() for part in declaration.split(":", 1))
        if key in DROPPED:
            continue
        if key not in KEPT:
            raise ValueError(f"style {key} of an SVG drawing is not provided for")
        each.set(key, value.removesuffix("px"))
    for key, value in list(each.attrib.items()):
        if key.endswith("}href"):
            del each.attrib[key]
            each.set("href", value)
        elif value.startswith("#") and key in ("fill", "stroke"):
            if value.lower() not in colors:
                raise ValueError(f"color {value} of an SVG drawing is not one of the page's")
            each.set(key, colors[value.lower()])
        elif key in POINTS:
            each.set(key, _short(value))
    if each.get("transform", "").startswith("rotate(0 "):
        del each.attrib["transform"]
    if each.tag != f"{{{SVG}}}text" and not (each.text or "").strip():
        each.text = None
    each.tail = None


def _short(numbers: str) -> str:
    """Round to hundredths of a pixel and close up the spaces of a path."""
    rounded = re.sub(r"-?\d+\.\d+", lambda m: f"{float(m[0]):.2f}".rstrip("0").rstrip("."), numbers)
    rounded = re.sub(r"-0(?![\d.])", "0", rounded)
    return re.sub(r"\s*([A-Za-z])\s*", r"\1", rounded).strip()


def _rename(root: Element, name: str) -> None:
    """Keep the ids that something points to, numbered as they come."""
    keys = ("href", "clip-path")
    pointers = [(each, key) for each in root.iter() for key in keys if key in each.attrib]
    used = {_TARGET.findall(each.attrib[key])[0] for each, key in pointers}
    new: dict[str, str] = {}
    for each in root.iter():
        old = each.attrib.pop("id", "")
        if old.startswith(CLASS):
            each.set("class", old.removeprefix(CLASS))
        if old in used:
            new[old] = f"{name}-{len(new) + 1}"
            each.set("id", new[old])
    for each, key in pointers:
        each.set(key, _TARGET.sub(lambda m: f"#{new[m[1]]}", each.attrib[key]))


def _unwrap(parent: Element) -> None:
    """Lift the contents of groups that only named something; drop empty ones."""
    children: list[Element] = []
    for child in parent:
        _unwrap(child)
        if child.tag in (f"{{{SVG}}}g", f"{{{SVG}}}defs") and not len(child):
            continue
        children += list(child) if child.tag == f"{{{SVG}}}g" and not child.attrib else [child]
    parent[:] = children
