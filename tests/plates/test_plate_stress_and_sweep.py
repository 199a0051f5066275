"""Equivalent stress, and thickness sweeps against solving each thickness by itself."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest
from plate_kit import model_of, sprocket_of
from scipy import sparse

from mountlimit.plates import PlateError, equivalent, solve, sweep
from mountlimit.plates.assemble import assemble
from mountlimit.plates.contact import points
from mountlimit.plates.mesh import build
from mountlimit.plates.reduced import reduce
from mountlimit.plates.scales import Scales, Varying, total
from mountlimit.plates.solution import loads, solve_columns
from mountlimit.plates.stress import StressSamples
from mountlimit.plates.thickness import at_thickness, snapshot_scales

ACROSS = np.array([1000.0, 0.0, 0.0, 0.0, 0.0, 0.0])
DOWN = np.array([0.0, -1000.0, 0.0, 0.0, 0.0, 0.0])
SIZE = 0.015


def varying(*thick: bool) -> Varying:
    """Let the thickness of the facets marked vary."""
    none = np.zeros(len(thick), bool)
    return Varying(thickness=np.array(thick), modulus=none, second=none)


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
        membrane=np.array([[-3.0, 0.0, 0.0], [0.0, 0.0, 1.0]]),
        bending=np.array([[5.0, 0.0, 0.0], [0.0, 0.0, 2.0]]),
        count=3,
    )
    assert samples.equivalent() == pytest.approx([8.0, 3.0 * np.sqrt(3.0)])
    largest = samples.largest()
    assert largest[0] == pytest.approx(8.0)
    assert np.isnan(largest[1])
    tension = samples.largest(1.6)
    assert tension[0] == pytest.approx(5.0)  # the face at -8 counts as 5, the one at 2 as 2


@pytest.mark.parametrize("scale", [0.4, 1.0, 2.3])
def test_stiffness_is_an_exact_cubic_in_the_thickness(scale: float) -> None:
    model = model_of("C2")
    mesh = build(model, SIZE)
    terms = assemble(model, mesh, varying(True, True)).terms
    assert sorted(term.power for term in terms) == [0, 1, 2, 3]
    cubic = total(terms, Scales(thickness=scale))
    direct = assemble(at_thickness(model, scale * 0.006, (0, 1)), mesh).stiffness
    difference = abs(cubic - direct).max()
    assert difference < 1e-12 * abs(direct).max()


def test_only_the_facets_named_vary() -> None:
    model = model_of("C2")
    mesh = build(model, SIZE)
    cubic = total(assemble(model, mesh, varying(True, False)).terms, Scales(thickness=2.0))
    direct = assemble(at_thickness(model, 0.012, (0,)), mesh).stiffness
    assert abs(cubic - direct).max() < 1e-12 * abs(direct).max()


def test_snapshots_lie_inside_the_range() -> None:
    scales = snapshot_scales(0.3, 3.0, 6)
    assert np.all((scales > 0.3) & (scales < 3.0))
    assert np.prod(scales) == pytest.approx((0.3 * 3.0) ** 3)


@pytest.mark.parametrize("scale", [0.35, 0.9, 2.7])
def test_the_reduced_basis_gives_the_flexibility_of_the_motor_and_of_contact(scale: float) -> None:
    """1e-4 of the largest, ten times what six snapshots gave over a range of ten in thickness."""
    model = model_of("C2C")
    mesh = build(model, SIZE)
    system = assemble(model, mesh, varying(True, True))
    load = loads(system, points(model, mesh, 24))
    snapshots = [Scales(thickness=float(t)) for t in snapshot_scales(0.316, 3.16, 6)]
    basis, _ = reduce(system, load, snapshots, [True, False, True, True, False, True])
    found = basis.load.T @ basis.coordinates(Scales(thickness=scale))
    stiffness = sparse.csc_array(total(system.terms, Scales(thickness=scale)))
    exact = load.T @ solve_columns(stiffness, load)
    for block in (np.s_[:3, :3], np.s_[3:6, 3:6], np.s_[6:, 6:]):
        assert np.max(np.abs(found[block] - exact[block])) < 1e-4 * np.max(np.abs(exact[block]))


@cache
def _sweep(name: str, low: float, high: float) -> tuple:
    at = sprocket_of(name)
    thicknesses = np.geomspace(low, high, 9)
    pulls = [[(ACROSS, at)], [(DOWN, at)], [(DOWN, at), (0.3 * ACROSS, at)]]
    return thicknesses, pulls, sweep(model_of(name), thicknesses, pulls, mesh_size=SIZE)


@pytest.mark.parametrize(("name", "low", "high"), [("C1", 0.004, 0.016), ("C2C", 0.0045, 0.008)])
@pytest.mark.parametrize("index", [1, 4, 7])
def test_a_sweep_agrees_with_solving_the_thickness_by_itself(
    name: str, low: float, high: float, index: int
) -> None:
    """Movement 3 % and rings 8 % of the largest, bolt tension 5 % and shear 3 % of the load.

    The sweep holds the corner strips' width and has fewer contact points and another mesh.
    """
    thicknesses, pulls, found = _sweep(name, low, high)
    facets = tuple(range(len(model_of(name).facets)))
    alone = solve(at_thickness(model_of(name), thicknesses[index], facets), SIZE)
    for i, pull in enumerate(pulls):
        (wrench, at), *extra = pull
        response = alone.response(wrench, at, extra)
        for one, two, share in (
            (found.rotation, response.rotation, 0.03),
            (found.displacement, response.displacement, 0.03),
            (found.frame_ring, response.frame_ring.largest(), 0.08),
            (found.motor_ring, response.motor_ring.largest(), 0.08),
        ):
            assert np.max(np.abs(one[index, i] - two)) < share * np.max(np.abs(two))
        load = np.max(np.abs(wrench[:3]))
        assert np.max(np.abs(found.bolt_tension[index, i] - response.bolt_tension)) < 0.05 * load
        assert np.max(np.abs(found.bolt_shear[index, i] - response.bolt_shear)) < 0.03 * load


def test_a_thicker_plate_never_tilts_more() -> None:
    for key in (("C1", 0.004, 0.016), ("C2C", 0.0045, 0.008)):
        _, _, found = _sweep(*key)
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
