"""Allowances at peak pull: each of them governs where it is the tightest, and only at peak pull."""

from __future__ import annotations

import numpy as np
import pytest

from conftest import IDEAL, drive_file
from mountlimit import evaluate
from mountlimit.checks import alignment
from mountlimit.loads import case_list
from mountlimit.resolve import resolve

PEAK = {"angle between the shafts", alignment.RUBS, "offset"}
WIDE = {
    **IDEAL,
    "mount__route": "sections",
    "policy__peak_skew": "10 deg",
    "policy__peak_offset": "5 %",
}


def used(**changes):
    """How much of the safe current's allowance 40 A use up."""
    drive = resolve(drive_file(**{**WIDE, **changes}))
    return float(evaluate.curves(drive, np.array([40.0]), ["alignment"])["alignment"].safe[0])


@pytest.mark.parametrize(
    ("key", "tight", "half", "built"),
    [
        ("policy__peak_skew", "0.02 deg", "0.01 deg", "0 mm"),
        ("policy__peak_offset", "0.02 %", "0.01 %", "2 mm"),
    ],
)
def test_half_the_allowance_is_used_up_twice_as_much(key, tight, half, built):
    wide, narrow, least = (used(chain__offset=built, **e) for e in ({}, {key: tight}, {key: half}))
    assert narrow > wide
    assert least == pytest.approx(2 * narrow)


def test_the_shafts_lean_by_the_angle_between_them():
    """Nothing as built, no play: the lean of the mount over the allowance."""
    drive = resolve(drive_file(**{**WIDE, "policy__peak_skew": "0.01 deg"}))
    case = evaluate.case_at(drive, np.array([40.0]))
    lean = np.abs(alignment.lean(case)[0])[[g in ("pull", "reverse") for g in case.loads.groups]]
    assert used(policy__peak_skew="0.01 deg") == pytest.approx(
        lean.max() / np.radians(0.01), rel=1e-3
    )


@pytest.mark.parametrize(("group", "there"), [("pull", True), ("steady", False)])
def test_peak_allowances_speak_of_peak_pull(group, there):
    """A steady pull has none; it speaks of walking off alone."""
    drive = resolve(drive_file(**WIDE))
    index = next(i for i, c in enumerate(case_list(drive)) if c[1] == group)
    stations = {r.station for r in alignment.peak_rows(evaluate.case_at(drive, 40.0, index))}
    assert (stations >= PEAK) == there
    assert bool(stations & PEAK) == there
    assert ("walks off by skew" in stations) != there


@pytest.mark.parametrize("level", [0, 1, 2])
def test_low_edge_adds_skew_and_slack(level):
    """The earliest edge counts the two together; the others each by itself."""
    drive = resolve(drive_file(**WIDE, policy__throw_level=level))
    index = next(i for i, c in enumerate(case_list(drive)) if c[1] == "pull")
    stations = {r.station for r in alignment.peak_rows(evaluate.case_at(drive, 40.0, index))}
    assert ("skew and slack together" in stations) == (level == 0)
    assert ("jumps teeth by slack" in stations) == (level != 0)
