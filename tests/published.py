"""Agreement with a printed number: half a unit of its last digit, nobody's choice."""

from decimal import Decimal


def half_last_digit(printed: str) -> float:
    """Half a unit in the last printed place: '0.353658941e-2' gives 5e-12."""
    exponent = Decimal(printed.replace(",", "")).as_tuple().exponent
    assert isinstance(exponent, int)
    return 0.5 * 10.0**exponent


def agrees(computed: float, printed: str) -> bool:
    """Whether a computed number rounds to the printed one."""
    return abs(computed - float(printed.replace(",", ""))) <= 1.001 * half_last_digit(printed)
