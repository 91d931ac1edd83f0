"""Thin gas in tubes and orifices."""

from functools import partial

from calculators.physics import (
    gases,
    orifice_flow,
    pump_speed,
    rarefied_gas,
    tube_conductance,
)
from published_values.checks import Published, Subject

AIR = gases.thin_gas(gas=gases.GASES["air"], temperature=293.15)
SQUARE_CENTIMETER = 0.011283791670955126  # m, diameter of an opening of 1 cm2
LONG = {"inside_diameter": 0.01, "length": 100.0}  # m; 1 cm bore
TORR = 101325.0 / 760.0  # Pa

# Karniadakis, Beskok & Aluru 2005, table 15.5 (after Sharipov & Seleznev 1998): flow rate of a
# long tube by the BGK equation, diffuse walls. Columns: delta, G_P.
BGK = {0.01: "1.4768", 0.02: "1.4608", 0.04: "1.4391", 0.08: "1.4131"}

# R. J. Cole 1977: transmission of a tube in molecular flow. Columns: L/d, W.
COLE = {0.5: "0.67198", 1: "0.51423", 5: "0.19094", 10: "0.10931"}

SUBJECT = Subject(
    title="Flow of thin gas",
    published=(
        *(
            Published(
                what=f"Flow coefficient of a long tube at rarefaction {delta}",
                printed=printed,
                unit="1",
                ours=partial(rarefied_gas.flow_coefficient, delta),
                source="SHARIPOV-SELEZNEV-1998",
                locator="as printed in Karniadakis, Beskok and Aluru 2005, table 15.5",
                within=5e-3,
                because="our closed form is fitted to the whole range",
            )
            for delta, printed in BGK.items()
        ),
        *(
            Published(
                what=f"Transmission of a tube {ratio:g} bores long",
                printed=printed,
                unit="1",
                ours=partial(tube_conductance.transmission_probability, length_to_diameter=ratio),
                source="COLE-1977",
                within=6.5e-3,
                because="Santeler's formula is good to 0.65 %",
                from_memory=True,
            )
            for ratio, printed in COLE.items()
        ),
        Published(
            what="Mean free path of air at 1 Torr",
            printed="0.005",
            unit="cm",
            ours=lambda: 100 * rarefied_gas.mean_free_path(pressure=TORR, gas=AIR),
            source="J. F. O'Hanlon, A User's Guide to Vacuum Technology",
            locator="equation (2.22)",
            from_memory=True,
        ),
        Published(
            what="Molecular flow of air through 1 cm²",
            printed="11.6",
            unit="L/s",
            ours=lambda: (
                1e3 * orifice_flow.molecular_conductance(inside_diameter=SQUARE_CENTIMETER, gas=AIR)
            ),
            source="DUSHMAN-1962",
            locator="chapter 2",
            from_memory=True,
        ),
        Published(
            what="Choked flow of air through 1 cm²",
            printed="20",
            unit="L/s",
            ours=lambda: (
                1e3 * orifice_flow.choked_conductance(inside_diameter=SQUARE_CENTIMETER, gas=AIR)
            ),
            source="DUSHMAN-1962",
            locator="chapter 2",
            from_memory=True,
        ),
        Published(
            what="Pressure ratio at which air chokes",
            printed="0.528",
            unit="1",
            ours=lambda: orifice_flow.critical_pressure_ratio(gas=AIR),
            source="SHAPIRO-1953",
            locator="isentropic flow",
        ),
        Published(
            what="Molecular conductance of a long tube, in d³/L (cm)",
            printed="12.1",
            unit="L/s",
            ours=lambda: 1e7 * tube_conductance.molecular_conductance(**LONG, gas=AIR),
            source="DUSHMAN-1962",
            locator="chapter 2",
        ),
        Published(
            what="Viscous conductance of a long tube, in d⁴·p/L (cm, mbar)",
            printed="135",
            unit="L/s",
            ours=lambda: (
                1e7 * tube_conductance.poiseuille_conductance(**LONG, mean_pressure=100.0, gas=AIR)
            ),
            source="DUSHMAN-1962",
            locator="chapter 2",
        ),
        Published(
            what="Pump that takes 1,000 m³ from 1,000 to 200 mbar in 10 min",
            printed="160",
            unit="m³/min",
            ours=lambda: (
                60
                * pump_speed.pull_down_speed(
                    volume=1000.0,
                    duration=600.0,
                    first_pressure=1e5,
                    last_pressure=2e4,
                    ultimate_pressure=0.0,
                )
            ),
            source="A public guide to sizing vacuum pumps",
            within=0.03,
            because="two digits are printed",
        ),
    ),
)
