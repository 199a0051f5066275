"""What a mount is to all later steps: its material, cuts, bolt planes and fasteners.

All are frozen; numbers are SI floats.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from . import cards
from .formulas import layout
from .held import BoltSet, Number
from .worked import Value

if TYPE_CHECKING:
    from .outlines import Outline

AXES = ("x", "y", "z")


@dataclass(frozen=True, slots=True, kw_only=True)
class Substance:
    """The mount's material at its temperature, as the checks use it."""

    card: cards.Material
    elastic_modulus: Value
    creep_modulus: Value  # equals the elastic modulus for metals
    poissons_ratio: Value
    shear_modulus: Value
    creep_shear_modulus: Value
    yield_strength: Value
    fatigue_strength: Value  # fully reversed, for the number of cycles of its card
    compressive_over_tensile: Value
    strain_limit: Value | None
    density: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Segment:
    """A length of mount that bends and twists as a beam of rectangular section.

    ``axis`` points from the fixings towards the motor, ``across`` along the width and ``normal``
    through the thickness; all three are unit vectors along the drive's axes.
    """

    name: str
    start: tuple[Number, Number, Number]
    end: tuple[Number, Number, Number]
    axis: str  # "x", "y" or "z"
    across: str
    normal: str
    length: Number
    width: Number
    thickness: Number


@dataclass(frozen=True, slots=True, kw_only=True)
class Beyond:
    """Supports of the plate model by number: frame bolts, contacts, welds, struts.

    A spacer is named with its end: 0 on the first of its plates, 1 on the second.
    """

    bolts: tuple[int, ...] = ()
    contacts: tuple[int, ...] = ()
    welds: tuple[int, ...] = ()
    struts: tuple[int, ...] = ()
    spacers: tuple[tuple[int, int], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """A named section of the mount: where it is, which holes it passes, which segment it closes.

    ``beyond`` names the supports on the far side of the motor where others share the load; without
    it the whole load goes through the cut.
    """

    name: str
    place: tuple[Number, Number, Number]
    axis: str
    across: str
    normal: str
    width: float
    thickness: float
    holes: tuple[tuple[float, float], ...]  # (position across, diameter)
    segment: int | None = None  # the segment whose held warping is felt here
    inside_factor: Number | None = None  # stress inside a bend over that of a straight bar
    beyond: Beyond | None = None
    second: bool = False  # of the mount's second material
    toe: bool = False  # the toe of a weld lies in the cut


@dataclass(frozen=True, slots=True)
class Gap:
    """How far it is from a bolt to what lies one way from it: an open end, or the next bolt."""

    distance: Number
    open_end: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Surroundings:
    """What lies round a bolt's own hole in a plate of free shape.

    ``gaps`` holds, along the first and along the second axis of the plane, the gap below and above.
    """

    hole_diameter: Value
    slotted: bool
    gaps: tuple[tuple[Gap, Gap], tuple[Gap, Gap]]


@dataclass(frozen=True, slots=True, kw_only=True)
class BoltPlane:
    """Where the frame bolts are, and the plane they clamp."""

    centre: tuple[Number, Number, Number]
    first: str  # in-plane axis along the bolt row
    second: str  # in-plane axis across the rows
    normal: str
    bolts: tuple[tuple[Number, Number], ...]  # places along first and second, from the centre
    half_first: Number  # half extent of the bearing surface along first
    edge_second: Number  # from the outer row to the end of the mount
    thickness: Number  # of the part the bolts go through
    towards_motor: float  # way along second in which the material goes on; 0 when it does not
    contacts: tuple[int, ...] = (0,)  # contacts of the plate model that press on this plane
    of_second: bool = False  # the part the bolts go through is of the mount's second material
    around: tuple[Surroundings, ...] = ()  # bolt by bolt, where the part is no rectangle
    on_member: bool = True  # on the face of the frame member, its width along second
    face_half: Number = None  # from the centre to that face's edge; None without one

    @property
    def bearing_edge(self) -> Number:
        """From the outer row to the end of the bearing surface: of the mount, or of the frame's face."""
        if self.face_half is None:
            return self.edge_second
        return layout.bearing_end(self.edge_second, self.face_half, self.outer)

    @property
    def outer(self) -> Number:
        """How far the outermost row is from the centre."""
        row = max((row for _, row in self.bolts), key=lambda r: abs(float(r)))
        return row if float(row) >= 0.0 else layout.opposite(row)


@dataclass(frozen=True, slots=True, kw_only=True)
class Screws:
    """A row of fasteners that joins two plates of the mount edge to face."""

    count: int
    places: tuple[Number, ...]  # across the width, from its middle
    rim: Number  # from the row to the near rim of the plate under the heads
    head: Number  # diameter of a head, or of what a dowel bears on
    words: str  # what they are, for a message
    diameter: Number
    length_in_edge: Number  # of thread or dowel in the edge of the standing plate
    axial_stiffness: Value  # N/m of one fastener, pulled out of the edge
    lateral_stiffness: Value
    holding: Value  # N, what pulls one out of the edge
    bearing: Value  # N, what one bears across
    head_pull: Value | None  # N, what pulls its head through the other plate; a dowel has none
    smooth: bool  # a dowel: pull and shear count each in full


@dataclass(frozen=True, slots=True, kw_only=True)
class Weld:
    """A weld of the mount to its frame, in the order of the plate model's welds to the frame."""

    name: str
    length: Number  # that counts, without the craters at both ends
    throat: Number  # of each fillet, as far as it is sound
    along: str  # axis of the line
    sides: Value  # 1: a single fillet; 2: on both faces
    apart: Number  # between the two fillets' roots; nothing for a single one
    ultimate_strength: Number  # of the weaker part joined, beside the weld
    correlation: Value  # beta_w of EN 1993-1-8


@dataclass(frozen=True, slots=True, kw_only=True)
class Gussets:
    """Triangles welded between leg and foot of an angle, along its side edges."""

    count: int
    height: Number  # up the leg, from the foot's top
    depth: Number  # along the foot, from the leg
    thickness: Number


@dataclass(frozen=True, slots=True, kw_only=True)
class Rod:
    """A strut from the mount or the motor to the frame, in the order of the plate model's struts."""

    name: str
    length: Number
    area: Number
    second_moment: Number  # the least one
    elastic_modulus: Number
    yield_strength: Number
    stiffness: Value  # N/m along it, both end joints included; all struts of a mount alter alike
    start: tuple[Number, Number, Number]
    end: tuple[Number, Number, Number]  # on the frame
    on_motor: bool  # it starts on the motor, else on the mount
    washer_diameter: Number  # what it holds the mount by


@dataclass(frozen=True, slots=True, kw_only=True)
class Spacer:
    """A round spacer between two parallel plates of the mount, in the order of the plate model's."""

    across: Number  # place of its axis
    along: Number
    length: Number
    diameter: Number
    bore: Number
    elastic_modulus: Number
    poissons_ratio: Number
    yield_strength: Number


@dataclass(frozen=True, slots=True, kw_only=True)
class Clamp:
    """What holds a mount on a tube by friction: U-bolts, a band or a split block, pulled along ``normal``."""

    kind: str
    bolts: BoltSet
    pulls: Value  # legs or strands that each bolt or U-bolt pulls with
    preload: Value  # of each leg, strand or bolt
    friction: Value
    contact_angle: Number  # half the arc that presses on a round tube; None on a square one
    length: Value  # of the grip along the tube
    along: str = "x"  # the tube's axis, and a point on it ...
    axis: tuple[Number, Number, Number] = (0.0, 0.0, 0.0)
    normal: str = "y"  # ... and the way out of it to the mount


@dataclass(frozen=True, slots=True, kw_only=True)
class Bands:
    """Bands that press a round motor into a cradle; where they are is in ``Motor.feet``."""

    number: Value  # of bands
    rows: Value  # that the motor is held by: the bands, or the two halves of a single one
    place: Number  # of the outermost row, from the middle of the rows, and ...
    square_sum: Number  # ... the sum of the squared distances of all of them
    diameter: Value  # of the motor
    seat_angle: Value  # half the arc it lies in
    wrap: Value  # the arc each band lies on
    kept: Value  # share of the tension that stays


@dataclass(frozen=True, slots=True, kw_only=True)
class Mount:
    """A mount in the form all later steps understand.

    ``segments`` are those of the section route, one after another from the fixings to the motor;
    a form without them is worked out by the plate model alone.  ``second`` is another material that
    the facets named in ``second_facets`` are made of.
    """

    form: str
    material: Substance
    thickness: Value
    width: Value
    grade: str
    weight_acts: str
    warping_held: Value
    softness: Value  # true give of mount and joint over that of the model
    local_stress: Value  # true stress round the bolts over that of the plate model
    prying: Value  # true tension of the frame bolts over that of the plate model
    segments: tuple[Segment, ...]
    cuts: tuple[Cut, ...]
    planes: tuple[BoltPlane, ...]  # the first is where the frame member takes the load
    area: float  # of the plate as cut, about, m^2
    second: Substance | None = None
    second_facets: tuple[str, ...] = ()
    screws: Screws | None = None
    welds: tuple[Weld, ...] = ()
    gussets: Gussets | None = None
    rods: tuple[Rod, ...] = ()
    spacers: tuple[Spacer, ...] = ()
    opening: Number = None  # hole that the motor's body goes through in the plate behind it
    outline: Outline | None = None  # of a plate of the user's own shape, and ...
    rests: tuple[tuple[tuple[float, float], ...], ...] = ()  # ... the faces by which it bears
    heel: Value | None = None  # of an angle: from the back of its leg to where its foot bears
    clamp: Clamp | None = None  # holds the whole mount on a tube by friction
    bands: Bands | None = None  # hold the motor in a cradle
    flat_face: bool = True  # the motor's face lies on the mount; else the motor stands on feet or lies in a cradle
    own: Mapping[str, Number] = field(default_factory=dict)  # measures that only this form has

    @property
    def motor_held(self) -> bool:
        """Whether a strut holds the motor itself: its face bolts then see what the strut leaves."""
        return any(rod.on_motor for rod in self.rods)

    def substance(self, second: bool) -> Substance:
        """Give the material of a part: the second one, or the mount's own."""
        return self.second if second and self.second is not None else self.material

    @property
    def substances(self) -> tuple[Substance, ...]:
        """The mount's materials."""
        return (self.material,) if self.second is None else (self.material, self.second)

    @property
    def plane(self) -> BoltPlane:
        """The main bolt plane."""
        return self.planes[0]
