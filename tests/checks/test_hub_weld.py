"""Sprockets welded to their hub: stress of a thin ring, strength of EN 1993-1-8 and EN 1999-1-1."""

from __future__ import annotations

import numpy as np
import pytest
from hub_cases import DRIVEN_TORQUE, TORQUE, check_of, file_of, limit_of, rows_of

from mountlimit.errors import InputError
from mountlimit.resolve import resolve

WELD = {"weld_diameter": "40 mm", "weld_leg": "1 mm", "pilot": "yes"}
SIDES = [("hub", TORQUE), ("driven", DRIVEN_TORQUE)]


def weld(side, **changes):
    """Keys of a ring of weld on one side."""
    return {f"{side}__{k}": v for k, v in {**WELD, **changes}.items()}


@pytest.mark.parametrize(("side", "torque"), SIDES)
def test_torque_on_a_thin_ring(side, torque):
    """A tube as thick as the throat, by its exact polar second moment: 0.707 mm on 40 mm, 2 %."""
    (row,), _ = rows_of(f"{side}_weld", **weld(side))
    outer, inner = 0.02 + 0.000707 / 2, 0.02 - 0.000707 / 2
    polar = np.pi / 2 * (outer**4 - inner**4)
    assert row.demand == pytest.approx(torque * outer / polar, rel=0.02)


def test_pull_shared_evenly():
    """Without a shoulder the pull comes on top: its force over the throat's area."""
    (with_pull,), case = rows_of("hub_weld", **weld("hub", pilot="no"))
    (alone,), _ = rows_of("hub_weld", **weld("hub"))
    area = np.pi * 0.04 * 0.000707
    extra = with_pull.demand - alone.demand
    assert extra * area == pytest.approx(float(case.loads.shaft_load), rel=1e-9)


@pytest.mark.parametrize(
    ("material", "strength", "factor"),
    [("s235", 207.8, 1.25), ("s275", 233.7, 1.25), ("s355", 241.2, 1.25), (None, 207.8, 1.25)],
)
def test_steel(material, strength, factor):
    """EN 1993-1-8 clause 4.5.3.3, table 4.1 gamma 1.25; ultimate 360, 430 and 470 MPa."""
    (row,), _ = rows_of("hub_weld", **weld("hub", weld_material=material))
    assert row.capacity / factor / 1e6 == pytest.approx(strength, abs=0.1)


def test_aluminium_takes_its_heat_affected_strength():
    """EN 1999-1-1 table 3.2b: 6061-T6 beside a weld 175 MPa, not 260; over root 3 in shear."""
    (row,), _ = rows_of("driven_weld", **weld("driven", weld_material="6061"))
    assert row.capacity / 1e6 == pytest.approx(101.0, abs=0.05)


@pytest.mark.parametrize("side", ["hub", "driven"])
@pytest.mark.parametrize(
    "worse",
    [{"weld_leg": "0.8 mm"}, {"weld_diameter": "30 mm"}, {"weld_share": "50 %"}, {"pilot": "no"},
     {"weld_sides": 1}, {"weld_material": "s235"}],
)  # fmt: skip
def test_what_makes_it_worse_lowers_the_limit(side, worse):
    """A smaller leg or ring, stitches, no shoulder, one side, softer steel."""
    good = {"weld_sides": 2, "weld_material": "s355"}
    name = f"{side}_weld"
    assert limit_of(name, **weld(side, **{**good, **worse})) < limit_of(name, **weld(side, **good))


def test_no_weld_told_no_check():
    """Left out means not checked."""
    assert check_of("hub_weld", resolve(file_of())) is None


@pytest.mark.parametrize(
    ("bad", "key"),
    [
        ({"weld_leg": None}, "hub.weld_leg"), ({"weld_diameter": "10 mm"}, "hub.weld_diameter"),
        ({"weld_material": "hdpe"}, "hub.weld_material"), ({"weld_material": "7075"}, "hub.weld_material"),
        ({"weld_share": "120 %"}, "hub.weld_share"),
    ],
)  # fmt: skip
def test_bad_inputs_are_refused(bad, key):
    """No leg, a ring inside the shaft, plastic, an alloy that is not welded, over the whole circle."""
    changes = {k: v for k, v in weld("hub", **bad).items() if v is not None}
    with pytest.raises(InputError) as error:
        resolve(file_of(**changes))
    assert [m.key for m in error.value.mistakes] == [key]
