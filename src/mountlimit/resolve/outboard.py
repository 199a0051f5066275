"""A third bearing on the motor shaft, beyond the sprocket."""

from __future__ import annotations

from ..model import Outboard
from ..picking import Picker
from ..worked import Value
from .bearing import ratings

AT = "outboard.at"
IDLE = (
    "outboard.held_by", "outboard.stiffness", "outboard.gap", "outboard.bearing",
    "outboard.static_rating", "outboard.dynamic_rating",
)  # fmt: skip


def outboard(picker: Picker, diameter: Value, sprocket: Value) -> Outboard | None:
    """Give the outboard bearing, or None where its place is not told."""
    if AT not in picker.given:
        other = next((k for k in IDLE if k in picker.given), None)
        if other is not None:
            picker.mistake(
                AT, f"is missing: {other} only helps together with it",
                "give the distance from the motor's face to the middle of that bearing",
            )  # fmt: skip
        return None
    place = picker.number(AT)
    if place <= sprocket:
        picker.mistake(
            AT, f"must lie beyond the sprocket, which sits {sprocket * 1000:g} mm from the motor's face",
            "it is measured from the motor's face, as shaft.face_overhang is",
        )  # fmt: skip
    static, dynamic, name = ratings(picker, "outboard", diameter)
    return Outboard(
        place=place, on_mount=picker.word("outboard.held_by", "frame") == "mount",
        stiffness=picker.number("outboard.stiffness"), gap=picker.number("outboard.gap"),
        static_rating=static, dynamic_rating=dynamic, bearing=name,
    )  # fmt: skip
