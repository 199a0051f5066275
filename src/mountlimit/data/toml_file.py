"""Reads TOML within bounds: size, depth, number of values, size of whole numbers; never a traceback.

The parser of the standard library needs memory and time that grow with the square of the parts of
a dotted name (50 000 parts: 37 s, 9 GB), so that names are looked at before it sees the text.
"""

from __future__ import annotations

import re
import stat
import tomllib
from pathlib import Path
from typing import Any

from ..errors import MountlimitError

LARGEST_FILE = 1_000_000  # bytes
MOST_PARTS = 12  # of a name written with dots
DEEPEST = 12  # tables and lists inside one another
MOST_VALUES = 50_000
LARGEST_INTEGER = 2**63  # TOML 1.0: 64 bits

_QUOTE = re.compile(r'"""|\'\'\'|["\'#]')
_END = {  # from behind the opening mark to behind the closing one
    '"""': re.compile(r'(?:[^"\\]|\\.|"(?!""))*+"{3,5}', re.DOTALL),
    "'''": re.compile(r"(?:[^']|'(?!''))*+'{3,5}"),
    '"': re.compile(r'(?:[^"\\\n]|\\[^\n])*+"'),
    "'": re.compile(r"[^'\n]*+'"),
    "#": re.compile(r"[^\n]*+"),
}
_APART = re.compile(r"[^\w.\- \t]")


class NotToml(MountlimitError):
    """A file that is no TOML within the bounds: what is wrong with it, and a way out."""

    def __init__(self, problem: str, suggestion: str = "", value: str = "") -> None:
        self.problem, self.suggestion, self.value = problem, suggestion, value
        super().__init__(problem)


def contents(path: Path, largest: int = LARGEST_FILE) -> bytes:
    """Give the bytes of an ordinary file.

    Raises
    ------
    NotToml
        for a folder, a device or a pipe, and for a file of more than ``largest`` bytes.
    OSError
        when it is not there or cannot be read; ValueError where the name can be no file's.
    """
    state = path.stat()
    if stat.S_ISDIR(state.st_mode):
        raise NotToml("this is a folder")
    if not stat.S_ISREG(state.st_mode):
        raise NotToml("is a device or a pipe; expected an ordinary file")
    with path.open("rb") as file:
        raw = file.read(largest + 1)  # a file may grow, or be larger than it says
    if len(raw) > largest:
        size = f"{max(state.st_size, len(raw))} bytes"
        raise NotToml(f"is too large; expected at most {largest / 1e6:g} MB", value=size)
    return raw


def parsed(raw: bytes) -> dict[str, Any]:
    """Give the tables of a TOML text.

    Raises
    ------
    NotToml
        when it is no UTF-8 text, no TOML, or goes beyond the bounds.
    """
    try:
        text = raw.decode("utf-8-sig")  # some editors put a mark in front
        _look_at_names(text)
        found = tomllib.loads(text)
    except UnicodeDecodeError:
        raise NotToml("is not UTF-8 text", "save it as plain text") from None
    except tomllib.TOMLDecodeError as error:
        raise NotToml(f"is not valid TOML: {error}", _hint(error)) from None
    except RecursionError:
        raise NotToml("is nested too deeply") from None
    except ValueError:  # what Python itself refuses to read: a number of thousands of digits
        raise NotToml("is not valid TOML: a number has too many digits") from None
    _look_at_values(found)
    return found


def _hint(error: tomllib.TOMLDecodeError) -> str:
    if "Invalid value" in str(error) or "after" in str(error):
        return 'quantities stand in quotes, for example thickness = "6 mm"'
    return ""


def _look_at_names(text: str) -> None:
    """Refuse a name of too many parts; what stands in quotes or in a comment does not count."""
    bare, at = [], 0
    while found := _QUOTE.search(text, at):
        bare.append(text[at : found.start()])
        end = _END[found[0]].match(text, found.end())
        if end is None:  # never closed: no TOML from here on
            break
        bare.append("\n" if found[0] == "#" else "q")
        at = end.end()
    else:
        bare.append(text[at:])
    for name in _APART.split("".join(bare)):
        if name.count(".") >= MOST_PARTS:
            raise NotToml(f"holds a name of more than {MOST_PARTS} parts joined by dots")


def _look_at_values(document: dict[str, Any]) -> None:
    """Refuse what is nested too deeply, too many values, and whole numbers beyond 64 bits."""
    count, waiting = 0, [(document, 0)]
    while waiting:
        value, depth = waiting.pop()
        count += 1
        if isinstance(value, dict | list):
            if depth > DEEPEST:
                raise NotToml("is nested too deeply")
            inside = value.values() if isinstance(value, dict) else value
            waiting += [(v, depth + 1) for v in inside]
        elif isinstance(value, int) and not -LARGEST_INTEGER <= value < LARGEST_INTEGER:
            raise NotToml("is not valid TOML: a whole number is too large")
        if count + len(waiting) > MOST_VALUES:
            raise NotToml(f"holds more than {MOST_VALUES} values")
