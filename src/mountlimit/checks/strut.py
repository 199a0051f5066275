"""The strut: yield when it pulls, buckling when it is pressed, between ends that turn freely.

Not checked: the bolts and eyes at its ends, the motor's body where it starts, the frame where it
ends, and a load beside its axis.
"""

from __future__ import annotations

from ..case import Case, Check, Row
from ..factors import MOUNT_FACTORS
from ..formulas import struts, tipping, usage
from ..model import Drive, Number


def rows(case: Case) -> list[Row]:
    """Compare pull with yield and push with the buckling force by Euler and Johnson."""
    found = []
    for rod, force in zip(case.drive.mount.rods, case.response.rods, strict=True):
        strong = struts.yield_force(rod.yield_strength, rod.area)
        euler = struts.euler_force(rod.elastic_modulus, rod.second_moment, rod.length)
        buckles = struts.buckling_force(strong, euler)
        found.append(_row(f"{rod.name}, pulled", tipping.pulled_only(force), strong))
        found.append(_row(f"{rod.name}, pressed", struts.pressed_only(force), buckles))
    return found


def _row(station: str, demand: Number, capacity: Number) -> Row:
    return Row(station=station, demand=demand, capacity=capacity, quantity="force",
               utilisation=usage.utilisation(demand, capacity))  # fmt: skip


def _applies(drive: Drive) -> bool:
    return bool(drive.mount.rods)


def _factor(drive: Drive) -> tuple[float, str]:
    """Give the mount's factor for the strut's own material."""
    kind = drive.mount.substance(True).card.design_class
    return MOUNT_FACTORS[f"metal, {drive.mount.grade}" if kind == "metal" else kind]


CHECKS = (
    Check(
        name="strut", part="strut", kind="strength",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="chain off", sees="the strut bows out or stays long; the motor nods at pull-away",
        applies=_applies, rows=rows, choose_factor=_factor,
    ),
)  # fmt: skip
