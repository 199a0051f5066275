"""A test of the motor's torque by lever and scale with the rotor locked: the card, and what a reading does."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from . import drivefile, limits, loads
from .drivefile import DriveFile
from .errors import InputError, Mistake
from .limits import Found
from .model import Drive
from .resolve import resolve

LEVER = 0.25  # m
LEAST_FORCE = 10.0  # N; below it the scale's own error counts too much
MOST_FORCE = 250.0  # N; above it the lever is not held by hand
STRONG = ("strength", "grip")
FAR = 1.15  # times more or less than the file says: told plainly
ERRORS = ("torque_test.current_error", "torque_test.force_error", "torque_test.lever_error")


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """The test to make on a motor, SI."""

    drive: Drive
    current: float
    lever: float
    torque: tuple[float, float, float]  # low, likely, high
    safe: float  # current to which strength and grip are safe
    safe_by: str

    @property
    def force(self) -> tuple[float, float, float]:
        """What the scale reads: low, likely, high."""
        low, likely, high = self.torque
        return low / self.lever, likely / self.lever, high / self.lever


@dataclass(frozen=True, slots=True, kw_only=True)
class Result:
    """A reading put to the drive."""

    file: DriveFile
    drive: Drive
    constant: tuple[float, float, float]  # torque per ampere by the test: low, likely, high
    told: tuple[float, float, float] | None  # by the file's own numbers; None where it has none
    before: Found | None
    after: Found

    @property
    def ratio(self) -> float:
        """Torque per ampere measured, over that of the file."""
        return math.nan if self.told is None else self.constant[1] / self.told[1]


def without_test(file: DriveFile) -> DriveFile:
    """Give a drive file without its torque test."""
    drop = [k for k in file.given if k.startswith("torque_test.")]
    return file.edited(**{k.replace(".", "__"): None for k in drop}) if drop else file


def card(file: DriveFile, current: float | None = None, lever: float | None = None) -> Card:
    """Lay out the test of a drive; ``current`` (A) and ``lever`` (m) as the user wants them.

    Raises
    ------
    InputError
        as ``resolve``, and for a current above what strength or grip of the drive allow.
    """
    found = limits.find(file)
    drive = found.drive
    lever = LEVER if lever is None else lever
    for key, value, least, unit in (
        ("--lever", lever, 0.02, "m"),
        ("--current", current, 0.5, "A"),
    ):
        if value is not None and value < least:
            raise InputError([Mistake(file.name, key, f"{value:g} {unit}", f"expected {least:g} {unit} or more")])  # fmt: skip
    strong = [x for x in found.limits if x.counts and x.check.kind in STRONG]
    first = min(strong, key=lambda x: x.safe, default=None)
    safe, by = (first.safe, first.check.part) if first else (math.inf, "")
    if current is None:
        current = _round(min(float(drive.current.set), safe if safe > 1.0 else math.inf))
        torque = float(loads.torque_at(drive, current))
        if torque / lever > MOST_FORCE:
            current = _round(current * MOST_FORCE * lever / torque)
    elif current > safe > 1.0:
        raise InputError([Mistake(file.name, "--current", f"{current:g} A", f"is more than the {by} is safe for ({safe:.3g} A)", "test with less")])  # fmt: skip
    return Card(
        drive=drive, current=current, lever=lever, torque=_band(file, drive, current), safe=safe, safe_by=by
    )  # fmt: skip


def _round(current: float) -> float:
    size = 10.0 ** (math.floor(math.log10(current)) - 1)
    return math.floor(current / size + 1e-9) * size


def _band(file: DriveFile, drive: Drive, current: float) -> tuple[float, float, float]:
    """Give the torque at a current with its band over the uncertain inputs."""
    likely = float(loads.torque_at(drive, current))
    pairs = [
        tuple(float(loads.torque_at(resolve(file, {r.key: v}), current)) for v in (r.low, r.high))
        for r in drive.ranges
        if r.low < r.high and r.key.startswith(("motor.", "current.", "torque_test."))
    ]
    low, high = limits.band(likely, [(a, b) for a, b in pairs], 1e9)
    return low, likely, high


def with_texts(file: DriveFile, told: Mapping[str, str | None]) -> DriveFile:
    """Put a reading in, in the user's own words; errors the file holds stay.

    Raises
    ------
    InputError
        for a value that cannot be read, in the words of the file's own reader.
    """
    kept = {k.replace(".", "__"): v for k, v in file.given.items() if k in ERRORS}
    file = without_test(file).edited(**kept)
    for key, text in told.items():
        if text is not None:
            file = drivefile.set_text(file, f"torque_test.{key}", text)
    return file


def read_back(file: DriveFile) -> Result:
    """Put the torque test that a drive file holds to the drive, beside the drive without it.

    Raises
    ------
    InputError
        as ``resolve``.
    """
    drive = resolve(file)
    current = float(file.given["torque_test.current"].value)
    per = current - float(drive.motor.no_load_current)
    bare = without_test(file)
    told, before = None, None
    if any(
        k in bare.given
        for k in ("motor.torque_constant", "motor.speed_constant", "motor.rated_torque")
    ):
        told = _per(_band(bare, resolve(bare), current), per)
        before = limits.find(bare)
    return Result(
        file=file, drive=drive, constant=_per(_band(file, drive, current), per), told=told, before=before,
        after=limits.find(file),
    )  # fmt: skip


def _per(torque: tuple[float, float, float], current: float) -> tuple[float, float, float]:
    low, likely, high = (t / current for t in torque)
    return low, likely, high
