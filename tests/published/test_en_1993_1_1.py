"""EN 1993-1-1:2005, Eurocode 3: design of steel structures, general rules and rules for buildings."""

import pytest
from printed import exactly

from mountlimit import cards

# Table 3.1 (t <= 40 mm): fy, fu, MPa; fu of S355 from EN 10025-2:2004, 3 to 100 mm.
TABLE = (("s235", 235, 360), ("s275", 275, 430), ("s355", 355, 470))


@pytest.mark.parametrize(("name", "fy", "fu"), TABLE)
def test_strength_of_structural_steel(name: str, fy: float, fu: float) -> None:
    """Confirmed: table 3.1, yield and ultimate strength."""
    card = cards.material(name)
    assert (card.yield_strength / 1e6, card.ultimate_strength / 1e6) == exactly((fy, fu))
