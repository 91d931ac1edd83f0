"""Can I trust this gauge?"""

from dataclasses import replace

from calculators.card import Answer, Card, Choice, Cite, Example, Output, Quantity
from calculators.cards.common import DURATION, GAUGE_STEP, VACUUM, all_or_none, fold
from calculators.cards.gauge_check_working import notes, working
from calculators.physics import gauges, thermal_gauge
from calculators.physics.constants import YEAR
from calculators.physics.gases import GASES


def compute(
    *,
    reading: float,
    accuracy: float,
    resolution: float,
    reference: float,
    reference_accuracy: float,
    reference_resolution: float,
    earlier_difference: float | None,
    elapsed: float | None,
    kind: str,
    gas: str,
) -> Answer:
    """Compare two gauges [Pa]: agreement, En score [1], uncertainty [Pa], drift, gas."""
    limit, reference_limit = accuracy * reading, reference_accuracy * reference
    own = gauges.gauge_uncertainty(step=resolution, limit=limit)
    other = gauges.gauge_uncertainty(step=reference_resolution, limit=reference_limit)
    expanded = gauges.expanded_uncertainty(standard_uncertainty=own)
    expanded_other = gauges.expanded_uncertainty(standard_uncertainty=other)
    allowed = gauges.allowed_difference(
        expanded_reading=expanded, expanded_reference=expanded_other
    )
    score = gauges.en_score(
        reading=reading,
        reference=reference,
        expanded_reading=expanded,
        expanded_reference=expanded_other,
    )
    agreement = _agreement(score, allowed, reference)
    difference = reading - reference
    drift = _drift(difference, earlier_difference, elapsed)
    factor = _factor(kind, gas, reference)
    return Answer(
        outputs={
            "agreement": agreement,
            "en_score": score,
            "difference": difference,
            "allowed_difference": allowed,
            "uncertainty": expanded,
            "reference_uncertainty": expanded_other,
            "drift": drift,
            "time_left": _time_left(difference, drift, limit),
            "gas_factor": factor,
            "reading_in_gas": None if factor is None else factor * reference,
        },
        headline="Within what they can know, the two gauges",
        notes=notes(
            agreement,
            kind=kind,
            gas=gas,
            pressure=reference,
            small_drift=drift is not None
            and abs(difference - (earlier_difference or 0.0)) < allowed,
        ),
        working=working(drift is not None, kind == "thermal" and factor is not None),
        values={
            "limit": limit,
            "reference_limit": reference_limit,
            "u_step": gauges.resolution_uncertainty(step=resolution),
            "u_limit": gauges.limits_uncertainty(limit=limit),
            "u": own,
            "reference_u_step": gauges.resolution_uncertainty(step=reference_resolution),
            "reference_u_limit": gauges.limits_uncertainty(limit=reference_limit),
            "reference_u": other,
            "printed": 1.0 / thermal_gauge.PRINTED_FACTORS.get(gas, 1.0),
            "dense": thermal_gauge.dense_gas_response(gas=GASES[gas]),
            "heat_ratio": GASES[gas].heat_capacity_ratio,
            "nitrogen_ratio": GASES["nitrogen"].heat_capacity_ratio,
            "mass": GASES[gas].molar_mass,
            "nitrogen_mass": GASES["nitrogen"].molar_mass,
        },
    )


def _agreement(score: float, allowed: float, reference: float) -> str:
    if abs(score) > 1.0:
        return "disagree"
    # Two gauges that would also agree with a reading of zero have not been compared.
    return "undecided" if allowed >= reference else "agree"


def _drift(difference: float, earlier: float | None, elapsed: float | None) -> float | None:
    """Drift in a year, as a pressure."""
    given = all_or_none(
        {"earlier_difference": earlier, "elapsed": elapsed},
        else_say="For the drift, give both: the difference at the last check and how long ago.",
    )
    if given is None:
        return None
    rate = gauges.drift_rate(
        earlier_error=given["earlier_difference"],
        later_error=difference,
        elapsed=given["elapsed"],
    )
    return rate * YEAR


def _time_left(difference: float, drift: float | None, limit: float) -> float | None:
    """Time until the drift carries the gauge out of its accuracy, where it does."""
    if not drift or abs(difference) > limit:
        return None
    room = limit - difference if drift > 0.0 else limit + difference
    return room / abs(drift) * YEAR


def _factor(kind: str, gas: str, pressure: float) -> float | None:
    """Reading over true pressure; None where only the gauge's own shape could tell."""
    if kind != "thermal":
        return 1.0
    if gas not in ("air", "nitrogen") and pressure > thermal_gauge.THIN_UP_TO:
        return None
    return thermal_gauge.thin_gas_reading(gas=GASES[gas])


# fmt: off
ACCURACY = Quantity(
    name="accuracy", label="Accuracy of the gauge", symbol="a", hint="± of the reading",
    si_unit="1", us="%", si="%", units=("%",), minimum=0.0, maximum=1.0, default="10 %",
    help="From its data sheet. “±10 micron” at 200 micron is 5 %.",
)

INPUTS = (
    replace(VACUUM, name="reading", label="Gauge to check", symbol="x", default="520 micron"),
    ACCURACY,
    GAUGE_STEP,
    replace(VACUUM, name="reference", label="Reference, or second gauge", symbol="X",
            help="On the same tee, in dry nitrogen, both settled for five minutes."),
    replace(ACCURACY, name="reference_accuracy", label="Accuracy of the reference", symbol="a_X",
            default="5 %", help=""),
    replace(GAUGE_STEP, name="reference_resolution", label="Step of the reference",
            symbol="r_X", help=""),
    Quantity(
        name="earlier_difference", label="Difference at the last check", symbol="d₀",
        hint="gauge minus reference", si_unit="Pa", us="micron", si="Pa",
        units=("micron", "mTorr", "Torr", "mmHg", "Pa", "hPa", "mbar"), minimum=-20_000.0,
        maximum=20_000.0, required=False,
    ),
    replace(
        DURATION, name="elapsed", label="How long ago", symbol="Δt", us="d", si="d",
        units=("d", "yr", "h"), minimum=3600.0, maximum=50 * YEAR, default="", required=False,
    ),
    Choice(
        name="kind", label="The gauge measures", default="thermal",
        options=(
            ("thermal", "heat in the gas (thermistor, Pirani)"),
            ("direct", "push on a diaphragm (capacitance)"),
        ),
    ),
    Choice(
        name="gas", label="Gas to read", hint="what it would show in it", default="water vapor",
        options=tuple((name, name) for name in thermal_gauge.THERMAL_CONDUCTIVITY),
    ),
)

PRESSURE = Output(
    name="pressure", label="Pressure", si_unit="Pa", us="micron", si="Pa", figures=3,
)
OUTPUTS = (
    Output(
        name="agreement", label="The two gauges",
        choices={
            "agree": "agree", "disagree": "disagree", "undecided": "are too coarse to say",
        },
    ),
    Output(name="en_score", label="En score", symbol="E_n", si_unit="1", us="1", si="1",
           decimals=2),
    replace(PRESSURE, name="difference", label="Difference", symbol="d"),
    replace(PRESSURE, name="allowed_difference", label="Difference that would still agree",
            symbol="d_max"),
    replace(PRESSURE, name="uncertainty", label="Uncertainty of the gauge (k = 2)", symbol="U_x"),
    replace(PRESSURE, name="reference_uncertainty", label="Uncertainty of the reference (k = 2)",
            symbol="U_X"),
    replace(PRESSURE, name="drift", label="Drift in a year"),
    Output(name="time_left", label="Until the drift leaves its accuracy", si_unit="s",
           us="duration", si="duration"),
    Output(name="gas_factor", label="Reads, over the true pressure, in that gas", symbol="f",
           si_unit="1", us="1", si="1", figures=3),
    replace(PRESSURE, name="reading_in_gas", label="Would show that gas, at the reference",
            symbol="f·X"),
)
# fmt: on

CARD = Card(
    slug="gauge-check",
    title="Gauge check",
    question="Can I trust this gauge?",
    lede=(
        "Put two gauges on one tee in dry nitrogen. Whether they agree depends on what each of "
        "them can know."
    ),
    inputs=fold(INPUTS, "earlier_difference", "elapsed"),
    outputs=OUTPUTS,
    compute=compute,
    primary="agreement",
    sources=(
        Cite("ISO-13528", "E_n scores"),
        Cite("ISO-IEC-17043", "annex on performance statistics"),
        Cite("GUM", "4.3.7, 5.1.2, 6.2.1 and F.2.2.1"),
        Cite("DUSHMAN-1962", "chapter 5, heat conducted by a thin gas"),
        Cite("COOLPROP", "heat capacities and conductivities"),
    ),
    assumptions=(
        "Inside its accuracy every true value is equally likely; nothing else disturbs the gauge.",
        "The two gauges are independent. Set against each other, or calibrated on one instrument, "
        "they agree better than they are right.",
        "Both see the same pressure: one tee, no pump running, dry nitrogen, same height.",
        "Gas factors hold in a thin gas, below about 1 mbar (750 micron), on a clean sensor.",
    ),
    cautions=("nitrogen", "stored-pressure"),
    examples=(
        Example(
            title="Two service gauges at a village library",
            entries={"reading": "520 micron", "reference": "500 micron"},
            shows="Twenty micron apart is nothing, for gauges of 10 % and 5 %.",
        ),
        Example(
            title="A bakery's gauge after a year",
            entries={
                "reading": "640 micron",
                "reference": "500 micron",
                "reference_accuracy": "1 %",
                "earlier_difference": "15 micron",
                "elapsed": "400 d",
            },
            shows="Out of its accuracy, and on the way there for a year: clean it or send it in.",
        ),
        Example(
            title="A coarse gauge near the end of the pull",
            entries={
                "reading": "20 Pa",
                "accuracy": "10 %",
                "resolution": "30 Pa",
                "reference": "12 Pa",
                "gas": "R-410A",
            },
            shows="A gauge with steps this wide agrees with anything.",
        ),
    ),
)
