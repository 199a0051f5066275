"""Ten-node tetrahedra with straight sides: stiffness, shape functions at any place, stress.

Nodes 0 to 3 are the corners, 4 to 9 the middles of the edges of `EDGES`.
"""

from __future__ import annotations

import numpy as np
from audit_mesh import Solid, volumes
from scipy import sparse
from scipy.spatial import cKDTree

EDGES = np.array([[0, 1], [1, 2], [0, 2], [0, 3], [1, 3], [2, 3]])
CORNERS = np.vstack([np.eye(4), 0.5 * (np.eye(4)[EDGES[:, 0]] + np.eye(4)[EDGES[:, 1]])])
_A, _B = 0.5854101966249685, 0.1381966011250105
RULE = np.full((4, 4), _B) + (_A - _B) * np.eye(4)  # exact to the second degree, shares 1/4
AT_ONCE = 3000


def shapes(shares: np.ndarray) -> np.ndarray:
    """Give the ten shape functions at places given by their four shares, (..., 4) to (..., 10)."""
    corner = shares * (2.0 * shares - 1.0)
    middle = 4.0 * shares[..., EDGES[:, 0]] * shares[..., EDGES[:, 1]]
    return np.concatenate([corner, middle], axis=-1)


def slopes(shares: np.ndarray) -> np.ndarray:
    """Give the shape functions' slopes by the four shares at one place, (10, 4)."""
    found = np.zeros((10, 4))
    found[range(4), range(4)] = 4.0 * shares - 1.0
    for k, (i, j) in enumerate(EDGES):
        found[4 + k, i], found[4 + k, j] = 4.0 * shares[j], 4.0 * shares[i]
    return found


class Elements:
    """The mesh with its middle nodes, and what follows from it for a material per tetrahedron."""

    def __init__(self, solid: Solid, laws: np.ndarray) -> None:
        """Number the nodes; ``laws`` (owners, 3, 3, 3, 3) give stress from the slopes of movement."""
        self.solid = solid
        pairs = np.sort(solid.tets[:, EDGES], axis=2).reshape(-1, 2)
        edges, index = np.unique(pairs, axis=0, return_inverse=True)
        middle = len(solid.points) + index.reshape(-1, 6)
        self.nodes = np.hstack([solid.tets, middle])
        self.points = np.vstack([solid.points, solid.points[edges].mean(axis=1)])
        self.count = len(self.points)
        self.laws = laws
        corners = solid.points[solid.tets]
        self.first = corners[:, 0]
        self.inverse = np.linalg.inv(corners[:, 1:] - corners[:, :1])  # slopes of shares 1..3
        self.grad = np.concatenate(
            [-self.inverse.sum(axis=2)[:, None, :], self.inverse.transpose(0, 2, 1)], axis=1
        )
        self.volume = volumes(solid.points, solid.tets)
        self.tree = cKDTree(corners.mean(axis=1))

    def stiffness(self) -> sparse.csr_array:
        """Give the elastic stiffness, unknowns ordered node by node."""
        keys = (self.nodes[:, :, None] * self.count + self.nodes[:, None, :]).ravel()
        kept, index = np.unique(keys, return_inverse=True)
        data = np.zeros((9, len(kept)))
        local = [slopes(p) for p in RULE]
        for low in range(0, len(self.nodes), AT_ONCE):
            part = slice(low, low + AT_ONCE)
            at = index[100 * low : 100 * min(low + AT_ONCE, len(self.nodes))]
            same = np.zeros((len(self.volume[part]), 10, 3, 10, 3))
            for own in local:
                g = np.einsum("ak,nki->nai", own, self.grad[part])
                flat = g.reshape(len(g), 30)
                same += (flat[:, :, None] * flat[:, None, :]).reshape(same.shape)
            same *= 0.25 * self.volume[part][:, None, None, None, None]
            pairs = same.transpose(0, 1, 3, 2, 4).reshape(
                len(same), 100, 9
            )  # slopes j of a, l of b
            law = self.laws[self.solid.owner[part]]
            block = pairs @ law.transpose(0, 2, 4, 1, 3).reshape(len(same), 9, 9)
            for k in range(9):
                data[k] += np.bincount(at, block[:, :, k].ravel(), len(kept))
        row, column = kept // self.count, kept % self.count
        pointer = np.searchsorted(row, np.arange(self.count + 1))
        blocks = data.T.reshape(-1, 3, 3)
        size = 3 * self.count
        return sparse.csr_array(sparse.bsr_matrix((blocks, column, pointer), shape=(size, size)))

    def locate(
        self, places: np.ndarray, only: np.ndarray | None = None
    ) -> tuple[np.ndarray, np.ndarray]:
        """Give the tetrahedron of every place and its shares there; ``only`` picks tetrahedra."""
        own = np.arange(len(self.nodes)) if only is None else np.flatnonzero(only)
        tree = (
            self.tree
            if only is None
            else cKDTree(self.solid.points[self.solid.tets[own]].mean(axis=1))
        )
        tet = np.zeros(len(places), int)
        shares = np.full((len(places), 4), -np.inf)
        left = np.arange(len(places))
        for many in (12, 60, 400):
            near = own[tree.query(places[left], min(many, len(own)))[1].reshape(len(left), -1)]
            rest = np.einsum(
                "nki,nkij->nkj", places[left][:, None] - self.first[near], self.inverse[near]
            )
            found = np.concatenate([1.0 - rest.sum(axis=2, keepdims=True), rest], axis=2)
            best = np.argmax(found.min(axis=2), axis=1)
            rows = np.arange(len(left))
            better = found[rows, best].min(axis=1) > shares[left].min(axis=1)
            tet[left[better]] = near[rows, best][better]
            shares[left[better]] = found[rows, best][better]
            left = left[shares[left].min(axis=1) < -1e-6]
            if not left.size:
                break
        return tet, shares

    def mean_row(
        self, places: np.ndarray, weights: np.ndarray, only: np.ndarray | None = None
    ) -> tuple[np.ndarray, np.ndarray]:
        """Give nodes and factors of a weighted sum of the movement at places."""
        tet, shares = self.locate(places, only)
        factors = weights[:, None] * shapes(shares)
        return self.nodes[tet].ravel(), factors.ravel()

    def nodal_stress(self, movement: np.ndarray) -> np.ndarray:
        """Give the mean of the stress over the tetrahedra at each node, (nodes, 6)."""
        total, many = (
            np.zeros((self.count, 6)),
            np.bincount(self.nodes.ravel(), minlength=self.count),
        )
        moved = movement[self.nodes]
        for k in range(10):
            grad = np.einsum("ak,nki->nai", slopes(CORNERS[k]), self.grad)
            stress = self._hooke(np.einsum("nai,naj->nij", grad, moved))
            for j in range(6):
                total[:, j] += np.bincount(self.nodes[:, k], stress[:, j], self.count)
        return total / many[:, None]

    def _hooke(self, slope: np.ndarray) -> np.ndarray:
        """Give stress (xx, yy, zz, xy, yz, zx) from slopes of movement."""
        law = self.laws[self.solid.owner].reshape(-1, 9, 9)
        s = np.einsum("nij,nj->ni", law, slope.reshape(-1, 9)).reshape(-1, 3, 3)
        return np.stack(
            [s[:, 0, 0], s[:, 1, 1], s[:, 2, 2], s[:, 0, 1], s[:, 1, 2], s[:, 2, 0]], axis=1
        )


def law_of(modulus: float, poisson: float, shear: float, axes: np.ndarray) -> np.ndarray:
    """Give C_ijkl of a material alike along three axes at right angles, with a shear modulus of its own."""
    give = np.full((3, 3), -poisson / modulus)
    np.fill_diagonal(give, 1.0 / modulus)
    own = np.zeros((3, 3, 3, 3))
    for (i, j), value in np.ndenumerate(np.linalg.inv(give)):
        own[i, i, j, j] = value
    for i in range(3):
        for j in range(3):
            if i != j:
                own[i, j, i, j] = own[i, j, j, i] = shear
    return np.einsum("ai,bj,ck,dl,abcd->ijkl", axes, axes, axes, axes, own)
