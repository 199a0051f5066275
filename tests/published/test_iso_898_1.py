"""ISO 898-1: stress areas of coarse-thread bolts, and proof loads.

Areas are printed to three figures.
"""

import pytest
from printed import printed

from mountlimit import cards
from mountlimit.formulas import threads

COARSE = {
    3: "5.03", 4: "8.78", 5: "14.2", 6: "20.1", 8: "36.6", 10: "58.0", 12: "84.3", 14: "115",
    16: "157", 20: "245",
}  # fmt: skip


@pytest.mark.parametrize("size", COARSE)
def test_stress_area(size: int) -> None:
    """Confirmed: the stress-area column."""
    area = cards.thread(f"M{size}").stress_area * 1e6
    assert area == printed(COARSE[size])


def test_proof_load_of_special_nuts() -> None:
    """Confirmed, ISO 10684 annex: M8 25 500 N at 698 MPa, M10 50 400 N at 870 MPa.

    Both loads are printed to the next 100 N. BLT-05.
    """
    assert threads.proof_load(698.0, 36.6) == printed("25500", 3)
    assert threads.proof_load(870.0, 58.0) == pytest.approx(50400, abs=100)
