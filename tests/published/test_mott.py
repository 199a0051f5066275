"""R. L. Mott, Machine Elements in Mechanical Design, 4th ed., Prentice Hall 2004, chapters 7 and 14.

Tolerance: half the last printed digit.
"""

import numpy as np
from printed import printed

from mountlimit.formulas import chain_drive, duty


def test_pitch_diameter_of_35_teeth() -> None:
    """From memory: no. 80 chain, a notebook after the chapter prints 11.16 in. SPK-04."""
    assert chain_drive.pitch_diameter(1.0, 35) == printed("11.16")


def test_example_7_3_sprockets_length_and_wrap() -> None:
    """Confirmed, p. 295: chain 40, 17 and 65 teeth, centres 30 pitches; the wrap is computed."""
    assert chain_drive.pitch_diameter(0.5, 17) == printed("2.721")
    assert chain_drive.pitch_diameter(0.5, 65) == printed("10.349")
    assert chain_drive.chain_length_in_pitches(15.0, 0.5, 17, 65) == printed("102.9")
    centres = chain_drive.centre_distance_from_length(104, 0.5, 17, 65)
    assert centres / 0.5 == printed("30.54")
    assert centres == printed("15.272")
    wrap = chain_drive.wrap_angle(centres, 10.349, 2.721)
    assert np.degrees(wrap) == printed("151.1")
    needed = chain_drive.required_power_rating(15.0, 1.4, 1.0, 3.3)
    assert needed == printed("6.36")


def test_example_14_6_mean_effective_load() -> None:
    """Confirmed, p. 626: 650, 750 and 250 lb for 30, 10 and 20 min at 600 rpm wear as 597 lb."""
    load, speed = 650.0, duty.step_speed(600.0, 30 / 60, 1.0)
    for step, minutes in ((750.0, 10), (250.0, 20)):
        turned = duty.step_speed(600.0, minutes / 60, 1.0)
        load = duty.equivalent_load(load, speed, step, turned, 3.0)
        speed = duty.speed_sum(speed, turned)
    assert load == printed("597")
    assert speed == printed("600")
