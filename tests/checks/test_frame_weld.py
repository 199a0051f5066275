"""Welds to the frame: line method against printed stresses and against a row of springs; directions."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest

from conftest import WELDED, changed, drive_file, toml_text, welded_file
from mountlimit import evaluate, limits, structure
from mountlimit.checks import frame_weld
from mountlimit.drivefile import parse
from mountlimit.errors import InputError
from mountlimit.mounting import Weld
from mountlimit.plate_route import with_plates
from mountlimit.resolve import resolve
from mountlimit.worked import Value

CURRENTS = np.array([60.0])


def weld_of(length: float, throat: float, sides: int, apart: float) -> Weld:
    """Give a weld with a strength that does not matter."""
    return Weld(
        name="weld", length=length, throat=throat, along="x", sides=Value(sides, "n", "derived"),
        apart=apart, ultimate_strength=360e6, correlation=Value(0.8, "beta", "derived"),
    )  # fmt: skip


def limit_of(**changes: Any) -> float:
    """Give the safe current of the weld."""
    found = limits.find(welded_file(**changes))
    return next(x.safe for x in found.limits if x.check.name == "frame_weld")


def test_bhandari_8_12_bracket_on_two_lines():
    """Printed for a throat t in mm: shear 100 / t and bending 200 / t MPa, 10 kN at 100 mm.

    Bhandari, Design of Machine Elements, example 8.12: two 50 mm lines 100 mm apart.
    """
    weld = weld_of(0.05, 0.002, 2, 0.1)
    found = frame_weld.line_force(weld, [0.0, 10e3, 0.0], [1000.0, 0.0, 0.0])
    assert found / 1000 == pytest.approx(math.hypot(100.0, 200.0), rel=1e-12)


def test_capacity_is_that_of_the_standard():
    """EN 1993-1-8 clause 4.5.3.3: S355 of 470 MPa, throat 4.2 mm: 1.013 kN/mm with gamma 1.25."""
    file = welded_file(
        fixings__weld_leg=f"{4.2 / 0.707} mm", fixings__weld_quality="100 %", mount__material="s355",
        fixings__weld_ultimate="470 MPa",
    )  # fmt: skip
    case = evaluate.case_at(resolve(with_plates(file)), CURRENTS)
    (row,) = frame_weld.rows(case)
    assert float(row.capacity) / 1.25 == pytest.approx(1.013e6, abs=500.0)


def _on_springs(weld: Weld, force: Any, moment: Any) -> float:
    """Give the largest force per length of a row of equal springs that holds a rigid plate.

    Each spring resists in all three directions: an elastic group of points, solved by least squares.
    """
    lines = [0.0] if weld.sides == 1 else [-weld.apart / 2, weld.apart / 2]
    along = (np.arange(4000) + 0.5) / 4000 * weld.length - weld.length / 2
    places = np.array([[x, y, 0.0] for y in lines for x in along])
    share = weld.length / len(along)
    left = np.zeros((6, 6))
    for p in places:
        skew = np.array([[0, p[2], -p[1]], [-p[2], 0, p[0]], [p[1], -p[0], 0]])
        rows = np.hstack([np.eye(3), skew])
        left += rows.T @ rows * share
    moved = np.linalg.lstsq(left, np.r_[force, moment], rcond=1e-12)[0]
    found = moved[:3] + np.cross(moved[3:], places)
    return float(np.max(np.linalg.norm(found, axis=1)))


SIX = [(i, n) for n in (1, 2) for i in range(6) if not (n == 1 and i == 3)]


@pytest.mark.parametrize(("component", "sides"), SIX)
def test_each_load_alone_is_as_on_a_row_of_springs(component, sides):
    """Torsion is taken at the corner, so along and across of the same point add as vectors."""
    weld = weld_of(0.12, 0.003, sides, 0.02 if sides == 2 else 0.0)
    load = np.zeros(6)
    load[component] = 100.0
    ours = frame_weld.line_force(weld, list(load[:3]), list(load[3:]))
    assert ours == pytest.approx(_on_springs(weld, load[:3], load[3:]), rel=1e-3)


def test_loads_together_are_never_below_the_row_of_springs():
    """Parts are added in size: not below the true corner, and not above twice it."""
    rng = np.random.default_rng(4)
    weld = weld_of(0.12, 0.003, 2, 0.02)
    for _ in range(20):
        load = rng.normal(size=6) * [1e3, 1e3, 1e3, 10.0, 60.0, 60.0]
        ours = frame_weld.line_force(weld, list(load[:3]), list(load[3:]))
        exact = _on_springs(weld, load[:3], load[3:])
        assert exact * (1 - 1e-3) <= ours <= 2.0 * exact


def test_a_single_fillet_bends_as_a_strip_of_its_throat():
    """Section modulus of a rectangle 120 mm by 3 mm: b h**2 / 6."""
    weld = weld_of(0.12, 0.003, 1, 0.0)
    found = frame_weld.line_force(weld, [0.0] * 3, [1.0, 0.0, 0.0])
    assert found / 0.003 == pytest.approx(1.0 / (0.12 * 0.003**2 / 6), rel=1e-12)


def test_directions():
    """A larger leg, a sounder weld, a stronger parent and a second side raise the limit; overhang lowers it."""
    base = limit_of(chain__pull="away", fixings__weld_leg="3 mm", duty__bump="0 g")
    worse = {"shaft__face_overhang": "40 mm"}, {"fixings__weld_sides": "one"}
    better = ({"fixings__weld_leg": "4 mm"}, {"fixings__weld_quality": "100 %"},
              {"fixings__weld_ultimate": "470 MPa"})  # fmt: skip
    rest = {"chain__pull": "away", "fixings__weld_leg": "3 mm", "duty__bump": "0 g"}
    for change in better:
        assert limit_of(**{**rest, **change}) > 1.02 * base, change
    for change in worse:
        assert limit_of(**{**rest, **change}) < 0.98 * base, change


def test_beams_and_plates_give_a_single_weld_the_same():
    """One weld takes the whole load, whichever way the give is worked out."""
    plated = evaluate.case_at(resolve(with_plates(welded_file())), CURRENTS)
    beams = resolve(welded_file(mount__route="sections"))
    again = structure.solve(beams, plated.loads)
    for ours, theirs in zip(plated.response.welds[0], again.welds[0], strict=True):
        for a, b in zip(ours, theirs, strict=True):
            shape = np.broadcast_shapes(np.shape(a), np.shape(b))
            scale = 1e-9 * max(1.0, float(np.max(np.abs(b))))
            assert np.allclose(np.broadcast_to(a, shape), np.broadcast_to(b, shape), atol=scale)


@pytest.mark.parametrize(
    ("ultimate", "beta"), [("360 MPa", 0.8), ("430 MPa", 0.85), ("470 MPa", 0.9), ("560 MPa", 1.0)]
)
def test_correlation_by_grade(ultimate, beta):
    """EN 1993-1-8 table 4.1, and 1.0 for S420 and S460."""
    drive = resolve(welded_file(fixings__weld_ultimate=ultimate, mount__material="s355"))
    assert float(drive.mount.welds[0].correlation) == beta


def test_aluminium_is_taken_in_its_heat_affected_zone():
    """6061-T6: yield 115 of 240 MPa (EN 1999-1-1 table 3.2b); weld metal 170 MPa, beta_w 1."""
    bolted = resolve(welded_file(mount__form="welded plate", mount__material="s235"))
    drive = resolve(welded_file(mount__material="6061", mount__yield_strength="240 MPa"))
    assert float(drive.mount.material.yield_strength) == pytest.approx(115e6)
    assert float(drive.mount.welds[0].ultimate_strength) == 170e6
    assert float(drive.mount.welds[0].correlation) == 1.0
    assert any("aluminium only" in w for w in drive.warnings)
    assert not any("aluminium only" in w for w in bolted.warnings)


def test_a_bolted_mount_has_no_such_check():
    assert "frame_weld" not in [c.name for c in evaluate.applicable(resolve(drive_file()))]
    assert "bolt_slip" not in [c.name for c in evaluate.applicable(resolve(welded_file()))]


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"fixings__weld_leg": None}, ["fixings.weld_leg", "is missing"]),
        ({"fixings__weld_quality": "0"}, ["fixings.weld_quality", "expected"]),
        ({"mount__material": "7075"}, ["mount.material", "cannot be welded"]),
    ],
)
def test_bad_input_is_one_line(changes, words):
    data = changed(**{**WELDED, **changes})
    with pytest.raises(InputError) as error:
        resolve(parse(toml_text(data).encode(), "test.toml"))
    lines = str(error.value).splitlines()
    assert len(lines) == 1
    assert all(w in lines[0] for w in words), lines
