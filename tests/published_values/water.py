"""Water: saturation, vapor, heat."""

from functools import partial

from calculators.physics import moisture, pump_speed, water
from published_values.checks import AgainstLibrary, Published, Subject

ZERO = 273.15

# IAPWS SR1-86(1992), table 1: T [K], p [MPa].
SR1_86 = {273.16: "0.000611657", 373.1243: "0.101325", 647.096: "22.064"}

# A table of saturated ice and vapor: degC, volume of the vapor [m3/kg], enthalpy of ice and of
# vapor [kJ/kg], as printed.
ICE = [
    (0.01, "206.1", "-333.5", "2500.8"),
    (-10.0, "467.5", "-354.2", "2482.2"),
    (-20.0, "1125", "-374.1", "2463.6"),
    (-30.0, "2946", "-393.3", "2445.1"),
    (-40.0, "8354", "-411.8", "2426.6"),
]

# A table of saturated water and vapor: degC, volume of the vapor [m3/kg].
LIQUID = [(5, "147.12"), (10, "106.38"), (20, "57.79"), (30, "32.89"), (40, "19.52")]
OLDER = "the table rests on an older vapor pressure or temperature scale"


def vapor_volume(celsius: float) -> float:
    """Volume of saturated vapor [m3/kg]."""
    temperature = ZERO + celsius
    pressure = water.saturation_pressure(temperature=temperature)
    return moisture.vapor_volume(mass=1.0, pressure=pressure, temperature=temperature)


def heat(celsius: float) -> float:
    """Heat of evaporation [kJ/kg]."""
    return moisture.heat_of_evaporation(temperature=ZERO + celsius) / 1e3


def boiling_kilopascal(celsius: float) -> float:
    return water.boiling_pressure(temperature=ZERO + celsius) / 1e3


def coolprop_kilopascal(celsius: float, coolprop) -> float:
    return coolprop.PropsSI("P", "T", ZERO + celsius, "Q", 0, "Water") / 1e3


def coolprop_heat(celsius: float, coolprop) -> float:
    vapor, liquid = (coolprop.PropsSI("H", "T", ZERO + celsius, "Q", q, "Water") for q in (1, 0))
    return (vapor - liquid) / 1e3


def ice_kelvin(kelvin: float) -> float:
    return water.sublimation_pressure(temperature=kelvin)


SUBJECT = Subject(
    title="Water and ice",
    published=(
        Published(
            what="Vapor pressure of ice at 230 K",
            printed="8.94735",
            unit="Pa",
            ours=lambda: water.sublimation_pressure(temperature=230.0),
            source="IAPWS-R14-08",
            locator="computer-program verification",
        ),
        *(
            Published(
                what=f"Vapor pressure of water at {kelvin} K",
                printed=printed,
                unit="MPa",
                ours=lambda kelvin=kelvin: water.boiling_pressure(temperature=kelvin) / 1e6,
                source="IAPWS-SR1-86",
                locator="table 1",
            )
            for kelvin, printed in SR1_86.items()
        ),
        *(
            Published(
                what=f"Volume of vapor over ice at {celsius:g} °C".replace("-", "−"),
                printed=volume,
                unit="m³/kg",
                ours=partial(vapor_volume, celsius),
                source="A steam table of saturated ice and vapor",
                within=7e-3,
                because=OLDER,
            )
            for celsius, volume, _, _ in ICE
        ),
        *(
            Published(
                what=f"Heat of sublimation at {celsius:g} °C".replace("-", "−"),
                printed=f"{float(vapor) - float(ice):.1f}",
                unit="kJ/kg",
                ours=partial(heat, celsius),
                source="A steam table of saturated ice and vapor",
                within=3e-4,
                because=OLDER,
            )
            for celsius, _, ice, vapor in ICE
        ),
        *(
            Published(
                what=f"Volume of vapor over water at {celsius} °C",
                printed=volume,
                unit="m³/kg",
                ours=partial(vapor_volume, celsius),
                source="A steam table of saturated water and vapor",
                within=3e-3,
                because=OLDER,
            )
            for celsius, volume in LIQUID
        ),
        Published(
            what="Activity of water whose vapor at 60 °C is a hundredth of 19.94 kPa",
            printed="1.00",
            unit="%",
            ours=lambda: (
                100 * pump_speed.water_activity(vapor_pressure=199.4, oil_temperature=ZERO + 60.0)
            ),
            source="A steam table of saturated water and vapor",
        ),
    ),
    libraries=(
        *(
            AgainstLibrary(
                what=f"Vapor pressure of water at {celsius} °C",
                unit="kPa",
                ours=partial(boiling_kilopascal, celsius),
                theirs=partial(coolprop_kilopascal, celsius),
                module="CoolProp.CoolProp",
                within=1e-4,
                because="the gap between two formulations of IAPWS near the triple point",
            )
            for celsius in (1, 5, 20, 40, 80, 120, 300)
        ),
        *(
            AgainstLibrary(
                what=f"Vapor pressure of ice at {kelvin} K",
                unit="Pa",
                ours=partial(ice_kelvin, kelvin),
                theirs=lambda chemicals, kelvin=kelvin: chemicals.iapws.iapws11_Psub(kelvin),
                module="chemicals",
                within=1e-9,
            )
            for kelvin in (200.0, 253.15, 273.0)
        ),
        *(
            AgainstLibrary(
                what=f"Heat of vaporization at {celsius} °C",
                unit="kJ/kg",
                ours=partial(heat, celsius),
                theirs=partial(coolprop_heat, celsius),
                module="CoolProp.CoolProp",
                within=1e-4,
            )
            for celsius in (0.5, 10.0, 20.0, 30.0, 45.0, 60.0)
        ),
        AgainstLibrary(
            what="Heat of fusion at the triple point",
            unit="kJ/kg",
            ours=lambda: moisture.HEAT_OF_FUSION / 1e3,
            theirs=lambda iapws: -iapws._iapws._Ice(273.16, 611.657e-6)["h"],
            module="iapws",
            within=1e-4,
        ),
    ),
)
