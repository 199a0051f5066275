"""What a plate model is made of: flat facets in space, bolts, the motor, spacers, welds, seams, contact.

Lengths in m, forces in N, stresses in Pa, angles in rad. Every facet has its own plane: an origin
and two unit vectors ``e1`` and ``e2``; its normal is ``e1 x e2`` and its mid-plane lies in the
plane. Places on a facet (``centre``, ``outline``, ``start`` ...) are given in that plane. A side
of +1 is the face the normal points out of, -1 the other one.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]
IntArray = NDArray[np.int64]
BoolArray = NDArray[np.bool_]
Pair = Sequence[float] | FloatArray
Triple = Sequence[float] | FloatArray


@dataclass(frozen=True, kw_only=True)
class Hole:
    """A round hole that carries nothing."""

    centre: Pair
    diameter: float


@dataclass(frozen=True, kw_only=True)
class Slot:
    """A slot with round ends: ``length`` end to end, ``angle`` from ``e1`` to its long axis."""

    centre: Pair
    length: float
    width: float
    angle: float = 0.0


@dataclass(frozen=True, kw_only=True)
class Cutout:
    """A cut-out of any shape: its corners, in order, either way round."""

    corners: Sequence[Pair] | FloatArray


@dataclass(frozen=True, kw_only=True)
class Facet:
    """A flat plate: outline in its own plane, thickness, material, and free holes."""

    name: str
    outline: Sequence[Pair] | FloatArray
    origin: Triple
    e1: Triple
    e2: Triple
    thickness: float
    elastic_modulus: float
    poissons_ratio: float
    shear_modulus: float | None = None
    holes: Sequence[Hole | Slot | Cutout] = ()

    @property
    def in_plane_shear_modulus(self) -> float:
        """Shear modulus: the one given, else that of an isotropic material."""
        if self.shear_modulus is not None:
            return self.shear_modulus
        return self.elastic_modulus / (2.0 * (1.0 + self.poissons_ratio))

    @property
    def axes(self) -> FloatArray:
        """Rows ``e1``, ``e2`` and the normal."""
        first, second = np.asarray(self.e1, float), np.asarray(self.e2, float)
        return np.array([first, second, np.cross(first, second)])

    def to_space(self, places: FloatArray) -> FloatArray:
        """Give the points in space of places on the mid-plane, shape (..., 2) to (..., 3)."""
        return np.asarray(self.origin, float) + np.asarray(places, float) @ self.axes[:2]

    def to_plane(self, points: FloatArray) -> FloatArray:
        """Give the places on the mid-plane of points in space, shape (..., 3) to (..., 2)."""
        return np.asarray(
            (np.asarray(points, float) - np.asarray(self.origin, float)) @ self.axes[:2].T
        )


@dataclass(frozen=True, kw_only=True)
class Bolt:
    """A bolt's hole and washer on a facet; a ``slot_length`` above the hole makes it a slot.

    ``slot_offset`` is how far along the slot its middle lies from the bolt.
    """

    facet: int
    centre: Pair
    hole_diameter: float
    washer_diameter: float
    slot_length: float = 0.0
    slot_angle: float = 0.0
    slot_offset: float = 0.0


@dataclass(frozen=True, kw_only=True)
class FrameBolt(Bolt):
    """A bolt to the frame: springs on the washer's annulus, half of each stiffness on each face.

    ``normal_stiffness`` and ``tangential_stiffness`` are in N/m for the whole bolt; both infinite
    means a washer held rigidly. ``frame_side`` is the face the frame lies against.
    """

    normal_stiffness: float
    tangential_stiffness: float
    frame_side: int = -1


@dataclass(frozen=True, kw_only=True)
class MotorBolt(Bolt):
    """A bolt into the motor: its annulus follows the motor as a rigid body, both faces."""


@dataclass(frozen=True, kw_only=True)
class Bend:
    """What is known of the joint of two facets: inner fillet radius, and whether the corner rule holds.

    Joints are found from the geometry; a joint without a ``Bend`` has no fillet and the corner rule.
    """

    facets: tuple[int, int]
    fillet_radius: float = 0.0
    stiff_corner: bool = True


@dataclass(frozen=True, kw_only=True)
class Spacer:
    """A round spacer between the facing sides of two parallel facets, at ``centre`` of the first."""

    facets: tuple[int, int]
    centre: Pair
    diameter: float
    elastic_modulus: float
    poissons_ratio: float
    inner_diameter: float = 0.0


@dataclass(frozen=True, kw_only=True)
class LineWeld:
    """A weld along a line of a facet, to the frame or to a second facet that lies off its plane.

    To the frame it is a row of springs, ``stiffness`` in N/m per metre of length in each
    direction (default: shear modulus of steel, 8e10 Pa, from memory). To another facet the two
    lines are tied rigidly. ``double_sided`` holds the rotation about the line as well.
    """

    facet: int
    start: Pair
    end: Pair
    other_facet: int | None = None
    stiffness: float = 8.0e10
    double_sided: bool = True


@dataclass(frozen=True, kw_only=True)
class Contact:
    """Compression-only contact of one side of a facet with a rigid frame face.

    ``stiffness`` in N/m3 (pressure per penetration). ``region`` is a polygon on the facet; without
    it the whole facet rests on the frame. ``pitch`` is the size of the contact cells; a ``strip`` is
    one cell deep along ``e2``: a piece that may or may not bear (`Family.at`). ``part_of`` is the
    number of the contact a piece was cut from; it counts with that one.
    """

    facet: int
    side: int
    stiffness: float
    region: Sequence[Pair] | None = None
    pitch: float | None = None
    strip: bool = False
    part_of: int | None = None

    def number(self, place: int) -> int:
        """Give the number of the contact it counts with; ``place`` is its own in the model."""
        return place if self.part_of is None else self.part_of


@dataclass(frozen=True, kw_only=True)
class Seam:
    """Two plates joined edge to face by a row of fasteners, as in plastic or wood.

    ``facets`` are the edge facet, which stands at right angles on the other, and the face facet.
    ``start`` and ``end`` lie on the edge facet, along its straight edge that butts. The edge may be
    drawn as it is, to the face (half a thickness off the face facet's mid-plane), or to the
    mid-plane, which lengthens the loads' lever by half a thickness (safe side); up to one thickness
    is taken as drawn, so that a thickness may be swept.
    ``places`` are the fasteners' distances from ``start``. Each fastener is a two-way spring in N/m
    along its axis (square to the face) and across it (both ways), spread evenly over its head or
    washer on the face facet and over as long a piece of the edge. The whole end of the edge facet
    presses on the face, compression only, ``contact_stiffness`` in N/m3, in cells ``pitch`` long.
    Pulled off with no other hold, the edge plate has play: it turns at once until a rim touches.
    The hole under the head is not cut out. In a thickness sweep the lever of half the edge facet's
    thickness stays that of the middle thickness.
    """

    facets: tuple[int, int]
    start: Pair
    end: Pair
    places: Sequence[float]
    axial_stiffness: float
    lateral_stiffness: float
    washer_diameter: float
    contact_stiffness: float
    pitch: float | None = None


@dataclass(frozen=True, kw_only=True)
class Strut:
    """A straight two-force member from the motor or a facet to the frame, points in space.

    ``stiffness`` in N/m along it, its ends included. It starts rigidly on the motor; with ``facet``
    it holds the plate under a disc of ``washer_diameter`` instead, and a start off the mid-plane is
    carried by a rigid lug.
    """

    start: Triple
    end: Triple
    stiffness: float
    facet: int | None = None
    washer_diameter: float = 0.0


@dataclass(frozen=True, kw_only=True)
class SectionLine:
    """A line across a facet along which the surface stress is sampled."""

    facet: int
    start: Pair
    end: Pair
    samples: int = 61


@dataclass(frozen=True, kw_only=True)
class PlateModel:
    """A whole mount: facets, what holds it, and the motor as a rigid body about ``motor_centre``.

    With ``motor_face_diameter`` the facet under the motor follows the motor over that whole disc
    about the motor centre; without it only the bolts' annuli do.
    """

    facets: Sequence[Facet]
    motor_bolts: Sequence[MotorBolt]
    motor_centre: Triple
    frame_bolts: Sequence[FrameBolt] = ()
    bends: Sequence[Bend] = ()
    spacers: Sequence[Spacer] = ()
    welds: Sequence[LineWeld] = ()
    contacts: Sequence[Contact] = ()
    seams: Sequence[Seam] = ()
    struts: Sequence[Strut] = ()
    section_lines: Sequence[SectionLine] = ()
    motor_face_diameter: float | None = None

    @property
    def bolts(self) -> tuple[Bolt, ...]:
        """Frame bolts, then motor bolts."""
        return (*self.frame_bolts, *self.motor_bolts)

    @property
    def named_bolts(self) -> list[tuple[str, Bolt]]:
        """Every bolt with what a message calls it."""
        frame = [(f"frame bolt {i + 1}", bolt) for i, bolt in enumerate(self.frame_bolts)]
        motor = [(f"motor bolt {i + 1}", bolt) for i, bolt in enumerate(self.motor_bolts)]
        return [*frame, *motor]
