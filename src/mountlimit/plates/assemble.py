"""Stiffness of the whole mount in the kept unknowns, as a cubic polynomial in the thickness."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from scipy import sparse

from .element import Elements, prepare, stiffness
from .mesh import Mesh
from .model import BoolArray, FloatArray, IntArray, PlateModel
from .seams import SpringRows, butts, fasteners
from .springs import Spring, spacer_stiffness, washer, weld
from .struts import struts
from .ties import Ties, tie

AT_ONCE = 500  # elements handled together: bounds the memory taken


@dataclass(frozen=True, kw_only=True)
class System:
    """``parts[k]`` multiplies the k-th power of the thickness scale of the facets that vary.

    ``fasteners`` (three springs each: axial, along the seam, across) and ``struts`` do not vary,
    nor do the seams' butts, which stand in the stiffness as two-way springs; see ``contact``.
    """

    mesh: Mesh
    elements: Elements
    ties: Ties
    plate: sparse.csr_array
    parts: tuple[sparse.csr_array, ...]
    bolts: tuple[Spring | None, ...]
    welds: tuple[Spring | None, ...]
    fasteners: SpringRows
    struts: SpringRows

    @property
    def stiffness(self) -> sparse.csc_array:
        """Stiffness of the kept unknowns at scale one."""
        total = self.parts[0]
        for part in self.parts[1:]:
            total = total + part
        return sparse.csc_array(total)


def assemble(model: PlateModel, mesh: Mesh, varying: BoolArray | None = None) -> System:
    """Assemble the mount; ``varying`` marks the facets whose thickness is to be swept.

    Without it everything is put in the first part.
    """
    elements = prepare(model, mesh)
    ties = tie(model, mesh)
    strained = ~ties.rigid_elements(mesh)
    blocks = NodeBlocks(mesh)
    moves = np.zeros(len(model.facets), bool) if varying is None else varying
    full = _plates(blocks, elements, strained, moves[mesh.facet])
    plate = sum(full[1:], full[0])
    bolts = tuple(
        None if math.isinf(bolt.normal_stiffness) else washer(model, mesh, i)
        for i, bolt in enumerate(model.frame_bolts)
    )
    welds = tuple(
        weld(model, mesh, i) if part.other_facet is None else None
        for i, part in enumerate(model.welds)
    )
    owners = [bolt.facet for bolt in model.frame_bolts] + [part.facet for part in model.welds]
    pairs = [(s, moves[f]) for s, f in zip((*bolts, *welds), owners, strict=True) if s is not None]
    full[0] = _added(full[0], [s.plain for s, _ in pairs])
    full[0] = _added(full[0], [s.offset for s, move in pairs if not move])
    full[2] = _added(full[2], [s.offset for s, move in pairs if move])
    links = (fasteners(model, mesh), struts(model, mesh, ties))
    all_links = (*links, butts(model, mesh).springs)
    full[0] = _added(full[0], [springs.matrix for springs in all_links])
    expand = ties.expand
    back = expand.T.tocsr()
    used = full if varying is not None else full[:1]
    parts = [sparse.csr_array(back @ part @ expand) for part in used]
    parts[0] = sparse.csr_array(parts[0] + _spacers(model, ties))
    return System(
        mesh=mesh,
        elements=elements,
        ties=ties,
        plate=plate,
        parts=tuple(parts),
        bolts=bolts,
        welds=welds,
        fasteners=links[0],
        struts=links[1],
    )


def _added(total: sparse.csr_array, more: list[sparse.coo_array]) -> sparse.csr_array:
    """Add many small matrices at once."""
    if not any(part.nnz for part in more):
        return total
    rows, columns = (np.concatenate([part.coords[k] for part in more]) for k in (0, 1))
    data = np.concatenate([part.data for part in more])
    return sparse.csr_array(
        total + sparse.coo_array((data, (rows, columns)), shape=total.shape).tocsr()
    )


def _plates(
    blocks: NodeBlocks, elements: Elements, strained: BoolArray, moves: BoolArray
) -> list[sparse.csr_array]:
    """Give the plates' parts of power 0 to 3 of the thickness scale; ``moves`` marks elements.

    Element matrices are made a few at a time; only parts that are not empty are kept.
    """
    none = np.zeros_like(moves)
    marks = [(~moves, ~moves), (moves, none), (none, none), (none, moves)]
    found = {k: np.empty((len(moves), 36, 36)) for k, pair in enumerate(marks) if np.any(pair)}
    for low in range(0, len(moves), AT_ONCE):
        part = slice(low, low + AT_ONCE)
        thin, bent = stiffness(elements.part(part))
        for k, whole in found.items():
            of_thin, of_bent = (strained[part] & mark[part] for mark in marks[k])
            whole[part] = thin * of_thin[:, None, None] + bent * of_bent[:, None, None]
    empty = sparse.csr_array(blocks.shape)
    return [blocks.gather(found.pop(k)) if k in found else empty for k in range(len(marks))]


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
