"""A test of the mount's give by hand: what to pull, what to expect, and what the reading does.

The card runs the pipeline with a pretend reading, the likely one, so that what a test is worth is known
before it is made.  A real reading goes the same way: as keys of the drive file.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from . import (
    crossings,
    drivefile,
    evaluate,
    limits,
    loads,
    pull_reading,
    pulled,
    respond,
    safe_side,
    shaft_line,
    units,
)
from .drivefile import DriveFile, Given
from .errors import InputError, Mistake
from .limits import Found, Limit
from .model import Array, Drive
from .plate_route import with_plates
from .progress import step
from .resolve import resolve

MOST = 300.0  # N; what a person pulls steadily on a scale (common practice, no source)
LEAST = 50.0  # N; pulled gently even where a part counts as used up before any current
STEP = 10.0  # N
LIGHTEST = 5.0  # N
STICK = 0.5  # m
HALF = 0.5  # of the band on logarithms: what a test should take away
DIAL = 1e-5  # m; error of a dial gauge
READABLE = 4.0  # times its error that a movement should be
FORCE = "pull_test.force"
CHECK = "alignment"
STRONG = ("strength", "grip")
KEPT = (
    "pull_test.stick",
    "pull_test.stick_on",
    "pull_test.direction",
    "pull_test.reading_error",
    "pull_test.force_error",
    "pull_test.model_error",
)
WORDS = ("A", "B", "A and B")
ERROR_KEYS = ("pull_test.reading_error", "pull_test.force_error", "pull_test.model_error")


@dataclass(frozen=True, slots=True, kw_only=True)
class Pull:
    """How it is pulled and where it is read, SI."""

    force: float
    words: str  # of the direction
    angle: float
    stick: float
    on_motor: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Three:
    """A quantity at its low end, likely and at its high end, SI."""

    low: float
    likely: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class After:
    """The alignment limit with a reading at some marks, and how much of the band on logarithms stays."""

    marks: str
    limit: Limit
    share: float  # of the band before; nan where there is none
    lean: Three  # of the shaft under the pull


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """The test to make on a drive, and what it is worth."""

    file: DriveFile
    drive: Drive
    pull: Pull
    pull_allowed: float  # pull at the safe current of strength and grip, N
    allowed_by: str
    movement: Three  # of mark A
    tip: Three  # of mark B
    lean: Three  # of the shaft at the sprocket
    shaft: tuple[float, float]  # of marks A and B, from the shaft's own bending
    reading_error: float
    force_error: float
    before: Limit
    after: tuple[After, ...]
    dial: After  # both marks by a dial gauge
    spoils: tuple[tuple[str, float], ...]  # inputs that keep the band wide, and their share of it

    @property
    def best(self) -> After:
        """What narrows the band most."""
        return min(self.after, key=lambda a: math.inf if math.isnan(a.share) else a.share)

    @property
    def halves(self) -> bool:
        """Whether the test takes half the band away."""
        return self.best.share <= HALF


@dataclass(frozen=True, slots=True, kw_only=True)
class Result:
    """A reading put to the drive: limits and movements before and after."""

    file: DriveFile
    drive: Drive
    reading: pull_reading.Reading
    before: Found
    after: Found
    lean: tuple[Three, Three]  # of the shaft under the pull, before and after
    share: float


def moved(drive: Drive, pull: Pull) -> tuple[float, float, float]:
    """Give movement of marks A and B (m) and lean (rad) of the shaft under a pull by hand."""
    response = respond.solve(drive, pulled.loads_of(drive, pull.force, pull.angle))
    parts = response.displacements
    u, lean = (float(v) for v in pulled.along(parts, pull.angle))
    held = [p for p in parts if not (pull.on_motor and p.name == shaft_line.NAME)]
    v, turned = (float(v) for v in pulled.along(held, pull.angle))
    return u, v + turned * pull.stick, lean


def expected(file: DriveFile, pull: Pull) -> tuple[Three, ...]:
    """Give marks A, B and lean with their bands over the uncertain inputs."""
    file = with_plates(file)
    drive = resolve(file)
    likely = moved(drive, pull)
    pairs = [
        [moved(resolve(file, {r.key: v}), pull) for v in (r.low, r.high)]
        for r in drive.ranges
        if r.low < r.high
    ]
    found = []
    for i, value in enumerate(likely):
        sign = -1.0 if value < 0 else 1.0
        ends = limits.band(sign * value, [(sign * a[i], sign * b[i]) for a, b in pairs], 1e9)
        low, high = sorted(sign * e for e in ends)
        found.append(Three(low=low, likely=value, high=high))
    return tuple(found)


def with_keys(file: DriveFile, told: Mapping[str, str | None]) -> DriveFile:
    """Put keys of the pull test into a file as texts; those of None stay as they are.

    Raises
    ------
    InputError
        for a value that cannot be read, in the words of the file's own reader.
    """
    for key, text in told.items():
        if text is not None:
            file = drivefile.set_text(file, f"pull_test.{key}", text)
    return file


def with_texts(
    file: DriveFile, read: tuple[str, str] | None, read_tip: tuple[str, str] | None,
    told: Mapping[str, str | None],
) -> DriveFile:  # fmt: skip
    """Put a reading in, as (force, movement) in words at mark A, mark B or both. Raises as ``with_keys``."""
    bare = without_test(file).edited(mount__softness=None)
    kept = {k: v for k, v in file.given.items() if k in KEPT}
    found = bare.edited(**{k.replace(".", "__"): v for k, v in kept.items()})
    forces = [m[0] for m in (read, read_tip) if m]
    texts: dict[str, str | None] = {"force": forces[0], **told}
    if read:
        texts["movement"] = read[1]
    if read_tip:
        texts |= {"tip_movement": read_tip[1], "stick": told["stick"] or _length(file)}
    else:
        texts["stick"] = texts["stick_on"] = None
    found = with_keys(found, texts)
    if (
        len(forces) > 1
        and with_keys(found, {"force": forces[1]}).given[FORCE].value != found.given[FORCE].value
    ):
        raise InputError([Mistake(file.name, FORCE, f"'{forces[0]}' and '{forces[1]}'", "both marks must be read at one pull", "pull once, read both")])  # fmt: skip
    return found


def _length(file: DriveFile) -> str:
    return (
        file.given["pull_test.stick"].text
        if "pull_test.stick" in file.given
        else f"{1000 * STICK:g} mm"
    )


def card(file: DriveFile, force: float | None = None) -> Card:
    """Lay out the test of a drive.

    ``force`` (N) as the user wants it; stick and direction as the file's [pull_test] has them. Readings it
    holds are put aside.

    Raises
    ------
    InputError
        as ``resolve``, and for a pull above what strength or grip of the drive allow.
    """
    given = file.given
    direction = given["pull_test.direction"].value if "pull_test.direction" in given else None
    stick = float(given["pull_test.stick"].value) if "pull_test.stick" in given else STICK
    on_motor = "pull_test.stick_on" not in given or given["pull_test.stick_on"].value == "motor"
    errors = {k.replace(".", "__"): given[k] for k in ERROR_KEYS if k in given}
    bare = with_plates(without_test(file))
    step("limits", 0, 5)
    found = limits.find(bare)
    words, angle = direction or found.drive.chain.pulls[0]
    allowed, by = _allowed(found)
    pull = Pull(
        force=_force(bare, force, allowed, by),
        words=words,
        angle=float(angle),
        stick=stick,
        on_motor=on_motor,
    )
    a, b, lean = expected(bare, pull)
    pairs = ((a.likely, None), (None, b.likely), (a.likely, b.likely))
    tests = [with_plates(with_reading(bare, pull, *m).edited(**errors)) for m in pairs]
    before = _of(found)
    after = tuple(
        _after(n, t, pull, before, i + 1) for i, (n, t) in enumerate(zip(WORDS, tests, strict=True))
    )
    spoils = _spoils(tests[-1], found.reach)
    fine = with_plates(tests[-1].edited(pull_test__reading_error=f"{1000 * DIAL:g} mm"))
    tested = resolve(tests[-1])
    assert tested.pull_test is not None
    share = next(r.high / r.likely - 1 for r in tested.ranges if r.key == "pull_test.force")
    return Card(
        file=bare, drive=found.drive, pull=pull, pull_allowed=allowed, allowed_by=by, movement=a, tip=b,
        lean=lean, shaft=_shaft_alone(found.drive, pull), reading_error=float(tested.pull_test.reading_error),
        force_error=share, before=before, after=after, dial=_after("dial gauge", fine, pull, before, 4), spoils=spoils,
    )  # fmt: skip


def _after(words: str, file: DriveFile, pull: Pull, before: Limit, done: int) -> After:
    step("limits", done, 5)
    limit = _of(limits.find(file, [CHECK]))
    return After(marks=words, limit=limit, share=left(before, limit), lean=expected(file, pull)[2])


def _shaft_alone(drive: Drive, pull: Pull) -> tuple[float, float]:
    """Give what the shaft's own bending moves marks A and B, m."""
    bent = [shaft_line.at_sprocket(drive, pulled.loads_of(drive, pull.force, pull.angle))]
    sag, slope = (float(v) for v in pulled.along(bent, pull.angle))
    return sag, 0.0 if pull.on_motor else sag + slope * pull.stick


def without_test(file: DriveFile) -> DriveFile:
    """Give a drive file without its pull test."""
    drop = [k for k in file.given if k.startswith("pull_test.")]
    return file.edited(**{k.replace(".", "__"): None for k in drop}) if drop else file


def _allowed(found: Found) -> tuple[float, str]:
    """Give the steady pull at the current to which strength and grip are safe, and what sets it."""
    strong = [x for x in found.limits if x.counts and x.check.kind in STRONG]
    if not strong:
        return math.inf, ""
    first = min(strong, key=lambda x: x.safe)
    if math.isinf(first.safe):
        return math.inf, ""
    return float(loads.pull_at(found.drive, first.safe)), first.check.part


def _force(file: DriveFile, force: float | None, allowed: float, by: str) -> float:
    if force is None:
        return max(LEAST, math.floor(min(MOST, allowed) / STEP) * STEP)
    if force < LIGHTEST:
        raise InputError([Mistake(file.name, "--force", units.show(force, "force"), f"expected {LIGHTEST:g} N or more", "for example 200 N")])  # fmt: skip
    if force > max(allowed, LEAST):
        most = units.show(max(allowed, LEAST), "force")
        raise InputError([Mistake(file.name, "--force", units.show(force, "force"), f"is more than the {by} is safe for ({most})", "pull less, with a longer stick")])  # fmt: skip
    return force


def _given(key: str, value: float) -> Given:
    return Given(key=key, text=f"{1000 * value:.4g} mm", kind="length", value=value)


def with_reading(
    file: DriveFile, pull: Pull, movement: float | None, tip: float | None
) -> DriveFile:
    """Put a reading into a drive file (m), in the place of one it holds and of ``mount.softness``."""
    force = Given(key=FORCE, text=f"{pull.force:.4g} N", kind="force", value=pull.force)
    changes: dict[str, Given | str | None] = {
        "pull_test__force": force, "pull_test__direction": pull.words, "mount__softness": None,
        "pull_test__movement": None if movement is None else _given("pull_test.movement", movement),
        "pull_test__tip_movement": None if tip is None else _given("pull_test.tip_movement", tip),
        "pull_test__stick": None if tip is None else _given("pull_test.stick", pull.stick),
        "pull_test__stick_on": None if tip is None else ("motor" if pull.on_motor else "shaft"),
    }  # fmt: skip
    return file.edited(**changes)


def _of(found: Found) -> Limit:
    return next(x for x in found.limits if x.check.name == CHECK and x.current_kind != "continuous")


def left(before: Limit, after: Limit) -> float:
    """Give the share of the band of *gives at* that is left, on logarithms, as far as currents are looked at."""
    wide = _width(before)
    return math.nan if wide < 1e-3 else _width(after) / wide


def _width(x: Limit) -> float:
    low, high = (min(max(v or 0.0, 1e-3 * x.reach), x.reach) for v in (x.gives_low, x.gives_high))
    return math.log(high / low)


def _spoils(file: DriveFile, reach: float) -> tuple[tuple[str, float], ...]:
    """Give the uncertain inputs that still widen the band of the alignment limit, largest first."""
    drive = resolve(file)
    currents = crossings.grid(reach)
    gives = crossings.crossing(currents, _gives(evaluate.curves(drive, currents, [CHECK])))
    parts = []
    for r in drive.ranges:
        if r.low < r.high:
            ends = safe_side.ends_of(file, r, currents, only=[CHECK])
            both = [crossings.crossing(currents, _gives(c)) for c in (ends.low, ends.high)]
            at = [min(max(v, 1e-3 * reach), reach) for v in (*both, gives)]
            parts.append((r.key, math.log(max(at) / min(at)) ** 2))
    total = sum(p for _, p in parts) or 1.0
    shares = sorted(((k, p / total) for k, p in parts), key=lambda x: -x[1])
    return tuple(x for x in shares if x[1] >= 0.1)


def _gives(curves: dict[str, evaluate.Curve]) -> Array:
    found = curves[CHECK].gives
    assert found is not None
    return found


def read_back(file: DriveFile) -> Result:
    """Put the reading that a drive file holds to the drive, beside the drive without it.

    Raises
    ------
    InputError
        as ``resolve``, and for a reading that the shaft's own bending uses up.
    """
    file = with_plates(file)
    drive = resolve(file)
    found = pull_reading.read(drive)
    test = drive.pull_test
    if found is None or test is None:
        raise InputError([Mistake(file.name, "pull_test", "", "holds no reading", 'give --read "200 N" "1.4 mm"')])  # fmt: skip
    bare = with_plates(without_test(file))
    step("limits", 0, 2)
    before = limits.find(bare)
    step("limits", 1, 2)
    after = limits.find(file)
    where = Pull(
        force=float(test.force), words="", angle=float(test.angle), stick=float(test.stick or STICK)
    )
    return Result(
        file=file, drive=drive, reading=found, before=before, after=after,
        lean=(expected(bare, where)[2], expected(file, where)[2]), share=left(_of(before), _of(after)),
    )  # fmt: skip
