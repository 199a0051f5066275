"""Power at the current held against the chain's power rating at its speed."""

from __future__ import annotations

import numpy as np
import pytest

from conftest import drive_file
from mountlimit import chains, crossings, evaluate, limits
from mountlimit.checks import BY_NAME, chain_power
from mountlimit.errors import InputError
from mountlimit.resolve import resolve

HORSEPOWER = 745.7
CURRENTS = np.geomspace(0.1, 1e5, 300)
RUN = {"motor__speed": "1000 rpm"}


def rows_at(current, **changes):
    """Rows in the first load case held, at likely values."""
    drive = resolve(drive_file(**{**RUN, **changes}))
    hold = next(i for i, c in enumerate(evaluate.loads.case_list(drive)) if c[1] == "hold")
    return chain_power.rows(evaluate.case_at(drive, current, hold))


def limit_of(**changes):
    """Current at which the rating is used up at likely values."""
    drive = resolve(drive_file(**{**RUN, **changes}))
    curve = evaluate.curves(drive, CURRENTS, ["chain_power"])["chain_power"]
    return crossings.refine(
        drive, BY_NAME["chain_power"], "continuous", CURRENTS, curve.continuous, 1.0
    )


@pytest.mark.parametrize(
    ("teeth", "rpm", "printed"),
    [(11, 100, 0.24), (11, 1000, 1.88), (11, 1200, 1.71), (11, 1400, 1.36),
     (17, 700, 2.18), (17, 1200, 3.29), (20, 400, 1.57), (20, 1400, 3.33)],
)  # fmt: skip
def test_rating_table_of_chain_41(teeth, rpm, printed):
    """Horsepower ratings of chain 41 as printed in the American table, below and past the peak."""
    changes = {"chain__type": "41", "chain__driving_teeth": teeth, "motor__speed": f"{rpm} rpm"}
    capacity = min(float(r.capacity) for r in rows_at(20.0, **changes))
    assert capacity / HORSEPOWER == pytest.approx(printed, abs=0.0051)


def test_bhandari_example_14_3():
    """5 kW at 1400 rpm, 21 teeth, 08A, some impact: 5.15873 of the 5.28 kW of the table.

    The rating equation lies 4.7 % over that table, the tooth factor agrees within 0.3 %.
    """
    torque = 5000.0 / (1400 * np.pi / 30)
    rows = rows_at(
        torque / 0.12, chain__driving_teeth=21, chain__driven_teeth=63,
        chain__centre_distance="500 mm", motor__speed="1400 rpm",
    )  # fmt: skip
    assert float(rows[0].demand) == pytest.approx(5000 * 1.3, rel=1e-9)
    worst = max(float(r.utilisation) for r in rows)
    assert worst == pytest.approx(5.15873 / 5.28, rel=0.08)


@pytest.mark.parametrize(
    "worse",
    [{"motor__speed": "1400 rpm"}, {"chain__driving_teeth": 9}, {"chain__type": "41"},
     {"motor__torque_constant": "0.15 N*m/A"}],
)  # fmt: skip
def test_what_makes_it_worse_lowers_the_limit(worse):
    """Faster, a smaller sprocket, a lighter chain, more torque per ampere."""
    assert limit_of(**worse) < limit_of()


def test_it_limits_the_current_held_only():
    """A continuous limit of life; it does not form the safe current."""
    found = limits.find(drive_file(**RUN))
    limit = next(x for x in found.limits if x.check.name == "chain_power")
    assert (limit.current_kind, limit.gives, limit.factor, limit.counts) == (
        "continuous",
        None,
        1.0,
        False,
    )
    sure = {**RUN, "motor__torque_scatter": 1.05}
    assert limit.safe == pytest.approx(limit_of(**sure), rel=1e-6)


@pytest.mark.parametrize("changes", [{"motor__speed": None}, {"chain__type": "05B"}])
def test_without_speed_or_rating_it_does_not_apply(changes):
    """No speed, or a chain without a rating: no such line."""
    drive = resolve(drive_file(**{**RUN, **changes}))
    assert "chain_power" not in [c.name for c in evaluate.applicable(drive)]


def test_chains_command_says_the_same():
    """The comparison of chains uses the same numbers: its share is the check's at the held current."""
    drive = resolve(drive_file(**RUN))
    used = max(float(r.utilisation) for r in rows_at(28.0))
    assert chains.running(drive).rating_share == pytest.approx(used, rel=1e-9)


@pytest.mark.parametrize("speed", ["0 rpm", "1000", "1000 mm"])
def test_bad_speed_is_refused(speed):
    """A motor that stands, a speed without unit, a length."""
    with pytest.raises(InputError, match=r"motor\.speed"):
        drive_file(motor__speed=speed)
