"""The plate model: each plate laid flat with its stress at the set current, and the mount as it moves."""

from __future__ import annotations

import textwrap
from dataclasses import dataclass
from typing import Any

import numpy as np
from matplotlib.axes import Axes
from matplotlib.cm import ScalarMappable
from matplotlib.collections import LineCollection
from matplotlib.colors import BoundaryNorm
from matplotlib.figure import Figure
from matplotlib.patches import Circle
from matplotlib.ticker import MaxNLocator
from matplotlib.tri import Triangulation

from .. import bearing_face, plates
from ..assess import Assessment
from ..case import Loads
from ..model import Array, Drive
from ..plate_stress import peaks
from ..plates import readings
from ..plates.mesh import Mesh
from ..plates.model import IntArray, PlateModel
from ..plates.sampling import Reader
from ..report.words import amperes
from ..sections import plane_yielding
from ..structure import weight_only, wrench
from . import style
from .measures import Units

NAME = "plate"
TITLE = "Plate model: stress at the set current, and how the mount moves"
SHOWN_MOVE = 0.10  # largest movement drawn, over the mount's size
STEPS = 8  # of grey
CAPPED = 0.97  # share of the points whose stress the greys tell apart; sharp corners lie above
ACROSS = 3  # flat plates in one row, at most
OBLIQUE = np.array([[1.0, 0.0], [0.0, 1.0], [-0.45, -0.35]])  # x right, y up, z towards the viewer


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """What one frame bolt takes, N: pull, and shear in the plane of its plate."""

    facet: int
    place: tuple[float, float]
    tension: float
    shear: tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What the figure shows, SI."""

    drive_title: str
    units: Units
    current: float
    case: str
    model: PlateModel
    mesh: Mesh
    stress: Array  # (triangles, 3) at their corners, larger of both faces
    movement: Array  # (nodes, 3), by the pull: what the weight does is there when lined up
    most_moved: float
    highest: tuple[tuple[float, str], ...]  # the pipeline's largest stress of each kind of place
    bolts: tuple[Held, ...]
    factor: float


def read(a: Assessment) -> Shown | str:
    """Solve the plate model in full for the load case of the set current; words why not without one."""
    drive = a.drive
    if drive.plates is None:
        return "this file asks for the section route: there is no plate model"
    model = bearing_face.as_bearing(drive.plates.family.model, drive)
    solution = plates.solve(model)
    response = _response(solution, drive, a.at_set.loads)
    weight = _response(solution, drive, weight_only(a.at_set.loads))
    movement = solution.nodal_movement(response) - solution.nodal_movement(weight)
    movement = movement[:, :3] * float(drive.mount.softness)
    size = float(np.max(np.ptp(solution.system.mesh.points, axis=0)))
    most = float(np.max(np.linalg.norm(movement, axis=1)))
    found = a.at_set.response.bolts
    return Shown(
        drive_title=drive.title, units=Units(drive.system), current=float(drive.current.set),
        case=a.at_set.loads.names[0], model=model, mesh=solution.system.mesh,
        stress=_stress(drive, solution, response.shares), movement=movement, most_moved=most,
        highest=tuple((float(p.stress), p.station) for p in peaks(a.at_set, plane_yielding, ("ring", "line", "edge"))),
        bolts=_bolts(model, solution.supports.frame_bolts @ response.shares, found.tension),
        factor=_round(SHOWN_MOVE * size / max(most, 1e-9)),
    )  # fmt: skip


def _response(solution: plates.PlateSolution, drive: Drive, loads: Loads) -> plates.PlateResponse:
    """Give the response to a drive's loads."""
    force, moment = wrench(drive, loads, (0.0, 0.0, 0.0))
    return solution.response([float(v) for v in (*force, *moment)], (0.0, 0.0, 0.0))


def _stress(drive: Drive, solution: plates.PlateSolution, shares: Array) -> Array:
    """Give the equivalent stress at the corners of every triangle, the larger of both faces."""
    mesh = solution.system.mesh
    reader = Reader(solution.model, mesh)
    means = readings.mean_stress(solution.system, reader, solution.movement) @ shares
    ratios = [
        float(drive.mount.substance(f.name in drive.mount.second_facets).compressive_over_tensile)
        for f in solution.model.facets
    ]
    corners = means[reader.group]
    found = np.empty(corners.shape[:2])
    for i, ratio in enumerate(ratios):
        own = corners[mesh.facet == i]
        faces = [own[..., :3] + sign * own[..., 3:] for sign in (1.0, -1.0)]
        both = [plane_yielding(f[..., 0], f[..., 1], f[..., 2], ratio) for f in faces]
        found[mesh.facet == i] = np.max(both, axis=0)
    return found


def _bolts(model: PlateModel, wrenches: Array, tension: tuple[float, ...]) -> tuple[Held, ...]:
    found = []
    for i, (bolt, pulled) in enumerate(zip(model.frame_bolts, tension, strict=True)):
        shear = model.facets[bolt.facet].axes[:2] @ wrenches[i, :3]
        x, y = (float(v) for v in bolt.centre)
        found.append(Held(facet=bolt.facet, place=(x, y), tension=float(pulled), shear=(float(shear[0]), float(shear[1]))))  # fmt: skip
    return tuple(found)


def _round(factor: float) -> float:
    """Give the largest of 1, 2, 5, 10 ... below a factor."""
    steps = [m * 10.0**e for e in range(6) for m in (1, 2, 5)]
    return max((s for s in steps if s <= factor), default=1.0)


@style.drawn
def draw(shown: Shown) -> Figure:
    """Draw the plates laid flat, the moved mount, and the bolts' forces."""
    facets = shown.model.facets
    rows = -(-(len(facets) + 1) // ACROSS)
    lines = len(shown.bolts)
    height = 0.65 + 2.7 * rows + 1.23 + 0.16 * (-(-lines // 2)) + 0.5
    figure = style.figure(height, TITLE, shown.drive_title)
    low = 1.68 + 0.16 * (-(-lines // 2))
    grid = figure.add_gridspec(
        rows, min(ACROSS, len(facets) + 1), left=0.085, right=0.97, bottom=low / height,
        top=1 - 0.75 / height, wspace=0.5, hspace=0.35,
    )  # fmt: skip
    u = shown.units
    cap = float(np.quantile(shown.stress, CAPPED))
    levels = MaxNLocator(STEPS, min_n_ticks=3).tick_values(0.0, u.of(cap, "stress"))
    norm = BoundaryNorm(levels, 256, extend="max")
    for i in range(len(facets)):
        axes = figure.add_subplot(grid[i // ACROSS, i % ACROSS])
        _flat(axes, shown, i, norm)
    i = len(facets)
    _moved(figure.add_subplot(grid[i // ACROSS, i % ACROSS]), shown)
    bar = figure.add_axes((0.085, (low - 0.68) / height, 0.5, 0.10 / height))
    figure.colorbar(
        ScalarMappable(norm=norm, cmap=style.STRESS_MAP), cax=bar, orientation="horizontal",
        label=f"equivalent stress, larger of both faces [{u.unit('stress')}]",
    )  # fmt: skip
    _words(figure, shown, height)
    return figure


def _flat(axes: Axes, shown: Shown, number: int, norm: BoundaryNorm) -> None:
    """Draw one plate in its own plane, its stress in greys, with its bolts."""
    u, facet = shown.units, shown.model.facets[number]
    own = np.flatnonzero(shown.mesh.facet == number)
    places = facet.to_plane(shown.mesh.points[shown.mesh.triangles[own, :3]]).reshape(-1, 2)
    x, y = (np.array([u.of(v, "length") for v in places[:, k]]) for k in (0, 1))
    triangles = Triangulation(x, y, np.arange(len(x)).reshape(-1, 3))
    stress = shown.stress[own].ravel() * u.of(1.0, "stress")
    drawn = axes.tripcolor(triangles, stress, shading="gouraud", cmap=style.STRESS_MAP, norm=norm)
    drawn.set_rasterized(True)
    ends = [
        facet.to_plane(shown.mesh.points[rim]) * u.of(1.0, "length")
        for rim in _edges(shown.mesh, number)
    ]
    axes.add_collection(LineCollection(ends, colors=style.INK, lw=0.6))
    size = max(float(np.ptp(x)), float(np.ptp(y)))
    most = max((np.hypot(*b.shear) for b in shown.bolts), default=0.0)
    for i, (bolt, held) in enumerate(zip(shown.model.frame_bolts, shown.bolts, strict=True)):
        if held.facet == number:
            _bolt(axes, i + 1, np.array(held.place) * u.of(1.0, "length"), held, u.of(bolt.washer_diameter / 2, "length"), 0.22 * size / max(most, 1e-9))  # fmt: skip
    axes.set_aspect("equal")
    axes.margins(0.08)
    axes.set_title(textwrap.fill(style.clip(facet.name, 48), 24))
    axes.set_xlabel(f"along first axis [{u.unit('length')}]", fontsize=style.SMALL)
    axes.set_ylabel(f"along second axis [{u.unit('length')}]", fontsize=style.SMALL)
    axes.xaxis.set_major_locator(MaxNLocator(4 if np.ptp(x) > np.ptp(y) / 2 else 2))


def _bolt(axes: Axes, number: int, place: Array, held: Held, radius: float, scale: float) -> None:
    """Draw a frame bolt: its washer, its number, and its shear as an arrow."""
    axes.add_patch(
        Circle((place[0], place[1]), radius, fc=style.PAPER, ec=style.BLUE, lw=1.1, zorder=4)
    )
    axes.text(place[0], place[1], str(number), ha="center", va="center", fontsize=style.SMALL - 1, color=style.BLUE, weight="bold", zorder=5)  # fmt: skip
    along = np.asarray(held.shear) * scale
    length = float(np.hypot(*along))
    if length > 0.3 * radius:
        start = place + along / length * radius
        axes.annotate(
            "",
            tuple((start + along).tolist()),
            tuple(start.tolist()),
            annotation_clip=False,
            arrowprops={"arrowstyle": "-|>", "color": style.BLUE, "lw": 1.4},
        )


def _edges(mesh: Mesh, number: int) -> list[IntArray]:
    """Give the rims of a facet as rows of nodes: edges that belong to one of its triangles."""
    corners = mesh.triangles[mesh.facet == number, :3]
    pairs = np.sort(
        np.concatenate([corners[:, [0, 1]], corners[:, [1, 2]], corners[:, [2, 0]]]), axis=1
    )
    kept, count = np.unique(pairs, axis=0, return_counts=True)
    left = {tuple(int(v) for v in pair) for pair in kept[count == 1]}
    beside: dict[int, list[int]] = {}
    for one, two in sorted(left):
        beside.setdefault(one, []).append(two)
        beside.setdefault(two, []).append(one)
    rims = []
    while left:
        rim = list(min(left))
        left.remove((rim[0], rim[1]))
        while True:
            here = rim[-1]
            ahead = next((n for n in beside[here] if (min(n, here), max(n, here)) in left), None)
            if ahead is None:
                break
            left.remove((min(ahead, here), max(ahead, here)))
            rim.append(ahead)
        rims.append(np.array(rim))
    return rims


def _moved(axes: Axes, shown: Shown) -> None:
    """Draw the mount askew, at rest and moved."""
    moved = shown.mesh.points + shown.factor * shown.movement
    rest: dict[str, Any] = {"colors": style.SOFT, "lw": 0.7, "linestyles": "--"}
    loaded: dict[str, Any] = {"colors": style.RED, "lw": 1.3}
    for points, look in ((shown.mesh.points, rest), (moved, loaded)):
        flat = points @ OBLIQUE
        for number in range(len(shown.model.facets)):
            rims = [flat[rim] for rim in _edges(shown.mesh, number)]
            axes.add_collection(LineCollection(rims, **look))
    axes.autoscale_view()
    axes.set_aspect("equal")
    axes.margins(0.08)
    axes.set_axis_off()
    axes.set_title(f"moved, drawn {shown.factor:g}\ntimes as large")
    _axes_cross(axes)


def _axes_cross(axes: Axes) -> None:
    """Mark which way x, y and z go."""
    for name, way in zip("xyz", OBLIQUE, strict=True):
        end = 0.11 * way / np.linalg.norm(way)
        axes.annotate(name, (0.06, -0.12), (0.06 + end[0], -0.12 + end[1]), xycoords="axes fraction", textcoords="axes fraction",
                      fontsize=style.SMALL, ha="center", va="center", arrowprops={"arrowstyle": "<-", "lw": 0.8, "color": style.SOFT},
                      annotation_clip=False)  # fmt: skip


def bolt_words(shown: Shown) -> list[str]:
    """Say what every frame bolt takes."""
    u = shown.units
    return [
        f"bolt {i + 1}: pull {u.show(b.tension, 'force')}, shear {u.show(float(np.hypot(*b.shear)), 'force')}"
        for i, b in enumerate(shown.bolts)
    ]


def _words(figure: Figure, shown: Shown, height: float) -> None:
    u = shown.units
    said = bolt_words(shown)
    for i, text in enumerate(said):
        figure.text(0.012 + 0.5 * (i % 2), (0.60 + 0.16 * ((len(said) - 1) // 2 - i // 2)) / height, text, fontsize=style.SMALL)  # fmt: skip
    figure.text(
        0.012, 0.06 / height, style.clip(f"{amperes(shown.current)} A, load case: {shown.case}. Arrows: shear of the plate on its bolts.", 106)
        + f"\nDashed: at rest; solid: moved by the pull, at most {u.show(shown.most_moved, 'length', 2)}. Largest stress where the checks look:\n"
        + style.clip(f"{u.show(max(shown.highest)[0], 'stress')}, {max(shown.highest)[1].removesuffix(' by the plate model')}.", 106),
        fontsize=style.SMALL, color=style.SOFT,
    )  # fmt: skip


def alt(shown: Shown) -> str:
    """Say in words what the figure shows."""
    u = shown.units
    names = ", ".join(f.name for f in shown.model.facets)
    highest = "; ".join(f"{u.show(s, 'stress')} at {station}" for s, station in shown.highest)
    return (
        f"{TITLE} of {amperes(shown.current)} A ({shown.case}). Plates laid flat: {names}. Largest stress where it counts: {highest}. "
        f"By the pull the mount moves at most {u.show(shown.most_moved, 'length', 2)}, drawn {shown.factor:g} times as large. {'; '.join(bolt_words(shown))}."
    )
