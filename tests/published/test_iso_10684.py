"""ISO 10684:2004, Fasteners: hot dip galvanized coatings; annex on proof loads of special nuts."""

from printed import near, printed

from mountlimit.formulas import threads


def test_proof_load_of_special_nuts() -> None:
    """Confirmed: M8 25 500 N at 698 MPa, M10 50 400 N at 870 MPa.

    Both loads are printed to the next 100 N. BLT-05.
    """
    assert threads.proof_load(698.0, 36.6) == printed("25500", 3)
    assert threads.proof_load(870.0, 58.0) == near(50400, abs=100)
