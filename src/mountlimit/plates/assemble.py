"""Stiffness of the whole mount in the kept unknowns, part by part as it grows with its scales."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from scipy import sparse

from .element import Elements, prepare, stiffness
from .mesh import Mesh
from .model import BoolArray, FloatArray, IntArray, PlateModel
from .scales import Growth, Scales, Term, Varying, merged, total
from .springs import Spring, spacer_stiffness, washer, weld
from .ties import Ties, tie


@dataclass(frozen=True, kw_only=True)
class System:
    """The assembled mount.

    ``plates`` are the plates' parts on all nodal unknowns; ``terms`` all parts, supports and all,
    on the kept unknowns.
    """

    mesh: Mesh
    elements: Elements
    ties: Ties
    plates: tuple[Term, ...]
    terms: tuple[Term, ...]
    bolts: tuple[Spring | None, ...]
    welds: tuple[Spring | None, ...]
    varying: Varying

    @property
    def stiffness(self) -> sparse.csc_array:
        """Stiffness of the kept unknowns as laid out."""
        return sparse.csc_array(total(self.terms, Scales()))

    def spring_terms(self, spring: Spring, facet: int, grows: Growth) -> tuple[Term, Term]:
        """Give a support's two parts on all nodal unknowns, as they grow."""
        return _spring_terms(spring, facet, grows, self.varying)


def assemble(model: PlateModel, mesh: Mesh, varying: Varying | None = None) -> System:
    """Assemble the mount; ``varying`` marks the facets whose thickness or modulus will be changed.

    Without it nothing but the bolts' stiffness can be changed.
    """
    varying = varying or Varying.none(len(model.facets))
    elements = prepare(model, mesh)
    ties = tie(model, mesh)
    thin, bent = stiffness(elements)
    rigid = ties.rigid_elements(mesh)
    thin[rigid] = bent[rigid] = 0.0
    plates = _plates(NodeBlocks(mesh), mesh, thin, bent, varying)
    bolts = tuple(
        None if math.isinf(bolt.normal_stiffness) else washer(model, mesh, i)
        for i, bolt in enumerate(model.frame_bolts)
    )
    welds = tuple(
        weld(model, mesh, i) if part.other_facet is None else None
        for i, part in enumerate(model.welds)
    )
    springs: list[tuple[Spring | None, int, Growth]] = [
        (spring, bolt.facet, "joint") for spring, bolt in zip(bolts, model.frame_bolts, strict=True)
    ]
    springs += [
        (spring, part.facet, "nothing") for spring, part in zip(welds, model.welds, strict=True)
    ]
    full = [*plates]
    for spring, facet, grows in springs:
        if spring is not None:
            full += _spring_terms(spring, facet, grows, varying)
    expand = ties.expand
    back = expand.T.tocsr()
    kept = [
        Term(
            matrix=sparse.csr_array(back @ part.matrix @ expand), power=part.power, grows=part.grows
        )
        for part in merged(full)
    ]
    kept.append(Term(matrix=_spacers(model, ties), power=0, grows="nothing"))
    return System(
        mesh=mesh,
        elements=elements,
        ties=ties,
        plates=plates,
        terms=merged(kept),
        bolts=bolts,
        welds=welds,
        varying=varying,
    )


def _spring_terms(spring: Spring, facet: int, grows: Growth, varying: Varying) -> tuple[Term, Term]:
    power = 2 if varying.thickness[facet] else 0
    return (
        Term(matrix=spring.plain, power=0, grows=grows),
        Term(matrix=spring.offset, power=power, grows=grows),
    )


def _plates(
    blocks: NodeBlocks, mesh: Mesh, thin: FloatArray, bent: FloatArray, varying: Varying
) -> tuple[Term, ...]:
    """Give the plates' parts: membrane and shear grow with the thickness, bending with its cube."""
    thick, stiff = varying.thickness[mesh.facet], varying.modulus[mesh.facet]
    found = []
    marks: tuple[tuple[Growth, BoolArray], ...] = (("plate", stiff), ("nothing", ~stiff))
    for grows, own in marks:
        for power, part, mark in (
            (0, thin + bent, own & ~thick),
            (1, thin, own & thick),
            (3, bent, own & thick),
        ):
            if np.any(mark):
                chosen = np.where(mark[:, None, None], part, 0.0)
                found.append(Term(matrix=blocks.gather(chosen), power=power, grows=grows))
    return tuple(found)


def _spacers(model: PlateModel, ties: Ties) -> sparse.csr_array:
    """Give the spacers' beams in the kept unknowns."""
    kept = ties.expand.shape[1]
    rows, columns, values = [], [], []
    for i in range(len(model.spacers)):
        index = ties.spacer_ends[i].ravel()
        block = spacer_stiffness(model, i, ties.bodies[1 + 2 * i : 3 + 2 * i])
        rows.append(np.repeat(index, 12))
        columns.append(np.tile(index, 12))
        values.append(block.ravel())
    if not values:
        return sparse.csr_array((kept, kept))
    entries = (np.concatenate(values), (np.concatenate(rows), np.concatenate(columns)))
    return sparse.coo_array(entries, shape=(kept, kept)).tocsr()


class NodeBlocks:
    """The pattern of 6 x 6 node blocks, found once and filled as often as needed."""

    def __init__(self, mesh: Mesh) -> None:
        count = len(mesh.points)
        rows = np.repeat(mesh.triangles, 6, axis=1).ravel()
        columns = np.tile(mesh.triangles, 6).ravel()
        key = rows * count + columns
        self.order = np.argsort(key, kind="stable")
        ordered = key[self.order]
        self.starts: IntArray = np.flatnonzero(np.r_[True, np.diff(ordered) > 0])
        kept = ordered[self.starts]
        self.columns = kept % count
        self.pointer = np.searchsorted(kept // count, np.arange(count + 1))
        self.shape = (6 * count, 6 * count)

    def gather(self, blocks: FloatArray) -> sparse.csr_array:
        """Sum element matrices (n, 36, 36) into a sparse matrix."""
        pairs = blocks.reshape(-1, 6, 6, 6, 6).transpose(0, 1, 3, 2, 4).reshape(-1, 36)
        summed = np.add.reduceat(pairs[self.order], self.starts, axis=0)
        data = summed.reshape(-1, 6, 6)
        matrix = sparse.bsr_array((data, self.columns, self.pointer), shape=self.shape)
        return sparse.csr_array(matrix.tocsr())
