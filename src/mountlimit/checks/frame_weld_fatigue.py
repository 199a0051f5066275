"""The welds that hold the mount to its frame against fatigue by repeated starts: the throat.

What the effective pull and the torque bring comes with every start and goes, or turns to the
reversed share; the motor's weight and the slack chain stand and count for nothing, since only the
range counts beside a weld.  As for the mount, a start is counted without its starting factor.
Nominal stress in the throat after EN 1993-1-9: across it as a root crack, along it as shear.  The
toe in the plate is looked at by ``mount_fatigue``; the frame's own wall is not.
"""

from __future__ import annotations

from .. import respond
from ..case import Case, Check, Row
from ..formulas import weld_fatigue
from . import _weld_range
from .frame_weld import in_order, is_welded, line_parts
from .mount_fatigue import coming_and_going


def rows(case: Case) -> list[Row]:
    """Compare the stress range of a start in every throat with what the starts wanted allow."""
    mount, duty = case.drive.mount, case.drive.duty
    loaded = respond.solve(case.drive, coming_and_going(case.loads)).welds
    found = []
    for weld, (force, moment) in zip(mount.welds, loaded, strict=True):
        order = in_order(mount, weld)
        along, across, normal = line_parts(
            weld, [force[i] for i in order], [moment[i] for i in order]
        )
        ranges = (
            weld_fatigue.start_range(
                weld_fatigue.across_throat(across, normal, weld.throat), duty.reverse
            ),
            weld_fatigue.start_range(weld_fatigue.along_throat(along, weld.throat), duty.reverse),
        )
        words = _weld_range.number(duty.starts)
        family = mount.material.card.family
        found.append(_weld_range.throat_row(weld.name, words, ranges, family, duty.starts))
    return found


CHECKS = (
    Check(
        name="frame_weld_fatigue", part="weld to the frame", kind="life", groups=("steady",),
        leads_to="chain off", sees="after as many starts as you asked for (duty.starts) a line of rust along the middle of "
        "the weld, then the plate hinges; fewer starts stand more",
        applies=is_welded, rows=rows,
    ),
)  # fmt: skip
