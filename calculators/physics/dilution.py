"""Evacuation with nitrogen breaks: what each pull and each break leave behind."""

from collections.abc import Sequence
from typing import NamedTuple

from calculators.errors import OutOfRange
from calculators.physics.constants import MOLAR_GAS_CONSTANT, WATER_MOLAR_MASS


class Pull(NamedTuple):
    """State at the bottom of one pull."""

    pressure: float  # total pressure [Pa]
    partial_pressure: float  # of the gas that was there at the start [Pa]
    fraction_left: float  # of that gas [1]


def pulls(
    *, start_pressure: float, evacuated_to: Sequence[float], broken_to: Sequence[float]
) -> tuple[Pull, ...]:
    """Follow the gas of the start through pulls and nitrogen breaks.

    Parameters
    ----------
    start_pressure : float
        Pressure before the first pull, all of it the unwanted gas [Pa], scalar.
    evacuated_to : sequence of float
        Pressure at the bottom of each pull [Pa], series.
    broken_to : sequence of float
        Pressure after the break that follows each pull but the last [Pa], series.

    Returns
    -------
    tuple of Pull
        The state at the bottom of each pull.

    Raises
    ------
    OutOfRange
        If a pull does not lower the pressure, a break does not raise it, or
        the numbers of pulls and breaks do not match.

    Notes
    -----
    A pull takes every gas in the same proportion, a break adds dry nitrogen
    that mixes fully. Dead ends mix slowly: wait minutes after each break.
    Liquid water is not a gas and takes no part in this.

    References
    ----------
    [CROWL-LOUVAR] vacuum purging, y_j = y_0 (p_low / p_high)^j.
    """
    if len(broken_to) != len(evacuated_to) - 1:
        raise OutOfRange("Between two pulls there must be one break.")
    before, partial = start_pressure, start_pressure
    states = []
    for index, low in enumerate(evacuated_to):
        if not 0.0 < low < before:
            raise OutOfRange(f"Pull {index + 1} must end above zero and below where it starts.")
        partial *= low / before
        states.append(Pull(low, partial, partial / start_pressure))
        if index < len(broken_to):
            before = broken_to[index]
            if not before > low:
                raise OutOfRange(
                    f"Break {index + 1} must raise the pressure above that of its pull."
                )
    return tuple(states)


def nitrogen_amount(
    *,
    volume: float,
    temperature: float,
    evacuated_to: Sequence[float],
    broken_to: Sequence[float],
) -> float:
    """Nitrogen that the breaks use.

    Parameters
    ----------
    volume : float
        Inside volume [m3], scalar.
    temperature : float
        Temperature of the gas [K], scalar.
    evacuated_to, broken_to : sequence of float
        As in :func:`pulls` [Pa], series.

    Returns
    -------
    float
        Amount of nitrogen [mol], scalar.

    References
    ----------
    [CROWL-LOUVAR] vacuum purging, total nitrogen j (p_high - p_low) V/(R T).
    """
    raised = sum(high - low for high, low in zip(broken_to, evacuated_to, strict=False))
    return raised * volume / (MOLAR_GAS_CONSTANT * temperature)


def vapor_carried(
    *,
    volume: float,
    temperature: float,
    vapor_pressure: float,
    high_pressure: float,
    low_pressure: float,
) -> float:
    """Water vapor that one pull carries off with the gas, before any boiling.

    Parameters
    ----------
    volume : float
        Inside volume [m3], scalar.
    temperature : float
        Temperature of the gas [K], scalar.
    vapor_pressure : float
        Partial pressure of water vapor before the pull, at most that of
        saturation [Pa], scalar.
    high_pressure, low_pressure : float
        Total pressure before and after the pull [Pa], scalar.

    Returns
    -------
    float
        Mass of water [kg], scalar.

    Raises
    ------
    OutOfRange
        If the pull does not lower the pressure.

    References
    ----------
    Ideal gas law; the pull leaves the share p_low/p_high of every gas.
    """
    if not 0.0 < low_pressure < high_pressure:
        raise OutOfRange("A pull must lower the pressure.")
    vapor = vapor_pressure * volume * WATER_MOLAR_MASS / (MOLAR_GAS_CONSTANT * temperature)
    return vapor * (1.0 - low_pressure / high_pressure)
