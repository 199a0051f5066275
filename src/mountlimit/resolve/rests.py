"""What of the mount lies on the frame member: no farther than the member's face goes.

A foot wider than the tube it is bolted to bears on the tube only; the bolts are taken in the middle
of its face.  Where the rows of bolts do not fit on the face that is told, the face is taken to go
just as far as their washers, and it is said.
"""

from __future__ import annotations

from dataclasses import replace

from .. import units
from ..formulas import layout
from ..model import Fixings, Frame, Number
from ..mounting import BoltPlane, Mount
from ..picking import Picker
from ..worked import Value

KEY = "frame.face_width"
FREE = 0.005  # m of a foot past its frame that are worth a word


def on_member(picker: Picker, mount: Mount, fixings: Fixings, frame: Frame) -> tuple[Mount, Frame]:
    """Put into every bolt plane how far the frame's face goes, and say what hangs free beside it."""
    on = [p for p in mount.planes if p.bolts and p.on_member]
    if not on:
        if picker.optional(KEY) is not None:
            picker.mistake(
                KEY, "is not used: this mount is not bolted to the face of a member", "leave it out"
            )
        return mount, frame
    frame = replace(frame, face_width=_width(picker, mount, frame, on[0], fixings))
    planes = tuple(replace(p, face_half=half(p, frame, fixings)) for p in mount.planes)
    seated, width = next(p for p in planes if p.bolts and p.on_member), face(frame)
    if width is not None and KEY not in picker.ranges:
        _say(picker, mount, seated, width, fixings)
    return replace(mount, planes=planes), frame


def _width(
    picker: Picker, mount: Mount, frame: Frame, plane: BoltPlane, fixings: Fixings
) -> Number | None:
    """Give the width told; where the member's own is assumed, anything from its least to all of the mount."""
    told, of, own = picker.optional(KEY), picker.ranges.get(_follows(frame)), face(frame)
    if told is not None or of is None or own is None:
        return told
    likely = float(own)
    return picker.between(
        KEY, min(of.low, likely), likely, max(whole(mount, plane, fixings), likely),
        "the assumed member's own face, or a pad as wide as the mount: common practice, no source",
    )  # fmt: skip


def _follows(frame: Frame) -> str:
    """Give the key that a member's own face follows from; empty where there is none."""
    if frame.size is None or frame.member == "round tube":
        return ""
    on_flange = frame.member == "channel" and frame.open_side != "away"
    if on_flange and (frame.open_side == "side" or float(frame.depth) < float(frame.size)):
        return "frame.depth"
    return "frame.size"


def face(frame: Frame) -> Number | None:
    """Give the width of the face a mount lies on; None where nothing is known to end it."""
    if frame.face_width is not None:
        return frame.face_width
    if frame.member == "round tube":
        return Value(0.0, KEY, "derived", "a flat mount touches a round tube on a line")
    return frame.depth if _follows(frame) == "frame.depth" else frame.size


def whole(mount: Mount, plane: BoltPlane, fixings: Fixings) -> float:
    """Give the width of a face on which all of a mount would bear, m."""
    return 2 * max(float(plane.outer + fixings.edge), _to_leg(mount, plane) or 0.0)


def half(plane: BoltPlane, frame: Frame, fixings: Fixings) -> Number | None:
    """Give how far the face of a frame goes from the middle of a plane's bolts, m; None without end."""
    width = face(frame) if plane.bolts and plane.on_member else None
    if width is None:
        return None
    return layout.face_half(width, plane.outer, _least(fixings))


def _least(fixings: Fixings) -> Number:
    """Give how far the face goes past the outermost row at the least: their washers lie on it."""
    return layout.half(fixings.washer_diameter)


def _say(picker: Picker, mount: Mount, plane: BoltPlane, width: Number, fixings: Fixings) -> None:
    """Warn of rows that do not fit on the face, and of a foot that hangs free beside it."""
    needs, told = 2 * (float(plane.outer) + float(_least(fixings))), float(width)

    def say(length: float) -> str:
        return units.show(length, "length", picker.system, 2)

    if needs > told * (1 + 1e-9):
        what = "a flat mount touches a round tube on a line only" if told == 0 else (
            f"the face of the frame member is {say(told)} wide, too narrow for these rows of bolts: "
            f"with their washers they need {say(needs)}"
        )  # fmt: skip
        picker.warnings.append(
            f"frame.face_width: {what}. The mount is taken to bear on {say(needs)}, the bolts in the middle; "
            "if a pad or a second member makes it wider, give its width."
        )
    leg = _to_leg(mount, plane)
    free = 0.0 if leg is None else leg - float(plane.face_half)
    if free > FREE:
        picker.warnings.append(
            f"The foot goes {say(free)} past the face of the frame member before it meets the leg and hangs free there: "
            "a leg pulled that way bends the foot and pulls harder on the bolts. Bolts nearer the leg, or a pad under "
            "the heel (then give frame.face_width), help."
        )


def _to_leg(mount: Mount, plane: BoltPlane) -> float | None:
    """Give the distance from the middle of the bolts to the leg's back where the mount is an angle."""
    if plane.normal != "y":
        return None
    t = float(mount.thickness)
    back = 0.0 if float(plane.centre[2]) > t / 2 else t
    return abs(float(plane.centre[2]) - back)
