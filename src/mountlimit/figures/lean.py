"""The sprocket seen from above, unloaded and at the set current, leaning and moving by a stated factor."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.patches import Polygon

from .. import evaluate
from ..assess import Assessment
from ..case import Row
from ..checks.alignment import CHECKS, lean
from ..formulas import sprocket
from ..loads import case_list
from ..model import Array
from ..report.words import amperes
from . import style
from .labels import Label, beside
from .measures import Units

NAME = "lean"
TITLE = "The sprocket from above: in line, and at the set current"
FACTORS = (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000)
SHOWN_TURN = math.radians(16.0)  # the largest turn is drawn at most so large
SHOWN_MOVE = 0.30  # ... and the largest movement, over the sprocket's diameter
STATIONS = {
    "plates rub on the teeth": "plates first rub on the teeth",
    "first tip of a tooth under a plate": "a tooth may first catch a plate (early edge)",
    "walks off by skew": "the chain walks off",
}  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What the figure shows: angles in rad, lengths in m, as the pipeline has them."""

    drive_title: str
    units: Units
    current: float
    diameter: float  # pitch diameter
    width: float  # of the teeth
    yaw: float  # of the mount, loaded
    skew: float  # with as-built error and bearing play
    offset: float  # off the plane, with as-built error
    moved: float  # off the plane, by the load
    near: float  # towards the driven sprocket
    allowed: tuple[tuple[str, float], ...]  # words, angle
    shafts: tuple[float, float]  # angle between the shafts, and what is allowed of it
    offset_allowed: float
    factor: float


def read(a: Assessment) -> Shown:
    """Take the movement at the set current and what is allowed."""
    drive, chain = a.drive, a.drive.chain
    yaw, moved, near = (float(v) for v in lean(a.at_set))
    eps, offset, _ = a.skew_at_set
    rows = {r.station: r for r in _rows(a)}
    allowed = tuple(
        (words, float(rows[name].capacity)) for name, words in STATIONS.items() if name in rows
    )
    diameter = float(sprocket.pitch_diameter(chain.chain.pitch, chain.driving_teeth))
    shafts = rows["angle between the shafts"]
    turns = [abs(yaw), eps, *(v for _, v in allowed[:1])]
    moves = [abs(moved), abs(near), 1e-9]
    return Shown(
        drive_title=drive.title, units=Units(drive.system), current=float(drive.current.set), diameter=diameter,
        width=float(sprocket.tooth_width(chain.chain.inner_width, sprocket.width_factor(chain.chain.pitch))),
        yaw=yaw, skew=eps, offset=offset, moved=moved, near=near, allowed=allowed,
        shafts=(float(shafts.demand), float(shafts.capacity)), offset_allowed=float(rows["offset"].capacity),
        factor=_factor(max(turns), max(moves) / diameter),
    )  # fmt: skip


def _rows(a: Assessment) -> list[Row]:
    """Give the rows of the peak alignment at the set current, those of the steady pull with them."""
    check = next(c for c in CHECKS if c.name == "alignment")
    drive, angle = a.drive, float(a.at_set.loads.pull_angle)
    steady = next(
        i for i, c in enumerate(case_list(drive)) if c[1] == "steady" and float(c[3]) == angle
    )
    return [
        *check.rows(evaluate.case_at(drive, float(drive.current.set), steady)),
        *check.rows(a.at_set),
    ]


def _factor(turn: float, move: float) -> float:
    fits = [f for f in FACTORS if f * turn <= SHOWN_TURN and f * move <= SHOWN_MOVE]
    return float(max(fits, default=1))


@style.drawn
def draw(shown: Shown) -> Figure:
    """Draw both sprockets, the chain's line, and the angles allowed."""
    height = 3.7
    figure = style.figure(height, TITLE, shown.drive_title)
    axes = figure.add_axes((0.02, 0.19, 0.60, 0.66))
    size, f = shown.diameter, shown.factor
    _sprocket(axes, shown, (0.0, 0.0), 0.0, loaded=False)
    centre = (f * shown.near, f * shown.moved)
    _sprocket(axes, shown, centre, f * shown.yaw, loaded=True)
    axes.plot([-0.7 * size, 2.1 * size], [0, 0], color=style.SOFT, lw=0.9, ls=(0, (9, 2, 2, 2)))
    labels, beyond = _labels(axes, shown, centre)
    axes.annotate(
        "",
        (2.1 * size, 0),
        (1.7 * size, 0),
        arrowprops={"arrowstyle": "-|>", "color": style.INK, "lw": 1.4},
    )
    axes.set_xlim(-0.75 * size, 2.15 * size)
    axes.set_ylim(min(0.0, centre[1]) - 0.74 * size, max(0.0, centre[1]) + 0.66 * size)
    axes.set_aspect("equal")
    axes.set_axis_off()
    beside(figure, axes, labels, 0.655, (0.19, 0.87))
    u = shown.units
    words = (
        f"Dashed: unloaded. Solid, hatched: loaded. Angles and movements drawn {f:g} times as large; the numbers are the real\n"
        f"ones. Sprocket to scale, pitch diameter {u.length(size)}. Up is along the shaft, away from the motor."
    )
    if beyond:
        words += f"\nToo far out to draw: {beyond}."
    figure.text(0.012, 0.02, words, fontsize=style.SMALL, color=style.SOFT)
    return figure


def _sprocket(axes: Axes, shown: Shown, centre: tuple[float, float], turn: float, *, loaded: bool) -> None:  # fmt: skip
    """Draw a sprocket from above, with its shaft behind it towards the motor."""
    half, thick, shaft = shown.diameter / 2, shown.width / 2, 0.16 * shown.diameter
    body = _turned([(-half, -thick), (half, -thick), (half, thick), (-half, thick)], centre, turn)
    axle = _turned([(-shaft, -thick), (-shaft, -0.62 * shown.diameter), (shaft, -0.62 * shown.diameter), (shaft, -thick)], centre, turn)  # fmt: skip
    colour = style.RED if loaded else style.SOFT
    look = {"edgecolor": colour, "lw": 1.5 if loaded else 1.0, "ls": "-" if loaded else "--"}
    for corners in (axle, body):
        axes.add_patch(Polygon(corners, facecolor="none", hatch="////" if loaded and corners is body else None, **look))  # type: ignore[arg-type]  # fmt: skip
    axes.plot(*centre, "+", color=colour, ms=8)


def _turned(points: list[tuple[float, float]], centre: tuple[float, float], turn: float) -> Array:
    c, s = math.cos(turn), math.sin(turn)
    turned: Array = np.asarray(points) @ np.array([[c, s], [-s, c]]) + np.asarray(centre)
    return turned


def _labels(axes: Axes, shown: Shown, centre: tuple[float, float]) -> tuple[list[Label], str]:
    """Draw the lines of the angles; give what stands beside them, and what is too far out to draw."""
    size, f, u = shown.diameter, shown.factor, shown.units
    way = math.copysign(1.0, shown.yaw or 1.0)
    found, beyond = [], []
    reach = 1.55 * size
    for i, (words, angle) in enumerate(shown.allowed):
        if f * angle > 1.6 * SHOWN_TURN:
            beyond.append(f"{words} at {u.angle(angle)}")
            continue
        for sign in (1.0, -1.0):
            end = (reach * math.cos(f * angle), sign * way * reach * math.sin(f * angle))
            axes.plot(
                [0, end[0]],
                [0, end[1]],
                color=style.COLOURS[(i + 2) % 5],
                ls=style.DASHES[i + 1],
                lw=1.2,
            )
            if sign > 0:
                found.append(Label(text=f"{words}\nat {u.angle(angle)}", place=end, colour=style.COLOURS[(i + 2) % 5]))  # fmt: skip
    turn = f * shown.yaw
    end = (centre[0] + 1.3 * size * math.cos(turn), centre[1] + 1.3 * size * math.sin(turn))
    axes.plot([centre[0], end[0]], [centre[1], end[1]], color=style.RED, lw=1.2)
    found.append(Label(
        text=f"leans {u.angle(abs(shown.yaw))} under load; {u.angle(shown.skew)}\nwith as-built error and bearing play",
        place=end, colour=style.RED,
    ))  # fmt: skip
    found.append(Label(
        text=f"moves {u.length(abs(shown.moved))} along the shaft under load;\n{u.length(shown.offset)} off line in all, allowed {u.length(shown.offset_allowed)}",
        place=centre, colour=style.RED,
    ))  # fmt: skip
    near = f"{u.length(abs(shown.near))} {'nearer to' if shown.near >= 0 else 'further from'} the driven sprocket"
    edge = _turned([(size / 2, -shown.width / 2)], centre, turn)[0]
    found.append(Label(text=near, place=(float(edge[0]), float(edge[1])), colour=style.RED))
    found.append(Label(text="pull of the chain, to the driven sprocket", place=(2.1 * size, 0.0), dot=False))  # fmt: skip
    between = f"between the shafts {u.angle(shown.shafts[0])},\nallowed {u.angle(shown.shafts[1])}"
    found.append(Label(text=between, place=(0.0, -0.62 * size), colour=style.SOFT))
    return found, "; ".join(beyond)


def alt(shown: Shown) -> str:
    """Say in words what the figure shows."""
    u = shown.units
    allowed = "; ".join(f"{words} at {u.angle(angle)}" for words, angle in shown.allowed)
    return (
        f"{TITLE} of {amperes(shown.current)} A, drawn {shown.factor:g} times as large; pitch diameter {u.length(shown.diameter)}. The sprocket leans {u.angle(abs(shown.yaw))} "
        f"under load, {u.angle(shown.skew)} with as-built error and bearing play; it moves {u.length(abs(shown.moved))} along the shaft, "
        f"is {u.length(shown.offset)} out of line (allowed {u.length(shown.offset_allowed)}) and {u.length(abs(shown.near))} "
        f"{'nearer to' if shown.near >= 0 else 'further from'} the driven sprocket. Between the shafts {u.angle(shown.shafts[0])}, allowed "
        f"{u.angle(shown.shafts[1])}. {allowed}."
    )
