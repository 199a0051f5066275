"""Outlines: a user's own plate, read from points or from a DXF drawing, put about the shaft.

``from_points`` and ``from_drawing`` give an ``Outline`` in metres with the shaft axis at the origin
and y away from the frame. Nothing here knows of drive files but the names of their keys.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from .error import EntryMistake, Fault, OutlineError
from .model import Outline, Place, RoundHole, SlotHole, anticlockwise

if TYPE_CHECKING:
    from .checking import Wording

__all__ = [
    "EntryMistake", "Fault", "Outline", "OutlineError", "Place", "RoundHole", "SlotHole",
    "from_drawing", "from_points",
]  # fmt: skip


def from_points(
    drawn: Outline, *, shaft: Place | None = None, away: float | None = None,
    seen_from: str = "sprocket", bolt_circle: float | None = None, system: str = "metric",
) -> Outline:  # fmt: skip
    """Check an outline given by points, and put it about the shaft.

    Parameters
    ----------
    drawn : Outline
        as measured, in any axes, m; corners either way round.
    shaft : Place
        the shaft axis, m; without it the centre of the circle through the motor's holes.
    away : float
        direction that points away from the frame, rad from x; without it square to the rows of
        the frame's holes, towards the shaft.
    seen_from : text
        side the plate was measured from: "sprocket", or "motor" (left and right change places).
    bolt_circle : float
        diameter of the motor's bolt circle, m; its holes must lie on it.
    system : text
        "metric" or "inch": the units of the messages.

    Returns
    -------
    Outline
        shaft axis at the origin, y away from the frame, x as seen from the sprocket.

    Raises
    ------
    OutlineError
        with every fault found.
    """
    from .checking import Wording

    whole = replace(drawn, corners=anticlockwise(drawn.corners))
    return _finished(whole, Wording(system), shaft, away, seen_from, bolt_circle)


def from_drawing(
    path: Path, *, unit: str | None = None, frame_layer: str = "frame", motor_layer: str = "motor",
    shaft_layer: str = "shaft", frame_at: tuple[Place, ...] = (), motor_at: tuple[Place, ...] = (),
    shaft: Place | None = None, away: float | None = None, seen_from: str = "sprocket",
    bolt_circle: float | None = None,
) -> Outline:  # fmt: skip
    """Read a plate from a DXF drawing, check it, and put it about the shaft.

    Parameters
    ----------
    path : Path
        the drawing; one plate in its model space.
    unit : text
        unit of the drawing: "mm", "cm", "m", "inch" or "foot"; without it the header's.
    frame_layer, motor_layer, shaft_layer : text
        layers of the holes for frame bolts and motor bolts, and of the mark (point or circle) at
        the shaft axis; upper or lower case alike.
    frame_at, motor_at : Places
        middles of holes in the drawing that are the frame's or the motor's, m.
    shaft, away, seen_from, bolt_circle
        as for ``from_points``; with ``shaft`` and ``bolt_circle`` the holes on that circle are the
        motor's if no others are.

    Returns
    -------
    Outline
        shaft axis at the origin, y away from the frame, x as seen from the sprocket; ``notes``
        say what was passed over.

    Raises
    ------
    OutlineError
        when the drawing cannot be read or no plate can be made of it, with every fault found.
    """
    from .drawing import Naming, read_drawing

    naming = Naming(
        frame_layer=frame_layer, motor_layer=motor_layer, shaft_layer=shaft_layer,
        frame_at=frame_at, motor_at=motor_at, shaft=shaft, bolt_circle=bolt_circle,
    )  # fmt: skip
    outline, marked, wording = read_drawing(path, unit, naming)
    return _finished(outline, wording, marked, away, seen_from, bolt_circle)


def _finished(
    outline: Outline, wording: Wording, shaft: Place | None, away: float | None, seen_from: str,
    bolt_circle: float | None,
) -> Outline:  # fmt: skip
    from .checking import check
    from .placing import away_from_frame, check_circle, placed, shaft_of

    check(outline, wording)
    centre = shaft or shaft_of(outline)
    check_circle(outline, centre, bolt_circle, wording)
    heading = away_from_frame(outline, centre) if away is None else away
    return placed(outline, centre, heading, seen_from)
