"""Shared by the tests of welded mounts: a file of a form, its answers, and the full plate model."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import numpy as np

from conftest import WELDED, changed, toml_text
from mountlimit import evaluate, plate_response, plate_route, structure
from mountlimit.drivefile import DriveFile, parse
from mountlimit.errors import InputError
from mountlimit.formulas import rigid
from mountlimit.model import Drive
from mountlimit.plates import solve
from mountlimit.resolve import resolve

CURRENTS = np.array([5.0, 60.0, 500.0])
BARE = {"motor__mass": "0.05 kg", "frame__member": "rigid"}
ANGLE = {
    **WELDED, "mount__form": "welded angle", "mount__foot_depth": "50 mm", "fixings__weld_sides": None,
}  # fmt: skip
GUSSETS = {
    "mount__form": "angle", "mount__heel_to_bolts": "35 mm", "mount__material": "s235",
    "mount__thickness": "5 mm", "mount__width": "140 mm", "mount__gussets": 2,
    "mount__gusset_height": "45 mm", "mount__gusset_depth": "60 mm",
}  # fmt: skip


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


def turn(drive: Drive, degrees: float) -> np.ndarray:
    """Give the turn of the motor on mount and joint, rad per newton of shaft load."""
    part = plate_response.displacements_of(drive, structure.unit_load(math.radians(degrees)))[0]
    return np.array([float(t) for t in part.turn])


def lean(drive: Drive, degrees: float) -> float:
    """Give the lean along the chain line of mount and joint, rad per newton of shaft load."""
    found = turn(drive, degrees)
    return abs(float(rigid.lean_along_chain(found[0], found[1], math.radians(degrees))))


def apart_from_full(drive: Drive, degrees: float, contact_pitch: float = 1.0) -> dict[str, float]:
    """Give how far the answers are from the unreduced plate model, each over its own largest."""
    unit = structure.unit_load(math.radians(degrees))
    model = plate_route.as_it_bears(drive)
    if contact_pitch != 1.0:
        finer = [replace(c, pitch=c.pitch * contact_pitch) for c in model.contacts]
        model = replace(model, contacts=finer)
    point = np.array([0.0, 0.0, float(drive.shaft.face_overhang)])
    force = [math.cos(math.radians(degrees)), math.sin(math.radians(degrees)), 0.0]
    full = solve(model).response(np.r_[force, np.zeros(3)], point)
    ours = plate_response.solve(drive, unit)
    found = {"turn": _apart(ours.displacements[0].turn, full.rotation)}
    if drive.mount.welds:
        found["weld force"] = _apart([f for f, _ in ours.welds], full.weld_force)
        found["weld moment"] = _apart([m for _, m in ours.welds], full.weld_moment)
    settled = ours.plates
    if model.section_lines:
        rows = settled.groups[0][0].reading("line").rows @ settled.shares[0][0]
        line = full.line
        found["line stress"] = _apart(rows, np.hstack([line.membrane, line.bending]))
    return found


def _apart(ours: Any, theirs: Any) -> float:
    a, b = np.asarray(ours, float), np.asarray(theirs, float)
    return float(np.max(np.abs(a - b)) / np.max(np.abs(b)))


def message(**changes: Any) -> str:
    """Give the one line that a broken file is refused with."""
    try:
        resolve(file_of(**changes))
    except InputError as error:
        lines = str(error).splitlines()
        assert len(lines) == 1, lines
        return lines[0]
    raise AssertionError("no mistake was found")
