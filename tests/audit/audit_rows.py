"""Sparse rows on the unknowns, springs on them, and the direct solver."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cache
from typing import Any

import numpy as np
from scipy import sparse


@dataclass
class Rows:
    """Sparse rows on all unknowns of nodes and motor, as they are gathered."""

    row: list[np.ndarray] = field(default_factory=list)
    column: list[np.ndarray] = field(default_factory=list)
    value: list[np.ndarray] = field(default_factory=list)
    count: int = 0

    def add(
        self, nodes: np.ndarray, factors: np.ndarray, way: np.ndarray, row: int | None = None
    ) -> int:
        """Add factors times the movement of nodes along a direction to a row, a new one by default."""
        if row is None:
            row, self.count = self.count, self.count + 1
        self.row.append(np.full(3 * len(nodes), row))
        self.column.append((3 * nodes[:, None] + np.arange(3)).ravel())
        self.value.append((factors[:, None] * way).ravel())
        return row

    def motor(self, first: int, factors: np.ndarray, row: int) -> None:
        """Add the motor's six unknowns to a row."""
        self.row.append(np.full(6, row))
        self.column.append(first + np.arange(6))
        self.value.append(factors)

    def matrix(self, columns: int) -> sparse.csr_array:
        """Give them as a matrix."""
        if not self.row:
            return sparse.csr_array((self.count, columns))
        entries = (
            np.concatenate(self.value),
            (np.concatenate(self.row), np.concatenate(self.column)),
        )
        return sparse.csr_array(sparse.coo_array(entries, shape=(self.count, columns)))


@dataclass
class Springs:
    """Springs on rows; ``one_way`` only push: the frame's stand outside the stiffness, butts inside."""

    rows: sparse.csr_array
    stiffness: np.ndarray


@cache
def _pardiso() -> Any:
    try:
        import pypardiso
    except ImportError:
        return None
    return pypardiso.PyPardisoSolver(mtype=2)


def solved(matrix: sparse.csr_array, load: np.ndarray) -> np.ndarray:
    """Solve a symmetric positive definite system for many loads, and insist on the residual."""
    fast = _pardiso()
    if fast is None:
        from scipy.sparse.linalg import splu

        options = {"SymmetricMode": True}
        factor = splu(
            sparse.csc_matrix(matrix), "MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options=options
        )
        found = factor.solve(load)
    else:
        upper = sparse.csr_matrix(sparse.triu(matrix, format="csr"))
        upper.sort_indices()
        fast.set_iparm(8, 0)  # no refinement: the residual is looked at below
        fast.factorize(upper)
        found = np.empty_like(load)
        for low in range(0, load.shape[1], 32):
            found[:, low : low + 32] = fast.solve(upper, np.asfortranarray(load[:, low : low + 32]))
        fast.free_memory(everything=True)
    left = np.max(np.abs(matrix @ found[:, :6] - load[:, :6]))
    if not left < 1e-6:
        raise RuntimeError(f"solver leaves {left:.1e} of the load")
    return found
