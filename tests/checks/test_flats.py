"""Flats of the motor shaft: torsion against Timoshenko and finite elements, pressure by integration."""

from __future__ import annotations

import numpy as np
import pytest
from hub_cases import TORQUE, check_of, file_of, limit_of, rows_of
from scipy.integrate import trapezoid
from shapely.geometry import Point, box

from mountlimit.errors import InputError
from mountlimit.formulas import flats
from mountlimit.resolve import resolve

DOUBLE = {"hub__key": None, "hub__flats": 2, "hub__flat_depth": "1 mm", "hub__flat_length": "12 mm",
          "hub__key_yield": "300 MPa"}  # fmt: skip


def test_half_a_circle():
    """Timoshenko & Goodier, torsion of a half circle (from memory): 0.849 / 0.296 of T / r^3."""
    assert flats.one_flat_torsion(1.0, 2.0, 1.0) == pytest.approx(0.849 / 0.296, rel=0.01)


@pytest.mark.parametrize(("number", "depth"), [(1, 0.1), (1, 0.4), (2, 0.15), (2, 0.4)])
def test_torsion_against_finite_elements(number, depth):
    """Shaft of radius 1 with flats cut off, solved by sectionproperties: within 4 %."""
    from sectionproperties.analysis import Section
    from sectionproperties.pre import Geometry

    below = -1 + depth if number == 2 else -2
    shape = Geometry(
        Point(0, 0).buffer(1.0, quad_segs=30).intersection(box(-2, below, 2, 1 - depth))
    )
    section = Section(shape.create_mesh([0.01]))
    section.calculate_geometric_properties()
    section.calculate_warping_properties()
    solved = np.max(section.calculate_stress(mzz=1.0).get_stress()[0]["sig_zxy_mzz"])
    formula = flats.one_flat_torsion if number == 1 else flats.two_flat_torsion
    assert formula(1.0, 2.0, depth) == pytest.approx(solved, rel=0.04)


@pytest.mark.parametrize("number", [1, 2])
def test_pressure_gives_the_torque_back(number):
    """The pressure, spread over half of each flat as a triangle, makes the torque (integrated)."""
    (pressure, _), _ = rows_of("flats", **{**DOUBLE, "hub__flats": number})
    edge = np.sqrt(0.006**2 - 0.005**2)  # from the middle of the flat to where the round begins
    x = np.linspace(0.0, edge, 20001)
    torque = number * 0.012 * trapezoid(pressure.demand * x / edge * x, x)
    assert torque == pytest.approx(TORQUE, rel=1e-6)


def test_a_second_flat_weakens_the_shaft():
    """At the same depth two flats leave less shaft than one, and share the pressure."""
    (one, twist_one), (two, twist_two) = (
        rows_of("flats", **{**DOUBLE, "hub__flats": n})[0] for n in (1, 2)
    )
    assert twist_two.demand > 1.02 * twist_one.demand
    assert two.demand == pytest.approx(one.demand / 2, rel=1e-9)
    assert (one.station, two.station) == ("pressure on the flat", "pressure on the flats")


def test_hand_worked():
    """12 N*m on a 12 mm double D, 10 mm across, 12 mm long: chord 6.633 mm, 136.4 MPa."""
    across = {**DOUBLE, "hub__flat_depth": None, "hub__across_flats": "10 mm"}
    for changes in (DOUBLE, across):
        (pressure, twist), case = rows_of("flats", **changes)
        assert pressure.demand / 1e6 == pytest.approx(136.4, abs=0.05)
        assert pressure.capacity == 300e6
        assert twist.capacity == pytest.approx(0.5774 * case.drive.shaft.yield_strength, rel=1e-4)


def test_d_shaft_across_flat_and_round():
    """A D shaft of 12 mm that measures 11 mm over its flat has lost 1 mm."""
    drive = resolve(file_of(hub__key=None, hub__across_flats="11 mm"))
    assert (drive.hub.drive, drive.hub.flats.depth) == ("flats", pytest.approx(0.001))


@pytest.mark.parametrize(
    "worse",
    [{"hub__flats": 1}, {"hub__flat_depth": "0.5 mm"}, {"hub__flat_length": "8 mm"},
     {"hub__key_yield": "200 MPa"}, {"shaft__diameter": "10 mm", "shaft__bearing": None}],
)  # fmt: skip
def test_what_makes_it_worse_lowers_the_limit(worse):
    """One flat, shallower or shorter flats, a softer hub, a thinner shaft."""
    assert limit_of("flats", **{**DOUBLE, **worse}) < limit_of("flats", **DOUBLE)


def test_deep_flats_weaken_the_shaft():
    """On a soft shaft in a hard hub torsion governs, and deeper flats lower the limit."""
    hard = {**DOUBLE, "hub__key_yield": "1500 MPa", "shaft__yield_strength": "200 MPa"}
    deeper = {**hard, "hub__flat_depth": "3 mm"}
    assert limit_of("flats", **deeper) < limit_of("flats", **hard)


def test_flats_that_were_not_measured_are_not_checked():
    """The word alone gives no check, as before."""
    drive = resolve(file_of(hub__key=None, hub__drive="flats"))
    assert check_of("flats", drive) is None


@pytest.mark.parametrize(
    ("bad", "key"),
    [
        ({"hub__flat_depth": "5 mm"}, "hub.flat_depth"),
        ({"hub__flat_depth": None, "hub__across_flats": "12.5 mm"}, "hub.across_flats"),
        ({"hub__across_flats": "10 mm"}, "hub.across_flats"),
        ({"hub__flats": 3}, "hub.flats"),
    ],
)  # fmt: skip
def test_bad_inputs_are_refused(bad, key):
    """Flats past the middle, wider than the shaft, told twice, three of them."""
    with pytest.raises(InputError) as error:
        resolve(file_of(**{**DOUBLE, **bad}))
    assert [m.key for m in error.value.mistakes] == [key]
