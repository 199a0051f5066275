"""Rear bearing of the motor: what the overhung pull puts on it, and its hours."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from conftest import drive_file
from mountlimit import crossings, evaluate, why
from mountlimit.checks import BY_NAME
from mountlimit.errors import InputError
from mountlimit.resolve import resolve

CURRENTS = np.geomspace(0.1, 1e5, 300)
RUN = {"motor__speed": "650 rpm", "duty__bearing_hours": "1000 h", "duty__chain_factor": 1.2,
       "shaft__bearing_span": "50 mm", "shaft__face_to_bearing": "10 mm",
       "shaft__face_overhang": "20 mm", "shaft__rear_bearing": "6000"}  # fmt: skip


def row_of(name, group, load=None, **changes):
    """The check's row in the first load case of a group, with a shaft load put in."""
    drive = resolve(drive_file(**{**RUN, **changes}))
    index = next(i for i, c in enumerate(evaluate.loads.case_list(drive)) if c[1] == group)
    case = evaluate.case_at(drive, 50.0, index)
    if load is not None:
        case = replace(case, loads=replace(case.loads, shaft_load=load, effective_pull=load))
    (row,) = BY_NAME[name].rows(case)
    return row


def limit_of(name, level, **changes):
    """Current at which a check is used up at likely values, factor 1."""
    drive = resolve(drive_file(**{**RUN, **changes}))
    curve = evaluate.curves(drive, CURRENTS, [name])[name]
    return crossings.refine(drive, BY_NAME[name], level, CURRENTS, getattr(curve, level), 1.0)


def test_reaction_of_the_beam_table():
    """1000 N, 30 mm outside bearings 50 mm apart: 600 N (AISC Manual table 3-23, from memory)."""
    row = row_of("rear_bearing", "pull", 1000.0)
    assert row.demand == pytest.approx(600.0, rel=1e-9)
    assert row.capacity == pytest.approx(1950.0)  # 6000 in makers' lists


def test_hours_of_a_published_problem():
    """1898 N, factor 1.2, 300 rpm, C 18.55 kN: 30 000 h (Shigley solutions manual, 11-1)."""
    row = row_of(
        "rear_bearing_life", "hold", 1898.0 / 0.6, motor__speed="300 rpm", shaft__rear_bearing=None,
        shaft__rear_dynamic_rating="18.55 kN",
    )  # fmt: skip
    assert row.capacity / 3600 == pytest.approx(30000, rel=2e-3)


def test_it_applies_only_when_told():
    """Untold: no such check, nothing more is assumed; without a speed or a rating no life."""
    names = ("rear_bearing", "rear_bearing_life")

    def applied(**changes):
        drive = resolve(drive_file(**{**RUN, **changes}))
        return [n for n in names if n in [c.name for c in evaluate.applicable(drive)]]

    assert applied() == list(names)
    assert applied(shaft__rear_bearing=None) == []
    assert applied(motor__speed=None) == ["rear_bearing"]
    static = {"shaft__rear_bearing": None, "shaft__rear_static_rating": "2 kN"}
    assert applied(**static) == ["rear_bearing"]
    told, untold = (
        {r.key for r in resolve(drive_file(**{**RUN, "shaft__rear_bearing": b})).ranges}
        for b in ("6000", None)
    )
    assert told == untold


@pytest.mark.parametrize(
    "worse",
    [{"shaft__rear_bearing": None, "shaft__rear_static_rating": "1.5 kN", "shaft__rear_dynamic_rating": "4 kN"},
     {"shaft__face_overhang": "30 mm"}, {"shaft__bearing_span": "40 mm"}, {"chain__driving_teeth": 9}],
)  # fmt: skip
@pytest.mark.parametrize(("name", "level"), [("rear_bearing", "gives"), ("rear_bearing_life", "continuous")])  # fmt: skip
def test_what_makes_it_worse_lowers_the_limit(name, level, worse):
    """A lighter bearing, more overhang, bearings closer together, a smaller sprocket."""
    assert limit_of(name, level, **worse) < limit_of(name, level)


def test_a_lighter_duty_lasts_longer():
    """The spectrum counts here too."""
    name = "rear_bearing_life"
    spectrum = [["100 %", "10 %"], ["50 %", "40 %"]]
    assert limit_of(name, "continuous", duty__spectrum=spectrum) > limit_of(name, "continuous")


@pytest.mark.parametrize(
    ("bad", "key"),
    [
        ({"shaft__rear_bearing": "9205"}, "shaft.rear_bearing"),
        ({"shaft__rear_static_rating": "2 kN"}, "shaft.rear_static_rating"),
        ({"shaft__rear_bearing": None, "shaft__rear_static_rating": "2 mm"}, "shaft.rear_static_rating"),
    ],
)  # fmt: skip
def test_bad_inputs_are_refused(bad, key):
    """An unknown number, a rating beside the number, a rating that is no force."""
    with pytest.raises(InputError) as error:
        resolve(drive_file(**{**RUN, **bad}))
    assert [m.key for m in error.value.mistakes] == [key]


def test_a_rating_without_a_speed_is_remarked_on():
    """A dynamic rating alone does nothing then."""
    drive = resolve(drive_file(shaft__rear_dynamic_rating="5 kN"))
    assert any("shaft.rear_dynamic_rating" in w for w in drive.warnings)


@pytest.mark.parametrize("name", ["rear_bearing", "rear_bearing_life"])
def test_worked_line_ends_in_the_limit(name):
    """`why` names bearing span and overhang."""
    work = why.work(drive_file(**RUN), name)
    assert work.utilisation == pytest.approx(1.0, rel=1e-6)
    keys = {e.key for step in work.steps for e in step.entries}
    assert {"shaft.bearing_span", "shaft.face_overhang"} <= keys
