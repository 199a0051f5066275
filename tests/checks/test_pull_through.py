"""A bolt head pulled through the mount."""

from __future__ import annotations

import pytest
from hub_cases import check_of, file_of, limit_of, rows_of

from conftest import drive_file, welded_file
from mountlimit.checks.pull_through import punching_force
from mountlimit.errors import InputError
from mountlimit.resolve import resolve


def test_against_the_standard():
    """EN 1993-1-8 table 3.4: M8 head 13 mm across flats, 10 mm of S235: 0.6 pi 13 10 360 = 88.2 kN."""
    drive = resolve(drive_file(mount__material="s235", mount__thickness="10 mm"))
    material = drive.mount.material
    held = punching_force(
        material, drive.fixings.bolts.thread, drive.fixings.washer_diameter, 0.010
    )
    assert material.card.ultimate_strength == pytest.approx(360e6)
    assert held == pytest.approx(88.2e3, rel=1e-3)


def test_soft_mounts_by_their_washers():
    """Birch plywood: the wide washer holds more than the standard one, in step with its diameter."""
    wood = {"mount__material": "birch_ply", "mount__thickness": "18 mm"}
    small, wide = (
        rows_of("pull_through", **wood, fixings__washer=w)[0][0] for w in ("standard", "wide")
    )
    assert wide.capacity / small.capacity == pytest.approx(24 / 16)  # ISO 7093 and ISO 7089, M8


def test_every_bolt_is_looked_at():
    """Frame bolts one by one, and the motor's worst face bolt."""
    rows, case = rows_of("pull_through")
    assert [r.station for r in rows] == [f"frame bolt {i}" for i in (1, 2, 3, 4)] + [
        "face bolt of the motor"
    ]
    assert float(rows[0].demand) == pytest.approx(float(case.response.bolts.tension[0]))
    drive = resolve(welded_file())
    assert check_of("pull_through", drive) is not None  # its motor is bolted on


@pytest.mark.parametrize(
    "worse",
    [
        {"mount__thickness": "3 mm"},
        {"mount__yield_strength": "100 MPa"},
        {"shaft__face_overhang": "45 mm"},
        {"motor__bolt_circle": "60 mm"},
    ],
)
def test_direction(worse):
    """A thinner or softer plate, and what pulls harder at the bolts, lower the limit."""
    good = {"mount__thickness": "4 mm", "chain__pull": "away"}
    assert limit_of("pull_through", **{**good, **worse}) < limit_of("pull_through", **good)


def test_bad_input():
    """A washer nobody sells is refused in one line."""
    with pytest.raises(InputError) as caught:
        resolve(file_of(fixings__washer="huge"))
    assert "fixings.washer = 'huge'" in str(caught.value)


def test_face_bolts_by_the_plate_model_too():
    """Beside statics every face bolt is looked at with the shear the plate gives it."""
    from mountlimit import evaluate
    from mountlimit.checks.motor_bolts import bolt_rows
    from mountlimit.plate_route import with_plates

    case = evaluate.case_at(resolve(with_plates(drive_file())), 40.0, 0)
    stations = [r.station for r in bolt_rows(case)]
    assert stations == ["face bolt", *(f"face bolt {i}, by the plate model" for i in (1, 2, 3, 4))]
