"""What came of one spoilt file: an answer, a refusal in words, or a fault of the program.

``reader``, ``checked``, ``card`` and ``drawing`` give the outcome in a word or two; ``Fault`` is raised for
a traceback, a message that is not one line for each mistake, a wrong exit status, too much time.
"""

from __future__ import annotations

import signal
import unicodedata
import warnings
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from click.testing import CliRunner

from mountlimit.cli import main
from mountlimit.data import substances
from mountlimit.drivefile import read
from mountlimit.errors import MountlimitError
from mountlimit.outlines import OutlineError, from_drawing
from mountlimit.resolve import resolve

READ_SECONDS = 2.0  # of one core, for reading a drive file, a card or a drawing
CHECK_SECONDS = 20.0  # of one core, for a check
MEMORY = 1 << 30  # bytes, of the whole process
MOST_LINES = 60
LONGEST_LINE = 1500


class Fault(Exception):
    """A fault of the program."""


class _Late(BaseException):
    """Raised by the clock; no handler for errors catches it."""


def _ring(*_: object) -> None:
    raise _Late


@contextmanager
def clock(seconds: float) -> Iterator[None]:
    """Stop the work inside when it has used its time of one core; waiting for the core does not count."""
    old = signal.signal(signal.SIGPROF, _ring)
    signal.setitimer(signal.ITIMER_PROF, seconds)
    try:
        yield
    except _Late:
        raise Fault(f"too slow: stopped after {seconds:g} s") from None
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, old)


def lines(text: str) -> None:
    """Judge the lines of a refusal."""
    found = text.split("\n")
    if not text.strip() or len(found) > MOST_LINES:
        raise Fault(f"{len(found)} lines")
    for line in found:
        if not line.strip():
            raise Fault("an empty line")
        if len(line) > LONGEST_LINE:
            raise Fault(f"a line of {len(line)} characters: {line[:100]}")
        if any(unicodedata.category(c) in ("Cc", "Cs", "Zl", "Zp") for c in line):
            raise Fault(f"a line with control characters: {line[:200]!r}")
        if "Traceback" in line or "internal fault" in line:
            raise Fault(line)


def _tried(work: Callable[[], Any], seconds: float) -> Any:
    """Give what the work gives, or the refusal; anything else is a fault."""
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        try:
            with clock(seconds):
                return work()
        except MountlimitError as refusal:
            lines(str(refusal))
            return refusal
        except Fault:
            raise
        except BaseException as error:
            if isinstance(error, KeyboardInterrupt):
                raise
            raise Fault(f"{type(error).__name__}: {str(error)[:300]}") from error


def reader(path: Path) -> str:
    """Read a drive file and resolve it."""
    file = _tried(lambda: read(path), READ_SECONDS)
    if isinstance(file, MountlimitError):
        return "refused by the reader"
    found = _tried(lambda: resolve(file), READ_SECONDS)
    return "refused together" if isinstance(found, MountlimitError) else "read"


def checked(path: Path, *more: str) -> str:
    """Run ``mountlimit check`` on a file."""
    with clock(CHECK_SECONDS):
        done = CliRunner().invoke(main, ["check", str(path), *more])
    if done.exception is not None and not isinstance(done.exception, SystemExit):
        error = done.exception
        raise Fault(f"{type(error).__name__}: {str(error)[:300]}") from error
    if done.exit_code == 2:
        if done.stdout:
            raise Fault("an answer beside a refusal")
        lines(done.stderr.removesuffix("\n"))
        return "refused"
    if done.exit_code not in (0, 1) or done.stderr or not done.stdout.strip():
        raise Fault(f"exit status {done.exit_code}: {done.stderr[:300]}")
    stray = {c for c in done.stdout if unicodedata.category(c) in ("Cc", "Cs")} - {"\n"}
    if stray or "nan" in done.stdout.split():
        raise Fault(f"nan or control characters in the answer: {stray}")
    return "answered: over the safe current" if done.exit_code else "answered: within"


def card(path: Path) -> str:
    """Read a material card, or the rows of the family file."""

    def work() -> Any:
        if not path.name.startswith("_"):
            return substances.read_material(path)
        rows = substances.read_families(path)
        return [substances.scrap_from(name, row) for name, row in rows.items()]

    found = _tried(work, READ_SECONDS)
    return "refused" if isinstance(found, MountlimitError) else "read"


def drawing(path: Path) -> str:
    """Read a DXF drawing the way the example that names it does: by its layers."""
    found = _tried(lambda: from_drawing(path, unit="mm", bolt_circle=0.07), READ_SECONDS)
    if isinstance(found, MountlimitError) and not isinstance(found, OutlineError):
        raise Fault(f"not an error of the outline: {found}")
    return "refused" if isinstance(found, MountlimitError) else "read"
