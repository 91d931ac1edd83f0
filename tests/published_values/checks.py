"""What a check against a published value is, and against another library."""

import importlib
import math
from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal

from published import agrees


@dataclass(frozen=True, kw_only=True)
class Published:
    """A value as somebody printed it, beside ours.

    ``printed`` keeps the digits as they stand; ours must round to them unless ``within``
    allows a relative deviation, and then ``because`` says why. ``source`` is a key of the
    bibliography or, for what is no book of ours, words. ``from_memory`` marks a value whose
    text was not laid beside it.
    """

    what: str
    printed: str
    unit: str
    ours: Callable[[], float]
    source: str
    locator: str = ""
    within: float | None = None
    because: str = ""
    from_memory: bool = False

    def theirs(self) -> float:
        return float(Decimal(self.printed))

    def holds(self) -> bool:
        ours = self.ours()
        if self.within is None:
            return agrees(ours, self.printed)
        return math.isclose(ours, self.theirs(), rel_tol=self.within)


@dataclass(frozen=True, kw_only=True)
class AgainstLibrary:
    """A value that a general reference library computes, beside ours.

    ``theirs`` gets the library's module, or is never asked where it is not installed.
    """

    what: str
    unit: str
    ours: Callable[[], float]
    theirs: Callable[..., float]
    module: str
    within: float
    because: str = ""

    def library(self):
        """The module, or None where it is not installed."""
        try:
            return importlib.import_module(self.module)
        except ImportError:
            return None

    def holds(self, library) -> bool:
        return math.isclose(self.ours(), self.theirs(library), rel_tol=self.within)


@dataclass(frozen=True, kw_only=True)
class Subject:
    """The checks of one subject, in the order of the page."""

    title: str
    published: tuple[Published, ...]
    libraries: tuple[AgainstLibrary, ...] = ()
