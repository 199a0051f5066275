"""The mount against fatigue by repeated starts: a crack at a hole, inside a bend or along a weld.

In every cut the stress that the pull brings comes with every start and goes (or turns to the
reversed share); that of the motor's weight and the slack chain stands.  The nominal stress of the
net section is raised by the notch of the holes in the cut: the stress that is even through the thickness, and the shear that goes with it, by a hole
in a tension strip; bending of the thickness and twist by a hole in a bent plate.  Each hole is
taken in the full width, and the sharpest one for the whole cut: both on the safe side.  Raised
shear counts sqrt(3) times the factor, 5.2 for a small hole in shear, where the exact value is 4.

Where the toe of a weld lies in the cut the range of the nominal stress is compared with the detail
category of a load-carrying fillet's toe for the starts wanted (``duty.starts``), whatever the mean:
the stress left by welding is as high as the yield strength.  Goodman with a notch factor of 2 would
allow S235 106 MPa from rest and 150 MPa reversed for a million starts, the category 79 MPa of either.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from .. import sections, strengths
from ..case import Case, Check, Loads, Row
from ..formulas import (
    concentration,
    endurance,
    fatigue,
    layout,
    rigid,
    shaft,
    usage,
    weld_fatigue,
)
from ..model import Drive, Duty, Number
from ..mounting import Cut, Substance
from ..worked import Value
from . import _weld_range
from .mount_section import inside_bend

# Notch length of aluminium: 0.5 to 0.6 mm; the shorter is the worse.
ALUMINIUM_LENGTH = Value(
    0.0005, "notch length of aluminium", "assumed",
    "Peterson's Stress Concentration Factors, 0.5 to 0.6 mm (from memory)",
)  # fmt: skip
IRON = Value(
    0.2, "notch sensitivity of cast iron", "assumed",
    "Shigley's Mechanical Engineering Design 9th ed. section 6-10: all grades (from memory)",
)  # fmt: skip
FULL = Value(
    1.0, "notch sensitivity", "assumed", "common practice, no source: the full notch where none is known"
)  # fmt: skip
EVEN = ("normal", "moment_normal", "shear_across")  # even through the thickness
BENT = ("moment_across", "bimoment", "torque", "shear_normal")


def rows(case: Case) -> list[Row]:
    """Compare the stress of repeated starts in every cut with the fatigue strength, after Goodman."""
    mount, duty = case.drive.mount, case.drive.duty
    found = []

    def raised(cut: Cut) -> sections.Raised:
        material = mount.substance(cut.second)
        return notches(cut, material, strengths.ultimate(material))

    swings = sections.stresses(case, raised, coming_and_going(case.loads))
    stands = sections.stresses(case, raised, standing(case.loads))
    for (cut, swing), (_, stand) in zip(swings, stands, strict=True):
        material = mount.substance(cut.second)
        found.append(
            _toe_row(cut, material, duty, swing)
            if cut.toe
            else _notch_row(cut, material, duty.reverse, swing, stand)
        )
    return found


def _notch_row(
    cut: Cut, material: Substance, reverse: Number, swing: Number, stand: Number
) -> Row:  # fmt: skip
    """Compare the stress at holes and bends with the fatigue strength of the material."""
    strength = material.fatigue_strength
    safety = endurance.goodman_uniaxial(
        fatigue.alternating_stress(swing, reverse), fatigue.mean_stress(swing, reverse, stand),
        strength, strengths.ultimate(material),
    )  # fmt: skip
    same = endurance.reversed_stress(strength, safety)
    return Row(station=f"{cut.name}, {material.card.fatigue_cycles:.0e} starts", demand=same,
               capacity=strength, quantity="stress", utilisation=usage.utilisation(same, strength),
               level="safe")  # fmt: skip


def _toe_row(cut: Cut, material: Substance, duty: Duty, swing: Number) -> Row:
    """Compare the range of the nominal stress at a weld's toe with its detail category."""
    asked = weld_fatigue.start_range(swing, duty.reverse)
    category = _weld_range.categories(material.card.family).toe
    allowed = weld_fatigue.range_allowed(category, duty.starts)
    return Row(station=f"{cut.name}, toe of the weld, {_weld_range.number(duty.starts)}", demand=asked,
               capacity=allowed, quantity="stress", utilisation=usage.utilisation(asked, allowed),
               level="safe")  # fmt: skip


def coming_and_going(loads: Loads) -> Loads:
    """Give the part of the loads that comes with every start: effective pull and torque."""
    return replace(loads, shaft_load=loads.effective_pull, weight=(0.0, 0.0, 0.0))


def standing(loads: Loads) -> Loads:
    """Give the part of the loads that stays: weight, and the chain as tight as its slack run."""
    slack = loads.slack_side_tension
    return replace(loads, shaft_load=rigid.sum_of_two(slack, slack), stator_torque=0.0)


def notches(cut: Cut, material: Substance, ultimate: Number) -> Mapping[str, Number]:
    """Give by how much the stress of each load is raised in a cut: its holes or its bend."""
    raised = dict(inside_bend(cut))
    if cut.holes:
        pairs = [_hole(cut, diameter, material, ultimate) for _, diameter in cut.holes]
        raised |= dict.fromkeys(EVEN, max(even for even, _ in pairs))
        raised |= dict.fromkeys(BENT, max(bent for _, bent in pairs))
    return raised


def _hole(cut: Cut, size: float, material: Substance, ultimate: Number) -> tuple[Number, Number]:
    """Give the fatigue notch factors of one hole: in tension and in bending of the plate."""
    where = f"from the cut '{cut.name}'"
    diameter = Value(size, "hole diameter", "derived", where)
    width = Value(cut.width, "width of the cut", "derived", where)
    thickness = Value(cut.thickness, "thickness of the cut", "derived", where)
    sensitivity = _sensitivity(material, layout.half(diameter), ultimate)
    return (
        shaft.fatigue_notch_factor(
            sensitivity, concentration.central_hole_tension(diameter, width)
        ),
        shaft.fatigue_notch_factor(sensitivity, concentration.hole_in_bending(diameter, thickness)),
    )


def _sensitivity(material: Substance, radius: Number, ultimate: Number) -> Number:
    """Give the notch sensitivity at a radius; plastics and wood take the full notch."""
    family = material.card.family
    if family == "steel":
        return shaft.notch_sensitivity(shaft.notch_length(ultimate), radius)
    if family == "aluminium":
        return shaft.notch_sensitivity(ALUMINIUM_LENGTH, radius)
    return IRON if family == "iron" else FULL


def has_cuts(drive: Drive) -> bool:
    """Say that the check speaks of mounts with named cuts; a form without them says so itself."""
    return bool(drive.mount.cuts)


CHECKS = (
    Check(
        name="mount_fatigue", part="mount", kind="life", groups=("steady",),
        leads_to="chain off", sees="after as many starts as the station says a crack grows from a hole, inside the bend or along a weld; "
        "fewer starts stand more",
        applies=has_cuts, rows=rows,
    ),
)  # fmt: skip
