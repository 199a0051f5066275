"""Motor shaft at the front bearing: bending and torsion against yield."""

from __future__ import annotations

from ..formulas import give, layout, shaft, statics, usage
from ..model import Case, Check, Row


def rows(case: Case) -> list[Row]:
    """Compare the equivalent stress of the round shaft with its yield strength."""
    s, loads = case.drive.shaft, case.loads
    overhang = layout.bearing_overhang(s.face_overhang, s.face_to_bearing)
    moment = statics.overhung_moment(loads.shaft_load, overhang)
    torque = give.peak_torque(loads.torque, loads.starting_factor)
    stress = shaft.equivalent_static_stress(moment, torque, s.diameter)
    return [Row(station="front bearing", demand=stress, capacity=s.yield_strength, quantity="stress",
                utilisation=usage.utilisation(stress, s.yield_strength))]  # fmt: skip


CHECKS = (
    Check(
        name="motor_shaft", part="motor shaft", kind="strength", groups=("pull", "reverse"),
        sees="the sprocket wobbles: the motor shaft is bent at its front bearing",
        rows=rows,
    ),
)  # fmt: skip
