"""The welds that hold the mount to its frame: force per length in the throat.

Every weld is a group of one or two lines under the force and moment that the mount puts on it; the
parts of one direction are added in size.  Compared with the simplified method of EN 1993-1-8, which
takes the resultant for shear in the throat whatever its direction.  The frame's own wall beside the
weld is not checked.
"""

from __future__ import annotations

from ..case import Case, Check, Row
from ..factors import AT_THE_END
from ..formulas import usage, weld_lines, welds
from ..model import Drive, Number
from ..mounting import AXES, Mount, Weld


def rows(case: Case) -> list[Row]:
    """Compare the largest force per length of every weld with what its throat bears."""
    mount = case.drive.mount
    found = []
    for weld, (force, moment) in zip(mount.welds, case.response.welds, strict=True):
        order = in_order(mount, weld)
        asked = line_force(weld, [force[i] for i in order], [moment[i] for i in order])
        strength = welds.fillet_strength(weld.ultimate_strength, weld.correlation, AT_THE_END)
        borne = welds.fillet_force_per_length(strength, weld.throat)
        found.append(
            Row(station=weld.name, demand=asked, capacity=borne, quantity="stiffness",
                utilisation=usage.utilisation(asked, borne))
        )  # fmt: skip
    return found


def in_order(mount: Mount, weld: Weld) -> tuple[int, int, int]:
    """Give the numbers of the axes along a weld, across it and normal to the face it is on."""
    along, normal = AXES.index(weld.along), AXES.index(mount.plane.normal)
    return along, 3 - along - normal, normal


def line_force(weld: Weld, force: list[Number], moment: list[Number]) -> Number:
    """Give the largest force per length of a weld, N/m; the rest as ``line_parts``."""
    return weld_lines.resultant(*line_parts(weld, force, moment))


def line_parts(
    weld: Weld, force: list[Number], moment: list[Number]
) -> tuple[Number, Number, Number]:
    """Give the largest force per length of a weld along it, across it and normal, N/m.

    Parameters
    ----------
    weld : Weld
        one fillet, or two side by side
    force : F [N]
        along, across and normal
    moment : M [N*m]
        about the same axes through the weld's middle

    Source
    ------
    line method: Shigley's Mechanical Engineering Design 9th ed. chapter 9
    """
    n, length = weld.sides, weld.length
    polar = weld_lines.unit_polar(n, length, weld.apart)
    along = weld_lines.together(
        weld_lines.direct(force[0], n, length),
        weld_lines.torsion_along(moment[2], weld.apart, polar),
    )
    across = weld_lines.together(
        weld_lines.direct(force[1], n, length), weld_lines.torsion_across(moment[2], length, polar)
    )
    bending = weld_lines.together(
        _about_the_line(weld, moment[0]), weld_lines.end_bending(moment[1], n, length)
    )
    normal = weld_lines.together(weld_lines.direct(force[2], n, length), bending)
    return along, across, normal


def _about_the_line(weld: Weld, moment: Number) -> Number:
    if float(weld.sides) == 1:
        return weld_lines.throat_bending(moment, weld.length, weld.throat)
    modulus = welds.weld_pair_modulus(weld.length, weld.apart, weld.throat)
    return weld_lines.pair_bending(moment, modulus, weld.throat)


def is_welded(drive: Drive) -> bool:
    """Say that a check speaks of mounts welded to their frame."""
    return bool(drive.mount.welds)


CHECKS = (
    Check(
        name="frame_weld", part="weld to the frame", kind="strength",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="chain off", sees="a crack along the toe of the weld, a line of rust, then the plate hinges",
        applies=is_welded, rows=rows,
    ),
)  # fmt: skip
