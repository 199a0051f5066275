"""What bolted and welded angles share: the bend at the heel, and leg and foot as two facets."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from ..data.bends import least_radius
from ..fields import may
from ..formulas import concentration, layout
from ..model import Drive, Number
from ..worked import Value
from . import _common
from ._parts import Parts, Picker

if TYPE_CHECKING:
    from ..plates import Facet

FOOT_THICKNESS = may("mount.foot_thickness", "length", "thickness of the foot when it differs", "0.5 mm", "150 mm")  # fmt: skip
BEND_RADIUS = may("mount.bend_radius", "length", "inside radius of the bend at the heel", "0.1 mm", "500 mm", example="16 mm")  # fmt: skip

TIGHT, USUAL, WIDE = 1.0, 2.0, 4.0  # inside radius over thickness
TIGHTEST = 0.5  # the same, of an extruded angle and of soft sheet
ROOM = 0.8  # of the way from the heel to the nearest bolts


def bend_radius(picker: Picker, parts: Parts, thickness: Value, way: float) -> Value:
    """Give the inside radius of the heel; a rolled or extruded angle may be tighter than a bent one."""
    t, card = float(thickness), parts.material.card
    known = least_radius(card.id, t)
    low, likely, high, source = radii(parts, t)
    room = ROOM * way if way > 0 else low  # no room at all: told below
    low, likely, high = (min(radius, room) for radius in (low, likely, high))
    radius = picker.between("mount.bend_radius", low, likely, high, source)
    if radius >= way:
        picker.mistake(
            "mount.bend_radius",
            f"reaches the nearest bolts, {way * 1000:.1f} mm from the heel",
            "it is the inside radius of the bend",
        )
    given = picker.optional("mount.bend_radius") is not None
    if known and given and radius < known[0] * (1 - 1e-9):
        picker.warnings.append(
            f"mount.bend_radius: bent cold, {card.name} of {t * 1000:g} mm cracks when the inside "
            f"radius is below {known[0] * 1000:.1f} mm ({known[1]}); by hand allow 1.5 times that. "
            "A rolled or extruded angle may be tighter."
        )
    return radius


def radii(parts: Parts, thickness: float) -> tuple[float, float, float, str]:
    """Give the least, likely and largest inside radius of a heel, and what that rests on."""
    t, card = thickness, parts.material.card
    known = least_radius(card.id, t)
    least = known[0] if known else TIGHT * t
    tight = TIGHTEST if least < t or "extrusion" in card.form else TIGHT
    source = f"common practice, no source ({tight:g} to 4 thicknesses, bent, rolled or extruded)"
    if known and least > USUAL * t:
        source += f"; least bend radius: {known[1]}"
    return tight * t, max(USUAL * t, least), max(WIDE * t, least), source


def inside(radius: Value, thickness: Number) -> Number:
    """Give the stress inside the bend over that of a straight bar."""
    middle = layout.half(thickness)
    return concentration.curved_bar_inside(layout.total(radius, middle), middle)


@dataclass(frozen=True, slots=True, kw_only=True)
class Corner:
    """Where the mid-planes of leg and foot meet, m, and which way the foot points along z."""

    y: float
    z: float
    side: float
    foot_thickness: float

    @property
    def under(self) -> int:
        """The side of the foot that lies on the frame; its normal is -side along y."""
        return 1 if self.side > 0 else -1


def corner_of(drive: Drive) -> Corner:
    """Give the corner of an angle from its fixing plane, which is the foot's underside."""
    plane, t = drive.mount.plane, float(drive.mount.plane.thickness)
    return Corner(
        y=float(plane.centre[1]) + t / 2, z=float(drive.mount.thickness) / 2,
        side=-plane.towards_motor, foot_thickness=t,
    )  # fmt: skip


def facets(drive: Drive, corner: Corner, foot_length: float) -> list[Facet]:
    """Give leg and foot; on the foot the second axis runs from the leg's mid-plane to the toe."""
    half = float(drive.mount.width) / 2
    upright = _common.facet_of(
        drive, "leg", _common.rectangle(half, corner.y, _common.top_of(drive)),
        (0.0, 0.0, corner.z), (0.0, 1.0, 0.0), float(drive.mount.thickness), True,
    )  # fmt: skip
    flat = _common.facet_of(
        drive, "foot", _common.rectangle(half, 0.0, foot_length),
        (0.0, corner.y, corner.z), (0.0, 0.0, corner.side), corner.foot_thickness, False,
    )  # fmt: skip
    return [upright, flat]
