"""Tetrahedra of a plate model's bodies: gmsh with its OpenCASCADE kernel, sizes by place."""

from __future__ import annotations

import math
import struct
import tempfile
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import shapely
from audit_shape import Body, CannotMesh, bodies
from shapely.geometry import Point, Polygon

from mountlimit.plates import PlateModel, Slot

MILLI = 1e3  # bodies are drawn in mm


@dataclass(frozen=True)
class Sizes:
    """Edge lengths: over thickness far off, over thickness within a thickness of bolts, at motor washers' edges.

    ``rim`` is a share of the width of the motor washers' rings.
    """

    bulk: float = 2.0
    near: float = 0.7
    rim: float = 0.35


@dataclass
class Solid:
    """Points (n, 3) [m], tetrahedra (m, 4), and which tetrahedra belong to which material.

    ``owner`` is the facet, or the number of facets plus the spacer.
    """

    points: np.ndarray
    tets: np.ndarray
    owner: np.ndarray
    bodies: list[Body]
    volume: float  # of the bodies as drawn, m3


def build(model: PlateModel, sizes: Sizes) -> Solid:
    """Mesh a model.

    Raises
    ------
    CannotMesh
        when a part has no body, or the mesher gives up
    """
    import gmsh

    parts = bodies(model)
    gmsh.initialize(interruptible=False)
    try:
        gmsh.option.setNumber("General.Terminal", 0)
        gmsh.option.setNumber("General.NumThreads", 1)
        gmsh.model.add("mount")
        _draw(model, parts)
        volume = sum(gmsh.model.occ.getMass(3, tag) for _, tag in gmsh.model.getEntities(3))
        _set_sizes(model, parts, sizes)
        gmsh.model.mesh.generate(3)
        points, tets = _read()
    except CannotMesh:
        raise
    except Exception as error:  # gmsh raises plain Exception
        raise CannotMesh(str(error)) from None
    finally:
        gmsh.finalize()
    solid = Solid(points / MILLI, tets, np.empty(0, int), parts, volume / MILLI**3)
    solid.owner = _owner(model, solid)
    _check(solid)
    return solid


# --- bodies ---------------------------------------------------------------------------------------


def _draw(model: PlateModel, parts: list[Body]) -> None:
    """Draw all bodies, join those of one material, and mark the motor's washers on their faces."""
    import gmsh

    occ = gmsh.model.occ
    by_material: dict[tuple[float, float], list[tuple[int, int]]] = {}
    for body in parts:
        key = (body.facet.elastic_modulus, body.facet.poissons_ratio)
        by_material.setdefault(key, []).append((3, _slab(body)))
    groups = [_fused(tags) for tags in by_material.values()]
    groups += [[(3, _spacer(model, spacer))] for spacer in model.spacers]
    volumes = [tag for group in groups for tag in group]
    if len(groups) > 1:
        found, _ = occ.fragment(volumes[:1], volumes[1:])
        volumes = [x for x in found if x[0] == 3]
    discs = [
        d
        for bolt in model.motor_bolts
        for d in _discs(model, bolt.facet, bolt.centre, bolt.washer_diameter)
    ]
    occ.fragment(volumes, discs)
    occ.synchronize()
    loose = [x for x in gmsh.model.getEntities(2) if not gmsh.model.getAdjacencies(2, x[1])[0].size]
    occ.remove(loose)
    occ.synchronize()


def _fused(tags: list[tuple[int, int]]) -> list[tuple[int, int]]:
    import gmsh

    if len(tags) == 1:
        return tags
    found, _ = gmsh.model.occ.fuse(tags[:1], tags[1:])
    return list(found)


def _slab(body: Body) -> int:
    """Draw one facet's slab with its holes, in space."""
    import gmsh

    occ, t = gmsh.model.occ, body.facet.thickness * MILLI
    outline = np.asarray(shapely.normalize(body.outline.simplify(1e-9)).exterior.coords)[:-1]
    tag = _prism(outline, t)
    tools = [
        (3, occ.addCylinder(*(c * MILLI), -t, 0, 0, 2 * t, d / 2 * MILLI)) for c, d in body.rounds
    ]
    for slot in body.slots:
        tools += _slot(slot, t)
    for cut in body.cutouts:
        tools.append((3, _prism(np.asarray(cut.exterior.coords)[:-1], 3 * t)))
    if tools:
        found, _ = occ.cut([(3, tag)], tools)
        solids = [x for x in found if x[0] == 3]
        if len(solids) != 1:
            raise CannotMesh(f"holes part {body.facet.name} in {len(solids)}")
        tag = solids[0][1]
    _place(body.facet, [(3, tag)])
    return tag


def _prism(corners: np.ndarray, height: float) -> int:
    import gmsh

    occ = gmsh.model.occ
    points = [occ.addPoint(*(p * MILLI), -height / 2) for p in corners]
    lines = [occ.addLine(a, b) for a, b in zip(points, points[1:] + points[:1], strict=True)]
    face = occ.addPlaneSurface([occ.addCurveLoop(lines)])
    return next(tag for dim, tag in occ.extrude([(2, face)], 0, 0, height) if dim == 3)


def _slot(slot: Slot, t: float) -> list[tuple[int, int]]:
    import gmsh

    occ = gmsh.model.occ
    half = 0.5 * (slot.length - slot.width)
    way = np.array([math.cos(slot.angle), math.sin(slot.angle)])
    side = 0.5 * slot.width * np.array([-way[1], way[0]])
    centre = np.asarray(slot.centre, float)
    ends = centre - half * way, centre + half * way
    found = [
        (3, occ.addCylinder(*(e * MILLI), -t, 0, 0, 2 * t, slot.width / 2 * MILLI)) for e in ends
    ]
    box = np.array([ends[0] - side, ends[1] - side, ends[1] + side, ends[0] + side])
    return [*found, (3, _prism(box, 3 * t))]


def _place(facet: object, tags: list[tuple[int, int]]) -> None:
    """Turn what was drawn in a facet's plane into its place in space."""
    import gmsh

    axes, origin = facet.axes, np.asarray(facet.origin, float) * MILLI
    rows = np.c_[axes.T, origin]
    gmsh.model.occ.affineTransform(tags, [*rows.ravel(), 0, 0, 0, 1])


def _spacer(model: PlateModel, spacer: object) -> int:
    import gmsh

    occ = gmsh.model.occ
    first, second = (model.facets[i] for i in spacer.facets)
    start = first.to_space(np.asarray(spacer.centre, float))
    way = second.to_space(second.to_plane(start)) - start
    length = np.linalg.norm(way)
    way /= length
    low = (start + 0.5 * first.thickness * way) * MILLI
    span = (length - 0.5 * (first.thickness + second.thickness)) * way * MILLI
    tag = occ.addCylinder(*low, *span, spacer.diameter / 2 * MILLI)
    if spacer.inner_diameter > 0.0:
        inner = occ.addCylinder(*low, *span, spacer.inner_diameter / 2 * MILLI)
        tag = occ.cut([(3, tag)], [(3, inner)])[0][0][1]
    return tag


def _discs(model: PlateModel, facet: int, centre: object, diameter: float) -> list[tuple[int, int]]:
    """Draw a disc on both faces of a facet."""
    import gmsh

    plate, found = model.facets[facet], []
    for side in (-0.5, 0.5):
        x, y = np.asarray(centre, float) * MILLI
        tag = gmsh.model.occ.addDisk(
            x, y, side * plate.thickness * MILLI, diameter / 2 * MILLI, diameter / 2 * MILLI
        )
        found.append((2, tag))
    _place(plate, found)
    return found


# --- sizes ----------------------------------------------------------------------------------------


def _set_sizes(model: PlateModel, parts: list[Body], sizes: Sizes) -> None:
    """Give the mesher the size at every place, from a grid."""
    import gmsh

    for name, value in (
        ("Mesh.MeshSizeExtendFromBoundary", 0), ("Mesh.MeshSizeFromPoints", 0),
        ("Mesh.MeshSizeFromCurvature", 12), ("Mesh.Algorithm", 6), ("Mesh.Algorithm3D", 1),
        ("Mesh.Optimize", 1), ("Mesh.ElementOrder", 1), ("Mesh.RandomSeed", 1),
    ):  # fmt: skip
        gmsh.option.setNumber(name, value)
    box = np.array(gmsh.model.getBoundingBox(-1, -1)).reshape(2, 3)
    step = max(1.0, float(np.prod(np.ptp(box, axis=0) + 6) / 1.0e6) ** (1 / 3))
    counts = (np.ceil(np.ptp(box, axis=0) / step) + 3).astype(int)
    low = box[0] - step
    grid = np.stack(
        np.meshgrid(*(low[i] + step * np.arange(counts[i]) for i in range(3)), indexing="ij"),
        axis=-1,
    )
    size = size_at(model, sizes, grid.reshape(-1, 3) / MILLI) * MILLI
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "sizes"
        file.write_bytes(
            struct.pack("3d", *low) + struct.pack("3d", step, step, step)
            + struct.pack("3i", *counts) + size.astype("<f8").tobytes()
        )  # fmt: skip
        field = gmsh.model.mesh.field.add("Structured")
        gmsh.model.mesh.field.setString(field, "FileName", str(file))
        gmsh.model.mesh.field.setNumber(field, "TextFormat", 0)
        gmsh.model.mesh.field.setNumber(field, "SetOutsideValue", 1)
        gmsh.model.mesh.field.setNumber(field, "OutsideValue", float(size.max()))
        gmsh.model.mesh.field.setAsBackgroundMesh(field)
        gmsh.model.mesh.generate(1)  # the file is read at the first look


def size_at(model: PlateModel, sizes: Sizes, places: np.ndarray) -> np.ndarray:
    """Give the wanted edge length at places [m]."""
    found = np.full(len(places), max(f.thickness for f in model.facets) * sizes.bulk)
    for i, facet in enumerate(model.facets):
        t = facet.thickness
        flat = facet.to_plane(places)
        high = np.maximum(
            0.0, np.abs((places - np.asarray(facet.origin, float)) @ facet.axes[2]) - 0.5 * t
        )
        outline = np.asarray(facet.outline, float)
        out = np.maximum(
            0.0, np.maximum(outline.min(axis=0) - flat, flat - outline.max(axis=0)).max(axis=1)
        )
        away = np.hypot(high, out)
        own = np.full(len(places), sizes.bulk * t)
        for k, bolt in enumerate(model.bolts):
            if bolt.facet != i:
                continue
            radius = np.linalg.norm(flat - np.asarray(bolt.centre, float), axis=1)
            beyond = np.maximum(0.0, radius - 0.5 * bolt.washer_diameter)
            ring = 0.5 * (bolt.washer_diameter - bolt.hole_diameter)
            motor = k >= len(model.frame_bolts)
            least = min((1.0 if motor else 1.4) * sizes.near * t, 2.5 * ring)
            own = np.minimum(own, least + 0.6 * np.maximum(0.0, beyond - t))
            if motor:
                edge = np.hypot(radius - 0.5 * bolt.washer_diameter, high)
                own = np.minimum(own, sizes.rim * ring + 0.6 * edge)
        found = np.minimum(found, own + 0.5 * away)
    for spacer in model.spacers:
        facet = model.facets[spacer.facets[0]]
        radius = np.linalg.norm(facet.to_plane(places) - np.asarray(spacer.centre, float), axis=1)
        wall = 0.5 * (spacer.diameter - spacer.inner_diameter)
        found = np.minimum(
            found, 1.2 * wall + 0.6 * np.maximum(0.0, radius - 0.5 * spacer.diameter)
        )
    return found


# --- reading --------------------------------------------------------------------------------------


def _read() -> tuple[np.ndarray, np.ndarray]:
    import gmsh

    tags, places, _ = gmsh.model.mesh.getNodes()
    kinds, _, nodes = gmsh.model.mesh.getElements(3)
    if list(kinds) != [4]:
        raise CannotMesh(f"element kinds {list(kinds)}")
    index = np.zeros(int(tags.max()) + 1, int)
    index[tags.astype(int)] = np.arange(len(tags))
    tets = index[nodes[0].astype(int).reshape(-1, 4)]
    used, tets = np.unique(tets, return_inverse=True)
    points, tets = places.reshape(-1, 3)[used], tets.reshape(-1, 4)
    turned = volumes(points, tets) < 0.0
    tets[turned] = tets[turned][:, [0, 1, 3, 2]]
    return points, tets


def volumes(points: np.ndarray, tets: np.ndarray) -> np.ndarray:
    """Give the volume of every tetrahedron."""
    a, b, c = (points[tets[:, i]] - points[tets[:, 0]] for i in (1, 2, 3))
    return np.einsum("ij,ij->i", a, np.cross(b, c)) / 6.0


def _owner(model: PlateModel, solid: Solid) -> np.ndarray:
    """Give the facet or spacer each tetrahedron belongs to: the facet whose middle is nearest."""
    centres = solid.points[solid.tets].mean(axis=1)
    depth = np.full((len(centres), len(model.facets) + len(model.spacers)), np.inf)
    for i, body in enumerate(solid.bodies):
        facet = body.facet
        high = np.abs((centres - np.asarray(facet.origin, float)) @ facet.axes[2]) / (
            0.5 * facet.thickness
        )
        inside = shapely.contains_xy(body.outline.buffer(1e-6), *facet.to_plane(centres).T)
        ok = inside & (high < 1.0 + 1e-6)
        depth[ok, i] = high[ok]
    for k, spacer in enumerate(model.spacers):
        facet = model.facets[spacer.facets[0]]
        radius = np.linalg.norm(facet.to_plane(centres) - np.asarray(spacer.centre, float), axis=1)
        depth[radius <= 0.5 * spacer.diameter * 1.001, len(model.facets) + k] = 2.0
    found = np.argmin(depth, axis=1)
    if not np.isfinite(depth[np.arange(len(found)), found]).all():
        raise CannotMesh("tetrahedra outside every body")
    return found


def _check(solid: Solid) -> None:
    """Refuse a mesh that lost part of a body, or fell apart where the bodies do not."""
    own = volumes(solid.points, solid.tets)
    if own.min() <= 0.0 or abs(own.sum() / solid.volume - 1.0) > 0.02:
        raise CannotMesh(f"mesh holds {own.sum() / solid.volume:.4f} of the bodies' volume")


def covered(solid: Solid, facet: int, places: np.ndarray) -> np.ndarray:
    """Tell which places of a facet lie in another facet's body as well: in a corner."""
    points = solid.bodies[facet].facet.to_space(places)
    found = np.zeros(len(places), bool)
    for i, body in enumerate(solid.bodies):
        if i == facet:
            continue
        other = body.facet
        high = np.abs((points - np.asarray(other.origin, float)) @ other.axes[2])
        inside = shapely.contains_xy(body.outline.buffer(1e-6), *other.to_plane(points).T)
        found |= inside & (high < 0.5 * other.thickness + 1e-6)
    return found


def disc(centre: object, diameter: float) -> Polygon:
    """Give a disc's outline, drawn with many points."""
    return Point(np.asarray(centre, float)).buffer(diameter / 2, 32)
