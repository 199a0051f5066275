"""Front bearing of the motor: static safety under the overhung pull."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import bearings, layout, statics, usage
from ..worked import Value

NO_THRUST = Value(0.0, "axial load", "derived", "a chain in line pulls radially")


def rows(case: Case) -> list[Row]:
    """Compare the equivalent static load of the front bearing with its static rating."""
    s = case.drive.shaft
    overhang = layout.bearing_overhang(s.face_overhang, s.face_to_bearing)
    reaction = statics.front_bearing_reaction(case.loads.shaft_load, overhang, s.bearing_span)
    load = bearings.equivalent_static_load(reaction, NO_THRUST)
    return [Row(station=f"front bearing ({s.bearing})", demand=load, capacity=s.static_rating,
                quantity="force", utilisation=usage.utilisation(load, s.static_rating))]  # fmt: skip


CHECKS = (
    Check(
        name="front_bearing", part="front bearing", kind="strength", groups=("pull", "reverse"),
        sees="the motor growls at its nose: the balls have dented their track",
        rows=rows,
    ),
)  # fmt: skip
