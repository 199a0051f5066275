"""Equivalent stress, and thickness sweeps against solving each thickness by itself."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest
from plate_kit import model_of, sprocket_of

from mountlimit.plates import PlateError, equivalent, solve, sweep
from mountlimit.plates.assemble import assemble
from mountlimit.plates.mesh import build
from mountlimit.plates.stress import StressSamples
from mountlimit.plates.sweep import at_thickness, snapshot_scales

ACROSS = np.array([1000.0, 0.0, 0.0, 0.0, 0.0, 0.0])
DOWN = np.array([0.0, -1000.0, 0.0, 0.0, 0.0, 0.0])
SIZE = 0.015


def test_equivalent_of_plain_states() -> None:
    assert equivalent(np.array([3.0, 0.0, 0.0])) == pytest.approx(3.0)
    assert equivalent(np.array([0.0, 0.0, 2.0])) == pytest.approx(2.0 * np.sqrt(3.0))
    assert equivalent(np.array([2.0, 2.0, 0.0])) == pytest.approx(2.0)
    for ratio in (1.0, 1.2, 1.6):
        assert equivalent(np.array([5.0, 0.0, 0.0]), ratio) == pytest.approx(5.0)
        assert equivalent(np.array([-5.0 * ratio, 0.0, 0.0]), ratio) == pytest.approx(5.0)


def test_components_are_superposed_before_the_equivalent() -> None:
    samples = StressSamples(
        place=np.zeros((2, 3)),
        owner=np.array([0, 2]),
        membrane=np.array([[3.0, 0.0, 0.0], [0.0, 0.0, 1.0]]),
        bending=np.array([[-5.0, 0.0, 0.0], [0.0, 0.0, 2.0]]),
        count=3,
    )
    assert samples.equivalent() == pytest.approx([8.0, 3.0 * np.sqrt(3.0)])
    largest = samples.largest()
    assert largest[0] == pytest.approx(8.0)
    assert np.isnan(largest[1])
    tension = samples.largest(1.6)
    assert tension[0] == pytest.approx(5.0)  # the face at -8 counts as 5, the one at -2 less


@pytest.mark.parametrize("scale", [0.4, 1.0, 2.3])
def test_stiffness_is_an_exact_cubic_in_the_thickness(scale: float) -> None:
    model = model_of("C2")
    mesh = build(model, SIZE)
    parts = assemble(model, mesh, np.array([True, True])).parts
    assert len(parts) == 4
    cubic = sum(scale**k * part for k, part in enumerate(parts))
    direct = assemble(at_thickness(model, scale * 0.006, (0, 1)), mesh).parts[0]
    difference = abs(cubic - direct).max()
    assert difference < 1e-12 * abs(direct).max()


def test_only_the_facets_named_vary() -> None:
    model = model_of("C2")
    mesh = build(model, SIZE)
    parts = assemble(model, mesh, np.array([True, False])).parts
    cubic = sum(2.0**k * part for k, part in enumerate(parts))
    direct = assemble(at_thickness(model, 0.012, (0,)), mesh).parts[0]
    assert abs(cubic - direct).max() < 1e-12 * abs(direct).max()


def test_snapshots_lie_inside_the_range() -> None:
    scales = snapshot_scales(0.3, 3.0, 6)
    assert np.all((scales > 0.3) & (scales < 3.0))
    assert np.prod(scales) == pytest.approx((0.3 * 3.0) ** 3)


@cache
def _sweep(name: str) -> tuple:
    at = sprocket_of(name)
    thicknesses = np.geomspace(0.003, 0.012, 9)
    loads = [[(ACROSS, at)], [(DOWN, at)], [(DOWN, at), (0.3 * ACROSS, at)]]
    return thicknesses, loads, sweep(model_of(name), thicknesses, loads, mesh_size=SIZE)


@pytest.mark.parametrize("name", ["C1", "C2C"])
@pytest.mark.parametrize("index", [1, 4, 7])
def test_a_sweep_agrees_with_solving_the_thickness_by_itself(name: str, index: int) -> None:
    """Movement 2 %, forces 6 %, rings 6 %: other meshes, strips and contact points, no more."""
    thicknesses, loads, found = _sweep(name)
    facets = tuple(range(len(model_of(name).facets)))
    alone = solve(at_thickness(model_of(name), thicknesses[index], facets), SIZE)
    for i, load in enumerate(loads):
        (wrench, at), *extra = load
        response = alone.response(wrench, at, extra)
        for one, two, share in (
            (found.rotation, response.rotation, 0.02),
            (found.displacement, response.displacement, 0.02),
            (found.bolt_tension, response.bolt_tension, 0.06),
            (found.frame_ring, response.frame_ring.largest(), 0.06),
            (found.motor_ring, response.motor_ring.largest(), 0.06),
        ):
            scale = max(np.max(np.abs(two)), 1e-9 if two is not response.bolt_tension else 200.0)
            assert np.max(np.abs(one[index, i] - two)) < share * scale


def test_a_thicker_plate_never_tilts_more() -> None:
    for name in ("C1", "C2C"):
        _, _, found = _sweep(name)
        tilt = np.linalg.norm(found.rotation, axis=2)
        assert np.all(np.diff(tilt, axis=0) < 0.0)
        assert np.all(found.contact_force >= 0.0)


def test_one_thickness_is_a_sweep_too() -> None:
    at = sprocket_of("C1")
    found = sweep(model_of("C1"), 0.008, [[(DOWN, at)]], mesh_size=SIZE)
    alone = solve(model_of("C1"), SIZE).response(DOWN, at)
    assert np.allclose(found.rotation[0, 0], alone.rotation, rtol=1e-8, atol=1e-12)
    assert np.allclose(found.motor_ring[0, 0], alone.motor_ring.largest(), rtol=1e-6)
    assert np.allclose(found.frame_ring[0, 0], alone.frame_ring.largest(), rtol=1e-6)


def test_a_thickness_of_nothing_is_refused() -> None:
    with pytest.raises(PlateError, match="thickness: every one must be above nothing"):
        sweep(model_of("C1"), [0.0, 0.01], [[(DOWN, (0, 0, 0))]])
