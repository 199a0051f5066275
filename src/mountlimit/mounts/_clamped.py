"""What the forms held on a frame tube by friction share: their keys, and where the tube lies."""

from __future__ import annotations

from dataclasses import replace

from ..fields import Field, choose, may, need
from ..formulas import layout
from ..model import Motor, Number
from ..mounting import BoltPlane, Clamp, Cut
from ..worked import Value
from . import _common
from ._parts import Parts, Picker

TUBES = ("round tube", "square tube")
ACROSS, WITH_SHAFT = "across", "with the shaft"

TUBE = (
    Field(key="frame.member", kind="choice", meaning="the tube the clamp grips", required=True, choices=TUBES,
          example="round tube"),
    need("frame.size", "length", "outer diameter of the tube, or its width", "5 mm", "500 mm", "40 mm"),
    choose("mount.tube", "way the tube runs: across (in the plane of the ear) or with the shaft (square to the ear)", (ACROSS, WITH_SHAFT)),
    need("mount.grip_length", "length", "length of the tube that the clamp grips, end to end", "3 mm", "1 m", "60 mm"),
)  # fmt: skip
HOLD = (
    Field(key="fixings.clamp_class", kind="bolt class", meaning="property class of the clamp bolts"),
    may("fixings.clamp_tightening_torque", "torque", "torque each nut or bolt of the clamp was tightened to", "0.1 N*m", "2000 N*m", example="8 N*m"),
    may("fixings.clamp_preload", "force", "tension of each leg, strand or bolt of the clamp when it is known", "10 N", "1000 kN", example="4 kN"),
    choose("fixings.clamp_surface", "what the clamp grips", ("dry steel", "painted", "oiled", "aluminium on steel", "rubber lining")),
    may("fixings.clamp_friction", "ratio", "friction of the clamp on the tube", "0.01", "1", example="0.12"),
    choose("fixings.seat", "how the clamp fits a round tube: a shell (or bored block), or a flat plate", ("shell", "flat")),
    may("fixings.contact_angle", "angle", "half the arc of a round tube that bears: a few degrees on a flat plate, 90 in a perfect fit", "1 deg", "90 deg", example="60 deg"),
)  # fmt: skip
STARTER = {
    "frame.member": "round tube", "frame.size": "40 mm", "frame.wall": "4 mm",
    "mount.grip_length": "60 mm", "fixings.clamp_surface": "painted",
}  # fmt: skip
UNUSED = ("mount.route", "mount.warping_held", "frame.depth", "frame.open_side", *_common.NO_FACE)


def runs_with_shaft(picker: Picker) -> bool:
    """Tell whether the tube is square to the ear."""
    return picker.word("mount.tube", ACROSS) == WITH_SHAFT


def tube_plane(place: tuple[Number, Number, Number], normal: str, width: Value) -> BoltPlane:
    """Give the surface of the tube as a plane without bolts: where the frame member takes the load."""
    nothing = Value(0.0, "edge", "derived", "no bolts here")
    return BoltPlane(
        centre=place, first="x", second="z" if normal == "y" else "y", normal=normal, bolts=(),
        half_first=layout.half(width), edge_second=nothing, thickness=nothing, towards_motor=0.0,
        contacts=(),
    )  # fmt: skip


def placed(parts: Parts, with_shaft: bool, plane: BoltPlane, radius: Number) -> Clamp | None:
    """Put the clamp on the axis of its tube, a radius behind the tube's surface."""
    if parts.clamp is None:
        return None
    x, y, z = plane.centre
    axis = (x, layout.difference(y, radius), z)
    if plane.normal == "z":
        axis = (x, y, layout.difference(z, radius))
    return replace(
        parts.clamp, along="z" if with_shaft else "x", axis=axis, normal=plane.normal
    )  # fmt: skip


def cut(
    name: str, y: Number, width: Value, thickness: Value, holes: tuple[tuple[float, float], ...]
) -> Cut:
    """Give a cut straight across the ear."""
    return Cut(
        name=name, place=(0.0, y, layout.half(thickness)), axis="y", across="x", normal="z",
        width=float(width), thickness=float(thickness), holes=holes,
    )  # fmt: skip


def motor_cut(motor: Motor, reach: Number, width: Value, thickness: Value) -> Cut:
    """Give the cut through the motor bolts nearest the tube."""
    holes = _common.motor_holes(motor, float(reach))
    return cut("ear at the motor bolts", layout.opposite(reach), width, thickness, holes)
