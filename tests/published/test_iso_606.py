"""ISO 606:2015, Short-pitch transmission precision roller and bush chains, attachments and sprockets.

B series also as DIN 8187.  What was read is a maker's table, which cuts 9.525 to 9.52 and 15.875 to
15.87, hence 0.011 mm instead of 0.005.
"""

import pytest
from printed import near

from mountlimit import cards

B_SERIES = (  # pitch, inner width, roller diameter in mm
    ("05B", 8.0, 3.0, 5.0),
    ("06B", 9.525, 5.72, 6.35),
    ("08B", 12.7, 7.75, 8.51),
    ("10B", 15.875, 9.65, 10.16),
    ("12B", 19.05, 11.68, 12.07),
)


@pytest.mark.parametrize(("name", "pitch", "width", "roller"), B_SERIES)
def test_sizes_of_the_b_series(name: str, pitch: float, width: float, roller: float) -> None:
    """From memory (a maker's table to DIN 8187): pitch, inner width and roller diameter. CHD-03, CHD-04."""
    chain = cards.chain(name)
    assert chain.pitch * 1e3 == near(pitch, abs=0.011)
    assert chain.inner_width * 1e3 == near(width, abs=0.011)
    assert chain.roller_diameter * 1e3 == near(roller, abs=0.011)


STRENGTH = (("05B", "4.4"), ("06B", "8.9"), ("08B", "17.8"), ("08A", "13.9"))


@pytest.mark.parametrize(("name", "strength"), STRENGTH)
def test_least_tensile_strength(name: str, strength: str) -> None:
    """From memory: table 1, simplex, kN; lists to DIN 8187 print 5.0, 9.0, 18.0. CHD-05."""
    assert cards.chain(name).minimum_tensile_strength / 1e3 == near(float(strength), abs=0.05)
