"""Driving sprocket welded to its hub: shear in the throat of the ring of weld."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..factors import AT_THE_END
from ..formulas import ring, usage, welds
from ..held import RingWeld
from ..model import Number
from . import _torque
from .hub_bolts import NO_PULL


def weld_rows(weld: RingWeld | None, torque: Number, pull: Number) -> list[Row]:
    """Compare the shear stress in the throat with the strength of EN 1993-1-8 clause 4.5.3.3.

    Aluminium is judged with its heat-affected strength after EN 1999-1-1.
    """
    if weld is None:
        return []
    stress = ring.ring_weld_stress(
        torque,
        NO_PULL if weld.piloted else pull,
        weld.diameter,
        weld.throat,
        weld.sides,
        weld.share,
    )
    strength = welds.fillet_strength(weld.ultimate_strength, weld.correlation, AT_THE_END)
    return [Row(station="throat of the weld", demand=stress, capacity=strength, quantity="stress",
                utilisation=usage.utilisation(stress, strength))]  # fmt: skip


def rows(case: Case) -> list[Row]:
    """Compare the driving sprocket's weld with what it bears."""
    return weld_rows(case.drive.hub.weld, _torque.driving(case), case.loads.shaft_load)


CHECKS = (
    Check(
        name="hub_weld", part="weld of the driving sprocket", kind="strength",
        groups=("pull", "reverse"),
        leads_to="no drive", sees="a hairline round the weld, rust from it, then the hub turns alone",
        applies=lambda drive: drive.hub.weld is not None, rows=rows,
    ),
)  # fmt: skip
