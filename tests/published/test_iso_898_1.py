"""ISO 898-1: stress areas and minimum ultimate tensile loads of coarse-thread bolts.

Areas are printed to three figures.  Loads are printed to three figures, ending in zeros; the
standard multiplies its rounded areas.
"""

import pytest
from printed import printed

from mountlimit.formulas import threads

COARSE = {
    3: (0.5, "5.03"), 4: (0.7, "8.78"), 5: (0.8, "14.2"), 6: (1.0, "20.1"), 7: (1.0, "28.9"),
    8: (1.25, "36.6"), 10: (1.5, "58.0"), 12: (1.75, "84.3"), 14: (2.0, "115"), 16: (2.0, "157"),
    18: (2.5, "192"), 20: (2.5, "245"),
}  # fmt: skip

LOADS = (  # ultimate strength MPa, size, minimum ultimate load N as printed, tolerance N
    (800, 5, 11350, 25), (800, 6, 16100, 50), (800, 8, 29200, 100),
    (1040, 6, 20900, 50), (1040, 8, 38100, 50), (1220, 6, 24500, 50),
)  # fmt: skip


@pytest.mark.parametrize("size", COARSE)
def test_stress_area(size: int) -> None:
    """Confirmed: the stress-area column."""
    pitch, area = COARSE[size]
    assert threads.stress_area(size, pitch) == printed(area)


@pytest.mark.parametrize(("strength", "size", "load", "tolerance"), LOADS)
def test_minimum_ultimate_load(strength: int, size: int, load: int, tolerance: int) -> None:
    """Confirmed: the load table; the area enters as the standard prints it.

    Half a printed step: 50 N for M5, 100 N above.  M8 of class 8.8 is printed as 29 200 N where
    800 MPa on 36.6 mm^2 are 29 280 N: cut off, a whole step.
    """
    value = threads.ultimate_load(strength, float(COARSE[size][1]))
    assert value == pytest.approx(load, abs=tolerance)


def test_proof_load_of_special_nuts() -> None:
    """Confirmed, ISO 10684 annex: M8 25 500 N at 698 MPa, M10 50 400 N at 870 MPa.

    Both loads are printed to the next 100 N.
    """
    assert threads.proof_load(698.0, 36.6) == printed("25500", 3)
    assert threads.proof_load(870.0, 58.0) == pytest.approx(50400, abs=100)
