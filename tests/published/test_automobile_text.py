"""A text on automobile engineering, its name not known any more, example 31.7: traction.

Statement and formula read, results computed (T = mu (R +- m a h / b) solved).  The problem takes
g = 9.81; the package takes 9.80665, so the mass is scaled to give the same weight.  Tolerance:
half the last printed digit.
"""

from printed import printed

from mountlimit.formulas import traction

SAME_WEIGHT = 9.81 / 9.80665


def test_example_31_7() -> None:
    """Computed: wheelbase 2.75 m, mass centre 0.85 m up, 1.15 m behind the front axle. TYR-03."""
    rear = traction.traction_force_rear_drive(SAME_WEIGHT, 1.15, 0.85, 2.75, 0.6)
    front = traction.traction_force_front_drive(SAME_WEIGHT, 1.15, 0.85, 2.75, 0.6)
    assert rear == printed("3.0218")
    assert front == printed("2.8888")
    assert traction.traction_force_all(SAME_WEIGHT, 0.6) == printed("5.886")
