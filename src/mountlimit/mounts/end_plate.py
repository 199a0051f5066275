"""End plate: a tube sticks out from the frame, a plate is welded square on its end, the motor on it.

       tube back to the frame beside the motor      tube forward to the frame beside the sprocket

            [ motor ]=|===|  sprocket                    [ motor ]=|===|  sprocket
            [       ]=|                                            |
        #             |                                            |              #
        #=============|                                            |==============#
        #    tube     |  plate                               plate |     tube     #
        #=============|                                            |==============#
                      |                                            |

The tube runs along z, so its axis and the shaft are parallel; y points from the tube's axis to the
shaft.  The plate fills z = 0 to t as everywhere, the motor behind it; the tube ends on the plate's
back (z = 0) or on its front (z = t) and is welded to the frame all round at its other end.  The frame
member runs along x there.  The plate ends just below the tube.

The tube belongs to the mount: its walls are plates of the plate model, four of them, or twelve round a
round tube (bending exact, twist 2 % too soft), joined at their edges and to the plate, hinged along
their weld to the frame.  Cuts are only in the plate between tube and motor, where the whole load goes
through; in the tube, stress is read across its walls beside both welds.  The weld of plate to tube
and the wall of the frame member are not checked.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from ..fields import choose, may, need
from ..formulas import layout
from ..model import Drive, Number
from ..mounting import BoltPlane, Cut, Mount
from ..worked import Value
from . import _common, _welding
from ._parts import Parts, Picker

if TYPE_CHECKING:
    from ..plates import PlateModel, SectionLine

FORM = "end plate"
TITLE = "plate welded square on the end of a tube that sticks out from the frame"
FIELDS = (
    need("mount.thickness", "length", "thickness of the end plate", "0.5 mm", "150 mm", "8 mm"),
    need("mount.width", "length", "width of the end plate", "10 mm", "2 m", "120 mm"),
    need("mount.free_length", "length", "axis of the tube to the shaft axis", "5 mm", "2 m", "100 mm"),
    choose("mount.tube", "section of the tube", ("square", "rectangular", "round")),
    need("mount.tube_size", "length", "outer size of the tube across the mount, or its diameter", "10 mm", "500 mm", "50 mm"),
    may("mount.tube_depth", "length", "rectangular tube: its outer size towards the shaft", "10 mm", "500 mm", example="60 mm"),
    need("mount.tube_wall", "length", "wall thickness of the tube", "0.5 mm", "50 mm", "3 mm"),
    need("mount.tube_length", "length", "tube between frame and plate", "10 mm", "2 m", "80 mm"),
    choose("mount.tube_runs", "where the tube runs from the plate: back beside the motor, or forward beside the sprocket", ("motor", "sprocket")),
    *_welding.FIELDS,
)  # fmt: skip
UNUSED = (*_welding.NO_BOLTS, *_common.NO_FACE, "mount.route", "mount.warping_held")
STARTER = {"mount.free_length": "95 mm", "mount.tube_size": "50 mm"}
SIDES = 12  # walls a round tube is drawn with
INSET = 0.995  # of the way to an edge: where stress is read


@dataclass(frozen=True, slots=True)
class Wall:
    """One wall of the tube: middle from the tube's axis, way along it (x, y), width of its mid-line."""

    name: str
    place: tuple[float, float]
    way: tuple[float, float]
    width: float


def build(picker: Picker, parts: Parts) -> Mount:
    """Lay out plate and tube; the frame is where the tube is welded on."""
    thickness, width = picker.number("mount.thickness"), picker.number("mount.width")
    free, wall = picker.number("mount.free_length"), picker.number("mount.tube_wall")
    size, length = picker.number("mount.tube_size"), picker.number("mount.tube_length")
    shape = picker.word("mount.tube", "square")
    depth = _depth(picker, shape, size)
    back = picker.word("mount.tube_runs", "motor") == "motor"
    parts = _welding.welded(picker, parts)
    _welding.warn_aluminium(picker, parts)
    leg = picker.number("fixings.weld_leg")
    _refuse(picker, parts, (free, size, depth, wall, width, leg), back)
    far = layout.opposite(length) if back else layout.total(thickness, length)
    _, sound = _welding.throats(picker, wall)
    own = {"tube": shape, "size": size, "depth": depth, "wall": wall, "length": length,
           "leg": leg, "axis": free, "way": -1.0 if back else 1.0}  # fmt: skip
    plane = BoltPlane(
        centre=(0.0, layout.opposite(free), far), first="x", second="y", normal="z", bolts=(),
        half_first=layout.half(size), edge_second=layout.half(depth), thickness=wall,
        towards_motor=0.0, contacts=(),
    )  # fmt: skip
    lines = tuple(
        _welding.fillet(
            picker, parts, f"weld of the {w.name}",
            Value(w.width, "length of the weld", "derived", "mid-line of the tube's wall"), sound,
            "x" if abs(w.way[0]) > abs(w.way[1]) else "y",
        )
        for w in walls(shape, float(size), float(depth), float(wall))
    )  # fmt: skip
    plate_area = width * (free + depth / 2 + _top(parts))
    area = float(plate_area + 2 * (size + depth) * length * wall / thickness)
    return _common.mount(
        FORM, picker, parts, thickness, width, (),
        _cuts(parts, free, depth, width, thickness), (plane,), area,
        welds=lines, own=own,
    )  # fmt: skip


def walls(shape: str, size: float, depth: float, wall: float) -> list[Wall]:
    """Give the tube's walls on their mid-lines, m; a round one as a polygon with its second moment.

    a = r (pi / (n tan(pi / n) (1 + tan(pi / n)**2 / 3)))**(1/3): the polygon's inner radius.
    """
    if shape != "round":
        x, y = (size - wall) / 2, (depth - wall) / 2
        return [
            Wall("tube's wall next to the shaft", (0.0, y), (1.0, 0.0), 2 * x),
            Wall("tube's wall away from the shaft", (0.0, -y), (1.0, 0.0), 2 * x),
            Wall("tube's wall at x < 0", (-x, 0.0), (0.0, 1.0), 2 * y),
            Wall("tube's wall at x > 0", (x, 0.0), (0.0, 1.0), 2 * y),
        ]
    slope = math.tan(math.pi / SIDES)
    inner = (math.pi / (SIDES * slope * (1 + slope**2 / 3))) ** (1 / 3) * (size - wall) / 2
    found = []
    for k in range(SIDES):
        angle = math.pi / 2 + 2 * math.pi * k / SIDES
        c, s = math.cos(angle), math.sin(angle)
        found.append(
            Wall(f"tube's wall {k + 1}", (inner * c, inner * s), (-s, c), 2 * inner * slope)
        )
    return found


def _depth(picker: Picker, shape: str, size: Value) -> Number:
    given = picker.optional("mount.tube_depth")
    if shape == "rectangular":
        if given is None:
            picker.mistake("mount.tube_depth", "missing: a rectangular tube has two outer sizes")
        return given or size
    if given is not None:
        picker.mistake("mount.tube_depth", f"only a rectangular tube has it; this one is {shape}")
    return size


def _top(parts: Parts) -> float:
    motor = parts.motor
    return float(motor.bolt_circle) / 2 + 1.5 * float(motor.bolts.thread.washer_diameter)


def _refuse(
    picker: Picker, parts: Parts, sizes: tuple[Number, Number, Number, Number, Number, Number],
    back: bool,
) -> None:  # fmt: skip
    """Record mistakes when tube, plate, motor and sprocket do not fit beside one another."""
    free, size, depth, wall, width, leg = (float(v) for v in sizes)
    motor = parts.motor
    if 2 * wall >= 0.8 * min(size, depth):
        picker.mistake("mount.tube_wall", "leaves hardly a bore in the tube: it is no tube")
        return
    if size + 2 * leg > width:
        picker.mistake("mount.width", f"leaves no room for the fillets beside the tube; they need {1000 * (size + 2 * leg):.1f} mm")  # fmt: skip
    if float(motor.bolt_circle) + float(motor.bolts.thread.washer_diameter) > width:
        picker.mistake(
            "motor.bolt_circle", f"leaves the mount, which is {1000 * width:.1f} mm wide"
        )
    if motor.bore + float(motor.bolts.thread.clearance_hole) >= motor.bolt_circle:
        picker.mistake("motor.bore", "runs into the holes of the motor bolts")
    reach = (float(motor.bolt_circle) + float(motor.bolts.thread.washer_diameter)) / 2
    what = "the motor"
    if not back:
        teeth, pitch = (
            float(picker.number("chain.driving_teeth")),
            float(picker.card("chain.type").pitch),
        )
        sprocket = pitch / (2 * math.sin(math.pi / teeth)) + pitch / 2
        if sprocket > reach:
            reach, what = sprocket, "sprocket and chain"
    least = reach + depth / 2 + leg
    if free < least:
        picker.mistake(
            "mount.free_length", f"puts the tube into {what}; it must be at least {1000 * least:.1f} mm",
            "it is measured from the tube's axis to the shaft axis",
        )  # fmt: skip


def _cuts(
    parts: Parts, free: Number, depth: Number, width: Number, thickness: Number
) -> tuple[Cut, ...]:  # fmt: skip
    """Give the cuts in the plate beside the tube and at the motor bolts nearest to it."""
    motor = parts.motor
    reach = layout.nearest_motor_bolts(motor.bolt_circle, motor.bolts.number)
    edge = layout.opposite(layout.difference(free, layout.half(depth)))
    return tuple(
        Cut(
            name=name, place=(0.0, y, layout.half(thickness)), axis="y", across="x", normal="z",
            width=float(width), thickness=float(thickness), holes=holes, toe=toe,
        )
        for name, y, holes, toe in (
            ("end plate at the tube", edge, (), True),
            ("end plate at the motor bolts", layout.opposite(reach), _common.motor_holes(motor, float(reach)), False),
        )
    )  # fmt: skip


def plates(drive: Drive, normal: float, tangential: float, pressing: float) -> PlateModel:
    """Lay out the plate and the tube's walls, welded to the frame at their far ends."""
    from ..plates import Bend, LineWeld, PlateModel  # heavy: only when asked for

    mount = drive.mount
    own, thickness, half = mount.own, float(mount.thickness), float(mount.width) / 2
    axis, depth, wall = (float(own[k]) for k in ("axis", "depth", "wall"))
    low = -axis - depth / 2 - max(float(own["leg"]), wall)
    plate = _common.facet_of(
        drive, "end plate", _common.rectangle(half, low, _common.top_of(drive)),
        (0.0, 0.0, thickness / 2), (0.0, 1.0, 0.0), thickness, True,
    )  # fmt: skip
    end = float(own["length"]) + thickness / 2
    tube = walls(str(own["tube"]), float(own["size"]), depth, wall)
    facets = [
        _common.facet_of(
            drive, w.name, _common.rectangle(w.width / 2, 0.0, end),
            (w.place[0], w.place[1] - axis, thickness / 2), (0.0, 0.0, float(own["way"])), wall,
            False, e1=(*w.way, 0.0),
        )
        for w in tube
    ]  # fmt: skip
    count = len(tube)
    modulus = float(mount.material.shear_modulus)
    return PlateModel(
        facets=[plate, *facets], motor_bolts=_common.motor_bolts_on(drive, 0),
        motor_centre=(0.0, 0.0, 0.0),
        # the mid-lines alone give a tube's section; a stiffer strip at its corners would be too much
        bends=[Bend(facets=(i, j), stiff_corner=False)
               for i in range(1, count + 1) for j in range(i + 1, count + 1)],
        welds=[
            LineWeld(facet=i, start=(-w.width / 2, end), end=(w.width / 2, end), stiffness=modulus,
                     double_sided=False)
            for i, w in enumerate(tube, 1)
        ],
        section_lines=_lines(tube, end, thickness, wall),
    )  # fmt: skip


def _lines(tube: list[Wall], end: float, thickness: float, wall: float) -> list[SectionLine]:
    """Give lines across the tube's walls beside the plate and beside the frame."""
    from ..plates import SectionLine

    near, far = thickness / 2 + wall, end - wall
    return [
        SectionLine(
            facet=i, start=(-INSET * w.width / 2, y), end=(INSET * w.width / 2, y), samples=15
        )
        for i, w in enumerate(tube, 1)
        for y in ((near, far) if near < far else ((near + far) / 2,))
    ]
