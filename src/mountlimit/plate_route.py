"""The plate route: how much softer or stiffer the mount is by the plate model than by beams.

The mount form lays out its facets (``plates`` in its file): washers as springs in series with the
pressure cone of the mount's own material, the motor tied to its bolts, the frame pushing but not
pulling.  The model is solved for a pull across and for a pull along, both ways that occur, with the
torque either way; the give of mount and joint over that of the section route becomes
``mount.twist_softness`` and ``mount.bend_softness`` of the drive file, so the plate model governs
the lean of the sprocket while every other step stays the one a checker can redo.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np

from . import structure
from .drivefile import DriveFile, Given
from .formulas import joint as joint_formulas
from .formulas import sprocket
from .model import Drive
from .mounts import FORMS
from .picking import PLATE_TEXT
from .plates import Contact, PlateError, PlateModel, PlateSolution, solve
from .resolve import resolve
from .worked import Value

TANGENTIAL_SHARE = 0.5  # of a bolted point's normal stiffness (common practice, no source)
FRAME_FACE = 2.0e12  # N/m3, contact of metal on metal (common practice, no source)
# 8 % against solid elements in tilt, and the spread with the pitch of the contact points:
BAND = 0.10
CONTACT_POINTS = 18  # about, over the bearing surface
KEYS = ("mount.twist_softness", "mount.bend_softness")
KEPT = 256  # ratios remembered in one process
SMALL = 0.02  # a direction that hardly pulls this way does not count


@dataclass(frozen=True, slots=True, kw_only=True)
class Softness:
    """Give of mount and joint by plates over beams, pull across and pull along."""

    twist: float
    bend: float
    triangles: int


_known: dict[str, Softness] = {}


def model_of(drive: Drive) -> PlateModel:
    """Lay out the plate model of a drive's mount."""
    material, fixings = drive.mount.material, drive.fixings
    cone = joint_formulas.frustum_stiffness(
        float(material.elastic_modulus), float(fixings.bolts.thread.diameter),
        float(drive.mount.thickness), float(fixings.washer_diameter),
    )  # fmt: skip
    normal = float(joint_formulas.spring_series(float(fixings.joint_stiffness), float(cone)))
    through = float(material.elastic_modulus) / float(drive.mount.thickness)
    pressing = FRAME_FACE * through / (FRAME_FACE + through)
    tangential = TANGENTIAL_SHARE * normal
    model: PlateModel = FORMS[drive.mount.form].plates(drive, normal, tangential, pressing)
    return replace(model, contacts=[_spaced(model, c) for c in model.contacts])


def _spaced(model: PlateModel, contact: Contact) -> Contact:
    """Give a contact with about as many points whatever its size: each costs a solved column."""
    outline = model.facets[contact.facet].outline if contact.region is None else contact.region
    area = float(np.prod(np.ptp(np.asarray(outline, float), axis=0)))
    return replace(contact, pitch=math.sqrt(area / CONTACT_POINTS))


def solution_of(drive: Drive) -> PlateSolution:
    """Solve a drive's plate model.

    Raises
    ------
    PlateError
        when the mount cannot be meshed as it is given.
    """
    return solve(model_of(drive))


def softness_of(drive: Drive) -> Softness:
    """Compare plates with beams for the ways this chain pulls. Raises as ``solution_of``.

    The ratios of a drive met before are given again without solving.
    """
    plain = replace(
        drive, mount=replace(drive.mount, twist_softness=_one(KEYS[0]), bend_softness=_one(KEYS[1]))
    )
    sines = [math.sin(float(angle)) for _, angle in drive.chain.pulls]
    along = sorted({math.copysign(1.0, s) for s in sines if abs(s) > SMALL} or {1.0, -1.0})
    key = repr((model_of(drive), along, float(drive.shaft.face_overhang), drive.mount.segments,
                float(drive.chain.chain.pitch), float(drive.chain.driving_teeth)))  # fmt: skip
    if key not in _known:
        solution = solution_of(drive)
        # The forms are symmetric: either way across is the same.
        twist = _ratio(plain, solution, 0.0, 1)
        bend = max(_ratio(plain, solution, way * math.pi / 2, 0) for way in along)
        while len(_known) >= KEPT:
            _known.pop(next(iter(_known)))
        _known[key] = Softness(
            twist=twist, bend=bend, triangles=len(solution.system.mesh.triangles)
        )
    return _known[key]


def _one(key: str) -> Value:
    return Value(1.0, key, "derived", "section route")


def _ratio(drive: Drive, solution: PlateSolution, angle: float, axis: int) -> float:
    """Give plates over beams for the turn about one axis, the larger of both torque signs."""
    diameter = sprocket.pitch_diameter(drive.chain.chain.pitch, drive.chain.driving_teeth)
    radius = float(sprocket.smallest_effective_radius(diameter, drive.chain.driving_teeth))
    point = (0.0, 0.0, float(drive.shaft.face_overhang))
    found = []
    for torque in (radius, -radius):
        wrench = np.array([math.cos(angle), math.sin(angle), 0.0, 0.0, 0.0, torque])
        turned = float(solution.response(wrench, point).rotation[axis])
        parts = structure.displacements_of(drive, structure.unit_load(angle, torque))
        mount = parts[: len(drive.mount.segments) + 1]  # the segments, then the joint
        beams = sum(float(p.turn[axis]) for p in mount)
        found.append(abs(turned) / max(abs(beams), 1e-15))
    return max(found)


def with_plates(file: DriveFile) -> DriveFile:
    """Put the plate model behind a drive file; a file that asks for beams stays as it is.

    Where the mount cannot be meshed the section route is kept, its softer end on the safe side,
    and the reason is noted.
    """
    given = file.given
    route = given["mount.route"].value if "mount.route" in given else "plates"
    own = any(k in given and given[k].text != PLATE_TEXT for k in KEYS)
    if route == "sections" or own or "mount.warping_held" in given:
        return file
    bare = without_plates(file)
    try:
        found = softness_of(resolve(bare))
    except PlateError as error:
        note = f"No plate model of this mount ({error}); beams are used, their softer end on the safe side."
        return replace(bare, notes=(*bare.notes, note))
    return with_softness(bare, found.twist, found.bend)


def with_softness(file: DriveFile, twist: float, bend: float) -> DriveFile:
    """Put given ratios of plates over beams behind a drive file, with the band of the plate model."""
    changes = {
        key: Given(
            key=key, text=PLATE_TEXT, kind="ratio", value=v, low=v * (1 - BAND), high=v * (1 + BAND)
        )
        for key, v in zip(KEYS, (twist, bend), strict=True)
    }
    return replace(file, given={**file.given, **changes})


def without_plates(file: DriveFile) -> DriveFile:
    """Take the plate model's ratios out of a drive file, as before an edit of its mount."""
    kept = {k: g for k, g in file.given.items() if not (k in KEYS and g.text == PLATE_TEXT)}
    return replace(file, given=kept)
