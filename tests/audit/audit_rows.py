"""Sparse rows on the unknowns, springs on them, and the direct solver."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
from direct_solver import direct
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


def solved(matrix: sparse.csr_array, load: np.ndarray) -> np.ndarray:
    """Solve a symmetric positive definite system for many loads, and insist on the residual."""
    for refine in (False, True):  # the residual is looked at here, so it is not paid for in advance
        found = direct(matrix, load, refine=refine)
        left = np.max(np.abs(matrix @ found[:, :6] - load[:, :6]))
        if left < 1e-6:
            return found
    raise RuntimeError(f"solver leaves {left:.1e} of the load")
