"""Outlines of the drive's parts to scale, seen along the shaft (x, y) or from the side (z, y)."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import numpy as np
import shapely
from matplotlib.axes import Axes
from matplotlib.patches import Circle, PathPatch, Polygon
from matplotlib.path import Path
from shapely.geometry.base import BaseGeometry

from ..formulas import sprocket
from ..model import Array, Drive
from ..mounting import BoltPlane
from ..plate_route import model_of
from ..plates.model import Facet, PlateModel
from ..resolve import rests
from . import style

ALONG = np.array(
    [[1.0, 0.0], [0.0, 1.0], [0.0, 0.0]]
)  # x, y, z of space -> picture: along the shaft
ASIDE = np.array([[0.0, 0.0], [0.0, 1.0], [1.0, 0.0]])  # from the side: z right, y up
PAD = 0.004  # m, drawn thickness of a pad on the frame member: its own is not asked for
RIGID_SIZE = 0.06  # drawn where the frame's size is not told
MOTOR_OVER_CIRCLE = 1.25  # body drawn so much wider than the bolt circle
HIDDEN: dict[str, Any] = {"facecolor": "none", "edgecolor": style.SOFT, "lw": 0.8, "ls": "--"}
MOTOR: dict[str, Any] = {"facecolor": style.PALE, "edgecolor": style.SOFT, "lw": 0.8}
MOUNT: dict[str, Any] = {
    "facecolor": "#c8d6e2",
    "edgecolor": style.BLUE,
    "lw": 1.0,
    "hatch": "////",
}
FRAME: dict[str, Any] = {
    "facecolor": style.PAPER,
    "edgecolor": style.SOFT,
    "lw": 1.0,
    "hatch": "xxx",
}
PLAIN: dict[str, Any] = {"facecolor": style.PAPER, "edgecolor": style.SOFT, "lw": 1.0}
STEEL: dict[str, Any] = {"facecolor": style.PAPER, "edgecolor": style.INK, "lw": 1.1}


@dataclass(frozen=True, slots=True, kw_only=True)
class Scene:
    """The parts of a drive in space, m."""

    drive: Drive
    model: PlateModel
    driving: float  # pitch diameters
    driven: float
    motor_radius: float
    motor_length: float
    frame: tuple[Array, Array]  # lowest and highest corner of the frame member
    pad: tuple[Array, Array] | None  # the same of what widens its face

    @property
    def tooth_width(self) -> float:
        """Give the width of the driving sprocket's teeth."""
        card = self.drive.chain.chain
        return float(sprocket.tooth_width(card.inner_width, sprocket.width_factor(card.pitch)))

    @property
    def overhang(self) -> float:
        """Give the place of the sprocket's plane along the shaft."""
        return float(self.drive.shaft.face_overhang)


def of(drive: Drive) -> Scene:
    """Lay out the parts of a drive."""
    motor, chain = drive.motor, drive.chain
    model = model_of(drive)
    if motor.bolt_circle is not None:
        radius = MOTOR_OVER_CIRCLE * float(motor.bolt_circle) / 2
    else:
        radius = 0.9 * float(motor.feet.shaft_height) if motor.feet else 0.04
    driving, driven = (
        float(sprocket.pitch_diameter(chain.chain.pitch, z))
        for z in (chain.driving_teeth, chain.driven_teeth)
    )
    return Scene(
        drive=drive, model=model, driving=driving, driven=driven, motor_radius=radius,
        motor_length=2 * float(motor.centre_of_mass), frame=_frame(drive, model), pad=_pad(drive, model),
    )  # fmt: skip


def _frame(drive: Drive, model: PlateModel) -> tuple[Array, Array]:
    """Give the box of the frame member: along x (or the clamp's axis), behind the first plane."""
    mount, frame = drive.mount, drive.frame
    size = float(frame.size) if frame.size is not None else RIGID_SIZE
    depth = float(frame.depth) if frame.depth is not None else size
    along = mount.clamp.along if mount.clamp else "x"
    reach = 0.7 * float(mount.width)
    half = dict.fromkeys("xyz", size / 2) | {along: reach}
    if mount.clamp:
        centre = np.array([float(v) for v in mount.clamp.axis])
    else:
        normal = mount.plane.normal
        half[normal] = depth / 2
        centre = _behind(model, mount.plane, depth)
    return _box(half, centre)


def _pad(drive: Drive, model: PlateModel) -> tuple[Array, Array] | None:
    """Give the box of a face told to be wider than the frame member, as thick as it is drawn."""
    plane, frame = drive.mount.plane, drive.frame
    if (
        plane.face_half is None
        or frame.size is None
        or any(r.key == rests.KEY for r in drive.ranges)
    ):
        return None
    if float(plane.face_half) <= float(frame.size) / 2:
        return None
    across = float(drive.mount.width) / 2
    half = {plane.second: float(plane.face_half), plane.normal: PAD / 2, plane.first: across}
    return _box(half, _behind(model, plane, PAD))


def _behind(model: PlateModel, plane: BoltPlane, depth: float) -> Array:
    """Give the middle of what lies so deep behind a bolt plane, on the frame's side."""
    centre = np.array([float(v) for v in plane.centre])
    centre["xyz".index(plane.normal)] -= _away(model, plane.normal) * depth / 2
    return centre


def _box(half: dict[str, float], centre: Array) -> tuple[Array, Array]:
    """Give the lowest and highest corner of a box by its half sizes."""
    halves = np.array([half[axis] for axis in "xyz"])
    return centre - halves, centre + halves


def _away(model: PlateModel, normal: str) -> float:
    """Give the sign of the way from the frame to the mount along the plane's normal."""
    for bolt in model.frame_bolts:
        out = -bolt.frame_side * model.facets[bolt.facet].axes[2]["xyz".index(normal)]
        if abs(out) > 0.5:
            return math.copysign(1.0, out)
    return 1.0


def facet_outline(facet: Facet, view: Array) -> BaseGeometry:
    """Give the outline of a plate with its thickness in a view."""
    corners = facet.to_space(np.asarray(facet.outline, float))
    step = facet.axes[2] * facet.thickness / 2
    near, far = (corners + step) @ view, (corners - step) @ view
    turned = [np.roll(part, -1, axis=0) for part in (near, far)]
    sides = [shapely.MultiPoint(quad).convex_hull for quad in np.stack([near, turned[0], turned[1], far], axis=1)]  # fmt: skip
    faces = [shapely.Polygon(near).buffer(0), shapely.Polygon(far).buffer(0)]
    return shapely.union_all([part for part in (*sides, *faces) if part.area > 0])


def patch(axes: Axes, shape: BaseGeometry, **look: Any) -> None:
    """Draw a polygon, or several, with their holes."""
    for part in getattr(shape, "geoms", [shape]):
        if part.is_empty or not hasattr(part, "exterior"):
            continue
        rings = [np.asarray(r.coords) for r in (part.exterior, *part.interiors)]
        path = Path.make_compound_path(*(Path(ring, closed=True) for ring in rings))
        axes.add_patch(PathPatch(path, **look))


def box(axes: Axes, low: Array, high: Array, view: Array, **look: Any) -> None:
    """Draw a box in space as the rectangle it is in a view."""
    a, b = low @ view, high @ view
    axes.add_patch(Polygon([(a[0], a[1]), (b[0], a[1]), (b[0], b[1]), (a[0], b[1])], **look))


def mount(axes: Axes, scene: Scene, view: Array, zorder: float = 2.0) -> None:
    """Draw the mount with its struts, and its bolt holes where they are seen round."""
    for facet in scene.model.facets:
        patch(axes, facet_outline(facet, view), zorder=zorder, **MOUNT)
    for strut in scene.model.struts:
        ends = np.array([strut.start, strut.end], float) @ view
        axes.plot(ends[:, 0], ends[:, 1], color=style.BLUE, lw=2.5, zorder=zorder)
    way = np.cross(view[:, 0], view[:, 1])
    for bolt in scene.model.bolts:
        facet = scene.model.facets[bolt.facet]
        if abs(float(facet.axes[2] @ way)) > 0.9:
            x, y = facet.to_space(np.asarray(bolt.centre, float)) @ view
            axes.add_patch(Circle((x, y), bolt.hole_diameter / 2, zorder=zorder + 0.1, **STEEL))


def frame(axes: Axes, scene: Scene, view: Array) -> None:
    """Draw the frame member; a round tube seen along its length as a circle."""
    low, high = scene.frame
    clamp = scene.drive.mount.clamp
    seen_along = clamp is not None and clamp.along == ("z" if view is ALONG else "x")
    if clamp is None:
        seen_along = view is ASIDE
    if scene.drive.frame.member == "round tube" and seen_along:
        middle = (low + high) / 2 @ view
        axes.add_patch(
            Circle((middle[0], middle[1]), float((high - low)[1]) / 2, zorder=1, **FRAME)
        )
    else:
        box(axes, low, high, view, zorder=1, **FRAME)
    if scene.pad is not None:
        box(axes, *scene.pad, view, zorder=1.5, **PLAIN)


def motor_and_shaft(axes: Axes, scene: Scene) -> None:
    """Draw motor, shaft and sprocket from the side."""
    r, shaft = scene.motor_radius, float(scene.drive.shaft.diameter) / 2
    wide, tip = scene.tooth_width, scene.driving / 2
    end = scene.overhang + wide
    third = scene.drive.shaft.outboard
    if third is not None:
        end = max(end, float(third.place) + wide)
    corners = [(-scene.motor_length, -r), (0, -r), (0, r), (-scene.motor_length, r)]
    axes.add_patch(Polygon(corners, zorder=1.5, **MOTOR))
    axes.add_patch(
        Polygon([(0, -shaft), (end, -shaft), (end, shaft), (0, shaft)], zorder=3, **STEEL)
    )
    z = scene.overhang
    axes.add_patch(
        Polygon([(z - wide / 2, -tip), (z + wide / 2, -tip), (z + wide / 2, tip), (z - wide / 2, tip)], zorder=4,
                **{**STEEL, "hatch": "----"})
    )  # fmt: skip
    if third is not None:
        axes.plot(
            [float(third.place)] * 2,
            [-1.6 * shaft, 1.6 * shaft],
            "s",
            color=style.INK,
            ms=5,
            zorder=5,
        )


def cross(axes: Axes, place: tuple[float, float], size: float, names: tuple[str, str]) -> None:
    """Draw two arrows that say which way the axes go, their names at the ends."""
    x, y = place
    for (dx, dy), name in zip(((size, 0.0), (0.0, size)), names, strict=True):
        axes.annotate("", (x + dx, y + dy), (x, y), arrowprops={"arrowstyle": "-|>", "color": style.INK, "lw": 1.0}, annotation_clip=False)  # fmt: skip
        axes.text(
            x + 1.28 * dx, y + 1.28 * dy, name, ha="center", va="center", fontsize=style.SMALL
        )


def scale_bar(
    axes: Axes, place: tuple[float, float], length: float, words: str, rise: float
) -> None:
    """Draw a bar of a known length with its length under it."""
    x, y = place
    axes.plot([x, x, x, x + length, x + length, x + length],
              [y + rise, y - rise, y, y, y + rise, y - rise], color=style.INK, lw=1.2)  # fmt: skip
    axes.text(x + length / 2, y - 1.6 * rise, words, ha="center", va="top", fontsize=style.SMALL)
