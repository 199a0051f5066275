"""The mesh: true area, common lines, corner strips, sound triangles."""

from __future__ import annotations

import dataclasses

import numpy as np
import pytest
from plate_kit import CASES, model_of

from mountlimit.plates import Bend
from mountlimit.plates.joints import corner_strips, find
from mountlimit.plates.mesh import build, default_size
from mountlimit.plates.shapes import free_polygon


@pytest.mark.parametrize("name", list(CASES))
@pytest.mark.parametrize("size", [None, 0.009, 0.02])
def test_area_nodes_and_quality(name: str, size: float | None) -> None:
    model = model_of(name)
    mesh = build(model, size)
    for i in range(len(model.facets)):
        wanted = free_polygon(model, i, mesh.size).area
        assert np.sum(mesh.area[mesh.facet == i]) == pytest.approx(wanted, rel=1e-6)
    assert np.array_equal(np.unique(mesh.triangles), np.arange(len(mesh.points)))
    corners = mesh.points[mesh.triangles[:, :3]]
    sides = np.linalg.norm(corners - np.roll(corners, 1, axis=1), axis=2)
    quality = 4.0 * np.sqrt(3.0) * mesh.area / np.sum(sides**2, axis=1)
    assert np.min(quality) > 0.1
    assert np.mean(quality) > 0.8


@pytest.mark.parametrize(("name", "lengths"), [("C2", [0.12]), ("C5", [0.2, 0.2])])
def test_bends_are_found_and_their_nodes_are_common(name: str, lengths: list[float]) -> None:
    model = model_of(name)
    mesh = build(model)
    assert sorted(joint.length for joint in mesh.joints) == pytest.approx(lengths)
    for joint in mesh.joints:
        place = (mesh.points - joint.start) @ joint.direction
        away = np.linalg.norm(mesh.points - joint.start - place[:, None] * joint.direction, axis=1)
        on = np.flatnonzero((away < 1e-9) & (place > -1e-9) & (place < joint.length + 1e-9))
        assert len(np.unique(mesh.points[on].round(8), axis=0)) == len(on)
        one, two = (np.unique(mesh.triangles[mesh.facet == f]) for f in joint.facets)
        assert np.isin(on, one).all()
        assert np.isin(on, two).all()


def test_a_gusset_meets_face_and_foot_along_its_legs() -> None:
    joints = find(model_of("C3"))
    found = sorted((joint.facets, round(joint.length, 9)) for joint in joints)
    assert found == [
        ((0, 1), 0.12), ((0, 2), 0.1), ((0, 3), 0.1), ((1, 2), 0.08), ((1, 3), 0.08),
    ]  # fmt: skip


def test_corner_strips_follow_thickness_and_fillet() -> None:
    """w = t / 2 + 0.4 r on both sides: 5.4 mm for 6 mm plate with a fillet of 6 mm."""
    assert corner_strips(model_of("C2"), 0, 1) == pytest.approx((0.0054, 0.0054))
    assert corner_strips(model_of("C3"), 0, 1) == pytest.approx((0.003, 0.003))
    mesh = build(model_of("C2"))
    thick = mesh.factor == 1.5
    assert np.sum(mesh.area[thick]) == pytest.approx(2 * 0.12 * 0.0054, rel=1e-6)
    soft = dataclasses.replace(model_of("C2"), bends=[Bend(facets=(0, 1), stiff_corner=False)])
    assert np.all(build(soft).factor == 1.0)


def test_washers_have_the_area_of_their_annulus() -> None:
    model = model_of("C1")
    mesh = build(model, 0.004)
    annulus = np.pi / 4 * (0.016**2 - 0.009**2)
    for i in range(2):
        assert np.sum(mesh.area[mesh.frame_bolt == i]) == pytest.approx(annulus, rel=0.06)


def test_default_size_is_bounded() -> None:
    for name in CASES:
        size = default_size(model_of(name))
        assert 0.008 < size <= 0.015
    thin = model_of("C1")
    facets = [dataclasses.replace(thin.facets[0], thickness=0.0015)]
    assert default_size(dataclasses.replace(thin, facets=facets)) == pytest.approx(0.0083, abs=2e-4)
