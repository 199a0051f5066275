"""Opens a DXF drawing within bounds: size, number of things drawn, and units; never a traceback."""

from __future__ import annotations

import logging
import stat
from io import BytesIO
from pathlib import Path
from typing import Any

from .error import Fault, OutlineError

KEY = "mount.drawing"
LARGEST_FILE = 20_000_000  # bytes
MOST_ENTITIES = 20_000
UNITS = {"mm": 1e-3, "cm": 1e-2, "m": 1.0, "inch": 0.0254, "foot": 0.3048}  # m
HEADER_UNITS = {1: "inch", 2: "foot", 4: "mm", 5: "cm", 6: "m"}  # $INSUNITS, DXF reference
_BINARY = b"AutoCAD Binary DXF"
_EXPORT = "export it as DXF from your drawing program"


def fault(name: str, expected: str, suggestion: str = "") -> OutlineError:
    """Give the error of a drawing."""
    return OutlineError(Fault(KEY, name, expected, suggestion))


def opened(path: Path) -> tuple[Any, list[str]]:
    """Read a drawing; give the document and what had to be passed over in it.

    Raises
    ------
    OutlineError
        when it is missing, no DXF, damaged, or beyond the bounds.
    """
    raw = _raw(path)
    binary = raw.startswith(_BINARY)
    if not binary:
        _look(path.name, raw)
    log = logging.getLogger("ezdxf")
    if not log.handlers:
        log.addHandler(logging.NullHandler())  # its warnings are not for our user
    import ezdxf
    from ezdxf import recover

    try:
        if binary:
            document = ezdxf.readfile(str(path))
            auditor = document.audit()
        else:
            document, auditor = recover.read(BytesIO(raw))
        count = len(document.modelspace())
    except Exception:  # a damaged file can raise anything in a reader this large
        raise fault(path.name, "is damaged and cannot be read as DXF", _EXPORT) from None
    if count > MOST_ENTITIES:
        raise too_many(path.name, f"{count}")
    flaws = [*auditor.errors, *auditor.fixes]
    return document, [f"flaws of the drawing passed over: {flaws[0].message}"] if flaws else []


def too_many(name: str, count: str) -> OutlineError:
    """Give the error of a drawing with too much in it."""
    return fault(name, f"has {count} things drawn; expected at most {MOST_ENTITIES}",
                 "keep only the plate in the drawing")  # fmt: skip


def _raw(path: Path) -> bytes:
    try:
        kind = path.stat().st_mode
        if not stat.S_ISREG(kind):
            words = "this is a folder" if stat.S_ISDIR(kind) else "is no ordinary file"
            raise fault(str(path), words, _near(path))
        with path.open("rb") as file:
            raw = file.read(LARGEST_FILE + 1)
        if len(raw) > LARGEST_FILE:
            size = max(path.stat().st_size, len(raw)) / 1e6
            raise fault(path.name, f"is {size:.0f} MB; expected at most 20 MB", "keep only the plate in the drawing")  # fmt: skip
        return raw
    except (FileNotFoundError, NotADirectoryError, ValueError):  # the last: no name for a file
        raise fault(str(path), "no such file", _near(path)) from None
    except OSError as error:
        raise fault(str(path), f"cannot be read: {error.strerror}") from None


def _near(path: Path) -> str:
    import difflib

    try:
        names = [p.name for p in path.parent.glob("*.[dD][xX][fF]")]
    except (OSError, ValueError):  # no folder, or one that cannot be listed
        names = []
    near = difflib.get_close_matches(path.name, names, 1)
    return f"did you mean {near[0]}?" if near else "the name is taken from the drive file's folder"


def _look(name: str, raw: bytes) -> None:
    """Refuse what is no DXF text, is cut short, or holds too much, before the parser sees it."""
    if raw.startswith(b"AC10"):
        raise fault(name, "is a DWG drawing; expected DXF", _EXPORT)
    if b"\0" in raw[:4096] or b"SECTION" not in raw[:65536]:
        raise fault(name, "is not a DXF drawing", _EXPORT)
    if b"EOF" not in raw[-64:].upper():
        raise fault(name, "is cut short: its end mark EOF is missing", "export it again")
    if b"ENTITIES" not in raw:
        raise fault(name, "holds no lines, arcs or curves", _EXPORT)
    count = sum(1 for code in raw.splitlines()[::2] if code.strip() == b"0")
    if count > 2 * MOST_ENTITIES:  # table entries and corners of old polylines count here
        raise too_many(name, f"more than {2 * MOST_ENTITIES}")


def header_unit(document: Any) -> str:
    """Give the unit the drawing's header states; empty when it states none that we know."""
    code = document.header.get("$INSUNITS", 0)
    return HEADER_UNITS.get(code, "") if isinstance(code, int) else ""
