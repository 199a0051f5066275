"""The answer to "how thick must the plate be", as text and as JSON-ready data."""

from __future__ import annotations

import math
from typing import Any

from rich.console import Console

from .. import units
from ..drivefile import fields_for
from ..model import Drive
from ..thickness import AtStock, Thinnest
from .quantities import number, quantity
from .table import heading, new_table
from .words import amperes, upto

SHOWN_POINTS = 9


def write(answers: list[Thinnest], wanted: float, drive: Drive, console: Console) -> None:
    """Print the thinnest plate of each material, then the curve of the first."""
    console.print(
        f"Thinnest plate that carries {wanted:g} A on every safe limit, everything else as in the file.\n"
        f"Thickness here: {meaning(drive)}.\n"
    )
    table = new_table()
    for name in ("material", "thinnest", "set by", "next stock", "mass"):
        table.add_column(name, justify="right" if name in ("thinnest", "mass") else "left")
    for a in answers:
        mass = "-" if a.at_stock is None else units.show(a.at_stock.mass, "mass", drive.system)
        table.add_row(a.material.id, _length(a.thickness, drive.system), a.set_by, _stock(a), mass)
    console.print(table)
    console.print()
    for a in answers:
        if a.at_stock:
            console.print(_then(a, a.at_stock))
    for a in answers:
        if a.why_not:
            best = (
                f" The best any plate gives is {amperes(a.best, down=True)} A."
                if math.isinf(a.thickness)
                else ""
            )
            console.print(f"{a.material.id}: {a.why_not}.{best}")
        if a.material.scrap:
            console.print(f"{a.material.id}: {a.material.note}")
    for a in answers:
        if a.curve and (math.isfinite(a.thickness) or a is answers[0]):
            _curve(a, wanted, drive, console)
    console.print(
        "\nMass is of the plate cut to the outline the file describes, about. Check the whole drive again after the change."
    )


def _then(a: Thinnest, then: AtStock) -> str:
    """Say what the next stock size carries, what gives first there, and between which currents."""
    safe = f"safe to {amperes(then.safe.safe, down=True)} A ({then.safe.check.name})"
    words = f"{a.material.id}, {(a.stock_metric or 0.0) * 1000:g} mm: {safe}; "
    if (first := then.gives) is None or first.gives is None:
        return f"{words}nothing gives below {amperes(then.safe.reach, down=True)} A."
    band = f"{upto(first.gives_low, first.reach)} to {upto(first.gives_high, first.reach)}"
    return f"{words}{first.check.name} gives first at about {amperes(first.gives)} A ({band})."


def meaning(drive: Drive) -> str:
    """Say which dimension of the mount is made thicker."""
    return fields_for(drive.mount.form)["mount.thickness"].meaning


def _length(value: float, system: str) -> str:
    return "none" if math.isinf(value) else units.show_both(value, "length", system)


def _stock(a: Thinnest) -> str:
    metric = "-" if a.stock_metric is None else f"{a.stock_metric * 1000:g} mm"
    inch = "-" if a.stock_inch is None else units.show(a.stock_inch, "length", "inch")
    return f"{metric} / {inch}"


def _curve(a: Thinnest, wanted: float, drive: Drive, console: Console) -> None:
    near = sorted(a.curve, key=lambda p: abs(math.log(max(p.safe, 1e-3) / wanted)))[:SHOWN_POINTS]
    heading(console, f"\n{a.material.id}: safe current by stock thickness")
    table = new_table()
    for name in ("thickness", "safe to", "set by", "gives at about", "what gives"):
        table.add_column(name, justify="left" if name in ("set by", "what gives") else "right")
    for point in sorted(near, key=lambda p: p.thickness):
        safe, gives = (
            "over" if c is None or math.isinf(c) else f"{amperes(c, down=down)} A"
            for c, down in ((point.safe, True), (point.gives, False))
        )
        table.add_row(
            units.show_both(point.thickness, "length", drive.system),
            safe, point.check, gives, point.gives_check,
        )  # fmt: skip
    console.print(table)


def record(answers: list[Thinnest], wanted: float, drive: Drive) -> dict[str, Any]:
    """Give the answer as JSON-ready data in SI."""
    return {
        "schema": "mountlimit-thickness-1", "wanted": quantity(wanted, "A"),
        "thickness_is": meaning(drive),
        "materials": [_record(a) for a in answers],
    }  # fmt: skip


def _record(a: Thinnest) -> dict[str, Any]:
    return {
        "material": a.material.id, "unit": "m", "thickness": number(a.thickness), "set_by": a.set_by,
        "stock_metric": a.stock_metric, "stock_inch": a.stock_inch,
        "at_stock_metric": a.at_stock and _record_stock(a.at_stock), "why_not": a.why_not,
        "best_safe": quantity(a.best, "A"),
        "curve": [
            {
                "thickness": p.thickness, "safe": number(p.safe), "check": p.check,
                "gives": number(p.gives), "gives_check": p.gives_check,
            }
            for p in a.curve
        ],
    }  # fmt: skip


def _record_stock(then: AtStock) -> dict[str, Any]:
    first = then.gives
    return {
        "mass": quantity(then.mass, "kg"), "safe": quantity(then.safe.safe, "A"),
        "safe_set_by": then.safe.check.name, "gives_first": first and first.check.name,
        "gives": quantity(first.gives if first else None, "A"),
        "gives_low": quantity(first.gives_low if first else None, "A"),
        "gives_high": quantity(first.gives_high if first else None, "A"),
    }  # fmt: skip
