"""Answers of a mount to any number of loads at once, contact settled for each.

Where the same contact points bear, the answer is linear in the load.  The sets of bearing points met
so far are remembered; a load is tried on them first, and only a load that fits none is solved anew.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from .contact import ContactSolver
from .model import BoolArray, FloatArray, IntArray
from .readings import Supports
from .sampling import Samples

TOLERANCE = 1e-9  # of the largest; a push or gap below this is none
MOST_SETS = 400


@dataclass(frozen=True, kw_only=True)
class Bearing:
    """One set of contact points: shares per unit load, and what must not be negative.

    ``points`` marks where the frame bears, and where a seam's butt stands open.
    """

    points: BoolArray
    forces: FloatArray
    tests: FloatArray


@dataclass(frozen=True, kw_only=True)
class Reading:
    """Stress at places per share: (places, 6, shares), membrane then bending part."""

    samples: Samples
    rows: FloatArray


@dataclass(frozen=True, kw_only=True)
class Answer:
    """Answers to six unit loads at the motor centre and to unit contact forces: the shares.

    ``motor`` (6, shares) moves the motor centre; ``lift`` (points, shares) moves the contact points
    away from the frame; ``supports`` gives forces per share, ``reading`` stress.  A contact point
    without stiffness bears nothing.
    """

    motor: FloatArray
    lift: FloatArray
    stiffness: FloatArray
    supports: Supports
    read: Callable[[str], Reading]
    solver: ContactSolver | None
    sets: list[Bearing] = field(default_factory=list)
    # rows over the shares worked out once, by what they are, and stress readings by their kind
    kept: dict[Any, FloatArray] = field(default_factory=dict)
    readings: dict[str, Reading] = field(default_factory=dict)

    def shares(self, loads: FloatArray) -> FloatArray:
        """Give the shares of loads (n, 6) on the motor centre, contact settled: (n, shares)."""
        if self.solver is None:
            return loads
        scale = np.linalg.norm(self.lift[:, :6], axis=0).max() * np.abs(loads).max(axis=1)
        forces = np.zeros((len(loads), len(self.stiffness)))
        left: IntArray = np.arange(len(loads))
        for i, known in enumerate(tuple(self.sets)):
            if not left.size:
                break
            before = left.size
            left = self._try(known, loads, scale, left, forces)
            if i and 2 * left.size < before:  # a set that fits many is tried first the next time
                self.sets.insert(0, self.sets.pop(i))
        live = self.stiffness != 0.0
        while left.size:
            first = left[0]
            exact = np.zeros(len(live))
            exact[live] = self.solver.forces(self.lift[live, :6] @ loads[first])
            forces[first] = exact
            left = left[1:]
            if len(self.sets) < MOST_SETS:
                self.sets.append(self._bearing(exact > TOLERANCE * exact.max(initial=0.0)))
                left = self._try(self.sets[-1], loads, scale, left, forces)
        return np.hstack([loads, forces])

    def once(self, key: Any, rows: Callable[[], FloatArray]) -> FloatArray:
        """Give rows over the shares that are worked out the first time they are asked for."""
        if key not in self.kept:
            self.kept[key] = rows()
        return self.kept[key]

    def reading(self, kind: str) -> Reading:
        """Give stress at a kind of places ("ring", "line" or "edge"), worked out when first asked for."""
        if kind not in self.readings:
            self.readings[kind] = self.read(kind)
        return self.readings[kind]

    def bearing(self, load: FloatArray) -> Bearing:
        """Give the set of points that bear under one load."""
        if self.solver is None:
            none = np.zeros((0, 6))
            return Bearing(points=np.zeros(0, bool), forces=none, tests=none)
        forces = self.shares(load[None])[0, 6:]
        return self._bearing(forces > TOLERANCE * forces.max(initial=0.0))

    def _try(
        self, known: Bearing, loads: FloatArray, scale: FloatArray, left: IntArray, forces: FloatArray
    ) -> IntArray:  # fmt: skip
        tested = loads[left] @ known.tests.T
        fits = np.all(tested >= -TOLERANCE * scale[left, None], axis=1)
        forces[left[fits]] = np.maximum(loads[left[fits]] @ known.forces.T, 0.0)
        return np.asarray(left[~fits])

    def _bearing(self, points: BoolArray) -> Bearing:
        on = np.flatnonzero(points)
        flexibility = self.lift[:, 6:]
        total = flexibility[np.ix_(on, on)] + np.diag(
            1.0 / self.stiffness[on]
        )  # butts below nothing
        forces = np.zeros((len(points), 6))
        if on.size:
            forces[on] = np.linalg.solve(total, -self.lift[on, :6])
        # a gap where the frame does not bear, and where it does the depth pressed in; a closed butt
        # is pressed, an open one has its spring let go
        # (and nothing where a point cannot bear)
        tests = np.sign(self.stiffness)[:, None] * (self.lift[:, :6] + flexibility @ forces)
        tests[on] = forces[on] / np.abs(self.stiffness[on, None])
        return Bearing(points=points, forces=forces, tests=tests)


def solver_of(lift: FloatArray, stiffness: FloatArray) -> ContactSolver | None:
    """Prepare the contact of the points that have a stiffness; None without any."""
    live = stiffness != 0.0
    if not np.any(live):
        return None
    return ContactSolver.of(lift[np.ix_(live, np.r_[np.zeros(6, bool), live])], stiffness[live])
