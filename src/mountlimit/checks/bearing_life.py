"""Front bearing of the motor: hours it lasts at the current held, against the hours wanted."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import bearings, layout, statics, usage
from ..model import Number
from ..worked import Value
from .front_bearing import NO_THRUST

BALL = Value(3.0, "life exponent", "derived", "ISO 281: ball bearing")
RADIAL = Value(1.0, "radial factor", "derived", "ISO 281: no axial load")
AXIAL = Value(0.0, "axial factor", "derived", "ISO 281: no axial load")
RELIABILITY = Value(0.9, "reliability", "derived", "ISO 281: L10, nine of ten bearings live longer")


def rows(case: Case) -> list[Row]:
    """Compare the hours wanted with the rating life of the front bearing."""
    s, duty = case.drive.shaft, case.drive.duty
    speed: Number = case.drive.motor.speed  # there, or the check would not apply
    overhang = layout.bearing_overhang(s.face_overhang, s.face_to_bearing)
    reaction = statics.front_bearing_reaction(case.loads.shaft_load, overhang, s.bearing_span)
    radial = bearings.jerked_load(reaction, duty.chain_factor)
    load = bearings.equivalent_dynamic_load(radial, NO_THRUST, RADIAL, AXIAL)
    turns = bearings.rating_life_revs(s.dynamic_rating, load, BALL)
    rated = bearings.rating_life(turns, speed)
    life = bearings.adjusted_life(rated, bearings.reliability_factor(RELIABILITY))
    return [Row(station=f"front bearing ({s.bearing})", demand=duty.bearing_hours, capacity=life,
                quantity="time", utilisation=usage.utilisation(duty.bearing_hours, life),
                level="continuous")]  # fmt: skip


CHECKS = (
    Check(
        name="bearing_life", part="front bearing", kind="life", groups=("hold",),
        sees="the motor's nose grows rough and loud long before the hours you want are run",
        applies=lambda drive: drive.motor.speed is not None, rows=rows,
    ),
)  # fmt: skip
