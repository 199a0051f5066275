"""Driving sprocket welded to its hub, against fatigue: the throat of the ring of weld.

Two things come and go.  The torque comes with every start: shear along the ring.  The pull of the
chain stands still in space while the weld turns, so at a place of the ring it goes from one way to
the other **in every turn**, not once a start: along the ring where it lies along, across the throat
where it lies square to it, each from minus to plus its size.  Two rows, then:

- every start, for as many as are wanted (``duty.starts``): torque and pull in line along the ring,
  from nothing or from the reversed share, and the pull across;
- every turn: how many there will be is not known, and soon there are millions (a shaft of 1000 turns
  a minute makes a hundred million in 1700 hours).  So the range must stay below the cut-off of
  EN 1993-1-9, under which ranges do nothing, however many, even where starts go above.  The limit
  for ranges of one size alone would be 1.8 times as high across the throat.

A shoulder that carries the pull (``hub.pilot``) takes it off the weld and leaves the starts alone.
The pull is shared evenly round the ring, as in the static check, and without its starting factor,
as for the mount; the tilt of a sprocket welded on one side is left to the hub's face.
"""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import ring, weld_fatigue
from ..held import RingWeld
from ..model import Duty, Number
from ..worked import Value
from . import _torque, _weld_range

NO_PULL = Value(0.0, "pull", "derived", "the torque alone")
NO_TORQUE = Value(0.0, "torque", "derived", "the pull alone")


def ring_rows(weld: RingWeld | None, duty: Duty, torque: Number, pull: Number) -> list[Row]:
    """Compare the stress ranges of a start and of a turn with what the ring's throat bears."""
    if weld is None:
        return []
    starts = _weld_range.number(duty.starts)
    in_line = _stress(weld, torque, NO_PULL if weld.piloted else pull)
    along = weld_fatigue.start_range(in_line, duty.reverse)
    if weld.piloted:
        return [_weld_range.throat_row("ring", starts, (NO_PULL, along), weld.family, duty.starts)]
    turn = weld_fatigue.turning_range(_stress(weld, NO_TORQUE, pull), duty.reverse)
    return [
        _weld_range.throat_row("ring", starts, (turn, along), weld.family, duty.starts),
        _weld_range.throat_row(
            "ring", "every turn of the sprocket", (turn, turn), weld.family, _weld_range.ENDLESS
        ),
    ]


def _stress(weld: RingWeld, torque: Number, pull: Number) -> Number:
    return ring.ring_weld_stress(
        torque, pull, weld.diameter, weld.throat, weld.sides, weld.share
    )  # fmt: skip


def rows(case: Case) -> list[Row]:
    """Compare the driving sprocket's weld with what it bears again and again."""
    drive = case.drive
    return ring_rows(drive.hub.weld, drive.duty, _torque.driving(case), case.loads.shaft_load)


CHECKS = (
    Check(
        name="hub_weld_fatigue", part="weld of the driving sprocket", kind="life", groups=("steady",),
        leads_to="no drive", sees="after as many starts as you asked for (duty.starts), or after some millions of turns, a "
        "hairline round the weld, rust from it, then the hub turns alone",
        applies=lambda drive: drive.hub.weld is not None, rows=rows,
    ),
)  # fmt: skip
