"""Driving sprocket bolted to its hub on a circle: shear of the bolts, and slip of the joint.

Where friction gives way the bolts stop the sprocket after their clearance, so in a drive that pulls
one way slip is a matter of time: the pull goes round the sprocket with every turn and works the bolts
loose.  In a drive that reverses the play is hammered, and slip counts as grip.
"""

from __future__ import annotations

from ..case import Case, Check, Level, Row
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


def slip_rows(
    bolts: BoltRing | None, torque: Number, pull: Number, level: Level = "both"
) -> list[Row]:
    """Compare the worst bolt's share with the friction its clamp makes."""
    if bolts is None:
        return []
    shear = worst_shear(bolts, torque, pull)
    hold = slip.slip_resistance(bolts.friction, bolts.preload, NO_TENSION)
    return [Row(station="worst bolt of the circle", demand=shear, capacity=hold, quantity="force",
                utilisation=usage.utilisation(shear, hold), level=level)]  # fmt: skip


def hammers(bolts: BoltRing | None, drive: Drive) -> bool:
    """Tell whether slip of a bolted sprocket is hammered by reversing."""
    return bolts is not None and drive.duty.reverse > 0


def works_loose(bolts: BoltRing | None, drive: Drive) -> bool:
    """Tell whether slip of a bolted sprocket comes back with every turn: one way, pull on the bolts."""
    return bolts is not None and not drive.duty.reverse > 0 and not bolts.piloted


def rows(case: Case) -> list[Row]:
    """Compare shear of the driving sprocket's bolts with what they bear."""
    return shear_rows(case.drive.hub.bolts, _torque.driving(case), case.loads.shaft_load)


def grip_rows(case: Case) -> list[Row]:
    """Compare the driving sprocket's bolts with the friction they make."""
    return slip_rows(case.drive.hub.bolts, _torque.driving(case), case.loads.shaft_load)


def loosening_rows(case: Case) -> list[Row]:
    """Compare the pull of every turn with the friction of the driving sprocket's bolts."""
    torque = case.loads.torque
    return slip_rows(case.drive.hub.bolts, torque, case.loads.shaft_load, "safe")


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
        applies=lambda drive: hammers(drive.hub.bolts, drive), rows=grip_rows,
    ),
    Check(
        name="hub_bolt_loosening", part="bolted face of the driving sprocket", kind="life",
        groups=("steady",), leads_to="notice",
        sees="brown dust round the sprocket's bolts, a click at every turn; they work loose and then shear",
        applies=lambda drive: works_loose(drive.hub.bolts, drive), rows=loosening_rows,
    ),
)  # fmt: skip
