"""Pressure between pin and bush at the current held."""

from __future__ import annotations

import numpy as np
import pytest

from conftest import drive_file
from mountlimit import crossings, evaluate, limits, why
from mountlimit.checks import BY_NAME, chain_pin_pressure
from mountlimit.errors import InputError
from mountlimit.resolve import chain_life, resolve

CURRENTS = np.geomspace(0.1, 1e5, 300)
RUN = {"motor__speed": "1000 rpm"}


def row_at(current, **changes):
    """The row in the first load case held, at likely values."""
    drive = resolve(drive_file(**{**RUN, **changes}))
    hold = next(i for i, c in enumerate(evaluate.loads.case_list(drive)) if c[1] == "hold")
    (row,) = chain_pin_pressure.rows(evaluate.case_at(drive, current, hold))
    return row


def limit_of(**changes):
    """Current at which the pressure allowed is reached at likely values."""
    drive = resolve(drive_file(**{**RUN, **changes}))
    name = "chain_pin_pressure"
    curve = evaluate.curves(drive, CURRENTS, [name])[name]
    return crossings.refine(drive, BY_NAME[name], "continuous", CURRENTS, curve.continuous, 1.0)


def test_pressure_by_hand():
    """25 A, 3 N*m, 11 teeth of chain 40 at 1000 rpm, 3 % of sag: worked out number by number.

    r = 6.35 / sin(180/11) * cos(180/11) = 21.627 mm and 3 / 0.021627 = 138.71 N; 0.62 kg/m at
    11 * 12.7 mm * 16.667 = 2.3283 m/s throw 3.361 N; the run of 349.6 mm sagging by 10.49 mm pulls
    0.62 * 9.80665 * 0.3496 / 0.24 = 8.857 N; together 150.93 N on 43.0 mm2 (3.58 * (7.85 + 2 * 2.08)).
    """
    row = row_at(25.0)
    assert float(row.demand) == pytest.approx(150.93 / 43.0e-6, rel=1e-3)
    assert float(row.capacity) == pytest.approx(22.5e6, rel=1e-9)


def test_bhandari_example_14_7_at_its_pull():
    """10B under 1840.559 N: 27.8 N/mm2 on 66.3 mm2, over the 20 allowed at 1400 rpm (computed)."""
    changes = {"chain__type": "10B", "chain__driving_teeth": 19, "motor__speed": "1400 rpm"}
    low, high = 1.0, 1000.0
    for _ in range(60):
        middle = (low + high) / 2
        row = row_at(middle, **changes)
        low, high = (middle, high) if row.demand * 66.3e-6 < 1840.559 else (low, middle)
    assert float(row.demand) == pytest.approx(27.76e6, rel=1e-3)
    assert 18.5e6 < float(row.capacity) < 21e6
    assert row.utilisation > 1


@pytest.mark.parametrize(
    ("pitch", "rpm", "printed"),
    [(12.7, 20, 35), (12.7, 50, 35), (12.7, 200, 31.5), (15.875, 800, 24), (9.525, 2000, 16.5),
     (19.05, 1000, 19), (25.4, 1600, 15)],
)  # fmt: skip
def test_table_at_its_printed_speeds(pitch, rpm, printed):
    """The table's own entries (PSG Design Data, from memory)."""
    assert chain_life.table_pressure(pitch / 1000, rpm) == pytest.approx(printed * 1e6, rel=1e-9)


@pytest.mark.parametrize("pitch", [0.0127, 0.01905])
def test_table_falls_with_speed_and_goes_on_past_its_end(pitch):
    """No step and no rise anywhere, and above nothing at 6000 rpm."""
    found = [chain_life.table_pressure(pitch, n) for n in np.geomspace(50, 6000, 200)]
    steps = np.diff(np.log(found))
    assert (steps <= 1e-12).all()
    assert (steps > -0.05).all()
    assert found[-1] > 5e6


@pytest.mark.parametrize(
    "worse",
    [{"motor__speed": "2000 rpm"}, {"chain__driving_teeth": 9}, {"chain__type": "41"},
     {"chain__joint_pressure": "15 MPa"}, {"chain__slack": "0.5 %"}],
)  # fmt: skip
def test_what_makes_it_worse_lowers_the_limit(worse):
    """Faster, a smaller sprocket, a thinner pin, less allowed, a tauter chain."""
    assert limit_of(**worse) < limit_of()


def test_own_pressure_stands_for_the_table():
    """A pressure that is given is the limit, with or without a speed; without both there is no line."""
    assert float(row_at(25.0, chain__joint_pressure="18 MPa").capacity) == 18e6
    assert float(row_at(25.0, chain__joint_pressure="18 MPa", motor__speed=None).capacity) == 18e6
    drive = resolve(drive_file())
    assert "chain_pin_pressure" not in [c.name for c in evaluate.applicable(drive)]
    assert "chain.joint_pressure" not in {r.key for r in drive.ranges}


def test_it_limits_the_current_held_only():
    """A continuous limit of life at the low end of the pressure allowed."""
    found = limits.find(drive_file(**RUN))
    limit = next(x for x in found.limits if x.check.name == "chain_pin_pressure")
    assert (limit.current_kind, limit.gives, limit.counts) == ("continuous", None, False)
    assert limit.ends["chain.joint_pressure"] == "low"


def test_worked_line_names_the_table():
    """`why` ends in the pressure and where the allowed one comes from."""
    last = why.work(drive_file(**RUN), "chain_pin_pressure").steps[-1]
    allowed = next(e for e in last.entries if e.key == "chain.joint_pressure")
    assert "from memory" in allowed.source


@pytest.mark.parametrize("value", ["0 MPa", "24", "24 mm"])
def test_bad_pressure_is_refused(value):
    """Nothing allowed, no unit, a length."""
    with pytest.raises(InputError, match="joint_pressure"):
        drive_file(chain__joint_pressure=value)
