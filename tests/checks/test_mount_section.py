"""The mount at its cuts: a ductile material by its equivalent stress, a brittle one by its peak."""

from __future__ import annotations

import numpy as np
import pytest

from conftest import drive_file
from mountlimit import cards, evaluate, limits, sections
from mountlimit.checks import mount_section
from mountlimit.errors import MountlimitError
from mountlimit.plate_route import with_plates
from mountlimit.resolve import resolve


def case_of(material, **changes):
    """Give the first load case at 60 A on a plate of a material."""
    file = drive_file(mount__material=material, mount__thickness="20 mm", **changes)
    return evaluate.case_at(resolve(file), 60.0, 0)


def demands(case):
    """Give what the check asks of every cut, Pa."""
    return np.array([float(row.demand) for row in mount_section.yield_rows(case)])


def by(case, criterion):
    """Give the largest stress of every cut by a criterion, Pa."""
    return np.array([float(s) for _, s in sections.stresses(case, criterion=lambda _: criterion)])


def test_brittle_material_by_the_principal_stress():
    """Independent: sigma_1 lies between the von Mises stress over sqrt(3), as in shear alone, and
    the von Mises stress itself, as in tension alone."""
    case = case_of("gjl200")
    share = demands(case) / by(case, lambda s, t, _: sections.yielding(s, t, 1.0))
    assert np.all(share < 1.0)
    assert np.all(share > 1 / np.sqrt(3))


def test_ductile_material_by_the_equivalent_stress():
    case = case_of("s235")
    assert demands(case) == pytest.approx(by(case, sections.yielding), rel=1e-12)
    assert np.all(demands(case) > by(case, sections.tearing))


def test_wood_by_its_weaker_side():
    """Plywood stands less in compression than in tension: its stress counts by that side."""
    ratio = float(cards.material("birch_ply").compressive_over_tensile)
    assert ratio < 1
    case = case_of("birch_ply")
    alike = by(case, lambda s, t, _: sections.tearing(s, t, 1.0))
    assert demands(case) == pytest.approx(alike / ratio, rel=1e-12)


def test_longer_overhang_lowers_the_limit_of_a_brittle_plate():
    def safe(overhang):
        file = drive_file(mount__material="gjl200", shaft__face_overhang=overhang)
        found = limits.find(file).limits
        return next(limit.safe for limit in found if limit.check.name == "mount_section")

    assert safe("40 mm") < safe("28 mm")


def test_unknown_material_is_refused():
    with pytest.raises(MountlimitError, match="unobtainium"):
        drive_file(mount__material="unobtainium")


def test_only_what_creeps_is_strained():
    """A plastic upright on a metal base plate, and a metal one on a plastic base: the plastic alone."""
    form = {
        "mount__form": "built-up angle", "mount__thickness": "24 mm", "mount__free_length": "100 mm",
        "mount__heel_to_bolts": "35 mm", "mount__base_overhang": "20 mm", "mount__screws": "6 x 6 mm",
        "mount__screw_length": "50 mm", "shaft__face_overhang": "45 mm", "frame__member": "rigid",
    }  # fmt: skip
    cuts = {}
    for upright, base in (("hdpe", "6061"), ("6061", "hdpe")):
        more = {"mount__screws": "6 x M5"} if upright == "6061" else {}
        file = drive_file(**{**form, **more}, mount__material=upright, second__material=base,
                          second__thickness="20 mm")  # fmt: skip
        case = evaluate.case_at(resolve(file), 20.0, 0)
        assert "mount_strain" in {c.name for c in evaluate.applicable(case.drive)}
        rows = mount_section.strain_rows(case)
        plastic = [m for m in case.drive.mount.substances if m.strain_limit is not None]
        assert len(plastic) == 1
        assert rows
        assert {float(r.capacity) for r in rows} == {float(plastic[0].strain_limit)}
        cuts[upright] = {r.station for r in rows}
    assert not cuts["hdpe"] & cuts["6061"]


def test_rings_round_washers_stand_for_many_places():
    """All loads at once name no ring; one load alone names its own, and no less than the cuts do."""
    drive = resolve(with_plates(drive_file(mount__material="hdpe", mount__thickness="20 mm")))
    case = evaluate.case_at(drive, np.array([15.0]))
    alone = evaluate.case_at(drive, 15.0, 0)
    for rows in (mount_section.yield_rows, mount_section.strain_rows):
        cuts = {cut.name for cut in drive.mount.cuts}
        many = [r for r in rows(case) if r.many]
        assert many
        assert not {r.station for r in many} & cuts
        assert {r.station for r in rows(case) if not r.many} <= {r.station for r in rows(alone)}
        worst = max(float(np.max(np.broadcast_to(r.utilisation, (len(case.loads.groups), 1))[0]))
                    for r in rows(case))  # fmt: skip
        assert max(float(r.utilisation) for r in rows(alone)) == pytest.approx(worst, rel=1e-6)
