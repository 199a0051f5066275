"""Slip of the frame joint: EN 1993-1-8 clause 3.9, slots, and a bolt pulled hard."""

from __future__ import annotations

import numpy as np
import pytest

from conftest import angle_file, drive_file
from mountlimit import crossings, evaluate
from mountlimit.checks import bolt_slip
from mountlimit.errors import InputError
from mountlimit.loads import case_list
from mountlimit.plate_route import with_plates
from mountlimit.resolve import resolve

CURRENTS = np.geomspace(0.1, 1e5, 300)


def limit_of(file):
    """Current at which the joint slips at likely values, factor 1."""
    drive = resolve(file)
    check = next(c for c in evaluate.applicable(drive) if c.name == "bolt_slip")
    curve = evaluate.curves(drive, CURRENTS, ["bolt_slip"])["bolt_slip"]
    return crossings.refine(drive, check, "gives", CURRENTS, curve.gives, 1.0)


@pytest.mark.parametrize(("friction", "force"), [(0.2, 7.55), (0.3, 11.3), (0.4, 15.1)])
def test_resistance_of_m12(friction, force):
    """Resistance tables of clause 3.9: M12 class 8.8, 47.2 kN, gamma_M3 1.25; printed to three figures."""
    drive = resolve(drive_file(
        fixings__bolts="4 x M12", fixings__preload="47208 N", fixings__friction=friction,
    ))  # fmt: skip
    row = bolt_slip.rows(evaluate.case_at(drive, 40.0, 0))[0]
    assert row.capacity / 1.25 / 1000 == pytest.approx(force, abs=0.05 if force > 10 else 0.005)


def test_the_limit_is_where_shear_meets_what_tension_leaves():
    """At the slip current, shear over friction and 0.8 of the net pull make up the preload (eq. 3.8)."""
    file = drive_file(fixings__preload="3 kN", fixings__friction=0.15)
    drive, current = resolve(file), limit_of(file)
    worst = 0.0
    for index in range(len(evaluate.case_at(drive, np.array([1.0])).loads.names)):
        case = evaluate.case_at(drive, current, index)
        if case.loads.groups[0] in ("pull", "reverse", "bump", "bump alone"):
            for shear, net in zip(
                case.response.bolts.shear, case.response.bolts.net_pull, strict=True
            ):
                worst = max(worst, shear / 0.15 + 0.8 * net)
    assert worst == pytest.approx(3000, rel=1e-5)


def test_a_pull_off_the_frame_takes_friction_and_a_moment_does_not():
    """An angle pulled away: the pull itself counts, shared evenly; along the foot none does (clause 3.9.2(2))."""
    for route in ("plates", "sections"):
        for pull, share in (("away", 1.0), ("across", 0.0)):
            file = with_plates(
                angle_file(chain__pull=pull, motor__mass="0.1 kg", mount__route=route)
            )
            drive = resolve(file)
            index = next(i for i, c in enumerate(case_list(drive)) if c[1] == "pull")
            case = evaluate.case_at(drive, 40.0, index)
            total = sum(float(n) for n in case.response.bolts.net_pull)
            assert total == pytest.approx(share * float(case.loads.shaft_load), rel=0.01, abs=1.5)


@pytest.mark.parametrize(
    "worse",
    [{"fixings__holes": "slotted"}, {"fixings__preload": "2 kN"}, {"fixings__friction": 0.1},
     {"fixings__bolts": "2 x M8", "fixings__span_along": "0 mm"}],
)  # fmt: skip
def test_what_makes_it_worse_lowers_the_limit(worse):
    """Slots, less clamp, less friction, fewer bolts."""
    good = {"fixings__preload": "3 kN", "fixings__friction": 0.15}
    assert limit_of(drive_file(**{**good, **worse})) < limit_of(drive_file(**good))


def test_a_bolt_pulled_past_its_clamp_stays_finite():
    """Far over the limit the utilisation goes on rising, without a singularity."""
    drive = resolve(drive_file(fixings__preload="100 N"))
    curve = evaluate.curves(drive, CURRENTS, ["bolt_slip"])["bolt_slip"].gives
    assert np.isfinite(curve).all()
    assert (np.diff(curve) >= 0).all()


def test_no_friction_is_refused():
    """Friction nought would divide by nothing."""
    with pytest.raises(InputError):
        resolve(drive_file(fixings__friction=0))
