"""Puts an outline about the shaft: shaft axis at the origin, y away from the frame."""

from __future__ import annotations

import math
from collections.abc import Sequence

from .checking import Wording
from .error import Fault, OutlineError
from .model import Outline, Place, SlotHole

ON_CIRCLE = 0.0005  # m, a bolt hole this far off the bolt circle is still on it
CLEAR = math.radians(
    30.0
)  # the frame's side is clear when the shaft lies this near to square to it


def shaft_of(outline: Outline) -> Place:
    """Find the shaft axis as the centre of the circle through the motor's bolt holes.

    Raises
    ------
    OutlineError
        when they are too few, or lie on no circle.
    """
    places = outline.bolt_places("motor")
    hint = 'give the shaft axis, for example mount.shaft = "60, 105 mm"'
    if len(places) == 2:
        return Place((places[0].x + places[1].x) / 2.0, (places[0].y + places[1].y) / 2.0)
    centre = _circle_centre(places) if len(places) > 2 else None
    if centre is None:
        raise OutlineError(Fault("mount.shaft", "", "the motor's holes do not tell where the shaft is", hint))  # fmt: skip
    radii = [math.dist(centre, p) for p in places]
    if max(radii) - min(radii) > 2.0 * ON_CIRCLE:
        raise OutlineError(Fault("mount.shaft", "", "the motor's holes do not lie on one circle", hint))  # fmt: skip
    return centre


def _circle_centre(places: Sequence[Place]) -> Place | None:
    """Centre of the circle that fits some places best; none when they lie on a line.

    Source
    ------
    Kasa's algebraic fit: least squares of x^2 + y^2 = 2 a x + 2 b y + c.
    """
    n = len(places)
    mx, my = sum(p.x for p in places) / n, sum(p.y for p in places) / n
    us = [(p.x - mx, p.y - my) for p in places]
    uu, vv = sum(u * u for u, _ in us), sum(v * v for _, v in us)
    uv = sum(u * v for u, v in us)
    right_u = sum(u * (u * u + v * v) for u, v in us) / 2.0
    right_v = sum(v * (u * u + v * v) for u, v in us) / 2.0
    det = uu * vv - uv * uv
    if det <= 1e-6 * (uu + vv) ** 2:
        return None
    return Place(mx + (right_u * vv - right_v * uv) / det, my + (right_v * uu - right_u * uv) / det)


def check_circle(
    outline: Outline, shaft: Place, bolt_circle: float | None, wording: Wording
) -> None:
    """Raise when a motor hole does not lie on the bolt circle about the shaft.

    Without ``bolt_circle`` all motor holes must lie on one circle.

    Raises
    ------
    OutlineError
        naming every hole that does not.
    """
    far = [math.dist(shaft, (h.x, h.y)) for h in outline.motor_holes]
    usual = sorted(far)[len(far) // 2] if far else 0.0
    radius = usual if bolt_circle is None else bolt_circle / 2.0
    together = len(far) > 1 and max(far) - min(far) <= 2.0 * ON_CIRCLE
    if together and abs(usual - radius) > ON_CIRCLE:
        raise OutlineError(Fault(
            wording.keys["motor_holes"], "",
            f"the motor's holes lie on a circle of {wording.length(2.0 * usual)} about the shaft axis "
            f"at {wording.place(*shaft)}; motor.bolt_circle says {wording.length(2.0 * radius)}",
            f'motor.bolt_circle = "{wording.length(2.0 * usual)}", or correct the holes',
        ))  # fmt: skip
    faults = []
    for number, (hole, r) in enumerate(zip(outline.motor_holes, far, strict=True), 1):
        if abs(r - radius) > ON_CIRCLE:
            faults.append(Fault(
                wording.keys["motor_holes"], "",
                f"the {wording.cut('motor_holes', number, hole)} lies {wording.length(r)} from the "
                f"shaft axis at {wording.place(*shaft)}; expected {wording.length(radius)}",
            ))  # fmt: skip
    faults += [
        Fault(
            wording.keys["motor_slots"], "",
            f"the {wording.cut('motor_slots', number, slot)} does not cross the bolt circle of "
            f"{wording.length(2.0 * radius)} about the shaft axis at {wording.place(*shaft)}",
        )
        for number, slot in enumerate(outline.motor_slots, 1)
        if radius and not _reaches(slot, shaft, radius)
    ]  # fmt: skip
    if faults:
        raise OutlineError(*faults)


def _reaches(slot: SlotHole, shaft: Place, radius: float) -> bool:
    """Tell whether a bolt on the circle can sit in a slot."""
    (ax, ay), (bx, by) = slot.ends
    span = (bx - ax) ** 2 + (by - ay) ** 2
    along = ((shaft.x - ax) * (bx - ax) + (shaft.y - ay) * (by - ay)) / span
    along = min(max(along, 0.0), 1.0)
    near = math.dist(shaft, (ax + along * (bx - ax), ay + along * (by - ay)))
    far = max(math.dist(shaft, end) for end in slot.ends)
    return near - ON_CIRCLE <= radius <= far + ON_CIRCLE


def away_from_frame(outline: Outline, shaft: Place) -> float:
    """Direction from the frame to the shaft, square to the rows of frame bolts, rad from x.

    The rows are the sides of the smallest rectangle around the frame's bolts.

    Raises
    ------
    OutlineError
        when the shaft lies as much beside the bolts as beyond them.
    """
    places = outline.bolt_places("frame")
    middle = Place(sum(p.x for p in places) / len(places), sum(p.y for p in places) / len(places))
    line = math.atan2(shaft.y - middle.y, shaft.x - middle.x)
    row = _row_direction(places)
    quarter = round((line - row) / (math.pi / 2.0))
    away = row + quarter * math.pi / 2.0
    if abs(math.remainder(line - away, 2.0 * math.pi)) > CLEAR or math.dist(shaft, middle) < 1e-6:
        raise OutlineError(Fault(
            "mount.away", "", "cannot tell from the frame's bolts on which side the frame lies",
            'say which way in the drawing points away from the frame, for example mount.away = "up"',
        ))  # fmt: skip
    return math.remainder(away, 2.0 * math.pi)


def _row_direction(places: Sequence[Place]) -> float:
    """Direction of a side of the smallest rectangle around some places; of x for a single one."""
    from shapely.geometry import MultiPoint

    shape = MultiPoint(places).minimum_rotated_rectangle
    if shape.geom_type == "Point":
        return 0.0
    corners = list(shape.exterior.coords if shape.geom_type == "Polygon" else shape.coords)
    (ax, ay), (bx, by) = corners[0], corners[1]
    return math.atan2(by - ay, bx - ax)


def placed(outline: Outline, shaft: Place, away: float, seen_from: str = "sprocket") -> Outline:
    """Give the outline with the shaft axis at the origin and ``away`` turned to y.

    ``seen_from`` is the side the outline was drawn from: "sprocket", or "motor", which swaps left
    and right.
    """
    about = outline.shifted(-shaft.x, -shaft.y).turned(math.pi / 2.0 - away)
    return about.mirrored() if seen_from == "motor" else about
