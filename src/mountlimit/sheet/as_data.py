"""The sheet as JSON-ready data: the very blocks that are printed, beside the result record."""

from __future__ import annotations

from dataclasses import fields, is_dataclass
from typing import Any

from .blocks import Sheet

SCHEMA = "mountlimit-sheet-1"
PAIR_SCHEMA = "mountlimit-compare-sheet-1"


def record(sheet: Sheet, result: dict[str, Any], schema: str = SCHEMA) -> dict[str, Any]:
    """Give the sheet with the result record (SI) it was made from; pictures by their words."""
    return {"schema": schema, "result": result, **_plain(sheet)}


def _plain(thing: Any) -> Any:
    if is_dataclass(thing):
        found = {f.name: _plain(getattr(thing, f.name)) for f in fields(thing) if f.name != "svg"}
        return (
            found if isinstance(thing, Sheet) else {"kind": type(thing).__name__.lower(), **found}
        )
    if isinstance(thing, tuple):
        return [_plain(one) for one in thing]
    return thing
