"""W. D. Pilkey, Analysis and Design of Elastic Beams: angles and channels (printed figures).

The book measures legs to centre lines; the program takes outer sizes.  Second moments are exact;
the torsion constant comes from a coarse mesh that is up to 1 % high.
"""

import numpy as np
import pytest
from printed import printed

from mountlimit import open_section

CHANNEL = (19.0, 8.5, 1.0)  # centre-line web 18, flanges 8 from the web's centre line


def test_torsion_constant_of_a_thin_angle() -> None:
    """Printed: example 5.14, centre-line legs 2 and 1, wall 0.1. TOR-03."""
    assert open_section.angle(2.05, 1.05, 0.1).torsion_constant == pytest.approx(0.00099, rel=0.01)


def test_torsion_constant_of_a_channel() -> None:
    """Printed: example B.2. TOR-04."""
    found = open_section.channel_on_side(*CHANNEL).torsion_constant
    assert found == pytest.approx(11.28862, rel=0.01)


def test_shear_centre_of_a_channel() -> None:
    """Printed: example B.2, 2.868 outside the centre line of the web; Poisson's ratio hardly counts.

    SHC-01.
    """
    side = open_section.channel_on_side(*CHANNEL)
    web = CHANNEL[1] / 2 - CHANNEL[2] / 2
    assert side.shear_centre == pytest.approx((web + 2.8677, -CHANNEL[0] / 2), rel=2e-3)
    away = open_section.channel_open_away(*CHANNEL)
    assert away.shear_centre == pytest.approx((0.0, 2.8677 - CHANNEL[2] / 2), rel=2e-3, abs=5e-3)


def test_warping_constant_of_a_channel() -> None:
    """Printed: example B.2. WRP-05."""
    found = open_section.channel_on_side(*CHANNEL).warping_constant
    assert found == pytest.approx(12763.15, rel=2e-3)


def test_second_moments_of_an_unequal_angle() -> None:
    """Printed: example B.3, outer legs 6 and 8, wall 0.75; principal ones from the tensor. SEC-09."""
    found = open_section.angle(6.0, 8.0, 0.75)
    assert found.second_n == printed("63.42455")
    assert found.second_p == printed("30.72142")
    assert abs(found.product) == printed("25.85377")
    assert (3.0 - 0.375 - found.centroid[0], -0.375 - found.centroid[1]) == (
        printed("1.18868"), printed("2.18868"),
    )  # fmt: skip
    tensor = [[found.second_n, found.product], [found.product, found.second_p]]
    assert tuple(np.linalg.eigvalsh(tensor)) == (printed("16.48228"), printed("77.66369"))
