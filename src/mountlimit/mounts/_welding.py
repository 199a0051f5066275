"""What welded mounts share: fields of a fillet, strength beside it, and what cannot be welded."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from ..fields import FIXINGS, choose, may, need
from ..formulas import welds
from ..model import Number
from ..mounting import Mount, Weld
from ..worked import Value
from ._parts import Parts, Picker

LEG = need(
    "fixings.weld_leg",
    "length",
    "leg of the fillet: from the corner to its toe",
    "1.5 mm",
    "30 mm",
    "5 mm",
)
QUALITY = may(
    "fixings.weld_quality", "ratio", "share of the fillet's throat that is sound: 1 by a tested welder, about half of a first weld",
    "0.1", "1", ("0.5", "0.8", "1"),
)  # fmt: skip
ULTIMATE = may(
    "fixings.weld_ultimate", "stress", "ultimate strength of the weaker of mount and frame, beside the weld",
    "50 MPa", "800 MPa", example="360 MPa",
)  # fmt: skip
SIDES = choose(
    "fixings.weld_sides",
    "fillets along both faces of the plate's edge, or along one only",
    ("both", "one"),
)
FIELDS = (LEG, QUALITY, ULTIMATE)
NO_BOLTS = tuple(field.key for field in FIXINGS.fields)  # keys a welded mount has no use for

FRAME = 360e6  # Pa, ultimate strength of S235, for a frame whose grade nobody knows
FRAME_SOURCE = "frame of unknown grade taken as S235 (common practice, no source)"
# Pa, weld metal by the weaker usual filler: EN 1999-1-1 table 8.8 (from memory).
FILLER = {"al6061_t6": 170e6, "al6082_t6": 190e6, "al6063_t6": 150e6, "al5083_h111": 240e6}
FILLER_SOURCE = "EN 1999-1-1 table 8.8, weaker usual filler (from memory)"
# Largest ultimate strength, beta_w: EN 1993-1-8 table 4.1; above it that of S420 and S460.
GRADES = ((360e6, "S235"), (430e6, "S275"), (510e6, "S355"))
STRONGEST = 1.0
LEAST_THROAT, LEAST_LENGTH, LEAST_THROATS = 0.003, 0.030, 6  # EN 1993-1-8 clauses 4.5.2 and 4.5.1
THICK_LEG = 1.5  # leg over plate thickness: more is likely a slip of the pen


def welded(picker: Picker, parts: Parts) -> Parts:
    """Give the parts with the strength the mount's material has beside a weld, all over the mount."""
    material = parts.material
    card = material.card
    if not card.weldable:
        picker.mistake(
            "mount.material", f"{card.name} cannot be welded so that it carries load",
            "choose a weldable material, or a bolted form",
        )  # fmt: skip
        return parts
    if card.haz_yield == card.yield_strength and card.haz_ultimate == card.ultimate_strength:
        return parts
    softer = welds.heat_affected_strength
    yielding: Any = softer(material.yield_strength, _haz(card.haz_yield), card.yield_strength)
    tiring: Any = softer(material.fatigue_strength, _haz(card.haz_ultimate), card.ultimate_strength)
    return replace(
        parts, material=replace(material, yield_strength=yielding, fatigue_strength=tiring)
    )


def _haz(strength: Value | None) -> Value:
    assert strength is not None  # a weldable card has both
    return strength


def throats(picker: Picker, thickness: Number) -> tuple[Number, Number]:
    """Give the throat of the fillets as measured, and as far as it is sound."""
    leg = picker.number("fixings.weld_leg")
    if leg > THICK_LEG * thickness:
        picker.warnings.append(
            f"The fillet's leg is more than {THICK_LEG:g} times the plate; measure from the corner to its toe."
        )
    full = welds.fillet_throat(leg)
    if full < LEAST_THROAT * (1 - 1e-9):
        picker.warnings.append(
            f"The fillet's throat is {full * 1000:.1f} mm; EN 1993-1-8 clause 4.5.2 asks for 3 mm or more."
        )
    return full, welds.sound_throat(full, picker.number("fixings.weld_quality"))


def weld(
    picker: Picker, parts: Parts, name: str, key: str, length: Number, full: Number,
    sound: Number, along: str, apart: Number = 0.0,
) -> Weld:  # fmt: skip
    """Give a weld to the frame; ``apart`` above nothing means fillets on both faces.

    ``key`` is the input that a message about too short a weld names.
    """
    counts = welds.effective_length(length, full)
    if counts < full:
        picker.mistake(
            key, f"leaves nothing of the {name} between its end craters",
            "a fillet counts without a throat at either end (EN 1993-1-8 clause 4.5.1)",
        )  # fmt: skip
        counts = full  # not nothing: the other mistakes are looked for as well
    elif counts < max(LEAST_LENGTH, LEAST_THROATS * full):
        picker.warnings.append(
            f"The {name} has {1000 * float(counts):.0f} mm that count; EN 1993-1-8 clause 4.5.1 "
            "lets a fillet below 30 mm or six throats carry nothing."
        )
    return fillet(picker, parts, name, counts, sound, along, apart)


def fillet(
    picker: Picker, parts: Parts, name: str, length: Number, sound: Number, along: str,
    apart: Number = 0.0,
) -> Weld:  # fmt: skip
    """Give a weld to the frame of which the whole length counts, as one that runs all round."""
    ultimate = _ultimate(picker, parts)
    return Weld(
        name=name, length=length, throat=sound, along=along,
        sides=Value(2 if apart else 1, "fillets", "derived", "counted"), apart=apart,
        ultimate_strength=ultimate, correlation=correlation(ultimate, parts.material.card.family),
    )  # fmt: skip


def _ultimate(picker: Picker, parts: Parts) -> Value:
    """Give the ultimate strength of the weaker part joined, or of the weld metal where that is less."""
    card = parts.material.card
    beside = card.haz_ultimate or card.ultimate_strength
    own, source = float(beside), beside.source
    if card.family == "aluminium":
        metal = FILLER.get(card.id, own)
        least = min(own, metal)
        source = FILLER_SOURCE if metal < own else source
        return picker.between("fixings.weld_ultimate", least, least, least, source)
    least = min(own, FRAME)
    source = FRAME_SOURCE if own > FRAME else source
    return picker.between("fixings.weld_ultimate", least, least, own, source)


def correlation(ultimate: Number, family: str) -> Value:
    """Give beta_w: by steel grade; 1 for aluminium, whose weld metal is judged as it is."""
    if family == "aluminium":
        return Value(
            1.0,
            "correlation factor",
            "derived",
            "EN 1999-1-1 clause 8.6.3: weld metal itself (from memory)",
        )
    grade = next((g for most, g in GRADES if float(ultimate) <= most * (1 + 1e-9)), None)
    beta = STRONGEST if grade is None else welds.CORRELATION[grade]
    words = f"EN 1993-1-8 table 4.1, {grade or 'S420 and stronger'} by its ultimate strength"
    return Value(beta, "correlation factor", "derived", words)


def warn_aluminium(picker: Picker, parts: Parts) -> None:
    """Say that aluminium is welded to aluminium only."""
    if parts.material.card.family != "aluminium" or picker.card("frame.member") == "rigid":
        return
    if picker.optional("frame.elastic_modulus") is None:
        picker.warnings.append(
            "Aluminium is welded to aluminium only: the frame is still taken as steel; "
            'set frame.elastic_modulus = "70 GPa".'
        )


def stiffness(mount: Mount, weld: Weld) -> float:
    """Give the stiffness of a weld to the frame per metre, N/m^2, for the plate model.

    Fillets on both faces are as stiff as the shear modulus of the card. A single one that has to hold a plate
    upright turns as its throat does, a strip as long as it is thick: k_theta = E * a**2 / 12 per
    metre; the engine's row of springs has k * t**2 / 4 (own estimate, no source).
    """
    shear = shear_modulus(mount)
    if float(weld.sides) == 2:
        return shear
    modulus, thickness = float(mount.material.card.elastic_modulus), float(mount.thickness)
    return min(shear, modulus * float(weld.throat) ** 2 / (3 * thickness**2))


def shear_modulus(mount: Mount) -> float:
    """Give the shear modulus of the card, Pa: the weld does not follow what is known of the plate."""
    card = mount.material.card
    return float(card.elastic_modulus) / (2 * (1 + float(card.poissons_ratio)))
