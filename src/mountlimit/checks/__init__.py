"""The checks: one file each with one or more ``Check`` objects, found by walking this folder."""

from __future__ import annotations

import importlib
import pkgutil

from ..case import Check


def _discover() -> tuple[Check, ...]:
    found: list[Check] = []
    for info in sorted(pkgutil.iter_modules(__path__), key=lambda m: m.name):
        module = importlib.import_module(f"{__name__}.{info.name}")
        found += getattr(module, "CHECKS", ())
    return tuple(found)


CHECKS = _discover()
BY_NAME = {c.name: c for c in CHECKS}
