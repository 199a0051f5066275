"""Further places of the motor shaft: a thinner seat, a groove, the end of a keyway."""

from __future__ import annotations

import math

import pytest
from hub_cases import limit_of, rows_of

from conftest import drive_file
from mountlimit import evaluate
from mountlimit.errors import InputError
from mountlimit.resolve import resolve

PLAIN = {"shaft__diameter": "12 mm", "shaft__face_overhang": "28 mm", "shaft__face_to_bearing": "8 mm",
         "shaft__notch": "shoulder, sharp"}  # fmt: skip
SEAT = {**PLAIN, "shaft__places": [["shoulder, sharp", "10 mm", "9 mm"]]}


def test_stress_at_a_seat_by_hand():
    """1000 N at 18 mm before the step on 9 mm: 18 N*m over pi 9^3 / 32, twist of 12 N*m beside it."""
    rows, _ = rows_of("motor_shaft", {"shaft_load": 1000.0}, **SEAT)
    bent, twisted = 18.0 / (math.pi * 0.009**3 / 32), 12.0 / (math.pi * 0.009**3 / 16)
    assert rows[-1].demand == pytest.approx(math.hypot(bent, math.sqrt(3) * twisted), rel=1e-9)
    assert rows[-1].station == "10 mm from the motor's face"
    assert rows[0].station == "front bearing"


def test_a_place_at_the_front_bearing_is_the_front_bearing():
    """The same place named twice gives the same rows."""
    named = {
        **PLAIN,
        "shaft__notch": "keyway",
        "shaft__places": [["keyway", "-7.9999999 mm", "12 mm"]],
    }
    rows, _ = rows_of("shaft_fatigue", **named)
    assert float(rows[1].demand) == pytest.approx(float(rows[0].demand), rel=1e-6)
    assert float(rows[1].capacity) == pytest.approx(float(rows[0].capacity), rel=1e-9)


@pytest.mark.parametrize("name", ["motor_shaft", "alignment"])
def test_a_thin_seat_lowers_the_limits(name):
    """It is weaker there and, on the safe side, softer all along."""
    find = limit_of if name == "motor_shaft" else twist
    assert find(name, **SEAT) < find(name, **PLAIN)


def twist(name, **changes):
    """Share of the alignment used at 100 A, upside down."""
    drive = resolve(drive_file(**changes))
    return 1 / evaluate.curves(drive, [100.0], [name])[name].safe[0]


def test_a_place_past_the_sprocket_sees_the_outboard_bearing_only():
    """Its arm is that to the outboard bearing."""
    told = {**PLAIN, "outboard__at": "60 mm", "shaft__places": [["groove", "50 mm", "11 mm"]]}
    rows, case = rows_of("motor_shaft", **told)
    bent = float(case.loads.outboard) * 0.010 / (math.pi * 0.011**3 / 32)
    twisted = 12.0 / (math.pi * 0.011**3 / 16)
    assert rows[-1].demand == pytest.approx(math.hypot(bent, math.sqrt(3) * twisted), rel=1e-9)


@pytest.mark.parametrize(
    ("places", "words"),
    [
        ([["shoulder, sharp", "30 mm", "9 mm"]], "not between the front bearing and the sprocket"),
        ([["step", "10 mm", "9 mm"]], "expected one of the forms"),
        ([["groove", "10 mm"]], "expected a form, a distance"),
        ([["groove", "10 mm", "9 kN"]], "shaft.places"),
        ([["groove", "10 mm", "900 mm"]], "expected a diameter from 3 to 200 mm"),
        ("groove", "expected 1 to 12 rows"),
    ],
)
def test_bad_input(places, words):
    """One clear line each."""
    with pytest.raises(InputError) as caught:
        resolve(drive_file(**{**PLAIN, "shaft__places": places}))
    assert words in str(caught.value)
    assert "shaft.places" in str(caught.value)
