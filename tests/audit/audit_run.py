"""Compare plates with solid elements on mounts drawn by number; goes on where it stopped.

    python tests/audit/audit_run.py --each 4 --seconds 3600     # four mounts of each form
    python tests/audit/audit_run.py --each 1 --first 900000 --file tests/audit/results_fresh.json   # unseen by the fit
    python tests/audit/audit_run.py --converge                  # finer meshes of five mounts

Needs the extra ``audit`` (gmsh; pypardiso makes it several times faster); about 10 s of one core a mount.
The result is ``results.json``; a mount is left out only where the program refuses
the file or the mesher has no body for it, and both are counted.
"""

from __future__ import annotations

import argparse
import json
import os
import sys
import time
from pathlib import Path
from typing import Any

for _name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ.setdefault(_name, "1")
HERE = Path(__file__).parent
sys.path[:0] = [
    str(HERE),
    str(HERE.parent / "random_drives"),
    str(HERE.parent / "solid"),
    str(HERE.parent),
    str(HERE.parent.parent / "src"),
]

import numpy as np  # noqa: E402
from audit_mesh import Sizes, covered  # noqa: E402
from audit_plates import (  # noqa: E402
    ALL_OVER,
    FIRST,
    Drawn,
    Places,
    drawn,
    mises,
    motion,
    numbers,
    plates_say,
    ratios,
    sizes_of,
)
from audit_shape import CannotMesh  # noqa: E402
from audit_solid import CELLS, SolidMount  # noqa: E402
from layouts import LAYOUTS  # noqa: E402

RESULTS = HERE / "results.json"
COARSE, USED = Sizes(bulk=4.0, near=1.2, rim=0.5), Sizes(bulk=3.2, near=1.0, rim=0.25)
FINER = (Sizes(1.6, 0.6, 0.125), Sizes(1.6, 0.6, 0.06), Sizes(1.1, 0.42, 0.06))
CONVERGE = (
    ("plate", 500_001),
    ("angle", 505_001),
    ("channel", 504_001),
    ("welded plate", 508_001),
    ("cradle", 514_003),
)


def solid_says(
    mount: Drawn, places: Places, sizes: Sizes, cells: int = CELLS, stressed: bool = True
) -> dict[str, Any]:
    """Give the solid's figures for the same six loads, stress at the same places (nan: inside a corner)."""
    solid = SolidMount(mount.for_solids, sizes, cells)
    moved = [solid.response(load) for load in mount.wrenches]
    motor = np.array([solid.motor(u) for u in moved])
    forces = np.array([solid.bolt_forces(u) for u in moved])  # loads, bolts, 3
    sides = np.array([b.frame_side for b in mount.model.frame_bolts])
    stress = np.full((len(places.facet), len(moved)), np.nan)
    outside = {}
    for i in np.unique(places.facet):
        own = np.flatnonzero(places.facet == i)
        outside[i] = own[~covered(solid.solid, int(i), places.place[own])]
    for k, u in enumerate(moved):
        nodal = solid.elements.nodal_stress(u[:-6].reshape(-1, 3))
        for i, own in outside.items():
            stress[own, k] = mises(solid.linear(nodal, int(i), places.place[own]))
    return {
        **motion(mount, motor), "stress": stress,
        "tension": np.maximum(0.0, -sides * forces[:, :, 2]).T, "shear": np.hypot(forces[:, :, 0], forces[:, :, 1]).T,
        "balance": max(solid.balance(w, u) for w, u in zip(mount.wrenches, moved, strict=True)),
        "tetrahedra": len(solid.solid.tets), "unknowns": solid.kept, "seconds": solid.times,
    }  # fmt: skip


def compared(mount: Drawn) -> dict[str, Any]:
    """Give one mount's entry of the results."""
    began = time.perf_counter()
    plates, places = plates_say(mount)
    solid = solid_says(mount, places, USED)
    entry: dict[str, Any] = {
        "form": mount.form, "number": mount.number, **sizes_of(mount),
        "plates": figures(plates, places, plates), "solid": figures(solid, places, plates),
        "balance": solid["balance"], "tetrahedra": solid["tetrahedra"], "unknowns": solid["unknowns"],
        "seconds": round(time.perf_counter() - began, 1),
    }  # fmt: skip
    entry["plates"]["cut"] = plates["cut"].tolist()
    return rounded(entry)


def figures(found: dict[str, Any], places: Places, plates: dict[str, Any]) -> dict[str, Any]:
    """Give what is stored of one model: six numbers of each kind.

    Stress: the largest round the bolts and along the lines, and that at the plates' own largest place.
    """
    stress, loads = found["stress"], np.arange(6)
    own: dict[str, Any] = {k: found[k].tolist() for k in ("tilt", "move", "roll")}
    for kind in ("ring", "line"):
        rows = stress[places.kind == kind]
        rows = rows[~np.isnan(rows).any(axis=1)]
        own[kind] = rows.max(axis=0).tolist() if len(rows) else [0.0] * 6
    if len(stress):
        worst = plates["stress"].argmax(axis=0)
        own["at_worst"] = [None if np.isnan(v) else float(v) for v in stress[worst, loads]]
        at = np.nan_to_num(stress).argmax(axis=0)
        own["worst_at"] = [[str(places.kind[i]), int(places.facet[i])] for i in at]
    for kind in ("tension", "shear"):
        own[kind] = found[kind].max(axis=0).tolist() if found[kind].size else [0.0] * 6
    return own


def rounded(value: Any) -> Any:
    """Round to six digits, through lists and mappings."""
    if isinstance(value, dict):
        return {k: rounded(v) for k, v in value.items()}
    if isinstance(value, (list, tuple)):
        return [rounded(v) for v in value]
    return float(f"{value:.6g}") if isinstance(value, float) else value


def known(file: Path) -> dict[str, Any]:
    """Give the stored results."""
    if file.exists():
        return json.loads(file.read_text())
    return {
        "made by": "python tests/audit/audit_run.py",
        "mounts": [],
        "refused": [],
        "not meshed": [],
    }


def run(file: Path, each: int, first: int, seconds: float, forms: list[str], face: str) -> None:
    """Go on until every form has so many mounts, or the time is up: one of each form at a time."""
    stored, end = known(file), time.monotonic() + seconds
    stored["face"] = face
    for wanted in range(1, each + 1):
        for form in forms:
            for number in numbers(form, first):
                mine = [m for m in stored["mounts"] if m["form"] == form and m["number"] >= first]
                if len(mine) >= wanted or time.monotonic() > end:
                    break
                if any(number == x[0] for x in (*stored["refused"], *stored["not meshed"])) or any(
                    number == m["number"] for m in mine
                ):
                    continue
                mount = drawn(form, number, face)
                if mount is None:
                    stored["refused"].append([number, form])
                    continue
                try:
                    entry = compared(mount)
                except CannotMesh as error:
                    stored["not meshed"].append([number, form, str(error)])
                    print(form, number, "not meshed:", error, flush=True)
                    continue
                stored["mounts"].append(entry)
                file.write_text(json.dumps(stored) + "\n")
                say(entry)


def plates_anew(file: Path, forms: list[str]) -> None:
    """Bring the stored mounts up to date after a change of the plate model or its softness."""
    stored = known(file)
    for entry in stored["mounts"]:
        entry.update(rounded(ratios(entry["form"], entry["number"])))
        if forms and entry["form"] not in forms:
            continue
        mount = drawn(entry["form"], entry["number"], stored.get("face", ALL_OVER))
        assert mount is not None, f"{entry['form']} {entry['number']} is refused now"
        plates, places = plates_say(mount)
        entry.update(rounded({**sizes_of(mount), "plates": figures(plates, places, plates)}))
        entry["plates"]["cut"] = rounded(plates["cut"].tolist())
    file.write_text(json.dumps(stored) + "\n")


def converge(file: Path) -> None:
    """Solve five mounts with finer meshes and thrice the contact cells as well."""
    stored = known(file)
    for form, number in CONVERGE:
        mount = drawn(form, number)
        assert mount is not None
        plates, places = plates_say(mount)
        own = stored.setdefault("convergence", {}).setdefault(f"{form} {number}", [])
        for sizes, cells in (
            (COARSE, CELLS),
            (USED, CELLS),
            (USED, 3 * CELLS),
            *((s, CELLS) for s in FINER),
        ):
            key = [sizes.bulk, sizes.near, sizes.rim, cells]
            if any(row["sizes"] == key for row in own):
                continue
            found = solid_says(mount, places, sizes, cells)
            row = {
                "sizes": key,
                **figures(found, places, plates),
                **{k: found[k] for k in ("tetrahedra", "unknowns")},
            }
            row["seconds"] = sum(found["seconds"].values())
            own.append(rounded(row))
            file.write_text(json.dumps(stored) + "\n")
            print(form, number, key, "tilt", *(f"{v:.5g}" for v in found["tilt"]), "ring", max(row["ring"]), "line", max(row["line"]),
                  "tension", max(row["tension"]), row["seconds"], "s", flush=True)  # fmt: skip


def say(entry: dict[str, Any]) -> None:
    """Print one mount's ratios, the plates' over the solid's."""
    p, s = entry["plates"], entry["solid"]
    tilt = [
        a / b if abs(b) > 0.2 * max(map(abs, s["tilt"])) else float("nan")
        for a, b in zip(p["tilt"], s["tilt"], strict=True)
    ]
    top = [
        max(a) / max(b) if max(b) else float("nan")
        for a, b in ((p[k], s[k]) for k in ("ring", "line", "tension", "shear"))
    ]
    print(
        f"{entry['form']:18s} {entry['number']} t {1e3 * entry['thickness']:.1f} ring {1e3 * entry['ring']:.1f} span {1e3 * entry['span']:.0f}",
        "tilt", " ".join(f"{x:.3f}" for x in tilt), "| ring line tension shear", " ".join(f"{x:.2f}" for x in top),
        f"| {entry['tetrahedra']} tets {entry['seconds']} s, balance {entry['balance']:.0e}", flush=True,
    )  # fmt: skip


def main() -> None:
    """Read the command line."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--each", type=int, default=4)
    parser.add_argument("--first", type=int, default=FIRST)
    parser.add_argument("--seconds", type=float, default=float("inf"))
    parser.add_argument("--forms", nargs="*", default=list(LAYOUTS))
    parser.add_argument("--file", type=Path, default=RESULTS)
    parser.add_argument(
        "--converge", action="store_true", help="solve five mounts with finer meshes"
    )
    parser.add_argument(
        "--plates", action="store_true", help="work out the plates' side of the stored mounts anew"
    )
    parser.add_argument("--face", default=ALL_OVER, help="width of the frame's face")
    given = parser.parse_args()
    if given.plates:
        plates_anew(given.file, given.forms)
        return
    if given.converge:
        converge(given.file)
        return
    run(given.file, given.each, given.first, given.seconds, given.forms, given.face)


if __name__ == "__main__":
    main()
