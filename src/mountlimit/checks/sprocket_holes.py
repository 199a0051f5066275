"""Holes for the bolts in a sprocket of either side: bearing in a thin or soft plate."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..factors import AT_THE_END
from ..formulas import hole_limits, holes, sprocket, teeth, usage
from ..held import BoltRing, Sprocket
from ..model import Drive, Number
from ..stages import last
from . import _torque
from .hub_bolts import worst_shear
from .sprocket_teeth import factor_for

SOFT = ("plastic", "wood")


def hole_rows(
    case: Case, bolts: BoltRing | None, told: Sprocket | None, torque: Number
) -> list[Row]:
    """Compare the worst bolt's shear with the bearing of its hole in the sprocket."""
    if bolts is None or told is None:
        return []
    shear = worst_shear(bolts, torque, case.loads.shaft_load)
    diameter = bolts.bolts.thread.diameter
    if told.material.family in SOFT:
        borne = holes.bearing_force(diameter, told.tooth_width, told.material.yield_strength)
    else:
        borne = _by_eurocode(case, bolts, told)
    return [Row(station="hole in the sprocket", demand=shear, capacity=borne, quantity="force",
                utilisation=usage.utilisation(shear, borne))]  # fmt: skip


def _by_eurocode(case: Case, bolts: BoltRing, told: Sprocket) -> Number:
    """Give the bearing resistance of EN 1993-1-8 table 3.4, in single lap, partial factor 1."""
    card, thread = case.drive.chain.chain, bolts.bolts.thread
    hole, strength = thread.clearance_hole, told.material.ultimate_strength
    root = teeth.root_diameter(
        sprocket.pitch_diameter(card.pitch, told.teeth), teeth.seat_radius_max(card.roller_diameter)
    )
    across = holes.bearing_k1_edge(teeth.hole_to_root(root, bolts.circle), hole)
    along = holes.bearing_alpha_inner(
        teeth.hole_spacing(bolts.circle, bolts.bolts.number), hole,
        bolts.bolts.grade.ultimate_strength, strength,
    )  # fmt: skip
    size = (strength, thread.diameter, told.tooth_width, AT_THE_END)
    return hole_limits.lower_force(
        holes.bearing_resistance(across, along, *size), hole_limits.single_lap_bearing(*size)
    )


def _driving(drive: Drive) -> bool:
    return drive.hub.bolts is not None and drive.hub.sprocket is not None


def _driven(drive: Drive) -> bool:
    return drive.driven.bolts is not None and drive.driven.sprocket is not None


SEES = "play on reversing; the sprocket's bolt holes go oval or tear into the teeth"
CHECKS = (
    Check(
        name="hub_bolt_holes", part="bolt holes of the driving sprocket", kind="strength",
        groups=("pull", "reverse"), leads_to="chain off", sees=SEES, applies=_driving,
        rows=lambda case: hole_rows(
            case, case.drive.hub.bolts, case.drive.hub.sprocket, _torque.driving(case)
        ),
        choose_factor=lambda drive: factor_for(drive.hub.sprocket, "hub_bolt_holes"),
    ),
    Check(
        name="driven_bolt_holes", part="bolt holes of the driven sprocket", kind="strength",
        groups=("pull", "reverse"), leads_to="chain off", sees=SEES, applies=_driven,
        rows=lambda case: hole_rows(
            last(case), case.drive.driven.bolts, case.drive.driven.sprocket, _torque.driven(case)
        ),
        choose_factor=lambda drive: factor_for(drive.driven.sprocket, "driven_bolt_holes"),
    ),
)  # fmt: skip
