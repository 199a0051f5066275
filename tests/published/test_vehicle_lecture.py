"""A lecture on vehicle dynamics, its author not known any more: traction with weight transfer.

Statement and formula read, results computed (T = mu (R +- m a h / b) solved).  The problem takes
g = 9.81; the package takes 9.80665, so the mass is scaled to give the same weight.  Tolerance:
half the last printed digit.
"""

from printed import printed

from mountlimit.formulas import traction

SAME_WEIGHT = 9.81 / 9.80665


def test_vehicle_with_its_centre_of_mass_midway() -> None:
    """Computed: lecture example, 1800 kg, wheelbase 2.6 m, height 0.7 m, friction 0.7. TYR-01."""
    rear = traction.traction_force_rear_drive(SAME_WEIGHT * 1800.0, 1.3, 0.7, 2.6, 0.7)
    front = traction.traction_force_front_drive(SAME_WEIGHT * 1800.0, 1.3, 0.7, 2.6, 0.7)
    assert rear / 1800.0 == printed("4.2309")
    assert rear == printed("7615.5")
    assert front / 1800.0 == printed("2.889")
