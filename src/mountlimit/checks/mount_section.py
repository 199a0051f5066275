"""The mount at its named sections: stress against yield, and strain held by plastics."""

from __future__ import annotations

from .. import plate_stress, sections
from ..case import Case, Check, Row
from ..factors import MOUNT_FACTORS
from ..formulas import endurance, usage
from ..model import Cut, Drive


def yield_rows(case: Case) -> list[Row]:
    """Compare the largest stress of every cut with the yield strength.

    Inside a bend a ductile material evens the stress out.  A brittle one breaks by its peak, where
    the largest principal stress reaches its strength: at free edges and holes as well.  Where the
    plate model stands behind the drive its stress round the washers is compared too; the lower
    current governs.
    """
    found = []
    brittle = case.drive.mount.material.card.brittle
    raised = inside_bend if brittle else sections.as_they_are
    criterion = sections.tearing if brittle else sections.yielding
    for cut, stress in sections.stresses(case, raised, criterion=criterion):
        limit = case.drive.mount.material.yield_strength
        found.append(
            Row(station=cut.name, demand=stress, capacity=limit, quantity="stress",
                utilisation=usage.utilisation(stress, limit))
        )  # fmt: skip
    limit = case.drive.mount.material.yield_strength
    plane = sections.plane_tearing if brittle else sections.plane_yielding
    places = ("ring", "line", "edge") if brittle else ("ring", "line")
    found += [
        Row(station=peak.station, demand=peak.stress, capacity=limit, quantity="stress",
            utilisation=usage.utilisation(peak.stress, limit))
        for peak in plate_stress.peaks(case, plane, places)
    ]  # fmt: skip
    return found


def inside_bend(cut: Cut) -> sections.Raised:
    """Raise the bending of the thickness at a bend, by the theory of the curved bar."""
    if cut.inside_factor is None:
        return {}
    return {"moment_across": cut.inside_factor, "bimoment": cut.inside_factor}


def strain_rows(case: Case) -> list[Row]:
    """Compare the strain held for the hours of use with the plastic's allowable strain."""
    found = []
    material = case.drive.mount.material
    for cut, stress in sections.stresses(case):
        strain = endurance.creep_strain(stress, material.creep_modulus)
        found.append(
            Row(station=cut.name, demand=strain, capacity=material.strain_limit, quantity="ratio",
                utilisation=usage.utilisation(strain, material.strain_limit), level="continuous")
        )  # fmt: skip
    return found


def _factor(drive: Drive) -> tuple[float, str]:
    card = drive.mount.material.card
    if card.design_class == "metal":
        return MOUNT_FACTORS[f"metal, {drive.mount.grade}"]
    return MOUNT_FACTORS[card.design_class]


CHECKS = (
    Check(
        name="mount_section", part="mount", kind="strength",
        groups=("pull", "reverse", "bump", "bump alone"),
        sees="the mount stays bent after a hard start; the chain no longer lines up",
        rows=yield_rows, choose_factor=_factor,
    ),
    Check(
        name="mount_strain", part="mount", kind="life", groups=("hold",),
        sees="the plastic creeps: the chain goes slack over days and the mount keeps the bend",
        applies=lambda drive: drive.mount.material.strain_limit is not None, rows=strain_rows,
    ),
)  # fmt: skip
