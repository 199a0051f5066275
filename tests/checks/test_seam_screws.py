"""Screws in the edge of a plate: what they hold, by published numbers, and who governs."""

from __future__ import annotations

from math import hypot

import numpy as np
import pytest

from conftest import drive_file
from mountlimit import evaluate, limits, plate_route
from mountlimit.checks import seam_screws
from mountlimit.errors import InputError
from mountlimit.formulas import edge_screws, johansen, timber_screws
from mountlimit.model import Drive
from mountlimit.resolve import resolve

FORM = {
    "mount__form": "built-up angle", "mount__material": "birch plywood", "mount__thickness": "24 mm",
    "mount__free_length": "100 mm", "mount__heel_to_bolts": "35 mm", "mount__base_overhang": "20 mm",
    "mount__screws": "6 x 6 mm", "mount__screw_length": "50 mm", "shaft__face_overhang": "45 mm",
    "second__material": "6061", "second__thickness": "8 mm", "chain__pull": "away",
}  # fmt: skip
PSI, INCH, POUND = 6894.757, 0.0254, 4.4482216


def built(**changes):
    return drive_file(**{**FORM, **changes})


def safe(**changes):
    found = limits.find(built(**changes), ["seam_screws"]).limits
    return next(x.safe for x in found if x.check.name == "seam_screws")


def screws_of(**changes):
    return resolve(built(**changes)).mount.screws


def case_of(**changes) -> tuple[Drive, list]:
    drive = resolve(plate_route.with_plates(built(**changes)))
    case = evaluate.case_at(drive, 60.0, 0)
    return case, seam_screws.rows(case)


def test_lateral_yield_of_a_nail_of_the_wood_council():
    """American Wood Council, Structural Wood Design Solved Example Problems: one nail 0.148 in through 3/4 in of
    Douglas fir into 2 1/4 in of it: 105 lb.  The NDS divides the yield modes by 2.2 at this size and
    knows no factor 1.05."""
    bearing, diameter = 16600 * 0.5**1.84 * PSI, 0.148 * INCH  # NDS table 12.3.3, dowel bearing
    moment = 90e3 * PSI * diameter**3 / 6
    first, second = 0.75 * INCH, 2.25 * INCH
    crushed = johansen.crushed(bearing, first, diameter)
    ratio = johansen.embedment_ratio(bearing, bearing)
    modes = (
        crushed,
        johansen.crushed(bearing, second, diameter),
        johansen.tilted(crushed, ratio, johansen.thickness_ratio(first, second)),
        johansen.hinge_in_second(bearing, first, diameter, ratio, moment) / 1.05,
        johansen.hinge_in_first(bearing, second, diameter, ratio, moment) / 1.05,
        johansen.hinge_in_both(bearing, diameter, ratio, moment) / 1.15,
    )
    assert johansen.lowest_mode(*modes) / 2.2 / POUND == pytest.approx(105.0, rel=0.01)


def test_johansen_by_plain_equilibrium():
    """Mode c by hand: with equal members of depth t the fastener turns about a point in each, and
    the force is f d t (sqrt(2) - 1) (Johansen 1949)."""
    crushed = johansen.crushed(20e6, 0.03, 0.008)
    assert johansen.tilted(crushed, 1.0, 1.0) == pytest.approx(4800 * (2**0.5 - 1), rel=1e-12)


def test_stiff_fastener_reaches_no_hinge():
    """Turning of a short stiff fastener lies below every mode with a hinge."""
    args = (30e6, 0.02, 0.01, 1.0, 1e3)
    crushed = johansen.crushed(*args[:3])
    assert johansen.tilted(crushed, 1.0, 1.0) < johansen.hinge_in_second(*args)


def test_withdrawal_by_hand():
    """EN 1995-1-1 in its own units, 8 mm screw, 64 mm thread, 350 kg/m3: 13.155 MPa, 5.61 kN along
    the grain, worked with a pocket calculator."""
    strength = timber_screws.withdrawal_strength(0.008, 0.064, 350.0)
    assert strength == pytest.approx(13.155e6, rel=1e-4)
    assert timber_screws.withdrawal_along_grain(strength, 0.008, 0.064) == pytest.approx(
        5613, abs=2
    )


def test_pin_on_an_elastic_foundation_by_finite_differences():
    """Both halves of a pin solved as beams on springs, cell by cell: the closed form within 1 %."""
    modulus, steel, core, length, cells = 9e8, 2.05e11, 0.004, 0.08, 400
    step, inertia = length / cells, np.pi * core**4 / 64
    size = 2 * (cells + 1)  # deflection and turn at every node of one half
    stiff = np.zeros((size, size))
    beam = steel * inertia / step**3 * np.array(
        [[12, 6 * step, -12, 6 * step], [6 * step, 4 * step**2, -6 * step, 2 * step**2],
         [-12, -6 * step, 12, -6 * step], [6 * step, 2 * step**2, -6 * step, 4 * step**2]]
    )  # fmt: skip
    for i in range(cells):
        where = slice(2 * i, 2 * i + 4)
        stiff[where, where] += beam
        stiff[2 * i, 2 * i] += modulus * step / 2
        stiff[2 * i + 2, 2 * i + 2] += modulus * step / 2
    load = np.zeros(size)
    load[0] = 1.0  # at the seam: by symmetry no moment there
    slip = 2 * np.linalg.solve(stiff, load)[0]
    found = edge_screws.pin_slip_stiffness(modulus, steel, core)
    assert 1 / slip == pytest.approx(found, rel=0.01)


def test_rows_are_what_the_screws_hold():
    """Each screw four times: drawn out, head through, across, and both by a quarter circle."""
    case, rows = case_of()
    screws = case.drive.mount.screws
    assert len(rows) == 4 * screws.count
    out, through, across, both = (float(r.utilisation) for r in rows[:4])
    assert out == pytest.approx(
        float(case.response.screws[0].tension) / 1.0 / float(screws.holding)
    )
    assert through < out  # aluminium under the head
    assert both == pytest.approx(hypot(out, across), rel=1e-12)


def test_a_thin_base_of_soft_wood_lets_the_heads_through():
    """Head pull-through then counts in the sum of both as well."""
    _, rows = case_of(second__material="birch plywood", second__thickness="9 mm",
                      mount__screw_head="7 mm", mount__screw_hold="9 kN")  # fmt: skip
    out, through, across, both = (float(r.utilisation) for r in rows[:4])
    assert through > out
    assert both == pytest.approx(hypot(through, across), rel=1e-12)


def test_dry_dowels_add_up_and_have_no_head():
    """EN 1995-1-1 eq. 8.27 for smooth fasteners: pull and shear in full."""
    _, rows = case_of(mount__screw_kind="dowel", mount__screws="6 x 8 mm")
    assert len(rows) == 18
    out, across, both = (float(r.utilisation) for r in rows[:3])
    assert both == pytest.approx(out + across, rel=1e-12)


@pytest.mark.parametrize(
    "worse",
    [
        {"mount__screws": "4 x 6 mm"}, {"mount__screws": "6 x 5 mm"}, {"mount__screw_length": "35 mm"},
        {"mount__screw_hold": "500 N"}, {"shaft__face_overhang": "60 mm"},
        {"mount__screw_kind": "dowel"},
    ],
    ids=["fewer", "thinner", "shorter", "weaker", "longer overhang", "dowels"],
)  # fmt: skip
def test_what_makes_it_worse_lowers_the_limit(worse):
    assert safe(**worse) < 0.99 * safe()


def test_holding_by_material():
    """Aluminium holds a tapped thread best, then a stiff plastic, then polyethylene; a wood screw in
    polyethylene shears a sleeve: tau pi 0.8 d l with tau = yield / sqrt(3)."""
    tapped = {"mount__screws": "6 x M6", "mount__screw_length": "30 mm"}
    held = [screws_of(**tapped, mount__material=m).holding for m in ("6061", "pom", "hdpe")]
    assert held == sorted(held, reverse=True)
    drive = resolve(
        built(mount__material="hdpe", mount__screws="6 x 6 mm", mount__screw_length="30 mm")
    )
    by_hand = float(drive.mount.material.yield_strength) / 3**0.5 * np.pi * 4.8e-3 * 30e-3
    assert drive.mount.screws.holding == pytest.approx(by_hand, rel=1e-9)


def test_the_softer_material_sets_the_design_factor():
    """Wood 4, plastic 3 with metal 2 beside it; an own factor in the file counts first."""
    check = seam_screws.CHECKS[0]
    plastic = {"mount__screw_length": "40 mm", "mount__material": "hdpe"}
    assert evaluate.design_factor(check, resolve(built()))[0] == 4.0
    assert evaluate.design_factor(check, resolve(built(**plastic)))[0] == 3.0
    assert evaluate.design_factor(check, resolve(built(policy__factor_seam_screws=2.5)))[0] == 2.5


def test_forms_without_screws_are_not_asked():
    assert "seam_screws" not in [c.name for c in evaluate.applicable(resolve(drive_file()))]


@pytest.mark.parametrize(
    ("key", "value"),
    [("mount__screws", "1 x 6 mm"), ("mount__screws", "6 x 60 mm"), ("mount__screw_hold", "0 N"),
     ("mount__screw_kind", "nail")],
)  # fmt: skip
def test_bad_inputs_are_refused(key, value):
    """One screw, a size that is none, no hold, an unknown kind."""
    with pytest.raises(InputError, match=key.replace("__", ".")):
        resolve(built(**{key: value}))
