"""The drive to scale: along the shaft with the chain's line, and from the side with the overhang."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.patches import Circle

from ..assess import Assessment
from ..formulas import chain_length, give
from ..model import Array
from . import scene, style
from .labels import Label, beside
from .measures import Units
from .scene import Scene

NAME = "layout"
TITLE = "The drive to scale"
FAR = 2.2  # times the size of mount and driven sprocket: a driven sprocket further off is drawn nearer
BARS = {"metric": (0.01, 0.02, 0.05, 0.1, 0.2), "inch": (0.0127, 0.0254, 0.0508, 0.127, 0.254)}


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What the figure shows, m and rad."""

    drive_title: str
    units: Units
    scene: Scene
    angle: float
    centres: float
    run: float
    sag: float
    drawn_at: float  # centre distance as drawn
    words: str  # of the chain and its sprockets

    @property
    def broken(self) -> bool:
        """Tell whether the driven sprocket is drawn nearer than it is."""
        return self.drawn_at < self.centres


def read(a: Assessment) -> Shown:
    """Take the sizes of the drive."""
    drive, chain = a.drive, a.drive.chain
    seen = scene.of(drive)
    run = chain_length.span(chain.centre_distance, seen.driven, seen.driving)
    centres = float(chain.centre_distance)
    near = FAR * max(float(drive.mount.width), 2 * seen.motor_radius) + seen.driven / 2
    card = chain.chain
    return Shown(
        drive_title=drive.title, units=Units(drive.system), scene=seen, angle=float(a.at_set.loads.pull_angle),
        centres=centres, run=float(run), sag=float(give.sag_depth(chain.slack, run)), drawn_at=min(centres, near),
        words=f"chain {style.clip(card.id, 24)}, {int(chain.driving_teeth)} and {int(chain.driven_teeth)} teeth",
    )  # fmt: skip


@style.drawn
def draw(shown: Shown) -> Figure:
    """Draw both views at one scale each, with their sizes in words beside them."""
    high = 7.4
    figure = style.figure(high, TITLE, shown.drive_title)
    along = figure.add_axes((0.02, 0.47, 0.64, 0.45))
    labels = _along(along, shown)
    _finish(along, shown, ("x", "y"))
    beside(figure, along, labels, 0.69, (0.48, 0.92))
    aside = figure.add_axes((0.02, 0.085, 0.64, 0.355))
    labels = _aside(aside, shown)
    _finish(aside, shown, ("z", "y"))
    beside(figure, aside, labels, 0.69, (0.09, 0.44))
    note = "Above: seen along the shaft. Below: seen from the side. Motor drawn from its bolt circle and centre of mass; frame cut short."
    if shown.broken:
        note += "\nThe chain is broken off: the driven sprocket stands further away than drawn."
    note += "\nWhich run is the slack one depends on the way the motor turns."
    figure.text(0.012, 0.012, note, fontsize=style.SMALL, color=style.SOFT)
    return figure


def _finish(axes: Axes, shown: Shown, names: tuple[str, str]) -> None:
    """Set the scale alike both ways; add the arrows of the axes and a bar of known length."""
    axes.autoscale_view()
    axes.set_aspect("equal")
    axes.set_axis_off()
    left, right = axes.get_xlim()
    low, high = axes.get_ylim()
    size = 0.055 * max(right - left, 1.4 * (high - low))
    axes.set_ylim(low - 2.6 * size, high)
    axes.set_xlim(left - 0.3 * size, max(right, left + 8 * size))
    scene.cross(axes, (left, low - 2.0 * size), size, names)
    bars = BARS["inch" if shown.units.system == "inch" else "metric"]
    bar = max(b for b in bars if b <= max(0.45 * (right - left), bars[0]))
    scene.scale_bar(
        axes, (left + 3.2 * size, low - 1.5 * size), bar, shown.units.length(bar), 0.18 * size
    )


def _tangents(shown: Shown) -> list[tuple[Array, Array]]:
    """Give the ends of both runs: the outer tangents of the two pitch circles."""
    seen = shown.scene
    lean = math.asin((seen.driven - seen.driving) / 2 / shown.drawn_at)
    far = shown.drawn_at * np.array([math.cos(shown.angle), math.sin(shown.angle)])
    found = []
    for sign in (1.0, -1.0):
        way = shown.angle + sign * (math.pi / 2 + lean)
        out = np.array([math.cos(way), math.sin(way)])
        found.append((seen.driving / 2 * out, far + seen.driven / 2 * out))
    return found


def _along(axes: Axes, shown: Shown) -> list[Label]:
    """Draw the view along the shaft and give its labels."""
    seen, u = shown.scene, shown.units
    scene.frame(axes, seen, scene.ALONG)
    axes.add_patch(Circle((0, 0), seen.motor_radius, zorder=1.5, **scene.HIDDEN))
    scene.mount(axes, seen, scene.ALONG)
    far = shown.drawn_at * np.array([math.cos(shown.angle), math.sin(shown.angle)])
    for axle, diameter in (((0.0, 0.0), seen.driving), ((far[0], far[1]), seen.driven)):
        axes.add_patch(Circle(axle, diameter / 2, zorder=5, fc="none", ec=style.INK, lw=1.3))
        axes.plot(*axle, "+", color=style.INK, ms=7, zorder=6)
    axes.plot([0, far[0]], [0, far[1]], color=style.SOFT, lw=0.9, ls=(0, (9, 2, 2, 2)), zorder=5)
    runs = sorted(_tangents(shown), key=lambda ends: -float(ends[0][1] + ends[1][1]))
    tight, slack = runs
    axes.plot(*np.array(tight).T, color=style.INK, lw=2.0, zorder=6)
    hanging = _sagging(shown, slack, far)
    axes.plot(*hanging.T, color=style.INK, lw=2.0, ls=(0, (2, 1)), zorder=6)
    axes.plot(*np.array(slack).T, color=style.SOFT, lw=0.6, zorder=5)
    if shown.broken:
        _break(axes, [0.72 * end[1] + 0.28 * end[0] for end in (tight, slack)], far)
    middle = hanging[len(hanging) // 2]
    centre, above = 0.55 * far, 0.5 * (tight[0] + tight[1])
    found = [
        Label(text=f"centre distance {u.length(shown.centres)}" + (",\ndrawn shorter" if shown.broken else ""), place=(centre[0], centre[1])),
        Label(text=f"sag {u.length(shown.sag)} in a slack\nrun {u.length(shown.run)} long", place=(middle[0], middle[1])),
        Label(text=f"driven sprocket, pitch\ndiameter {u.length(seen.driven)}", place=(far[0] + seen.driven / 2 * math.cos(0.6), far[1] + seen.driven / 2 * math.sin(0.6))),
        Label(text=f"driving sprocket, pitch\ndiameter {u.length(seen.driving)}", place=(0.0, seen.driving / 2)),
        Label(text=shown.words, place=(above[0], above[1])),
    ]  # fmt: skip
    low, high = seen.frame
    found.append(Label(text=_frame_words(shown), place=(float(high[0]), float((low + high)[1] / 2)), colour=style.SOFT))  # fmt: skip
    return found


def _frame_words(shown: Shown) -> str:
    frame = shown.scene.drive.frame
    if frame.size is None:
        return "frame, size not given" if frame.span is None else f"frame: {frame.member}"
    words = f"frame: {frame.member} {shown.units.length(float(frame.size))}"
    if shown.scene.pad is None:
        return words
    wide = 2 * float(shown.scene.drive.mount.plane.face_half)
    return f"{words},\nmount bears on {shown.units.length(wide)}"


def _sagging(shown: Shown, ends: tuple[Array, Array], far: Array) -> Array:
    """Give the slack run as a parabola that hangs outwards by the sag, at the drawing's scale."""
    s = np.linspace(0.0, 1.0, 31)[:, None]
    straight = ends[0] + s * (ends[1] - ends[0])
    out = (ends[0] + ends[1]) / 2 - far / 2
    out /= max(float(np.linalg.norm(out)), 1e-12)
    return np.asarray(straight + 4 * s * (1 - s) * shown.sag * out)


def _break(axes: Axes, places: list[Array], far: Array) -> None:
    """Mark both runs as broken off by a pair of strokes across."""
    way = far / np.linalg.norm(far)
    across = np.array([-way[1], way[0]])
    size = 0.028 * float(np.linalg.norm(far))
    for place in places:
        for shift in (-0.35, 0.35):
            middle = place + shift * size * way
            ends = np.array(
                [middle - size * (across - 0.4 * way), middle + size * (across - 0.4 * way)]
            )
            axes.plot(*ends.T, color=style.PAPER, lw=4, zorder=7)
            axes.plot(*ends.T, color=style.INK, lw=1.0, zorder=8)


def _aside(axes: Axes, shown: Shown) -> list[Label]:
    """Draw the view from the side and give its labels."""
    seen, u, drive = shown.scene, shown.units, shown.scene.drive
    scene.frame(axes, seen, scene.ASIDE)
    scene.mount(axes, seen, scene.ASIDE)
    scene.motor_and_shaft(axes, seen)
    z, top = seen.overhang, 0.62 * seen.driving
    axes.plot([z, z], [-0.9 * seen.driving, 0.95 * seen.driving], color=style.SOFT, lw=0.9, ls=(0, (9, 2, 2, 2)), zorder=5)  # fmt: skip
    axes.annotate("", (z, top), (0.0, top), arrowprops={"arrowstyle": "<|-|>", "color": style.RED, "lw": 1.0, "shrinkA": 0, "shrinkB": 0}, zorder=6)  # fmt: skip
    facet = seen.model.facets[0]
    corners = facet.to_space(np.asarray(facet.outline, float))
    edge = corners[int(np.argmax(corners[:, 1]))]
    low, high = seen.frame
    wide = f"{u.length(float(drive.mount.width))} wide"
    third = drive.shaft.outboard
    place = 0.0 if third is None else float(third.place)
    bearing = [Label(text="outboard bearing", place=(place, -0.8 * float(drive.shaft.diameter)))]
    return [
        *(bearing if third is not None else []),
        Label(text=f"overhang {u.length(z)}, motor\nface to the chain's line", place=(z / 2, top), colour=style.RED),
        Label(text=f"chain's line, {u.length(float(drive.chain.chain.inner_width))} inside", place=(z, 0.95 * seen.driving), colour=style.SOFT),
        Label(text=f"shaft {u.length(float(drive.shaft.diameter))} across", place=(0.72 * z, 0.0)),
        Label(text=f"mount ({drive.mount.form}),\n{u.length(float(drive.mount.thickness))} thick, {wide}", place=(float(edge[2]), float(edge[1]))),
        Label(text=f"motor, centre of mass\n{u.length(float(drive.motor.centre_of_mass))} behind its face", place=(-float(drive.motor.centre_of_mass), 0.0)),
        Label(text=_frame_words(shown), place=(float((low + high)[2] / 2), float((low + high)[1] / 2)), colour=style.SOFT),
    ]  # fmt: skip


def alt(shown: Shown) -> str:
    """Say in words what the figure shows."""
    u, seen = shown.units, shown.scene
    drive = seen.drive
    return (
        f"{TITLE}, in two views: along the shaft and from the side. {shown.words}; pitch diameters {u.length(seen.driving)} and "
        f"{u.length(seen.driven)}; centre distance {u.length(shown.centres)}{', drawn shorter' if shown.broken else ''}, the chain "
        f"{math.degrees(shown.angle):.0f} deg from x; sag {u.length(shown.sag)} in a slack run {u.length(shown.run)} long. Overhang of "
        f"the sprocket {u.length(seen.overhang)} from the motor's face; shaft {u.length(float(drive.shaft.diameter))} across, chain "
        f"{u.length(float(drive.chain.chain.inner_width))} inside. Mount ({drive.mount.form}) {u.length(float(drive.mount.thickness))} "
        f"thick and {u.length(float(drive.mount.width))} wide. {_frame_words(shown)}. Centre of mass "
        f"{u.length(float(drive.motor.centre_of_mass))} behind the motor's face."
    )
