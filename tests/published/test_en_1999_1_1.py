"""EN 1999-1-1:2007, Eurocode 9: design of aluminium structures, general structural rules."""

import pytest
from printed import exactly

from mountlimit import cards

# Table 3.2b: fo, fu, fo in the heat-affected zone, fu in it, MPa.
TABLE = (("6061", 240, 260, 115, 175), ("6063", 160, 195, 65, 110))


@pytest.mark.parametrize(("name", "fo", "fu", "fo_haz", "fu_haz"), TABLE)
def test_strength_of_extrusions(
    name: str, fo: float, fu: float, fo_haz: float, fu_haz: float
) -> None:
    """Confirmed: table 3.2b, plain and beside a weld."""
    card = cards.material(name)
    found = (card.yield_strength, card.ultimate_strength, card.haz_yield, card.haz_ultimate)
    assert tuple(x / 1e6 for x in found) == exactly((fo, fu, fo_haz, fu_haz))
