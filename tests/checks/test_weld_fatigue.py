"""Fatigue of welds: curves at the points the standard prints, a turning ring, directions, bad input."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hub_cases import CURRENTS, DRIVEN_TORQUE, TORQUE, check_of, file_of
from scipy.optimize import brentq

from conftest import welded_file
from mountlimit import crossings, evaluate, limits
from mountlimit.checks import _weld_range, frame_weld
from mountlimit.errors import InputError
from mountlimit.formulas import weld_fatigue
from mountlimit.loads import case_list
from mountlimit.mounting import Weld
from mountlimit.plate_route import with_plates
from mountlimit.resolve import resolve
from mountlimit.worked import Value

SIDES = [("hub", TORQUE), ("driven", DRIVEN_TORQUE)]
RING = {"weld_diameter": "40 mm", "weld_leg": "1 mm", "pilot": "yes"}
FRAME = {"chain__pull": "away", "fixings__weld_leg": "3 mm", "fixings__weld_quality": 1,
         "mount__route": "sections", "duty__starts": 100000}  # fmt: skip


def ring(side, **changes):
    """Keys of a ring of weld on one side."""
    return {f"{side}__{k}": v for k, v in {**RING, **changes}.items()}


def rows_of(name, file, current=100.0):
    """The rows of a check in the first steady case, that case and the drive."""
    drive = resolve(with_plates(file))
    index = next(i for i, c in enumerate(case_list(drive)) if c[1] == "steady")
    case = evaluate.case_at(drive, current, index)
    return check_of(name, drive).rows(case), case


def limit_of(name, file):
    """Current at which a check is used up at likely values, factor 1."""
    drive = resolve(with_plates(file))
    curve = evaluate.curves(drive, CURRENTS, [name])[name]
    return crossings.refine(drive, check_of(name, drive), "safe", CURRENTS, curve.safe, 1.0)


@pytest.mark.parametrize(
    ("cycles", "share"),
    [(2e6, 1.0), (5e6, 0.737), (1e8, 0.405), (1e8, 0.737 * 0.549), (1e12, 0.405)],
)
def test_direct_stress_at_the_printed_points(cycles, share):
    """EN 1993-1-9 clause 7.1: 0.737 of the category at 5 million, 0.549 of that at the cut-off."""
    assert weld_fatigue.range_allowed(36e6, cycles) == pytest.approx(36e6 * share, rel=2e-3)


@pytest.mark.parametrize(("cycles", "share"), [(2e6, 1.0), (1e8, 0.457), (1e12, 0.457)])
def test_shear_stress_at_the_printed_points(cycles, share):
    """EN 1993-1-9 clause 7.1: 0.457 of the category at the cut-off."""
    assert weld_fatigue.shear_range_allowed(80e6, cycles) == pytest.approx(80e6 * share, rel=2e-3)


def test_slopes_are_3_5_and_nothing():
    """A decade of cycles costs the tenth to the third root, then to the fifth, then nothing."""

    def ratio(curve, cycles):
        return curve(1.0, cycles) / curve(1.0, 10 * cycles)

    direct, shear = weld_fatigue.range_allowed, weld_fatigue.shear_range_allowed
    assert ratio(direct, 1e5) == pytest.approx(10 ** (1 / 3))
    assert ratio(direct, 6e6) == ratio(shear, 1e5) == pytest.approx(10**0.2)
    assert ratio(direct, 2e8) == ratio(direct, 1e2) == ratio(shear, 1e2) == 1


def test_both_ranges_together_against_the_standard():
    """Root of EN 1993-1-9 eq. 8.3, found by itself: never over the result here, at most 6 % under."""
    rng, apart = np.random.default_rng(1), []
    for across, along in rng.uniform(0.0, 2.0, (200, 2)):
        ours = weld_fatigue.equal_range(across * 36, along * 80, 36.0, 80.0) / 36
        exact = brentq(lambda u, a=across, b=along: (a / u) ** 3 + (b / u) ** 5 - 1, 1e-6, 10.0)
        apart.append(ours / exact)
    assert min(apart) > 1 - 1e-9
    assert 1.04 < max(apart) < 1.06


@pytest.mark.parametrize("turned", [0.0, 0.3, math.pi / 4, 1.2])
def test_stress_across_does_not_hang_on_the_plane_of_the_throat(turned):
    """Normal and shear on a throat turned anyhow, squared and added."""
    q2, q3, a = 120e3, 50e3, 0.003
    normal = (q3 * math.cos(turned) + q2 * math.sin(turned)) / a
    shear = (q2 * math.cos(turned) - q3 * math.sin(turned)) / a
    assert weld_fatigue.across_throat(q2, q3, a) == pytest.approx(math.hypot(normal, shear))


def test_bhandari_8_12_across_and_along():
    """Printed: shear 100 / t across the lines, bending 200 / t normal; nothing along; t = 2 mm."""
    weld = Weld(
        name="weld", length=0.05, throat=0.002, along="x", sides=Value(2, "n", "derived"),
        apart=0.1, ultimate_strength=360e6, correlation=Value(0.8, "beta", "derived"),
    )  # fmt: skip
    along, across, normal = frame_weld.line_parts(weld, [0.0, 10e3, 0.0], [1000.0, 0.0, 0.0])
    assert along == 0
    assert weld_fatigue.across_throat(across, normal, 0.002) == pytest.approx(
        1e6 * math.hypot(50.0, 100.0)
    )


@pytest.mark.parametrize(("side", "torque"), SIDES)
def test_a_ring_with_a_shoulder_sees_the_torque_of_every_start(side, torque):
    """A tube as thick as the throat; category 80 stands 80 * 20**(1/5) MPa a hundred thousand times."""
    file = file_of(**ring(side), duty__starts=100000)
    (row,), _ = rows_of(f"{side}_weld_fatigue", file)
    outer, inner = 0.02 + 0.000707 / 2, 0.02 - 0.000707 / 2
    shear = torque * outer / (np.pi / 2 * (outer**4 - inner**4))
    assert row.utilisation == pytest.approx(shear / (80e6 * 20**0.2), rel=0.02)
    assert "mostly along, 1e+05 starts" in row.station


@pytest.mark.parametrize(("reverse", "times"), [("0 %", 1.0), ("50 %", 1.0), ("120 %", 1.2)])
def test_the_pull_goes_once_round_the_ring_in_every_turn(reverse, times):
    """The ring in 720 pieces, each with its even share, turned under a pull that stands still."""
    file = file_of(**ring("hub", pilot="no"), duty__reverse=reverse)
    (_, row), case = rows_of("hub_weld_fatigue", file)
    share = times * float(case.loads.shaft_load) / (np.pi * 0.04 * 0.000707)
    angle = np.linspace(0, 2 * np.pi, 721)
    along, across = share * np.sin(angle), share * np.cos(angle)
    asked = (np.ptp(across) / (0.405 * 36e6)) ** 3 + (np.ptp(along) / (0.457 * 80e6)) ** 3
    assert row.utilisation == pytest.approx(asked ** (1 / 3), rel=2e-3)
    assert "every turn" in row.station


@pytest.mark.parametrize("reverse", [0.0, 0.6])
def test_a_start_is_not_under_its_history(reverse):
    """Rest, some turns forward, some turns back: largest less smallest at a place of the ring."""
    file = file_of(**ring("hub", pilot="no"), duty__reverse=reverse, duty__starts=2000000)
    (row, _), case = rows_of("hub_weld_fatigue", file)
    area = np.pi * 0.04 * 0.000707
    torsion, pull = TORQUE / 0.02 / area, float(case.loads.shaft_load) / area
    angle = np.linspace(0, 6 * np.pi, 2161)
    along = torsion + pull * np.sin(angle)
    history = np.concatenate([[0.0], along, -reverse * along])
    wave = np.concatenate([[0.0], pull * np.cos(angle), reverse * pull * np.cos(angle)])
    asked = ((np.ptp(wave) / 36e6) ** 3 + (np.ptp(history) / 80e6) ** 3) ** (1 / 3)
    assert row.utilisation == pytest.approx(asked, rel=1e-6)


@pytest.mark.parametrize("side", ["hub", "driven"])
@pytest.mark.parametrize(
    "worse",
    [{"weld_leg": "0.8 mm"}, {"weld_diameter": "30 mm"}, {"weld_share": "50 %"}, {"pilot": "no"},
     {"weld_sides": 1}, {"weld_material": "6061"}],
)  # fmt: skip
def test_what_makes_a_ring_worse_lowers_the_limit(side, worse):
    """A smaller leg or ring, stitches, no shoulder, one side, aluminium."""
    good, name = {"weld_sides": 2, "weld_material": "s355"}, f"{side}_weld_fatigue"
    limit = limit_of(name, file_of(**ring(side, **good)))
    assert limit_of(name, file_of(**ring(side, **{**good, **worse}))) < 0.98 * limit


def test_the_grade_of_steel_does_not_count():
    files = [file_of(**ring("hub", weld_material=m)) for m in ("s235", "s355")]
    assert limit_of("hub_weld_fatigue", files[0]) == limit_of("hub_weld_fatigue", files[1])


@pytest.mark.parametrize(
    "worse",
    [{"duty__starts": 1000000}, {"fixings__weld_leg": "2.5 mm"}, {"fixings__weld_quality": 0.5},
     {"duty__reverse": "50 %"}, {"shaft__face_overhang": "40 mm"}, {"fixings__weld_sides": "one"}],
)  # fmt: skip
def test_what_makes_a_frame_weld_worse_lowers_the_limit(worse):
    """More starts, a thinner throat, a poorer weld, reversing, a longer overhang, one side."""
    limit = limit_of("frame_weld_fatigue", welded_file(**FRAME))
    assert limit_of("frame_weld_fatigue", welded_file(**{**FRAME, **worse})) < 0.98 * limit


def test_more_starts_follow_the_slope():
    """Pulled away from the frame: between the slopes of shear and of stress across the throat."""
    few, many = (
        limit_of("frame_weld_fatigue", welded_file(**{**FRAME, "duty__starts": n}))
        for n in (100000, 1000000)
    )
    assert 10**0.2 < few / many <= 10 ** (1 / 3) * (1 + 1e-6)


def test_in_step_with_the_load_and_blind_to_what_stands():
    """Twice the current, twice the use; motor mass and knocks do nothing."""
    once, twice, heavy = (
        rows_of("frame_weld_fatigue", welded_file(**{**FRAME, **c}), current)[0][0].utilisation
        for current, c in (
            (50.0, {}),
            (100.0, {}),
            (50.0, {"motor__mass": "9 kg", "duty__bump": "9 g"}),
        )
    )
    assert twice == pytest.approx(2 * once, rel=1e-9)
    assert heavy == pytest.approx(once, rel=1e-9)


@pytest.mark.parametrize(("material", "category"), [("s235", 63e6), ("s355", 63e6), ("6061", 22e6)])
def test_the_toe_stands_its_category_whatever_the_mean(material, category):
    """Two million starts: the category of a fillet's toe; reversed, twice the range is asked for."""
    data = {**FRAME, "mount__material": material, "duty__starts": 2000000}
    plain, back = (
        next(r for r in rows_of("mount_fatigue", welded_file(**data, **c))[0] if "toe" in r.station)
        for c in ({}, {"duty__reverse": "100 %"})
    )
    assert plain.capacity == back.capacity == pytest.approx(category)
    assert back.demand == pytest.approx(2 * plain.demand)


def test_life_never_forms_the_safe_current():
    """A weld that would crack long before anything breaks leaves the first limit alone."""
    found = limits.find(welded_file(**FRAME, **ring("hub", weld_share="10 %", pilot="no")))
    seen = {x.check.name: x for x in found.limits}
    for name in ("frame_weld_fatigue", "hub_weld_fatigue"):
        assert not seen[name].counts
        assert seen[name].factor == 1.35
    assert seen["hub_weld_fatigue"].safe < found.first_safe.safe


def test_nothing_welded_nothing_asked():
    """Starts are neither assumed nor listed; given all the same, the file is told so."""
    plain, given = resolve(file_of()), resolve(file_of(duty__starts=5000))
    assert plain.duty.starts is None
    assert "duty.starts" not in [r.key for r in plain.ranges]
    assert "duty.starts does nothing here: nothing is welded." in given.warnings


@pytest.mark.parametrize("bad", [0, -1, "many"])
def test_bad_input_is_one_line(bad):
    with pytest.raises(InputError) as error:
        resolve(welded_file(duty__starts=bad))
    (line,) = str(error.value).splitlines()
    assert "duty.starts" in line
    assert str(bad) in line


def test_aluminium_bears_about_a_third_of_steel():
    """A crack grows as stress over modulus does: 70 GPa to 210 (IIW rule of thumb, from memory).

    Steel: 36 across and 80 along the throat of EN 1993-1-9 tables 8.5 and 8.3.
    """
    steel, aluminium = _weld_range.categories("steel"), _weld_range.categories("aluminium")
    assert [float(v) / 1e6 for v in steel[:2]] == [36.0, 80.0]
    for strong, soft in zip(steel, aluminium, strict=True):
        assert 2.75 < float(strong) / float(soft) < 3.25
