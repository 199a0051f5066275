"""Friction between the motor's face and the mount, and the preload that makes it."""

from __future__ import annotations

import numpy as np
import pytest

from conftest import drive_file
from mountlimit import crossings, evaluate
from mountlimit.checks import motor_face_slip
from mountlimit.errors import InputError
from mountlimit.resolve import resolve

CURRENTS = np.geomspace(0.1, 1e5, 300)


def limit_of(file, name="motor_face_slip"):
    """Current at which the check is used up at likely values, factor 1."""
    drive = resolve(file)
    check = next(c for c in evaluate.applicable(drive) if c.name == name)
    curve = evaluate.curves(drive, CURRENTS, [name])[name]
    return crossings.refine(drive, check, "gives", CURRENTS, curve.gives, 1.0)


M4 = {"motor__holes": "slotted", "motor__bolts": "4 x M4", "motor__bolt_circle": "25 mm", "motor__preload": "2500 N",
      "motor__face_friction": 0.15}  # fmt: skip


def test_four_screws_hold_eighteen_newton_metres():
    """Four M4 screws of 2.5 kN on a 12.5 mm radius, friction 0.15: 18.75 N*m (T = mu n F r)."""
    case = evaluate.case_at(resolve(drive_file(**M4, motor__spigot="yes")), 40.0, 0)
    (row,) = motor_face_slip.rows(case)
    assert row.capacity == pytest.approx(18.75, rel=1e-12)
    assert row.demand == pytest.approx(abs(case.loads.stator_torque))


def test_with_a_spigot_the_limit_is_torque_alone():
    """18.75 N*m at 0.12 N*m per ampere: 156.25 A, whatever the pull."""
    assert limit_of(drive_file(**M4, motor__spigot="yes")) == pytest.approx(156.25, rel=1e-4)


@pytest.mark.parametrize(
    "worse",
    [
        {"motor__spigot": "no"}, {"motor__preload": "2000 N"}, {"motor__face_friction": 0.1},
        {"motor__bolts": "3 x M4"}, {"motor__bolt_circle": "20 mm"},
    ],
)  # fmt: skip
def test_what_makes_it_worse_lowers_the_limit(worse):
    """No spigot, less clamp, less friction, fewer bolts, a smaller circle."""
    good = {**M4, "motor__spigot": "yes"}
    assert limit_of(drive_file(**{**good, **worse})) < limit_of(drive_file(**good))


def test_weight_alone_can_move_it():
    """Without a spigot a heavy motor on nearly loose bolts slides by bumps alone."""
    loose = {"motor__holes": "slotted", "motor__preload": "60 N", "motor__face_friction": 0.1}
    assert limit_of(drive_file(**loose)) == 0.0
    assert limit_of(drive_file(**loose, motor__spigot="yes")) > 0.0


def test_torque_of_the_face_bolts_sets_their_preload():
    """T / (K d): 6 N*m on M6 with K 0.2 likely is 5 kN."""
    drive = resolve(drive_file(motor__tightening_torque="6 N*m"))
    assert drive.face.preload == pytest.approx(5000, rel=1e-9)
    kept = next(r for r in drive.ranges if r.key == "motor.preload")
    assert kept.low < kept.likely < kept.high


@pytest.mark.parametrize(("key", "value"), [("motor__spigot", "maybe"), ("motor__preload", "0 N")])
def test_bad_inputs_are_refused(key, value):
    """An unknown word, a preload below its range."""
    with pytest.raises(InputError):
        resolve(drive_file(**{key: value}))


def test_only_slotted_holes_in_a_face_slide():
    """Round holes stop the screws: the friction is not asked."""
    for holes, slides in (("round", False), ("slotted", True)):
        drive = resolve(drive_file(motor__holes=holes))
        names = {c.name for c in evaluate.applicable(drive)}
        assert ("motor_face_slip" in names) == slides
