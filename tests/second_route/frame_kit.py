"""Models of bars for PyNiteFEA, a general frame solver: bars, stiff links, supports, loads at a node."""

from __future__ import annotations

import warnings

import numpy as np

STIFF = 1e6  # a link over the bars it joins
NO_STRETCH = (
    10.0  # area over that of a bar as stiff along as across; the program leaves stretching out
)


class Bars:
    """A frame of straight bars in space; every bar has its own section and material."""

    def __init__(self) -> None:
        from Pynite import FEModel3D

        self.model = FEModel3D()
        self.count = 0

    def node(self, name: str, place) -> str:
        self.model.add_node(name, *(float(v) for v in place))
        return name

    def bar(self, one: str, two: str, e: float, g: float, second_y: float, second_z: float, j: float, rotation: float = 0.0) -> None:  # fmt: skip
        """Add a bar; second moments about its local y and z (local x along it, z level, y up)."""
        self.count += 1
        name = f"bar {self.count}"
        self.model.add_material(name, e, g, 0.3, 1.0)
        start, end = (self.model.nodes[n] for n in (one, two))
        length = float(np.linalg.norm([end.X - start.X, end.Y - start.Y, end.Z - start.Z]))
        area = NO_STRETCH * 12 * max(second_y, second_z) / length**2
        self.model.add_section(name, area, second_y, second_z, j)
        self.model.add_member(name, one, two, name, name, rotation)

    def link(self, one: str, two: str, e: float, second: float) -> None:
        """Add a bar that does not give."""
        self.bar(one, two, STIFF * e, STIFF * e, second, second, second)

    def hold(self, node: str, *ways: str) -> None:
        self.model.def_support(node, **{f"support_{w}": True for w in ways})

    def load(self, node: str, force, moment=(0.0, 0.0, 0.0)) -> None:
        for way, size in zip(("FX", "FY", "FZ", "MX", "MY", "MZ"), (*force, *moment), strict=True):
            if size:
                self.model.add_node_load(node, way, float(size))

    def solve(self) -> None:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            self.model.analyze_linear(check_stability=False)

    def moved(self, node: str) -> np.ndarray:
        """Give the six movements of a node."""
        n = self.model.nodes[node]
        combo = next(iter(n.DX))
        return np.array([getattr(n, w)[combo] for w in ("DX", "DY", "DZ", "RX", "RY", "RZ")])

    def pushed(self, node: str) -> np.ndarray:
        """Give the forces of the supports on a node, along x, y and z."""
        n = self.model.nodes[node]
        combo = next(iter(n.RxnFX))
        return np.array([getattr(n, w)[combo] for w in ("RxnFX", "RxnFY", "RxnFZ")])


ALL = ("DX", "DY", "DZ", "RX", "RY", "RZ")
