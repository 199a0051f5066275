"""Sprockets bolted on a circle, driving and driven: shear and slip, bolt by bolt round a turn."""

from __future__ import annotations

import numpy as np
import pytest
from hub_cases import DRIVEN_TORQUE, TORQUE, check_of, file_of, limit_of, rows_of

from mountlimit.errors import InputError
from mountlimit.resolve import resolve

BOLTS = {"bolts": "6 x M12", "bolt_circle": "60 mm", "bolt_class": "8.8", "friction": 0.2,
         "preload": "47208 N"}  # fmt: skip
BACK = {"duty__reverse": "100 %"}
SIDES = [("hub", TORQUE), ("driven", DRIVEN_TORQUE)]


def ring(side, **changes):
    """Keys of a ring of bolts on one side."""
    return {f"{side}__{k}": v for k, v in {**BOLTS, **changes}.items()}


def worst_round_a_turn(torque, pull, count, radius):
    """Largest force on a bolt while the sprocket turns under a fixed pull (vectors, bolt by bolt)."""
    turn = np.linspace(0, 2 * np.pi, 7201)[:, None] + 2 * np.pi / count * np.arange(count)
    share = torque / (count * radius)
    force = share * np.stack((-np.sin(turn), np.cos(turn)))
    force[0] += pull / count
    return float(np.hypot(*force).max())


@pytest.mark.parametrize(("side", "torque"), SIDES)
def test_worst_bolt_of_a_turn(side, torque):
    """Torque and pull of the chain, vectors added at every bolt through a whole turn."""
    (row,), case = rows_of(f"{side}_bolts", **ring(side))
    expected = worst_round_a_turn(torque, float(case.loads.shaft_load), 6, 0.03)
    assert row.demand == pytest.approx(expected, rel=1e-5)


@pytest.mark.parametrize(("side", "torque"), SIDES)
def test_a_shoulder_takes_the_pull(side, torque):
    """Centred by a shoulder: T / (n r) alone."""
    (row,), _ = rows_of(f"{side}_bolts", **ring(side, pilot="yes"))
    assert row.demand == pytest.approx(torque / (6 * 0.03), rel=1e-9)


@pytest.mark.parametrize("side", ["hub", "driven"])
def test_resistance_tables(side):
    """EN 1993-1-8 tables, M12 class 8.8, gamma 1.25: 32.4 kN in shear (thread), 7.55 kN in slip."""
    (shear,), _ = rows_of(f"{side}_bolts", **ring(side))
    (slips,), _ = rows_of(f"{side}_bolt_slip", **ring(side), **BACK)
    assert shear.capacity / 1.25 / 1000 == pytest.approx(32.4, abs=0.05)
    assert slips.capacity / 1.25 / 1000 == pytest.approx(7.55, abs=0.005)
    assert slips.demand == shear.demand
    (loose,), _ = rows_of(
        f"{side}_bolt_loosening", **ring(side)
    )  # hub_bolt_loosening, driven_bolt_loosening
    assert loose.capacity / 1.25 / 1000 == pytest.approx(7.55, abs=0.005)


@pytest.mark.parametrize("side", ["hub", "driven"])
@pytest.mark.parametrize("check", ["bolts", "bolt_slip"])
@pytest.mark.parametrize(
    "worse",
    [{"bolts": "3 x M12"}, {"bolt_circle": "45 mm"}, {"bolts": "6 x M8", "preload": "16 kN"},
     {"bolt_class": "4.6", "preload": "20 kN"}],
)  # fmt: skip
def test_what_makes_it_worse_lowers_the_limit(side, check, worse):
    """Fewer, smaller or weaker bolts, a smaller circle."""
    name = f"{side}_{check}"
    assert limit_of(name, **ring(side, **worse), **BACK) < limit_of(name, **ring(side), **BACK)


@pytest.mark.parametrize("side", ["hub", "driven"])
def test_one_way_slip_is_a_matter_of_time(side):
    """Without reversing the same friction stands against the pull of every turn; a shoulder takes that."""
    (loose,), case = rows_of(f"{side}_bolt_loosening", **ring(side))
    (slips,), _ = rows_of(f"{side}_bolt_slip", **ring(side), **BACK)
    assert (loose.demand, loose.capacity, loose.level) == (slips.demand, slips.capacity, "safe")
    assert check_of(f"{side}_bolt_slip", case.drive) is None
    assert check_of(f"{side}_bolt_loosening", resolve(file_of(**ring(side), **BACK))) is None
    assert check_of(f"{side}_bolt_loosening", resolve(file_of(**ring(side, pilot="yes")))) is None


def test_a_larger_driven_sprocket_asks_more():
    """More teeth on the driven side: more torque on its bolts, none on the driving one's."""
    both = {**ring("hub"), **ring("driven")}
    more = {**both, "chain__driven_teeth": 65}
    assert limit_of("driven_bolts", **more) < limit_of("driven_bolts", **both)
    assert limit_of("hub_bolts", **more) == pytest.approx(limit_of("hub_bolts", **both), rel=1e-3)


def test_no_bolts_told_no_check():
    """Left out means not checked."""
    drive = resolve(file_of())
    assert check_of("hub_bolts", drive) is None
    assert check_of("driven_bolt_slip", drive) is None
    assert check_of("driven_bolt_loosening", drive) is None


@pytest.mark.parametrize("side", ["hub", "driven"])
@pytest.mark.parametrize(
    ("bad", "key"),
    [
        ({"bolt_circle": None}, "bolt_circle"), ({"bolts": None}, "bolts"),
        ({"bolt_circle": "20 mm"}, "bolt_circle"), ({"bolts": "1 x M12"}, "bolts"),
    ],
)  # fmt: skip
def test_bad_inputs_are_refused(side, bad, key):
    """Bolts without a circle or the other way, holes that meet, a single bolt."""
    changes = {k: v for k, v in ring(side, **bad).items() if v is not None}
    with pytest.raises(InputError) as error:
        resolve(file_of(**changes))
    assert [m.key for m in error.value.mistakes] == [f"{side}.{key}"]


def test_bolts_through_the_shaft_are_refused():
    """Two bolts on a circle not clear of the shaft."""
    with pytest.raises(InputError, match="run into the shaft"):
        resolve(file_of(**ring("hub", bolts="2 x M5", bolt_circle="16 mm")))


@pytest.mark.parametrize("side", ["hub", "driven"])
def test_which_slip_counts(side):
    """Reversing hammers it; one way the pull works it loose, unless a shoulder takes the pull; no ring, none."""
    loose, slip = f"{side}_bolt_loosening", f"{side}_bolt_slip"
    cases = [
        ({}, set()), (BACK, set()), (ring(side), {loose}), ({**ring(side), **BACK}, {slip}),
        (ring(side, pilot="yes"), set()), ({**ring(side, pilot="yes"), **BACK}, {slip}),
    ]  # fmt: skip
    for edit, expected in cases:
        drive = resolve(file_of(**edit))
        assert {n for n in (loose, slip) if check_of(n, drive)} == expected, edit
