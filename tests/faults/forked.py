"""Runs commands with outputs that fail, each in a child of its own, without loading the packages anew.

    python tests/faults/forked.py < cases.json > outcomes.json

A case: ``args``; ``out`` and ``err``: "file" (kept), "full", "closed", "no reader"; ``cwd``; ``env``; ``fsize``
(no file may grow beyond it, as on a full disk); ``user`` (an ordinary user, where the run is root's).
"""

from __future__ import annotations

import io
import json
import os
import resource
import sys
import tempfile
from typing import Any

NOBODY = 65534


def _point(number: int, way: str, kept: Any) -> None:
    """Make a standard output what the case says."""
    if way == "closed":
        os.close(number)
    elif way == "full":
        os.dup2(os.open("/dev/full", os.O_WRONLY), number)
    elif way == "no reader":
        near, far = os.pipe()
        os.close(near)
        os.dup2(far, number)
    else:
        os.dup2(kept.fileno(), number)


def _unbuffered(number: int) -> Any:
    return io.TextIOWrapper(io.FileIO(number, "w", closefd=False), write_through=True)


def _child(case: dict[str, Any], out: Any, err: Any) -> None:
    from mountlimit.cli import main

    os.chdir(case["cwd"])
    os.environ |= case.get("env", {})
    tempfile.tempdir = None
    ways = (case.get("out", "file"), case.get("err", "file"))
    _point(1, ways[0], out)
    _point(2, ways[1], err)
    # as the interpreter sets them up
    sys.stdout = None if ways[0] == "closed" else open(1, "w", closefd=False)  # noqa: SIM115  # type: ignore[assignment]
    sys.stderr = None if ways[1] == "closed" else _unbuffered(2)  # type: ignore[assignment]
    if "fsize" in case:
        resource.setrlimit(resource.RLIMIT_FSIZE, (case["fsize"],) * 2)
    if case.get("user") and os.geteuid() == 0:
        os.setuid(NOBODY)
    status = 1
    try:
        main(case["args"])
    except SystemExit as end:
        status = end.code if isinstance(end.code, int) else int(end.code is not None)
    except BaseException:
        import traceback

        traceback.print_exc()
    try:  # what the interpreter does at its end
        for stream in (sys.stdout, sys.stderr):
            if stream is not None:
                stream.flush()
    except OSError:
        status = 120
    os._exit(status)


def run(case: dict[str, Any]) -> dict[str, Any]:
    """Run one case; give the exit status and what was kept of both outputs."""
    with tempfile.TemporaryFile() as out, tempfile.TemporaryFile() as err:
        child = os.fork()
        if child == 0:
            _child(case, out, err)
        _, status = os.waitpid(child, 0)
        out.seek(0)
        err.seek(0)
        return {
            "status": os.waitstatus_to_exitcode(status),
            "out": out.read().decode("utf-8", "replace"), "err": err.read().decode("utf-8", "replace"),
        }  # fmt: skip


if __name__ == "__main__":
    import traceback  # noqa: F401

    from click.testing import CliRunner

    from mountlimit.cli import main

    CliRunner().invoke(
        main, ["new", "nothing"]
    )  # loads what an ordinary user may not be able to read

    json.dump([run(case) for case in json.load(sys.stdin)], sys.stdout)
