"""Spacers between two plates: stress at their ends against yield.

A spacer is a beam held at both plates, so that it carries bending besides its pull or push.  Forces
are those at the mid-planes of the plates, which are no smaller than those at the faces.  The screws
that hold it are not looked at.
"""

from __future__ import annotations

from ..case import Case, Check, Row
from ..factors import DESIGN_FACTORS, MOUNT_FACTORS
from ..formulas import equivalent, spacer, tipping, usage
from ..model import Drive
from ..plate_fasteners import spacer_forces

OWN = "mount.spacer_yield"


def rows(case: Case) -> list[Row]:
    """Compare the equivalent stress at both ends of every spacer with its yield strength."""
    settled = case.response.plates
    found: list[Row] = []
    if settled is None:
        return found
    for i, part in enumerate(case.drive.mount.spacers):
        for end, words in enumerate(("front", "second")):
            along, one, two, moment_1, moment_2, torque = spacer_forces(settled, i, end)
            normal = spacer.normal_stress(
                along, spacer.bending_moment(moment_1, moment_2), part.diameter, part.bore
            )
            shear = spacer.shear_stress(
                tipping.bolt_shear(one, two), torque, part.diameter, part.bore
            )
            stress = equivalent.von_mises(normal, shear)
            limit = part.yield_strength
            found.append(
                Row(station=f"spacer {i + 1} at the {words} plate", demand=stress, capacity=limit,
                    quantity="stress", utilisation=usage.utilisation(stress, limit))
            )  # fmt: skip
    return found


def _factor(drive: Drive) -> tuple[float, str]:
    """Give the factor of the mount's material where the spacers are made of it."""
    if drive.mount.spacers[0].yield_strength.key == OWN:
        return DESIGN_FACTORS["spacer_strength"]
    kind = drive.mount.material.card.design_class
    return MOUNT_FACTORS[f"metal, {drive.mount.grade}" if kind == "metal" else kind]


CHECKS = (
    Check(
        name="spacer_strength", part="spacers between the plates", kind="strength",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="chain off", sees="a spacer is bent or has come loose; the two plates no longer stand square",
        applies=lambda drive: bool(drive.mount.spacers), rows=rows, choose_factor=_factor,
    ),
)  # fmt: skip
