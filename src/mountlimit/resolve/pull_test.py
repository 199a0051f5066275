"""A pull by hand: what was read, on which mount, and with what is known of that mount now."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

from ..drivefile import DriveFile
from ..model import ChainDrive, Drive, PullTest, Range
from ..picking import Picker
from ..worked import Value

SMALLEST = 0.1  # of a reading, that its low end keeps whatever its error
SAME = 0.1  # likely values nearer than this (as a share) are of one uncertain input
Resolve = Callable[[DriveFile, Mapping[str, float]], Drive]
READINGS = ("pull_test.movement", "pull_test.tip_movement")


def readings(picker: Picker, chain: ChainDrive) -> dict[str, Any] | None:
    """Give what a pull test read, with its errors as ranges; None without one."""
    told = any(k in picker.given for k in ("pull_test.force", *READINGS))
    if not told or _other_form(picker):
        return None
    if "pull_test.force" not in picker.given:
        picker.mistake(
            "pull_test.force", "is missing: the pull that moved the mark", "for example '200 N'"
        )
        return None
    if not any(k in picker.given for k in READINGS):
        picker.mistake("pull_test.movement", "is missing: give movement, tip_movement or both")
        return None
    if READINGS[1] in picker.given and "pull_test.stick" not in picker.given:
        picker.mistake(
            "pull_test.stick", "is missing: tip_movement was read at the end of a stick",
            "for example stick = '500 mm'",
        )  # fmt: skip
        return None
    if "mount.softness" in picker.given:
        picker.mistake("mount.softness", "is what the pull test finds out", "leave one of them out")
    picker.ranges.pop("mount.softness", None)
    share, error = picker.number("pull_test.force_error"), picker.number("pull_test.reading_error")
    ratio = picker.number("pull_test.model_error")
    wide = picker.ranges.get("pull_test.model_error")
    spread = 0.0 if wide is None else (wide.high - wide.low) / 2
    marks = [_reading(picker, k, error) if k in picker.given else None for k in READINGS]
    direction = picker.card("pull_test.direction")
    angle = chain.pulls[0][1]
    if direction:
        angle = Value(direction[1], "pull_test.direction", "given", direction[0])
    return {
        "force": _ranged(picker, "pull_test.force", float(share)),
        "angle": angle, "movement": marks[0], "tip_movement": marks[1],
        "stick": picker.optional("pull_test.stick"),
        "on_motor": picker.card("pull_test.stick_on") != "shaft", "reading_error": error, "ratio_error": ratio,
        "ratio_spread": Value(spread, "pull_test.model_error", "derived", "half its range"),
    }  # fmt: skip


def _other_form(picker: Picker) -> bool:
    """Say that the mount of the test was of another form, so that it tells nothing of this one."""
    tested = picker.file.tested
    if tested is None or tested.given["mount.form"].value == picker.given["mount.form"].value:
        return False
    picker.warnings.append(
        f"The pull test was of the form '{tested.given['mount.form'].value}' and is left out: pull the new mount."
    )
    return True


def _reading(picker: Picker, key: str, error: Value) -> Value:
    """Give a reading with its error as its range."""
    given = picker.given[key]
    if given.low is not None:
        return picker.number(key)
    m = float(given.value)
    return picker.uncertain(
        key, max(m - float(error), SMALLEST * m), m, m + float(error),
        "the reading and its error", "given",
    )  # fmt: skip


def _ranged(picker: Picker, key: str, share: float) -> Value:
    """Give a measured value with its relative error as its range."""
    given = picker.given[key]
    if given.low is not None:
        return picker.number(key)
    v = float(given.value)
    return picker.uncertain(
        key, v * (1 - share), v, v * (1 + share), "the reading and its error", "given"
    )


def with_test(
    drive: Drive, file: DriveFile, overrides: Mapping[str, float], read: dict[str, Any],
    resolve: Resolve,
) -> Drive:  # fmt: skip
    """Put the test to a drive: on the drive itself, or on what it was edited from."""
    tested, source = drive, file
    if file.tested is not None:
        source = file.tested if file.plates is not None else replace(file.tested, plates=None)
        tested = _resolved(source, _carried(drive, source, overrides, resolve), resolve)
    return replace(
        drive,
        pull_test=PullTest(
            tested=tested, file=source, likely=_likely(drive, overrides), known={}, **read
        ),
    )


def _likely(drive: Drive, overrides: Mapping[str, float]) -> bool:
    likely = {r.key: r.likely for r in drive.ranges}
    return all(likely.get(k, v) == v for k, v in overrides.items())


def _resolved(file: DriveFile, overrides: Mapping[str, float], resolve: Resolve) -> Drive:
    found = resolve(file, overrides)
    return found if found.pull_test is None else found.pull_test.tested


_RANGES: deque[tuple[DriveFile, dict[str, Range]]] = deque(maxlen=8)  # of files as tested


def _carried(
    drive: Drive, tested: DriveFile, overrides: Mapping[str, float], resolve: Resolve
) -> dict[str, float]:
    """Give the overrides as they stand on the tested drive: the same place in its own ranges.

    An input that the edit gave another likely value (a new material's modulus) is another input; on the
    tested drive it stays likely.
    """
    if not overrides:
        return {}
    known = next((r for f, r in _RANGES if f is tested), None)
    if known is None:
        known = {r.key: r for r in _resolved(tested, {}, resolve).ranges}
        _RANGES.append((tested, known))
    found = {}
    for own in drive.ranges:
        then = known.get(own.key)
        if then is None or own.key not in overrides:
            continue
        if abs(own.likely - then.likely) <= SAME * abs(own.likely):
            found[own.key] = _same_place(own, then, overrides[own.key])
    return found


def _same_place(own: Range, then: Range, value: float) -> float:
    """Carry a value from one range into another: low to low, likely to likely, high to high."""
    if value == own.likely:
        return then.likely
    end, other = (own.low, then.low) if value < own.likely else (own.high, then.high)
    if end == own.likely:
        return then.likely
    return then.likely + (value - own.likely) / (end - own.likely) * (other - then.likely)
