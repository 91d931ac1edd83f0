"""Whether two gauges agree: the notes and the working of the answer."""

from calculators.card import Step, Text
from calculators.physics.thermal_gauge import DENSE_FROM, PRINTED_FACTORS, THIN_UP_TO

AGREEMENT = {
    "agree": (
        "They differ by {difference}; up to {allowed_difference} is no more than the two can know. "
        "That they agree does not make them right: both can be off the same way."
    ),
    "disagree": (
        "They differ by {difference}, and they can know better than that: {allowed_difference}. "
        "At least one is wrong. Clean the sensor, warm up, try again, then ask a third gauge."
    ),
    "undecided": (
        "Their uncertainty together, {allowed_difference}, is as large as the pressure itself. "
        "They would agree with nothing as well. Use a finer gauge."
    ),
}


def notes(
    agreement: str, *, kind: str, gas: str, pressure: float, small_drift: bool
) -> tuple[Text, ...]:
    texts: list[Text] = [AGREEMENT[agreement]]
    if small_drift:
        texts.append(
            "The change since the last check is smaller than the two can know: it need not be "
            "drift."
        )
    if kind != "thermal":
        texts.append("A diaphragm feels the push of any gas alike: it needs no gas factor.")
    elif gas in ("air", "nitrogen"):
        texts.append("Set for nitrogen, it reads nitrogen and air as they are.")
    elif pressure <= THIN_UP_TO:
        printed = (
            " Instructions of such gauges print a factor that makes it {printed:1;2}."
            if gas in PRINTED_FACTORS
            else ""
        )
        texts.append(
            "Set for nitrogen, it would show {gas} at {reference} as about {reading_in_gas}, "
            "{gas_factor} times the truth." + printed
        )
        texts.append("It cannot tell a wet system from a higher pressure. Only dry gas can.")
    elif pressure >= DENSE_FROM:
        texts.append(
            "This high up {gas} carries only {dense:1;2} of the heat that nitrogen does: the "
            "gauge reads low, by how much depends on its make."
        )
    else:
        texts.append(
            "Between about 750 and 7,500 micron (1 and 10 mbar) the factor for {gas} turns from "
            "over to under. Do not correct a thermal gauge there."
        )
    return tuple(texts)


def working(drift: bool, factor: bool) -> tuple[Step, ...]:
    steps = [
        Step(
            "The gauge: its step, and its accuracy, each as a standard uncertainty.",
            "u = √(r²/12 + a²/3)",
            "u = √(({resolution:Pa;4})²/12 + ({limit:Pa;4})²/3) = √(({u_step:Pa;3})² + "
            "({u_limit:Pa;3})²) = {u:Pa;3}",
        ),
        Step(
            "The reference, the same way.",
            "u_X = √(r_X²/12 + a_X²/3)",
            "u_X = √(({reference_u_step:Pa;3})² + ({reference_u_limit:Pa;3})²) = "
            "{reference_u:Pa;3}",
        ),
        Step(
            "Doubled, each holds the truth 95 times in 100.",
            "U = 2·u",
            "U_x = {uncertainty:Pa;3},  U_X = {reference_uncertainty:Pa;3}",
        ),
        Step(
            "Two independent errors add as squares: this difference still agrees.",
            "d_max = √(U_x² + U_X²)",
            "d_max = {allowed_difference:Pa;3} = {allowed_difference:micron;3}",
        ),
        Step(
            "The difference over that. From −1 to 1 the two agree.",
            "E_n = (x − X) / d_max",
            "E_n = ({reading:Pa;5} − {reference:Pa;5}) / {allowed_difference:Pa;3} = {en_score}",
        ),
    ]
    if drift:
        steps.append(
            Step(
                "The change of the difference since the last check, per year.",
                "drift = (d − d₀) / Δt",
                "({difference:Pa;3} − ({earlier_difference:Pa;3})) / {elapsed:yr;3} = "
                "{drift:Pa;3} a year",
            )
        )
    if factor:
        steps.append(
            Step(
                "In a thin gas a thermal gauge counts hits times the heat each can carry; γ is the "
                "ratio of heat capacities.",
                "f = [(γ+1)/((γ−1)·√M)] / [(γ+1)/((γ−1)·√M)] of nitrogen",
                "γ = {heat_ratio:1;5}, M = {mass:g/mol;4};  nitrogen γ = {nitrogen_ratio:1;5}, "
                "M = {nitrogen_mass:g/mol;4};  f = {gas_factor}",
            )
        )
    return tuple(steps)
