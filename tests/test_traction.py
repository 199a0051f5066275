"""The pull at which the wheels spin, over every grip: with the front on the ground and in the air."""

import numpy as np
import pytest

from mountlimit.drivefile import read
from mountlimit.resolve import resolve
from mountlimit.traction import ground_force


def use_of(file):
    return resolve(read(str(file))).use


@pytest.fixture
def use(tmp_path):
    from mountlimit.cards import folder

    given = (folder("examples") / "hay_elevator.toml").read_text("utf-8").split("\n[use]")[0]
    file = tmp_path / "drive.toml"
    file.write_text(given + USE, "utf-8")
    return use_of(file)


USE = """
[use]
mass = "95 kg"
wheelbase = "700 mm"
front_to_centre = "350 mm"
centre_height = "350 mm"
driven = "rear"
wheel_diameter = "330 mm"
"""


def test_grows_with_grip_and_is_never_more_than_all_the_weight(use):
    """The wheelbase is 2.0 times as high as the centre of mass: the plain formula divides by nothing there."""
    grips = np.r_[np.linspace(0.02, 2.5, 249), 1.0, 2.0]
    pulls = [float(ground_force(use, grip, lifted=True)) for grip in np.sort(grips)]
    assert np.all(np.diff(pulls) >= 0.0)
    assert np.all(np.array(pulls) <= np.sort(grips) * 95 * 9.80665 * (1 + 1e-12))
    assert pulls[-1] == pytest.approx(2.5 * 95 * 9.80665)


def test_front_lifts_without_a_jump(use):
    """Centre of mass midway, as high as half the wheelbase: the front lifts at a grip of 1."""
    below, above = (float(ground_force(use, 1.0 + by, lifted=True)) for by in (-1e-9, 1e-9))
    assert below == pytest.approx(above, rel=1e-7)
