"""Writes keys into a drive file as a user would, and reads it again."""

from __future__ import annotations

import copy
from collections.abc import Mapping
from typing import Any

from conftest import toml_text
from mountlimit.drivefile import DriveFile, parse


def rewritten_by_hand(document: Mapping[str, Any], keys: Mapping[str, Any], name: str) -> DriveFile:
    """Put the keys of a change into a TOML document, write it and read it."""
    data = copy.deepcopy(dict(document))
    for key, value in keys.items():
        section, _, last = key.partition(".")
        table = data.setdefault(section, {})
        if value is None:
            table.pop(last, None)
        else:
            table[last] = value
    return parse(toml_text(data).encode(), name)
