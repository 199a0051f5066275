"""Clamped tube: does the clamp press its wall in?  The other end of "tighten more".

Nearly all of the load is the clamp's own, whatever the current.  Round tube: the wall as the chord of
a joint of plates welded along it on opposite sides, relieved as the pressure spreads over an arc.  Square tube: its side walls.  Stress along
the tube from bending of the frame is left out, and so is what legs or shell do to keep the tube from
spreading sideways.
"""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import clamps, rigid, usage
from ..model import Drive, Number
from ..mounting import AXES, Clamp
from ..structure import wrench
from .tube_grip import is_clamped, pressed_by


def rows(case: Case) -> list[Row]:
    """Compare the force of the clamp, and what the motor adds, with what the wall bears."""
    clamp = case.drive.mount.clamp
    assert clamp is not None
    force, _ = wrench(case.drive, case.loads, clamp.axis)
    inwards = rigid.reversed_force(force[AXES.index(clamp.normal)])
    asked = clamps.pressed_force(pressed_by(clamp), inwards)
    bears = _wall(case.drive, clamp)
    return [
        Row(station="wall of the tube under the clamp", demand=asked, capacity=bears,
            quantity="force", utilisation=usage.utilisation(asked, bears))
    ]  # fmt: skip


def _wall(drive: Drive, clamp: Clamp) -> Number:
    frame, strength = drive.frame, drive.frame.yield_strength
    if clamp.contact_angle is not None:
        return clamps.round_wall_resistance(
            strength, frame.wall, frame.size, clamp.contact_angle, clamp.length
        )
    slender = clamps.side_wall_slenderness(frame.size, frame.wall, frame.elastic_modulus, strength)
    return clamps.side_wall_resistance(
        clamps.buckling_reduction(slender), strength, frame.wall, clamp.length
    )


def _is_known(drive: Drive) -> bool:
    return is_clamped(drive) and drive.frame.yield_strength is not None


CHECKS = (
    Check(
        name="tube_crush", part="clamped tube", kind="strength",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="notice", sees="a flat or a dent in the tube under the clamp, often from tightening alone; the bolts never come up tight",
        applies=_is_known, rows=rows,
    ),
)  # fmt: skip
