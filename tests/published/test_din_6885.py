"""DIN 6885-1:1968 (ISO 773:1969), parallel keys: key by shaft diameter."""

import pytest
from printed import near

from mountlimit import cards

KEYS = ((10, 3, 3), (12, 4, 4), (15, 5, 5), (20, 6, 6), (25, 8, 7))  # shaft, width, height in mm


@pytest.mark.parametrize(("shaft", "width", "height"), KEYS)
def test_key_by_shaft_diameter(shaft: float, width: float, height: float) -> None:
    """From memory: width and height of the key. KEY-04."""
    key = cards.key_for_shaft(shaft / 1e3)
    assert key.width * 1e3 == near(width, rel=1e-12)
    assert key.height * 1e3 == near(height, rel=1e-12)
