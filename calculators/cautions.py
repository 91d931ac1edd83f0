"""Cautions as data: who can be hurt, how, what is usual, whom to defer to.

Cards and pages name the keys of what they involve; the short form stands on
the page and the full text one tap away. All of it is common practice and
none of it replaces local codes, the maker's instructions or licensed work.
"""

from dataclasses import dataclass

DEFERS = (
    "Local codes, the equipment maker's instructions and licensed practice come first; "
    "this guide replaces none of them."
)


@dataclass(frozen=True, kw_only=True)
class Caution:
    """A hazard: its word, a short line for the page, and the full text."""

    title: str
    short: str
    who: str
    how: str
    practice: tuple[str, ...]


CAUTIONS = {
    "stored-pressure": Caution(
        title="Stored pressure",
        short="A system or cylinder under pressure can throw fittings, oil and gas. Open slowly.",
        who="You, and anyone near an opening fitting, hose or cylinder.",
        how="Gas let go at once throws caps, cores, hoses and liquid with force.",
        practice=(
            "Read the pressure on both sides before you open anything, and open slowly.",
            "Wear eye protection and gloves; stand beside a fitting, not in front of it.",
            "Never exceed the pressure on the nameplate of the weakest part.",
        ),
    ),
    "nitrogen": Caution(
        title="Nitrogen",
        short="Use a regulator and a relief valve. Never oxygen, never shop air.",
        who="You, and anyone in the same room.",
        how=(
            "A full cylinder holds far more pressure than any system bears; oxygen with oil "
            "explodes; shop air brings water; escaped nitrogen takes the air you breathe."
        ),
        practice=(
            "Use dry nitrogen through a regulator made for it, with a relief valve set below "
            "the nameplate pressure.",
            "Never use oxygen or compressed air to pressurize, purge or break a vacuum.",
            "Air the room; nitrogen gives no smell and no warning.",
        ),
    ),
    "refrigerant": Caution(
        title="Refrigerant and the law",
        short=(
            "Recover refrigerant before you open a system. Venting it is unlawful in most places."
        ),
        who="You, by contact or by breathing; everyone, by release.",
        how="Liquid freezes skin and eyes; vapor displaces air and breaks down in a flame.",
        practice=(
            "Recover to the level your rules set, with certified equipment and certified people.",
            "Evacuation comes after recovery. A vacuum pump is not a recovery machine.",
        ),
    ),
    "flammable": Caution(
        title="Flammable refrigerant (A2L, A3)",
        short="Keep ignition sources away. Use a pump and tools rated for flammable refrigerant.",
        who="Everyone in and under the room.",
        how="Leaked gas pools low and burns at a spark: a pump switch, a motor, a relay, a flame.",
        practice=(
            "Ventilate, check the air low down with a suitable detector, and keep switches away.",
            "Purge with dry nitrogen and evacuate as the maker directs before any flame.",
            "Plug in and switch the pump outside the space, or use one rated for it.",
        ),
    ),
    "electricity": Caution(
        title="Electricity",
        short="Lock out the power. Never start or megger a compressor under vacuum.",
        who="You, and the compressor.",
        how=(
            "In a vacuum the gap between windings and terminals arcs at ordinary voltages, and a "
            "terminal can blow out."
        ),
        practice=(
            "Lock out and tag out, and prove dead, before you work on wiring or terminals.",
            "Keep power off the compressor and its heaters as the maker directs while evacuated.",
            "Crankcase heat is used only where the maker allows it.",
        ),
    ),
    "frostbite": Caution(
        title="Cold burns",
        short="Escaping refrigerant freezes skin and eyes at once. Wear gloves and eye protection.",
        who="Your hands, your eyes, your face.",
        how="Liquid refrigerant boils far below freezing at open-air pressure.",
        practice=(
            "Wear lined gloves and eye protection at every connection.",
            "Use low-loss fittings; crack a hose slowly.",
        ),
    ),
    "hot-surface": Caution(
        title="Hot surfaces",
        short="Pumps, heat guns, lamps and discharge lines burn. Warm gently, never with a flame.",
        who="Your hands, and the system.",
        how=(
            "A pump body and a warmed coil reach burning heat; a flame overheats seals and "
            "refrigerant."
        ),
        practice=(
            "Warm with warm air, warm water or the system's own means; keep within its limits.",
            "Never use a flame on a system, a cylinder or a line.",
        ),
    ),
    "oil": Caution(
        title="Pump oil",
        short="Used pump oil is acid and wet. Keep it off skin and out of drains.",
        who="Your skin, the floor, the drain.",
        how="It carries acid, refrigerant and water; spilt oil makes a floor slippery.",
        practice=(
            "Change oil while warm, with gloves; collect and hand in used oil by local rules.",
            "Keep the exhaust of the pump out of the air you breathe.",
        ),
    ),
    "asphyxiation": Caution(
        title="Low and closed places",
        short="Refrigerant and nitrogen push out the air. Ventilate pits, cellars and plant rooms.",
        who="You, and whoever comes to help you.",
        how=(
            "Most refrigerants are heavier than air and give little warning; two breaths "
            "can be enough."
        ),
        practice=(
            "Ventilate, measure the oxygen, and do not work alone in a pit or plant room.",
            "Follow your local rules for confined spaces.",
        ),
    ),
    "cylinder": Caution(
        title="Cylinders",
        short="Never fill a cylinder over 80 % liquid. Secure it upright and keep it cool.",
        who="You, and everyone near.",
        how="A cylinder full of liquid bursts when it warms; a falling one loses its valve.",
        practice=(
            "Weigh while filling; stop at 80 % of the water capacity at the usual fill "
            "temperature, or as your rules say.",
            "Secure cylinders upright, cap them, and never heat one with a flame.",
        ),
    ),
    "lifting": Caution(
        title="Lifting",
        short=(
            "Pumps and cylinders are heavy. Lift with help, and keep hoses out of the way of feet."
        ),
        who="Your back, your feet, people passing.",
        how=(
            "A full cylinder or a large pump is more than one person's lift; a hose is a trip line."
        ),
        practice=("Use a cart, a hoist or a second person.", "Lay hoses and cords along walls."),
    ),
    "roof": Caution(
        title="Roofs and ladders",
        short="Tie off, mind the edge and the weather, and do not hold a phone on a ladder.",
        who="You, and whoever stands below.",
        how="Falls, wind, heat and lightning; a tool dropped from a roof.",
        practice=(
            "Use fall protection as your rules demand; hoist the tools, do not carry them up.",
            "Come down before a storm.",
        ),
    ),
}
