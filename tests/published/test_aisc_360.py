"""ANSI/AISC 360-16, Specification for Structural Steel Buildings, section J3.10: bearing and tear-out.

Tolerance: half the last printed digit.
"""

from printed import printed

from mountlimit.formulas import holes


def test_tear_out_governs_a_thin_tab() -> None:
    """From memory: 5 mm bolt, 5.5 mm hole 8 mm from the end of a 3 mm tab, 290 MPa. TEA-05."""
    clear = holes.clear_distance(8.0, 5.5)
    assert clear == printed("5.25")
    torn, borne = holes.tear_out(clear, 3.0, 290.0), holes.bearing_strength(5.0, 3.0, 290.0)
    assert (torn, borne) == (printed("5481"), printed("10440"))
    assert torn < borne
