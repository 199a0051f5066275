"""Side force of a skewed chain against the set screws that hold the sprocket along its shaft."""

from __future__ import annotations

import math

import pytest
from hub_cases import check_of, limit_of, rows_of

from conftest import drive_file
from mountlimit.checks.alignment import skew
from mountlimit.formulas.shaft import side_force
from mountlimit.resolve import resolve

SCREWED = {"hub__key": "4 x 4 x 16 mm", "hub__set_screw": "2 x M6"}


@pytest.mark.parametrize(("degrees", "share"), [(2, 0.13), (4, 0.30), (6, 0.45)])
def test_not_under_the_simulation(degrees, share):
    """13, 30 and 45 % of the pull at 2, 4 and 6 degrees: never less, at most a sixth more."""
    force = side_force(1000.0, math.radians(degrees)) / 1000.0
    assert share <= force + 0.001
    assert force <= 1.16 * share


def test_two_screws_by_hand():
    """1000 N at the skew of the case, against 1.5 times the hold of one screw."""
    (row,), case = rows_of("axial_hold", {"shaft_load": 1000.0}, **SCREWED)
    (alone,), _ = rows_of(
        "axial_hold", {"shaft_load": 1000.0}, **{**SCREWED, "hub__set_screw": "1 x M6"}
    )
    assert row.capacity == pytest.approx(1.5 * alone.capacity)
    assert row.demand == pytest.approx(4300.0 * float(skew(case)[0]), rel=1e-9)


@pytest.mark.parametrize(
    "worse", [{"hub__set_screw": "1 x M6"}, {"hub__set_screw": "2 x M4"}, {"chain__skew": "1 deg"}]
)
def test_direction(worse):
    """Fewer or smaller screws and a chain more out of line lower the limit."""
    assert limit_of("axial_hold", **{**SCREWED, **worse}) < limit_of("axial_hold", **SCREWED)


def test_without_set_screws_it_is_not_asked():
    """Nothing is told of what holds the sprocket along the shaft."""
    assert check_of("axial_hold", resolve(drive_file())) is None
