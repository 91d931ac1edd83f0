"""How big is the leak?"""

from dataclasses import replace

from calculators.card import (
    Answer,
    Card,
    Choice,
    Cite,
    Example,
    Output,
    Quantity,
)
from calculators.cards.common import (
    BAROMETER,
    DURATION,
    GAUGE_PRESSURE_UNITS,
    GAUGE_STEP,
    TEMPERATURE,
    VACUUM,
    VOLUME,
    fold,
)
from calculators.cards.leak_rate_working import EVERY_UNIT, chart, notes, working
from calculators.errors import CalculatorError, OutOfRange
from calculators.physics import leak_rate as leak
from calculators.physics import refrigerants
from calculators.physics.constants import MOLAR_GAS_CONSTANT, ZERO_CELSIUS
from calculators.physics.gases import GASES, viscosity

TENTH_OF_AN_ATMOSPHERE = 10_000.0  # Pa


def compute(
    *,
    first_pressure: float,
    last_pressure: float,
    duration: float,
    volume: float,
    resolution: float,
    temperature: float,
    last_temperature: float | None,
    refrigerant: str,
    service_pressure: float | None,
    barometer: float,
) -> Answer:
    """Size a leak [Pa m3/s] and what it loses in service [kg/s] from a rise [Pa]."""
    end_temperature = temperature if last_temperature is None else last_temperature
    moles = leak.molar_leak_rate(
        volume=volume,
        first_pressure=first_pressure,
        last_pressure=last_pressure,
        first_temperature=temperature,
        last_temperature=end_temperature,
        duration=duration,
    )
    if moles < 0.0:
        raise OutOfRange(
            "The system lost gas, and a leak cannot do that under vacuum: let the gauge and the "
            "temperature settle and read again.",
            input="last_pressure",
        )
    size = moles * MOLAR_GAS_CONSTANT * temperature
    service = _service_pressure(refrigerant, service_pressure, temperature)
    smallest = leak.smallest_detectable_leak(
        resolution=resolution, volume=volume, duration=duration
    )

    def lost(rate: float, pressure: float = service) -> leak.ServiceLoss:
        return leak.service_loss(
            leak_rate=rate,
            refrigerant=GASES[refrigerant],
            service_pressure=pressure,
            temperature=temperature,
            outside_pressure=barometer,
        )

    try:
        loss, unseen = lost(size), lost(smallest)
    except OutOfRange as error:
        raise OutOfRange(str(error), input="service_pressure") from error
    air = leak.mass_flow(
        throughput=size, molar_mass=GASES["air"].molar_mass, temperature=temperature
    )
    one = leak.mass_flow(
        throughput=smallest, molar_mass=GASES[refrigerant].molar_mass, temperature=temperature
    )
    rise = size * duration / volume
    return Answer(
        outputs={
            "leak_rate": size,
            "uncertainty": volume * 2.0 * resolution / 6.0**0.5 / duration,
            "molar_flow": moles,
            "air_mass_flow": air,
            "service": service,
            "least_loss": loss.molecular,
            "greatest_loss": loss.laminar,
            "smallest_leak": smallest,
            "smallest_least_loss": unseen.molecular,
            "smallest_greatest_loss": unseen.laminar,
        },
        headline="In service this leak loses {refrigerant} at {least_loss} or more, and up to",
        notes=notes(rise, resolution, last_pressure),
        working=working(last_temperature is not None, service_pressure is None),
        tables=(EVERY_UNIT,),
        chart=chart(size, service, barometer, lost) if size > 0.0 else None,
        values={
            "rise": rise,
            "end_temperature": end_temperature,
            "rate": rise / duration,
            "slow": unseen.molecular / one,
            "fast": unseen.laminar / one,
            "mass": GASES[refrigerant].molar_mass,
            "air_mass": GASES["air"].molar_mass,
            "at_zero": moles * MOLAR_GAS_CONSTANT * ZERO_CELSIUS,
            "viscosity": viscosity(gas=GASES[refrigerant], temperature=temperature),
            "air_viscosity": viscosity(gas=GASES["air"], temperature=temperature),
            "limit": TENTH_OF_AN_ATMOSPHERE,
        },
    )


def _service_pressure(
    refrigerant: str, service_pressure: float | None, temperature: float
) -> float:
    if service_pressure is not None:
        return service_pressure
    try:
        return refrigerants.vapor_pressure(refrigerant=refrigerant, temperature=temperature)
    except CalculatorError as error:
        raise OutOfRange(str(error), input="service_pressure") from error


# fmt: off
LOSS = Output(
    name="loss", label="Loss in service", si_unit="kg/s", us="lb/yr", si="kg/yr", figures=2,
)
LEAK = Output(
    name="leak_rate", label="Leak rate, air into vacuum", symbol="Q", si_unit="Pa·m³/s",
    us="micron·L/s", si="Pa·m³/s",
)

INPUTS = (
    replace(
        VACUUM, name="first_pressure", label="First reading", symbol="p₁", minimum=0.0,
        default="300 micron", hint="after isolating",
    ),
    replace(VACUUM, name="last_pressure", label="Last reading", symbol="p₂", default="310 micron"),
    DURATION,
    replace(VOLUME, help="Everything between the valve you closed and the end of the system."),
    GAUGE_STEP,
    replace(TEMPERATURE, symbol="T₁"),
    replace(
        TEMPERATURE, name="last_temperature", label="Temperature at the last reading",
        symbol="T₂", hint="if it changed", default="", required=False,
    ),
    Choice(
        name="refrigerant", label="Refrigerant in service", default="R-410A",
        options=tuple((name, name) for name in refrigerants.NAMES),
    ),
    Quantity(
        name="service_pressure", label="Pressure at the leak in service", symbol="p_s",
        hint="blank: at rest", si_unit="Pa", us="psig", si="barg", units=GAUGE_PRESSURE_UNITS,
        minimum=50_000.0, maximum=15e6, required=False,
        help="Left blank, it is that of the refrigerant at the temperature above.",
    ),
    BAROMETER,
)

OUTPUTS = (
    replace(LOSS, name="greatest_loss", label="Greatest loss in service", symbol="m_max"),
    replace(LOSS, name="least_loss", label="Least loss in service", symbol="m_min"),
    LEAK,
    replace(
        LEAK, name="uncertainty", label="Uncertainty from the gauge's step (k = 2)", symbol="U",
        figures=2,
    ),
    replace(
        LEAK, name="smallest_leak", label="Smallest leak this test could see", symbol="Q_min",
        figures=3,
    ),
    replace(LOSS, name="smallest_least_loss", label="That leak in service, at least"),
    replace(LOSS, name="smallest_greatest_loss", label="That leak in service, at most"),
    Output(
        name="molar_flow", label="Molecules", symbol="n", si_unit="mol/s", us="mol/s", si="mol/s",
    ),
    Output(
        name="air_mass_flow", label="Air that came in", symbol="m_air", si_unit="kg/s",
        us="oz/yr", si="g/yr", figures=3,
    ),
    Output(
        name="service", label="Pressure behind the leak, absolute", symbol="p_s", si_unit="Pa",
        us="psia", si="bar",
    ),
)
# fmt: on

CARD = Card(
    slug="leak-rate",
    title="Leak rate",
    question="How big is the leak?",
    lede=(
        "A steady rise in a known volume is a leak of a known size. What it will lose in service "
        "is a range, and an honest one is wide."
    ),
    inputs=fold(INPUTS, "last_temperature", "service_pressure", "barometer"),
    outputs=OUTPUTS,
    compute=compute,
    primary="greatest_loss",
    sources=(
        Cite("40-CFR-1065", "equation 1065.644-1"),
        Cite("DUSHMAN-1962", "chapter 2, molecular and viscous flow"),
        Cite("COOLPROP", "saturation pressures of the refrigerants"),
        Cite("GUM", "F.2.2.1, the step of a display"),
        Cite("COMMON-PRACTICE", "five gauge steps before a rise counts"),
    ),
    assumptions=(
        "All of the rise is air coming in, at constant temperature unless you give a second one.",
        "The hole is the same in service as in the test, and vapor leaks, not liquid. A leak "
        "below the liquid level loses more.",
        "Air leaks in from the barometer to a near vacuum; below half an atmosphere the rate "
        "does not depend on the pressure inside.",
        "Refrigerant vapor is taken as an ideal gas: at 15 bar it is denser, and the upper end up "
        "to a sixth low.",
    ),
    cautions=("refrigerant", "nitrogen", "stored-pressure", "flammable"),
    examples=(
        Example(
            title="One micron a minute in a village library's split system",
            entries={
                "first_pressure": "300 micron",
                "last_pressure": "310 micron",
                "duration": "10 min",
                "volume": "10 L",
                "refrigerant": "R-410A",
            },
            shows="A rise that looks like nothing can be the whole charge in a year.",
        ),
        Example(
            title="A dairy's chiller overnight, cooler in the morning",
            entries={
                "first_pressure": "450 micron",
                "last_pressure": "520 micron",
                "duration": "12 h",
                "volume": "3 m³",
                "temperature": "77 °F",
                "last_temperature": "63 °F",
                "refrigerant": "R-134a",
            },
            shows="The gas cooled and hid a part of the rise; the volume hides the rest.",
        ),
        Example(
            title="A bakery's walk-in cooler, high side in service",
            entries={
                "first_pressure": "40 Pa",
                "last_pressure": "46 Pa",
                "duration": "30 min",
                "volume": "18 L",
                "resolution": "0.5 Pa",
                "temperature": "20 °C",
                "refrigerant": "R-404A",
                "service_pressure": "17 barg",
            },
        ),
    ),
)
