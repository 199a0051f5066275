"""The way of the force from the motor to the frame, part by part, with what each part sees at the set current."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure

from .. import shaft_line
from ..assess import Assessment
from ..report.words import amperes
from ..structure import wrench
from . import scene, style
from .labels import Label, beside
from .measures import Units
from .scene import Scene

NAME = "load_path"
TITLE = "The way of the force, from the motor to the frame"


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What the figure shows: the parts in the order of the force, with words and their place (z, y)."""

    drive_title: str
    units: Units
    scene: Scene
    current: float
    case: str
    angle: float  # of the chain from x, rad
    pull: float
    parts: tuple[tuple[str, str, tuple[float, float]], ...]


def read(a: Assessment) -> Shown:
    """Take the forces of the load case of the set current."""
    drive, loads = a.drive, a.at_set.loads
    seen, u = scene.of(drive), Units(drive.system)
    force, moment = wrench(drive, loads, (0.0, 0.0, 0.0))
    return Shown(
        drive_title=drive.title, units=u, scene=seen, current=float(drive.current.set), case=loads.names[0],
        angle=float(loads.pull_angle), pull=float(loads.shaft_load),
        parts=tuple(_parts(a, seen, u, [float(v) for v in force], [float(v) for v in moment])),
    )  # fmt: skip


def _parts(
    a: Assessment, seen: Scene, u: Units, force: list[float], moment: list[float]
) -> list[tuple[str, str, tuple[float, float]]]:
    """Give name, words and place of every part on the way."""
    drive, loads = a.drive, a.at_set.loads
    z, r = seen.overhang, seen.driving / 2

    def newtons(value: object) -> str:
        return u.show(float(value), "force")  # type: ignore[arg-type]

    def twist(value: float) -> str:
        return u.show(value, "torque")

    face = float(np.hypot(moment[0], moment[1]))
    start = float(loads.torque) * float(loads.starting_factor)
    size = max(math.sqrt(sum(v * v for v in force)), 0.0)
    plates = [np.asarray(f.to_space(np.asarray(f.outline, float))) for f in seen.model.facets]
    corner = plates[0].mean(axis=0)
    found = [
        ("motor", f"torque {twist(float(loads.torque))} on the stator,\nweight {newtons(math.hypot(*(float(v) for v in loads.weight)))}",
         (-0.5 * seen.motor_length, 0.55 * seen.motor_radius)),
        ("shaft", f"front bearing {newtons(shaft_line.front_reaction(drive, loads))},\nrear bearing {newtons(shaft_line.rear_reaction(drive, loads))}",
         (0.6 * z, 0.0)),
        ("hub", f"torque {twist(start)} at a start\n({float(loads.starting_factor):.2f} times the steady one)", (z, 0.25 * r)),
        ("chain", f"tight run {newtons(loads.tight_side_tension)},\nslack run {newtons(loads.slack_side_tension)}", (z, 0.98 * r)),
        ("mount", f"force {newtons(size)} at its face; moment {twist(face)}\nthat tips it, {twist(abs(moment[2]))} about the shaft",
         (float(corner[2]), float(corner[1]))),
    ]  # fmt: skip
    bolts = a.at_set.response.bolts
    place = np.array([float(v) for v in drive.mount.plane.centre])
    if drive.fixings.bolts.count and bolts.tension:
        most, shear = max(float(t) for t in bolts.tension), max(float(v) for v in bolts.shear)
        bolt = seen.model.frame_bolts[0]
        spot = seen.model.facets[bolt.facet].to_space(np.asarray(bolt.centre, float))
        found.append(("frame bolts", f"most pull {newtons(most)},\nmost shear {newtons(shear)} on one bolt", (float(spot[2]), float(spot[1]))))  # fmt: skip
    at, about = wrench(drive, loads, tuple(float(v) for v in place))
    tip = math.sqrt(sum(float(v) ** 2 for v in about))
    middle = (seen.frame[0] + seen.frame[1]) / 2
    found.append(("frame", f"force {newtons(math.sqrt(sum(float(v) ** 2 for v in at)))} and moment {twist(tip)}\nabout the middle of the joint",
                  (float(middle[2]), float(middle[1]))))  # fmt: skip
    return found


@style.drawn
def draw(shown: Shown) -> Figure:
    """Draw the drive from the side, numbered, and the chain's pull seen along the shaft."""
    height = 4.9
    figure = style.figure(height, TITLE, shown.drive_title)
    axes = figure.add_axes((0.02, 0.15, 0.52, 0.73))
    seen = shown.scene
    scene.frame(axes, seen, scene.ASIDE)
    scene.mount(axes, seen, scene.ASIDE)
    scene.motor_and_shaft(axes, seen)
    axes.autoscale_view()
    axes.set_aspect("equal")
    axes.set_axis_off()
    low, high = axes.get_ylim()
    left, right = axes.get_xlim()
    size = 0.10 * max(high - low, right - left)
    axes.set_xlim(left - 0.5 * size, right + 0.5 * size)
    axes.set_ylim(low - 2.4 * size, high + 0.5 * size)
    scene.cross(axes, (left, low - 2.0 * size), size, ("z", "y"))
    _pull(axes, shown, (left + 5.0 * size, low - 1.4 * size), 0.9 * size)
    labels = [
        Label(text=f"{i + 1}  {name}: {words}", place=place, colour=style.INK)
        for i, (name, words, place) in enumerate(shown.parts)
    ]
    beside(figure, axes, labels, 0.575, (0.12, 0.88))
    figure.text(
        0.012, 0.02, style.clip(f"{amperes(shown.current)} A, likely values, load case: {shown.case}.", 106)
        + f"\nThick arrow: the chain's pull as seen along the shaft, {shown.units.show(shown.pull, 'force')} at "
        f"{math.degrees(shown.angle):.0f} deg from x. Mount to scale; motor drawn from bolt circle and\n"
        "centre of mass, frame member cut short.",
        fontsize=style.SMALL, color=style.SOFT,
    )  # fmt: skip
    return figure


def _pull(axes: Axes, shown: Shown, place: tuple[float, float], size: float) -> None:
    """Draw the pull of the chain as seen along the shaft, with x and y."""
    x, y = place
    axes.plot([x], [y], "o", color=style.INK, ms=4)
    aside = 0.28 * size if shown.angle > math.pi or shown.angle < 0 else -0.28 * size
    for dx, dy, name, off in (
        (size, 0.0, "x", (0.0, aside)),
        (0.0, size, "y", (-0.28 * size, 0.0)),
    ):
        axes.plot([x, x + dx], [y, y + dy], color=style.SOFT, lw=0.8)
        axes.text(x + 0.85 * dx + off[0], y + 0.85 * dy + off[1], name, ha="center", va="center", fontsize=style.SMALL, color=style.SOFT)  # fmt: skip
    end = (x + 1.9 * size * math.cos(shown.angle), y + 1.9 * size * math.sin(shown.angle))
    axes.annotate("", end, place, arrowprops={"arrowstyle": "-|>", "color": style.RED, "lw": 2.0}, annotation_clip=False)  # fmt: skip


def alt(shown: Shown) -> str:
    """Say in words what the figure shows."""
    parts = "; ".join(f"{name}: {words}" for name, words, _ in shown.parts).replace("\n", " ")
    return (
        f"{TITLE}, at {amperes(shown.current)} A ({shown.case}). The chain pulls with {shown.units.show(shown.pull, 'force')} at "
        f"{math.degrees(shown.angle):.0f} deg from x. {parts}. x across the mount, y away from the frame, z along the shaft."
    )
