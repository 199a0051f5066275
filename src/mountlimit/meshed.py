"""Unit stresses of a cut through a plate, by sectionproperties.

A cut is one or more rectangles (ligaments) between holes.  Each is meshed once per step of
width over thickness and scaled; only points on one quadrant of the edge are kept,
since the contributions are added in size (every sign of every load is possible).  Areas and
second moments of rectangles are exact; sectionproperties gives the shear stresses.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from .formulas import section
from .model import Array

GRID = 0.6  # spacing of the solved shapes on the logarithm of width over thickness
SLENDER = 16.0  # beyond it the stresses, over their natural scale, no longer change
ELEMENTS = 50  # about, per solved shape
LONG_SIDE = np.array([0.0, 0.25, 0.5, 0.75, 1.0])  # places on half a long face, middle to corner
SHORT_SIDE = np.array([0.0, 0.5])  # places on half an end face, middle towards the corner


@dataclass(frozen=True, slots=True)
class Rectangle:
    """A rectangle of unit thickness: points on a quarter of its edge, shear stress per unit load.

    Shear stresses are (points, 2): along the width and through the thickness.
    """

    x: Array
    y: Array
    torsion: Array
    shear_across: Array
    shear_normal: Array
    elements: int


@lru_cache(maxsize=1024)
def rectangle(ratio: float) -> Rectangle:
    """Give a rectangle ``ratio`` wide and 1 thick, between the two solved shapes nearest to it.

    Shear stresses are kept over their natural scale (torque over torsion modulus, force over
    area), which changes little from shape to shape, so straight lines between them serve.
    """
    place = math.log(min(max(ratio, 1 / SLENDER), SLENDER)) / GRID
    low = math.floor(place)
    share = place - low
    one, two = _solved(low), _solved(low + 1)
    modulus = float(section.rectangle_torsion_modulus(max(ratio, 1.0), min(ratio, 1.0)))
    torsion, across, through = (
        ((1 - share) * a + share * b) / scale
        for a, b, scale in zip(one[:3], two[:3], (modulus, ratio, ratio), strict=True)
    )
    x = np.concatenate((LONG_SIDE * ratio / 2, np.full(SHORT_SIDE.size, ratio / 2)))
    y = np.concatenate((np.full(LONG_SIDE.size, 0.5), SHORT_SIDE / 2))
    return Rectangle(x, y, torsion, across, through, max(one[3], two[3]))


@lru_cache(maxsize=256)
def _solved(step: int) -> tuple[Array, Array, Array, int]:
    """Solve one shape with sectionproperties: shear stresses at the edge points over their scale."""
    from sectionproperties.analysis import Section
    from sectionproperties.pre.library import rectangular_section

    ratio = math.exp(step * GRID)
    geometry = rectangular_section(d=1.0, b=ratio).shift_section(-ratio / 2, -0.5)
    geometry.create_mesh(mesh_sizes=[ratio / ELEMENTS])
    solved = Section(geometry)
    solved.calculate_geometric_properties()
    solved.calculate_warping_properties()
    stress = solved.calculate_stress(mzz=1.0, vx=1.0, vy=1.0).get_stress()[0]
    nodes = np.asarray(solved.mesh["vertices"], float)[: len(stress["sig_zx_mzz"])]

    def at_points(values: Array) -> Array:
        """Read a field along the upper face and the right end, by its size."""
        top = np.flatnonzero(np.abs(nodes[:, 1] - 0.5) < 1e-9)
        top = top[np.argsort(nodes[top, 0])]
        end = np.flatnonzero(np.abs(nodes[:, 0] - ratio / 2) < 1e-9 * ratio)
        end = end[np.argsort(nodes[end, 1])]
        long = np.interp(LONG_SIDE * ratio / 2, nodes[top, 0], values[top])
        short = np.interp(SHORT_SIDE / 2, nodes[end, 1], values[end])
        return np.abs(np.concatenate((long, short)))

    def pair(load: str, scale: float) -> Array:
        parts = (at_points(np.asarray(stress[f"sig_{way}_{load}"])) for way in ("zx", "zy"))
        return np.column_stack(tuple(parts)) * scale

    modulus = float(section.rectangle_torsion_modulus(max(ratio, 1.0), min(ratio, 1.0)))
    twist, across, through = pair("mzz", modulus), pair("vx", ratio), pair("vy", ratio)
    # The peaks are known exactly (series; 1.5 on a strip): a coarse mesh must not fall short of them.
    longest = twist[0, 0] if ratio >= 1.0 else twist[LONG_SIDE.size, 1]
    twist /= min(longest, 1.0)
    across[0, 0] = max(across[0, 0], 1.5)
    through[LONG_SIDE.size, 1] = max(through[LONG_SIDE.size, 1], 1.5)
    return twist, across, through, len(solved.elements)


@dataclass(frozen=True, slots=True)
class NetSection:
    """A cut with its holes taken out: properties and, per edge point, stress per unit load (SI)."""

    area: float
    second_across: float
    second_normal: float
    torsion_constant: float
    normal: Array  # per newton
    moment_across: Array  # per N*m about the width axis
    moment_normal: Array  # per N*m about the thickness axis
    bimoment: Array  # per N*m^2
    torsion: Array  # (points, 2) per N*m
    shear_across: Array  # (points, 2) per N
    shear_normal: Array  # (points, 2) per N
    place: Array  # (points, 2) across and through the thickness
    elements: int


@lru_cache(maxsize=512)
def net_section(
    width: float, thickness: float, holes: tuple[tuple[float, float], ...]
) -> NetSection:
    """Give unit stresses of a width x thickness cut less ``holes`` ((place across, diameter), m)."""
    t = thickness
    pieces = [(c, b, rectangle(round(b / t, 12))) for c, b in _ligaments(width, holes)]
    area = sum(b for _, b, _ in pieces) * t
    middle = sum(c * b for c, b, _ in pieces) * t / area
    across = sum(b for _, b, _ in pieces) * t**3 / 12
    normal = sum(t * b**3 / 12 + b * t * (c - middle) ** 2 for c, b, _ in pieces)
    constants = [section.rectangle_torsion_constant(max(b, t), min(b, t)) for _, b, _ in pieces]
    torsion = sum(constants)
    warping = section.flat_bar_warping_constant(width, t)
    rows: dict[str, list[Array]] = {k: [] for k in ("x", "y", "torsion", "across", "through")}
    for (centre, b, r), constant in zip(pieces, constants, strict=True):
        rows["x"].append(np.abs(centre - middle) + r.x * t)
        rows["y"].append(r.y * t)
        rows["torsion"].append(r.torsion * (constant / torsion) / t**3)
        rows["across"].append(r.shear_across * (b * t / area) / t**2)
        rows["through"].append(r.shear_normal * (b * t / area) / t**2)
    x, y = np.concatenate(rows["x"]), np.concatenate(rows["y"])
    return NetSection(
        area=area, second_across=across, second_normal=normal, torsion_constant=torsion,
        normal=np.full_like(x, 1 / area), moment_across=y / across, moment_normal=x / normal,
        bimoment=x * y / warping, torsion=np.concatenate(rows["torsion"]),
        shear_across=np.concatenate(rows["across"]), shear_normal=np.concatenate(rows["through"]),
        place=np.column_stack((x, y)), elements=sum(r.elements for _, _, r in pieces),
    )  # fmt: skip


def _ligaments(width: float, holes: tuple[tuple[float, float], ...]) -> list[tuple[float, float]]:
    """Give (centre, width) of what is left between the holes."""
    edges = [-width / 2]
    for place, diameter in sorted(holes):
        edges += [place - diameter / 2, place + diameter / 2]
    edges.append(width / 2)
    pairs = zip(edges[::2], edges[1::2], strict=True)
    return [((a + b) / 2, b - a) for a, b in pairs if b - a > 1e-6]
