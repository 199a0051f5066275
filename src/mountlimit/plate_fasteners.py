"""What parts inside the mount take by the plate model: motor bolts, screws, spacers, struts, welds."""

from __future__ import annotations

import numpy as np

from .case import Pulled
from .formulas import tipping
from .model import Array, Number
from .mounting import AXES
from .plate_reading import Line, Settled
from .plates import LineWeld, PlateModel


def motor_bolts(settled: Settled) -> tuple[Pulled, ...]:
    """Give tension and shear at every motor bolt: what lifts the motor off the plate there.

    The motor is tied to the plate at each bolt both ways, so where it presses there is no tension.
    """
    model = settled.route.family.model
    found = []
    for i, bolt in enumerate(model.motor_bolts):
        axes = model.facets[bolt.facet].axes
        away = axes[2] * _side_of_motor(settled, i)
        rows = [np.array([away @ f, axes[0] @ f, axes[1] @ f])
                for f in (a.supports.motor_bolts[i, :3] for a, _ in settled.groups)]  # fmt: skip
        words = f"of motor bolt {i + 1}"
        found.append(_pulled(settled, rows, words))
    return tuple(found)


def _side_of_motor(settled: Settled, bolt: int) -> float:
    """Give the sign of the facet's normal that points to the motor; a face motor is below z = 0."""
    model = settled.route.family.model
    facet = model.facets[model.motor_bolts[bolt].facet]
    to_motor = np.asarray(model.motor_centre, float) - np.asarray(facet.origin, float)
    return 1.0 if facet.axes[2] @ to_motor > 0 else -1.0


def screws(settled: Settled) -> tuple[Pulled, ...]:
    """Give tension and shear of every fastener of the mount's seams."""
    count = len(settled.groups[0][0].supports.seams)
    found = []
    for i in range(count):
        rows = [a.supports.seams[i] for a, _ in settled.groups]
        found.append(_pulled(settled, rows, f"of screw {i + 1} of the seam"))
    return tuple(found)


def rods(settled: Settled) -> tuple[Number, ...]:
    """Give the tension of every strut; below nothing it is pressed."""
    count = len(settled.groups[0][0].supports.struts)
    return tuple(
        settled.read(
            [a.supports.struts[i][None] for a, _ in settled.groups],
            [Line(f"Tension of strut {i + 1}", "N", "N")],
        )[0]
        for i in range(count)
    )


def spacer_forces(settled: Settled, spacer: int, end: int) -> list[Number]:
    """Give what a plate puts on its end of a spacer, about the plate's mid-plane.

    Force along the spacer and both ways across it, N; moments about both ways across and along, N*m.
    """
    model = settled.route.family.model
    facet = model.facets[model.spacers[spacer].facets[end]]
    first, second, along = facet.axes
    ways = np.array([along, first, second])
    rows = [np.vstack([ways @ w[:3], facet.axes @ w[3:]])
            for w in (a.supports.spacers[spacer, end] for a, _ in settled.groups)]  # fmt: skip
    words = f"of spacer {spacer + 1} at the {facet.name}"
    lines = [
        Line(f"Force along the axis {words}", "N", "N"),
        Line(f"Shear, first way, {words}", "V_1", "N"),
        Line(f"Shear, second way, {words}", "V_2", "N"),
        Line(f"Bending moment, first way, {words}", "M_1", "N*m"),
        Line(f"Bending moment, second way, {words}", "M_2", "N*m"),
        Line(f"Torque {words}", "T", "N*m"),
    ]
    return settled.read(rows, lines)


def welds(settled: Settled) -> tuple[tuple[tuple[Number, ...], tuple[Number, ...]], ...]:
    """Give force and moment of the mount on every weld to the frame, about its middle, in space.

    The axes are turned so that the nearest of them lies along the weld's line, as ``Weld.along`` says.
    """
    model = settled.route.family.model
    found = []
    for i, weld in enumerate(model.welds):
        if weld.other_facet is not None:
            continue
        turn = np.kron(np.eye(2), _along_nearest(model, weld))
        rows = [turn @ a.supports.welds[i] for a, _ in settled.groups]
        lines = [Line(f"Force along {a} on weld {i + 1}", f"f_{a}", "N") for a in AXES]
        lines += [Line(f"Moment about {a} on weld {i + 1}", f"m_{a}", "N*m") for a in AXES]
        six = settled.read(rows, lines)
        found.append((tuple(six[:3]), tuple(six[3:])))
    return tuple(found)


def _along_nearest(model: PlateModel, weld: LineWeld) -> Array:
    """Give the least turn of the axes that lays a weld's line along one of them, (3, 3)."""
    start, end = model.facets[weld.facet].to_space(np.array([weld.start, weld.end], float))
    line = (end - start) / np.linalg.norm(end - start)
    axis = int(np.argmax(np.abs(line)))
    line = line * np.sign(line[axis])
    x, y, z = np.cross(line, np.eye(3)[axis])
    cross = np.array([[0.0, -z, y], [z, 0.0, -x], [-y, x, 0.0]])
    return np.asarray(np.eye(3) + cross + cross @ cross / (1.0 + line[axis]))


def _pulled(settled: Settled, rows: list[Array], words: str) -> Pulled:
    lines = [Line(f"Pull {words}", "N_p", "N"), Line(f"Shear, first way, {words}", "V_1", "N"),
             Line(f"Shear, second way, {words}", "V_2", "N")]  # fmt: skip
    pull, one, two = settled.read(rows, lines)
    tension = tipping.pulled_only(pull)
    return Pulled(tension=tension, shear=tipping.bolt_shear(one, two))
