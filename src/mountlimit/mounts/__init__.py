"""Mount forms: one file each, found by walking this folder."""

from __future__ import annotations

import importlib
import pkgutil

from ..model import MountForm


def _discover() -> dict[str, MountForm]:
    found: dict[str, MountForm] = {}
    for info in sorted(pkgutil.iter_modules(__path__), key=lambda m: m.name):
        module = importlib.import_module(f"{__name__}.{info.name}")
        if hasattr(module, "FORM"):
            found[module.FORM] = module
    return found


FORMS = _discover()
