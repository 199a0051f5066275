"""The types that flow from the drive file to the answer.

All are frozen; numbers are SI floats (m, N, Pa, rad, s, A, K).  Fields that come from the file, a
default or a card are ``worked.Value`` so that a worked calculation can name their origin.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, Protocol

import numpy as np
from numpy.typing import NDArray

from . import cards
from .held import BoltRing, BoltSet, DrivenShaft, Flats, Grip, Key, RingWeld
from .worked import Value

if TYPE_CHECKING:
    from .outlines import Outline

Array = NDArray[np.float64]
Number = Any  # a float, a worked.Value, or an array that broadcasts


@dataclass(frozen=True, slots=True, kw_only=True)
class Range:
    """An uncertain input: low, likely, high in SI, and where the range comes from."""

    key: str
    low: float
    likely: float
    high: float
    source: str
    kind: str
    origin: str = "assumed"


@dataclass(frozen=True, slots=True, kw_only=True)
class Feet:
    """Where the feet of a motor stand: four bolts in a rectangle, under the shaft and behind the face."""

    shaft_height: Value  # from the underside of the feet to the shaft axis
    across: Value  # between the bolt centres, square to the shaft
    along: Value  # between them along the shaft
    to_face: Value  # from the front bolts to the motor's mounting face


@dataclass(frozen=True, slots=True, kw_only=True)
class Motor:
    """Torque against motor current, and what hangs on the mount."""

    torque_constant: Number  # per ampere of the controller's own kind
    points: tuple[tuple[float, float], ...]  # (current, torque), measured
    torque_scatter: Value
    no_load_current: Value
    speed: Value | None
    mass: Value
    centre_of_mass: Value
    bolts: BoltSet
    bolt_circle: Number  # this, bore, depth and strength are None when the motor stands on feet
    hole_diameter: Value  # in the mount, for a motor bolt or its sleeve
    bore: Number
    thread_depth: Number
    thread_strength: Number
    rotor_inertia: Value
    feet: Feet | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class MotorFace:
    """How the motor's face is clamped to the mount."""

    preload: Value  # of each face bolt
    friction: Value
    spigot: bool  # a spigot takes the radial force
    slotted: bool  # slots let the motor move when friction gives way; round holes stop it


@dataclass(frozen=True, slots=True, kw_only=True)
class Current:
    """What the controller limits, and the currents asked about."""

    kind: str
    set: Value
    wanted: Value | None
    continuous: Value | None
    motor_limit: Value | None


@dataclass(frozen=True, slots=True, kw_only=True)
class ChainDrive:
    """The chain on its two sprockets."""

    chain: cards.Chain
    driving_teeth: Value
    driven_teeth: Value
    centre_distance: Value
    pulls: tuple[tuple[str, Value], ...]  # (words, angle from 'across'), every one is tried
    slack: Value
    slack_given: bool
    wear: Value
    tooth_relief: Value
    offset: Value
    skew: Value
    stretch_ratio: Value
    minimum_dynamic_strength: Value
    joint_pressure: Value | None  # allowed between pin and bush; None where nothing asks for it
    link_share: Value | None  # strength of the clip link over that of the chain; None: riveted


@dataclass(frozen=True, slots=True, kw_only=True)
class Shaft:
    """The motor shaft on its two bearings."""

    diameter: Value
    face_overhang: Value
    face_to_bearing: Value
    bearing_span: Value
    static_rating: Value
    dynamic_rating: Number  # None where nothing asks for it: no motor speed
    bearing: str
    yield_strength: Value
    ultimate_strength: Value
    notch: str  # in words, near the front bearing
    notch_bending: Value  # stress concentration factors there ...
    notch_torsion: Value
    notch_radius: Value  # ... and the radius at the bottom
    elastic_modulus: Value
    bearing_play: Value


@dataclass(frozen=True, slots=True, kw_only=True)
class Hub:
    """How the driving sprocket is held; None for what it does not have or is not told."""

    drive: str
    key: Key | None
    yield_strength: Value  # of the softest of key, shaft and hub
    flats: Flats | None
    grip: Grip | None
    set_screw_count: int
    set_screw_hold: Number
    set_screw_pair: Value
    bolts: BoltRing | None  # between sprocket and hub
    weld: RingWeld | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Driven:
    """What is told of the driven side; None for what is not."""

    bolts: BoltRing | None
    weld: RingWeld | None
    key: Key | None
    key_yield: Value | None
    shaft: DrivenShaft | None
    shaft_diameter: Value | None
    freewheel_torque: Value | None


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
class Fixings:
    """The frame bolts and the joint they clamp."""

    bolts: BoltSet
    span_across: Value
    span_along: Value
    edge: Value
    preload: Value
    assembly_torque: Number  # what to tighten each bolt to
    friction: Value
    slotted: bool
    slot_length: Number  # end to end; nought for round holes
    slots_along: bool  # along the row of bolts, else square to it
    washer_diameter: Value
    hole_diameter: Value
    body_diameter: Value  # of what bears on the hole: the bolt, or its sleeve
    joint_stiffness: Value


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """The member the mount is bolted to; ``None`` for all numbers when the user calls it rigid."""

    member: str
    size: Number = None  # across the face the mount lies on; of a channel its height
    depth: Number = None  # the other outer size; None where the section has only one
    wall: Number = None
    span: Number = None
    place: Number = None  # of the mount, from one end, over the span
    ends: str = "held"
    open_side: str = ""  # of a channel: "away", "side", or anything else for whichever is softer
    elastic_modulus: Number = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """What limits the pull outside the mount."""

    wheel_load: Number
    lifted_load: Number
    driven: str
    mass: Number
    wheelbase: Number
    front_to_centre: Number
    centre_height: Number
    wheel_diameter: Number
    grip_low: Value
    grip_high: Value
    gear_after_chain: Value
    efficiency: Value


@dataclass(frozen=True, slots=True, kw_only=True)
class Duty:
    """How torque comes on, and how often."""

    reverse: Value
    ramp: Number
    starting_factor: Value | None
    bump: Value
    hours: Value
    bearing_hours: Number  # wanted of the front bearing; None without a motor speed
    chain_factor: Number


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
    notch: Number | None = None  # fatigue notch factor of a weld's toe in the cut


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
    edge_second: Number  # from the outer row to the end of the bearing surface
    thickness: Number  # of the part the bolts go through
    towards_motor: float  # way along second in which the material goes on; 0 when it does not
    contacts: tuple[int, ...] = (0,)  # contacts of the plate model that press on this plane
    of_second: bool = False  # the part the bolts go through is of the mount's second material
    around: tuple[Surroundings, ...] = ()  # bolt by bolt, where the part is no rectangle


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
    yield_strength: Value  # of the tube
    along: str = "x"  # the tube's axis, and a point on it ...
    axis: tuple[Number, Number, Number] = (0.0, 0.0, 0.0)
    normal: str = "y"  # ... and the way out of it to the mount


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
    clamp: Clamp | None = None  # holds the whole mount on a tube by friction
    flat_face: bool = True  # the motor's face lies on the mount; else the motor stands on feet
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


@dataclass(frozen=True, slots=True, kw_only=True)
class Policy:
    """Thresholds and design factors."""

    peak_skew: Value
    peak_offset: Value
    running_skew: Value | None
    running_offset: Value | None
    throw_level: Value
    factors: Mapping[str, Value]
    jam: bool  # a dead stop at the motor's speed counts in the safe current


@dataclass(frozen=True, slots=True, kw_only=True)
class Drive:
    """The whole drive, resolved: every number present, each knowing where it came from."""

    title: str
    system: str
    motor: Motor
    face: MotorFace
    current: Current
    chain: ChainDrive
    shaft: Shaft
    hub: Hub
    driven: Driven
    mount: Mount
    fixings: Fixings
    frame: Frame
    use: Use
    duty: Duty
    policy: Policy
    ranges: tuple[Range, ...]
    words: tuple[tuple[str, str], ...]
    warnings: tuple[str, ...]
    plates: Any = None  # the reduced plate model (``plate_route.Route``), or None


class MountForm(Protocol):
    """What a mount form's file must offer."""

    FORM: str
    TITLE: str
    FIELDS: tuple[Any, ...]  # its own keys; one of a common key takes that key's place
    # Optional: UNUSED, common keys the form has no use for; STARTER, values for its starter file;
    # bolt_holes(picker, motor), the holes for frame and motor bolts where they are the form's own.

    def build(self, picker: Any, drive: Any) -> Mount:
        """Lay out segments, cuts and the bolt plane."""
        ...

    def plates(self, drive: Drive, normal: float, tangential: float, pressing: float) -> Any:
        """Lay out the plate model: stiffness of a bolted point (N/m, both ways), contact (N/m3)."""
        ...
