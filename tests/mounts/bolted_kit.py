"""Shared by the tests of bolted mounts: a file of a form, its answers, and the full plate model."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache
from typing import Any

import numpy as np
from click.testing import CliRunner

from conftest import changed, toml_text
from mountlimit import evaluate, limits, plate_response, plate_route, structure
from mountlimit.case import Loads
from mountlimit.cli import main
from mountlimit.drivefile import DriveFile, parse
from mountlimit.formulas import rigid
from mountlimit.loads import case_list
from mountlimit.model import Drive
from mountlimit.plates import solve
from mountlimit.resolve import resolve

CURRENTS = np.array([5.0, 60.0, 500.0])


def file_of(**changes: Any) -> DriveFile:
    """Read the base drive with changes."""
    return parse(toml_text(changed(**changes)).encode(), "test.toml")


def plated(file: DriveFile) -> Drive:
    """Resolve a file with its plate model."""
    return resolve(plate_route.with_plates(file))


def worst_balance(file: DriveFile) -> float:
    """Give the largest unbalanced share of the load at every end of every uncertain input."""
    plates = plate_route.with_plates(file)
    found = []
    for item in resolve(plates).ranges:
        for value in (item.low, item.high):
            case = evaluate.case_at(resolve(plates, {item.key: value}), CURRENTS)
            found.append(float(np.max(case.response.balance)))
    return max(found)


def lean(drive: Drive, degrees: float, torque: float = 0.0) -> float:
    """Give the lean along the chain line of mount and joint, rad per newton of shaft load."""
    angle = math.radians(degrees)
    part = plate_response.displacements_of(drive, structure.unit_load(angle, torque))[0]
    return abs(float(rigid.lean_along_chain(part.turn[0], part.turn[1], angle)))


def moved(drive: Drive, degrees: float) -> float:
    """Give the movement of the sprocket with mount and joint, m per newton of shaft load."""
    part = plate_response.displacements_of(drive, structure.unit_load(math.radians(degrees)))[0]
    return float(np.linalg.norm([float(m) for m in part.move]))


@cache
def _limits(text: str) -> dict[str, float]:
    found = limits.find(parse(text.encode(), "test.toml"))
    return {x.check.name: x.safe for x in found.limits}


def safe_limits(**changes: Any) -> dict[str, float]:
    """Give the safe current of every check."""
    return _limits(toml_text(changed(**changes)))


def one_case(drive: Drive, group: str, current: float = 60.0) -> Loads:
    """Give the loads of the first load case of a group."""
    index = next(i for i, c in enumerate(case_list(drive)) if c[1] == group)
    return evaluate.case_at(drive, current, index).loads


def apart_from_full(drive: Drive, group: str = "pull") -> tuple[float, float, float]:
    """Give how far turn, movement and bolt tension are from the unreduced plate model, as shares."""
    loads = replace(one_case(drive, group), weight=(0.0, 0.0, 0.0))
    force, moment = structure.wrench(drive, loads, (0.0, 0.0, 0.0))
    point = np.array([0.0, 0.0, float(drive.shaft.face_overhang)])
    f, m = (np.array([float(x) for x in part]) for part in (force, moment))
    full = solve(plate_route.as_it_bears(drive)).response(np.r_[f, m - np.cross(point, f)], point)
    ours = plate_response.solve(drive, loads)
    part = ours.displacements[0]
    pull = np.maximum(full.bolt_tension, 0.0)
    return (
        _apart(part.turn, full.rotation),
        _apart(part.move, full.displacement),
        _apart(ours.bolts.tension, pull),
    )


def _apart(ours: Any, theirs: Any) -> float:
    a, b = np.asarray([float(x) for x in ours]), np.asarray(theirs, float)
    return float(np.max(np.abs(a - b)) / np.max(np.abs(b)))


def message(tmp_path: Any, **changes: Any) -> str:
    """Run ``mountlimit check`` on a broken file; give its one line."""
    path = tmp_path / "drive.toml"
    path.write_text(toml_text(changed(**changes)))
    result = CliRunner().invoke(main, ["check", str(path)])
    assert result.exit_code == 2, result.output
    lines = result.stderr.strip().splitlines()
    assert "Traceback" not in result.stderr
    assert len(lines) == 1, result.stderr
    return str(lines[0])
