"""The mount's most stressed cut by sectionproperties: equivalent stress over the net section."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from matplotlib.axes import Axes
from matplotlib.cm import ScalarMappable
from matplotlib.colors import BoundaryNorm
from matplotlib.figure import Figure
from matplotlib.patches import Rectangle
from matplotlib.ticker import MaxNLocator
from matplotlib.tri import Triangulation

from ..assess import Assessment
from ..case import SectionForces
from ..formulas import section as section_formulas
from ..meshed import net_section
from ..model import Array, Number
from ..mounting import Cut
from ..report.words import amperes
from ..sections import stresses, yielding
from . import style
from .measures import Units

NAME = "section"
TITLE = "The mount's most stressed section at the set current"
ELEMENTS = 400  # about, of a piece between holes
STEPS = 8
LOADS = (
    ("normal", "pull along the plate", "force"), ("shear_across", "shear along the width", "force"),
    ("shear_normal", "shear through the thickness", "force"), ("torque", "twist", "torque"),
    ("moment_across", "bending of the thickness", "torque"), ("moment_normal", "bending of the width", "torque"),
)  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """What stands between two holes: nodes (n, 2) in m, stress at the nodes in Pa."""

    low: float
    width: float
    nodes: Array
    stress: Array


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What the figure shows."""

    drive_title: str
    units: Units
    current: float
    case: str
    cut: Cut
    pieces: tuple[Piece, ...]
    forces: SectionForces
    largest: float  # Pa, the pipeline's number for this cut
    governs: str  # what the check of the mount's strength names, and how far it is used


def read(a: Assessment) -> Shown | str:
    """Solve the cut with the largest stress; words why not where the mount has no named cut."""
    drive = a.drive
    if not drive.mount.cuts:
        return f"the form '{drive.mount.form}' has no named section: its stress is that of the plate model"
    ranked = stresses(a.at_set)
    i = max(range(len(ranked)), key=lambda k: float(ranked[k][1]))
    cut, largest = ranked[i]
    forces = a.at_set.response.sections[i]
    ratio = float(drive.mount.substance(cut.second).compressive_over_tensile)
    line = next((x for x in a.lines if x.limit.check.name == "mount_section"), None)
    governs = (
        ""
        if line is None
        else f"{line.station.removesuffix(' by the plate model')}: {100 * line.at_set.utilisation:.0f} % used"
    )
    return Shown(
        drive_title=drive.title, units=Units(drive.system), current=float(drive.current.set),
        case=a.at_set.loads.names[0], cut=cut, pieces=_pieces(cut, forces, ratio), forces=forces,
        largest=float(largest), governs=governs,
    )  # fmt: skip


def _pieces(cut: Cut, forces: SectionForces, ratio: float) -> tuple[Piece, ...]:
    """Mesh and solve what stands between the holes; parts of the load as the pipeline shares them."""
    net = net_section(cut.width, cut.thickness, cut.holes)
    edges = [-cut.width / 2]
    for place, diameter in sorted(cut.holes):
        edges += [place - diameter / 2, place + diameter / 2]
    edges.append(cut.width / 2)
    spans = [(a, b - a) for a, b in zip(edges[::2], edges[1::2], strict=True) if b - a > 1e-6]
    t = cut.thickness
    middle = sum((low + wide / 2) * wide * t for low, wide in spans) / net.area
    found = []
    for low, wide in spans:
        solved, nodes = _solved(wide, t)
        x = nodes[:, 0] + low + wide / 2 - middle
        twisting = section_formulas.rectangle_torsion_constant(max(wide, t), min(wide, t))
        parts = {
            "normal": (np.full(len(x), 1 / net.area), 0.0), "moment_across": (np.abs(nodes[:, 1]) / net.second_across, 0.0),
            "moment_normal": (np.abs(x) / net.second_normal, 0.0),
            "bimoment": (np.abs(x * nodes[:, 1]) / section_formulas.flat_bar_warping_constant(cut.width, t), 0.0),
        }  # fmt: skip
        normal: Number = sum(
            unit * abs(float(getattr(forces, name))) for name, (unit, _) in parts.items()
        )
        shares = {"torque": ("mzz", twisting / net.torsion_constant), "shear_across": ("vx", wide * t / net.area),
                  "shear_normal": ("vy", wide * t / net.area)}  # fmt: skip
        along, through = (
            sum(np.abs(solved[f"sig_z{way}_{load}"]) * share * abs(float(getattr(forces, name)))
                for name, (load, share) in shares.items()) for way in ("x", "y")
        )  # fmt: skip
        stress = yielding(normal, np.hypot(along, through), ratio)
        placed = np.column_stack([nodes[:, 0] + low + wide / 2, nodes[:, 1]])
        found.append(Piece(low=low, width=wide, nodes=placed, stress=np.asarray(stress)))  # fmt: skip
    return tuple(found)


def _solved(width: float, thickness: float) -> tuple[dict[str, Array], Array]:
    """Solve a rectangle of real size for unit twist and shears: fields, nodes (m)."""
    from sectionproperties.analysis import Section
    from sectionproperties.pre.library import rectangular_section

    geometry = rectangular_section(d=thickness, b=width).shift_section(-width / 2, -thickness / 2)
    geometry.create_mesh(mesh_sizes=[width * thickness / ELEMENTS])
    solved = Section(geometry)
    solved.calculate_geometric_properties()
    solved.calculate_warping_properties()
    stress = solved.calculate_stress(mzz=1.0, vx=1.0, vy=1.0).get_stress()[0]
    fields = {k: np.asarray(v) for k, v in stress.items() if k.startswith("sig_z")}
    nodes = np.asarray(solved.mesh["vertices"], float)[: len(fields["sig_zx_mzz"])]
    return fields, nodes


@style.drawn
def draw(shown: Shown) -> Figure:
    """Draw the section with its stress in greys, and the forces in it."""
    height = 4.0
    figure = style.figure(height, TITLE, shown.drive_title)
    axes = figure.add_axes((0.11, 0.50, 0.86, 0.34))
    u = shown.units
    most = max(float(p.stress.max()) for p in shown.pieces)
    norm = BoundaryNorm(MaxNLocator(STEPS).tick_values(0.0, u.of(most, "stress")), 256)
    half, t = u.of(shown.cut.width / 2, "length"), u.of(shown.cut.thickness / 2, "length")
    stretch = max(1.0, round(0.22 * half / t))
    for piece in shown.pieces:
        _piece(axes, piece, u, norm, stretch)
    for place, diameter in shown.cut.holes:
        low, wide = (u.of(v, "length") for v in (place - diameter / 2, diameter))
        axes.add_patch(
            Rectangle(
                (low, -t), wide, 2 * t, facecolor="none", edgecolor=style.SOFT, lw=0.7, ls="--"
            )
        )
    axes.set_xlim(-1.03 * half, 1.03 * half)
    axes.set_ylim(-1.25 * t, 1.25 * t)
    axes.set_aspect(stretch)
    axes.set_xlabel(f"across the width [{u.unit('length')}]")
    axes.set_ylabel(f"through the\nthickness [{u.unit('length')}]")
    bar = figure.add_axes((0.11, 0.265, 0.42, 0.028))
    figure.colorbar(ScalarMappable(norm=norm, cmap=style.STRESS_MAP), cax=bar, orientation="horizontal",
                    label=f"equivalent stress [{u.unit('stress')}]")  # fmt: skip
    said = force_words(shown)
    figure.text(0.56, 0.335, "\n".join(said), fontsize=style.SMALL, va="top", linespacing=1.35)
    figure.text(0.012, 0.015, style.clip(f"{shown.cut.name}, {amperes(shown.current)} A, load case: {shown.case}.", 100)
                + f" Largest at the edge {u.show(shown.largest, 'stress')}.\n"
                + style.clip(f"Loads added in size; holes dashed. Thickness drawn {stretch:g} times as large. Governs: {shown.governs}.", 116),
                fontsize=style.SMALL, color=style.SOFT)  # fmt: skip
    return figure


def _piece(axes: Axes, piece: Piece, u: Units, norm: BoundaryNorm, stretch: float) -> None:
    """Shade one piece, its nodes joined anew so that the triangles suit the stretched picture."""
    scale = u.of(1.0, "length")
    x, y = piece.nodes.T * scale
    triangles = Triangulation(x, y, Triangulation(x, stretch * y).triangles)
    drawn = axes.tripcolor(triangles, piece.stress * u.of(1.0, "stress"), shading="gouraud", cmap=style.STRESS_MAP, norm=norm)  # fmt: skip
    drawn.set_rasterized(True)
    t = float(np.ptp(piece.nodes[:, 1])) * scale
    axes.add_patch(
        Rectangle(
            (piece.low * scale, -t / 2),
            piece.width * scale,
            t,
            facecolor="none",
            edgecolor=style.INK,
            lw=1.0,
        )
    )


def force_words(shown: Shown) -> list[str]:
    """Say what acts in the cut; parts that are nothing beside the others are left out."""
    u, found = shown.units, []
    for kind in ("force", "torque"):
        named = [
            (words, abs(float(getattr(shown.forces, name))))
            for name, words, k in LOADS
            if k == kind
        ]
        most = max(v for _, v in named)
        found += [
            f"{words} {u.show(v, kind)}"
            for words, v in named
            if v > 1e-3 * most and not math.isclose(v, 0.0)
        ]
    return found


def alt(shown: Shown) -> str:
    """Say in words what the figure shows."""
    u = shown.units
    holes = f", {len(shown.cut.holes)} holes cut out" if shown.cut.holes else ""
    return (
        f"{TITLE} of {amperes(shown.current)} A ({shown.case}): {shown.cut.name}, {u.length(shown.cut.width)} wide and "
        f"{u.length(shown.cut.thickness)} thick{holes}. Largest equivalent stress {u.show(shown.largest, 'stress')}, at the edge. "
        f"In the section: {'; '.join(force_words(shown))}. Of the mount's strength what governs is {shown.governs}."
    )
