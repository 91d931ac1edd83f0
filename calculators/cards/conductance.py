"""What will this hose pass at this pressure?"""

from dataclasses import replace

from calculators.card import Answer, Card, Cite, Example, Output
from calculators.cards.common import VACUUM, fold
from calculators.cards.conductance_working import (
    FAR_BELOW,
    REGIMES,
    chart,
    conductance_of,
    flow_between,
    knudsen_1909,
    knudsen_of,
    notes,
    poiseuille,
    table,
    working,
)
from calculators.cards.rig_inputs import BORE, GAS, GAS_TEMPERATURE, LENGTH, PART, gas_of, tube
from calculators.errors import OutOfRange
from calculators.physics import orifice_flow, rarefied_gas, tube_conductance
from calculators.physics.rig import Tube


def compute(
    *,
    part: str,
    bore: float | None,
    length: float | None,
    pressure: float,
    pump_end_pressure: float | None,
    gas: str,
    temperature: float,
) -> Answer:
    """Conductance of a part [m3/s] at a pressure [Pa], and which kind of flow it is."""
    piece = _piece(part, bore, length)
    thin = gas_of(gas=gas, temperature=temperature)
    outlet = pump_end_pressure
    if outlet is not None and outlet >= pressure:
        raise OutOfRange(
            "The pump end must be below the system end, or no gas flows toward the pump.",
            input="pump_end_pressure",
        )
    long = piece.length > 0.0
    if not long and outlet is None:
        outlet = FAR_BELOW * pressure
    flow = None if outlet is None else flow_between(piece, pressure, outlet, thin)
    mean = pressure if outlet is None else 0.5 * (pressure + outlet)
    small = conductance_of(piece, mean, thin)
    passes = small if flow is None or outlet is None else flow / (pressure - outlet)
    knudsen = knudsen_of(piece, mean, thin)
    mouth = orifice_flow.conductance(
        inside_diameter=piece.inside_diameter, mean_pressure=mean, gas=thin
    )
    check = knudsen_1909(piece, mean, thin) if long else None
    delta = rarefied_gas.rarefaction(inside_diameter=piece.inside_diameter, pressure=mean, gas=thin)
    return Answer(
        outputs={
            "conductance": passes,
            "regime": rarefied_gas.regime(knudsen_number=knudsen),
            "knudsen_number": knudsen,
            "mean_free_path": rarefied_gas.mean_free_path(pressure=mean, gas=thin),
            "throughput": flow,
            "viscous_conductance": poiseuille(piece, mean, thin) if long else None,
            "molecular_conductance": tube_conductance.molecular_conductance(
                inside_diameter=piece.inside_diameter, length=piece.length, gas=thin
            ),
            "knudsen_check": check,
            "choked_limit": orifice_flow.choked_conductance(
                inside_diameter=piece.inside_diameter, gas=thin
            ),
        },
        headline="At {mean:micron|Pa;4}, the mean of both ends, the {name} passes {thing} at",
        notes=notes(piece, knudsen, outlet is not None and outlet / pressure, thin),
        working=working(piece, flow is not None),
        tables=(table(piece, thin),),
        chart=chart(piece, thin, mean if long else pressure),
        values={
            "name": piece.name,
            "thing": gas,
            "bore_used": piece.inside_diameter,
            "length_used": piece.length,
            "mean": mean,
            "viscosity": thin.viscosity,
            "mean_speed": thin.mean_speed,
            "probable_speed": thin.probable_speed,
            "delta": delta,
            "coefficient": rarefied_gas.flow_coefficient(delta),
            "mouth": mouth,
            "wall": 1.0 / (1.0 / small - 1.0 / mouth) if long else 0.0,
            "small": small,
            "outlet": outlet or 0.0,
            "off": check / small - 1.0 if check else 0.0,
        },
    )


def _piece(part: str, bore: float | None, length: float | None) -> Tube:
    try:
        return tube({"part": part, "bore": bore, "length": length}, index=0)
    except OutOfRange as error:
        field = error.input.rpartition(".")[2]
        what = "bore" if field == "bore" else "length, 0 for an orifice"
        raise OutOfRange(f"For a part of your own size, type its {what}.", input=field) from error


CARD = Card(
    slug="conductance",
    title="Conductance of a hose",
    question="What will this hose pass at this pressure?",
    lede="The emptier the system, the less a hose lets through: down to a floor that only the "
    "bore can raise.",
    inputs=fold(
        (
            replace(PART, label="Hose or part"),
            replace(BORE, help="Measure inside the narrowest place, not across the thread."),
            LENGTH,
            replace(VACUUM, label="Pressure", hint="at the system end"),
            replace(
                VACUUM,
                name="pump_end_pressure",
                label="Pressure at the pump end",
                symbol="p₂",
                default="",
                required=False,
                help="Blank: nearly the same at both ends, or for an orifice far below. Filled in: "
                "the flow between the two.",
            ),
            GAS,
            GAS_TEMPERATURE,
        ),
        "pump_end_pressure",
        "temperature",
    ),
    outputs=(
        Output(
            name="conductance",
            label="Conductance",
            symbol="C",
            si_unit="m³/s",
            us="CFM",
            si="L/s",
            figures=3,
        ),
        Output(name="regime", label="Kind of flow", choices=REGIMES),
        Output(
            name="knudsen_number",
            label="Knudsen number, on the bore",
            symbol="Kn",
            si_unit="1",
            us="1",
            si="1",
            figures=3,
        ),
        Output(
            name="mean_free_path",
            label="Mean free path",
            symbol="λ",
            si_unit="m",
            us="mm",
            si="mm",
            figures=3,
        ),
        Output(
            name="throughput",
            label="Throughput from end to end",
            symbol="Q",
            si_unit="Pa·m³/s",
            us="micron·CFM",
            si="Pa·m³/s",
            figures=3,
        ),
        Output(
            name="viscous_conductance",
            label="The d⁴ formula alone",
            symbol="C_v",
            si_unit="m³/s",
            us="CFM",
            si="L/s",
            figures=3,
        ),
        Output(
            name="molecular_conductance",
            label="Molecular flow, any low pressure",
            symbol="C_m",
            si_unit="m³/s",
            us="CFM",
            si="L/s",
            figures=3,
        ),
        Output(
            name="knudsen_check",
            label="Cross-check: Knudsen 1909",
            symbol="C_K",
            si_unit="m³/s",
            us="CFM",
            si="L/s",
            figures=3,
        ),
        Output(
            name="choked_limit",
            label="Most that this bore can ever pass",
            symbol="C*",
            si_unit="m³/s",
            us="CFM",
            si="L/s",
            figures=3,
        ),
    ),
    compute=compute,
    primary="conductance",
    sources=(
        Cite("SHARIPOV-SELEZNEV-1998", "flow coefficient of a tube; closed form from memory"),
        Cite("SANTELER-1986", "ends in molecular flow"),
        Cite("CLAUSING-1932", "short tubes"),
        Cite("DAGAN-1982", "ends in viscous flow"),
        Cite("FUJIMOTO-USAMI-1984", "orifices from molecular to choked flow"),
        Cite("KNUDSEN-1909", "cross-check"),
        Cite("FROM-MEMORY", "true bores and lengths of the parts in the list"),
    ),
    assumptions=(
        "A straight, round, smooth bore of one size, and molecules that leave a wall in any "
        "direction.",
        "One gas at one temperature. Each gas has its own conductance.",
        "A part shorter than about twenty bores is good to 10 % in transition flow and to 30 % in "
        "a jet.",
    ),
    cautions=("refrigerant",),
    examples=(
        Example(
            title="A 1/4 in bore hose at 500 micron",
            entries={"part": "hose-1/4", "pressure": "500 micron"},
            shows="A fifth of a CFM, whatever the pump behind it.",
        ),
        Example(
            title="A valve core left in, at the village hall in Ostermoor",
            entries={"part": "core-in", "pressure": "1 atm", "pump_end_pressure": "100 Torr"},
            shows="Choked: about half a CFM, and no pump can draw more.",
        ),
        Example(
            title="Water vapor through 2 m of 10 mm bore",
            entries={
                "part": "own",
                "bore": "10 mm",
                "length": "2 m",
                "pressure": "600 Pa",
                "gas": "water vapor",
                "temperature": "20 °C",
            },
        ),
    ),
)
