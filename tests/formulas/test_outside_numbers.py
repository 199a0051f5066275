"""Formulas that little else looked at, each against a road of its own: a solved system, an integral,
points on a drawing, or a printed number.
"""

from __future__ import annotations

import numpy as np
import pytest
from scipy.integrate import quad
from test_limit_cases import yield_scale

from mountlimit.formulas import (
    duty,
    edge_screws,
    equivalent,
    feet,
    member,
    outboard,
    pull_test,
    rigid,
    segment,
    shaft_parts,
    slip,
    spacer,
    span_moments,
    struts,
    teeth,
    timber_screws,
    usage,
)


@pytest.mark.parametrize("ratio", [1.0, 1.3])
@pytest.mark.parametrize("point", [(9.0, -4.0, 0.0), (6.0, 5.0, 3.0), (-7.0, 2.0, 4.0)])
def test_pressure_sensitive_yield_in_a_plane(point, ratio):
    """The closed form solves the criterion of Raghava, Caddell and Yeh (from memory)."""
    x, y, shear = point
    low, high = np.linalg.eigvalsh([[x, shear], [shear, y]])
    value = equivalent.plane_pressure_sensitive(x, y, shear, ratio)
    assert value == pytest.approx(yield_scale((high, low), ratio), rel=1e-9)


@pytest.mark.parametrize("bore", [0.0, 0.012])
def test_a_round_spacer_carries_its_force_and_moment(bore):
    """A stress that grows evenly across the section, from the force and the moment it adds up to."""
    diameter, force, moment = 0.02, -3000.0, 40.0

    def strip(y, power):
        width = np.sqrt((diameter / 2) ** 2 - y**2)
        hollow = np.sqrt(max((bore / 2) ** 2 - y**2, 0.0))
        return 2 * (width - hollow) * y**power

    points = [-bore / 2, bore / 2] if bore else None
    ends = (-diameter / 2, diameter / 2)
    area = quad(strip, *ends, args=(0,), points=points, epsabs=0)[0]
    second = quad(strip, *ends, args=(2,), points=points, epsabs=0)[0]
    expected = abs(force) / area + moment * diameter / 2 / second
    assert spacer.normal_stress(force, moment, diameter, bore) == pytest.approx(expected, rel=1e-6)


def test_four_feet_share_force_and_moment_as_equal_springs():
    """Smallest shears that balance a force across and a moment, each alone; together in line."""
    along, across = 0.12, 0.09
    corners = [(sx * across / 2, sz * along / 2) for sx in (1, -1) for sz in (1, -1)]
    balance = np.zeros((3, 8))
    for i, (x, z) in enumerate(corners):
        balance[0, 2 * i] = balance[1, 2 * i + 1] = 1.0
        balance[2, 2 * i], balance[2, 2 * i + 1] = z, -x

    def worst(force, moment):
        shear = np.linalg.lstsq(balance, np.array([force, 0.0, moment]), rcond=None)[0]
        return np.hypot(shear[::2], shear[1::2]).max()

    alone = worst(800.0, 0.0), worst(0.0, 30.0)
    assert feet.foot_shear(800.0, 0.0, along, across) == pytest.approx(alone[0])
    assert feet.foot_shear(0.0, -30.0, along, across) == pytest.approx(alone[1])
    assert feet.foot_shear(-800.0, 30.0, along, across) == pytest.approx(sum(alone))
    assert worst(800.0, 30.0) < sum(alone)


def test_a_screw_stretches_less_and_less_along_its_thread():
    """The force in the shank falls evenly to nothing over the engaged thread."""
    modulus, core, free, thread = 2.05e11, 0.0042, 0.012, 0.03
    area = np.pi * (core / 2) ** 2
    stretch = free + quad(lambda x: 1 - x / thread, 0, thread)[0]
    value = edge_screws.shank_stiffness(modulus, core, free, thread)
    assert value == pytest.approx(modulus * area / stretch)


@pytest.mark.parametrize("place", [0.2, 0.35, 0.5, 0.8])
def test_couple_on_a_span_held_at_both_ends(place):
    """Two beam elements, solved: the larger moment beside the couple is the largest anywhere."""
    couple, lengths = 70.0, (place, 1 - place)

    def element(length):
        a, b = 12 / length**3, 6 / length**2
        c, d = 4 / length, 2 / length
        return np.array([[a, b, -a, b], [b, c, -b, d], [-a, -b, a, -b], [b, d, -b, c]])

    left, right = (element(x) for x in lengths)
    moved = np.linalg.solve(left[2:, 2:] + right[:2, :2], [0.0, couple])
    ends = (left[:, 2:] @ moved)[1::2], (right[:, :2] @ moved)[1::2]
    beside = max(abs(ends[0][1]), abs(ends[1][0]))
    assert beside == np.abs(ends).max()
    assert span_moments.held_moment_couple(couple, place) == pytest.approx(beside)


@pytest.mark.parametrize(("current", "held"), [(80.0, 30.0), (51.0, 50.0)])
def test_after_the_rest_the_winding_has_met_its_steady_current_on_the_mean(current, held):
    pull = 4.0
    rest = duty.rest_after_pull(pull, current, held)
    assert np.sqrt(current**2 * pull / (pull + rest)) == pytest.approx(held)


def test_shear_that_friction_just_holds_under_tension():
    """EN 1993-1-8 eq. 3.8 turned round: preload 40 kN, tension 10 kN, two faces, slotted."""
    holds = 0.76 * 2 * 0.3 * (40e3 - 0.8 * 10e3)
    asked = slip.shear_to_hold(holds, 10e3, 0.3, 2, 0.76)
    assert asked == pytest.approx(0.76 * 2 * 0.3 * 40e3)


@pytest.mark.parametrize("count", [3, 5, 8])
def test_holes_on_a_circle(count):
    first, second = (0.04 * np.exp(2j * np.pi * i / count) for i in (0, 1))
    assert teeth.hole_spacing(0.08, count) == pytest.approx(abs(second - first))


def test_embedment_of_bolts_in_c24():
    """M12: 25.3, M20: 23.0 N/mm2 along the grain, as worked in guides to EN 1995 (from memory)."""
    assert timber_screws.embedment_strength(0.012, 350.0) == pytest.approx(25.3e6, abs=5e4)
    assert timber_screws.embedment_strength(0.020, 350.0) == pytest.approx(23.0e6, abs=5e4)


def test_withdrawal_stiffness_grows_less_than_the_screw():
    """8 mm, 100 mm deep: 7459 N/mm by logarithms; 32 times as deep is 4 times as stiff."""
    base = timber_screws.axial_stiffness(0.008, 0.1)
    assert base == pytest.approx(7459e3, rel=1e-3)
    assert timber_screws.axial_stiffness(0.008, 3.2) == pytest.approx(4 * base)
    assert timber_screws.axial_stiffness(0.256, 0.1) == pytest.approx(2 * base)


def test_a_helping_bearing_is_a_second_support():
    """Two points of an elastic shaft, a spring at one: the stiffness matrix solved."""
    give = np.array([[5e-8, 3e-8], [3e-8, 2e-8]])  # sprocket, bearing
    spring, load = 4e7, 900.0
    stiffness = np.linalg.inv(give) + np.diag([0.0, spring])
    moved = np.linalg.solve(stiffness, [load, 0.0])
    value = outboard.helped_softness(give[0, 0], spring * moved[1], load, give[0, 1])
    assert value == pytest.approx(moved[0] / load)


def test_two_readings_by_least_squares():
    readings, errors = np.array([3.0e-8, 3.6e-8]), np.array([1e-9, 3e-9])
    fit = np.linalg.lstsq((1 / errors)[:, None], readings / errors, rcond=None)[0][0]
    value = pull_test.both_marks(readings[0], errors[0], readings[1], errors[1])
    assert value == pytest.approx(fit)


def test_bending_of_a_section_that_leans():
    """The curvature about one axis from both moments, solved, as a moment of that axis alone."""
    own, product, other = 3e-8, 1.2e-8, 2e-8
    curvature = np.linalg.solve([[own, -product], [-product, other]], [150.0, 60.0])
    value = member.skewed_moment(150.0, 60.0, product, own, other)
    assert value == pytest.approx(own * curvature[0])


@pytest.mark.parametrize("angle", [0.3, 2.2])
def test_a_turn_about_the_chain_line_is_all_lean_about_it(angle):
    along, square = (np.cos(angle), np.sin(angle)), (-np.sin(angle), np.cos(angle))
    assert rigid.lean_about_chain(2e-3 * along[0], 2e-3 * along[1], angle) == pytest.approx(-2e-3)
    assert rigid.lean_about_chain(*square, angle) == pytest.approx(0.0, abs=1e-15)


def test_sag_along_the_chain():
    """A drop of 2 mm: nothing of it along a level chain, half along one that climbs 30 degrees."""
    assert shaft_parts.sag_along(2e-3, 0.0) == pytest.approx(0.0)
    assert shaft_parts.sag_along(2e-3, np.radians(30)) == pytest.approx(1e-3)


def test_shear_of_a_strip_by_the_energy_of_its_parabola():
    width, depth, force, length, modulus = 0.1, 0.008, 500.0, 0.07, 2.6e10
    stress = lambda y: 1.5 * force / (width * depth) * (1 - (2 * y / depth) ** 2)  # noqa: E731
    energy = (
        width * length * quad(lambda y: stress(y) ** 2 / (2 * modulus), -depth / 2, depth / 2)[0]
    )
    value = segment.shear_movement(force, length, modulus, width * depth)
    assert value == pytest.approx(2 * energy / force)


def test_every_part_of_the_skew_adds_whatever_its_sign():
    centres = 0.4
    parts = [(-0.003, 0, 0, 0, 0), (0, -0.004, 0, 0, 0), (0, 0, 0.002, 0, 0), (0, 0, 0, 0.001, 0),
             (0, 0, 0, 0, 0.0005)]  # fmt: skip

    def skew(yaw, offset, built, built_offset, play):
        return usage.chain_skew(yaw, offset, centres, built, built_offset, play)

    alone = [skew(*p) for p in parts]
    assert alone[0] == pytest.approx(0.003)
    assert np.tan(alone[1]) == pytest.approx(0.004 / centres)
    assert skew(*np.sum(parts, axis=0)) == pytest.approx(sum(alone))
    assert min(alone) > 0


def test_a_strut_between_two_joints_is_three_springs():
    rod, joint = 2.0e11 * 1.0e-4 / 0.25, 1.5e8
    system = np.array([[joint + rod, -rod, 0], [-rod, rod + joint, -joint], [0, -joint, joint]])
    moved = np.linalg.solve(system, [0.0, 0.0, 1.0])
    assert struts.strut_stiffness(2.0e11, 1.0e-4, 0.25, joint) == pytest.approx(1 / moved[2])
