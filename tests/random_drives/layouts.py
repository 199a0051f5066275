"""Sizes of each mount form, so that motor, bolts and plate go together; lengths in mm."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

from chance import Chance
from sizes import Build

Keys = dict[str, Any]
METAL, SHEET = ("steel", "aluminium"), ("steel", "aluminium", "iron", "plastic", "wood")
SOFT = ("plastic", "wood")


def _rows(c: Chance, b: Build, width: float, count: int, two_rows: bool | None = None) -> Keys:
    """Lay out frame bolts within a width; a plate of its own may have one row or two."""
    two = c.happens(0.6) if two_rows is None else two_rows
    columns = count // 2 if two else count
    while columns > 1 and (columns - 1) * 1.6 * b.frame_washer > width - 1.3 * b.frame_washer:
        count, columns = (count - 2, columns - 1) if two else (count - 1, columns - 1)
    least, most = (columns - 1) * 1.6 * b.frame_washer, width - 1.3 * b.frame_washer
    keys: Keys = {"fixings.bolts": f"{count} x {b.frame_thread.id.split()[0]}"}
    if columns == 1:
        keys["fixings.span_across"] = "0 mm"
    else:
        keys["fixings.span_across"] = c.length(max(least, 0.6 * most), max(most, least))
    if two:
        keys["fixings.span_along"] = c.length(1.5 * b.frame_washer, 4 * b.frame_washer)
    return keys


def _wide(b: Build) -> float:
    return b.circle + 1.2 * b.washer


def _plate(c: Chance, b: Build) -> Keys:
    width = c.between(_wide(b), 1.7 * _wide(b))
    free = b.reach * c.between(1.15, 2.4) + b.frame_washer / 2
    count = c.one_of((2, 4, 4, 4, 6))
    return {
        "mount.thickness": c.written(b.thickness), "mount.width": c.written(width),
        "mount.free_length": c.written(free),
        **_rows(c, b, width, count, False if count == 2 else None),
    }  # fmt: skip


def _sleeved(c: Chance, b: Build) -> Keys:
    hole, washer = 1000 * float(b.frame_thread.clearance_hole), b.frame_washer
    keys = {**_plate(c, b), "mount.sleeve_diameter": c.length(hole + 1, max(washer, hole + 2))}
    if c.happens(0.5):
        keys["mount.sleeve_flange"] = c.length(washer * 1.2 + 3, washer * 1.8)
    elif c.happens(0.7):
        keys["fixings.washer"] = "wide"
    if c.happens(0.3) and b.face_holes is None:
        own = 1000 * float(b.face_thread.clearance_hole)
        keys["mount.motor_sleeve_diameter"] = c.length(own + 0.5, own + 2)
    return keys


def _two_rows(c: Chance, b: Build) -> Keys:
    width = c.between(_wide(b), 1.6 * _wide(b))
    below, above = (b.reach * c.between(1.3, 2.4) + b.frame_washer for _ in "ab")
    keys = _rows(c, b, width, c.one_of((4, 4, 6)), True)
    return {
        **keys, "mount.thickness": c.written(b.thickness), "mount.width": c.written(width),
        "mount.free_length": c.written(below), "fixings.span_along": c.written(below + above),
    }  # fmt: skip


def _strut(c: Chance, b: Build) -> Keys:
    keys = {**_plate(c, b), "second.material": c.one_of(("s235", "6061", "unknown_steel", "304"))}
    if c.happens(0.6):
        keys["mount.strut_diameter"] = c.length(8, 20)
        if c.happens(0.4):
            keys["mount.strut_bore"] = c.length(3, 6)
    else:
        keys |= {"mount.strut_width": c.length(15, 30), "mount.strut_thickness": c.length(3, 8)}
    if c.happens(0.7):
        keys["mount.strut_start_height"] = c.written(c.between(-b.circle / 2, b.circle / 2))
        keys["mount.strut_start_behind"] = c.length(30, 160)
        keys["mount.strut_from"] = "motor"
    else:
        keys["mount.strut_from"] = "plate"
        keys["mount.strut_start_height"] = c.written(c.between(0.0, b.circle / 2 + 0.2 * b.washer))
    keys["mount.strut_end_height"] = c.written(c.between(-250.0, 150.0))
    keys["mount.strut_end_behind"] = c.length(40, 350)
    if c.happens(0.3):
        keys["mount.strut_start_across"] = c.written(c.between(-20.0, 20.0))
    if c.happens(0.4):
        keys["mount.strut_end_across"] = c.written(c.between(-150.0, 150.0))
    return keys


def _channel(c: Chance, b: Build) -> Keys:
    width = c.between(b.circle + b.washer + 2 * b.thickness + 4, 1.6 * _wide(b) + 2 * b.thickness)
    clear = width - 2 * b.thickness
    count = c.one_of((2, 4, 4))
    return {
        "mount.thickness": c.written(b.thickness), "mount.width": c.written(width),
        "mount.flange_height": c.length(2.5 * b.thickness, 8 * b.thickness + 20),
        "mount.free_length": c.written(b.reach * c.between(1.2, 2.2) + b.frame_washer / 2),
        **_rows(c, b, clear - b.frame_washer, count, False if count == 2 else None),
    }  # fmt: skip


def _gussets(c: Chance, keys: Keys, free: float, room: float) -> None:
    if not c.happens(0.3):
        return
    keys["mount.gussets"] = c.one_of((1, 2))
    height = c.between(0.3, 0.6) * free
    keys["mount.gusset_height"] = c.written(height)
    keys["mount.gusset_depth"] = c.written(min(room, height * c.between(0.5, 1.5)))
    if c.happens(0.4):
        keys["mount.gusset_thickness"] = c.length(3, 8)


def _bend(c: Chance, b: Build, keys: Keys, share: float) -> None:
    if "mount.gussets" not in keys and c.happens(share):
        keys["mount.bend_radius"] = c.written(b.thickness * c.between(0.5, 2.0))


def _angle(c: Chance, b: Build) -> Keys:
    width = c.between(_wide(b), 1.6 * _wide(b))
    free = b.reach * c.between(1.3, 2.2) + 2 * b.thickness
    to_bolts = b.frame_washer / 2 + b.thickness * c.between(1.6, 4.0)
    count = c.one_of((2, 4, 4))
    keys = {
        "mount.thickness": c.written(b.thickness), "mount.width": c.written(width),
        "mount.free_length": c.written(free), "mount.heel_to_bolts": c.written(to_bolts),
        **_rows(c, b, width - 2 * b.thickness, count, False if count == 2 else None),
    }  # fmt: skip
    _gussets(c, keys, free, to_bolts)
    _bend(c, b, keys, 0.3)
    if c.happens(0.15):
        keys["mount.foot_thickness"] = c.written(b.thickness * c.between(0.8, 1.6))
    chosen = 1e7 * to_bolts % 1.0  # by its digits: one draw more would change every stored mount
    if chosen < 0.4:
        room = b.thickness + to_bolts - b.frame_washer / 2
        keys["mount.heel_bears_from"] = f"{chosen / 0.4 * room:.4g} mm"
    return keys


def _built_up(c: Chance, b: Build) -> Keys:
    width = c.between(_wide(b), 1.6 * _wide(b))
    thick = b.thickness * (1.6 if b.family not in SOFT else 1.0)
    screw, number = c.between(max(2.2, 0.16 * thick), 0.4 * thick), c.one_of((2, 3, 4, 6))
    kind = c.one_of(("wood screw", "dowel")) if b.family == "wood" else "machine screw"
    thread = next((t for t in (10, 8, 6, 5, 4) if t <= 0.5 * thick), 3)
    if kind == "machine screw":
        screw = thread
    length = c.between(4, 8) * screw
    free = b.reach * c.between(1.1, 1.6) + length
    count = c.one_of((2, 4))
    keys = {
        "mount.thickness": c.written(thick), "mount.width": c.written(width),
        "mount.free_length": c.written(free),
        "mount.heel_to_bolts": c.written(b.frame_washer / 2 + thick * c.between(0.8, 2.0)),
        "mount.base_overhang": c.length(6, 30), "mount.screw_kind": kind,
        "mount.screws": f"{number} x M{thread}" if kind == "machine screw" else f"{number} x {screw:.3g} mm",
        "mount.screw_length": c.written(length), "mount.screw_head": c.written(max(3.2, 1.9 * screw)),
        **_rows(c, b, width, count, False if count == 2 else None),
    }  # fmt: skip
    if c.happens(0.6):
        keys["second.material"] = c.one_of(("6061", "s235", "birch_ply", "pom_c"))
        keys["second.thickness"] = c.length(8, 18)
    return keys


def _twin(c: Chance, b: Build) -> Keys:
    width = c.between(1.1 * _wide(b) + 50, 1.6 * _wide(b) + 60)
    free = b.reach * c.between(1.2, 1.8) + b.frame_washer + 14
    side = c.one_of((4, 8, 8))
    across = width - 26
    keys = {
        "mount.thickness": c.written(b.thickness), "mount.width": c.written(width),
        "mount.free_length": c.written(free), "mount.gap": c.length(60, 180),
        "mount.spacers": 4, "mount.spacer_diameter": c.length(10, 20),
        "mount.spacers_across": c.written(across), "mount.spacers_along": c.length(45, 55 + b.circle),
        "mount.motor_hangs": "between",
        **_rows(c, b, width, side, side == 8),
        "fixings.span_across": c.length(0.5 * across, 0.9 * across),
    }  # fmt: skip
    if c.happens(0.3):
        keys |= {"mount.motor_hangs": "one side", "mount.opening": c.length(0.7 * b.circle, b.circle),
                 "mount.frame_lies": "behind"}  # fmt: skip
    if c.happens(0.3):
        keys |= {"second.material": c.one_of(("6061", "s235")), "second.thickness": c.length(4, 10)}
    return keys


def _welded_plate(c: Chance, b: Build) -> Keys:
    width = c.between(_wide(b), 1.6 * _wide(b))
    return {
        "mount.thickness": c.written(b.thickness), "mount.width": c.written(width),
        "mount.free_length": c.written(b.reach * c.between(1.3, 2.5)),
        "fixings.weld_leg": c.length(2.5, 8), "fixings.weld_sides": c.one_of(("both", "both", "one")),
    }  # fmt: skip


def _welded_angle(c: Chance, b: Build) -> Keys:
    keys = _welded_plate(c, b)
    del keys["fixings.weld_sides"]
    free = b.reach * c.between(1.3, 2.2) + 2 * b.thickness
    deep = c.between(25, 80) + b.thickness
    keys |= {"mount.free_length": c.written(free), "mount.foot_depth": c.written(deep)}
    _gussets(c, keys, free, 0.8 * deep)
    _bend(c, b, keys, 0.3)
    if c.happens(0.15):
        keys["mount.foot_thickness"] = c.written(b.thickness * c.between(0.8, 1.6))
    return keys


def _end_plate(c: Chance, b: Build) -> Keys:
    size, leg = c.between(30, 0.8 * _wide(b) + 10), c.between(2.5, 7)
    shape = c.one_of(("square", "rectangular", "round"))
    depth = c.between(30, 80) if shape == "rectangular" else size
    width = max(_wide(b), size + 2 * leg) * c.between(1.02, 1.5)
    keys = {
        "mount.thickness": c.written(b.thickness), "mount.width": c.written(width),
        "mount.free_length": c.written((b.circle + b.washer + depth) / 2 + leg + c.between(3, 50)),
        "mount.tube": shape, "mount.tube_size": c.written(size), "mount.tube_wall": c.length(2, 5),
        "mount.tube_length": c.length(40, 160), "fixings.weld_leg": c.written(leg),
        "mount.tube_runs": c.one_of(("motor", "motor", "sprocket")),
    }  # fmt: skip
    if shape == "rectangular":
        keys["mount.tube_depth"] = c.written(depth)
    return keys


def _clamp(c: Chance, b: Build) -> Keys:
    size = c.between(25, 60)
    return {
        "frame.member": c.one_of(("round tube", "round tube", "square tube")),
        "frame.size": c.written(size), "frame.wall": c.length(1.5, 5),
        "mount.grip_length": c.length(30, 120), "mount.tube": c.one_of(("across", "with the shaft")),
    }  # fmt: skip


def _saddle(c: Chance, b: Build) -> Keys:
    keys = {**_clamp(c, b), **_welded_plate(c, b)}
    return {
        **keys,
        "fixings.clamp_bolts": f"{c.one_of((1, 2, 2, 3))} x {b.frame_thread.id.split()[0]}",
    }


def _block(c: Chance, b: Build) -> Keys:
    return {**_plate(c, b), **_clamp(c, b),
            "fixings.clamp_bolts": f"{c.one_of((2, 4, 4))} x {b.frame_thread.id.split()[0]}"}  # fmt: skip


def _foot(c: Chance, b: Build) -> Keys:
    across, along = c.between(0.8, 1.4) * b.circle + 30, c.between(0.7, 1.3) * b.circle + 25
    wide = across + c.between(2, 3) * (b.washer + b.frame_washer)
    bolt = b.face_thread.id.split()[0]
    return {
        "motor.bolts": f"4 x {bolt}", "motor.shaft_height": c.written(c.between(0.6, 0.9) * b.circle + 15),
        "motor.foot_across": c.written(across), "motor.foot_along": c.written(along),
        "motor.foot_to_face": c.length(10, 50), "mount.thickness": c.written(b.thickness),
        "mount.width": c.written(wide + 2.5 * b.frame_washer),
        **_rows(c, b, wide, c.one_of((4, 4, 6)), True), "fixings.span_across": c.written(wide),
        "fixings.span_along": c.written(along + c.between(2, 4) * (b.washer + b.frame_washer)),
    }  # fmt: skip


def _cradle(c: Chance, b: Build) -> Keys:
    size = c.between(1.1, 1.5) * b.circle
    across, along = size + c.between(8, 30), c.between(0.7, 1.3) * b.circle + 25
    wide = across + c.between(2, 3) * (b.washer + b.frame_washer)
    bands = c.one_of((1, 2, 2, 3))
    keys = {
        "motor.bolts": f"{2 * bands} x {b.face_thread.id.split()[0]}", "motor.diameter": c.written(size),
        "motor.shaft_height": c.written(size * c.between(0.55, 0.8)), "mount.bands": bands,
        "motor.band_across": c.written(across), "motor.band_to_face": c.length(10, 50),
        "mount.thickness": c.written(b.thickness), "mount.width": c.written(wide),
        "fixings.bolts": f"4 x {b.frame_thread.id.split()[0]}",
        "fixings.span_across": c.written(across + (wide - across) * c.between(0.2, 0.4)),
        "fixings.span_along": c.written(along + c.between(1.6, 3.0) * (b.washer + b.frame_washer)),
        ("mount.cradle_length" if bands == 1 else "motor.band_along"): c.written(along),
        "mount.lining": c.one_of(("none", "none", "rubber")),
    }  # fmt: skip
    if c.happens(0.6):
        keys["mount.seat_angle"] = f"{c.between(25, 75):.3g} deg"
    return keys


def _outline(c: Chance, b: Build) -> Keys:
    """Draw a plate with a narrower top; the frame's holes in one or two rows below, or on a frame height."""
    half, top = 0.75 * _wide(b) * c.between(0.9, 1.3), _wide(b) / 2
    below = -b.reach * c.between(1.3, 2.0) - b.frame_washer
    low, hole = (
        below - c.between(2.2, 4) * b.frame_washer,
        1000 * float(b.frame_thread.clearance_hole),
    )
    away = half - b.frame_washer
    rows = [below] if c.happens(0.4) else [below, (below + low) / 2]
    small = 1000 * float(b.face_thread.clearance_hole)
    turns = [math.pi * (2 * i + 1) / b.face_bolts for i in range(b.face_bolts)]
    corners = [(-half, low), (half, low), (half, below + b.frame_washer), (top, top), (-top, top),
               (-half, below + b.frame_washer)]  # fmt: skip
    frame = [f"{x:.4g}, {y:.4g}, {hole:.3g} mm" for y in rows for x in (-away, away)]
    motor = [
        f"{b.circle / 2 * math.sin(t):.4g}, {-b.circle / 2 * math.cos(t):.4g}, {small:.3g} mm"
        for t in turns
    ]
    keys: Keys = {
        "mount.thickness": c.written(b.thickness),
        "mount.outline": [f"{x:.4g}, {y:.4g} mm" for x, y in corners],
        "fixings.bolts": f"{len(frame)} x {b.frame_thread.id.split()[0]}",
        "mount.frame_holes": frame, "mount.motor_holes": motor,
        "mount.holes": [f"0, 0, {b.circle * 0.5:.4g} mm"],
    }  # fmt: skip
    if c.happens(0.3):
        keys |= {
            "mount.rests": "below",
            "mount.rests_up_to": f"{-below - 0.6 * b.frame_washer:.4g} mm",
        }
    return keys


# form: (what it may be made of, whether it must be weldable, how it is laid out)
LAYOUTS: dict[str, tuple[tuple[str, ...], bool, Callable[[Chance, Build], Keys]]] = {
    "plate": (SHEET, False, _plate),
    "sleeved plate": (SOFT, False, _sleeved),
    "plate two rows": (SHEET, False, _two_rows),
    "plate with strut": (SHEET, False, _strut),
    "channel": (METAL, False, _channel),
    "angle": (METAL, False, _angle),
    "built-up angle": (SHEET, False, _built_up),
    "twin plates": (SHEET, False, _twin),
    "welded plate": (METAL, True, _welded_plate),
    "welded angle": (METAL, True, _welded_angle),
    "end plate": (METAL, True, _end_plate),
    "saddle": (METAL, True, _saddle),
    "clamp block": (SHEET, False, _block),
    "foot motor": (SHEET, False, _foot),
    "cradle": (SHEET, False, _cradle),
    "outline": (SHEET, False, _outline),
}
