"""Ratios of true give and stress over the plate model's: by thickness and clear length, measured by hand."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from conftest import drive_file
from mountlimit import evaluate, plate_stress
from mountlimit.mounts import _model_error
from mountlimit.plate_route import with_plates
from mountlimit.resolve import resolve
from mountlimit.sections import plane_yielding

MESHED: Any = object()  # stands for a reduced model that is not asked anything


def _ranges(**changes):
    drive = resolve(with_plates(drive_file(**changes)))
    return drive, {r.key: (r.low, r.likely, r.high) for r in drive.ranges}


@pytest.mark.parametrize(
    "changes",
    [{"mount__thickness": "40 mm"}, {"mount__free_length": "70 mm"}],
    ids=["thicker", "shorter"],
)
def test_thick_and_short_plates_are_stressed_more(changes):
    slender = {"mount__thickness": "6 mm", "mount__free_length": "110 mm"}
    drive, plain = _ranges(**slender)
    assert float(drive.mount.local_stress) == 1.0
    assert "mount.local_stress" not in plain
    _, stout = _ranges(**{**slender, **changes})
    assert stout["mount.local_stress"][2] > 1.0 > stout["mount.local_stress"][0]
    assert plain["mount.softness"] == stout["mount.softness"] == _model_error.SOFTNESS


def test_no_thickness_makes_a_jump():
    """A tenth of a per cent thicker changes no ratio by more, from 3 mm to 60 mm; a ratio untold is 1."""
    keys = ("mount.softness", "mount.local_stress")
    for thickness in np.geomspace(3.0, 60.0, 25):
        sizes = (f"{t:.6f} mm" for t in (thickness, 1.001 * thickness))
        one, other = (
            {r.key: r for r in resolve(replace(drive_file(mount__thickness=t, shaft__face_overhang="80 mm"), plates=MESHED)).ranges}
            for t in sizes
        )  # fmt: skip
        for key in keys:
            for end in ("low", "likely", "high"):
                pair = [getattr(x.get(key), end, 1.0) for x in (one, other)]
                room = _model_error.UNTOLD if (key in one) != (key in other) else 0.001
                assert pair[1] == pytest.approx(pair[0], rel=room), (key, end, thickness)


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
    plain, _ = _ranges(mount__local_stress=1.0)
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


def test_the_tension_ratio_goes_into_the_frame_bolts():
    drive, _ = _ranges(mount__prying=1.25)
    plain, ranges = _ranges(mount__prying=1.0)
    assert "mount.prying" not in ranges
    raised, usual = (evaluate.case_at(d, 20.0, 0).response.bolts for d in (drive, plain))
    assert max(usual.tension) > 0.0
    assert raised.tension == pytest.approx([1.25 * t for t in usual.tension], rel=1e-9)
    assert raised.shear == pytest.approx(usual.shear, rel=1e-9)
    assert raised.net_pull == pytest.approx(usual.net_pull, rel=1e-9)
    assert _ranges()[1]["mount.prying"] == _model_error.PRYING
