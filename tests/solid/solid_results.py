"""The stored solid results: how they are kept, and what is drawn from their meshes."""

from __future__ import annotations

import dataclasses
import hashlib
import json
from pathlib import Path
from typing import Any

import numpy as np

from mountlimit.plates import PlateModel

FILE = Path(__file__).parent / "solid_results.json"
TOWARDS_ZERO = ("rotation", "displacement", "bolt_tension", "bolt_shear")  # first order in the edge
AS_FINEST = ("frame_ring", "frame_near_ring", "motor_ring", "lines")


def load() -> dict[str, Any]:
    """Give all stored results."""
    return json.loads(FILE.read_text()) if FILE.exists() else {"mounts": {}}


def mark_of(model: PlateModel) -> str:
    """Give a short mark of all a model's numbers, so that results of another model are not used.

    What stands at its default is left out, so that a new kind of part or field changes no mark.
    """
    text = json.dumps(_told(model), default=np.ndarray.tolist, sort_keys=True)
    return hashlib.sha256(text.encode()).hexdigest()[:16]


def _told(part: Any) -> Any:
    if not dataclasses.is_dataclass(part):
        return [_told(p) for p in part] if isinstance(part, (list, tuple)) else part
    values = {f.name: (getattr(part, f.name), f.default) for f in dataclasses.fields(part)}
    return {
        k: _told(v) for k, (v, usual) in values.items() if isinstance(v, np.ndarray) or v != usual
    }


def drawn(meshes: list[dict[str, Any]], load_name: str) -> dict[str, np.ndarray]:
    """Give the figures of one load: movement and forces at edge size nothing, stress of the finest.

    ``linearity`` is how far the finest mesh's tilt lies from the line through the two coarser ones,
    ``left`` how far its tilt lies from the extrapolated one, ``bulk`` how far the tilt of the mesh
    that is finer everywhere but at the edges lies from the line, ``bulk_stress`` its largest values of
    rings and lines against the finest mesh's; each over the value.
    """
    rows = sorted((m for m in meshes if not m["check"]), key=lambda m: -m["edge"])
    edges = np.array([m["edge"] for m in rows])
    found: dict[str, np.ndarray] = {}
    for name in TOWARDS_ZERO:
        values = np.array([m["loads"][load_name][name] for m in rows])
        found[name] = _at(0.0, edges[-2:], values[-2:])
    for name in AS_FINEST:
        found[name] = np.array(rows[-1]["loads"][load_name][name])
    turns = np.array([m["loads"][load_name]["rotation"] for m in rows])
    main = int(np.argmax(np.abs(turns[-1])))
    turn = turns[:, main]
    found["left"] = turn[-1] / found["rotation"][main] - 1.0
    found["linearity"] = _at(edges[-1], edges[-3:-1], turn[-3:-1]) / turn[-1] - 1.0
    for mesh in meshes:
        if mesh["check"]:
            check = mesh["loads"][load_name]
            line = np.interp(mesh["edge"], edges[::-1], turn[::-1])
            found["bulk"] = check["rotation"][main] / line - 1.0
            ratio = [np.max(check[n]) / np.max(found[n]) - 1.0 for n in AS_FINEST]
            found["bulk_stress"] = np.array(ratio)
    return found


def _at(edge: float, edges: np.ndarray, values: np.ndarray) -> np.ndarray:
    share = (edge - edges[0]) / (edges[1] - edges[0])
    return values[0] + share * (values[1] - values[0])
