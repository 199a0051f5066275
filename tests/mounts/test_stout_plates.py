"""Ratios of true give and stress over the plate model's: by thickness and clear length, measured by hand."""

from __future__ import annotations

import math

import pytest

from conftest import drive_file
from mountlimit import evaluate, plate_stress
from mountlimit.mounts import _model_error
from mountlimit.plate_route import with_plates
from mountlimit.resolve import resolve
from mountlimit.sections import plane_yielding


def _ranges(**changes):
    drive = resolve(with_plates(drive_file(**changes)))
    return drive, {r.key: (r.low, r.likely, r.high) for r in drive.ranges}


@pytest.mark.parametrize(
    ("changes", "softness", "stress"),
    [
        ({"mount__thickness": "6 mm", "mount__free_length": "110 mm"}, _model_error.MODEL_SPREAD, None),
        ({"mount__thickness": "10 mm", "mount__free_length": "85 mm"}, _model_error.LOCAL_SPREAD, None),
        ({"mount__thickness": "40 mm", "mount__free_length": "110 mm"}, _model_error.STOUT_SPREAD, _model_error.THICK_STRESS),
    ],
)  # fmt: skip
def test_thick_and_short_plates_give_more(changes, softness, stress):
    drive, ranges = _ranges(**changes)
    assert ranges["mount.softness"] == softness
    assert ranges.get("mount.local_stress") == stress
    if stress is None:
        assert float(drive.mount.local_stress) == 1.0


def test_the_clear_length_is_that_between_the_nearest_washers():
    """Worked with a compass: motor bolts on a circle, frame bolts in a row below."""
    drive, _ = _ranges(mount__free_length="110 mm")
    motor, plane = drive.motor, drive.mount.plane
    model = drive.plates.family.model
    least = min(
        math.dist(a.centre, b.centre) - a.washer_diameter / 2 - b.washer_diameter / 2
        for a in model.frame_bolts for b in model.motor_bolts
    )  # fmt: skip
    assert motor.feet is None
    assert plane.normal == "z"

    class Parts:
        fixings = drive.fixings

    Parts.motor = motor
    assert _model_error.clear_length(Parts, (plane,)) == pytest.approx(least, rel=1e-9)


def test_the_stress_ratio_goes_into_the_check():
    drive, _ = _ranges(mount__local_stress=1.25)
    assert float(drive.mount.local_stress) == 1.25
    plain, _ = _ranges()
    found = {}
    for name, one in (("raised", drive), ("plain", plain)):
        case = evaluate.case_at(one, 20.0, 0)
        peak = plate_stress.peaks(case, plane_yielding, ("ring",))[0]
        rows = [
            r for c in evaluate.applicable(one) if c.name == "mount_section" for r in c.rows(case)
        ]
        found[name] = float(peak.stress), [float(r.demand) for r in rows if r.many]
    assert found["raised"][0] == pytest.approx(found["plain"][0], rel=1e-6)
    assert found["raised"][1][0] == pytest.approx(1.25 * found["plain"][1][0], rel=1e-6)
