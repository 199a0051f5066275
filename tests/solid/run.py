"""Make tests/solid/solid_results.json: `python tests/solid/run.py [mount ...]`; goes on where it left off.

Needs the extra `solid` (scikit-fem) and, for meshes of this size, pypardiso; about 3 GB of memory and
half an hour for all mounts on one core of a busy machine.
"""

from __future__ import annotations

import importlib.metadata
import json
import logging
import sys
import time
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import numpy as np
import solid_results
from direct_solver import solver_name
from solid_mesh import Sizes, build, edge_size
from solid_model import Answer, SolidModel
from solid_mounts import LOADS, MOUNTS, sprocket
from solid_reading import read

from mountlimit.plates import PlateModel

# bulk [mm], layers, aim for the edge [mm], whether the mesh only checks the bulk size
MESHES = {
    "C1": [(13, 3, 3, 0), (13, 3, 1.6, 0), (13, 3, 0.8, 0)],
    "strap": [(13, 3, 3, 0), (13, 3, 1.6, 0), (13, 3, 0.8, 0), (9, 4, 1.6, 1)],
    "angle": [(13, 3, 3, 0), (13, 3, 1.0, 0), (13, 3, 0.6, 0), (9, 4, 1.6, 1)],
    "block": [(18, 3, 3.2, 0), (18, 3, 2.0, 0), (18, 3, 1.6, 0), (12, 4, 3.2, 1)],
}


def case(name: str) -> tuple[PlateModel, np.ndarray, dict[str, Any]]:
    """Give a mount, the sprocket point, and its loads."""
    if name == "C1":  # checks this solid model itself against an earlier, separate one
        sys.path.append(str(Path(__file__).parents[1] / "plates"))
        from plate_kit import model_of, sprocket_of

        pulls = {"chain_x": (3000.0, 0.0, 0.0), "chain_y": (0.0, -3000.0, 0.0)}
        return model_of("C1"), sprocket_of("C1"), pulls
    model = MOUNTS[name]()
    return model, sprocket(model), LOADS[name]


def main(names: list[str]) -> None:
    """Run what is missing, saving after every load."""
    logging.getLogger("skfem").setLevel(logging.ERROR)
    for name in names or list(MESHES):
        model, point, pulls = case(name)
        stored = solid_results.load()
        stored["made by"] = "python tests/solid/run.py"
        stored["units"] = (
            "SI; rings and lines: largest von Mises of each bolt or line; edge: mean longest side of the tetrahedra at rigid washers' edges"
        )
        mount = stored["mounts"].setdefault(name, {})
        if mount.get("mark") != solid_results.mark_of(model):
            mount.clear()
            mount.update(mark=solid_results.mark_of(model), meshes=[])
        aims = [m[:3] for m in MESHES[name]]
        mount["meshes"] = [m for m in mount["meshes"] if key(m) in aims]
        before: dict[str, Answer] = {}
        for bulk, layers, aim, check in MESHES[name]:
            wanted = {"bulk": bulk / 1e3, "layers": layers, "aim": aim / 1e3, "check": bool(check)}
            row = next((m for m in mount["meshes"] if wanted.items() <= m.items()), None)
            if row is None:
                row = {**wanted, "loads": {}}
                mount["meshes"].append(row)
            missing = {k: v for k, v in pulls.items() if k not in row["loads"]}
            if missing:
                solve_mesh(name, model, point, missing, row, stored, before)


def key(row: dict[str, Any]) -> tuple[float, ...]:
    """Give a stored mesh's entry of MESHES."""
    return round(row["bulk"] * 1e3, 6), row["layers"], round(row["aim"] * 1e3, 6)


def solve_mesh(
    name: str,
    model: PlateModel,
    point: np.ndarray,
    pulls: dict[str, Any],
    row: dict[str, Any],
    stored: dict[str, Any],
    before: dict[str, Answer],
) -> None:
    """Solve the loads missing on one mesh; ``before`` holds the last mesh's answers."""
    began = time.perf_counter()
    mesh = build(model, Sizes(row["bulk"], row["layers"], row["aim"]))
    solid = SolidModel(model, mesh)
    row.update(
        edge=rounded(edge_size(model, mesh)),
        tets=len(mesh.tets),
        unknowns=solid.kept,
        seconds_to_assemble=round(time.perf_counter() - began, 1),
        date=datetime.now(UTC).date().isoformat(),
        made_with=f"scikit-fem {importlib.metadata.version('scikit-fem')}, {solver_name()}",
    )
    for pull, force in pulls.items():
        began = time.perf_counter()
        answer = solid.solve(np.r_[force, 0.0, 0.0, 0.0], point, before.get(pull))
        before[pull] = answer
        figures = read(solid, answer, point)
        left = np.asarray(force) - answer.bolt_forces.sum(axis=0) - answer.contact_force.sum(axis=0)
        figures["force_left"] = float(np.max(np.abs(left)) / np.max(np.abs(force)))
        figures["seconds"] = round(time.perf_counter() - began, 1)
        row["loads"][pull] = {k: rounded(v) for k, v in figures.items()}
        solid_results.FILE.write_text(json.dumps(stored, indent=1) + "\n")
        print(
            name,
            pull,
            solid.kept,
            "unknowns",
            answer.rounds,
            "rounds",
            figures["seconds"],
            "s",
            flush=True,
        )


def rounded(value: Any) -> Any:
    """Round to six digits, lists too."""
    if isinstance(value, list):
        return [rounded(v) for v in value]
    return float(f"{value:.6g}") if isinstance(value, float) else value


if __name__ == "__main__":
    main(sys.argv[1:])
