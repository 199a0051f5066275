"""A drive is the same drive whatever units it is written in, and in whatever order."""

from __future__ import annotations

from random import Random

import pytest
from hypothesis import example, given
from invariant_kit import (
    BEAMS,
    FORMS,
    answer,
    depth,
    difference,
    drawn,
    file_of,
    looked,
    numbers,
)
from other_units import in_other_units

from mountlimit import limits

SAME = 1e-9


def shuffled(keys: dict, chance: Random) -> dict:
    """Give the keys in another order: of tables, and of keys within a table."""
    items = list(keys.items())
    chance.shuffle(items)
    return dict(items)


def same_answer(what: str, keys: dict, other: dict) -> None:
    off, where = difference(answer(file_of(keys)), answer(file_of(other)))
    looked(what, off)
    assert off < SAME, where


@given(numbers)
@depth(ordinary=12, deep=40)
def test_other_units_by_beams(number):
    """Inches, pounds, kilograms-force, radians, Fahrenheit: the same share of every check is used."""
    keys = drawn(number)
    same_answer("other units, beams", keys, in_other_units(keys, Random(number)))


@given(numbers)
@example(2_000_000)  # an outline whose bearing face ends on its edge
@depth(ordinary=1, deep=4)
def test_other_units_by_plates(number):
    keys = drawn(number, FORMS, "")
    same_answer("other units, plates", keys, in_other_units(keys, Random(number)))


@given(numbers)
@depth(ordinary=12, deep=40)
def test_other_order(number):
    """The order of tables and of keys says nothing; here the answer is the same to the last digit."""
    keys = drawn(number)
    off, where = difference(answer(file_of(keys)), answer(file_of(shuffled(keys, Random(number)))))
    looked("other order", off)
    assert off == 0.0, where


@given(numbers)
@depth(ordinary=2, deep=8)
def test_other_units_give_the_same_limits(number):
    """The same of the limits themselves, found by search: safe to, gives at, and its band."""
    keys = drawn(number, BEAMS)
    one = limits.find(file_of(keys)).limits
    two = limits.find(file_of(in_other_units(keys, Random(number)))).limits
    found = {(x.check.name, x.current_kind): x for x in two}
    for a in one:
        b = found[a.check.name, a.current_kind]
        for name in ("safe", "gives", "gives_low", "gives_high"):
            x, y = getattr(a, name), getattr(b, name)
            if x is None or x == y:
                continue
            looked("other units, limits", abs(x - y) / abs(x))
            assert x == pytest.approx(y, rel=SAME), (a.check.name, name)
