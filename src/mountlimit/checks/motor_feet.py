"""Motor on feet: strength of the foot bolts, and whether the feet slide or lift on the base plate.

Two answers stand side by side and the larger counts: every bolt by the plate model, where part of a
moment goes through the foot's own washer, and the worst bolt by the statics of rigid feet, where it
all goes through the bolts.  The bolts go through foot and plate with nuts; threads tapped in the
plate are not checked.
"""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import feet, layout, slip, tipping, usage
from ..model import Drive, Number
from ..structure import wrench
from .bolt_slip import NO_PART, NO_TENSION, ONE_FACE, ROUND_HOLE, SLOTTED_HOLE
from .motor_bolts import combined_row


def bolt_rows(case: Case) -> list[Row]:
    """Compare tension with shear of every foot bolt, by the plate model, with EN 1993-1-8 table 3.4.

    The motor's body is rigid and tied to the plate at its bolts, so a foot pressed down takes no tension.
    """
    bolts = case.drive.motor.bolts
    found = [
        combined_row(f"foot bolt {i}, tension and shear", bolts, bolt.tension, bolt.shear)
        for i, bolt in enumerate(case.response.motor_bolts, 1)
    ]
    tension, shear = by_statics(case)
    return [*found, combined_row("worst foot bolt by statics", bolts, tension, shear)]


def by_statics(case: Case) -> tuple[Number, Number]:
    """Give tension and shear (N) of the worst foot bolt, feet and base plate rigid."""
    foot = case.drive.motor.feet
    assert foot is not None  # ``has_feet``
    middle = layout.opposite(layout.total(foot.to_face, layout.half(foot.along)))
    place = (0.0, layout.opposite(foot.shaft_height), middle)
    force, moment = wrench(case.drive, case.loads, place)
    return (
        feet.foot_tension(force[1], moment[0], moment[2], foot.along, foot.across),
        feet.foot_shear(force[0], moment[1], foot.along, foot.across),
    )


def slip_rows(case: Case) -> list[Row]:
    """Compare each foot's shear, and the friction that lifting takes, with the slip resistance.

    Only what lifts the whole motor off its base takes friction away: a moment presses one foot as
    much as it relieves another (EN 1993-1-8 clause 3.9.2(2), from memory).  A foot whose tension
    eats up its clamp lifts; the safe side does not go that far.
    """
    face, motor = case.drive.face, case.drive.motor
    force, _ = wrench(case.drive, case.loads, (0.0, 0.0, 0.0))
    lifting = tipping.direct_tension(force[1], motor.bolts.number)
    holes = SLOTTED_HOLE if face.slotted else ROUND_HOLE
    hold = slip.slip_resistance_design(
        holes, ONE_FACE, face.friction, face.preload, NO_TENSION, NO_PART
    )
    tension, shear = by_statics(case)
    feet_of = [
        (f"foot {i}", b.tension, b.shear) for i, b in enumerate(case.response.motor_bolts, 1)
    ]
    found = []
    for name, pull, pushed in (*feet_of, ("worst foot by statics", tension, shear)):
        lifts = usage.utilisation(pull, face.preload)
        found.append(
            Row(station=f"{name} lifts", demand=pull, capacity=face.preload, quantity="force",
                utilisation=lifts, level="safe")
        )  # fmt: skip
        if face.slotted:
            asked = slip.shear_to_hold(pushed, lifting, face.friction, ONE_FACE, holes)
            found.append(
                Row(station=f"{name} slides", demand=asked, capacity=hold, quantity="force",
                    utilisation=usage.utilisation(asked, hold))
            )  # fmt: skip
    return found


def has_feet(drive: Drive) -> bool:
    """Say that a check speaks of motors that stand on feet."""
    return not drive.mount.flat_face and drive.mount.bands is None


CHECKS = (
    Check(
        name="foot_bolts", part="motor foot bolts", kind="strength",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="chain off", sees="a foot bolt stretches or shears; the motor rocks on its base at pull-away",
        applies=has_feet, rows=bolt_rows,
    ),
    Check(
        name="foot_slip", part="motor feet", kind="grip",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="chain off", sees="the motor walks along its slots: bright marks beside the feet, the chain goes slack",
        applies=has_feet, rows=slip_rows,
    ),
)  # fmt: skip
