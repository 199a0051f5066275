"""The frame member the mount is fixed to: sizes, ends, place, and what an open section costs."""

from __future__ import annotations

import math

from ..formulas import section, tube
from ..model import Frame, Number
from ..picking import Picker
from ..worked import Value

COMMON = "common practice, no source"
OPEN = ("angle", "channel", "flat bar")
TWO_SIZES = ("rectangular tube", "channel", "angle")
OPEN_WALL = (0.003, 0.004, 0.006)
WHICHEVER = "whichever way leans the shaft more"
OFF_MIDDLE = 0.2
FLANGE = (0.4, 0.5, 0.6)  # of a channel's height
METAL = 50e9  # Pa; a member below this modulus is wood, plastic or the like
LIGHT = 100e9  # Pa; a member below this modulus is taken as aluminium
STEEL = (235e6, 280e6, 355e6, "from memory (S235 tube: least and usual; S355)")
ALUMINIUM = (110e6, 180e6, 250e6, "from memory (6060 and 6061 tube, near welds to heat treated)")
TUBE_WALL = 1 / 20  # of the size, of the tube an open section is compared with: 2 mm of 40 mm


def frame(picker: Picker) -> Frame:
    """Give the member the mount is fixed to; rigid only when the user writes it."""
    member = picker.word("frame.member", "square tube")
    _refuse_stray(picker, member)
    if member == "rigid":
        return Frame(member=member)
    size, wall = picker.number("frame.size"), _wall(picker, member)
    depth = _depth(picker, member, size)
    _refuse_thick(picker, member, size, depth, wall)
    span, ends = picker.number("frame.span"), picker.word("frame.ends", "held")
    found = Frame(
        member=member, size=size, depth=depth, wall=wall, span=span,
        place=_place(picker, member, ends), ends=ends,
        open_side=picker.word("frame.open_side", WHICHEVER) if member == "channel" else WHICHEVER,
        elastic_modulus=picker.number("frame.elastic_modulus"), yield_strength=_yield(picker),
    )  # fmt: skip
    if member in OPEN and not picker.mistakes:
        picker.warnings.append(_open_warning(found))
    return found


def _refuse_stray(picker: Picker, member: str) -> None:
    """Refuse keys that say nothing of this member."""
    if "frame.depth" in picker.given and member not in TWO_SIZES:
        picker.mistake(
            "frame.depth", f"a {member} has no depth of its own",
            "member = 'rectangular tube', 'channel' or 'angle' has one",
        )  # fmt: skip
    if "frame.open_side" in picker.given and member != "channel":
        picker.mistake("frame.open_side", f"is for a channel, not for a {member}", "leave it out")


def _wall(picker: Picker, member: str) -> Value:
    if member in OPEN:
        return picker.between("frame.wall", *OPEN_WALL, COMMON)
    return picker.number("frame.wall")


def _place(picker: Picker, member: str, ends: str) -> Value:
    """Give the place along the span: the middle, where twist and sag are softest.

    In its turn under a couple a held beam is a third softer at a fifth of the span, a hinged one
    twice as soft: listed where that can weigh.  Behind a closed tube with held ends it moved no
    limit of the examples by more than 0.2 %.
    """
    if member not in OPEN and ends == "held":
        return picker.number("frame.place")
    return picker.between(
        "frame.place", OFF_MIDDLE, 0.5, 1.0 - OFF_MIDDLE,
        "middle of the span softest in twist and sag, a fifth from either end in turn under a couple",
    )  # fmt: skip


def _yield(picker: Picker) -> Value | None:
    """Give the yield strength; None where the member is softer than metal, or nothing is said of it.

    A member with neither size nor wall told is there for its give; its strength would be made up.
    """
    told = ("frame.size", "frame.wall", "frame.yield_strength")
    if not any(name in picker.given for name in told):
        return None
    key, modulus = "frame.yield_strength", picker.given.get("frame.elastic_modulus")
    stiff = math.inf if modulus is None else float(modulus.value)
    if stiff < METAL:
        return picker.optional(key)
    return picker.between(key, *(ALUMINIUM if stiff < LIGHT else STEEL))


def _depth(picker: Picker, member: str, size: Value) -> Number | None:
    """Give the second size of a section that has two; None where there is one only."""
    if member not in TWO_SIZES:
        return None
    if "frame.depth" in picker.given:
        return picker.number("frame.depth")
    if member == "channel":
        low, likely, high = (share * size for share in FLANGE)
        return picker.between("frame.depth", low, likely, high, COMMON)
    if member == "rectangular tube":
        picker.mistake(
            "frame.depth", "is missing: depth of the rectangular tube behind the mount's face",
            "for example depth = '60 mm', or write member = 'square tube'",
        )  # fmt: skip
    return size  # an angle of equal legs


def _refuse_thick(
    picker: Picker, member: str, size: Value, depth: Number | None, wall: Value
) -> None:
    least = min(size, size if depth is None else depth)
    if member == "flat bar":
        if wall > size:
            picker.mistake("frame.wall", "is thicker than the bar is wide", "size is its wide face")
    elif member == "angle":
        if wall >= least:
            picker.mistake("frame.wall", "is thicker than a leg is wide")
    elif member == "channel":
        if 2 * wall >= size or wall >= least:
            picker.mistake("frame.wall", "fills the channel")
    elif 2 * wall >= least:
        picker.mistake("frame.wall", "is thicker than half the member")


def _open_warning(found: Frame) -> str:
    """Say what an open section does to the answer, and what helps."""
    size, wall, depth = float(found.size), float(found.wall), float(found.depth or 0.0)
    girth = {"angle": size + depth - wall, "channel": size + 2 * depth - 2 * wall}
    if found.member == "flat bar":
        own = float(section.rectangle_torsion_constant(size, wall))
    else:
        own = girth[found.member] * wall**3 / 3
    closed = float(tube.box_torsion_constant(size, size, TUBE_WALL * size))
    help_ = (
        "Use a closed tube instead"
        if found.member == "flat bar"
        else "Close the section with a plate welded along its open side"
    )
    return (
        f"The frame member is an open section ({found.member}). It resists twist about "
        f"{closed / own:.2g} times less than a square tube of the same size with a thin wall "
        f"({TUBE_WALL * size * 1000:.2g} mm). When the chain pulls towards or away from the frame, most of "
        "the lean of the sprocket can come from this member, and a stiffer mount hardly helps. "
        f"{help_}, or brace the mount to a second member."
    )
