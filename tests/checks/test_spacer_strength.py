"""Spacers between plates: stress against a section solver, what makes it larger, what is left out."""

from __future__ import annotations

import math

import numpy as np
import pytest
from sectionproperties.analysis import Section
from sectionproperties.pre.library import circular_hollow_section, circular_section

from conftest import drive_file
from mountlimit import evaluate, limits, plate_fasteners
from mountlimit.checks import spacer_strength
from mountlimit.formulas import spacer
from mountlimit.resolve import resolve

TWIN = {
    "mount__form": "twin plates", "mount__gap": "140 mm", "mount__spacers": 4,
    "mount__spacer_diameter": "16 mm", "mount__spacers_across": "90 mm",
    "mount__spacers_along": "90 mm", "fixings__bolts": "8 x M8", "frame__member": "rigid",
}  # fmt: skip


def solved(diameter, bore):
    """Solve a round section by finite elements, fine enough for 2 %."""
    if bore:
        shape = circular_hollow_section(d=diameter, t=(diameter - bore) / 2, n=96)
    else:
        shape = circular_section(d=diameter, n=96)
    section = Section(shape.create_mesh(mesh_sizes=[math.pi / 4 * (diameter**2 - bore**2) / 2500]))
    section.calculate_geometric_properties()
    section.calculate_warping_properties()
    return section


@pytest.mark.parametrize(("diameter", "bore"), [(16.0, 0.0), (16.0, 6.6), (20.0, 16.0)])
def test_stresses_are_those_of_the_section_solver(diameter, bore):
    """Force, bending and twist to 2 %; shear on the safe side, at most twice (sectionproperties)."""
    section = solved(diameter, bore)
    load = {"n": -900.0, "mxx": 3000.0, "mzz": 2500.0, "vy": 400.0}

    def largest(field, **loads):
        return np.abs(section.calculate_stress(**loads).get_stress()[0][field]).max()

    d, b = diameter / 1000, bore / 1000
    normal = largest("sig_zz", n=load["n"], mxx=load["mxx"]) * 1e6
    assert spacer.normal_stress(-900.0, 3.0, d, b) == pytest.approx(normal, rel=0.02)
    rim = np.hypot(*section.mesh["vertices"].T) > 0.4995 * diameter
    twisted = section.calculate_stress(mzz=load["mzz"]).get_stress()[0]["sig_zxy_mzz"]
    twist = twisted[: len(rim)][rim].mean() * 1e6  # a polygon's corners scatter about the circle's
    assert spacer.shear_stress(0.0, 2.5, d, b) == pytest.approx(twist, rel=0.02)
    sheared = largest("sig_zxy_v", vy=load["vy"]) * 1e6
    assert 0.98 < spacer.shear_stress(400.0, 0.0, d, b) / sheared < 2.1


def limit(**changes):
    """Safe current of the check."""
    found = limits.find(drive_file(**{**TWIN, **changes}), ["spacer_strength"])
    return next(x.safe for x in found.limits if x.check.name == "spacer_strength")


def test_weaker_and_thinner_spacers_carry_less():
    base = limit(mount__spacer_yield="100 MPa", mount__spacer_modulus="70 GPa")
    assert limit(mount__spacer_yield="50 MPa", mount__spacer_modulus="70 GPa") < 0.7 * base
    bored = limit(
        mount__spacer_yield="100 MPa", mount__spacer_modulus="70 GPa", mount__spacer_bore="14 mm"
    )
    assert bored < base


def test_own_material_takes_its_own_factor():
    check = spacer_strength.CHECKS[0]
    for changes, wanted in (
        ({}, 2.0),
        ({"mount__grade": "scrap"}, 2.5),
        ({"mount__material": "hdpe"}, 3.0),
        ({"mount__material": "hdpe", "mount__spacer_yield": "300 MPa"}, 2.0),
    ):
        drive = resolve(drive_file(**{**TWIN, **changes}))
        assert evaluate.design_factor(check, drive)[0] == wanted


def test_moment_runs_from_end_to_end_by_the_shear():
    """Statics of a beam loaded at its ends: M_f + M_r + L z x F_f = 0 (vector product by hand)."""
    found = limits.find(drive_file(**TWIN))
    settled = evaluate.case_at(found.drive, 40.0, 0).response.plates
    assert settled is not None
    reach = 0.140 + 0.008  # between mid-planes
    for i in range(4):
        front, rear = (plate_fasteners.spacer_forces(settled, i, end) for end in (0, 1))
        along, one, two, m_1, m_2, torque = (float(v) for v in front)
        assert [along, one, two, torque] == pytest.approx(
            [-float(rear[k]) for k in (0, 1, 2, 5)], abs=1e-6 * abs(along)
        )
        assert m_1 + float(rear[3]) == pytest.approx(two * reach, rel=1e-6)
        assert m_2 + float(rear[4]) == pytest.approx(-one * reach, rel=1e-6)
        assert math.hypot(m_1, m_2) > 0


def test_speaks_of_twin_plates_only():
    names = [c.name for c in evaluate.applicable(resolve(drive_file()))]
    assert "spacer_strength" not in names


def test_bad_yield_strength_is_refused():
    from mountlimit.errors import InputError

    with pytest.raises(InputError, match=r"mount.spacer_yield.*stress"):
        drive_file(**TWIN, mount__spacer_yield="5 kg")
