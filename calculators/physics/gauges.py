"""Comparing two gauges: what each can know, and whether they agree within it."""

import math

from calculators.errors import OutOfRange

COVERAGE_FACTOR = 2.0  # k of the expanded uncertainty, about 95 % (GUM, 6.2.1)


def resolution_uncertainty(*, step: float) -> float:
    """Uncertainty (standard) that the step of a display leaves.

    Parameters
    ----------
    step : float
        Smallest change the display shows [Pa], scalar.

    Returns
    -------
    float
        step / sqrt(12) [Pa], scalar.

    References
    ----------
    [GUM] F.2.2.1.
    """
    return step / math.sqrt(12.0)


def limits_uncertainty(*, limit: float) -> float:
    """Uncertainty (standard) behind "accurate to plus or minus so much".

    Parameters
    ----------
    limit : float
        Half-width of the interval the maker states [Pa], scalar.

    Returns
    -------
    float
        limit / sqrt(3) [Pa], scalar: anywhere inside is equally likely.

    References
    ----------
    [GUM] section 4.3.7.
    """
    return limit / math.sqrt(3.0)


def gauge_uncertainty(*, step: float, limit: float) -> float:
    """Uncertainty (standard) of one reading, from display and accuracy together.

    Parameters
    ----------
    step : float
        Smallest change the display shows [Pa], scalar.
    limit : float
        Half-width of the stated accuracy at this reading [Pa], scalar.

    Returns
    -------
    float
        Combined standard uncertainty [Pa], scalar.

    References
    ----------
    [GUM] section 5.1.2, equation (10), independent contributions.
    """
    return math.hypot(resolution_uncertainty(step=step), limits_uncertainty(limit=limit))


def expanded_uncertainty(*, standard_uncertainty: float) -> float:
    """Interval that holds the true value about 95 times in 100, as a half-width.

    Parameters
    ----------
    standard_uncertainty : float
        Combined standard uncertainty, scalar.

    Returns
    -------
    float
        k u with k = 2, in the unit of ``standard_uncertainty``, scalar.

    References
    ----------
    [GUM] section 6.2.1.
    """
    return COVERAGE_FACTOR * standard_uncertainty


def allowed_difference(*, expanded_reading: float, expanded_reference: float) -> float:
    """Largest difference of two readings at which they still agree.

    Parameters
    ----------
    expanded_reading, expanded_reference : float
        Expanded uncertainties of the two, k = 2 [Pa], scalar.

    Returns
    -------
    float
        Difference at which the E_n score is 1 [Pa], scalar.

    References
    ----------
    [ISO-13528] denominator of the E_n score.
    """
    return math.hypot(expanded_reading, expanded_reference)


def en_score(
    *, reading: float, reference: float, expanded_reading: float, expanded_reference: float
) -> float:
    """Difference of two readings over what their uncertainties allow.

    Parameters
    ----------
    reading, reference : float
        Reading of the gauge and of the reference [Pa], scalar.
    expanded_reading, expanded_reference : float
        Their expanded uncertainties, k = 2 [Pa], scalar.

    Returns
    -------
    float
        E_n [1], scalar; satisfactory from -1 to 1.

    Raises
    ------
    OutOfRange
        If both uncertainties are zero.

    Notes
    -----
    The two must be independent: gauges set against each other, or calibrated
    on the same instrument, agree better than they are right.

    References
    ----------
    [ISO-13528] E_n scores; [ISO-IEC-17043] annex on performance statistics.
    """
    allowed = allowed_difference(
        expanded_reading=expanded_reading, expanded_reference=expanded_reference
    )
    if not allowed > 0.0:
        raise OutOfRange(
            "A gauge cannot be perfect: give at least one of the two a step or an accuracy."
        )
    return (reading - reference) / allowed


def drift_rate(*, earlier_error: float, later_error: float, elapsed: float) -> float:
    """Change of a gauge's error per time between two checks.

    Parameters
    ----------
    earlier_error, later_error : float
        Reading minus reference at the two checks [Pa], scalar.
    elapsed : float
        Time between the checks [s], scalar.

    Returns
    -------
    float
        Drift [Pa/s], scalar.

    Raises
    ------
    OutOfRange
        If ``elapsed`` is not above zero.

    References
    ----------
    Definition.
    """
    if not elapsed > 0.0:
        raise OutOfRange("The earlier check must lie some time back.")
    return (later_error - earlier_error) / elapsed
