"""Twin plates: two parallel plates with round spacers, each bolted to the frame along its lower edge.

The motor's face is bolted to the front plate, which fills z = 0 to t as in the form "plate"; the
second plate, of the same outline, has its front face at z = -gap.  The motor hangs between them, or
goes through an opening of the second plate and hangs on its far side.  The frame lies between the
plates (they hold it like a pair of cheeks), or behind each of them.  Both plates reach past the
farthest motor bolts and one spacer diameter past the highest spacer's axis.

The spacers are beams that hold the plates both ways: their screws must clamp them hard.  The frame
member of the file stands behind the front plate and takes the whole load.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from ..fields import choose, may, need
from ..formulas import layout
from ..model import Drive, Motor, Number
from ..mounting import Beyond, BoltPlane, Cut, Mount, Spacer
from ..worked import Value
from . import _common, _spacers
from ._parts import Parts, Picker

if TYPE_CHECKING:
    from ..plates import PlateModel, SectionLine

FORM = "twin plates"
TITLE = "two parallel plates joined by spacers, both bolted to the frame"
FIELDS = (
    need("mount.thickness", "length", "thickness of the front plate, and of the second where none is given for it", "0.5 mm", "150 mm", "8 mm"),
    need("mount.width", "length", "width of both plates", "10 mm", "2 m", "120 mm"),
    need("mount.free_length", "length", "frame bolt row nearest the motor to the shaft axis", "5 mm", "2 m", "90 mm"),
    need("mount.gap", "length", "clear distance between the two plates: length of the spacers", "1 mm", "1 m", "140 mm"),
    *_spacers.FIELDS,
    choose("mount.motor_hangs", "where the motor hangs: between the plates, or through the second one", ("between", "one side")),
    may("mount.opening", "length", "hole in the second plate that the motor goes through, when it hangs on one side", "5 mm", "1 m", example="80 mm"),
    choose("mount.frame_lies", "where the frame lies: between the two plates, or behind each of them", ("between", "behind")),
    need("fixings.bolts", "bolts", "number of frame bolts of both plates together, and size", "", "", "8 x M8"),
)  # fmt: skip
SECOND = True
STARTER = {
    "fixings.bolts": "8 x M8", "mount.spacers_along": "90 mm", "mount.motor_hangs": "between",
    "mount.frame_lies": "between",
}  # fmt: skip
UNUSED = ("mount.route", "mount.warping_held", *_common.NO_JACK)  # no beams: the plate model alone
FRONT, REAR = "front plate", "second plate"


def build(picker: Picker, parts: Parts) -> Mount:
    """Lay out both plates, their bolts, the spacers and the cuts with what shares their load."""
    thickness, width = picker.number("mount.thickness"), picker.number("mount.width")
    rear = picker.optional("second.thickness") or thickness
    free, gap = picker.number("mount.free_length"), picker.number("mount.gap")
    _refuse_lone(picker, parts)
    count = _bolts_per_plate(picker, parts)
    _common.refuse_short(picker, "mount.free_length", free, _common.lower_motor_cut(parts.motor)[0])
    _common.refuse_narrow(picker, width, parts, count)
    planes = _planes(picker, parts, count, (thickness, rear), width, free, gap)
    spacers = _spacers.spacers(picker, parts, gap)
    opening = _opening(picker, parts, width, free, gap)
    row = float(layout.opposite(free))
    _spacers.refuse(picker, parts, spacers, _spacers.Room(
        half=float(width) / 2, low=row - float(parts.fixings.span_along),
        frame=row + float(parts.fixings.washer_diameter) / 2 if _between(picker) else None,
        opening=None if opening is None else float(opening),
        washers=tuple((float(b[0]), float(planes[0].centre[1] + b[1])) for b in planes[0].bolts),
    ))  # fmt: skip
    _warn(picker, gap)
    height = _top(parts.motor, spacers) - row + float(parts.fixings.span_along + parts.fixings.edge)
    area = float(width) * height * (1 + float(rear) / float(thickness))
    cuts = _cuts(
        parts, planes, spacers, (float(width), float(thickness), float(rear)), row, opening
    )
    return _common.mount(
        FORM, picker, parts, thickness, width, (), cuts, planes, area,
        second=parts.second, second_facets=(REAR,), spacers=spacers, opening=opening,
    )  # fmt: skip


def _refuse_lone(picker: Picker, parts: Parts) -> None:
    """Record a mistake where a property of the second material stands without its name."""
    for key in ("elastic_modulus", "yield_strength", "fatigue_strength"):
        if parts.second is None and picker.card(f"second.{key}") is not None:
            picker.mistake(
                f"second.{key}", "stands without second.material", "name the material as well"
            )


def _bolts_per_plate(picker: Picker, parts: Parts) -> int:
    """Give how many frame bolts each plate has; they are shared evenly."""
    fixings = parts.fixings
    count = fixings.bolts.count
    both = fixings.span_across > 0 and fixings.span_along > 0
    if count < 4 or count % 2 or (both and (count < 8 or count % 4)):
        rows = "two rows on each need 8, 12 or 16" if both else "each needs 2 or more"
        picker.mistake("fixings.bolts", f"are shared evenly by two plates: {rows}")
    return max(4 if both else 2, count // 2)


def _warn(picker: Picker, gap: Value) -> None:
    """Say what is not looked at, and when the frame cannot fill the gap."""
    picker.warnings.append(
        "The screws that hold the spacers are not checked, and the spacers are taken as fast to both "
        "plates: tighten the screws hard. The frame member takes the whole load at the front plate."
    )
    square = picker.card("frame.member") in (None, "square tube")
    depth = picker.optional("frame.size" if square else "frame.depth")
    if _between(picker) and depth is not None and abs(depth - gap) > 0.02 * gap:
        picker.warnings.append(
            f"The frame lies between the plates, but is {1000 * depth:.0f} mm deep and the gap is "
            f"{1000 * gap:.0f} mm: fill it with packing as wide as the plates, or give frame_lies = 'behind'."
        )


def _between(picker: Picker) -> bool:
    return picker.word("mount.frame_lies", "between") == "between"


def _planes(
    picker: Picker, parts: Parts, count: int, thick: tuple[Value, Value], width: Value, free: Value,
    gap: Value,
) -> tuple[BoltPlane, ...]:  # fmt: skip
    """Give the bolt plane of each plate, on the face that lies on the frame."""
    fixings = parts.fixings
    rows, columns = _common.pattern(fixings, count)
    y = layout.opposite(layout.total(free, layout.half(fixings.span_along)))
    behind = layout.opposite(gap if _between(picker) else layout.total(gap, thick[1]))
    return tuple(
        BoltPlane(
            centre=(0.0, y, z), first="x", second="y", normal="z",
            bolts=tuple((a, b) for b in rows for a in columns), half_first=layout.half(width),
            edge_second=fixings.edge, thickness=thick[i], towards_motor=1.0, contacts=(i,),
            of_second=i == 1,
        )
        for i, z in enumerate((0.0, behind))
    )  # fmt: skip


def _opening(
    picker: Picker, parts: Parts, width: Value, free: Value, gap: Value
) -> Value | None:  # fmt: skip
    """Give the hole in the second plate, where the motor goes through it."""
    opening, body = picker.optional("mount.opening"), picker.optional("mount.body_diameter")
    motor, fixings = parts.motor, parts.fixings
    if picker.word("mount.motor_hangs", "between") == "between":
        if opening is not None:
            picker.mistake("mount.opening", "is for a motor that hangs on one side",
                           "leave it out, or write motor_hangs = 'one side'")  # fmt: skip
        if motor.centre_of_mass.origin == "given" and motor.centre_of_mass >= gap:
            picker.mistake(
                "mount.gap",
                f"is shorter than the motor, whose centre of mass is {1000 * motor.centre_of_mass:.1f} mm "
                "behind its face: it cannot hang between the plates",
                "write motor_hangs = 'one side' and the opening of the second plate",
            )  # fmt: skip
        return None
    if opening is None:
        picker.mistake("mount.opening", "is missing: hole in the second plate that the motor goes through",
                       'for example opening = "80 mm"')  # fmt: skip
        return None
    if body is not None and body >= opening:
        picker.mistake("mount.opening", "is no larger than the motor's body")
    room = 2 * min(width / 2, float(free) - float(fixings.washer_diameter) / 2)
    if opening >= 0.98 * room:
        picker.mistake("mount.opening", "leaves no plate beside it or above the frame bolts",
                       f"it must be below {980 * room:.0f} mm")  # fmt: skip
    return opening


def _cuts(
    parts: Parts, planes: tuple[BoltPlane, ...], spacers: tuple[Spacer, ...],
    size: tuple[float, float, float], row: float, opening: Number,
) -> tuple[Cut, ...]:  # fmt: skip
    """Give the cuts of both plates; past a cut its own bolts, contact and spacers share the load."""
    width, front, rear = size
    count = len(planes[0].bolts)
    hole = float(parts.fixings.hole_diameter)
    holes = tuple((x, hole) for x in sorted({float(a) for a, _ in planes[0].bolts}))
    middle = (front / 2, -float(spacers[0].length) - rear / 2)

    def below(plate: int, y: float) -> Beyond:
        own = tuple(range(plate * count, (plate + 1) * count))
        on = tuple((i, plate) for i, s in enumerate(spacers) if s.along < y)
        return Beyond(bolts=own, contacts=(plate,), spacers=on)

    def cut(plate: int, where: str, y: float, taken: _common.Holes, beyond: Beyond) -> Cut:
        name = f"{(FRONT, REAR)[plate]} at the {where}"
        thick = (front, rear)[plate]
        return _common.cross_cut(name, y, middle[plate], (width, thick), taken, beyond, plate == 1)

    reach, lower = _common.lower_motor_cut(parts.motor)
    top, upper = _common.upper_motor_cut(parts.motor)
    over = tuple((i, 0) for i, s in enumerate(spacers) if s.along > float(top))
    found = [
        cut(0, "frame bolts", row, holes, below(0, row)),
        cut(0, "lower motor bolts", -float(reach), lower, below(0, -float(reach))),
        cut(1, "frame bolts", row, holes, below(1, row)),
    ]
    if over:
        found.append(cut(0, "upper motor bolts", float(top), upper, Beyond(spacers=over)))
    if opening is not None:
        found.append(cut(1, "opening", 0.0, ((0.0, float(opening)),), below(1, 0.0)))
    return tuple(found)


def _top(motor: Motor, spacers: tuple[Spacer, ...]) -> float:
    """Give how far the plates go on beyond the shaft axis."""
    highest = max(float(s.along) + float(s.diameter) for s in spacers)
    return max(_common.top_of_motor(motor), highest)


def plates(drive: Drive, normal: float, tangential: float, pressing: float) -> PlateModel:
    """Lay out the two plates as facets, the spacers as short beams, contact under both feet."""
    from ..plates import Contact, Hole, PlateModel
    from ..plates import Spacer as Beam  # heavy: only when asked for

    mount, fixings = drive.mount, drive.fixings
    half, edge = float(mount.width) / 2, float(fixings.edge)
    middle = float(mount.plane.centre[1])
    row, last = (middle + way * float(fixings.span_along) / 2 for way in (1, -1))
    gap, rear = float(mount.spacers[0].length), float(mount.planes[1].thickness)
    outline = _common.rectangle(half, last - edge, _top(drive.motor, mount.spacers))
    opening = (
        [] if mount.opening is None else [Hole(centre=(0.0, 0.0), diameter=float(mount.opening))]
    )
    up, front = (0.0, 1.0, 0.0), float(mount.thickness)
    facets = [
        _common.facet_of(drive, FRONT, outline, (0.0, 0.0, front / 2), up, front, True),
        _common.facet_of(
            drive, REAR, outline, (0.0, 0.0, -gap - rear / 2), up, rear, False, holes=opening
        ),
    ]
    sides = (-1, 1 if float(mount.planes[1].centre[2]) > -gap - rear / 2 else -1)
    strip = _common.rectangle(half, last - edge, row + edge)
    return PlateModel(
        facets=facets, motor_bolts=_common.motor_bolts_on(drive, 0), motor_centre=(0.0, 0.0, 0.0),
        frame_bolts=[
            _common.frame_bolt_on(
                drive, i, (float(x), middle + float(y)), sides[i], normal, tangential
            )
            for i, plane in enumerate(mount.planes) for x, y in plane.bolts
        ],
        contacts=[Contact(facet=i, side=sides[i], stiffness=pressing, region=strip) for i in (0, 1)],
        spacers=[
            Beam(
                facets=(0, 1), centre=(float(s.across), float(s.along)), diameter=float(s.diameter),
                inner_diameter=float(s.bore), elastic_modulus=float(s.elastic_modulus),
                poissons_ratio=float(s.poissons_ratio),
            )
            for s in mount.spacers
        ],
        section_lines=_beside_spacers(mount, half, last - edge),
    )  # fmt: skip


def _beside_spacers(mount: Mount, half: float, low: float) -> list[SectionLine]:
    """Give lines across both plates one thickness below every row of spacers, to read stress there."""
    from ..plates import SectionLine

    found = []
    for facet, plane in enumerate(mount.planes):
        for y in sorted({float(s.along) - float(s.diameter) / 2 for s in mount.spacers}):
            place = y - float(plane.thickness)
            if place > low:
                found.append(SectionLine(facet=facet, start=(-half, place), end=(half, place)))
    return found
