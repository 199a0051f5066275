"""Unit stresses of a cut through a plate, by sectionproperties.

A cut is one or more rectangles (ligaments) between holes.  Each is meshed once per width-to-
thickness ratio at unit thickness and scaled; only points on one quadrant of the edge are kept,
since the contributions are added in size (every sign of every load is possible).
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from .model import Array

MESH_SHARE = 0.25  # largest triangle over the square of the thickness


@dataclass(frozen=True, slots=True)
class Rectangle:
    """A meshed rectangle of unit thickness: edge points and shear stresses per unit load."""

    x: Array
    y: Array
    torsion: Array  # (points, 2) shear stress components per unit torque
    shear_across: Array  # (points, 2) per unit shear along the width
    shear_normal: Array  # (points, 2) per unit shear through the thickness
    area: float
    second_across: float  # about the width axis (bends the thickness)
    second_normal: float  # about the thickness axis (bends the width)
    torsion_constant: float
    elements: int


@lru_cache(maxsize=512)
def rectangle(ratio: float) -> Rectangle:
    """Mesh and solve a rectangle ``ratio`` wide and 1 thick (sectionproperties: bending, shear, torsion)."""
    from sectionproperties.analysis import Section
    from sectionproperties.pre.library import rectangular_section

    geometry = rectangular_section(d=1.0, b=ratio).shift_section(-ratio / 2, -0.5)
    geometry.create_mesh(mesh_sizes=[MESH_SHARE * min(ratio, 1.0) ** 2])
    solved = Section(geometry)
    solved.calculate_geometric_properties()
    solved.calculate_warping_properties()
    stress = solved.calculate_stress(mzz=1.0, vx=1.0, vy=1.0).get_stress()[0]
    nodes = np.asarray(solved.mesh["vertices"], float)[: len(stress["sig_zx_mzz"])]
    x, y = np.abs(nodes[:, 0]), np.abs(nodes[:, 1])
    edge = (np.abs(x - ratio / 2) < 1e-9 * ratio) | (np.abs(y - 0.5) < 1e-9)
    keep = np.flatnonzero(edge & (nodes[:, 0] >= -1e-9) & (nodes[:, 1] >= -1e-9))

    def pair(load: str) -> Array:
        return np.abs(np.column_stack((stress[f"sig_zx_{load}"], stress[f"sig_zy_{load}"]))[keep])

    second_across, second_normal, _ = solved.get_ic()
    return Rectangle(
        x=x[keep], y=y[keep], torsion=pair("mzz"), shear_across=pair("vx"), shear_normal=pair("vy"),
        area=float(solved.get_area()), second_across=float(second_across),
        second_normal=float(second_normal), torsion_constant=float(solved.get_j()),
        elements=len(solved.elements),
    )  # fmt: skip


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
    pieces = _ligaments(width, holes)
    parts = [(centre, rectangle(round(b / thickness, 9))) for centre, b in pieces]
    t = thickness
    area = sum(r.area for _, r in parts) * t**2
    across = sum(r.second_across for _, r in parts) * t**4
    middle = sum(c * r.area for c, r in parts) * t**2 / area
    normal = sum(r.second_normal * t**4 + r.area * t**2 * (c - middle) ** 2 for c, r in parts)
    torsion = sum(r.torsion_constant for _, r in parts) * t**4
    warping = width**3 * t**3 / 144
    rows: dict[str, list[Array]] = {k: [] for k in ("x", "y", "torsion", "across", "through")}
    for centre, r in parts:
        share_area, share_torsion = r.area * t**2 / area, r.torsion_constant * t**4 / torsion
        rows["x"].append(np.abs(centre - middle) + r.x * t)
        rows["y"].append(r.y * t)
        rows["torsion"].append(r.torsion * share_torsion / t**3)
        rows["across"].append(r.shear_across * share_area / t**2)
        rows["through"].append(r.shear_normal * share_area / t**2)
    x, y = np.concatenate(rows["x"]), np.concatenate(rows["y"])
    return NetSection(
        area=area, second_across=across, second_normal=normal, torsion_constant=torsion,
        normal=np.full_like(x, 1 / area), moment_across=y / across, moment_normal=x / normal,
        bimoment=x * y / warping, torsion=np.concatenate(rows["torsion"]),
        shear_across=np.concatenate(rows["across"]), shear_normal=np.concatenate(rows["through"]),
        place=np.column_stack((x, y)), elements=sum(r.elements for _, r in parts),
    )  # fmt: skip


def _ligaments(width: float, holes: tuple[tuple[float, float], ...]) -> list[tuple[float, float]]:
    """Give (centre, width) of what is left between the holes."""
    edges = [-width / 2]
    for place, diameter in sorted(holes):
        edges += [place - diameter / 2, place + diameter / 2]
    edges.append(width / 2)
    pairs = zip(edges[::2], edges[1::2], strict=True)
    return [((a + b) / 2, b - a) for a, b in pairs if b - a > 1e-6]
