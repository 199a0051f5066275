"""Changes that may buy amps: one file each with ``CHANGES``, found by walking this folder.

A change edits the keys of a drive file and nothing else; what it gains is seen by running the one
pipeline on the edited file (``what_to_change``).
"""

from __future__ import annotations

import importlib
import pkgutil

from ._common import COST_WORDS, COSTS, Change, Edit, made

__all__ = ["CHANGES", "COSTS", "COST_WORDS", "Change", "Edit", "made"]


def _discover() -> tuple[Change, ...]:
    found: list[Change] = []
    for info in sorted(pkgutil.iter_modules(__path__), key=lambda m: m.name):
        module = importlib.import_module(f"{__name__}.{info.name}")
        found += getattr(module, "CHANGES", ())
    return tuple(found)


CHANGES = _discover()
