"""Flat plate of the user's own shape, with its own holes, by points or from a DXF drawing.

Axes as in DEVELOPERS.md; the plate fills z = 0 to t, motor and frame lie behind it.  Frame bolts
below the motor's (towards the frame), above them, and each one beside them are a bolt plane of
their own, with a bearing face of their own; the frame member of the file stands for the part under
the first plane and takes the whole load.  There are no beams: the plate model alone works it out.
Named cuts run straight across, through the rows nearest the motor and the motor's bolts nearest
those; bolts beside the motor have none.
"""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING

from .. import units
from ..errors import InputError
from ..fields import choose, may
from ..formulas import layout
from ..held import BoltSet
from ..model import Drive, Fixings, Motor
from ..mounting import Beyond, BoltPlane, Cut, Gap, Mount, Surroundings
from ..outlines import Outline, Place, SlotHole, room
from ..worked import Value
from . import _common, _outline
from ._common import BoltHoles
from ._parts import Parts, Picker

if TYPE_CHECKING:
    from ..plates import FrameBolt, MotorBolt, PlateModel

FORM = "outline"
TITLE = "flat plate of your own shape, by points or from a DXF drawing"
FIELDS = (
    *_outline.FIELDS,
    choose("mount.rests", "where it bears on the frame: a strip as wide as the plate along the bolts, or wherever it lies below a height", ("bolts", "below")),
    may("mount.rests_up_to", "length", "shaft axis down to the frame's upper edge, when the plate rests below it", "1 mm", "3 m", example="70 mm"),
)  # fmt: skip
UNUSED = (
    "fixings.span_across", "fixings.span_along", "fixings.holes", "fixings.slot_length",
    "fixings.slots_run", "motor.holes", "motor.bore", "mount.route", "mount.warping_held",
    *_common.NO_JACK,
)  # fmt: skip
STARTER = {
    "motor.bolt_circle": "70 mm",
    "mount.outline": ("0, 0 mm", "120, 0 mm", "120, 60 mm", "105, 145 mm", "15, 145 mm", "0, 60 mm"),
    "mount.frame_holes": ("20, 15, 9 mm", "100, 15, 9 mm", "20, 45, 9 mm", "100, 45, 9 mm"),
    "mount.motor_holes": ("35.25, 75.25, 6.6 mm", "84.75, 75.25, 6.6 mm", "84.75, 124.75, 6.6 mm", "35.25, 124.75, 6.6 mm"),
    "mount.holes": ("60, 100, 40 mm",),
}  # fmt: skip
LOOSE = 0.002  # m, a hole this much wider than its bolt is worth a word
EDGE_LEAST = 1.2  # hole diameters from a hole's middle to the edge: EN 1993-1-8 table 3.3
CHORDS = 1e-3  # of a hole's size, what its chords take away
UNEVEN = math.radians(5.0)
WORDS = {"frame": "fixings.bolts", "motor": "motor.bolts"}


def bolt_holes(picker: Picker, motor: Motor) -> tuple[BoltHoles, BoltHoles]:
    """Give the holes of the outline for the frame's and the motor's bolts."""
    outline = _read(picker, motor)
    found = []
    for owner, cuts in (("frame", room.frame_cuts(outline)), ("motor", room.motor_cuts(outline))):
        count, thread = picker.card(WORDS[owner])
        if count != len(cuts):
            words = f"the plate has {len(cuts)} holes and slots for the bolts of the {owner}"
            picker.mistake(WORDS[owner], words, f"for example {len(cuts)} x {thread.designation}")
        _refuse_sizes(picker, owner, cuts, thread)
        widest = max(room.width_of(cut) for cut in cuts)
        hole = Value(widest, f"hole for the {owner} bolts", "derived", "the widest of the outline")
        slotted = any(isinstance(cut, SlotHole) for cut in cuts)
        found.append(BoltHoles(diameter=hole, body=thread.diameter, slotted=slotted))
    return found[0], found[1]


def _read(picker: Picker, motor: Motor) -> Outline:
    try:
        return _outline.outline_of(picker, float(motor.bolt_circle), picker.system)
    except InputError as error:
        raise InputError([*picker.mistakes, *error.mistakes]) from None


def _key(picker: Picker, name: str) -> str:
    return "mount.drawing" if picker.card("mount.drawing") else f"mount.{name}"


def _size(picker: Picker, value: float) -> str:
    return units.show(value, "length", picker.system, 3)


def _refuse_sizes(
    picker: Picker, owner: str, cuts: tuple[room.BoltCut, ...], thread: object
) -> None:
    """Record holes that do not take their bolt; warn of wide ones."""
    body = float(thread.diameter)  # type: ignore[attr-defined]
    name: str = thread.designation  # type: ignore[attr-defined]
    tight = [i for i, cut in enumerate(cuts) if room.width_of(cut) < body * (1 - 1e-9)]
    for i in tight:
        kind = "slots" if isinstance(cuts[i], SlotHole) else "holes"
        number = i + 1 - (0 if kind == "holes" else sum(not isinstance(c, SlotHole) for c in cuts))
        picker.mistake(
            _key(picker, f"{owner}_{kind}"),
            f"{owner} {kind[:-1]} {number} is {_size(picker, room.width_of(cuts[i]))} wide: it does "
            f"not take {name}, which needs {_size(picker, float(thread.clearance_hole))}",  # type: ignore[attr-defined]
            f"check {WORDS[owner]}",
        )
    widest = max(room.width_of(cut) for cut in cuts)
    if widest > body + LOOSE + 1e-9:
        picker.warnings.append(
            f"Holes of {_size(picker, widest)} for the {owner}'s {name} bolts are more than 2 mm wider: "
            "when the clamp gives way the joint shifts by that much, and the washer has less to press on."
        )


def build(picker: Picker, parts: Parts) -> Mount:
    """Lay out bolt planes with what lies round their holes, and the cuts."""
    thickness = picker.number("mount.thickness")
    motor, fixings = parts.motor, parts.fixings
    outline = _read(picker, motor)
    picker.warnings.extend(outline.notes)
    _look_at_motor(picker, outline, motor)
    _warn_edges(picker, outline, fixings)
    rows = _rows(outline, motor)
    if "below" not in rows and "above" in rows:
        picker.mistake("mount.away", "points from the shaft to the frame's bolts",
                       "it must point from the frame to the shaft")  # fmt: skip
    faces = _faces(picker, outline, motor, fixings, rows)
    planes, cuts, first = [], [], 0
    for number, (side, bolts) in enumerate(rows.items()):
        contacts = tuple(k for k, (owner, _) in enumerate(faces) if owner in (number, None))
        told = any(owner is None for owner, _ in faces)  # where the frame ends is known
        on_member = not told and not side.startswith("beside")
        planes.append(_plane(outline, bolts, fixings, thickness, contacts, on_member))
        numbers = tuple(range(first, first + len(bolts)))
        beyond = None if len(rows) == 1 else Beyond(bolts=numbers, contacts=contacts)
        cuts += _cuts(picker, outline, motor, side, bolts, thickness, beyond)
        first += len(bolts)
    width = Value(outline.size[0], "width of the plate", "derived", "from the outline")
    return _common.mount(
        FORM, picker, parts, thickness, width, (), tuple(cuts), tuple(planes), outline.area,
        outline=outline, rests=tuple(face for _, face in faces),
    )  # fmt: skip


def _look_at_motor(picker: Picker, outline: Outline, motor: Motor) -> None:
    """Record a shaft that has no way through; warn of uneven motor holes."""
    clear, shaft = room.clear_at_shaft(outline), picker.number("shaft.diameter")
    if clear == 0.0:
        picker.warnings.append(
            "The plate has no hole at the shaft axis: one for the shaft or the motor's spigot would be "
            "there, and the plate is softer with it."
        )
    elif 2.0 * clear < shaft * (1 - CHORDS):
        picker.mistake(
            _key(picker, "holes"),
            f"the hole at the shaft axis leaves {_size(picker, 2.0 * clear)} for the shaft, which is "
            f"{_size(picker, float(shaft))}",
        )
    places = _motor_places(outline, float(motor.bolt_circle))
    turns = sorted(math.atan2(p.y, p.x) for p in places)
    steps = [b - a for a, b in pairwise([*turns, turns[0] + 2.0 * math.pi])]
    if any(abs(step - 2.0 * math.pi / len(turns)) > UNEVEN for step in steps):
        picker.warnings.append(
            "The motor's holes are not even round their circle: the plate model has them where they are, "
            "the checks of the face bolts take them as even."
        )


def _warn_edges(picker: Picker, outline: Outline, fixings: Fixings) -> None:
    near = [
        room.free_radius(outline, cut, room.bolt_place(cut)) / room.width_of(cut)
        for cut in room.frame_cuts(outline)
        if not isinstance(cut, SlotHole)
    ]
    if near and min(near) < EDGE_LEAST * (1 - 1e-9):
        picker.warnings.append(
            f"A frame bolt sits {min(near):.2g} hole diameters from the edge or the next hole; below 1.2 "
            "(EN 1993-1-8 table 3.3) bearing there is extrapolated."
        )


def _motor_places(outline: Outline, circle: float) -> list[Place]:
    return [room.bolt_place(cut, circle) for cut in room.motor_cuts(outline)]


def _rows(outline: Outline, motor: Motor) -> dict[str, tuple[room.BoltCut, ...]]:
    """Give the frame bolts below the motor's bolts, above them, and each one beside them."""
    heights = [p.y for p in _motor_places(outline, float(motor.bolt_circle))]
    found: dict[str, tuple[room.BoltCut, ...]] = {}
    for number, cut in enumerate(room.frame_cuts(outline), 1):
        side = "below" if cut.y < min(heights) else "above" if cut.y > max(heights) else f"beside {number}"  # fmt: skip
        found[side] = (*found.get(side, ()), cut)
    order = ("below", "above")
    return {side: found[side] for side in sorted(found, key=lambda s: (order.index(s) if s in order else 2, s))}  # fmt: skip


def _faces(
    picker: Picker, outline: Outline, motor: Motor, fixings: Fixings,
    rows: dict[str, tuple[room.BoltCut, ...]],
) -> list[tuple[int | None, room.Corners]]:  # fmt: skip
    """Give the bearing faces, and the bolt plane each belongs to; None for all of them."""
    top = picker.optional("mount.rests_up_to")
    if picker.word("mount.rests", "bolts") == "below":
        if top is None:
            picker.mistake("mount.rests_up_to", "is missing: shaft axis down to the frame's upper edge",
                           "for example rests_up_to = '70 mm'")  # fmt: skip
            return []
        _refuse_height(picker, outline, motor, float(top))
        return [(None, face) for face in room.below(outline, -float(top))]
    if top is not None:
        picker.mistake(
            "mount.rests_up_to", "is only used with mount.rests = 'below'", "leave it out"
        )
    found: list[tuple[int | None, room.Corners]] = []
    for number, (side, bolts) in enumerate(rows.items()):
        places = tuple(room.bolt_place(cut) for cut in bolts)
        faces = room.strip(outline, places, float(fixings.edge), side.startswith("beside"))
        found += [(number, face) for face in faces]
    return found


def _refuse_height(picker: Picker, outline: Outline, motor: Motor, top: float) -> None:
    """Record a frame edge that leaves a frame bolt out, or runs behind the motor."""
    highest = max(cut.y for cut in room.frame_cuts(outline))
    lowest = min(p.y for p in _motor_places(outline, float(motor.bolt_circle)))
    if -top < highest:
        picker.mistake(
            "mount.rests_up_to",
            f"leaves out a frame bolt {_size(picker, abs(highest))} {'below' if highest < 0 else 'above'} the shaft axis",
            "it is measured from the shaft axis down to the frame's upper edge",
        )
    elif -top > lowest:
        picker.mistake("mount.rests_up_to", "puts the frame behind the motor's bolts",
                       f"the lowest are {_size(picker, -lowest)} below the shaft axis")  # fmt: skip


def _plane(
    outline: Outline, bolts: tuple[room.BoltCut, ...], fixings: Fixings, thickness: Value,
    contacts: tuple[int, ...], on_member: bool,
) -> BoltPlane:  # fmt: skip
    """Give a bolt plane about the bolts' middle, with what lies round every hole."""
    places = [room.bolt_place(cut) for cut in bolts]
    middle = [sum(p[k] for p in places) / len(places) for k in (0, 1)]
    centre = tuple(Value(v, "middle of the frame bolts", "derived", "from the outline") for v in middle)  # fmt: skip
    reach = max(abs(corner.x - middle[0]) for corner in outline.corners)
    return BoltPlane(
        centre=(centre[0], centre[1], 0.0), first="x", second="y", normal="z",
        bolts=tuple(
            (_derived(p.x - middle[0], "frame bolt, across"), _derived(p.y - middle[1], "frame bolt, along"))
            for p in places
        ),
        half_first=_derived(reach, "half the plate"), edge_second=fixings.edge, thickness=thickness,
        towards_motor=1.0, contacts=contacts, on_member=on_member,
        around=tuple(_surroundings(outline, cut) for cut in bolts),
    )  # fmt: skip


def _derived(number: float, name: str) -> Value:
    return Value(number, name, "derived", "from the outline")


def _surroundings(outline: Outline, cut: room.BoltCut) -> Surroundings:
    def gap(axis: int, way: int) -> Gap:
        distance, is_end = room.ahead(outline, cut, axis, way)
        what = "edge or cut-out" if is_end else "next frame bolt"
        words = (
            f"frame bolt to the {what}, {['left', 'right', 'below', 'above'][2 * axis + (way > 0)]}"
        )
        return Gap(_derived(distance, words), is_end)

    return Surroundings(
        hole_diameter=_derived(room.width_of(cut), "hole of the frame bolt"),
        slotted=isinstance(cut, SlotHole),
        gaps=((gap(0, -1), gap(0, 1)), (gap(1, -1), gap(1, 1))),
    )


def _cuts(
    picker: Picker, outline: Outline, motor: Motor, side: str, bolts: tuple[room.BoltCut, ...],
    thickness: Value, beyond: Beyond | None,
) -> list[Cut]:  # fmt: skip
    """Give the cuts through the row nearest the motor, and through the motor's bolts nearest it."""
    if side.startswith("beside"):
        return []
    nearest, farthest = (max, min) if side == "below" else (min, max)
    row = nearest(cut.y for cut in bolts)
    near = farthest(p.y for p in _motor_places(outline, float(motor.bolt_circle)))
    where = "" if beyond is None else f" {side} the motor"
    found = []
    for words, height in ((f"plate at the frame bolts{where}", row), (f"plate at the motor bolts{where}", near)):  # fmt: skip
        across = room.crossing(outline, height)
        if across is None:
            picker.warnings.append(
                f"The {words}: a straight cut there leaves the plate in several pieces, so it has no "
                "section of its own; the plate model alone judges it."
            )
            continue
        place = (
            _derived(across.middle, "middle of the cut"),
            _derived(height, "height of the cut"),
        )
        found.append(
            Cut(name=words, place=(*place, layout.half(thickness)), axis="y", across="x", normal="z",
                width=across.width, thickness=float(thickness), holes=across.gaps, beyond=beyond)
        )  # fmt: skip
    return found


def plates(drive: Drive, normal: float, tangential: float, pressing: float) -> PlateModel:
    """Lay out the plate as one facet with every hole and cut-out, bolts where they are."""
    from ..plates import Contact, Cutout, Hole, PlateModel, Slot  # heavy: only when asked for

    mount, outline = drive.mount, drive.mount.outline
    assert outline is not None
    holes: list[Hole | Slot | Cutout] = [
        Hole(centre=h[:2], diameter=h.diameter) for h in outline.holes
    ]
    holes += [
        Slot(centre=s[:2], length=s.length, width=s.width, angle=s.angle) for s in outline.slots
    ]
    holes += [Cutout(corners=room.smooth(c)) for c in outline.cutouts]
    facet = _common.facet_of(
        drive, "plate", list(room.smooth(outline.corners)), (0.0, 0.0, float(mount.thickness) / 2),
        (0.0, 1.0, 0.0), float(mount.thickness), False, holes=holes,
    )  # fmt: skip
    return PlateModel(
        facets=[facet], motor_bolts=_motor_bolts(drive, outline), motor_centre=(0.0, 0.0, 0.0),
        frame_bolts=_frame_bolts(drive, outline, normal, tangential),
        contacts=[Contact(facet=0, side=-1, stiffness=pressing, region=face) for face in mount.rests],
    )  # fmt: skip


def _frame_bolts(
    drive: Drive, outline: Outline, normal: float, tangential: float
) -> list[FrameBolt]:
    from ..plates import FrameBolt

    rows = _rows(outline, drive.motor)
    washer = float(drive.fixings.washer_diameter)
    return [
        FrameBolt(
            facet=0, centre=room.bolt_place(cut), hole_diameter=room.width_of(cut),
            washer_diameter=_washer(outline, cut, room.bolt_place(cut), washer),
            normal_stiffness=normal, tangential_stiffness=tangential, frame_side=-1, **_slot(cut, room.bolt_place(cut)),
        )
        for bolts in rows.values() for cut in bolts
    ]  # fmt: skip


def _motor_bolts(drive: Drive, outline: Outline) -> list[MotorBolt]:
    from ..plates import MotorBolt

    bolts: BoltSet = drive.motor.bolts
    circle = float(drive.motor.bolt_circle)
    places = _motor_places(outline, circle)
    apart = min((math.dist(a, b) for i, a in enumerate(places) for b in places[:i]), default=circle)
    washer = min(float(bolts.thread.washer_diameter), 0.9 * apart)
    return [
        MotorBolt(
            facet=0, centre=place, hole_diameter=room.width_of(cut),
            washer_diameter=_washer(outline, cut, place, washer), **_slot(cut, place),
        )
        for cut, place in zip(room.motor_cuts(outline), places, strict=True)
    ]  # fmt: skip


ROOM = 0.98  # of the way to the edge, a washer that reaches over it is taken to


def _washer(outline: Outline, cut: room.BoltCut, place: Place, wanted: float) -> float:
    """Give the washer's diameter as far as it lies on the plate; at least a rim round the hole."""
    free = 2.0 * ROOM * room.free_radius(outline, cut, place)
    return max(min(wanted, free), 1.05 * room.width_of(cut))


def _slot(cut: room.BoltCut, bolt: Place) -> dict[str, float]:
    """Give the slot about a bolt, nothing for a round hole."""
    if not isinstance(cut, SlotHole):
        return {}
    offset = (cut.x - bolt.x) * math.cos(cut.angle) + (cut.y - bolt.y) * math.sin(cut.angle)
    return {"slot_length": cut.length, "slot_angle": cut.angle, "slot_offset": offset}
