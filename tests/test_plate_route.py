"""The plate model behind the drive: it governs the lean, says so, and falls back with a reason."""

from __future__ import annotations

import math

import numpy as np
import pytest

from conftest import angle_file, drive_file
from mountlimit import evaluate, limits, plate_route, structure, why
from mountlimit.loads import case_list
from mountlimit.resolve import resolve


@pytest.mark.parametrize("make", [drive_file, angle_file], ids=["plate", "angle"])
@pytest.mark.parametrize(("pull", "axis"), [("across", 1), ("away", 0), ("towards", 0)])
def test_mount_and_joint_turn_as_the_plates_do(make, pull, axis):
    """The turn of mount and joint in the pipeline is that of the plate model, torque signs bounded."""
    file = plate_route.with_plates(make(chain__pull=pull))
    drive = resolve(file)
    index = next(i for i, c in enumerate(case_list(drive)) if c[1] == "steady" and c[2] > 0)
    loads = evaluate.case_at(drive, 40.0, index).loads
    parts = structure.displacements_of(drive, loads)[: len(drive.mount.segments) + 1]
    ours = sum(float(p.turn[axis]) for p in parts)
    force = float(loads.shaft_load)
    angle = float(loads.pull_angle)
    wrench = np.array(
        [force * math.cos(angle), force * math.sin(angle), 0, 0, 0, float(loads.stator_torque)]
    )
    solution = plate_route.solution_of(drive)
    plates = solution.response(wrench, (0.0, 0.0, float(drive.shaft.face_overhang))).rotation[axis]
    # the larger of both torque signs is taken, so ours is not below and little above
    assert abs(plates) * 0.995 <= abs(ours) <= abs(plates) * 1.10


def test_a_file_that_asks_for_beams_gets_them():
    """`route = "sections"` or an own value for held warping keeps the section route."""
    for changes in (
        {"mount__route": "sections"},
        {"mount__warping_held": 1},
        {"mount__twist_softness": 0.7},
    ):
        file = drive_file(**changes)
        assert plate_route.with_plates(file) is file


def test_worked_line_names_the_plate_model():
    """`why alignment` shows the ratio, its value and that the plate model gave it."""
    work = why.work(drive_file(), "alignment")
    entries = [e for s in work.steps for e in s.entries if e.key == "mount.twist_softness"]
    assert entries
    assert entries[0].origin == "model"
    assert "plate model" in entries[0].source


def test_short_wide_plate_is_softer_than_beams():
    """Bolts close to the motor: beams are far too stiff along the pull, the plate model mends it."""
    wide = drive_file(mount__width="300 mm", mount__free_length="45 mm", chain__pull="away")
    found = plate_route.softness_of(resolve(wide))
    assert found.bend > 1.3
    mended, beams = (
        {x.check.name: x.safe for x in limits.find(f).limits}["alignment"]
        for f in (
            wide,
            drive_file(
                mount__width="300 mm",
                mount__free_length="45 mm",
                chain__pull="away",
                mount__route="sections",
            ),
        )
    )
    assert mended < beams


def test_a_mount_that_cannot_be_meshed_says_why():
    """Washers that leave the plate: beams are used, the reason is a warning, nothing breaks."""
    file = drive_file(fixings__span_across="109 mm", fixings__washer="wide")
    found = limits.find(file)
    assert "mount.twist_softness" not in found.file.given
    assert any("No plate model" in w for w in found.drive.warnings)
    assert found.drive.mount.warping_held.origin == "assumed"


def test_an_edit_solves_the_plates_again():
    """Another thickness is another plate model: the ratio is not carried over."""
    from mountlimit import thickness

    base = plate_route.with_plates(drive_file())
    thick = plate_route.with_plates(
        thickness.with_thickness(plate_route.without_plates(base), 0.016)
    )
    assert thick.given["mount.bend_softness"].value != pytest.approx(
        base.given["mount.bend_softness"].value, rel=1e-3
    )
