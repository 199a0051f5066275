"""Files are written whole or not at all: to a temporary name beside the target, then renamed."""

from __future__ import annotations

import os
import stat
import tempfile
import time
from pathlib import Path

from .errors import MountlimitError

LEFT_OVER = 10.0  # s, a temporary file this old that nobody holds is left from a killed run

written: list[str] = []  # every file written so far, as it was named


def write_whole(path: Path, content: str | bytes) -> None:
    """Write a file so that the old one or the new one is there, never half of one.

    A link is followed; a file that was there keeps its permissions.  What a killed run left
    beside the target is cleared away.

    Raises
    ------
    MountlimitError
        when the folder is missing or cannot be written, the disk is full, or something else than
        an ordinary file bears the name.
    """
    raw = content.encode("utf-8", "replace") if isinstance(content, str) else content
    target = must_take(path)
    temporary = ""
    try:
        mark = _mark(target)
        handle, temporary = tempfile.mkstemp(dir=target.parent, prefix=mark, suffix=".part")
        with os.fdopen(handle, "wb") as file:
            _hold(handle)
            file.write(raw)
            file.flush()
            os.fsync(file.fileno())
        os.chmod(temporary, _permissions(target))
        os.replace(temporary, target)
        temporary = ""
        written.append(str(path))
        _clear(target.parent, mark)
    except OSError as error:
        raise MountlimitError(f"{path}: cannot be written: {error.strerror}") from None
    finally:
        if temporary:
            Path(temporary).unlink(missing_ok=True)


def must_take(path: Path) -> Path:
    """Give where a file will really stand, before long work is done for it.

    Raises
    ------
    MountlimitError
        when it can be seen already that the file cannot be written.
    """
    try:
        target = Path(os.path.realpath(path))
        kind = target.lstat().st_mode if os.path.lexists(target) else stat.S_IFREG
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "not a file name"
        raise MountlimitError(f"{path}: cannot be written: {reason}") from None
    problem = ""
    if stat.S_ISDIR(kind):
        problem = "it is a folder"
    elif stat.S_ISLNK(kind):
        problem = "it is a link to itself"
    elif not stat.S_ISREG(kind):
        problem = "it is a device or a pipe"
    elif not target.parent.is_dir():
        problem = f"there is no folder {target.parent}"
    elif not os.access(target.parent, os.W_OK):
        problem = f"the folder {target.parent} is read-only"
    elif target.exists() and not os.access(target, os.W_OK):
        problem = "it is read-only"
    else:
        problem = _refused(target.parent)
    if problem:
        raise MountlimitError(f"{path}: cannot be written: {problem}")
    return target


def _refused(folder: Path) -> str:
    """Say why a folder takes no file, by a nameless one."""
    try:
        tempfile.TemporaryFile(dir=folder).close()
    except OSError as error:
        return error.strerror or "it takes no file"
    return ""


def _mark(target: Path) -> str:
    """Give the start of the target's temporary names, short enough for any file system."""
    return f".{target.name[:40]}."


def _permissions(target: Path) -> int:
    if target.exists():
        return stat.S_IMODE(target.stat().st_mode)
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask


def _hold(handle: int) -> bool:
    """Tell other runs that this file is in use; False when another run holds it."""
    try:
        import fcntl
    except ImportError:  # Windows: an open file cannot be taken away there
        return True
    try:
        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        return False
    except OSError:  # a file system without locks: the age alone must do
        return True
    return True


def _clear(folder: Path, mark: str) -> None:
    """Take away what killed runs left beside the target."""
    for left in folder.iterdir():
        if not (left.name.startswith(mark) and left.name.endswith(".part")):
            continue
        try:
            if time.time() - left.stat().st_mtime < LEFT_OVER:
                continue
            with left.open("rb") as file:
                nobodys = _hold(file.fileno())
            if nobodys:
                left.unlink()
        except OSError:
            continue
