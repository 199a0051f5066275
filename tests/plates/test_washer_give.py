"""What a thick plate gives close under the motor's washers, beside rings tied through the thickness."""

from __future__ import annotations

import dataclasses

import numpy as np
import pytest
from plate_kit import model_of

from mountlimit.plates import PlateModel, solve
from mountlimit.plates.scales import Scales, Varying
from mountlimit.plates.washer_give import under_washers

NU = 0.3


def _sideways(model: PlateModel) -> np.ndarray:
    """One newton along x at the first motor bolt, and as a unit load: (bolts, 6, 6)."""
    wrench = np.zeros((len(model.motor_bolts), 6, 6))
    wrench[0, 0, 0] = 1.0
    return wrench


def test_along_the_face_it_lies_below_two_discs_on_endless_bodies() -> None:
    """A stiff disc pushed along a half-space moves (2 - nu) Q / (8 G a), each of two takes Q / 2.

    Source: K. L. Johnson, Contact Mechanics, section 3.7 (from memory). A plate's two faces are not
    apart from one another, so less; but not less than half of it.
    """
    model = model_of("C1")
    bolt, plate = model.motor_bolts[0], model.facets[0]
    radius = bolt.washer_diameter / 2
    endless = (2.0 - NU) / (16.0 * plate.in_plane_shear_modulus * radius)
    found = under_washers(model, _sideways(model))[0, 0]
    assert 0.5 * endless < found < endless


def test_it_grows_as_the_modulus_falls_and_takes_no_part_square_to_the_face() -> None:
    model = model_of("C1")
    every = np.ones(len(model.facets), bool)
    varying = Varying(thickness=every, modulus=every, second=~every)
    usual = under_washers(model, _sideways(model))
    soft = under_washers(model, _sideways(model), varying, Scales(modulus=0.5))
    assert soft == pytest.approx(2.0 * usual)
    square = np.zeros((len(model.motor_bolts), 6, 6))
    square[:, 2, 0] = square[:, 5, 0] = 1.0
    assert np.all(under_washers(model, square) == 0.0)


def test_the_motors_flexibility_stays_even_and_small_washers_give_more() -> None:
    model = model_of("C1")
    wide = solve(model)
    assert wide.motor[:, :6] == pytest.approx(wide.motor[:, :6].T, rel=1e-6, abs=1e-14)
    bolts = [
        dataclasses.replace(b, washer_diameter=0.7 * b.washer_diameter) for b in model.motor_bolts
    ]
    narrow = solve(dataclasses.replace(model, motor_bolts=bolts))
    tilt = [under_washers(s.model, s.supports.motor_bolts)[3, 3] for s in (wide, narrow)]
    assert 0.0 < tilt[0] < tilt[1]
