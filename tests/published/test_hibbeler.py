"""R. C. Hibbeler, Engineering Mechanics: Statics, chapter 4: moment of a force about a point.

Examples 4.1 to 4.3 of lecture notes after the chapter; whole numbers, checked to a float's
precision.
"""

import pytest
from printed import exactly, near

from mountlimit.formulas import statics

EXAMPLES = {
    "4.1": ((3, 4, 4), (-20, 10, 15), (20, -125, 110)),
    "4.2": ((-7, -13, 6), (60, -30, -20), (440, 220, 990)),
    "4.3": ((1, -6, 3), (-6, 4, 8), (-60, -26, -32)),
}

Triple = tuple[float, float, float]


def moment(place: Triple, force: Triple) -> Triple:
    """Give the three moments of a force at a place."""
    (x, y, z), (fx, fy, fz) = place, force
    return (
        statics.moment_x(y, z, fy, fz),
        statics.moment_y(x, z, fx, fz),
        statics.moment_z(x, y, fx, fy),
    )


@pytest.mark.parametrize("example", EXAMPLES)
def test_moment_of_a_force(example: str) -> None:
    """From memory (lecture notes after the chapter) in magnitude; the signs by the cross product. STA-01, STA-02, STA-03."""
    place, force, answer = EXAMPLES[example]
    assert moment(place, force) == exactly(answer)


def test_motor_with_chain_pull_at_the_tangent_point() -> None:
    """Computed: 900 N at 15 mm radius, 45 mm out; 35 N weight 60 mm behind the face.

    The moment about the shaft is the motor torque, 13.5 N*m: it is there already. STA-05.
    """
    pull = moment((0.0, 0.015, 0.045), (-900.0, 0.0, 0.0))
    weight = moment((0.0, 0.0, -0.060), (0.0, -35.0, 0.0))
    total = tuple(a + b for a, b in zip(pull, weight, strict=True))
    assert total == near((-2.1, -40.5, 13.5), rel=1e-12)
