"""Angles and channels by sectionproperties: bending both ways, twist, warping, shear centre.

Corners are sharp.  Each shape is solved once for unit wall and scaled.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

import numpy as np

# Largest element over wall squared, per wall of the longest side: torsion constant within 1 % (high).
ELEMENT = 0.025
SMALLEST, LARGEST = 0.15, 0.5
Outline = tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class Solved:
    """Properties about the middle of the face the mount lies on: ``p`` along it, ``n`` out of it (SI)."""

    area: float
    second_p: float  # integral of p squared about the centroid
    second_n: float
    product: float
    torsion_constant: float
    warping_constant: float
    centroid: tuple[float, float]
    shear_centre: tuple[float, float]
    corners: tuple[tuple[float, float, float], ...]  # place of each and its warping
    elements: int


def angle(size: float, depth: float, wall: float) -> Solved:
    """Give an angle: the mount on the leg ``size``, the leg ``depth`` behind its edge at p > 0."""
    b, d, t = size / wall / 2, depth / wall, 1.0
    return _scaled(((-b, 0), (b, 0), (b, -d), (b - t, -d), (b - t, -t), (-b, -t)), wall)


def channel_on_side(size: float, depth: float, wall: float) -> Solved:
    """Give a channel ``size`` high: the mount on a flange ``depth`` wide, its web at p > 0."""
    b, h, t = depth / wall / 2, size / wall, 1.0
    return _scaled(
        ((-b, 0), (b, 0), (b, -h), (-b, -h), (-b, t - h), (b - t, t - h), (b - t, -t), (-b, -t)), wall
    )  # fmt: skip


def channel_open_away(size: float, depth: float, wall: float) -> Solved:
    """Give a channel ``size`` high: the mount on its web, flanges ``depth`` wide behind it."""
    side = channel_on_side(size, depth, wall)

    def turned(place: tuple[float, float]) -> tuple[float, float]:
        return place[1] + size / 2, place[0] - depth / 2

    return replace(
        side, second_p=side.second_n, second_n=side.second_p, centroid=turned(side.centroid),
        shear_centre=turned(side.shear_centre),
        corners=tuple((*turned((p, n)), warping) for p, n, warping in side.corners),
    )  # fmt: skip


def _scaled(outline: Outline, wall: float) -> Solved:
    one = _solved(tuple((round(p, 9), round(n, 9)) for p, n in outline))
    second = float(wall) ** 4
    return Solved(
        area=one.area * float(wall) ** 2,
        second_p=one.second_p * second, second_n=one.second_n * second,
        product=one.product * second, torsion_constant=one.torsion_constant * second,
        warping_constant=one.warping_constant * float(wall) ** 6,
        centroid=(one.centroid[0] * wall, one.centroid[1] * wall),
        shear_centre=(one.shear_centre[0] * wall, one.shear_centre[1] * wall),
        corners=tuple((p * wall, n * wall, w * wall**2) for p, n, w in one.corners),
        elements=one.elements,
    )  # fmt: skip


@lru_cache(maxsize=256)
def _solved(outline: Outline) -> Solved:
    """Solve one outline in units of its wall."""
    from sectionproperties.analysis import Section
    from sectionproperties.pre import Geometry
    from shapely import Polygon

    longest = max(max(p, -p, -n) for p, n in outline)
    element = min(max(ELEMENT * longest, SMALLEST), LARGEST)
    solved = Section(Geometry(Polygon(outline)).create_mesh(mesh_sizes=[element]))
    solved.calculate_geometric_properties()
    solved.calculate_warping_properties()
    about_p, about_n, product = (float(v) for v in solved.get_ic())
    (p, n), (shear_p, shear_n) = solved.get_c(), solved.get_sc()
    return Solved(
        area=float(solved.get_area()),
        second_p=about_n, second_n=about_p, product=product,
        torsion_constant=float(solved.get_j()), warping_constant=float(solved.get_gamma()),
        centroid=(float(p), float(n)), shear_centre=(float(shear_p), float(shear_n)),
        corners=_corners(solved, outline), elements=len(solved.elements),
    )  # fmt: skip


def _corners(solved: Any, outline: Outline) -> tuple[tuple[float, float, float], ...]:
    """Give every corner with its warping under unit twist about the shear centre."""
    nodes = np.asarray(solved.mesh["vertices"], float)
    about_centroid = np.asarray(solved.section_props.omega, float)
    p, n = (nodes[:, i] - c for i, c in enumerate(solved.get_c()))
    shear_p, shear_n = (s - c for s, c in zip(solved.get_sc(), solved.get_c(), strict=True))
    warping = about_centroid - shear_n * p + shear_p * n
    nearest = [int(np.argmin(np.hypot(*(nodes - corner).T))) for corner in outline]
    return tuple((*corner, float(warping[i])) for corner, i in zip(outline, nearest, strict=True))
