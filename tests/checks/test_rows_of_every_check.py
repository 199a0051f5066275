"""What every check's rows must be, whichever check: held against itself by another road.

One load case in plain numbers says the same as all load cases as arrays; a row that stands for many
places says so; a check that applies has something to say; and what takes years or hours is never
said to give at once.
"""

from __future__ import annotations

import re
from collections import Counter
from functools import cache

import numpy as np
import pytest
from test_every_check import ROWS, file_of

from mountlimit import evaluate
from mountlimit.case import Case
from mountlimit.checks import BY_NAME, CHECKS
from mountlimit.resolve import resolve

CURRENTS = np.array([25.0, 90.0])
NAMED = pytest.mark.parametrize("row", ROWS, ids=lambda r: r.check)
BY_CHECK = {r.check: r for r in ROWS}
# Used up by the hours a current is held, not by starts: lives in hours, creep, wear, chain power
# (a rating for 15 000 h), and how straight a chain must run to live its life.
BY_THE_HOUR = {
    "bearing_life", "rear_bearing_life", "outboard_bearing_life", "driven_bearing_life",
    "jackshaft_bearing_life", "chain_power", "second_chain_power", "chain_pin_pressure",
    "second_chain_pin_pressure", "mount_strain", "running_alignment",
}  # fmt: skip


@cache
def case_of(name: str) -> Case:
    """The drive of a check under all its loads at two currents."""
    return evaluate.case_at(resolve(file_of(BY_CHECK[name], {})), CURRENTS)


def first_of_each_group(case: Case, name: str) -> list[int]:
    """Give one load case of every group the check looks at."""
    groups = case.loads.groups
    return [groups.index(g) for g in dict.fromkeys(groups) if BY_NAME[name].looks_at(g)]


@NAMED
def test_one_load_case_says_what_all_of_them_say(row):
    case, check = case_of(row.check), BY_NAME[row.check]
    shape = (len(case.loads.groups), len(CURRENTS))
    together = check.rows(case)
    picks = first_of_each_group(case, row.check)
    assert picks
    named = Counter((r.station, r.level) for r in together)
    places: set[str] = set()
    for pick in picks:
        alone = check.rows(evaluate.case_at(case.drive, float(CURRENTS[1]), pick))
        places |= {r.station for r in alone}
        for level in ("safe", "gives", "continuous"):
            wanted = [float(r.utilisation) for r in alone if evaluate._counts(r, level)]
            found = [np.broadcast_to(r.utilisation, shape)[pick, 1]
                     for r in together if evaluate._counts(r, level)]  # fmt: skip
            most = max([0.0, *found])  # a case not looked at uses nothing up
            assert max([0.0, *wanted]) == pytest.approx(most, rel=1e-7, abs=1e-12), level
        for one in alone:
            if named[one.station, one.level] == 1:
                all_of = next(
                    r for r in together if (r.station, r.level) == (one.station, one.level)
                )
                found_here = np.broadcast_to(all_of.utilisation, shape)[pick, 1]
                assert float(one.utilisation) == pytest.approx(found_here, rel=1e-7, abs=1e-12), one
    unnamed = {r.station for r in together if not r.many} - places
    assert not unnamed, "a station that no load case alone has stands for many"


@NAMED
def test_what_takes_hours_or_years_does_not_give_at_once(row):
    curve = evaluate.curves_of(case_of(row.check), [row.check])[row.check]
    by_the_hour = row.check in BY_THE_HOUR
    assert (curve.continuous is not None) == by_the_hour
    assert (curve.safe is not None) == (not by_the_hour)
    if BY_NAME[row.check].kind == "life":
        assert curve.gives is None
    elif not by_the_hour:
        assert curve.gives is not None


@NAMED
def test_design_factor_is_a_number_with_a_source(row):
    factor, source = evaluate.design_factor(BY_NAME[row.check], case_of(row.check).drive)
    assert 1.0 <= factor <= 8.0
    assert len(source) > 5


@NAMED
def test_numbered_parts_count_from_one(row):
    """As a person counts bolts: no bolt 0, none left out."""
    found: dict[str, set[int]] = {}
    for station in (r.station for r in BY_NAME[row.check].rows(case_of(row.check))):
        for part, number in re.findall(r"\b(bolt|screw|foot|weld|spacer) (\d+)\b", station):
            found.setdefault(part, set()).add(int(number))
    for part, numbers in found.items():
        assert numbers == set(range(1, len(numbers) + 1)), part


@NAMED
def test_a_check_that_applies_has_something_to_say(row):
    """Every check on the drive of each row; where it does not apply, there is no part to be judged."""
    case = case_of(row.check)
    applying = [c for c in CHECKS if c.applies(case.drive)]
    assert BY_NAME[row.check] in applying
    assert not [c.name for c in applying if not c.rows(case)]


def test_face_bolts_beside_a_strut_are_those_of_the_plate_model():
    """A strut at the motor's back takes its share: what is left on the face is no longer statics."""
    case = case_of("strut")
    found = [r for r in BY_NAME["motor_bolts"].rows(case) if "beside the strut" in r.station]
    assert found
    assert len(found) % len(case.response.motor_bolts) == 0
