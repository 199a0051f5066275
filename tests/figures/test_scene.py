"""What the picture of a drive shows beside the mount."""

from __future__ import annotations

import pytest

from conftest import drive_file
from mountlimit.figures import scene
from mountlimit.resolve import resolve

TUBE = {"frame__member": "square tube", "frame__size": "60 mm", "frame__wall": "3 mm"}


def test_a_face_wider_than_the_frame_member_is_drawn():
    """As wide as told, behind the plate, between it and the tube's own face."""
    seen = scene.of(resolve(drive_file(**TUBE, frame__face_width="90 mm")))
    low, high = seen.pad
    assert high[1] - low[1] == pytest.approx(0.090)
    assert high[2] == pytest.approx(0.0)
    assert (low[1] + high[1]) / 2 == pytest.approx(-0.105)  # the middle of the bolts


@pytest.mark.parametrize("changes", [TUBE, {**TUBE, "frame__face_width": "50 mm"}, {}])
def test_no_pad_is_drawn_that_nobody_told_of(changes):
    assert scene.of(resolve(drive_file(**changes))).pad is None
