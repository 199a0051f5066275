"""Mounts at the limits of size; run as a script it solves one and prints what that took.

python limit_cases.py NAME [FRACTION OF THE DEFAULT ELEMENT SIZE]
"""

from __future__ import annotations

import json
import resource
import sys
import time
from pathlib import Path
from typing import Any

import numpy as np
from plate_kit import rectangle

from mountlimit.plates import Contact, Facet, FrameBolt, MotorBolt, PlateModel, solve
from mountlimit.plates.mesh import default_size

RING = 0.03  # m, half the distance of the motor's bolts
LOAD = np.array([300.0, -500.0, 100.0, 0.0, 0.0, 0.0])


def most_memory() -> float:
    """Give the most memory this process has held, MB.

    The system's own account starts anew with a program; the general one keeps what the process that
    started it held.
    """
    status = Path("/proc/self/status")
    if status.exists():
        line = next(x for x in status.read_text().splitlines() if x.startswith("VmHWM"))
        return float(line.split()[1]) / 1024.0
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024.0


def plate(width: float, height: float, thickness: float, **changes: Any) -> Facet:
    """Give an upright steel plate over the origin."""
    parts: dict[str, Any] = {
        "name": "plate",
        "outline": rectangle(width, height) - np.array([0.5 * width, 0.0]),
        "origin": (0.0, 0.0, 0.0),
        "e1": (1.0, 0.0, 0.0),
        "e2": (0.0, 1.0, 0.0),
        "thickness": thickness,
        "elastic_modulus": 2.0e11,
        "poissons_ratio": 0.3,
    }
    return Facet(**{**parts, **changes})


def mount(
    facet: Facet, places: Any, height: float, foot: float | None = None, **changes: Any
) -> PlateModel:
    """Give a plate bolted to the frame at places, pressed on it below ``foot``, and its motor."""
    parts: dict[str, Any] = {
        "facets": [facet],
        "motor_bolts": [
            MotorBolt(facet=0, centre=(x, height + y), hole_diameter=0.006, washer_diameter=0.012)
            for x in (-RING, RING)
            for y in (-RING, RING)
        ],
        "motor_centre": (0.0, height, 0.0),
        "frame_bolts": [
            FrameBolt(
                facet=0, centre=place, hole_diameter=0.008, washer_diameter=0.016,
                normal_stiffness=4e8, tangential_stiffness=2e8,
            )
            for place in places
        ],
    }  # fmt: skip
    if foot is not None:
        width = float(np.ptp(np.asarray(facet.outline)[:, 0]))
        region = rectangle(width, foot) - np.array([0.5 * width, 0.0])
        parts["contacts"] = [Contact(facet=0, side=-1, stiffness=2e12, region=region)]
    return PlateModel(**{**parts, **changes})


def grid(width: float, height: float, across: int, up: int) -> list[tuple[float, float]]:
    """Give an even grid of places over the origin."""
    return [
        (float(x), float(y))
        for x in np.linspace(-0.5 * width, 0.5 * width, across)
        for y in np.linspace(0.02, height, up)
    ]


CASES: dict[str, PlateModel] = {
    "3 m long": mount(plate(0.2, 3.0, 0.01), grid(0.16, 0.16, 2, 2), 2.8, 0.2),
    "3 m square": mount(plate(3.0, 3.0, 0.01), grid(2.8, 0.16, 2, 2), 2.8, 0.2),
    "sheet of 0.5 mm": mount(plate(0.12, 0.2, 0.0005), [(-0.04, 0.02), (0.04, 0.02)], 0.15, 0.04),
    "40 bolts": mount(plate(0.4, 0.3, 0.008), grid(0.36, 0.14, 10, 4), 0.24, 0.16),
    "washers 0.05 mm from the edge": mount(
        plate(0.12, 0.2, 0.008), [(-0.05195, 0.02), (0.05195, 0.02)], 0.15, 0.04
    ),
}


def main(name: str, finer: float) -> None:
    """Solve one case and print figures."""
    model = CASES[name]
    solution = solve(model, None if finer == 1.0 else finer * default_size(model))
    at = np.asarray(model.motor_centre) + np.array([0.0, 0.0, 0.05])
    response = solution.response(LOAD, at)
    found = {
        "rotation": response.rotation.tolist(),
        "balance": response.balance_residual,
        "elements": len(solution.system.mesh.triangles),
        "megabytes": most_memory(),
        "seconds": time.process_time(),
    }
    print(json.dumps(found))


if __name__ == "__main__":
    main(sys.argv[1], float(sys.argv[2]) if len(sys.argv) > 2 else 1.0)
