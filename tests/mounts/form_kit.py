"""Shared by tests of mount forms: files of a form, its lean, its limits, the full model, one-line mistakes."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache
from typing import Any

import numpy as np
from click.testing import CliRunner

from conftest import changed, toml_text
from mountlimit import evaluate, limits, plate_response, plate_route, structure
from mountlimit.cli import main
from mountlimit.drivefile import DriveFile, parse
from mountlimit.formulas import rigid
from mountlimit.model import Drive
from mountlimit.plates import PlateModel, PlateResponse, solve
from mountlimit.resolve import resolve

CURRENTS = np.array([2.0, 60.0, 400.0])
ON_SPROCKET = ((1000.0, 0.0), (0.0, -1000.0), (700.0, 700.0))  # N across and along, at the sprocket


def file_of(base: dict[str, Any], **changes: Any) -> DriveFile:
    """Read a form's base drive with changes."""
    return parse(toml_text(changed(**{**base, **changes})).encode(), "test.toml")


def plated(base: dict[str, Any], **changes: Any) -> Drive:
    """Resolve it with its plate model."""
    return resolve(plate_route.with_plates(file_of(base, **changes)))


def worst_balance(base: dict[str, Any], **changes: Any) -> float:
    """Give the largest unbalanced share of the load over all load cases and currents."""
    response = evaluate.case_at(plated(base, **changes), CURRENTS).response
    return float(np.max(response.balance))


def lean(drive: Drive, degrees: float, torque: float = 0.0) -> float:
    """Give the lean along the chain line of mount and joint, rad for a newton of shaft load."""
    angle = math.radians(degrees)
    part = plate_response.displacements_of(drive, structure.unit_load(angle, torque))[0]
    return abs(float(rigid.lean_along_chain(part.turn[0], part.turn[1], angle)))


def own_lean(drive: Drive, degrees: float) -> float:
    """Give the same of the model itself, without the allowance for what it leaves out."""
    return lean(drive, degrees) / float(drive.mount.softness)


@cache
def _safe(text: str) -> dict[str, float]:
    found = limits.find(parse(text.encode(), "test.toml")).limits
    return {x.check.name: x.safe for x in found if x.current_kind != "continuous"}


def safe_limits(base: dict[str, Any], **changes: Any) -> dict[str, float]:
    """Give the safe currents of the peak setting."""
    return _safe(toml_text(changed(**{**base, **changes})))


def full_answer(model: PlateModel, overhang: float, fx: float, fy: float) -> PlateResponse:
    """Give the answer of the whole, unreduced plate model to a force at the sprocket."""
    return solve(model).response(np.array([fx, fy, 0, 0, 0, 0]), np.array([0, 0, overhang]))


def apart_from_full(drive: Drive) -> float:
    """Give the largest difference of the drive's own turn and the unreduced model's, as a share."""
    plain = replace(drive, mount=replace(drive.mount, softness=1.0))
    overhang, worst = float(drive.shaft.face_overhang), 0.0
    solution = solve(plate_route.as_it_bears(drive))
    for degrees in (0.0, 90.0, 225.0):
        angle = math.radians(degrees)
        load = structure.unit_load(angle)
        ours = np.array(plate_response.displacements_of(plain, load)[0].turn, float)
        wrench = np.array([math.cos(angle), math.sin(angle), 0, 0, 0, 0])
        full = solution.response(wrench, np.array([0, 0, overhang])).rotation
        worst = max(worst, float(np.max(np.abs(ours - full)) / np.max(np.abs(full))))
    return worst


def message(tmp_path: Any, base: dict[str, Any], **changes: Any) -> str:
    """Run ``mountlimit check`` on a broken file; give its one line."""
    path = tmp_path / "drive.toml"
    path.write_text(toml_text(changed(**{**base, **changes})))
    result = CliRunner().invoke(main, ["check", str(path)])
    assert result.exit_code == 2, result.output
    assert "Traceback" not in result.stderr
    lines = result.stderr.strip().splitlines()
    assert len(lines) == 1, result.stderr
    return str(lines[0])
