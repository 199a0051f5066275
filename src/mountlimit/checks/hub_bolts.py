"""Driving sprocket bolted to its hub on a circle: shear of the bolts, and slip of the joint."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..factors import AT_THE_END
from ..formulas import bolt_group, ring, slip, usage
from ..held import BoltRing
from ..model import Drive, Number
from ..worked import Value
from . import _torque

NO_PULL = Value(0.0, "pull", "derived", "a shoulder of the hub carries the chain's pull")
NO_TENSION = Value(0.0, "tension", "derived", "the chain pulls across the bolts, not along them")


def worst_shear(bolts: BoltRing, torque: Number, pull: Number) -> Number:
    """Give the shear on the worst bolt."""
    return ring.ring_bolt_shear(
        torque, NO_PULL if bolts.piloted else pull, bolts.bolts.number, bolts.circle
    )


def shear_rows(bolts: BoltRing | None, torque: Number, pull: Number) -> list[Row]:
    """Compare the worst bolt's shear with EN 1993-1-8 table 3.4, thread in the shear plane."""
    if bolts is None:
        return []
    grade, area = bolts.bolts.grade, bolts.bolts.thread.stress_area
    shear = worst_shear(bolts, torque, pull)
    cut = bolt_group.shear_resistance(grade.shear_factor, grade.ultimate_strength, area, AT_THE_END)
    return [Row(station="worst bolt of the circle", demand=shear, capacity=cut, quantity="force",
                utilisation=usage.utilisation(shear, cut))]  # fmt: skip


def slip_rows(bolts: BoltRing | None, torque: Number, pull: Number) -> list[Row]:
    """Compare the worst bolt's share with the friction its clamp makes."""
    if bolts is None:
        return []
    shear = worst_shear(bolts, torque, pull)
    hold = slip.slip_resistance(bolts.friction, bolts.preload, NO_TENSION)
    return [Row(station="worst bolt of the circle", demand=shear, capacity=hold, quantity="force",
                utilisation=usage.utilisation(shear, hold))]  # fmt: skip


def rows(case: Case) -> list[Row]:
    """Compare shear of the driving sprocket's bolts with what they bear."""
    return shear_rows(case.drive.hub.bolts, _torque.driving(case), case.loads.shaft_load)


def grip_rows(case: Case) -> list[Row]:
    """Compare the driving sprocket's bolts with the friction they make."""
    return slip_rows(case.drive.hub.bolts, _torque.driving(case), case.loads.shaft_load)


def _bolted(drive: Drive) -> bool:
    return drive.hub.bolts is not None


CHECKS = (
    Check(
        name="hub_bolts", part="bolts of the driving sprocket", kind="strength",
        groups=("pull", "reverse"),
        leads_to="chain off", sees="heads of the sprocket's bolts lie on the ground; the hub turns alone",
        applies=_bolted, rows=rows,
    ),
    Check(
        name="hub_bolt_slip", part="bolted face of the driving sprocket", kind="grip",
        groups=("pull", "reverse"),
        leads_to="no drive", sees="play between sprocket and hub on reversing; the bolts work loose and then shear",
        applies=_bolted, rows=grip_rows,
    ),
)  # fmt: skip
