"""Frame joint: does the clamped mount slide on the frame, or lift off it at a bolt?"""

from __future__ import annotations

from ..case import Case, Check, Row, has_frame_bolts
from ..formulas import slip, usage
from ..worked import Value
from .jack_screw import left_to_friction

# EN 1993-1-8 table 3.6 (from memory); which way a slot runs is not known: the lowest counts.
ROUND_HOLE = Value(1.0, "hole factor", "derived", "EN 1993-1-8 table 3.6, round holes")
SLOTTED_HOLE = Value(
    0.63, "hole factor", "derived",
    "EN 1993-1-8 table 3.6, long slots along the force (from memory)",
)  # fmt: skip
ONE_FACE = Value(1.0, "friction faces", "derived", "the mount lies on the frame with one face")
NO_PART = Value(1.0, "partial factor", "derived", "the design factor is put on the whole check")
NO_TENSION = Value(0.0, "tension", "derived", "its share stands on the side of the demand")


def rows(case: Case) -> list[Row]:
    """Compare each bolt's shear, and the friction its tension takes, with the slip resistance.

    The tension's part of EN 1993-1-8 eq. 3.8 stands with the demand, so that the resistance stays
    above nothing when a bolt is pulled hard, and the design factor covers the tension too.  Only
    what pulls the joint off the frame counts: tension that contact elsewhere in the joint meets
    takes no friction away (clause 3.9.2(2), from memory).  A bolt whose whole tension, prying included, eats up
    its clamp opens the joint there; the safe side does not go that far.  A jack screw takes the force
    along the slots towards the pull, and no more.
    """
    fixings, bolts = case.drive.fixings, case.response.bolts
    sheared = bolts.shear if fixings.jack is None else left_to_friction(case, fixings.jack)
    holes = SLOTTED_HOLE if fixings.slotted else ROUND_HOLE
    hold = slip.slip_resistance_design(
        holes, ONE_FACE, fixings.friction, fixings.preload, NO_TENSION, NO_PART
    )
    found = []
    each = zip(bolts.tension, bolts.net_pull, sheared, strict=True)
    for i, (tension, net, shear) in enumerate(each, 1):
        asked = slip.shear_to_hold(shear, net, fixings.friction, ONE_FACE, holes)
        found.append(
            Row(station=f"frame bolt {i}", demand=asked, capacity=hold, quantity="force",
                utilisation=usage.utilisation(asked, hold))
        )  # fmt: skip
        found.append(
            Row(station=f"frame bolt {i}, joint opens", demand=tension, capacity=fixings.preload,
                quantity="force", utilisation=usage.utilisation(tension, fixings.preload), level="safe")
        )  # fmt: skip
    return found


CHECKS = (
    Check(
        name="bolt_slip", part="frame joint", kind="grip",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="chain off", sees="the mount slides: bright marks beside the washers, the chain goes slack in steps",
        applies=has_frame_bolts, rows=rows,
    ),
)  # fmt: skip
