"""A sprocket tooth in plane-stress elements (scikit-fem), apart from the program's formulas.

Frame of one tooth: x along the chord through the centres of its two seats, y outward.  Seats are
arcs about (+-p/2, 0) from their bottoms up to the flanks; flanks go on along the tangent.  The
tooth stands on a block three pitches wide.  The limit load comes from elastic compensation
(Mackenzie and Boyle): every pass keeps equilibrium, so it is a lower bound.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np


@dataclass(frozen=True)
class Tooth:
    """Lengths over the pitch; the flank leaves the seat ``flank`` rad below the chord."""

    seat: float
    roller: float
    push: float  # angle of the roller's push from the chord, rad
    flank: float
    rise: float = 0.0
    height: float = 0.3
    across: int = 24
    along: int = 24


def mesh_of(t: Tooth) -> Any:
    """Give the mesh: tooth above the bottoms of the seats, block under it."""
    angles = np.linspace(np.pi / 2, t.flank, t.along)
    arc = np.stack([0.5 - t.seat * np.cos(angles), -t.seat * np.sin(angles)], 1)
    ups = np.linspace(arc[-1, 1], t.height, t.along)[1:]
    lean = np.tan(t.flank)
    flank = np.stack([np.maximum(arc[-1, 0] - lean * (ups - arc[-1, 1]), 0.04), ups], 1)
    rows = np.vstack([arc, flank])
    s = np.linspace(-1, 1, t.across + 1)
    grid = np.stack([rows[:, :1] * s, np.repeat(rows[:, 1:], s.size, 1)], -1)
    deep = -t.seat - np.linspace(0, 1, 13)[::-1] ** 1.5 * 2.0
    wide = np.concatenate(
        [-0.5 - np.linspace(1, 0, 9)[:-1] ** 1.5, 0.5 * s, 0.5 + np.linspace(0, 1, 9)[1:] ** 1.5]
    )
    block = np.stack(np.meshgrid(wide, deep), -1)
    return _joined([grid, block])


def _joined(grids: list[Any]) -> Any:
    points, cells, base = [], [], 0
    for g in grids:
        rows, columns = g.shape[:2]
        number = base + np.arange(rows * columns).reshape(rows, columns)
        cells.append(
            np.stack(
                [number[:-1, :-1], number[:-1, 1:], number[1:, 1:], number[1:, :-1]], -1
            ).reshape(-1, 4)
        )
        points.append(g.reshape(-1, 2))
        base += rows * columns
    every = np.round(np.vstack(points), 9)
    unique, back = np.unique(every, axis=0, return_inverse=True)
    from skfem import MeshQuad

    return MeshQuad(unique.T, back[np.vstack(cells)].T)


class Solved:
    """The tooth under a push of 1 (plane stress, E = 1, unit width)."""

    def __init__(self, tooth: Tooth) -> None:
        from skfem import Basis, ElementQuad2, ElementVector

        self.tooth, self.mesh = tooth, mesh_of(tooth)
        self.element = ElementVector(ElementQuad2())
        self.basis = Basis(self.mesh, self.element, intorder=4)
        self.contact = self._contact()
        self.load = self._load()
        low = self.mesh.p[1].min()
        self.fixed = self.basis.get_dofs(lambda x: np.isclose(x[1], low))
        self.modulus = np.ones(self.mesh.nelements)

    def _contact(self) -> Any:
        t = self.tooth
        radius = t.roller / 2
        return np.array([-0.5 + radius * np.cos(t.push), t.rise - radius * np.sin(t.push)])

    def _load(self) -> Any:
        from skfem import FacetBasis, LinearForm

        middle = self.mesh.p[:, self.mesh.facets].mean(1)
        left = [
            f
            for f in self.mesh.boundary_facets()
            if middle[0, f] < 0 and middle[1, f] > -self.tooth.seat
        ]
        reach = 0.2 * self.tooth.roller
        near = np.array([f for f in left if np.hypot(*(middle[:, f] - self.contact)) < reach])
        self.near = near
        facets = FacetBasis(self.mesh, self.element, facets=near, intorder=4)
        way = np.array([np.cos(self.tooth.push), -np.sin(self.tooth.push)])

        @LinearForm
        def push(v, w):
            return way[0] * v[0] + way[1] * v[1]

        vector = push.assemble(facets)
        return vector / float(facets.dx.sum())

    def stress(self) -> Any:
        """Give von Mises stress, (elements, points)."""
        from skfem import BilinearForm, condense, solve
        from skfem.helpers import ddot, sym_grad, trace

        nu, basis = 0.3, self.basis
        field = np.repeat(self.modulus[:, None], basis.dx.shape[1], 1)

        @BilinearForm
        def stiffness(u, v, w):
            e, d = sym_grad(u), sym_grad(v)
            first = nu * w.E / (1 - nu**2)
            return first * trace(e) * trace(d) + w.E / (1 + nu) * ddot(e, d)

        matrix = stiffness.assemble(basis, E=field)
        u = solve(*condense(matrix, self.load, D=self.fixed))
        e = sym_grad(basis.interpolate(u))
        s = nu * field / (1 - nu**2) * trace(e) * np.eye(2)[:, :, None, None] + field / (1 + nu) * e
        return np.sqrt(s[0, 0] ** 2 - s[0, 0] * s[1, 1] + s[1, 1] ** 2 + 3 * s[0, 1] ** 2)

    def counted(self) -> Any:
        """Give the elements away from the contact patch, where a roller's own pressure rules."""
        centre = self.mesh.p[:, self.mesh.t].mean(1)
        return np.hypot(*(centre - self.contact[:, None])) > 0.3 * self.tooth.roller

    def first_yield(self) -> float:
        """Give the largest von Mises stress times (width pitch) over the push, contact left out."""
        self.modulus[:] = 1.0
        return float(self.stress()[self.counted()].max())

    def limit(self, passes: int = 40) -> float:
        """Give the same at the limit load: the least of the largest stress that keeps equilibrium."""
        self.modulus[:] = 1.0
        best = np.inf
        for _ in range(passes):
            each = self.stress().max(1)
            best = min(best, float(each[self.counted()].max()))
            self.modulus *= (each.mean() / each) ** 0.5
            self.modulus = np.clip(self.modulus, 1e-4, None)
        return best
