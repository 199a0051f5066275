"""The row of screws that joins two plates of the mount edge to face: drawn out, borne, head through.

Holding along the grain of wood, in the edge of a plastic or in a tapped thread, each fastener for
itself.  Not checked: the edge that splits, the group that tears out together, screws worked loose.
"""

from __future__ import annotations

from ..case import Case, Check, Row
from ..factors import MOUNT_FACTORS
from ..formulas import timber_screws, usage
from ..model import Drive, Number


def rows(case: Case) -> list[Row]:
    """Compare pull and shear of every screw with what it holds, and both together."""
    screws = case.drive.mount.screws
    assert screws is not None
    together = timber_screws.both_added if screws.smooth else timber_screws.both_squared
    found = []
    for i, force in enumerate(case.response.screws, 1):
        name = f"{'dowel' if screws.smooth else 'screw'} {i} of the seam"
        found.append(_row(f"{name}, drawn out of the edge", force.tension, screws.holding))
        if screws.head_pull is not None:
            found.append(_row(f"{name}, head pulled through", force.tension, screws.head_pull))
        found.append(_row(f"{name}, across its axis", force.shear, screws.bearing))
        holding = screws.holding
        if screws.head_pull is not None and screws.head_pull < holding:
            holding = screws.head_pull
        both = together(force.tension, holding, force.shear, screws.bearing)
        found.append(Row(station=f"{name}, pulled and borne together", demand=both, capacity=1.0,
                         quantity="ratio", utilisation=both))  # fmt: skip
    return found


def _row(station: str, demand: Number, capacity: Number) -> Row:
    return Row(station=station, demand=demand, capacity=capacity, quantity="force",
               utilisation=usage.utilisation(demand, capacity))  # fmt: skip


def _applies(drive: Drive) -> bool:
    return drive.mount.screws is not None


def _factor(drive: Drive) -> tuple[float, str]:
    """Give the largest factor of the two plates' materials: that of the softer one."""
    grade = f"metal, {drive.mount.grade}"
    classes = [m.card.design_class for m in drive.mount.substances]
    return max(MOUNT_FACTORS[grade if c == "metal" else c] for c in classes)


CHECKS = (
    Check(
        name="seam_screws", part="screws in the edge of the upright", kind="strength",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="chain off", sees="the seam gapes at pull-away; screws creep out of the edge",
        applies=_applies, rows=rows, choose_factor=_factor,
    ),
)  # fmt: skip
