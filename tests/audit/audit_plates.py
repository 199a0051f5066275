"""The mounts of the audit, drawn by number, and what the pipeline's own plate model says of them."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Any

import draw
import numpy as np
import shapely
from shapely.geometry import LineString, Point

from conftest import toml_text
from mountlimit import evaluate, loads, plate_stress, respond, sections
from mountlimit.case import Case, Loads
from mountlimit.drivefile import DriveFile, parse
from mountlimit.errors import InputError
from mountlimit.model import Drive
from mountlimit.mounts._common import FRAME_FACE
from mountlimit.plate_route import with_plates
from mountlimit.plates import Facet, PlateModel
from mountlimit.resolve import resolve
from mountlimit.worked import Value

DEGREES = (
    0.0,
    90.0,
    -90.0,
)  # of the pull in the plane of the chain: across, away, towards the frame
SIGNS = (1.0, -1.0)  # of the torque
LEFT_OUT = (
    "mount.softness",
    "mount.local_stress",
    "mount.warping_held",
    "mount.route",
    "shaft.outboard",
)
MESHED: Any = object()  # stands for a reduced model that is not asked anything
FIRST = 500_000  # numbers that no other run of random drives uses
EACH = 1000  # numbers kept for one form
ALL_OVER = "2 m"  # a face on which every mount bears wherever it lies


@dataclass
class Drawn:
    """A drive of the audit with its plate model, and its six loads."""

    form: str
    number: int
    drive: Drive
    loads: Loads
    wrenches: np.ndarray  # (6 loads, 6) at the motor's centre

    @property
    def model(self) -> PlateModel:
        """Give the plate model the pipeline laid out."""
        return self.drive.plates.family.model

    @property
    def for_solids(self) -> PlateModel:
        """Give the model less what a solid body gives by itself.

        The pipeline's contact holds the plate's own squeezing, thickness over modulus, which plates do
        not have. A body pressed on one face and held over its depth is squeezed by 3/8 of that between
        face and middle (pressure falling to nothing at the far face), so that much is taken out; all of it
        in a seam's butt, whose plates are squeezed on both sides of it.
        """
        model = self.model
        return replace(
            model,
            contacts=[replace(c, stiffness=_hard(c.stiffness, [model.facets[c.facet]], 3.0 / 8.0)) for c in model.contacts],
            seams=[
                replace(s, contact_stiffness=_hard(s.contact_stiffness, [model.facets[i] for i in s.facets], 1.0))
                for s in model.seams
            ],
        )  # fmt: skip

    @property
    def overhang(self) -> float:
        """Give how far the sprocket lies from the motor's face."""
        return float(self.drive.shaft.face_overhang)


def _hard(pressing: float, facets: list[Facet], share: float) -> float:
    """Give a pressed face's stiffness without a share of the plates' own squeezing."""
    left = 1.0 / pressing - share * max(f.thickness / f.elastic_modulus for f in facets)
    return min(FRAME_FACE, 1.0 / left) if left > 0.0 else FRAME_FACE


def numbers(form: str, first: int = FIRST) -> range:
    """Give the numbers that are tried for a form, in order."""
    start = first + EACH * list(draw.LAYOUTS).index(form)
    return range(start, start + EACH)


def drawn(form: str, number: int, face: str = ALL_OVER) -> Drawn | None:
    """Give the drive of a number, on a frame's face of a width; None where the program refuses the file.

    What would replace the plate model, or hide its softness, is taken out of the file.
    """
    try:
        file = with_plates(_file(form, number, face))
        drive = resolve(file)
    except InputError:
        return None
    if drive.plates is None:
        return None  # the file says beams, and no plate model stands behind it
    if drive.shaft.outboard is not None:
        return None
    return Drawn(form, number, drive, *_loads(drive))


def ratios(form: str, number: int) -> dict[str, tuple[float, float, float]]:
    """Give the program's own ratios of a drive, low, likely and high, without meshing it."""
    return _ratios(resolve(replace(_file(form, number), plates=MESHED)))


def _ratios(drive: Drive) -> dict[str, tuple[float, float, float]]:
    found = {r.key: (r.low, r.likely, r.high) for r in drive.ranges}
    usual = (1.0, 1.0, 1.0)
    return {k: found.get(f"mount.{k}", usual) for k in ("softness", "local_stress")}


def _file(form: str, number: int, face: str = ALL_OVER) -> DriveFile:
    """Give the drive file of a number; an outline bolted beside the motor has no face of the frame member."""
    keys = draw.drive(number, (form,))
    kept = {
        k: v for k, v in keys.items() if k not in LEFT_OUT and not k.startswith("shaft.outboard")
    }
    solved = {"mount.heel_bears_from": "0 mm", "frame.face_width": face}
    kept |= {k: v for k, v in solved.items() if k in draw.fields_for(form)}
    file = parse(toml_text(draw.nested(kept)).encode(), f"audit {number}")
    try:
        resolve(file)
    except InputError as error:
        if not any(m.key == "frame.face_width" for m in error.mistakes):
            raise
        del kept["frame.face_width"]
        file = parse(toml_text(draw.nested(kept)).encode(), f"audit {number}")
    return file


def _loads(drive: Drive) -> tuple[Loads, np.ndarray]:
    """Give the pipeline's pull at one current, in three directions with both signs of torque.

    Without the motor's weight, which the pipeline takes off the lean; everything is then
    proportional to the current, whose choice changes nothing.
    """
    as_modelled = Value(
        1.0, "mount.softness", "given", "audit: the loads are not to hang on a guard"
    )
    bare = replace(drive, mount=replace(drive.mount, softness=as_modelled))
    whole = loads.at(drive, np.array([50.0]), evaluate.give_of(bare))
    at = next(i for i, group in enumerate(whole.groups) if group == "pull")
    pull = float(np.broadcast_to(whole.shaft_load, (len(whole.groups), 1))[at, 0])
    torque = abs(float(np.broadcast_to(whole.stator_torque, (len(whole.groups), 1))[at, 0]))
    cases = [(math.radians(a), s) for a in DEGREES for s in SIGNS]
    angle, sign = (np.array(x)[:, None] for x in zip(*cases, strict=True))
    six = replace(
        whole, names=tuple(f"pull {a:g} {s:+g}" for a in DEGREES for s in SIGNS), groups=("pull",) * 6,
        shaft_load=np.full((6, 1), pull), stator_torque=torque * sign, pull_angle=angle,
        weight=(0.0, 0.0, 0.0), outboard=0.0, torque=np.full((6, 1), torque),
    )  # fmt: skip
    found = np.zeros((6, 6))
    for i, (a, s) in enumerate(cases):
        force = pull * np.array([math.cos(a), math.sin(a), 0.0])
        arm = np.array([0.0, 0.0, float(drive.shaft.face_overhang)])
        found[i] = np.r_[force, np.cross(arm, force) + np.array([0.0, 0.0, torque * s])]
    return six, found


@dataclass
class Places:
    """Where the pipeline reads stress: facet, place on it, and whether round a bolt or along a line."""

    facet: np.ndarray
    place: np.ndarray
    kind: np.ndarray


def plates_say(mount: Drawn) -> tuple[dict[str, Any], Places]:
    """Give the pipeline's figures for the six loads, and where it reads stress."""
    drive = mount.drive
    response = respond.solve(drive, mount.loads)
    settled = response.plates
    wrench = np.stack(
        [np.broadcast_to(np.asarray(x, float), settled.shape).ravel() for x in settled.loads],
        axis=1,
    )
    assert np.allclose(wrench, mount.wrenches, rtol=1e-9, atol=1e-6 * np.abs(wrench).max())
    (answer, _), (shares,) = settled.groups[0], settled.shares
    motor = answer.motor @ shares.T
    bolts = response.bolts
    kinds = ("ring", "line")
    stress = [_mises(answer.reading(k).rows, shares) for k in kinds]
    samples = [answer.reading(k).samples for k in kinds]
    case = Case(drive=drive, loads=mount.loads, response=response)
    cuts = [
        np.broadcast_to(np.asarray(s, float), settled.shape).ravel()
        for _, s in sections.stresses(case)
    ]
    facet = np.concatenate([s.facet for s in samples])
    local = np.zeros((len(facet), 2))
    for i, f in enumerate(mount.model.facets):
        own = facet == i
        local[own] = f.to_plane(np.concatenate([s.place for s in samples])[own])
    kind = np.repeat(kinds, [len(s.facet) for s in samples])
    peaks = plate_stress.peaks(case, sections.plane_yielding, kinds)
    largest = np.concatenate(stress).max(axis=0) if len(facet) else np.zeros(6)
    alike = (
        float(drive.mount.material.compressive_over_tensile) == 1.0
    )  # then the criterion is von Mises
    if peaks and alike and drive.mount.second is None:
        again = np.max([np.ravel(np.broadcast_to(p.stress, settled.shape)) for p in peaks], axis=0)
        same = np.allclose(again, largest, rtol=1e-6)  # it is what the check compares
        if not same:
            print(mount.form, mount.number, "the check compares", again, "of", largest, flush=True)
    return {
        **motion(mount, motor.T),
        "stress": np.concatenate(stress),
        "cut": np.max(cuts, axis=0) if cuts else np.zeros(6),
        "tension": np.array([np.broadcast_to(t, settled.shape).ravel() for t in bolts.tension]).reshape(-1, 6),
        "shear": np.array([np.broadcast_to(t, settled.shape).ravel() for t in bolts.shear]).reshape(-1, 6),
    }, Places(facet, local, kind)  # fmt: skip


def motion(mount: Drawn, motor: np.ndarray) -> dict[str, Any]:
    """Give lean along the pull, and movement of the sprocket along it, from the motor's (loads, 6)."""
    angle = np.radians(np.repeat(DEGREES, len(SIGNS)))
    lean = motor[:, 4] * np.cos(angle) - motor[:, 3] * np.sin(angle)
    moved = motor[:, :3] + np.cross(motor[:, 3:], [0.0, 0.0, mount.overhang])
    along = moved[:, 0] * np.cos(angle) + moved[:, 1] * np.sin(angle)
    return {"tilt": lean, "move": along, "roll": motor[:, 5]}


def _mises(rows: np.ndarray, shares: np.ndarray) -> np.ndarray:
    """Give the larger von Mises stress of both faces, (places, loads)."""
    stress = rows @ shares.T
    return mises(np.moveaxis(stress, 1, 2))


def mises(parts: np.ndarray) -> np.ndarray:
    """Give the larger von Mises stress of both faces from mean and linear part, (..., 6)."""
    found = []
    for side in (1.0, -1.0):
        x, y, xy = np.moveaxis(parts[..., :3] + side * parts[..., 3:], -1, 0)
        found.append(np.sqrt(x**2 - x * y + y**2 + 3.0 * xy**2))
    return np.maximum(*found)


def sizes_of(mount: Drawn) -> dict[str, Any]:
    """Give the ratios by which mounts are told apart."""
    model, drive = mount.model, mount.drive
    motor = model.motor_bolts[0]
    plate = model.facets[motor.facet]
    ring = 0.5 * (motor.washer_diameter - motor.hole_diameter)
    held = [
        Point(b.centre).buffer(b.washer_diameter / 2)
        for b in model.frame_bolts
        if b.facet == motor.facet
    ]
    held += [LineString([w.start, w.end]) for w in model.welds if w.facet == motor.facet]
    held += [Point(np.asarray(s.centre)).buffer(s.diameter / 2) for s in model.spacers]
    held += _lines_on(model, motor.facet)
    discs = shapely.union_all(
        [Point(b.centre).buffer(b.washer_diameter / 2) for b in model.motor_bolts]
    )
    span = float(discs.distance(shapely.union_all(held))) if held else math.nan
    outline = np.ptp(np.asarray(plate.outline, float), axis=0)
    frame = [(b.washer_diameter - b.hole_diameter) / 2 for b in model.frame_bolts]
    return {
        "thickness": plate.thickness, "modulus": plate.elastic_modulus, "ring": ring,
        "frame_ring": min(frame) if frame else None, "span": span, "motor_bolts": len(model.motor_bolts),
        "width": float(outline[0]), "height": float(outline[1]), "facets": len(model.facets),
        "least_thickness": min(f.thickness for f in model.facets),
        **_ratios(drive),
    }  # fmt: skip


def _lines_on(model: PlateModel, facet: int) -> list[LineString]:
    from audit_shape import corners

    plate = model.facets[facet]
    return [LineString(plate.to_plane(c.ends)) for c in corners(model) if facet in c.facets]
