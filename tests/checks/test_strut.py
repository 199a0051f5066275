"""The strut: buckling by published columns, and which way it is loaded."""

from __future__ import annotations

import numpy as np
import pytest

from conftest import drive_file
from mountlimit import evaluate, limits, plate_route
from mountlimit.checks import strut
from mountlimit.errors import InputError
from mountlimit.formulas import struts
from mountlimit.resolve import resolve

INCH, KIP, KSI = 0.0254, 4448.2216, 6.894757e6
FORM = {
    "mount__form": "plate with strut", "second__material": "S235", "mount__strut_diameter": "8 mm",
    "mount__strut_start_height": "0 mm", "mount__strut_start_behind": "110 mm",
    "mount__strut_end_height": "-100 mm", "mount__strut_end_behind": "180 mm", "chain__pull": "away",
}  # fmt: skip


def buckling(modulus, strength, diameter, length, bore=0.0):
    strong = struts.yield_force(strength, struts.tube_area(diameter, bore))
    return struts.buckling_force(
        strong, struts.euler_force(modulus, struts.tube_second_moment(diameter, bore), length)
    )


def test_steel_pipe_of_gere():
    """Gere, Mechanics of Materials 7th ed., problem 11.4-2: tube 40 x 36 mm, 1.2 m, 210 GPa, ends
    pinned: 62.2 kN."""
    assert buckling(210e9, 800e6, 0.04, 1.2, 0.036) == pytest.approx(62.2e3, rel=1e-3)


def test_rod_of_faires_by_johnson():
    """Faires, Design of Machine Elements, problem 334 (a): 1.096 in of 48 ksi, 25 in long, E 30 Mpsi,
    carries 30 kip (10 kip with a factor of 3) by Johnson."""
    found = buckling(30e3 * KSI, 48 * KSI, 1.096 * INCH, 25 * INCH)
    assert found == pytest.approx(30 * KIP, rel=2e-3)


def test_rod_of_faires_by_euler():
    """The same, 334 (b): 1.507 in, 50 in long, carries 30 kip; Euler above 120 radii of gyration."""
    found = buckling(30e3 * KSI, 48 * KSI, 1.507 * INCH, 50 * INCH)
    assert found == pytest.approx(30 * KIP, rel=2e-3)


def test_the_two_touch_at_half_of_yield():
    """No step between them, in value or in slope."""
    around = np.array([0.499999, 0.5, 0.500001]) * 1e4
    value = struts.buckling_force(1e4, around)
    assert np.allclose(np.diff(value), np.diff(around), rtol=1e-3)


def case_of(**changes):
    drive = resolve(plate_route.with_plates(drive_file(**{**FORM, **changes})))
    index = next(i for i, c in enumerate(evaluate.loads.case_list(drive)) if c[1] == "pull")
    case = evaluate.case_at(drive, 100.0, index)
    return case, strut.rows(case)


def safe(**changes):
    found = limits.find(drive_file(**{**FORM, **changes})).limits
    return next(x.safe for x in found if x.check.name == "strut")


def test_one_way_it_pulls_the_other_it_presses():
    """Chain towards and away from the frame: the strut is loaded the other way round."""
    rows = [case_of(chain__pull=p, motor__mass="0.05 kg")[1] for p in ("away", "towards")]
    demands = [[float(r.demand) for r in each] for each in rows]
    assert all(min(d) == 0.0 < max(d) for d in demands)
    assert [d.index(0.0) for d in demands] in ([0, 1], [1, 0])
    assert float(rows[0][1].capacity) < float(rows[0][0].capacity)  # buckling comes before yield


@pytest.mark.parametrize(
    "worse",
    [
        {"mount__strut_diameter": "3 mm"},
        {"mount__strut_bore": "3.5 mm"},
        {"second__yield_strength": "150 MPa"},
    ],
)  # fmt: skip
def test_a_weaker_strut_gives_sooner(worse):
    base = {"mount__strut_diameter": "4 mm", "mount__strut_joint_stiffness": "50 kN/mm"}
    assert safe(**{**base, **worse}) < safe(**base)


def test_factor_of_the_struts_own_material():
    check = strut.CHECKS[0]
    known, scrap = (drive_file(**FORM, mount__grade=g) for g in ("known", "scrap"))
    assert evaluate.design_factor(check, resolve(known))[0] == 2.0
    assert evaluate.design_factor(check, resolve(scrap))[0] == 2.5


def test_other_forms_are_not_asked():
    assert "strut" not in [c.name for c in evaluate.applicable(resolve(drive_file()))]


def test_bad_inputs_are_refused():
    with pytest.raises(InputError, match=r"mount\.strut_diameter"):
        resolve(drive_file(**{**FORM, "mount__strut_diameter": "0 mm"}))
