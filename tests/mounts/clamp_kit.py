"""Shared by the tests of mounts clamped on a tube: their answers, and the full plate model."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import numpy as np
from click.testing import CliRunner

from conftest import BLOCK, SADDLE, changed, toml_text
from mountlimit import evaluate, limits, plate_response, plate_route, structure
from mountlimit.case import Displacement
from mountlimit.cli import main
from mountlimit.drivefile import DriveFile, parse
from mountlimit.formulas import rigid
from mountlimit.loads import case_list
from mountlimit.model import Drive
from mountlimit.plates import solve
from mountlimit.resolve import resolve

FORMS = {"saddle": SADDLE, "clamp block": BLOCK}
CURRENTS = np.array([5.0, 60.0, 500.0])


def text_of(form: str, **changes: Any) -> str:
    """Write the drive file of a form with changes."""
    return toml_text(changed(**{**FORMS[form], **changes}))


def file_of(form: str, **changes: Any) -> DriveFile:
    """Read the base drive in a form, with changes."""
    return parse(text_of(form, **changes).encode(), "test.toml")


def plated(file: DriveFile) -> Drive:
    """Resolve a file with its plate model."""
    return resolve(plate_route.with_plates(file))


def parts(drive: Drive, degrees: float) -> tuple[Displacement, ...]:
    """Give the movement from mount and frame under a newton of shaft load."""
    return plate_response.displacements_of(drive, structure.unit_load(math.radians(degrees)))


def lean(part: Displacement, degrees: float) -> float:
    """Give the lean along the chain line, rad."""
    angle = math.radians(degrees)
    return abs(float(rigid.lean_along_chain(part.turn[0], part.turn[1], angle)))


def worst_balance(file: DriveFile) -> float:
    """Give the largest unbalanced share of the load at every end of every uncertain input."""
    plates = plate_route.with_plates(file)
    found = []
    for item in resolve(plates).ranges:
        for value in (item.low, item.high):
            case = evaluate.case_at(resolve(plates, {item.key: value}), CURRENTS)
            found.append(float(np.max(case.response.balance)))
    return max(found)


def safe(form: str, **changes: Any) -> dict[str, float]:
    """Give the safe current of every check."""
    return {x.check.name: x.safe for x in limits.find(file_of(form, **changes)).limits}


def apart_from_full(drive: Drive) -> float:
    """Give how far the turn of the sprocket is from the unreduced plate model, as a share."""
    index = next(i for i, c in enumerate(case_list(drive)) if c[1] == "pull")
    loads = evaluate.case_at(drive, 60.0, index).loads
    loads = replace(loads, weight=(0.0, 0.0, 0.0))
    force, moment = structure.wrench(drive, loads, (0.0, 0.0, 0.0))
    point = np.array([0.0, 0.0, float(drive.shaft.face_overhang)])
    f, m = (np.array([float(x) for x in part]) for part in (force, moment))
    full = solve(plate_route.as_it_bears(drive)).response(np.r_[f, m - np.cross(point, f)], point)
    ours = np.array([float(t) for t in plate_response.solve(drive, loads).displacements[0].turn])
    return float(np.max(np.abs(ours - full.rotation)) / np.max(np.abs(full.rotation)))


def message(tmp_path: Any, form: str, **changes: Any) -> str:
    """Run ``mountlimit check`` on a broken file; give its one line."""
    path = tmp_path / "drive.toml"
    path.write_text(text_of(form, **changes))
    result = CliRunner().invoke(main, ["check", str(path)])
    assert result.exit_code == 2, result.output
    assert "Traceback" not in result.stderr
    lines = result.stderr.strip().splitlines()
    assert len(lines) == 1, result.stderr
    return str(lines[0])
