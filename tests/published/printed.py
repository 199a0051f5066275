"""Tolerance of a printed figure: half of its last printed digit.

The tests of this folder say of their figures: *confirmed*, read in the text named; *computed*,
derived anew from the form named; *from memory*, recalled, or read in a text that is no standard,
book or report (a maker's catalogue, a web page).
"""

from decimal import Decimal
from typing import Any

import pytest


def printed(text: str, figures: int | None = None) -> Any:
    """Give the figure with a tolerance of half its last printed digit.

    ``figures`` tells how many significant figures count where a whole number was rounded to tens
    or hundreds, such as 11 350 to four figures.
    """
    number = Decimal(text)
    last = number.as_tuple().exponent
    assert isinstance(last, int)
    if figures is not None:
        last = number.adjusted() - figures + 1
    half = 0.5 * 10.0**last
    return pytest.approx(float(number), rel=0.0, abs=half * (1 + 1e-9))
