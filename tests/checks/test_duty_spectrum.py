"""Life of a bearing under a duty whose current and speed change."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from conftest import drive_file
from mountlimit import crossings, evaluate, why
from mountlimit.checks import BY_NAME, _bearing, bearing_life
from mountlimit.errors import InputError
from mountlimit.model import DutyStep
from mountlimit.resolve import resolve
from mountlimit.worked import Value

CURRENTS = np.geomspace(0.1, 1e5, 300)
RUN = {"motor__speed": "600 rpm", "duty__bearing_hours": "1000 h", "duty__chain_factor": 1.0,
       "motor__torque_scatter": 1}  # fmt: skip
MEASURED = {"motor__torque_constant": None, "motor__points": [["25 A", "1 N*m"], ["50 A", "6 N*m"]]}
HALVES = [["100 %", "50 %"], ["50 %", "50 %"]]
POUND = 4.4482216


def row_at(current=50.0, **changes):
    """The row of the front bearing in the first load case held, with that case."""
    drive = resolve(drive_file(**{**RUN, **changes}))
    index = next(i for i, c in enumerate(evaluate.loads.case_list(drive)) if c[1] == "hold")
    case = evaluate.case_at(drive, current, index)
    (row,) = bearing_life.rows(case)
    return row, case


def limit_of(spectrum=None, **changes):
    """Current at which the life is used up at likely values."""
    drive = resolve(drive_file(**{**RUN, **changes}, duty__spectrum=spectrum))
    curve = evaluate.curves(drive, CURRENTS, ["bearing_life"])["bearing_life"]
    check = BY_NAME["bearing_life"]
    return crossings.refine(drive, check, "continuous", CURRENTS, curve.continuous, 1.0)


def test_a_published_example():
    """Mott 4th ed. example 14-6: 650 lb 30 min, 750 lb 10 min, 250 lb 20 min wear as 597 lb.

    The steps are given as shares of a current without a no-load part and a chain without weight,
    so that the load goes with the current.
    """
    _, case = row_at()
    loads = replace(case.loads, shaft_load=case.loads.effective_pull)
    steps = tuple(
        DutyStep(**{k: Value(v, "duty.spectrum", "given") for k, v in
                    (("current", load / 750), ("time", minutes / 60), ("speed", 1.0))})
        for load, minutes in ((650, 30), (750, 10), (250, 20))
    )  # fmt: skip
    drive = replace(case.drive, duty=replace(case.drive.duty, spectrum=steps))
    case = replace(case, drive=drive, loads=loads)
    load, speed = _bearing._duty_load(case, 750 * POUND, case.drive.motor.speed, None)
    assert load / POUND == pytest.approx(597.0, abs=0.5)
    assert speed == pytest.approx(600 * np.pi / 30)
    row = _bearing.life_row(case, "any", 750 * POUND, 31350.0, drive.motor.speed)
    # (31 350 N over 597.1 lb)^3 = 1644 million turns at 36 000 an hour
    assert row.capacity / 3600 == pytest.approx(45680, rel=2e-3)


def test_worn_by_the_sum_of_the_parts():
    """Miner: hours of each step over the hours that step alone would last add up to 1 (independent)."""
    spectrum = [["100 %", "10 %"], ["50 %", "40 %"], ["20 %", "30 %", "50 %"]]
    whole, _ = row_at(80.0, duty__spectrum=spectrum)
    alone = [
        row_at(80.0 * share, motor__speed=f"{600 * speed:g} rpm")[0].capacity
        for share, speed in ((1.0, 1.0), (0.5, 1.0), (0.2, 0.5))
    ]
    worn = sum(q * whole.capacity / hours for q, hours in zip((0.1, 0.4, 0.3), alone, strict=True))
    assert worn == pytest.approx(1.0, rel=1e-9)


@pytest.mark.parametrize("measured", [False, True])
def test_each_step_takes_the_torque_of_its_current(measured):
    """Half the current is less than half the torque where the measured curve is hollow."""
    changes = MEASURED if measured else {}
    half, _ = row_at(duty__spectrum=[["50 %", "100 %"]], **changes)
    same, _ = row_at(25.0, **changes)
    assert half.capacity == pytest.approx(same.capacity, rel=1e-9)


def test_full_current_all_the_time_is_no_spectrum():
    """One step of 100 % changes nothing; half the time gives twice the hours."""
    plain, _ = row_at()
    full, _ = row_at(duty__spectrum=[["100 %", "100 %"]])
    rest, _ = row_at(duty__spectrum=[["100 %", "50 %"]])
    assert full.capacity == pytest.approx(plain.capacity, rel=1e-12)
    assert rest.capacity == pytest.approx(2 * plain.capacity, rel=1e-12)


def test_direction():
    """A lighter duty raises the limit; more of the heavy part, or a faster one, lowers it."""
    base = limit_of(HALVES)
    assert base > limit_of()
    assert limit_of(HALVES, **MEASURED) > limit_of(**MEASURED)
    assert limit_of([["100 %", "60 %"], ["50 %", "40 %"]]) < base
    assert limit_of([["100 %", "50 %"], ["60 %", "50 %"]]) < base
    assert limit_of([["100 %", "50 %"], ["50 %", "50 %", "150 %"]]) < base


def test_a_step_without_current_still_carries_the_sag():
    """Running along unloaded wears a little: the slack chain pulls."""
    idle, case = row_at(duty__spectrum=[["0 %", "100 %"]])
    sag = case.loads.shaft_load - case.loads.effective_pull
    plain, _ = row_at()
    assert idle.capacity / plain.capacity == pytest.approx((case.loads.shaft_load / sag) ** 3)


def test_every_step_is_worked_out():
    """`why` names each row of the spectrum and ends in the hours."""
    work = why.work(drive_file(**RUN, duty__spectrum=HALVES), "bearing_life")
    sources = [e.source for s in work.steps for e in s.entries if e.key == "duty.spectrum"]
    for words in ("step 1, share of the current", "step 2, share of the time", "step 2, share of the speed"):  # fmt: skip
        assert words in sources
    seen = set()
    for step in work.steps:
        assert all(e.key or e.step in seen or e.value == 0 for e in step.entries), step.title
        seen.add(step.index)
    assert work.utilisation == pytest.approx(1.0, rel=1e-6)


def test_without_a_speed_it_is_remarked_on():
    """Nothing asks for the spectrum then."""
    drive = resolve(drive_file(duty__spectrum=HALVES))
    assert any("duty.spectrum" in w and "motor.speed" in w for w in drive.warnings)


@pytest.mark.parametrize(
    ("value", "words"),
    [
        ([["100 %", "60 %"], ["50 %", "50 %"]], "make 110 %"),
        ([["100 %"]], "share of the current, of the time"),
        ([["120 %", "10 %"]], "share of the current from 0 % to 100 %"),
        ([["50 %", "0 %"]], "share of the time from more than 0 %"),
        ([["50 %", "10 %", "300 %"]], "share of the speed"),
        ([["50 A", "10 %"]], "A"),
        ("100 %", "1 to 24 rows"),
        ([], "1 to 24 rows"),
    ],
)  # fmt: skip
def test_bad_spectra_are_refused(value, words):
    """One line each: too much time, a row too short, shares out of range, an ampere, no list."""
    with pytest.raises(InputError, match=words) as error:
        resolve(drive_file(**RUN, duty__spectrum=value))
    assert [m.key for m in error.value.mistakes] == ["duty.spectrum"]
