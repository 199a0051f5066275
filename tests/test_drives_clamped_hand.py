"""The two drives clamped on a tube against the first-order hand check of test_drives_hand.py.

The hand check's reserve of the trike's saddle: friction times four contact forces of each of two
U-bolts (leg 4 kN) times the tube's radius, over pull times 80 mm.  Program over hand: 0.84, because
the pull acts at the smallest radius of the polygon (1.04) and the motor's own torque turns the saddle
as well (1.17); contact along lines is the same model (contact angle of 1 deg).
"""

from __future__ import annotations

from pathlib import Path

import pytest

from mountlimit import evaluate, loads
from mountlimit.checks import BY_NAME
from mountlimit.drivefile import read
from mountlimit.plate_route import with_plates
from mountlimit.resolve import resolve

DRIVES = Path(__file__).parent / "drives"
SAME_AS_HAND = {
    "chain__slack": "20 %", "chain__skew": "0 deg", "chain__offset": "0 mm", "shaft__bearing_play": "0 mm",
    "duty__starting_factor": 1, "motor__mass": "0.05 kg", "motor__torque_scatter": 1, "duty__bump": "0 g",
    "fixings__contact_angle": "1 deg",
}  # fmt: skip
# torque N*m, pull N, front bearing N, shaft MPa, as printed
HAND = {"cargo_trike": (9.6, 676, 911, 243), "longtail_bicycle": (9.5, 692, 1037, 132)}


@pytest.fixture(scope="module")
def cases():
    """Give every pull case of both drives at the wanted current."""
    found = {}
    for name in HAND:
        drive = resolve(with_plates(read(DRIVES / f"{name}.toml").edited(**SAME_AS_HAND)))
        pulls = [i for i, c in enumerate(loads.case_list(drive)) if c[1] == "pull"]
        current = float(drive.current.wanted)
        found[name] = [evaluate.case_at(drive, current, i) for i in pulls]
    return found


@pytest.mark.parametrize("name", HAND)
def test_same_model_within_a_tenth(cases, name):
    """Torque, pull, bearing load and shaft stress come from the same model."""
    case = cases[name][0]
    bearing = BY_NAME["front_bearing"].rows(case)[0]
    shaft = next(r for r in BY_NAME["motor_shaft"].rows(case) if r.station == "front bearing")
    got = (
        float(case.loads.torque), float(case.loads.effective_pull), float(bearing.demand),
        float(shaft.demand) / 1e6,
    )  # fmt: skip
    assert got == pytest.approx(HAND[name], rel=0.10)


def test_key_of_the_bicycle(cases):
    """28 MPa in shear, 57 in crushing."""
    found = {
        r.station: float(r.demand) / 1e6 for r in BY_NAME["key"].rows(cases["longtail_bicycle"][0])
    }
    assert (found["shear"], found["crushing"]) == pytest.approx((28, 57), abs=0.6)


def test_reserve_of_the_saddle(cases):
    """Program over hand: the true pull, and the motor's torque beside it."""
    held = 0.12 * 4 * 2 * 4e3 * 0.016
    assert held / (676 * 0.080) == pytest.approx(1.1, abs=0.05)
    worst = max(
        float(row.utilisation)
        for case in cases["cargo_trike"]
        for row in BY_NAME["tube_grip"].rows(case)
        if "turns" in row.station
    )
    load, torque = (
        float(getattr(cases["cargo_trike"][0].loads, k)) for k in ("shaft_load", "torque")
    )
    assert 1 / worst == pytest.approx(held / (load * 0.080 + torque), rel=0.03)
    assert (1 / worst) / (held / (676 * 0.080)) == pytest.approx(0.84, abs=0.03)
