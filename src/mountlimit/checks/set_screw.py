"""Sprocket held by set screws alone: torque they can hold."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..factors import DESIGN_FACTORS, SET_SCREW_REVERSING
from ..formulas import give, shaft, usage
from ..formulas import hub as hub_formulas
from ..formulas import torque as torque_formulas
from ..model import Drive
from ..worked import Value


def rows(case: Case) -> list[Row]:
    """Compare steady torque (safe) and peak torque (gives) with what the screws hold.

    The design factor for start-stop duty already covers the shock of a start, so the safe side
    takes the steady torque; the best estimate of slipping takes the peak.  A start harder than that
    factor is looked at by itself: the peak against the whole hold.
    """
    hub, loads = case.drive.hub, case.loads
    hold = shaft.set_screw_torque(hub.set_screw_hold, case.drive.shaft.diameter)
    together = hub_formulas.screws_together(hold, hub.set_screw_pair)
    peak = give.peak_torque(loads.torque, loads.starting_factor)
    factor = case.drive.policy.factors.get("set_screw", _factor(case.drive)[0])
    whole = torque_formulas.scaled_torque(
        together,
        Value(factor, "design factor", "derived", "taken out again: the peak is no steady torque"),
    )
    return [
        Row(station="screw point", demand=loads.torque, capacity=together, quantity="torque",
            utilisation=usage.utilisation(loads.torque, together), level="safe"),
        Row(station="screw point, blow of a start", demand=peak, capacity=whole, quantity="torque",
            utilisation=usage.utilisation(peak, whole), level="safe"),
        Row(station="screw point", demand=peak, capacity=together, quantity="torque",
            utilisation=usage.utilisation(peak, together), level="gives"),
    ]  # fmt: skip


def _factor(drive: Drive) -> tuple[float, str]:
    return SET_SCREW_REVERSING if drive.duty.reverse > 0 else DESIGN_FACTORS["set_screw"]


CHECKS = (
    Check(
        name="set_screw", part="set screw", kind="grip", groups=("pull", "reverse"),
        leads_to="chain off", sees="the motor revs without drive, or the sprocket creeps along the shaft and the chain comes off",
        applies=lambda drive: drive.hub.drive == "set screw", rows=rows, choose_factor=_factor,
    ),
)  # fmt: skip
