"""A dozen random drives in the ordinary run, and the result of the long run that stands beside."""

from __future__ import annotations

import json

import draw
import long_run
import pytest
from layouts import LAYOUTS

from mountlimit.checks import BY_NAME
from mountlimit.mounts import FORMS

LEAST = {"sections": 10_000, "plates": 200}
SINCE = {"sections": ("axial_hold",), "plates": ()}  # checks that came after the long run
BY_BEAMS, BY_PLATES = range(100_000, 100_008), range(100_000, 100_004)


@pytest.mark.parametrize("number", BY_BEAMS)
def test_by_beams(number):
    """Eight drives no other run has looked at."""
    tally = long_run.one(number, "sections")
    assert tally.violations == []
    assert tally.valid + tally.refused == 1


@pytest.mark.parametrize("number", BY_PLATES)
def test_by_plates(number):
    """Four more, of any form, by the plate model."""
    tally = long_run.one(number, "plates")
    assert tally.violations == []
    assert tally.valid + tally.refused == 1


def test_every_form_is_drawn():
    """A new form needs a layout."""
    assert set(LAYOUTS) == set(FORMS)


def test_a_number_gives_one_drive():
    """The same text whenever it is asked for, and another for the next number."""
    assert draw.text(7) == draw.text(7)
    assert draw.text(7) != draw.text(8)


def test_most_drives_hold_together():
    """Of the first two hundred hardly any is refused, so the long run looks at drives, not at mistakes."""
    from mountlimit.errors import InputError
    from mountlimit.resolve import resolve

    refused = 0
    for number in range(200):
        try:
            resolve(draw.read(number))
        except InputError:
            refused += 1
    assert refused < 30


@pytest.mark.parametrize("route", sorted(LEAST))
def test_the_long_run(route):
    """So many drives were run, with the checks there were then, and nothing was wrong with any."""
    result = json.loads(long_run.results(route).read_text())
    assert result["route"] == route
    assert result["drives"] >= LEAST[route]
    assert result["violations"] == []
    assert set(BY_NAME) - set(result["known_checks"]) == set(SINCE[route])
    assert set(result["forms"]) == set(long_run.forms_of(route))
