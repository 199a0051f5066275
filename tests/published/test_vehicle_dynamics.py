"""Traction with weight transfer: problems of vehicle-dynamics and automobile texts.

Statements and formula read, results computed (T = mu (R +- m a h / b) solved).  The problems take
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


def test_automobile_text_example_31_7() -> None:
    """Computed: wheelbase 2.75 m, mass centre 0.85 m up, 1.15 m behind the front axle. TYR-03."""
    rear = traction.traction_force_rear_drive(SAME_WEIGHT, 1.15, 0.85, 2.75, 0.6)
    front = traction.traction_force_front_drive(SAME_WEIGHT, 1.15, 0.85, 2.75, 0.6)
    assert rear == printed("3.0218")
    assert front == printed("2.8888")
    assert traction.traction_force_all(SAME_WEIGHT, 0.6) == printed("5.886")


def test_rear_drive_by_axle_loads() -> None:
    """Independent: the force is friction times the rear axle load it brings about itself."""
    mass, behind, height, base, friction = 120.0, 0.6, 0.7, 1.0, 0.5
    force = traction.traction_force_rear_drive(mass, behind, height, base, friction)
    rear_load = mass * 9.80665 * behind / base + force * height / base
    assert abs(force - friction * rear_load) < 1e-9 * force
    lifted = traction.lift_force(mass, behind, height, base)
    assert abs(mass * 9.80665 * (base - behind) - lifted * height) < 1e-9
