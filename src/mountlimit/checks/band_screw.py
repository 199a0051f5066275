"""Screws of the bands round a motor: what the load adds to a tightened screw.

Two answers stand side by side and the larger counts: every end of a band by the plate model, and the
worst by the statics of stiff rows.  Both let the bands take all that lifts.  Shear is left to the
cradle, which is fast on its plate; bands, lugs and their bending are not looked at.
"""

from __future__ import annotations

from ..case import Case, Check, Row
from ..factors import AT_THE_END
from ..formulas import bands as formulas
from ..formulas import bolt_group, layout, usage
from ..structure import wrench
from .band_grip import in_cradle, middle


def rows(case: Case) -> list[Row]:
    """Compare the tension that the load adds with what the preload leaves of EN 1993-1-8 table 3.4."""
    drive = case.drive
    bands, feet, screws = drive.mount.bands, drive.motor.feet, drive.motor.bolts
    assert bands is not None
    assert feet is not None
    full = bolt_group.tension_resistance(
        screws.grade.ultimate_strength, screws.thread.stress_area, AT_THE_END
    )
    left = formulas.tension_left(full, drive.face.preload)
    place = (0.0, layout.opposite(feet.shaft_height), middle(drive))
    force, moment = wrench(drive, case.loads, place)
    worst = formulas.end_tension(
        force[1], moment[0], moment[2], bands.rows, bands.place, bands.square_sum, feet.across
    )
    each = [(f"end of a band {i}", b.tension) for i, b in enumerate(case.response.motor_bolts, 1)]
    return [
        Row(station=words, demand=asked, capacity=left, quantity="force",
            utilisation=usage.utilisation(asked, left))
        for words, asked in (*each, ("worst end of a band by statics", worst))
    ]  # fmt: skip


CHECKS = (
    Check(
        name="band_screw", part="screws of the bands", kind="strength",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="chain off", sees="a screw of a band stretches, its nut turns freely; the motor lifts out of its cradle",
        applies=in_cradle, rows=rows,
    ),
)  # fmt: skip
