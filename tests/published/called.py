"""Which functions are called while something runs."""

from __future__ import annotations

import importlib
import pkgutil
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import mountlimit.formulas as package
from mountlimit.worked import FORMULAS

HERE = str(Path(__file__).parent)
for _module in pkgutil.iter_modules(package.__path__):
    importlib.import_module(f"{package.__name__}.{_module.name}")
WRAPPER = next(iter(FORMULAS.values())).__code__  # what @formula puts round each of them


@contextmanager
def calls(from_here: bool = False) -> Iterator[set[Any]]:
    """Give a set that gathers the code of everything called inside the block.

    ``from_here``: of what the tests of this folder call themselves only; what that calls in turn may
    change with answers kept from before.
    """
    codes: set[Any] = set()

    def seen(frame: Any, _event: str, _: Any) -> None:  # no local trace: entries of functions only
        caller = frame.f_back
        if caller and caller.f_code is WRAPPER:
            caller = caller.f_back
        if not from_here or (caller and caller.f_code.co_filename.startswith(HERE)):
            codes.add(frame.f_code)

    before = sys.gettrace()
    sys.settrace(seen)
    try:
        yield codes
    finally:
        sys.settrace(before)


def function(name: str) -> Any:
    """Give a function of the program by module and name."""
    module, function = name.split(".")
    return FORMULAS.get(name) or getattr(importlib.import_module(f"mountlimit.{module}"), function)


def code(name: str) -> Any:
    """Give the code of a function by module and name."""
    found = function(name)
    return getattr(found, "__wrapped__", found).__code__
