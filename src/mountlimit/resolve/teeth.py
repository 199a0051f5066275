"""The toothed plate of a sprocket: material, width of its teeth, share of the most loaded tooth."""

from __future__ import annotations

from .. import cards
from ..formulas import sprocket as sprocket_formulas
from ..formulas import teeth as formulas
from ..held import BoltRing, Sprocket
from ..picking import Picker
from ..worked import Value

SHARE_SOURCE = (
    "one roller in balance: new chain on a new standard tooth, high on the tooth (The Complete Guide to Chain "
    "2.1.2), and one tooth alone (hooked teeth, square teeth or a wrong pitch)"
)
LEAST_EDGE = 0.7  # hole diameters from a bolt hole to the seats; less is no plate


def sprocket(
    picker: Picker, part: str, card: cards.Chain, teeth: Value, bolts: BoltRing | None
) -> Sprocket | None:
    """Give the sprocket of one side, or None where its material is not told."""
    key = f"{part}.sprocket_material"
    material = picker.card(key)
    if material is None:
        _idle(picker, part, key)
        return None
    least = formulas.pressure_angle_least(teeth)
    share = picker.between(
        f"{part}.tooth_share", formulas.tooth_share(formulas.pressure_angle_new(teeth), teeth),
        formulas.tooth_share(least, teeth), 1.0, SHARE_SOURCE,
    )  # fmt: skip
    if bolts is not None:
        _refuse_holes(picker, part, card, teeth, bolts)
    return Sprocket(
        teeth=teeth, material=material, share=share, tooth_width=_tooth_width(picker, part, card)
    )


def _idle(picker: Picker, part: str, key: str) -> None:
    for other in (f"{part}.tooth_width", f"{part}.tooth_share"):
        if other in picker.given:
            picker.warnings.append(f"{other} does nothing without {key}.")


def _tooth_width(picker: Picker, part: str, card: cards.Chain) -> Value:
    """Give the width of the teeth: as measured, else by the chain's inner width."""
    key = f"{part}.tooth_width"
    if key not in picker.given:
        width: Value = sprocket_formulas.tooth_width(
            card.inner_width, sprocket_formulas.width_factor(card.pitch)
        )  # type: ignore[assignment]
        return width
    given = picker.number(key)
    if given > card.inner_width:
        picker.mistake(
            key, f"is more than the inner width of chain {card.designation}",
            f"teeth for it are about {1000 * sprocket_formulas.width_factor(card.pitch) * card.inner_width:.1f} mm wide",
        )  # fmt: skip
    return given


def _refuse_holes(
    picker: Picker, part: str, card: cards.Chain, teeth: Value, bolts: BoltRing
) -> None:
    """Refuse bolt holes that run into the seats of the rollers."""
    across = sprocket_formulas.pitch_diameter(card.pitch, teeth)
    root = formulas.root_diameter(across, formulas.seat_radius_max(card.roller_diameter))
    hole = float(bolts.bolts.thread.clearance_hole)
    if root - bolts.circle < 2 * LEAST_EDGE * hole:
        most = root - 2 * LEAST_EDGE * hole
        picker.mistake(
            f"{part}.bolt_circle", f"puts the holes into the teeth of {float(teeth):g}",
            f"with these bolts the circle is at most {most * 1000:.0f} mm" if most > 0 else "",
        )  # fmt: skip
