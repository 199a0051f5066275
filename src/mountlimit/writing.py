"""Files are written whole or not at all: to a temporary name beside the target, then renamed."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

from .errors import MountlimitError


def write_whole(path: Path, content: str | bytes) -> None:
    """Write a file so that the old one or the new one is there, never half of one.

    Raises
    ------
    MountlimitError
        when the folder is missing or cannot be written, or the disk is full.
    """
    temporary = ""
    try:
        handle, temporary = tempfile.mkstemp(
            dir=path.parent, prefix=f".{path.name}.", suffix=".part"
        )
        with os.fdopen(handle, "wb") as file:
            file.write(content.encode() if isinstance(content, str) else content)
            file.flush()
            os.fsync(file.fileno())
        mask = os.umask(0)
        os.umask(mask)
        os.chmod(temporary, 0o666 & ~mask)
        os.replace(temporary, path)
    except OSError as error:
        if temporary and os.path.exists(temporary):
            os.unlink(temporary)
        raise MountlimitError(f"{path}: cannot be written: {error.strerror}") from None
