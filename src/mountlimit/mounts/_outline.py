"""The keys of a user's own outline, and the one place that reads them: points, or a DXF drawing."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path
from typing import Any, Protocol

from ..errors import InputError, Mistake
from ..fields import Field, choose
from ..outlines import Outline, OutlineError, from_drawing, from_points

POINT_KEYS = {
    "frame_holes": "hole", "motor_holes": "hole", "holes": "hole",
    "frame_slots": "slot", "motor_slots": "slot", "slots": "slot",
}  # fmt: skip
DRAWING_KEYS = (
    "drawing_units", "frame_layer", "motor_layer", "shaft_layer", "frame_at", "motor_at",
)  # fmt: skip


def _many(key: str, kind: str, meaning: str, example: str) -> Field:
    return Field(key=f"mount.{key}", kind=kind, meaning=meaning, many=True, example=example)


def _text(key: str, meaning: str, example: str, kind: str = "text") -> Field:
    return Field(key=f"mount.{key}", kind=kind, meaning=meaning, example=example)


FIELDS = (
    _many("outline", "place", "corners of the plate, in order around it, each as x, y (in any axes)", "120, 150 mm"),
    _many("frame_holes", "hole", "holes for the frame bolts, each as x, y, diameter", "20, 15, 9 mm"),
    _many("motor_holes", "hole", "holes for the motor's face bolts", "60, 70, 6.6 mm"),
    _many("holes", "hole", "other round holes", "60, 105, 40 mm"),
    _many("frame_slots", "slot", "slots for frame bolts, each as x, y, length, width, angle; length end to end, angle from x", "20, 15, 25, 9 mm, 90 deg"),
    _many("motor_slots", "slot", "slots for the motor's face bolts", "60, 70, 20, 6.6 mm, 0 deg"),
    _many("slots", "slot", "other slots with round ends", "60, 40, 30, 12 mm, 0 deg"),
    _text("shaft", "the shaft axis; else the centre of the motor's holes", "60, 105 mm", "place"),
    _text("away", "which way in these axes points away from the frame: up, down, left, right or an angle; else square to the rows of frame holes", "up", "heading"),
    choose("mount.seen_from", "side the plate is drawn from", ("sprocket", "motor")),
    _text("drawing", "a DXF drawing of the plate instead of points, beside the drive file", "plate.dxf"),
    choose("mount.drawing_units", "unit of the drawing, when its header states none", ("mm", "cm", "m", "inch", "foot")),
    _text("frame_layer", "layer of the holes for frame bolts", "frame"),
    _text("motor_layer", "layer of the holes for the motor's face bolts", "motor"),
    _text("shaft_layer", "layer of a point or circle at the shaft axis", "shaft"),
    _many("frame_at", "place", "middles of the frame's holes in the drawing, when no layer names them", "20, 15 mm"),
    _many("motor_at", "place", "middles of the motor's holes in the drawing", "60, 70 mm"),
)  # fmt: skip


class Chooser(Protocol):
    """How the outline's keys are asked for; ``picking.Picker`` is one."""

    @property
    def file(self) -> Any:
        """The drive file."""
        ...

    def card(self, key: str) -> Any:
        """Give the value of a key, or None."""
        ...


def outline_of(picker: Chooser, bolt_circle: float, system: str = "metric") -> Outline:
    """Read the plate's outline, by points or from its drawing, and put it about the shaft.

    Raises
    ------
    InputError
        with every mistake found.
    """
    _one_way(picker)
    given = {key: picker.card(f"mount.{key}") for key in ("shaft", "away", "seen_from")}
    about = {key: value for key, value in given.items() if value is not None}
    try:
        if picker.card("mount.drawing"):
            extra = {key: picker.card(f"mount.{key}") for key in DRAWING_KEYS}
            extra["unit"] = extra.pop("drawing_units")
            about |= {key: value for key, value in extra.items() if value is not None}
            path = Path(picker.file.name).parent / picker.card("mount.drawing")
            return _drawn(path, _stamp(path), bolt_circle, tuple(about.items()))
        parts = {key: picker.card(f"mount.{key}") or () for key in POINT_KEYS}
        drawn = Outline(corners=picker.card("mount.outline"), **parts)
        return _pointed(drawn, bolt_circle, system, tuple(about.items()))
    except OutlineError as error:
        name = picker.file.name
        raise InputError([Mistake(name, f.key, f"'{f.value}'" if f.value else "", f.expected, f.suggestion) for f in error.faults]) from None  # fmt: skip


@lru_cache(maxsize=8)
def _pointed(
    drawn: Outline, bolt_circle: float, system: str, about: tuple[tuple[str, Any], ...]
) -> Outline:
    """Check an outline by points once for all the trials of one run."""
    return from_points(drawn, bolt_circle=bolt_circle, system=system, **dict(about))


@lru_cache(maxsize=8)
def _drawn(
    path: Path, stamp: tuple[int, int], bolt_circle: float, about: tuple[tuple[str, Any], ...]
) -> Outline:
    """Read a drawing once for all the trials of one run; ``stamp`` changes when the file does."""
    return from_drawing(path, bolt_circle=bolt_circle, **dict(about))


def _stamp(path: Path) -> tuple[int, int]:
    try:
        state = path.stat()
    except (OSError, ValueError):
        return 0, 0
    return state.st_mtime_ns, state.st_size


def _one_way(picker: Chooser) -> None:
    """Refuse both ways at once, neither, and keys that belong to the other way."""
    by_drawing, by_points = picker.card("mount.drawing"), picker.card("mount.outline")
    name, mistakes = picker.file.name, []
    if by_drawing and by_points:
        mistakes.append(Mistake(name, "mount.drawing", f"'{by_drawing}'", "give the outline one way: mount.outline or mount.drawing"))  # fmt: skip
    elif by_drawing:
        mistakes += [Mistake(name, f"mount.{k}", "", "holes are taken from the drawing", "leave it out, or give the outline by points too") for k in POINT_KEYS if picker.card(f"mount.{k}")]  # fmt: skip
    elif by_points:
        mistakes += [Mistake(name, f"mount.{k}", "", "is only used with mount.drawing", "leave it out") for k in DRAWING_KEYS if picker.card(f"mount.{k}")]  # fmt: skip
    else:
        mistakes.append(Mistake(name, "mount.outline", "", "is missing: the plate's corners, or its drawing", 'for example outline = ["0, 0 mm", "120, 0 mm", "120, 150 mm", "0, 150 mm"] or drawing = "plate.dxf"'))  # fmt: skip
    if mistakes:
        raise InputError(mistakes)
