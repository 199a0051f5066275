"""Invented true mounts for the pull test: stiffness the file knows nothing of, by a finer model of its own.

The truth is the plate engine's full solution (not the reduced one) on a finer mesh with closer contact points,
its uncertain inputs drawn anywhere in their ranges, its plates and joints softer or stiffer by a hidden
factor, on a frame that turns and moves by a compliance drawn apart from the drive's frame member.
"""

from __future__ import annotations

import math
import random
from dataclasses import dataclass, replace

import numpy as np

from mountlimit import plate_route, pulled, shaft_line, structure
from mountlimit.drivefile import DriveFile
from mountlimit.model import Drive
from mountlimit.plates import PlateModel, solve
from mountlimit.plates.mesh import default_size
from mountlimit.resolve import resolve

MESH, PITCH = 0.65, 0.75  # of the element size and the spacing of contact points the program takes
HIDDEN = (0.6, 3.0)  # true give of the plates over that of the file's numbers
JOINTS = (0.3, 3.0)  # stiffness of bolted points and bearing face, likewise
MEMBER = (0.5, 2.0)  # give of the frame member, likewise
SWAY = 0.5  # most that the frame's own compliance adds to movement or lean, of that of the mount


@dataclass(frozen=True)
class Truth:
    """How the true mount, joint and frame move under the pull, and the shaft alone."""

    move: float  # m, along the pull
    lean: float  # rad
    sag: float
    slope: float


def draw_inputs(drive: Drive, chance: random.Random) -> dict[str, float]:
    """Draw every uncertain input of the drive from its range."""
    left_out = ("pull_test.", "torque_test.", "mount.softness")
    return {
        r.key: chance.triangular(r.low, r.high, r.likely)
        for r in drive.ranges
        if r.low < r.high and not r.key.startswith(left_out)
    }


def hidden_model(model: PlateModel, chance: random.Random) -> PlateModel:
    """Give the model with the hidden factors and closer contact points."""
    soft, stiff = (math.exp(chance.uniform(*map(math.log, r))) for r in (HIDDEN, JOINTS))
    facets = [
        replace(f, elastic_modulus=f.elastic_modulus / soft,
                shear_modulus=None if f.shear_modulus is None else f.shear_modulus / soft)
        for f in model.facets
    ]  # fmt: skip
    bolts = [
        replace(b, normal_stiffness=b.normal_stiffness * stiff, tangential_stiffness=b.tangential_stiffness * stiff)
        for b in model.frame_bolts
    ]  # fmt: skip
    contacts = [
        replace(c, stiffness=c.stiffness * stiff, pitch=None if c.pitch is None else PITCH * c.pitch)
        for c in model.contacts
    ]  # fmt: skip
    return replace(model, facets=facets, frame_bolts=bolts, contacts=contacts)


def truth_of(file: DriveFile, force: float, angle: float, chance: random.Random) -> Truth:
    """Give how a hidden true drive behind a file moves under a pull (N) along an angle."""
    base = resolve(replace(file, plates=None))
    drive = resolve(replace(file, plates=None), draw_inputs(base, chance))
    load = pulled.loads_of(drive, force, angle)
    model = hidden_model(plate_route.as_it_bears(drive), chance)
    solution = solve(model, MESH * default_size(model))
    point = np.array([0.0, 0.0, float(drive.shaft.face_overhang)])
    centre = np.array([0.0, 0.0, -float(drive.motor.centre_of_mass)])
    weight = np.r_[[float(w) for w in load.weight], 0.0, 0.0, 0.0]
    pull = force * np.array([math.cos(angle), math.sin(angle), 0, 0, 0, 0])
    hung = solution.response(np.zeros(6), point, [(weight, centre)])
    both = solution.response(pull, point, [(weight, centre)])
    move, turn = both.displacement - hung.displacement, both.rotation - hung.rotation
    gone = float(move @ pull[:3]) / force
    m, n = _on_frame(drive, load, pull[:3], point, gone, _lean(turn, angle), angle, chance)
    move, turn = move + m, turn + n
    bent = shaft_line.at_sprocket(drive, load)
    sag, slope = (float(v) for v in pulled.along([bent], angle))
    along = float(move[0] * math.cos(angle) + move[1] * math.sin(angle))
    return Truth(move=along, lean=_lean(turn, angle), sag=sag, slope=slope)


def _lean(turn: np.ndarray, angle: float) -> float:
    return float(turn[1] * math.cos(angle) - turn[0] * math.sin(angle))


def _on_frame(
    drive: Drive, load: object, pull: np.ndarray, point: np.ndarray, gone: float, lean: float,
    angle: float, chance: random.Random,
) -> tuple[np.ndarray, np.ndarray]:  # fmt: skip
    """Give what the frame adds: its member by another give, and a compliance of its own at the bolts."""
    move, turn = np.zeros(3), np.zeros(3)
    if drive.frame.span is not None:
        part = structure.frame_part(drive, replace(load, weight=(0.0, 0.0, 0.0)))
        c = math.exp(chance.uniform(*map(math.log, MEMBER)))
        move, turn = (c * np.array([float(v) for v in x]) for x in (part.move, part.turn))
    arm = point - np.array([float(v) for v in drive.mount.plane.centre])
    turned = np.array([chance.random() for _ in range(3)]) * np.cross(arm, pull)
    shifted = (
        chance.uniform(0.0, 0.3)
        * np.linalg.norm(np.cross(turned, arm))
        * pull
        / np.linalg.norm(pull)
    )
    swayed = np.cross(turned, arm) + shifted
    most = min(
        abs(lean / _lean(turned, angle)), abs(gone / np.dot(swayed, pull)) * np.linalg.norm(pull)
    )
    share = chance.uniform(0.0, SWAY) * most
    return move + share * swayed, turn + share * turned
