"""HTML elements, built and escaped by the standard library."""

from collections.abc import Iterable
from typing import Any
from xml.etree import ElementTree

Element = ElementTree.Element
Child = Element | str | None


def tag(_name: str, *children: Child | Iterable[Child], **attributes: Any) -> Element:
    """Make an element; ``class_`` and ``for_`` lose their underscore, True is a bare flag."""
    element = Element(_name)
    for key, value in attributes.items():
        if value is None or value is False:
            continue
        name = key.rstrip("_").replace("_", "-")
        element.set(name, name if value is True else str(value))
    for child in children:
        for each in [child] if isinstance(child, (str, Element)) or child is None else child:
            if isinstance(each, Element):
                element.append(each)
            elif each is not None and len(element):
                element[-1].tail = (element[-1].tail or "") + each
            elif each is not None:
                element.text = (element.text or "") + each
    return element


def text_of(*elements: Element) -> str:
    """Write elements as HTML."""
    return "".join(ElementTree.tostring(e, encoding="unicode", method="html") for e in elements)
