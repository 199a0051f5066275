"""Screws, bolts or dowels in the edge of a plate: how they give and what they hold, by its material.

Wood goes by EN 1995-1-1, a plastic by the shear of its thread, a metal by its tapped thread.  Holes
are pre-drilled.  What they bear across goes by Johansen's modes for every material, with the
embedment strength that its family has.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from .. import cards, strengths
from ..fields import COMMON, Field, choose, may, need
from ..formulas import (
    bolt_group,
    edge_screws,
    equivalent,
    hole_limits,
    johansen,
    joint,
    threads,
    timber_screws,
)
from ..model import Number
from ..mounting import Screws, Substance
from ..worked import Value

if TYPE_CHECKING:
    from ._parts import Picker

Spread = tuple[float, float, float]  # low, likely and high over what is worked out
KINDS = ("wood screw", "machine screw", "dowel")
FIELDS = (
    Field(key="mount.screws", kind="screws", required=True, example="6 x 5 mm", meaning="number and diameter of the screws, bolts or dowels in the edge; a machine screw by its thread: '6 x M5'"),
    choose("mount.screw_kind", "what they are: a dowel is a dry one, held by friction only", KINDS),
    need("mount.screw_length", "length", "length of thread or dowel in the edge of the upright", "5 mm", "300 mm", "40 mm"),
    may("mount.screw_span", "length", "first to last screw of the row", "5 mm", "2 m", example="100 mm"),
    may("mount.screw_head", "length", "diameter of the head, or of the washer under it", "3 mm", "60 mm", example="10 mm"),
    may("mount.screw_stiffness", "stiffness", "stiffness of one screw against being drawn out, its head included; across it in the same proportion", "1 N/mm", "1000 kN/mm", example="2 kN/mm"),
    may("mount.screw_hold", "force", "what draws one screw out of the edge", "5 N", "200 kN", example="1500 N"),
    may("mount.screw_bearing", "force", "what one screw bears across its axis", "5 N", "200 kN", example="1200 N"),
    may("mount.screw_head_pull", "force", "what pulls the head of one screw through the base plate", "5 N", "500 kN", example="2 kN"),
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Make:
    """What a kind of fastener is made of; all from memory."""

    modulus: float  # Pa
    strength: float  # tensile, Pa
    shear_share: float  # shear over tensile strength
    core_share: float  # core over diameter
    head_share: float  # head over diameter, for a dowel what it bears on


MAKE = {
    "wood screw": Make(
        2.05e11, 5.0e8, 0.5, 0.65, 2.0
    ),  # EN 14592: core 0.6 to 0.75 of the diameter
    "machine screw": Make(2.05e11, 4.0e8, 0.5, 0.8, 1.5),  # class 4.6, an unmarked screw
    "dowel": Make(1.2e10, 8.0e7, 0.2, 1.0, 1.5),  # hardwood
}
CHARACTERISTIC = (1.0, 1.49, 1.98)  # 5 % value, mean, 95 % value with a scatter of 20 %
TYPICAL = (0.7, 1.0, 1.3)
GIVE = (0.5, 1.0, 2.0)
FRICTION = (1.0e5, 2.0e5, 5.0e5)  # Pa on a dry dowel
ACROSS_GRAIN = 30.0  # modulus along over across the grain (EN 338)
DOWEL_AXIAL = 0.1  # of its stiffness across, while friction holds
BEARING_STRESS = 2.4  # over ultimate strength, metals (AISC 360-16 section J3.10)
NO_PART = 1.0  # partial factor: the design factor is put on the whole check


@dataclass(frozen=True, slots=True, kw_only=True)
class Seat:
    """The two plates a row joins, and one fastener of it."""

    edge: Substance  # of the standing plate, whose edge holds the thread
    edge_thickness: Number
    under_head: Substance
    under_thickness: Number
    kind: str
    diameter: Value
    core: Number
    length: Number
    head: Number
    thread: cards.Thread | None

    @property
    def make(self) -> Make:
        """What the fastener is made of."""
        return MAKE[self.kind]


def seat(
    picker: Picker, edge: Substance, edge_thickness: Number, under_head: Substance,
    under_thickness: Number,
) -> tuple[int, Seat]:  # fmt: skip
    """Read what the row is made of: count, and one fastener in its plates."""
    count, size, thread = picker.card("mount.screws")
    wood_or_plastic = edge.card.family in ("wood", "plastic")
    kind = picker.word(
        "mount.screw_kind",
        "wood screw" if wood_or_plastic and thread is None else "machine screw",
    )
    diameter = Value(size, "mount.screws", "given", "number and diameter of the screws")
    if kind == "machine screw" and thread is None:
        picker.mistake("mount.screws", "a machine screw goes by its thread", "for example '6 x M5'")
    length = picker.number("mount.screw_length")
    if kind == "machine screw" and thread is not None:
        core: Number = thread.minor_diameter
    else:
        core = MAKE[kind].core_share * diameter
    head = picker.optional("mount.screw_head")
    if head is None:
        head = _usual_head(kind, diameter, thread)
    elif kind == "dowel":
        picker.mistake("mount.screw_head", "is not asked for: a dowel has no head", "leave it out")
    elif head <= diameter:
        picker.mistake("mount.screw_head", "expected wider than the screw", "see mount.screws")
        head = _usual_head(kind, diameter, thread)  # so that the rest can be looked at
    return count, Seat(
        edge=edge, edge_thickness=edge_thickness, under_head=under_head,
        under_thickness=under_thickness, kind=kind, diameter=diameter, core=core, length=length,
        head=head, thread=thread if kind == "machine screw" else None,
    )  # fmt: skip


def _usual_head(kind: str, diameter: Value, thread: cards.Thread | None) -> Number:
    if thread is not None and kind == "machine screw":
        return thread.head_diameter
    return MAKE[kind].head_share * diameter


def screws(picker: Picker, count: int, at: Seat, places: tuple[float, ...], rim: Number) -> Screws:
    """Give the row with its stiffness and what it holds, each a listed range."""
    axial, lateral, why = stiffness(at)
    words = f"{why}; half to twice of it: common practice, no source"
    give = _ranged(picker, "mount.screw_stiffness", axial, GIVE, words)
    ratio = float(lateral) / float(axial)
    held = _ranged(picker, "mount.screw_hold", *holding(at))
    bears = _ranged(picker, "mount.screw_bearing", *bearing(at))
    pull: Value | None = None
    if at.kind != "dowel":
        pull = _ranged(picker, "mount.screw_head_pull", *head_pull(at))
    elif picker.optional("mount.screw_head_pull") is not None:
        picker.mistake(
            "mount.screw_head_pull", "is not asked for: a dowel has no head", "leave it out"
        )
    return Screws(
        count=count, places=places, rim=rim, head=at.head, words=f"{at.kind}s in the edge",
        diameter=at.diameter,
        length_in_edge=at.length, axial_stiffness=give,
        lateral_stiffness=Value(ratio * give, "mount.screw_stiffness", give.origin, why),
        holding=held, bearing=bears, head_pull=pull, smooth=at.kind == "dowel",
    )  # fmt: skip


def _ranged(picker: Picker, key: str, value: Number, spread: Spread, source: str) -> Value:
    low, likely, high = (float(value) * s for s in spread)
    return picker.between(key, low, likely, high, source)


def stiffness(at: Seat) -> tuple[Number, Number, str]:
    """Give the likely stiffness of one fastener along and across its axis, N/m, and its source."""
    edge, under = at.edge, at.under_head
    woods = [m for m in (edge, under) if m.card.family == "wood"]
    if edge.card.family == "wood":
        density: Number = woods[0].card.density
        if len(woods) == 2:
            density = timber_screws.mean_density(density, woods[1].card.density)
        lateral: Number = timber_screws.slip_modulus(density, at.diameter)
        if under.card.design_class == "metal":
            lateral = timber_screws.slip_modulus_to_steel(lateral)
        thread = timber_screws.axial_stiffness(at.diameter, at.length)
        why = "EN 1995-1-1 table 7.1 across, wood screws (Blass, from memory) along, with the head's seat"
    else:
        soft = min((edge, under), key=lambda m: float(m.elastic_modulus))
        lateral = edge_screws.pin_slip_stiffness(soft.elastic_modulus, at.make.modulus, at.core)
        thread = edge_screws.thread_stiffness(
            edge.shear_modulus, at.length, at.edge_thickness, at.diameter
        )
        why = "pin on an elastic foundation across, sheared sleeve along, with the head's seat (from memory)"
    if at.kind == "dowel":
        return DOWEL_AXIAL * lateral, lateral, f"{why}; a dry dowel along: {COMMON}"
    shank = edge_screws.shank_stiffness(at.make.modulus, at.core, at.under_thickness, at.length)
    through: Number = under.elastic_modulus
    if under.card.family == "wood":
        through = through / ACROSS_GRAIN
    seat_of_head = joint.frustum_stiffness(through, at.diameter, at.under_thickness, at.head)
    axial = joint.spring_series(joint.spring_series(thread, shank), seat_of_head)
    return axial, lateral, why


def shear_stress(material: Substance) -> Number:
    """Give the shear stress that may act in a material: ultimate of a metal, yield of a plastic."""
    if material.card.design_class == "metal":
        return equivalent.shear_yield(strengths.ultimate(material))
    return strengths.yielding_shear(material)


def holding(at: Seat) -> tuple[Number, Spread, str]:
    """Give what draws one fastener out of the edge, N, its spread and its source."""
    if at.kind == "dowel":
        found: Number = edge_screws.dowel_friction(FRICTION[1], at.diameter, at.length)
        low, likely, high = (f / FRICTION[1] for f in FRICTION)
        return found, (low, likely, high), f"dry dowel, 0.1 to 0.5 MPa on its surface: {COMMON}"
    if at.edge.card.family == "wood":
        density = timber_screws.characteristic_density(at.edge.card.density)
        strength = timber_screws.withdrawal_strength(at.diameter, at.length, density)
        found = timber_screws.withdrawal_along_grain(strength, at.diameter, at.length)
        words = "EN 1995-1-1 eq. 8.38 to 8.40, grain along the screw; scatter 20 % (from memory)"
        return found, CHARACTERISTIC, words
    shear = shear_stress(at.edge)
    if at.thread is not None:
        area = threads.strip_area_internal(
            at.length, at.thread.pitch, at.thread.diameter, at.thread.pitch_diameter
        )
        found, words = threads.strip_force(shear, area), "tapped thread, FED-STD-H28 (from memory)"
    else:
        found = edge_screws.thread_pull_out(shear, at.diameter, at.length)
        words = "thread sheared out, plastics makers' design guides (from memory)"
    own = bolt_group.tension_resistance(at.make.strength, _area(at), NO_PART)
    return hole_limits.lower_force(found, own), TYPICAL, f"{words}, or the screw breaks; {COMMON}"


def _area(at: Seat) -> Number:
    return at.thread.stress_area if at.thread is not None else edge_screws.core_area(at.core)


def embedment(material: Substance, diameter: Number) -> Number:
    """Give the embedment strength of a member under a round fastener, Pa."""
    card = material.card
    if card.family == "wood":
        density = timber_screws.characteristic_density(card.density)
        return timber_screws.embedment_strength(diameter, density)
    if card.design_class == "metal":
        return BEARING_STRESS * strengths.ultimate(material)
    return material.yield_strength


def bearing(at: Seat) -> tuple[Number, Spread, str]:
    """Give what one fastener bears across its axis, N, its spread and its source."""
    bends = at.core if at.kind == "dowel" else timber_screws.effective_diameter(at.core)
    moment = timber_screws.yield_moment(at.make.strength, bends)
    first, second = (embedment(m, bends) for m in (at.under_head, at.edge))
    ratio = johansen.embedment_ratio(first, second)
    t1, t2 = at.under_thickness, at.length
    crushed = johansen.crushed(first, t1, bends)
    yields = johansen.lowest_mode(
        crushed,
        johansen.crushed(second, t2, bends),
        johansen.tilted(crushed, ratio, johansen.thickness_ratio(t1, t2)),
        johansen.hinge_in_second(first, t1, bends, ratio, moment),
        johansen.hinge_in_first(first, t2, bends, ratio, moment),
        johansen.hinge_in_both(first, bends, ratio, moment),
    )
    sheared = bolt_group.shear_resistance(at.make.shear_share, at.make.strength, _area(at), NO_PART)
    wood = "wood" in (at.edge.card.family, at.under_head.card.family)
    spread = CHARACTERISTIC if wood else TYPICAL
    words = "EN 1995-1-1 eq. 8.6 without the rope effect, or the fastener shears"
    return hole_limits.lower_force(yields, sheared), spread, f"{words}; scatter 20 % (from memory)"


def head_pull(at: Seat) -> tuple[Number, Spread, str]:
    """Give what pulls one head through the plate under it, N, its spread and its source."""
    if at.under_head.card.family == "wood":
        density = timber_screws.characteristic_density(at.under_head.card.density)
        found = timber_screws.head_pull_through(timber_screws.head_strength(density), at.head)
        words = "EN 1995-1-1 eq. 8.40b with 8.26; scatter 20 % (from memory)"
        return found, CHARACTERISTIC, words
    found = edge_screws.punched(shear_stress(at.under_head), at.head, at.under_thickness)
    return found, TYPICAL, f"EN 1993-1-8 table 3.4, punching; {COMMON}"
