"""The plate route: the plate model that stands behind a drive file.

The mount form lays out its facets (``plates`` in its file): washers as springs in series with the
pressure cone of the mount's own material, the motor tied to its bolts, the frame pushing but not
pulling.  The model is laid out and reduced once, at the likely values of the file; every edit of an
uncertain input then only changes thickness, modulus and joint stiffness of the reduced model.  Inputs
that would move an edge of the plate a little (the assumed distance from bolts to the end) are held
at their likely value.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace

import numpy as np

from .bearing_face import as_bearing, bearing, on_face
from .drivefile import DriveFile
from .errors import InputError, Mistake
from .formulas import joint as joint_formulas
from .model import Drive, Number
from .mounting import Mount, Substance
from .mounts import FORMS
from .mounts._common import soft_face
from .plates import Answer, Contact, Family, PlateError, PlateModel, Scales, Varying, family
from .plates.model import IntArray
from .plates.thickness import snapshot_scales
from .resolve import resolve
from .worked import Value

TANGENTIAL_SHARE = 0.5  # of a bolted point's normal stiffness (common practice, no source)
CONTACT_POINTS = 30  # cells, about, over the bearing surface
SHARED = 2 / 3  # of them that a region keeps where several lie on one facet
KEPT = 12  # models remembered in one process, and answers of one model
WIDE = 30.0  # joint over modulus: a wider range takes a third snapshot
NUDGE = 1.001  # how thickness is moved to see which plates follow it


@dataclass(frozen=True, slots=True)
class Stiffnesses:
    """What the plate model takes from a drive, SI.

    Moduli, one bolted point, one screw, the first strut, the bearing face.
    """

    thickness: float
    modulus: float
    second: float
    normal: float
    screw: float
    strut: float
    pressing: float


@dataclass(frozen=True, kw_only=True)
class Route:
    """A reduced plate model and the stiffnesses it was laid out with."""

    family: Family
    base: Stiffnesses
    answers: dict[tuple[Scales, float, tuple[float, ...] | None], Answer] = field(
        default_factory=dict
    )
    governing: dict[tuple[object, ...], IntArray] = field(default_factory=dict)  # see plate_stress

    def answer(self, drive: Drive, held: bool = False) -> Answer:
        """Give the answers for a drive; ``held`` takes the creep modulus."""
        at = stiffnesses(drive, held)
        scales = Scales(
            thickness=at.thickness / self.base.thickness,
            modulus=at.modulus / self.base.modulus,
            second=at.second / self.base.second,
            joint=at.normal / self.base.normal,
            seam=at.screw / self.base.screw,
            strut=at.strut / self.base.strut,
        )
        key = (scales, at.pressing / self.base.pressing, bearing(self.family.model, drive))
        if key not in self.answers:
            while len(self.answers) >= KEPT:
                self.answers.pop(next(iter(self.answers)))
            self.answers[key] = self.family.at(*key)
        return self.answers[key]


_known: dict[str, Route] = {}


def stiffnesses(drive: Drive, held: bool = False) -> Stiffnesses:
    """Give modulus, bolted point and bearing face of a drive; ``held`` takes the creep modulus.

    Bolts and bearing face are those of the part the bolts of the first bolted plane go through.
    """
    mount, fixings = drive.mount, drive.fixings
    plane = next((p for p in mount.planes if p.bolts), None)
    thickness = float(plane.thickness if plane else mount.thickness)
    clamped = _modulus(mount.substance(plane.of_second if plane else False), held)
    cone = joint_formulas.frustum_stiffness(
        clamped, float(fixings.body_diameter), thickness, float(fixings.washer_diameter)
    )
    modulus = _modulus(mount.material, held)
    crept = modulus / float(mount.material.elastic_modulus)
    return Stiffnesses(
        thickness=float(mount.thickness),
        modulus=modulus,
        second=1.0 if mount.second is None else _modulus(mount.second, held),
        screw=1.0 if mount.screws is None else crept * float(mount.screws.axial_stiffness),
        strut=float(mount.rods[0].stiffness) if mount.rods else 1.0,
        normal=float(joint_formulas.spring_series(float(fixings.joint_stiffness), cone)),
        pressing=soft_face(clamped / thickness),
    )


def _modulus(material: Substance, held: bool) -> float:
    return float(material.creep_modulus if held else material.elastic_modulus)


def model_of(drive: Drive) -> PlateModel:
    """Lay out the plate model of a drive's mount."""
    at = stiffnesses(drive)
    tangential = TANGENTIAL_SHARE * at.normal
    model: PlateModel = FORMS[drive.mount.form].plates(drive, at.normal, tangential, at.pressing)
    return on_face(replace(model, contacts=[_spaced(model, c) for c in model.contacts]), drive)


def as_it_bears(drive: Drive) -> PlateModel:
    """Lay out the same with only those pieces of its contacts that bear on the drive, to be solved in full."""
    return as_bearing(model_of(drive), drive)


def _spaced(model: PlateModel, contact: Contact) -> Contact:
    """Give a contact with about as many points whatever its size: each costs a solved column.

    Regions of one facet share them, but each keeps two thirds of what one alone would have.
    """
    own = [_area(model, c) for c in model.contacts if c.facet == contact.facet]
    points = CONTACT_POINTS * max(1.0, SHARED * len(own))
    return replace(contact, pitch=math.sqrt(sum(own) / points))


def _area(model: PlateModel, contact: Contact) -> float:
    outline = model.facets[contact.facet].outline if contact.region is None else contact.region
    return float(np.prod(np.ptp(np.asarray(outline, float), axis=0)))


def with_plates(file: DriveFile, thicknesses: tuple[float, float] | None = None) -> DriveFile:
    """Put the plate model behind a drive file; a file that asks for beams stays as it is.

    Parameters
    ----------
    thicknesses : least and largest [m]
        range the model must answer for, when the thickness is to be changed

    Raises
    ------
    InputError
        when the mount cannot be meshed and its form has no section route
    """
    given = file.given
    if file.plates is not None and thicknesses is None:
        return file
    wants_beams = "mount.route" in given and given["mount.route"].value == "sections"
    drive = resolve(replace(file, plates=None))
    beams = bool(drive.mount.segments)
    if wants_beams and not beams:
        form = drive.mount.form
        words = f"no beam holds for the form '{form}': it is worked out by the plate model alone"
        raise InputError([Mistake(file.name, "mount.route", "'sections'", words, "leave it out")])
    if beams and (wants_beams or "mount.warping_held" in given):
        return replace(file, plates=None)
    try:
        return replace(file, plates=_route(file, drive, thicknesses))
    except PlateError as error:
        if not beams:
            raise InputError([Mistake(file.name, "mount", "", str(error))]) from None
        note = f"No plate model of this mount ({error}); beams are used, their softer end on the safe side."
        return replace(file, plates=None, notes=(*file.notes, note))


def _route(file: DriveFile, drive: Drive, thicknesses: tuple[float, float] | None) -> Route:
    model = model_of(drive)
    base = stiffnesses(drive)
    low, high = _joint_range(drive, base)
    key = repr(
        (
            model,
            drive.mount.second_facets,
            thicknesses,
            round(math.log(low), 1),
            round(math.log(high), 1),
        )
    )
    if key not in _known:
        varying = _varying(file, drive, model, thicknesses is not None)
        shots = _snapshots(base, low, high, thicknesses, _link_range(drive))
        found = family(model, varying, shots)
        while len(_known) >= KEPT:
            _known.pop(next(iter(_known)))
        _known[key] = Route(family=found, base=base)
    return _known[key]


def _joint_range(drive: Drive, base: Stiffnesses) -> tuple[float, float]:
    """Give the least and largest joint stiffness over modulus, both over the likely ones."""
    ranges = {r.key: r for r in drive.ranges}
    material = drive.mount.material
    moduli = [base.modulus, float(material.creep_modulus)]
    if "mount.elastic_modulus" in ranges:
        own = ranges["mount.elastic_modulus"]
        moduli += [own.low, own.high, own.low * moduli[1] / moduli[0]]
    joints = [float(drive.fixings.joint_stiffness)]
    if "fixings.joint_stiffness" in ranges:
        joints += [ranges["fixings.joint_stiffness"].low, ranges["fixings.joint_stiffness"].high]
    cone = 1.0 / (1.0 / base.normal - 1.0 / joints[0])
    found = []
    for modulus in moduli:
        share = modulus / base.modulus
        found += [1.0 / (1.0 / joint + 1.0 / (cone * share)) / share for joint in joints]
    return min(found) / base.normal, max(found) / base.normal


def _link_range(drive: Drive) -> tuple[float, float] | None:
    """Give the least and largest stiffness of screws or struts over the likely one; None without."""
    mount, ranges = drive.mount, {r.key: r for r in drive.ranges}
    keys = ["mount.screw_stiffness"] if mount.screws else []
    keys += ["mount.strut_joint_stiffness"] if mount.rods else []
    found = [1.0 for _ in keys]
    for key in keys:
        if key in ranges:
            found += [ranges[key].low / ranges[key].likely, ranges[key].high / ranges[key].likely]
    return (min(found), max(found)) if found else None


def _snapshots(
    base: Stiffnesses, low: float, high: float, thicknesses: tuple[float, float] | None,
    links: tuple[float, float] | None,
) -> list[Scales]:  # fmt: skip
    """Give where the model is solved in full; over thickness, joint and links go through theirs too."""
    count = 2 if high / low < WIDE and links is None else 3
    joints = snapshot_scales(low, high, count)
    ways = np.ones(1) if links is None else snapshot_scales(*links, count)
    turned = np.roll(ways, 1)  # not stiff with stiff and soft with soft only
    if thicknesses is None:
        many = max(len(joints), len(ways))
        places = np.ones(many)
    else:
        ends = [t / base.thickness for t in thicknesses]
        places = snapshot_scales(ends[0], ends[1], 6 if ends[1] / ends[0] > 2.0 else 3)
    found = []
    for i, t in enumerate(places):
        link = float(turned[i % len(turned)])
        joint = float(joints[i % len(joints)])
        found.append(Scales(thickness=float(t), joint=joint, seam=link, strut=link))
    return found


def _varying(file: DriveFile, drive: Drive, model: PlateModel, thickness: bool) -> Varying:
    """Tell which facets follow the mount's thickness and its modulus: by moving each a little."""
    mount = drive.mount
    modulus = _moved(model, drive, replace(mount, material=_stiffer(mount.material)))
    second = [False] * len(modulus)
    if mount.second is not None:
        second = _moved(model, drive, replace(mount, second=_stiffer(mount.second)))
    thick = [False] * len(modulus)
    if thickness:
        t = float(drive.mount.thickness) * NUDGE
        other = model_of(resolve(replace(file, plates=None), {"mount.thickness": t}))
        thick = [a.thickness != b.thickness for a, b in _pairs(model, other)]
    return Varying(thickness=np.array(thick), modulus=np.array(modulus), second=np.array(second))


def _moved(model: PlateModel, drive: Drive, mount: Mount) -> list[bool]:
    """Tell which facets have another modulus in an edited mount."""
    other = model_of(replace(drive, mount=mount))
    return [a.elastic_modulus != b.elastic_modulus for a, b in _pairs(model, other)]


def _stiffer(material: Substance) -> Substance:
    return replace(
        material, elastic_modulus=_nudged(material.elastic_modulus),
        shear_modulus=_nudged(material.shear_modulus),
    )  # fmt: skip


def _nudged(value: Number) -> Value:
    return Value(float(value) * NUDGE, "nudged", "derived")


def _pairs(one: PlateModel, two: PlateModel) -> list[tuple[Number, Number]]:
    return list(zip(one.facets, two.facets, strict=True))
