"""Driven shaft: bending by the chain's pull and the weight told, and torsion, against yield and fatigue.

A dead axle stands still: it carries no torque, and its bending comes and goes with the starts
instead of turning over.  Side forces of wheels are not in it.
"""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import fatigue, stress
from ..formulas import shaft as shafts
from ..held import DrivenShaft, RoundShaft
from ..model import Drive, Number
from ..worked import Value
from . import _driven, _shaft, _torque

NO_TORQUE = Value(0.0, "no torque", "derived", "a dead axle stands still, the hub turns on it")
NO_WEIGHT = Value(0.0, "no weight", "derived", "driven.weight is not given")
FROM_REST = Value(
    0.0, "no reversing", "derived", "the chain pulls one way: from nothing to its pull"
)


def _station(shaft: DrivenShaft) -> str:
    place = "under the sprocket" if shaft.between else "at the bearing beside the sprocket"
    return place if shaft.weight is None else f"{place}, weight added"


def rows(case: Case) -> list[Row]:
    """Compare the equivalent stress of the round driven shaft with its yield strength."""
    shaft = case.drive.driven.shaft
    if shaft is None:
        return []
    torque = NO_TORQUE if shaft.dead else _torque.driven(case)
    return [_shaft.strength_row(_station(shaft), _driven.moment(case, shaft), torque, shaft)]


def fatigue_rows(case: Case) -> list[Row]:
    """Compare the swing of the driven shaft's stress with its endurance limit, after Goodman."""
    shaft = case.drive.driven.shaft
    if shaft is None or shaft.fatigue is None:
        return []
    if shaft.dead:
        return [_dead_row(case, shaft, shaft.fatigue)]
    return _shaft.fatigue_rows(
        _station(shaft), _driven.moment(case, shaft), _torque.driven(case), case.drive.duty.reverse,
        shaft.fatigue,
    )  # fmt: skip


def _dead_row(case: Case, shaft: DrivenShaft, steel: RoundShaft) -> Row:
    """Compare the stress that comes and goes with the pull, on that of the weight, with the limit.

    The size factor is that of a turning bar: the safe side for one that stands still.
    """
    in_bending, _ = _shaft.notch_factors(steel)

    def at_the_notch(moment: Number) -> Number:
        return shafts.notched_stress(
            stress.round_bending_stress(moment, steel.diameter), in_bending
        )

    swing = at_the_notch(_driven.pull_moment(shaft, _torque.driven_pull(case)))
    stands = NO_WEIGHT
    if shaft.weight is not None:
        stands = at_the_notch(
            _driven.weight_moment(shaft, _driven.weight_force(case, shaft.weight))
        )
    return _shaft.goodman_row(
        f"{_station(shaft)} ({steel.notch}), starts on a dead axle",
        fatigue.alternating_stress(swing, FROM_REST),
        fatigue.mean_stress(swing, FROM_REST, stands), steel,
    )  # fmt: skip


def _has_notch(drive: Drive) -> bool:
    return drive.driven.shaft is not None and drive.driven.shaft.fatigue is not None


CHECKS = (
    Check(
        name="driven_shaft", part="driven shaft", kind="strength",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="notice", sees="the driven sprocket wobbles and the chain slackens once in every turn",
        applies=lambda drive: drive.driven.shaft is not None, rows=rows,
    ),
    Check(
        name="driven_shaft_fatigue", part="driven shaft", kind="life", groups=("steady",),
        leads_to="chain off", sees="after many turns at this pull the driven shaft breaks at a notch; no warning before it",
        applies=_has_notch, rows=fatigue_rows,
    ),
)  # fmt: skip
