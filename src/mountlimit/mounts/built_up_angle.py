"""Built-up angle: an upright plate on a base plate, screwed together edge to face.

The upright fills z = 0 to its thickness, as the leg of an angle.  It stands on the base plate: the
screws come from below, through the base plate into the upright's edge.  Nothing but the screws
pulls at the seam; pressed, the whole end of the upright bears.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from ..fields import Field, may, need
from ..formulas import layout
from ..model import Drive, Number
from ..mounting import BoltPlane, Cut, Mount, Screws
from ..worked import Value
from . import _common, _screws
from ._parts import Parts, Picker

if TYPE_CHECKING:
    from ..plates import PlateModel, Seam

FORM = "built-up angle"
TITLE = "built-up angle: upright plate screwed by its edge to a base plate"
SECOND = True  # the base plate
SECOND_BOLTED = True  # it is the base plate that the frame bolts clamp
UNUSED = ("mount.warping_held",)  # of the section route
FIELDS = (
    need("mount.thickness", "length", "thickness of the upright plate", "0.5 mm", "150 mm", "18 mm"),
    need("mount.width", "length", "width of upright and base plate", "10 mm", "2 m", "140 mm"),
    need("mount.free_length", "length", "top of the base plate to the shaft axis", "5 mm", "2 m", "90 mm"),
    need("mount.heel_to_bolts", "length", "upright to the nearest row of base bolts", "3 mm", "1 m", "35 mm"),
    may("mount.base_overhang", "length", "how far the base plate goes on past the upright on the other side", "0 mm", "500 mm", ("0 mm", "0 mm", "0 mm"), "none assumed", example="20 mm"),
    Field(key="mount.foot_points", kind="choice", meaning="where the base plate points", choices=("motor", "sprocket")),
    *_screws.FIELDS,
)  # fmt: skip
STARTER = {
    "mount.material": "birch plywood", "mount.thickness": "24 mm", "mount.base_overhang": "20 mm",
    "second.material": "6061", "second.thickness": "10 mm",
    "mount.screws": "6 x 6 mm", "mount.screw_length": "50 mm", "mount.screw_head": "12 mm",
    "shaft.face_overhang": "45 mm",
}  # fmt: skip
BASE = "base plate"
CELLS = 6  # along the seam: tilt and screw tension within 0.5 % of those with 24 (measured)
SPLITS = 0.5  # screw diameter over the thickness of the edge: no edge is left
EDGE_ROOM = 3.0  # screw diameters from its axis to a face (EN 1995-1-1 table 8.2, pre-drilled)
LEAST_LENGTH = 6.0  # screw diameters in the edge (EN 1995-1-1 clause 8.7.2(3))


def build(picker: Picker, parts: Parts) -> Mount:
    """Lay out upright (along y) and base plate (along z); the frame is under the base plate."""
    thickness, width = picker.number("mount.thickness"), picker.number("mount.width")
    free, to_bolts = picker.number("mount.free_length"), picker.number("mount.heel_to_bolts")
    base = picker.optional("second.thickness") or thickness
    side = -1.0 if picker.word("mount.foot_points", "motor") == "motor" else 1.0
    motor, fixings = parts.motor, parts.fixings
    reach = layout.nearest_motor_bolts(motor.bolt_circle, motor.bolts.number)
    _common.refuse_short(picker, "mount.free_length", free, reach)
    _common.refuse_narrow(picker, width, parts)
    screws, hole = _row(picker, parts, thickness, base, width)
    if free - reach <= screws.length_in_edge:
        picker.mistake(
            "mount.screw_length",
            f"reaches the motor bolts, {1000 * (free - reach):.1f} mm from the edge",
        )
    middle = layout.half(thickness)
    row = layout.total(to_bolts, middle)  # from the middle of the upright
    centre = layout.total(row, layout.half(fixings.span_along))
    rows, columns = _common.pattern(fixings)
    plane = BoltPlane(
        centre=(0.0, layout.opposite(layout.total(free, base)), _along(middle, centre, side)),
        first="x", second="z", normal="y",
        bolts=tuple((x, z) for z in rows for x in columns),
        half_first=layout.half(width), edge_second=fixings.edge, thickness=base,
        towards_motor=-side, of_second=True,
    )  # fmt: skip
    bolt_holes = tuple((float(x), float(fixings.hole_diameter)) for x in columns)
    deep = layout.opposite(layout.total(free, layout.half(base)))
    holes = tuple((float(x), hole) for x in screws.places)
    b, t, tb = float(width), float(thickness), float(base)
    cuts = (
        Cut(name="base plate at the frame bolts", place=(0.0, deep, _along(middle, row, side)), axis="z",
            across="x", normal="y", width=b, thickness=tb, holes=bolt_holes, second=True),
        Cut(name="base plate at the screws", place=(0.0, deep, _along(middle, middle, side)), axis="z",
            across="x", normal="y", width=b, thickness=tb, holes=holes, second=True),
        Cut(name="upright at the seam", place=(0.0, layout.opposite(free), middle), axis="y",
            across="x", normal="z", width=b, thickness=t, holes=()),
        Cut(name="upright at the motor bolts", place=(0.0, layout.opposite(reach), middle), axis="y",
            across="x", normal="z", width=b, thickness=t, holes=_common.motor_holes(motor, float(reach))),
    )  # fmt: skip
    height = free + reach + fixings.edge
    depth = to_bolts + thickness + fixings.span_along + fixings.edge
    area = float(width * (height + depth * base / thickness))
    return _common.mount(
        FORM, picker, parts, thickness, width, (), cuts, (plane,), area,
        second=parts.second, second_facets=(BASE,), screws=screws,
    )  # fmt: skip


def _along(middle: Number, distance: Number, side: float) -> Number:
    """Give the place along z of a distance from the upright's middle, the way the base points."""
    return (layout.difference if side < 0 else layout.total)(middle, distance)


def _row(
    picker: Picker, parts: Parts, thickness: Value, base: Value, width: Value
) -> tuple[Screws, float]:
    """Give the row of screws and the diameter of the holes it makes across the base plate."""
    under = parts.second or parts.material
    count, seat = _screws.seat(picker, parts.material, thickness, under, base)
    rim = layout.total(layout.half(thickness), picker.number("mount.base_overhang"))
    places = _places(picker, count, float(width))
    span, diameter, head = places[-1] - places[0], float(seat.diameter), float(seat.head)
    if diameter >= SPLITS * thickness:
        picker.mistake(
            "mount.screws", f"{1000 * diameter:.1f} mm is over half of the edge they sit in",
            f"the upright is {1000 * thickness:.1f} mm thick",
        )  # fmt: skip
    if span + head >= width:
        picker.mistake("mount.screw_span", f"leaves the mount, which is {1000 * width:.1f} mm wide")
    elif span <= (count - 1) * head:
        picker.mistake(
            "mount.screws", f"their heads, {1000 * head:.1f} mm each, run into one another",
            f"the row is {1000 * span:.1f} mm long",
        )  # fmt: skip
    if head >= 2 * rim:
        picker.mistake(
            "mount.screw_head", f"of {1000 * head:.1f} mm leaves the base plate",
            "let the base plate go on further: mount.base_overhang",
        )  # fmt: skip
    _warn_row(picker, seat)
    return _screws.screws(picker, count, seat, places, rim), diameter


def _warn_row(picker: Picker, seat: _screws.Seat) -> None:
    """Warn where the edge may split, and where the thread is too short for its formula."""
    thickness, diameter = float(seat.edge_thickness), float(seat.diameter)
    metal = seat.edge.card.design_class == "metal"
    if not metal and thickness < 2 * EDGE_ROOM * diameter * (1 - 1e-9):
        picker.warnings.append(
            f"The screws sit nearer than 3 diameters to the faces of the upright ({1000 * thickness:.0f} mm "
            f"thick, screws of {1000 * diameter:.1f} mm; EN 1995-1-1 table 8.2): it may split, which no "
            "check sees."
        )
    if seat.kind == "wood screw" and seat.length < LEAST_LENGTH * diameter * (1 - 1e-9):
        picker.warnings.append(
            f"The screws hold by less than 6 diameters of thread ({1000 * LEAST_LENGTH * diameter:.0f} mm; "
            "EN 1995-1-1 clause 8.7.2(3)): what they hold is extrapolated."
        )


def _places(picker: Picker, count: int, width: float) -> tuple[float, ...]:
    """Give where the screws are across the width: as spanned, else evenly over it."""
    span = picker.optional("mount.screw_span")
    reach = width * (count - 1) / count if span is None else float(span)
    return tuple(reach * (i / (count - 1) - 0.5) for i in range(count))


def _seam(drive: Drive, half: float, floor: float, thicknesses: tuple[float, float]) -> Seam:
    """Lay the seam along the upright's lower edge, drawn to the base plate's face."""
    from ..plates import Seam  # heavy: only when asked for

    mount, screws = drive.mount, drive.mount.screws
    assert screws is not None
    moduli = (mount.material.elastic_modulus, mount.substance(True).elastic_modulus)
    through = min(float(e) / t for e, t in zip(moduli, thicknesses, strict=True))
    return Seam(
        facets=(0, 1), start=(-half, floor), end=(half, floor),
        places=[half + float(x) for x in screws.places],
        axial_stiffness=float(screws.axial_stiffness),
        lateral_stiffness=float(screws.lateral_stiffness),
        washer_diameter=float(screws.head), contact_stiffness=_common.soft_face(through),
        pitch=2 * half / CELLS,
    )  # fmt: skip


def plates(drive: Drive, normal: float, tangential: float, pressing: float) -> PlateModel:
    """Lay out upright and base plate, the seam between them, the base plate bearing all over."""
    from ..plates import Contact, PlateModel  # heavy: only when asked for

    mount, fixings, cuts = drive.mount, drive.fixings, drive.mount.cuts
    half, t, tb = float(mount.width) / 2, cuts[2].thickness, cuts[0].thickness
    floor, deep = float(cuts[2].place[1]), float(cuts[0].place[1])
    way = float(cuts[0].place[2]) - t / 2
    side, row = (1.0 if way > 0 else -1.0), abs(way)
    along, edge = float(fixings.span_along), float(fixings.edge)
    rim, end = -float(mount.screws.rim), row + along + edge  # type: ignore[union-attr]
    upright = _common.facet_of(
        drive, "upright", _common.rectangle(half, floor, _common.top_of(drive)),
        (0.0, 0.0, t / 2), (0.0, 1.0, 0.0), t, True,
    )  # fmt: skip
    flat = _common.facet_of(
        drive, BASE, _common.rectangle(half, rim, end), (0.0, deep, t / 2), (0.0, 0.0, side), tb, False,
    )  # fmt: skip
    under = 1 if side > 0 else -1  # the facet's normal is e1 x e2 = -side along y
    bolts = [
        _common.frame_bolt_on(
            drive, 1, (float(x), row + along / 2 + side * float(z)), under, normal, tangential
        )
        for x, z in mount.plane.bolts
    ]
    return PlateModel(
        facets=[upright, flat], motor_bolts=_common.motor_bolts_on(drive, 0),
        motor_centre=(0.0, 0.0, 0.0), frame_bolts=bolts, seams=[_seam(drive, half, floor, (t, tb))],
        contacts=[Contact(facet=1, side=under, stiffness=pressing)],
    )  # fmt: skip
