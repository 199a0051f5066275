"""The types that flow from the drive file to the answer.

All are frozen; numbers are SI floats (m, N, Pa, rad, s, A, K).  Fields that come from the file, a
default or a card are ``worked.Value`` so that a worked calculation can name their origin.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Protocol

import numpy as np
from numpy.typing import NDArray

from . import cards
from .held import (
    Bearing,
    BoltRing,
    BoltSet,
    DrivenShaft,
    Flats,
    Grip,
    Key,
    Pin,
    RingWeld,
    RoundShaft,
    Sprocket,
)
from .mounting import Mount
from .trial_entries import Trial
from .worked import Value

if TYPE_CHECKING:
    pass

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
    """Where a motor is held down beside and behind its face: rows of two bolts, of feet or of bands."""

    shaft_height: Value  # from the underside of the feet to the shaft axis
    across: Value  # between the bolt centres, square to the shaft
    along: Number  # between the first and the last of them along the shaft
    to_face: Number  # from the front bolts to the motor's mounting face
    rows: int = 2


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
    washer_diameter: Value  # of what bears on the mount under each face bolt


@dataclass(frozen=True, slots=True, kw_only=True)
class Current:
    """What the controller limits, and the currents asked about."""

    kind: str
    set: Value
    wanted: Value | None
    continuous: Value | None
    motor_limit: Value | None


@dataclass(frozen=True, slots=True, kw_only=True)
class ChainRun:
    """A chain on two sprockets: what its own strength and life ask for."""

    chain: cards.Chain
    driving_teeth: Value
    driven_teeth: Value
    centre_distance: Value
    slack: Value
    minimum_dynamic_strength: Value
    joint_pressure: Value | None  # allowed between pin and bush; None where nothing asks for it
    link_share: Value | None  # strength of the clip link over that of the chain; None: riveted


@dataclass(frozen=True, slots=True, kw_only=True)
class ChainDrive(ChainRun):
    """The chain on the motor, and how it lies."""

    pulls: tuple[tuple[str, Value], ...]  # (words, angle from 'across'), every one is tried
    slack_given: bool
    wear: Value
    tooth_relief: Value
    offset: Value
    skew: Value
    stretch_ratio: Value


@dataclass(frozen=True, slots=True, kw_only=True)
class Jackshaft(RoundShaft):
    """The shaft between two chains, on two bearings, with the second chain.

    Places are measured along the shaft from the first bearing towards the second.
    """

    bearing_span: Value
    first_at: Value  # sprocket of the first chain
    second_at: Value  # sprocket of the second chain
    angles: tuple[tuple[str, Value], ...]  # between the two pulls; every one is tried
    static_rating: Value
    dynamic_rating: Number  # None where nothing asks for it
    bearing: str
    first_key: Key | None
    second_key: Key | None
    key_yield: Value | None
    run: ChainRun


@dataclass(frozen=True, slots=True, kw_only=True)
class ShaftPlace(RoundShaft):
    """A further place of the motor shaft, with its own diameter and notch."""

    at: Value  # from the motor's mounting face


@dataclass(frozen=True, slots=True, kw_only=True)
class Outboard:
    """A third bearing on the motor shaft, beyond the sprocket."""

    place: Value  # from the motor's mounting face
    on_mount: bool  # held by the mount itself, else by the frame
    stiffness: Value  # of the bearing with what holds it, against the pull
    gap: Value  # how far the shaft moves before the bearing carries
    static_rating: Value
    dynamic_rating: Number  # None where nothing asks for it
    bearing: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Shaft(RoundShaft):
    """The motor shaft on its two bearings, and on a third where there is one.

    Diameter and notch are those near the front bearing.
    """

    face_overhang: Value
    face_to_bearing: Value
    bearing_span: Value
    static_rating: Value
    dynamic_rating: Number  # None where nothing asks for it: no motor speed
    bearing: str
    rear: Bearing | None
    elastic_modulus: Value
    bearing_play: Value
    outboard: Outboard | None = None
    places: tuple[ShaftPlace, ...] = ()

    @property
    def thinnest(self) -> Value:
        """Smallest diameter told: what its bending is worked out with, on the safe side."""
        return min((self.diameter, *(p.diameter for p in self.places)), key=float)


@dataclass(frozen=True, slots=True, kw_only=True)
class Hub:
    """How the driving sprocket is held; None for what it does not have or is not told."""

    drive: str
    key: Key | None
    yield_strength: Value  # of the softest of key or pin, shaft and hub
    flats: Flats | None
    grip: Grip | None
    set_screw_count: int
    set_screw_hold: Number
    set_screw_pair: Value
    bolts: BoltRing | None  # between sprocket and hub
    weld: RingWeld | None
    sprocket: Sprocket | None
    pin: Pin | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Driven:
    """What is told of the driven side; None for what is not."""

    bolts: BoltRing | None
    weld: RingWeld | None
    sprocket: Sprocket | None
    key: Key | None
    pin: Pin | None
    key_yield: Value | None  # softest of key or pin, shaft and hub
    shaft: DrivenShaft | None
    bearings: Bearing | None  # both alike
    shaft_diameter: Value | None
    freewheel_torque: Value | None


@dataclass(frozen=True, slots=True, kw_only=True)
class JackScrew:
    """A screw that bears on the mount along the slots of its bolts, against the chain's pull."""

    thread: cards.Thread
    grade: cards.BoltClass
    tip_diameter: Value
    off: Value  # of its line from the middle of the frame bolts


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
    jack: JackScrew | None = None


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
    yield_strength: Number = None
    face_width: Number = None  # of what the mount bears on, where that is not the member's own face


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """What limits the pull outside the mount, and what the drive moves."""

    machine: str  # "" where it is not told
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
class DutyStep:
    """A part of the hours of duty: shares of the current, of the time and of the motor's speed."""

    current: Value
    time: Value
    speed: Value


@dataclass(frozen=True, slots=True, kw_only=True)
class Duty:
    """How torque comes on, and how often."""

    reverse: Value
    ramp: Number
    starting_factor: Value | None
    bump: Value
    hours: Value
    bearing_hours: Number  # wanted of the bearings; None without a motor speed
    chain_factor: Number
    starts: Number  # wanted of the welds; None where nothing is welded
    spectrum: tuple[DutyStep, ...] = ()  # empty: the current held, all the time


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
class PullTest:
    """A pull by hand on the sprocket: how the mount as it was tested moved."""

    tested: Drive  # as it was pulled, with what is known of it now; no pull test of its own
    file: Any  # the drive file of it, for its plate model
    force: Value
    angle: Value  # of the pull, from 'across'
    movement: Value | None  # of the sprocket along the pull
    tip_movement: Value | None  # of the stick's end
    stick: Value | None
    on_motor: bool  # the stick lies on the motor's case: the shaft's bending does not show
    reading_error: Value
    ratio_error: Value  # true ratio of lean to movement over that of the model
    ratio_spread: Value  # half its range
    likely: bool  # every uncertain input at its likely value: a reading that cannot be is refused
    known: dict[str, tuple[float, float]]  # what came out, for each route


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
    jackshaft: Jackshaft | None
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
    trials: tuple[Trial, ...] = ()
    plates: Any = None  # the reduced plate model (``plate_route.Route``), or None
    pull_test: PullTest | None = None


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
