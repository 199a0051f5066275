"""Plate at the frame bolts: bearing and tear-out, each bolt by the way it pushes on its hole.

The part of a bolt's shear along the row and the part across it are compared each with what lies
ahead of the bolt that way: the end of the mount, or the next hole.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from .. import strengths
from ..case import Case, Check, Row, has_frame_bolts
from ..factors import DESIGN_FACTORS, MOUNT_FACTORS
from ..formulas import hole_limits, holes, layout, usage
from ..model import Drive, Number
from ..mounting import BoltPlane, Substance, Surroundings
from ..worked import Value

ALONG_ROW, ACROSS_ROW = 0, 1  # first and second axis of the bolt plane
NO_PART = Value(1.0, "partial factor", "derived", "the design factor is put on the whole check")
SOFT = ("plastic", "wood")
GOES_ON = Value(1.0, "towards the motor", "derived", "the material goes on: no end that way")


@dataclass(frozen=True, slots=True)
class Place:
    """One frame bolt's hole: the drive, the plane it clamps, and where it is in it."""

    drive: Drive
    plane: BoltPlane
    bolt: tuple[Number, Number]

    @property
    def material(self) -> Substance:
        """Material of the part the bolt goes through."""
        return self.drive.mount.substance(self.plane.of_second)

    @property
    def around(self) -> Surroundings | None:
        """What lies round the hole, where the part is no rectangle."""
        plane = self.plane
        return plane.around[plane.bolts.index(self.bolt)] if plane.around else None

    @property
    def hole(self) -> Number:
        """Diameter of the hole, or width of the slot."""
        return self.around.hole_diameter if self.around else self.drive.fixings.hole_diameter

    @property
    def slotted(self) -> bool:
        """Tell whether the hole is a slot."""
        return self.around.slotted if self.around else self.drive.fixings.slotted


def rows(case: Case) -> list[Row]:
    """Compare the shear of every frame bolt with the resistance of its hole."""
    drive, bolts = case.drive, case.response.bolts
    found = []
    places = [(plane, bolt) for plane in drive.mount.planes for bolt in plane.bolts]
    for i, (plane, bolt) in enumerate(places):
        at = Place(drive, plane, bolt)
        soft = at.material.card.family in SOFT
        slots = ", slotted hole: taken across the slot" if at.slotted else ""
        where = f"frame bolt {i + 1}{slots}"
        if soft:
            borne = crushing_force(at)
            found.append(_row(f"{where}, crushed", bolts.shear[i], borne))
        for axis, shear, words in (
            (ALONG_ROW, bolts.shear_first[i], "along the row"),
            (ACROSS_ROW, bolts.shear_second[i], "across the row"),
        ):
            demand = hole_limits.part_size(shear)
            ways = [(f"torn out {words}", plug_force)] if soft else [
                (f"bearing {words}", bearing_force), (f"torn out {words} by AISC 360", torn_force),
            ]  # fmt: skip
            for name, resistance in ways:
                limit = _by_way(shear, resistance, at, axis)
                found.append(_row(f"{where}, {name}", demand, limit))
    return found


def _row(station: str, demand: Number, capacity: Number) -> Row:
    return Row(station=station, demand=demand, capacity=capacity, quantity="force",
               utilisation=usage.utilisation(demand, capacity))  # fmt: skip


def _by_way(shear: Number, resistance: Any, at: Place, axis: int) -> Number:
    """Give the resistance the way the bolt pushes: against the force of the mount on it."""
    if np.ndim(shear) == 0:
        return resistance(at, axis, -1.0 if shear > 0 else 1.0)
    return np.where(
        np.asarray(shear) > 0, resistance(at, axis, -1.0), resistance(at, axis, 1.0)
    )  # fmt: skip


def next_bolt(at: Place, axis: int, way: float) -> Number | None:
    """Give the distance to the next bolt one way along an axis, or None."""
    own = at.bolt[axis]
    ahead = [b[axis] for b in at.plane.bolts
             if (float(b[axis]) - float(own)) * way > 1e-9]  # fmt: skip
    if not ahead:
        return None
    nearest = min(ahead, key=lambda place: abs(float(place) - float(own)))
    return layout.difference(nearest, own) if way > 0 else layout.difference(own, nearest)


def to_end(at: Place, axis: int, way: float) -> tuple[Number, bool]:
    """Give how far material goes one way from an outer bolt, and whether an open end is there.

    Towards the motor it goes on; the motor's own holes are not in the line of the bolts.
    """
    if axis == ALONG_ROW:
        side = at.plane.half_first
        return (layout.difference if way > 0 else layout.total)(side, at.bolt[axis]), True
    if way == at.plane.towards_motor:
        return GOES_ON, False
    return at.plane.edge_second, True


def ahead(at: Place, axis: int, way: float) -> tuple[Number, bool]:
    """Give the distance to what lies ahead of a bolt, and whether that is an open end."""
    if at.around:
        gap = at.around.gaps[axis][int(way > 0)]
        return gap.distance, gap.open_end
    spacing = next_bolt(at, axis, way)
    return to_end(at, axis, way) if spacing is None else (spacing, False)


def _alone(at: Place, axis: int) -> bool:
    """Tell whether no other bolt is in line with a bolt, along the force."""
    if at.around:
        return all(gap.open_end for gap in at.around.gaps[axis])
    return all(next_bolt(at, axis, way) is None for way in (-1.0, 1.0))


def _across_factor(at: Place, axis: int) -> Number:
    """Give k_1: the smallest over what lies on both sides of the line of force."""
    hole, other = at.hole, 1 - axis
    found = []
    for way in (-1.0, 1.0):
        distance, is_end = ahead(at, other, way)
        factor = holes.bearing_k1_edge if is_end else holes.bearing_k1_inner
        found.append(factor(distance, hole))
    return hole_limits.governing_factor(found[0], found[1])


def plate_strength(at: Place) -> Number:
    """Give the ultimate strength of the mount as it is."""
    return strengths.ultimate(at.material)


def _thickness(at: Place) -> Number:
    return at.plane.thickness


def bearing_force(at: Place, axis: int, way: float) -> Number:
    """Give the bearing resistance of EN 1993-1-8 table 3.4 with partial factor 1."""
    hole, body = at.hole, at.drive.fixings.body_diameter
    strength, bolt_strength = plate_strength(at), at.drive.fixings.bolts.grade.ultimate_strength
    distance, is_end = ahead(at, axis, way)
    factor = holes.bearing_alpha_end if is_end else holes.bearing_alpha_inner
    along = factor(distance, hole, bolt_strength, strength)
    along = hole_limits.governing_factor(along, along)
    across = _across_factor(at, axis)
    force = holes.bearing_resistance(across, along, strength, body, _thickness(at), NO_PART)
    if _alone(at, axis):
        single = hole_limits.single_lap_bearing(strength, body, _thickness(at), NO_PART)
        force = hole_limits.lower_force(force, single)
    return hole_limits.slotted_bearing(force) if at.slotted else force


def _clear(at: Place, axis: int, way: float) -> Number:
    hole = at.hole
    distance, is_end = ahead(at, axis, way)
    return (holes.clear_distance if is_end else hole_limits.clear_between)(distance, hole)


def torn_force(at: Place, axis: int, way: float) -> Number:
    """Give the lower of tear-out and bearing by AISC 360-16 eq. J3-6."""
    strength, thickness = plate_strength(at), _thickness(at)
    torn = holes.tear_out(_clear(at, axis, way), thickness, strength)
    borne = holes.bearing_strength(at.drive.fixings.body_diameter, thickness, strength)
    return hole_limits.lower_force(torn, borne)


def crushing_force(at: Place) -> Number:
    """Give the force at which a bolt or sleeve crushes the hole of a soft mount: yield on d t."""
    strength = at.material.yield_strength
    return holes.bearing_force(at.drive.fixings.body_diameter, _thickness(at), strength)


def plug_force(at: Place, axis: int, way: float) -> Number:
    """Give the force that shears a plug out of a soft mount, at yield or its shear strength."""
    shear = strengths.yielding_shear(at.material)
    return holes.tear_out_shear(_clear(at, axis, way), _thickness(at), shear)


def factor_of_materials(drive: Drive, name: str) -> tuple[float, str]:
    """Give a check's own factor for wrought metals; other materials keep that of their mount."""
    classes = [m.card.design_class for m in drive.mount.substances]
    return max(DESIGN_FACTORS[name] if c == "metal" else MOUNT_FACTORS[c] for c in classes)


CHECKS = (
    Check(
        name="bolt_bearing", part="holes for the frame bolts", kind="strength",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="chain off", sees="the holes go oval and the mount shifts; at the end of the plate a hole tears open",
        applies=has_frame_bolts, rows=rows, choose_factor=lambda drive: factor_of_materials(drive, "bolt_bearing"),
    ),
)  # fmt: skip
