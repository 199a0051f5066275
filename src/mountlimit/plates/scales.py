"""What a mount's stiffness grows with: thickness and modulus of its plates, stiffness of its bolts."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np
from scipy import sparse

from .model import BoolArray, FloatArray

Growth = Literal["plate", "second", "joint", "seam", "strut", "nothing"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Scales:
    """Sizes over those of the model as laid out.

    ``thickness``, ``modulus`` and ``second`` (the modulus of a second material) are of the facets
    marked to vary, ``joint`` is the stiffness of every frame bolt, ``seam`` that of every fastener
    of a seam, ``strut`` that of every strut.
    """

    thickness: float = 1.0
    modulus: float = 1.0
    second: float = 1.0
    joint: float = 1.0
    seam: float = 1.0
    strut: float = 1.0

    def factor(self, power: int, grows: Growth) -> float:
        """Give what a part is multiplied by that grows so: see `Term`."""
        more = {
            "plate": self.modulus, "second": self.second, "joint": self.joint,
            "seam": self.seam, "strut": self.strut,
        }  # fmt: skip
        return float(self.thickness**power * more.get(grows, 1.0))


@dataclass(frozen=True, slots=True, kw_only=True)
class Varying:
    """Which facets follow the thickness scale and which a modulus scale, a mark per facet."""

    thickness: BoolArray
    modulus: BoolArray
    second: BoolArray

    @classmethod
    def none(cls, facets: int) -> Varying:
        """Let no facet vary."""
        none = np.zeros(facets, bool)
        return cls(thickness=none, modulus=none, second=none)


@dataclass(frozen=True, slots=True, kw_only=True)
class Term:
    """A part of the stiffness: it grows with a power of the thickness, and with one thing more."""

    matrix: sparse.csr_array
    power: int
    grows: Growth


def total(terms: tuple[Term, ...], scales: Scales) -> sparse.csr_array:
    """Give the stiffness at the scales."""
    factors = [scales.factor(term.power, term.grows) for term in terms]
    found = factors[0] * terms[0].matrix
    for factor, term in zip(factors[1:], terms[1:], strict=True):
        found = found + factor * term.matrix
    return sparse.csr_array(found)


def merged(terms: list[Term]) -> tuple[Term, ...]:
    """Put together the terms that grow alike, and drop empty ones."""
    groups: dict[tuple[int, Growth], list[sparse.csr_array]] = {}
    for term in terms:
        if term.matrix.nnz:
            groups.setdefault((term.power, term.grows), []).append(term.matrix)
    return tuple(
        Term(matrix=parts[0] if len(parts) == 1 else _sum(parts), power=power, grows=grows)
        for (power, grows), parts in groups.items()
    )


def _sum(parts: list[sparse.csr_array]) -> sparse.csr_array:
    """Add a large matrix and many small ones at once."""
    small = [part.tocoo() for part in parts[1:]]
    rows, columns = (np.concatenate([part.coords[k] for part in small]) for k in (0, 1))
    data = np.concatenate([part.data for part in small])
    more = sparse.coo_array((data, (rows, columns)), shape=parts[0].shape).tocsr()
    return sparse.csr_array(parts[0] + more)


def stretch(marks: BoolArray, scale: float) -> FloatArray:
    """Give a scale per facet: ``scale`` where it varies, else one."""
    return np.where(marks, scale, 1.0)
