"""The mount at its named sections: stress against yield, and strain held by plastics."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from .. import plate_stress, sections
from ..case import Case, Check, Row
from ..factors import MOUNT_FACTORS
from ..formulas import endurance, usage
from ..formulas.stress import local_stress
from ..model import Drive, Number
from ..mounting import Cut, Mount, Substance


def yield_rows(case: Case) -> list[Row]:
    """Compare the largest stress of every cut with the yield strength.

    Inside a bend a ductile material evens the stress out.  A brittle one breaks by its peak, where
    the largest principal stress reaches its strength: at free edges and holes as well.  Where the
    plate model stands behind the drive its stress round the washers is compared too; the lower
    current governs.
    """
    mount = case.drive.mount
    found = []
    for cut, stress in sections.stresses(case, _raised(mount), criterion=_criterion(mount)):
        limit = mount.substance(cut.second).yield_strength
        found.append(_row(cut.name, stress, limit))
    for second, material in enumerate(mount.substances):
        brittle = material.card.brittle
        plane = sections.plane_tearing if brittle else sections.plane_yielding
        places = ("ring", "line", "edge") if brittle else ("ring", "line")
        found += [
            replace(
                _row(peak.station, _true(mount, peak.stress), material.yield_strength), many=True
            )
            for peak in plate_stress.peaks(case, plane, places, bool(second))
        ]
    return found


def _row(station: str, stress: Number, limit: Number) -> Row:
    return Row(station=station, demand=stress, capacity=limit, quantity="stress",
               utilisation=usage.utilisation(stress, limit))  # fmt: skip


def _true(mount: Mount, stress: Number) -> Number:
    """Give the stress with what the plate model leaves out in short and thick plates."""
    if mount.local_stress == 1.0:
        return stress
    return local_stress(stress, mount.local_stress)


def _raised(mount: Mount) -> Callable[[Cut], sections.Raised]:
    def raised(cut: Cut) -> sections.Raised:
        return inside_bend(cut) if mount.substance(cut.second).card.brittle else {}

    return raised


def _criterion(mount: Mount) -> Callable[[Cut], sections.Criterion]:
    def criterion(cut: Cut) -> sections.Criterion:
        brittle = mount.substance(cut.second).card.brittle
        return sections.tearing if brittle else sections.yielding

    return criterion


def inside_bend(cut: Cut) -> sections.Raised:
    """Raise the bending of the thickness at a bend, by the theory of the curved bar."""
    if cut.inside_factor is None:
        return {}
    return {"moment_across": cut.inside_factor, "bimoment": cut.inside_factor}


def strain_rows(case: Case) -> list[Row]:
    """Compare the strain held for the hours of use with the plastic's allowable strain.

    In the named cuts, and round the washers where the plate model stands behind the drive.
    """
    mount = case.drive.mount
    found = []
    for cut, stress in sections.stresses(case):
        material = mount.substance(cut.second)
        if material.strain_limit is not None:
            found.append(_strain(cut.name, stress, material))
    for second, material in enumerate(mount.substances):
        if material.strain_limit is not None:
            peaks = plate_stress.peaks(
                case, sections.plane_yielding, ("ring", "line"), bool(second)
            )
            found += [
                replace(_strain(p.station, _true(mount, p.stress), material), many=True)
                for p in peaks
            ]
    return found


def _strain(station: str, stress: Number, material: Substance) -> Row:
    strain = endurance.creep_strain(stress, material.creep_modulus)
    return Row(station=station, demand=strain, capacity=material.strain_limit, quantity="ratio",
               utilisation=usage.utilisation(strain, material.strain_limit), level="continuous")  # fmt: skip


def _creeps(drive: Drive) -> bool:
    return any(m.strain_limit is not None for m in drive.mount.substances)


def _factor(drive: Drive) -> tuple[float, str]:
    """Give the largest factor of the mount's materials."""
    found = []
    for material in drive.mount.substances:
        kind = material.card.design_class
        found.append(MOUNT_FACTORS[f"metal, {drive.mount.grade}" if kind == "metal" else kind])
    if drive.mount.welds or drive.mount.gussets is not None:
        found.append(MOUNT_FACTORS["welded"])
    return max(found)


CHECKS = (
    Check(
        name="mount_section", part="mount", kind="strength",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="chain off", sees="the mount stays bent after a hard start; the chain no longer lines up",
        rows=yield_rows, choose_factor=_factor,
    ),
    Check(
        name="mount_strain", part="mount", kind="life", groups=("hold",),
        leads_to="notice", sees="the plastic creeps: the chain goes slack over days and the mount keeps the bend",
        applies=_creeps, rows=strain_rows,
    ),
)  # fmt: skip
