"""ISO 898-1:2013, Mechanical properties of fasteners made of carbon steel and alloy steel.

Stress areas of coarse threads and least ultimate loads.  Areas are printed to three figures.
"""

import pytest
from printed import near, printed

from mountlimit import cards

# As printed (M7 is not among the cards: hardly ever sold).
AREAS = {
    3: "5.03", 4: "8.78", 5: "14.2", 6: "20.1", 8: "36.6", 10: "58.0", 12: "84.3", 14: "115",
    16: "157", 18: "192", 20: "245",
}  # fmt: skip


@pytest.mark.parametrize("size", AREAS)
def test_stress_area(size: int) -> None:
    """Confirmed: the stress-area column, mm^2. BLT-01, BLT-02."""
    assert cards.thread(f"M{size}").stress_area * 1e6 == printed(AREAS[size])


# N.  The table rounds unevenly (M8 8.8 is 36.6 x 800 = 29 280, printed 29 200), hence 0.5 %.
LOADS = (
    ("8.8", "M5", 11350), ("8.8", "M6", 16100), ("8.8", "M8", 29200), ("10.9", "M6", 20900),
    ("10.9", "M8", 38100), ("12.9", "M6", 24500),
)  # fmt: skip


@pytest.mark.parametrize(("grade", "size", "load"), LOADS)
def test_least_ultimate_load(grade: str, size: str, load: float) -> None:
    """Confirmed: the table of least ultimate tensile loads. BLT-03."""
    found = cards.bolt_class(grade).ultimate_strength * cards.thread(size).stress_area
    assert found == near(load, rel=0.005)
