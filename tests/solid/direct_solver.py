"""The direct solver of the solid models: MKL PARDISO where it is installed, else scipy's own."""

from __future__ import annotations

from functools import cache
from typing import Any

import numpy as np
from scipy import sparse
from scipy.sparse.linalg import splu

AT_ONCE = 32  # loads solved together, to bound the memory


@cache
def _pardiso() -> Any:
    """Give the fast direct solver if it is installed; looking for its library takes a second."""
    try:
        import pypardiso
    except ImportError:
        return None
    return pypardiso.PyPardisoSolver(mtype=2)


def solver_name() -> str:
    """Name the direct solver in use."""
    return "scipy splu" if _pardiso() is None else "pypardiso (MKL PARDISO, symmetric)"


def direct(matrix: sparse.csr_array, loads: np.ndarray, refine: bool = True) -> np.ndarray:
    """Solve a symmetric positive definite system for load columns (n, m); whoever asks looks at the residual."""
    fast = _pardiso()
    if fast is None:
        options = {"SymmetricMode": True}
        factor = splu(
            sparse.csc_matrix(matrix), "MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options=options
        )
        return np.asarray(factor.solve(loads))
    upper = sparse.csr_matrix(sparse.triu(matrix, format="csr"))
    upper.sort_indices()
    if not refine:
        fast.set_iparm(8, 0)
    fast.factorize(upper)
    found = np.empty_like(loads)
    for low in range(0, loads.shape[1], AT_ONCE):
        part = slice(low, low + AT_ONCE)
        found[:, part] = fast.solve(upper, np.asfortranarray(loads[:, part]))
    fast.free_memory(everything=True)
    return found
