"""The frame member that carries the mount: stress of bending and twist against its yield strength.

The whole load is put on the one member.  Its wall under bolts, clamp or welds is not looked at, nor
are holes in it.
"""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import usage
from ..member_stress import stresses
from ..model import Drive
from ..structure import on_the_frame


def rows(case: Case) -> list[Row]:
    """Compare the equivalent stress at every station of the member with its yield strength."""
    drive = case.drive
    force, moment = on_the_frame(drive, case.loads)
    strength = drive.frame.yield_strength
    return [
        Row(station=f"frame member {found.station}", demand=found.stress, capacity=strength,
            quantity="stress", utilisation=usage.utilisation(found.stress, strength),
            level="safe" if found.safe_only else "both")
        for found in stresses(drive.frame, drive.mount.plane, force, moment)
    ]  # fmt: skip


def _is_known(drive: Drive) -> bool:
    return drive.frame.yield_strength is not None


CHECKS = (
    Check(
        name="frame_member", part="frame member", kind="strength",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="chain off", sees="the tube or bar that carries the mount stays bent or twisted: motor and sprocket stand crooked "
        "with nothing loose, paint is cracked beside the mount or at the tube's ends",
        applies=_is_known, rows=rows,
    ),
)  # fmt: skip
