"""A worked calculation as plain JSON-ready data, SI values with the unit beside."""

from __future__ import annotations

from typing import Any

from ..units import KINDS
from ..why import Worked
from ..worked import Step
from .quantities import quantity
from .record import both_routes


def record(work: Worked) -> dict[str, Any]:
    """Give every step with its equation, the numbers put in, the result and its source."""
    row = work.row
    return {
        "check": work.limit.check.name, "station": row.station, "case": work.case,
        "current": {"value": work.current, "unit": "A"}, "ends": work.ends,
        "dead_stop_from": quantity(work.stop_from, "rad/s"),
        "route": work.route, "side_by_side": both_routes(work.both),
        "steps": [_step(s) for s in work.steps],
        "demand": float(row.demand), "capacity": float(row.capacity), "unit": KINDS[row.quantity].si,
        "design_factor": work.limit.factor, "utilisation": work.utilisation,
    }  # fmt: skip


def _step(step: Step) -> dict[str, Any]:
    return {
        "number": step.index, "kind": step.kind, "title": step.title, "equation": step.equation,
        "inputs": [
            {
                "symbol": e.symbol.letter, "value": e.value, "unit": e.symbol.unit, "key": e.key,
                "origin": e.origin, "source": e.source, "from_step": e.step,
            }
            for e in step.entries
        ],
        "symbol": step.result.letter, "value": step.value, "unit": step.result.unit, "source": step.source,
    }  # fmt: skip
