"""Hours of the motor's front bearing at the current held."""

from __future__ import annotations

import numpy as np
import pytest

from conftest import drive_file
from mountlimit import crossings, evaluate, limits, why
from mountlimit.checks import BY_NAME, bearing_life
from mountlimit.errors import InputError
from mountlimit.resolve import resolve

CURRENTS = np.geomspace(0.1, 1e5, 300)
RUN = {"motor__speed": "650 rpm", "duty__bearing_hours": "1000 h", "duty__chain_factor": 1.3,
       "shaft__bearing_span": "110 mm", "shaft__face_to_bearing": "10 mm"}  # fmt: skip


def limit_of(**changes):
    """Current at which the life is used up at likely values, factor 1."""
    drive = resolve(drive_file(**{**RUN, **changes}))
    check = BY_NAME["bearing_life"]
    curve = evaluate.curves(drive, CURRENTS, ["bearing_life"])["bearing_life"]
    return crossings.refine(drive, check, "continuous", CURRENTS, curve.continuous, 1.0)


def row_at(current, **changes):
    """The row in the first load case held, with that case."""
    drive = resolve(drive_file(**{**RUN, **changes}))
    index = next(i for i, c in enumerate(evaluate.loads.case_list(drive)) if c[1] == "hold")
    case = evaluate.case_at(drive, current, index)
    (row,) = bearing_life.rows(case)
    return row, case


def test_catalogue_example_at_its_load():
    """3.2 kN and C 32.5 kN at 650 rpm: 26 862 h exactly (bearing catalogue example, from memory).

    The current is searched at which the bearing carries 3.2 kN; force balance of the shaft about
    the rear bearing and the chain factor give that load.
    """
    changes = {
        "shaft__bearing": None,
        "shaft__dynamic_rating": "32.5 kN",
        "duty__chain_factor": 1.0,
    }
    pull = 3200.0 * 0.110 / (0.110 + 0.038)
    low, high = 1.0, 1000.0
    for _ in range(80):
        middle = (low + high) / 2
        row, case = row_at(middle, **changes)
        low, high = (middle, high) if case.loads.shaft_load < pull else (low, middle)
    assert row.capacity / 3600 == pytest.approx(26862, abs=0.5)


def test_use_rises_with_the_third_power():
    """Twice the shaft load and twice the chain factor: eight times the use each."""
    (one, first), (two, second) = row_at(50.0), row_at(100.0)
    ratio = second.loads.shaft_load / first.loads.shaft_load
    assert two.utilisation / one.utilisation == pytest.approx(ratio**3, rel=1e-9)
    double, _ = row_at(50.0, duty__chain_factor=2.6)
    assert double.utilisation / one.utilisation == pytest.approx(8.0, rel=1e-9)


def test_it_limits_the_current_held_only():
    """The limit is a continuous one, without a 'gives at'; 1 is the limit, no factor on top."""
    sure = {**RUN, "motor__torque_scatter": 1, "chain__slack": "2 %"}
    found = {x.check.name: x for x in limits.find(drive_file(**sure)).limits}
    limit = found["bearing_life"]
    assert (limit.current_kind, limit.gives, limit.factor) == ("continuous", None, 1.0)
    assert limit.safe == pytest.approx(limit_of(**sure), rel=1e-6)  # nothing is uncertain here


@pytest.mark.parametrize(
    "worse",
    [
        {"motor__speed": "1300 rpm"}, {"duty__bearing_hours": "2000 h"}, {"duty__chain_factor": 1.5},
        {"shaft__bearing": "6001"}, {"shaft__face_overhang": "35 mm"},
        {"shaft__bearing_span": "80 mm"}, {"chain__driving_teeth": 9},
    ],
)  # fmt: skip
def test_what_makes_it_worse_lowers_the_limit(worse):
    """Faster, longer, rougher, a lighter bearing, more overhang, a smaller sprocket."""
    assert limit_of(**worse) < limit_of()


def test_without_a_speed_it_does_not_apply():
    """No motor.speed: no such limit, none of its inputs is listed, and given ones are remarked on."""
    drive = resolve(drive_file(shaft__bearing=None, duty__bearing_hours="1000 h"))
    assert "bearing_life" not in [c.name for c in evaluate.applicable(drive)]
    listed = {r.key for r in drive.ranges}
    assert not listed & {"duty.chain_factor", "duty.bearing_hours", "shaft.dynamic_rating"}
    assert any("duty.bearing_hours" in w and "motor.speed" in w for w in drive.warnings)


def test_an_unknown_bearing_is_a_range():
    """Light to heavy deep-groove bearings on a 12 mm shaft: 6001 to 6301."""
    drive = resolve(drive_file(**RUN, shaft__bearing=None))
    known = next(r for r in drive.ranges if r.key == "shaft.dynamic_rating")
    assert known.low < known.likely < known.high
    assert known.low == pytest.approx(5.07e3, abs=0.05e3)  # 6001 in makers' lists: 5.07 to 5.1 kN


def test_hours_assumed():
    """500 / 1000 / 4000 h; the safe current takes the long end and the rough chain."""
    file = drive_file(motor__speed="650 rpm")
    known = next(r for r in resolve(file).ranges if r.key == "duty.bearing_hours")
    assert (known.low / 3600, known.likely / 3600, known.high / 3600) == (500, 1000, 4000)
    limit = next(x for x in limits.find(file).limits if x.check.name == "bearing_life")
    assert limit.ends["duty.bearing_hours"] == limit.ends["duty.chain_factor"] == "high"


@pytest.mark.parametrize(
    ("key", "value"),
    [("duty__bearing_hours", "0 h"), ("duty__chain_factor", 0.5), ("motor__speed", "0 rpm"),
     ("shaft__dynamic_rating", "7 mm")],
)  # fmt: skip
def test_bad_inputs_are_refused(key, value):
    """No hours, a factor below 1, a motor that stands, a rating that is no force."""
    with pytest.raises(InputError):
        resolve(drive_file(**{**RUN, key: value}))


def test_worked_line_ends_in_the_limit():
    """`why` names the load, the turns, the speed and the hours; at the limit the life is the wish."""
    work = why.work(drive_file(**RUN), "bearing_life")
    assert work.utilisation == pytest.approx(1.0, abs=1e-6)
    keys = {e.key for step in work.steps for e in step.entries}
    assert {"motor.speed", "duty.bearing_hours", "duty.chain_factor"} <= keys
    assert work.row.capacity == pytest.approx(1000 * 3600, rel=1e-6)
    assert sum(step.source == "ISO 281" for step in work.steps) == 4
