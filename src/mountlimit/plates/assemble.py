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
from .seams import SpringRows, butts, fasteners
from .springs import Spring, spacer_stiffness, washer, weld
from .struts import struts
from .ties import Ties, tie

AT_ONCE = 500  # elements handled together: bounds the memory taken


@dataclass(frozen=True, kw_only=True)
class System:
    """The assembled mount.

    ``plates`` are the plates' parts on all nodal unknowns; ``terms`` all parts, supports and all,
    on the kept unknowns. ``fasteners`` (three springs each: axial, along the seam, across) and
    ``struts`` do not follow the thickness, nor do the seams' butts, which stand in the stiffness as
    two-way springs; see ``contact``.
    """

    mesh: Mesh
    elements: Elements
    ties: Ties
    plates: tuple[Term, ...]
    terms: tuple[Term, ...]
    bolts: tuple[Spring | None, ...]
    welds: tuple[Spring | None, ...]
    varying: Varying
    fasteners: SpringRows
    struts: SpringRows

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
    strained = ~ties.rigid_elements(mesh)
    plates = _plates(NodeBlocks(mesh), elements, strained, mesh.facet, varying)
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
    screws, rods = fasteners(model, mesh), struts(model, mesh, ties)
    links: tuple[tuple[SpringRows, Growth], ...] = (
        (screws, "seam"), (rods, "strut"), (butts(model, mesh).springs, "nothing"),
    )  # fmt: skip
    full += [
        Term(matrix=sparse.csr_array(rows.matrix), power=0, grows=grows) for rows, grows in links
    ]
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
        fasteners=screws,
        struts=rods,
        varying=varying,
    )


def _spring_terms(spring: Spring, facet: int, grows: Growth, varying: Varying) -> tuple[Term, Term]:
    power = 2 if varying.thickness[facet] else 0
    return (
        Term(matrix=sparse.csr_array(spring.plain), power=0, grows=grows),
        Term(matrix=sparse.csr_array(spring.offset), power=power, grows=grows),
    )


def _plates(
    blocks: NodeBlocks, elements: Elements, strained: BoolArray, facet: IntArray, varying: Varying
) -> tuple[Term, ...]:
    """Give the plates' parts: membrane and shear grow with the thickness, bending with its cube.

    Element matrices are made a few at a time; only parts that are not empty are kept.
    """
    thick = varying.thickness[facet]
    marks: list[tuple[Growth, int, BoolArray, BoolArray]] = []  # with thin, with bent
    none = np.zeros_like(thick)
    for grows, own in _growths(varying, facet):
        marks += [
            (grows, 0, own & ~thick, own & ~thick), (grows, 1, own & thick, none),
            (grows, 3, none, own & thick),
        ]  # fmt: skip
    found = []
    for grows, power, with_thin, with_bent in marks:
        if not np.any(with_thin | with_bent):
            continue
        whole = np.empty((len(facet), 36, 36))
        for low in range(0, len(facet), AT_ONCE):
            part = slice(low, low + AT_ONCE)
            thin, bent = stiffness(elements.part(part))
            of_thin, of_bent = (strained[part] & mark[part] for mark in (with_thin, with_bent))
            whole[part] = thin * of_thin[:, None, None] + bent * of_bent[:, None, None]
        found.append(Term(matrix=blocks.gather(whole), power=power, grows=grows))
    return tuple(found)


def _growths(varying: Varying, facet: IntArray) -> tuple[tuple[Growth, BoolArray], ...]:
    """Tell which elements follow which modulus."""
    first, second = varying.modulus[facet], varying.second[facet]
    return ("plate", first), ("second", second), ("nothing", ~(first | second))


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
        order = np.argsort(key, kind="stable")
        self.place = np.empty_like(order)
        self.place[order] = np.arange(len(order))
        ordered = key[order]
        self.starts: IntArray = np.flatnonzero(np.r_[True, np.diff(ordered) > 0])
        kept = ordered[self.starts]
        self.columns = (kept % count).astype(np.int32)
        self.pointer = np.searchsorted(kept // count, np.arange(count + 1)).astype(np.int32)
        self.shape = (6 * count, 6 * count)

    def gather(self, blocks: FloatArray) -> sparse.csr_array:
        """Sum element matrices (n, 36, 36) into a sparse matrix."""
        pairs = np.empty((36 * len(blocks), 36))
        for low in range(0, len(blocks), AT_ONCE):
            part = blocks[low : low + AT_ONCE].reshape(-1, 6, 6, 6, 6).transpose(0, 1, 3, 2, 4)
            pairs[self.place[36 * low : 36 * (low + AT_ONCE)]] = part.reshape(-1, 36)
        summed = np.add.reduceat(pairs, self.starts, axis=0)
        data = summed.reshape(-1, 6, 6)
        matrix = sparse.bsr_array((data, self.columns, self.pointer), shape=self.shape)
        return sparse.csr_array(matrix.tocsr())
