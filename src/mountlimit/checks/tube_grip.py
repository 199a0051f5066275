"""Clamp on a tube: does the mount turn about the tube, slide along it, or lift at one end?

The whole load of the motor goes through the clamp.  Round tube: friction alone, turning and sliding
together.  Square tube: its shape stops it from turning; what counts is when the clamp bears on two
edges only.  A yaw on the tube (about the way the clamp pulls) is held by the legs, shell or block on
both sides of the tube and is not checked.
"""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import clamps, hole_limits, tipping, usage
from ..model import Drive, Number
from ..mounting import AXES, Clamp
from ..structure import wrench
from ..worked import Value

FLAT = Value(1.0, "sum of pressure over force", "derived", "flat faces")


def is_clamped(drive: Drive) -> bool:
    """Say that a check speaks of drives whose mount is clamped on a tube."""
    return drive.mount.clamp is not None


def pressed_by(clamp: Clamp) -> Number:
    """Give the force that presses both halves of the clamp on the tube."""
    return clamps.clamp_force(clamp.bolts.number, clamp.pulls, clamp.preload)


def rows(case: Case) -> list[Row]:
    """Compare what the motor asks of the clamp, about a point on the tube's axis, with its hold."""
    drive = case.drive
    clamp = drive.mount.clamp
    assert clamp is not None
    along, out = AXES.index(clamp.along), AXES.index(clamp.normal)
    tilting = 3 - along - out
    force, moment = wrench(drive, case.loads, clamp.axis)
    off = tipping.pulled_only(force[out])
    turn, slide = tipping.size_of(moment[along]), hole_limits.part_size(force[along])
    held = pressed_by(clamp)
    found = (_round if clamp.contact_angle is not None else _square)(
        drive, clamp, held, turn, slide, off
    )
    asked = clamps.lifting_asked(tipping.size_of(moment[tilting]), off, clamp.length)
    holds = clamps.lifting_moment(held, clamp.length)
    lifts = Row(station="clamp lifts at one end of its grip", demand=asked, capacity=holds,
                quantity="torque", utilisation=usage.utilisation(asked, holds), level="safe")  # fmt: skip
    return [*found, lifts]


def _slip(words: str, clamp: Clamp, held: Number, slip: Number, spread: Number, off: Number) -> Row:
    asked = clamps.slip_and_pull(slip, clamp.friction, spread, off)
    hold = clamps.friction_hold(clamp.friction, clamps.pressure_sum(held, spread))
    return Row(station=words, demand=asked, capacity=hold, quantity="force",
               utilisation=usage.utilisation(asked, hold))  # fmt: skip


def _round(
    drive: Drive, clamp: Clamp, held: Number, turn: Number, slide: Number, off: Number
) -> list[Row]:
    spread = clamps.contact_spread(clamp.contact_angle)
    slip = clamps.surface_slip(turn, drive.frame.size, slide)
    return [_slip("clamp turns and slides on the tube", clamp, held, slip, spread, off)]


def _square(
    drive: Drive, clamp: Clamp, held: Number, turn: Number, slide: Number, off: Number
) -> list[Row]:
    size, wall = drive.frame.size, drive.frame.wall
    asked = clamps.rocking_asked(turn, off, size, wall)
    holds = clamps.rocking_moment(held, size, wall)
    rocks = Row(station="clamp rocks on the edges of the tube", demand=asked, capacity=holds,
                quantity="torque", utilisation=usage.utilisation(asked, holds))  # fmt: skip
    return [rocks, _slip("clamp slides along the tube", clamp, held, slide, FLAT, off)]


CHECKS = (
    Check(
        name="tube_grip", part="clamp on the tube", kind="grip",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="chain off", sees="the bracket has turned or moved on its tube, paint is rubbed off in a band, the chain is suddenly loose",
        applies=is_clamped, rows=rows,
    ),
)  # fmt: skip
