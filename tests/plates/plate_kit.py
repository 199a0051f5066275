"""Common pieces of the plate tests: the solid cases as models, bare plates, a small loaded mount."""

from __future__ import annotations

import json
import math
from pathlib import Path
from typing import Any

import numpy as np
from scipy import sparse
from scipy.sparse.linalg import splu

from mountlimit.plates import (
    Bend,
    Contact,
    Facet,
    FrameBolt,
    Hole,
    MotorBolt,
    PlateModel,
    SectionLine,
    Spacer,
)
from mountlimit.plates.assemble import NodeBlocks
from mountlimit.plates.element import Elements, prepare, stiffness
from mountlimit.plates.mesh import Mesh, build

MILLI = 1e-3
MEGA = 1e6
CASES = {
    case["name"]: case
    for case in json.loads((Path(__file__).parent / "solid_cases.json").read_text())["cases"]
}


def metres(values: Any) -> np.ndarray:
    """Give millimetres in metres."""
    return np.asarray(values, float) * MILLI


def facets_of(case: dict[str, Any]) -> list[Facet]:
    """Give the plates of a solid case."""
    holes: dict[int, list[Hole]] = {i: [] for i in range(len(case["plates"]))}
    bore = case["bore"]
    holes[bore["plate"]].append(Hole(centre=metres(bore["c"]), diameter=bore["d"] * MILLI))
    return [
        Facet(
            name=plate["name"],
            outline=metres(plate["outline"]),
            origin=metres(plate["o"]),
            e1=plate["e1"],
            e2=plate["e2"],
            thickness=case["t"] * MILLI,
            elastic_modulus=case["mat"]["E"] * MEGA,
            poissons_ratio=case["mat"]["nu"],
            holes=holes[i],
        )
        for i, plate in enumerate(case["plates"])
    ]


def frame_bolts_of(case: dict[str, Any]) -> list[FrameBolt]:
    """Give the frame bolts of a solid case."""
    fixed = case["support"] == "fixed"
    return [
        FrameBolt(
            facet=bolt["plate"],
            centre=metres(bolt["c"]),
            hole_diameter=bolt["d"] * MILLI,
            washer_diameter=bolt["dw"] * MILLI,
            normal_stiffness=math.inf if fixed else bolt["kn"] / MILLI,
            tangential_stiffness=math.inf if fixed else bolt["kt"] / MILLI,
            frame_side=bolt["side"],
        )
        for bolt in case["sup"]
    ]


def model_of(name: str, **changes: Any) -> PlateModel:
    """Give a solid case as a plate model."""
    case = CASES[name]
    parts: dict[str, Any] = {
        "facets": facets_of(case),
        "frame_bolts": frame_bolts_of(case),
        "motor_bolts": [
            MotorBolt(
                facet=bolt["plate"],
                centre=metres(bolt["c"]),
                hole_diameter=bolt["d"] * MILLI,
                washer_diameter=bolt["dw"] * MILLI,
            )
            for bolt in case["mot"]
        ],
        "motor_centre": metres(case["mc"]),
        "section_lines": [
            SectionLine(facet=line["plate"], start=metres(line["a"]), end=metres(line["b"]))
            for line in case["lines"]
        ],
        "spacers": [
            Spacer(
                facets=(spacer["p0"], spacer["p1"]),
                centre=metres(spacer["c"]),
                diameter=spacer["d"] * MILLI,
                elastic_modulus=case["mat"]["E"] * MEGA,
                poissons_ratio=case["mat"]["nu"],
            )
            for spacer in case.get("spacers", [])
        ],
    }
    if "fillet" in case:
        parts["bends"] = [Bend(facets=(0, 1), fillet_radius=case["fillet"] * MILLI)]
    if "contact" in case:
        stiffness_per_area = case["contact"]["kc"] / MILLI**3
        parts["contacts"] = [
            Contact(facet=case["contact"]["plate"], side=-1, stiffness=stiffness_per_area)
        ]
    return PlateModel(**{**parts, **changes})


def sprocket_of(name: str) -> np.ndarray:
    """Give the sprocket point of a solid case."""
    return metres(CASES[name]["mc"]) + metres(CASES[name]["spr"])


class BarePlate:
    """A single flat plate, no bolts: nodes, stiffness, and a solve with given unknowns."""

    def __init__(
        self,
        outline: Any,
        thickness: float,
        size: float,
        modulus: float = 1.0e9,
        nu: float = 0.3,
        holes: tuple[Hole, ...] = (),
    ) -> None:
        facet = Facet(
            name="plate",
            outline=np.asarray(outline, float),
            origin=(0.0, 0.0, 0.0),
            e1=(1.0, 0.0, 0.0),
            e2=(0.0, 1.0, 0.0),
            thickness=thickness,
            elastic_modulus=modulus,
            poissons_ratio=nu,
            holes=holes,
        )
        self.model = PlateModel(facets=[facet], motor_bolts=(), motor_centre=(0.0, 0.0, 0.0))
        self.mesh: Mesh = build(self.model, size)
        self.elements: Elements = prepare(self.model, self.mesh)
        thin, bent = stiffness(self.elements)
        self.element_stiffness = thin + bent
        self.matrix = NodeBlocks(self.mesh).gather(thin + bent)
        self.x, self.y = self.mesh.points[:, 0], self.mesh.points[:, 1]
        self.count = len(self.mesh.points)

    def uniform_load(self, pressure: float) -> np.ndarray:
        """Give nodal forces of a pressure along the normal."""
        load = np.zeros((self.count, 6))
        np.add.at(
            load[:, 2], self.mesh.triangles[:, 3:], (pressure * self.mesh.area / 3.0)[:, None]
        )
        return load

    def edge_load(self, on: np.ndarray, direction: int, traction: float) -> np.ndarray:
        """Give nodal forces of a force per length along free edges whose nodes are all ``on``."""
        edges = self.mesh.free_edges[on[self.mesh.free_edges].all(axis=1)]
        ends = self.mesh.points[edges[:, :2]]
        length = np.linalg.norm(ends[:, 1] - ends[:, 0], axis=1)
        load = np.zeros((self.count, 6))
        for node, share in enumerate((1 / 6, 1 / 6, 4 / 6)):
            np.add.at(load[:, direction], edges[:, node], traction * length * share)
        return load

    def solve(
        self, held: np.ndarray, given: np.ndarray | None = None, load: np.ndarray | None = None
    ) -> tuple[np.ndarray, np.ndarray]:
        """Give movement and reactions (n, 6) with ``held`` unknowns at their ``given`` values."""
        movement = np.zeros(6 * self.count) if given is None else given.ravel().copy()
        force = np.zeros(6 * self.count) if load is None else load.ravel()
        free = ~held.ravel()
        movement[free] = 0.0
        right = force[free] - (self.matrix @ movement)[free]
        inner = sparse.csc_matrix(self.matrix[free][:, free])
        movement[free] = splu(inner).solve(right)
        reaction = self.matrix @ movement - force
        return movement.reshape(-1, 6), reaction.reshape(-1, 6)

    def flat(self, *unknowns: int) -> np.ndarray:
        """Give a mask that holds the unknowns named on every node."""
        held = np.zeros((self.count, 6), bool)
        held[:, list(unknowns)] = True
        return held


def rectangle(width: float, height: float) -> np.ndarray:
    """Give the outline of a rectangle from the origin."""
    return np.array([[0, 0], [width, 0], [width, height], [0, height]], float)
