"""The mount under the heads of its bolts: does a head or washer pull through the plate?

Punching shear round the head (in a soft mount round the washer), for the tension that the loads bring to a frame bolt or a face bolt
of the motor.  Soft mounts take it at their shear strength.
"""

from __future__ import annotations

from .. import strengths
from ..cards import Thread
from ..case import Case, Check, Row
from ..formulas import edge_screws, hole_limits, usage
from ..model import Drive, Number
from ..mounting import Substance
from ..worked import Value
from .bolt_bearing import SOFT, factor_of_materials
from .motor_bolts import loads_on

EN_SHARE = Value(
    0.6, "share of the ultimate strength", "derived", "EN 1993-1-8 table 3.4, punching"
)


def rows(case: Case) -> list[Row]:
    """Compare the tension of every bolt with the force that punches its head through the mount."""
    drive = case.drive
    mount, fixings, found = drive.mount, drive.fixings, []
    planes = [plane for plane in mount.planes for _ in plane.bolts]
    for i, (plane, tension) in enumerate(zip(planes, case.response.bolts.tension, strict=True), 1):
        held = punching_force(
            mount.substance(plane.of_second), fixings.bolts.thread, fixings.washer_diameter,
            plane.thickness,
        )  # fmt: skip
        found.append(_row(f"frame bolt {i}", tension, held))
    if mount.flat_face:
        held = punching_force(
            mount.material, drive.motor.bolts.thread, drive.face.washer_diameter, mount.thickness
        )
        found += [_row(f"face bolt of the motor{n}", t, held) for n, t, _ in loads_on(case)]
    return found


def _row(station: str, tension: Number, held: Number) -> Row:
    return Row(station=station, demand=tension, capacity=held, quantity="force",
               utilisation=usage.utilisation(tension, held))  # fmt: skip


def punching_force(
    material: Substance, thread: Thread, washer: Number, thickness: Number
) -> Number:
    """Give the force that punches a bolt's head through a part, N; partial factor 1.

    In metal the head counts by its width across flats (the standard takes the mean of that and the
    width across corners); in a soft mount its washer counts.
    """
    if material.card.family in SOFT:
        return edge_screws.punched(strengths.yielding_shear(material), washer, thickness)
    shear = hole_limits.share_of_ultimate(strengths.ultimate(material), EN_SHARE)
    return edge_screws.punched(shear, thread.hex_width, thickness)


def has_bolts(drive: Drive) -> bool:
    """Say that the check speaks of mounts with bolts through them."""
    return bool(drive.fixings.bolts.count) or drive.mount.flat_face


CHECKS = (
    Check(
        name="pull_through", part="mount under the bolt heads", kind="strength",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="chain off", sees="a bolt head and its washer sink into the plate and pull through it",
        applies=has_bolts, rows=rows, choose_factor=lambda drive: factor_of_materials(drive, "pull_through"),
    ),
)  # fmt: skip
