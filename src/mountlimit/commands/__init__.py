"""One file for each command: a module here with ``COMMAND`` (a click command) is found by itself."""

from __future__ import annotations

import pkgutil
from importlib import import_module

import click


def found() -> list[click.Command]:
    """Give every command of this folder, in the order of their names."""
    names = sorted(m.name for m in pkgutil.iter_modules(__path__) if not m.name.startswith("_"))
    return [import_module(f"{__name__}.{name}").COMMAND for name in names]
