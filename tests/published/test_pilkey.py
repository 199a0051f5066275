"""W. D. Pilkey, Analysis and Design of Elastic Beams: Computational Methods, Wiley 2002.

Angles and channels.

The book measures legs to centre lines; the program takes outer sizes.  Second moments are exact;
the torsion constant comes from a coarse mesh that is up to 1 % high.
"""

import numpy as np
from printed import near, printed

from mountlimit import open_section
from mountlimit.formulas import member_stress

CHANNEL = (19.0, 8.5, 1.0)  # centre-line web 18, flanges 8 from the web's centre line


def test_torsion_constant_of_a_thin_angle() -> None:
    """Confirmed: example 5.14, centre-line legs 2 and 1, wall 0.1. TOR-03."""
    assert open_section.angle(2.05, 1.05, 0.1).torsion_constant == near(0.00099, rel=0.01)


def test_torsion_constant_of_a_channel() -> None:
    """Confirmed: example B.2. TOR-04."""
    found = open_section.channel_on_side(*CHANNEL).torsion_constant
    assert found == near(11.28862, rel=0.01)


def test_shear_centre_of_a_channel() -> None:
    """Confirmed: example B.2, 2.868 outside the centre line of the web; Poisson's ratio hardly counts.

    SHC-01.
    """
    side = open_section.channel_on_side(*CHANNEL)
    web = CHANNEL[1] / 2 - CHANNEL[2] / 2
    assert side.shear_centre == near((web + 2.8677, -CHANNEL[0] / 2), rel=2e-3)
    away = open_section.channel_open_away(*CHANNEL)
    assert away.shear_centre == near((0.0, 2.8677 - CHANNEL[2] / 2), rel=2e-3, abs=5e-3)


def test_warping_constant_of_a_channel() -> None:
    """Confirmed: example B.2. WRP-05."""
    found = open_section.channel_on_side(*CHANNEL).warping_constant
    assert found == near(12763.15, rel=2e-3)


def test_second_moments_of_an_unequal_angle() -> None:
    """Confirmed: example B.3, outer legs 6 and 8, wall 0.75; principal ones from the tensor. SEC-09."""
    found = open_section.angle(6.0, 8.0, 0.75)
    assert found.second_n == printed("63.42455")
    assert found.second_p == printed("30.72142")
    assert abs(found.product) == printed("25.85377")
    assert (3.0 - 0.375 - found.centroid[0], -0.375 - found.centroid[1]) == (
        printed("1.18868"), printed("2.18868"),
    )  # fmt: skip
    tensor = [[found.second_n, found.product], [found.product, found.second_p]]
    assert tuple(np.linalg.eigvalsh(tensor)) == (printed("16.48228"), printed("77.66369"))


def test_stress_of_an_angle_bent_about_its_leg() -> None:
    """Confirmed for thin walls: example 1.1, centre-line legs 2 and 1, wall 0.1, unit moment.

    Exact rectangles give 4.82, -9.86 and 12.41 in the middle of the walls.  UNB-01.
    """
    t = 0.1
    solved = open_section.angle(1.0 + t / 2, 2.0 + t / 2, t)
    assert solved.area == near(0.3, rel=1e-6)
    second = (solved.second_n, solved.second_p, abs(solved.product))
    assert second == near((0.1336, 0.0252, 0.0332), abs=5.1e-5)
    slant = np.degrees(np.arctan2(-2 * second[2], second[0] - second[1]) / 2)
    assert slant == near(-15.7589, rel=1e-4)
    heel = ((1.0 + t / 2) / 2 - t / 2, -t / 2)
    points = ((heel[0] - 1.0, heel[1]), heel, (heel[0], heel[1] - 2.0))  # short toe, heel, long toe
    found = [
        member_stress.skewed_stress(
            -1.0, n - solved.centroid[1], p - solved.centroid[0], solved.second_n, solved.second_p,
            solved.product,
        )
        for p, n in points
    ]  # fmt: skip
    assert found == near([5.0, -10.0, 12.5], rel=0.05)
    assert found == near([4.82, -9.86, 12.41], abs=6e-3)


def test_stress_of_a_loaded_angle() -> None:
    """Computed: 60 x 40 x 5, 200 N along the long leg at 150 mm; heel, long toe, short toe.  UNB-03.

    Without the product of inertia the heel has less than half, the short toe the wrong sense.
    """
    across, along, product = 171836.0, 61047.0, -59132.2
    corners = ((-9.7141, -19.5517), (-9.7141, 60 - 19.5517), (40 - 9.7141, -19.5517))
    found = [
        member_stress.skewed_stress(200.0 * 150.0, y, x, across, along, product) for x, y in corners
    ]
    assert found == [printed("-7.584"), printed("8.128"), printed("2.562")]
    plain = member_stress.bending_stress(200.0 * 150.0, corners[0][1], across)
    assert plain == printed("-3.413")
