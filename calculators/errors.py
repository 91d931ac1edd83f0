"""What can go wrong with an entry, each said in one sentence a person can act on.

A bug is anything that is not a :class:`CalculatorError`, and must show.
"""


class CalculatorError(ValueError):
    """An entry that cannot be answered; the message is one sentence.

    ``input`` names the input the complaint belongs to, where that is known.
    """

    def __init__(self, sentence: str, *, input: str = "") -> None:
        self.input = input
        super().__init__(sentence)


class UnitError(CalculatorError):
    """The unit is unknown, or of the wrong kind for this input."""


class OutOfRange(CalculatorError):
    """A number outside the range in which the formula holds."""


class FitError(CalculatorError):
    """Readings that do not allow the fit that was asked for."""


class Complaints(CalculatorError):
    """Every complaint about one set of entries, each with the input it belongs to.

    ``items`` holds pairs (input name, sentence); rows are named
    ``"path.0.bore"``.
    """

    def __init__(self, items: list[tuple[str, str]]) -> None:
        self.items = items
        super().__init__("; ".join(sentence for _, sentence in items))
