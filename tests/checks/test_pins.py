"""Cross pins and shear pins on either side: published pins, statics, direction, the fuse's note."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hub_cases import DRIVEN_TORQUE, TORQUE, check_of, file_of, limit_of, rows_of

from mountlimit import assess
from mountlimit.errors import InputError
from mountlimit.resolve import resolve
from mountlimit.resolve.pins import KINDS

HUB = {"hub__key": None, "hub__pin": "4 mm", "hub__pin_shear_strength": "320 MPa"}
DRIVEN = {
    "driven__pin": "6 mm", "driven__shaft_diameter": "25 mm", "driven__pin_shear_strength": "320 MPa",
}  # fmt: skip
SIDES = [("hub_pin", HUB), ("driven_pin", DRIVEN)]
# Least double shear of slotted spring pins, ISO 8752: diameter in mm, kN.
SPRING_PINS = {3: 6.32, 4: 11.24, 5: 17.54, 6: 26.04, 8: 42.76, 10: 70.16}


def shear_row(name, torque, **changes):
    """The row of the pin's shear, the driving torque put in."""
    rows, _ = rows_of(name, {"torque": torque}, **changes)
    return rows[0]


def test_published_double_shear():
    """Problem of a text: a 15 mm pin in double shear, 385 MPa, fails at 136 kN (printed)."""
    told = {
        "driven__pin": "15 mm",
        "driven__shaft_diameter": "40 mm",
        "driven__pin_shear_strength": "385 MPa",
    }
    row = shear_row("driven_pin", 136e3 * 0.02 * 11 / 55, **told)
    assert row.utilisation == pytest.approx(1.0, rel=2e-3)


def test_published_propeller_pin():
    """Problem of a text: 7 mm pin, 69 mm shaft, ultimate 621 MPa, shear 82 % of it: 1352 N*m."""
    told = {
        "driven__pin": "7 mm",
        "driven__shaft_diameter": "69 mm",
        "driven__pin_shear_strength": "509.2 MPa",
    }
    area = math.pi * 3.5**2  # mm2; two of them 34.5 mm off the axis
    by_hand = 2 * area * 509.2 * 34.5 / 1000
    assert by_hand == pytest.approx(1352, abs=1)
    row = shear_row("driven_pin", by_hand * 11 / 55, **told)
    assert row.utilisation == pytest.approx(1.0, rel=1e-6)


@pytest.mark.parametrize(("size", "least"), SPRING_PINS.items())
def test_spring_pins_of_the_standard(size, least):
    """The low end of the default is no more than ISO 8752 asks, and within a tenth of it."""
    low = KINDS["spring pin"][0] * 2 * math.pi * size**2 / 4 / 1000
    assert 0.9 * least <= low <= 1.001 * least


def test_pressure_in_the_shaft_makes_the_torque():
    """Pressure growing from the middle, summed in thin slices, carries the torque."""
    rows, _ = rows_of("driven_pin", **DRIVEN)
    peak = rows[1].demand
    x = (np.arange(2000) + 0.5) / 2000 * 0.0125
    torque = 2 * float(np.sum(peak * x / 0.0125 * 0.006 * x)) * 0.0125 / 2000
    assert torque == pytest.approx(DRIVEN_TORQUE, rel=1e-6)


def test_pressure_in_the_hub_makes_the_torque():
    """Even pressure on both walls, 25 to 45 mm, carries the torque."""
    rows, _ = rows_of("driven_pin", **DRIVEN, driven__outer_diameter="45 mm")
    wall, arm = 0.010, (0.025 + 0.045) / 4
    assert 2 * rows[2].demand * wall * 0.006 * arm == pytest.approx(DRIVEN_TORQUE, rel=1e-9)


def test_a_pin_in_a_flange():
    """One section on its own circle: T / r over the area; no hole of a shaft is looked at."""
    (row,), _ = rows_of("hub_pin", **{**HUB, "hub__pin_circle": "60 mm"})
    assert row.demand == pytest.approx(TORQUE / 0.03 / (math.pi * 0.002**2), rel=1e-9)


@pytest.mark.parametrize(("name", "good"), SIDES)
@pytest.mark.parametrize(
    "worse",
    [{"pin": "3 mm"}, {"pin_shear_strength": "200 MPa"}, {"pin_planes": 1}, {"key_yield": "100 MPa"}],
)  # fmt: skip
def test_what_makes_it_worse_lowers_the_limit(name, good, worse):
    """A thinner or softer pin, one section in place of two, a soft shaft or hub."""
    side = name.split("_")[0]
    strong = {**good, f"{side}__key_yield": "350 MPa"}
    changes = {f"{side}__{k}": v for k, v in worse.items()}
    assert limit_of(name, **{**strong, **changes}) < limit_of(name, **strong)


def test_kind_of_the_pin_and_a_thin_hub():
    """Brass goes before mild steel; a hub hardly wider than its shaft is crushed first."""
    plain = {k: v for k, v in DRIVEN.items() if "strength" not in k}
    flat = {**plain, "driven__pin_circle": "60 mm"}
    assert limit_of("driven_pin", **flat, driven__pin_kind="brass") < limit_of("driven_pin", **flat)
    thin = limit_of("driven_pin", **DRIVEN, driven__outer_diameter="27 mm")
    assert thin < limit_of("driven_pin", **DRIVEN, driven__outer_diameter="45 mm")


@pytest.mark.parametrize(
    ("bad", "key"),
    [
        ({"driven__pin": "6 mm"}, "driven.shaft_diameter"),
        ({"driven__shear_pin": True}, "driven.pin"),
        ({**DRIVEN, "driven__pin": "16 mm"}, "driven.pin"),
        ({**DRIVEN, "driven__pin": "6"}, "driven.pin"),
        ({**DRIVEN, "driven__pin_circle": "26 mm"}, "driven.pin_circle"),
        ({**DRIVEN, "driven__outer_diameter": "24 mm"}, "driven.outer_diameter"),
        ({**DRIVEN, "driven__shear_pin": "yes"}, "driven.shear_pin"),
        ({**DRIVEN, "driven__pin_kind": "cheese"}, "driven.pin_kind"),
        ({"hub__key": None, "hub__drive": "pin"}, "hub.pin"),
    ],
)  # fmt: skip
def test_bad_inputs_are_refused(bad, key):
    """What is missing, a pin too thick, no unit, a circle in the shaft, a hub inside it, wrong words."""
    with pytest.raises(InputError) as error:
        resolve(file_of(**bad))
    assert [m.key for m in error.value.mistakes] == [key]


def test_a_pin_turns_the_sprocket():
    """Through the shaft it drives, beside set screws too; on a circle of its own something else does."""
    assert resolve(file_of(**HUB)).hub.drive == "pin"
    assert resolve(file_of(**HUB, hub__set_screw="1 x M6")).hub.drive == "pin"
    assert check_of("key", resolve(file_of(**HUB))) is None
    both = resolve(file_of(**{**HUB, "hub__key": "4 x 4 x 16 mm"}))
    assert check_of("key", both)
    assert check_of("hub_pin", both)
    flange = {**HUB, "hub__pin_circle": "60 mm", "hub__set_screw": "1 x M6"}
    assert resolve(file_of(**flange)).hub.drive == "set screw"
    assert check_of("hub_pin", resolve(file_of())) is None


def note_of(**changes):
    """Notes on the driven pin's line."""
    found = assess.assess(file_of(**DRIVEN, **changes))
    (line,) = [x for x in found.lines if x.limit.check.name == "driven_pin"]
    return line, found


def test_a_fuse_names_what_may_give_before_it():
    """Every part whose band begins below the end of the pin's; a part far stronger is not named."""
    line, found = note_of(driven__shear_pin=True)
    (note,) = [n for n in line.notes if "meant to go first" in n]
    high = line.limit.gives_high
    for other in found.lines:
        limit = other.limit
        if other is line or not limit.counts or limit.gives_low is None:
            continue
        assert (limit.check.part in note) == (limit.gives_low < high), limit.check.name
    assert line.limit.counts  # it still bounds the current


def test_a_soft_fuse_goes_before_anything_else():
    """A thin brass pin: nothing else is named; without the mark there is no note."""
    ideal = {"driven__pin_circle": "30 mm", "driven__pin": "1 mm", "driven__pin_shear_strength": "100 MPa",
             "chain__skew": "0 deg", "chain__offset": "0 mm", "motor__mass": "0.1 kg", "frame__member": "rigid"}  # fmt: skip
    told = {**DRIVEN, **ideal, "driven__shaft_diameter": "20 mm"}
    found = assess.assess(file_of(**told, driven__shear_pin=True))
    (line,) = [x for x in found.lines if x.limit.check.name == "driven_pin"]
    assert any("nothing else gives below" in n for n in line.notes)
    plain, _ = note_of()
    assert not any("meant to go" in n for n in plain.notes)


def test_not_checked_follows_the_pin():
    """The pin is a fastening; the shaft it crosses is said to be unchecked."""
    words = "\n".join(assess.not_checked(resolve(file_of(**HUB, **DRIVEN))))
    assert "how the driven sprocket is fastened" not in words
    assert "the motor shaft where the pin crosses it" in words
    assert "the driven shaft where the pin crosses it" in words
    assert "hub.outer_diameter is not given" in words
    told = resolve(
        file_of(**HUB, **DRIVEN, hub__outer_diameter="20 mm", driven__outer_diameter="40 mm")
    )
    assert "outer_diameter" not in "\n".join(assess.not_checked(told))
