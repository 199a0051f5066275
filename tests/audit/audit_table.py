"""Tables of the audit: `python tests/audit/audit_table.py [results.json]`; plates over solid, by form.

A load counts for a quantity where the solid's own value is at least a fifth of its largest over the
mount's six loads: next to nothing over next to nothing says nothing.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Iterable
from pathlib import Path
from typing import Any

import numpy as np

RESULTS = Path(__file__).parent / "results.json"
FRESH = Path(__file__).parent / "results_fresh.json"
NARROW = Path(__file__).parent / "narrow.json"  # on a face no wider than the washers
EACH = 4  # mounts of every form, at least
COUNTS = 0.2  # share of a mount's largest value from which a load counts
QUANTITIES = ("tilt", "move", "stress", "ring", "line", "tension", "shear")


def mounts(file: Path = RESULTS) -> list[dict[str, Any]]:
    """Give the stored mounts."""
    return json.loads(file.read_text())["mounts"] if file.exists() else []


def value(side: dict[str, Any], quantity: str) -> np.ndarray:
    """Give six numbers of plates or solid; stress is the larger of rings and lines, as the check has it."""
    if quantity == "stress":
        return np.maximum(side["ring"], side["line"])
    return np.abs(np.array(side[quantity], float))


def ratios(mount: dict[str, Any], quantity: str) -> np.ndarray:
    """Give plates over solid of the loads that count, (n,)."""
    plates, solid = (value(mount[k], quantity) for k in ("plates", "solid"))
    counts = solid > COUNTS * solid.max(initial=0.0)
    if not solid.max(initial=0.0) > 0.0:
        return np.empty(0)
    return plates[counts] / solid[counts]


def least(mount: dict[str, Any], quantity: str) -> float:
    """Give the most optimistic ratio of a mount, nan without any."""
    found = ratios(mount, quantity)
    return float(found.min()) if found.size else float("nan")


GUARDS = {"tilt": "softness", "move": "softness", "stress": "local_stress"}
LOW, LIKELY, HIGH = range(3)


def guarded(mount: dict[str, Any], quantity: str, end: int = HIGH) -> float:
    """Give the same with the program's own ratio on it: at its high end as *safe to* takes it."""
    return least(mount, quantity) * float(mount[GUARDS[quantity]][end])


def spread(found: Iterable[dict[str, Any]], quantity: str) -> list[float]:
    """Give min, 5 %, median, 95 %, max over mounts and loads."""
    every = [ratios(m, quantity) for m in found]
    flat = np.concatenate([np.empty(0), *every])
    return (
        np.quantile(flat, [0.0, 0.05, 0.5, 0.95, 1.0]).tolist() if flat.size else [float("nan")] * 5
    )


def main(file: Path) -> None:
    """Print the tables."""
    every = mounts(file)
    forms = list(dict.fromkeys(m["form"] for m in every))
    for quantity in QUANTITIES:
        print(f"\n{quantity}: plates over solid (mounts), min / 5 % / median / 95 % / max")
        for form in [*sorted(forms), "all"]:
            own = [m for m in every if form in (m["form"], "all")]
            if form == "all":
                own = every
            print(
                f"  {form:18s} {len(own):3d}  "
                + "  ".join(f"{v:.3f}" for v in spread(own, quantity))
            )
    print(
        "\noptimistic beyond 5 % in tilt or 10 % in stress, and with the program's ratio (likely, high):"
    )
    for m in sorted(every, key=lambda m: least(m, "tilt")):
        tilt, stress = least(m, "tilt"), least(m, "stress")
        if tilt < 0.95 or stress < 0.90:
            ends = " ".join(
                f"{q} {least(m, q):.3f} -> {guarded(m, q, LIKELY):.2f} {guarded(m, q):.2f}"
                for q in ("tilt", "stress")
            )
            t = m["thickness"]
            print(
                f"  {m['form']:18s} {m['number']} {ends} t/ring {t / m['ring']:.1f} span/t {m['span'] / t:.1f} E {m['modulus'] / 1e9:.1f}"
            )
    for q in ("tilt", "stress"):
        print(
            f"{q}, least of every mount at the high end: {min(guarded(m, q) for m in every if not np.isnan(least(m, q))):.3f}"
        )


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else RESULTS)
