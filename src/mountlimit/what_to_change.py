"""What is the cheapest change that buys the amps I want?

Every change (``changes``) edits the drive file and the one pipeline is run on it; no gain is scaled.
The wide search asks how far each check is used up at the wanted current, with the safe-side ends of
the base drive (``quick``); every number that is shown comes from ``limits.find`` on the edited file.

A set of changes can only reach the wanted current if every check over it is eased by at least one
of them: that rules sets out.  What the changes do together is guessed as the product of what each
does alone, for the order in which sets are run only.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import combinations
from typing import Any

import numpy as np

from . import limits, quick, traction
from .changes import CHANGES, COSTS, Edit, made
from .checks import BY_NAME
from .drivefile import DriveFile, rewritten
from .errors import MountlimitError
from .limits import Found
from .plate_route import with_plates
from .progress import step
from .resolve import resolve
from .traction import Lines

SHOWN = 7  # single changes that are run in full
PAIRS = 16  # pairs that are run
LARGEST = 8  # changes in one set
TRIED = 3  # candidates run at each step of growing a set
ROUNDS = 3  # of running a set in full and growing it on where the wide search was too hopeful
AFRESH = 2  # times that every change is tried on a set where none that helps alone helps any more
SPARE = 1e-3  # of what is over in all, on the logarithm: a change that does no more is dropped
SAMPLES = 24
DEEP = 200.0  # the lowest current looked at, as a part of the wanted one
EASED = 0.999
GAIN = 1.005

Used = Mapping[str, float]  # check -> most it is used up, to the wanted current
Set = tuple[Edit, ...]
Score = Callable[[Used], tuple[float, float]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """A set of changes run in full: what the edited file gives."""

    edits: Set
    keys: Mapping[str, Any]  # key -> value as it stands in TOML; None where it goes out
    found: Found
    before: float  # safe current without them, A
    wanted: float

    @property
    def safe(self) -> float:
        """Safe current of the edited drive, A."""
        return self.found.first_safe.safe

    @property
    def reaches(self) -> bool:
        """Whether it carries the wanted current."""
        return self.safe >= self.wanted

    @property
    def cost(self) -> int:
        """Dearest cost class in the set."""
        return max(e.change.cost for e in self.edits)

    @property
    def dearness(self) -> tuple[int, int, float]:
        """Sort key: dearest class, sum of the classes, then most current first."""
        return self.cost, sum(e.change.cost + 1 for e in self.edits), -self.safe


@dataclass(frozen=True, slots=True, kw_only=True)
class Refused:
    """A change that cannot be made as tried, and why."""

    name: str
    words: str
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What buys the wanted current."""

    wanted: float
    base: Found
    uses: Lines
    singles: tuple[Outcome, ...]  # most current first
    cheapest: Outcome | None  # that reaches
    fewest: Outcome | None  # that reaches
    best: Outcome | None  # where nothing reaches: the set that comes nearest
    less: tuple[str, ...]  # kinds that help alone, but less than the singles shown
    no_gain: tuple[str, ...]  # kinds that raise nothing alone
    refused: tuple[Refused, ...]
    tried: int
    pairs: int  # that were run
    pairs_possible: int  # not ruled out

    @property
    def safe(self) -> float:
        """Safe current as it stands."""
        return self.base.first_safe.safe


def what_to_change(file: DriveFile, wanted: float) -> Answer:
    """Search the changes for what carries the wanted current.

    Raises
    ------
    InputError
        when the file itself does not resolve.
    """
    file = _looked_at(file, wanted)
    base = limits.find(file)
    search = _Search(file, base, wanted)
    if base.first_safe.safe >= wanted:
        return search.answer((), None, None, None)
    search.look_at_each()
    singles = search.singles()
    fewest, cheapest, best = search.sets(singles)
    return search.answer(singles, fewest, cheapest, best)


def _looked_at(file: DriveFile, wanted: float) -> DriveFile:
    """Give the file with the wanted current in it where it lies past what would be looked at."""
    if 1.5 * wanted <= limits.reach_of(resolve(file)):
        return file
    return rewritten(file, {"current.wanted": f"{wanted:g} A"})


@dataclass
class _Search:
    """The changes of one drive, and what has been run of them."""

    file: DriveFile
    base: Found
    wanted: float
    ends: dict[str, dict[str, str]] = field(init=False)
    edits: list[Edit] = field(init=False)
    refused: list[Refused] = field(default_factory=list)
    runs: dict[frozenset[int], Used | None] = field(default_factory=dict)
    full: dict[frozenset[int], Outcome | None] = field(default_factory=dict)
    pairs: int = 0
    pairs_possible: int = 0

    def __post_init__(self) -> None:
        self.ends = quick.safe_ends(self.base)
        self.currents = np.geomspace(self.wanted / DEEP, self.wanted, SAMPLES)
        drive = self.base.drive
        self.edits = [e for change in CHANGES for e in change.edits(self.file, drive)]
        self.now = self.used(())

    def look_at_each(self) -> None:
        """Run every change alone; what the reader refuses is kept with its reason."""
        kept = []
        for i, edit in enumerate(self.edits):
            step("changes", i, len(self.edits))
            try:
                self.used((edit,))
            except MountlimitError as error:
                words = str(error).splitlines()[0]
                self.refused.append(Refused(name=edit.change.name, words=edit.words, why=words))
            else:
                kept.append(edit)
        step("changes", len(self.edits), len(self.edits))
        self.edits = kept

    def used(self, edits: Iterable[Edit]) -> Used:
        """Give how far a set uses up each check to the wanted current. Raises as the reader."""
        key = frozenset(id(e) for e in edits)
        if key not in self.runs:
            file = with_plates(made(self.file, edits)[0]) if key else self.base.file
            found = quick.utilisations(file, resolve(file), self.ends, self.currents)
            self.runs[key] = {
                name: min(float(np.max(u)), 1e9)
                for name, u in found.items()
                if BY_NAME[name].kind != "life"
            }
        used = self.runs[key]
        assert used is not None
        return used

    def outcome(self, edits: Set) -> Outcome | None:
        """Run a set in full; None where it cannot be."""
        key = frozenset(id(e) for e in edits)
        if key not in self.full:
            try:
                file, keys = made(self.file, edits)
                found = limits.find(file)
            except MountlimitError:
                self.full[key] = None
                return None
            self.full[key] = Outcome(
                edits=edits,
                keys=keys,
                found=found,
                before=self.base.first_safe.safe,
                wanted=self.wanted,
            )
            self._learn(found, key)
        return self.full[key]

    def _learn(self, found: Found, of: frozenset[int]) -> None:
        """Take the safe-side ends of inputs that the base drive does not have."""
        known = {r.key for r in self.base.drive.ranges}
        for name, ends in quick.safe_ends(found).items():
            own = self.ends.setdefault(name, {})
            fresh = {k: v for k, v in ends.items() if k not in known and own.get(k) != v}
            if fresh:
                own |= fresh
                self.runs = {k: v for k, v in self.runs.items() if not k & of}

    def singles(self) -> tuple[Outcome, ...]:
        """Run the most promising changes in full, one size of each kind."""
        by_kind: dict[str, list[Edit]] = {}
        for edit in self.edits:
            if _worst(self.used((edit,))) < EASED * _worst(self.now):
                by_kind.setdefault(edit.change.name, []).append(edit)
        picked = sorted((self._size(group) for group in by_kind.values()), key=self._worst_of)
        found = []
        for i, edit in enumerate(picked[:SHOWN]):
            step("single changes", i, min(SHOWN, len(picked)))
            if (one := self.outcome((edit,))) is not None and one.safe > one.before * GAIN:
                found.append(one)
        step("single changes", 1, 1)
        return tuple(sorted(found, key=lambda o: -o.safe))

    def _size(self, group: list[Edit]) -> Edit:
        """Pick the first size that carries the wanted current, else the best."""
        enough = next((e for e in group if self._worst_of(e) <= 1), None)
        return enough or min(group, key=self._worst_of)

    def _worst_of(self, edit: Edit) -> float:
        return _worst(self.used((edit,)))

    def sets(
        self, singles: Sequence[Outcome]
    ) -> tuple[Outcome | None, Outcome | None, Outcome | None]:
        """Give the smallest set and the cheapest set that reach, or the best that does not."""
        reaching = [o for o in singles if o.reaches]
        if not reaching:
            reaching += self._pairs()
        last = None
        top = min((o.cost for o in reaching), default=len(COSTS))
        for ceiling in range(min(top, len(COSTS) - 1) + 1):
            step("sets of changes", ceiling, len(COSTS))
            if ceiling == top and reaching:
                break
            last = self._grown(ceiling, _in_all)
            if ceiling == len(COSTS) - 1 and not (last and last.reaches):
                last = _better(last, self._grown(ceiling, _by_worst))
            if last is not None and last.reaches:
                reaching.append(last)
                break
        step("sets of changes", 1, 1)
        if not reaching:
            return None, None, _better(last, singles[0] if singles else None)
        fewest = min(reaching, key=lambda o: (len(o.edits), o.dearness))
        return fewest, min(reaching, key=lambda o: o.dearness), None

    def _pairs(self) -> list[Outcome]:
        """Run the pairs that can reach, the likeliest of the cheapest first; give those that do."""
        over = [name for name, u in self.now.items() if u > 1]
        able = []
        for pair in combinations(self.edits, 2):
            if pair[0].meets(pair[1]) or not self._can(pair, over):
                continue
            able.append(pair)
        self.pairs_possible = len(able)
        able.sort(key=lambda p: (_guess(self.now, [self.used((e,)) for e in p]) > 1.0,
                                 max(e.change.cost for e in p), _guess(self.now, [self.used((e,)) for e in p])))  # fmt: skip
        found: list[Outcome] = []
        for i, pair in enumerate(able[:PAIRS]):
            step("pairs of changes", i, min(PAIRS, len(able)))
            self.pairs += 1
            if self._reaches(pair) and (one := self.outcome(pair)) is not None and one.reaches:
                found.append(one)
                break
        step("pairs of changes", 1, 1)
        return found

    def _can(self, edits: Iterable[Edit], over: Iterable[str]) -> bool:
        """Tell whether each check that is over is eased by one of the changes, or is gone."""
        used = [self.used((e,)) for e in edits]
        return all(any(u.get(name, 0.0) < EASED * self.now[name] for u in used) for name in over)

    def _reaches(self, edits: Iterable[Edit]) -> bool:
        try:
            return _worst(self.used(edits)) <= 1
        except MountlimitError:
            return False

    def _grown(self, ceiling: int, score: Score) -> Outcome | None:
        """Grow a set of changes up to a cost class until it reaches, then drop what it can spare."""
        allowed = [e for e in self.edits if e.change.cost <= ceiling]
        over = [name for name, u in self.now.items() if u > 1]
        last = ceiling == len(COSTS) - 1
        if not allowed or (not last and not self._can(allowed, over)):
            return None
        chosen: Set = ()
        best: Outcome | None = None
        for _ in range(ROUNDS):
            chosen = self._spared(self._grow(chosen, allowed, score, AFRESH if last else 0))
            if not chosen or (not last and not self._reaches(chosen)):
                return best
            found = self.outcome(chosen)
            if found is None or found is best:
                return best
            best = _better(best, found)
            if found.reaches or not self._reaches(chosen):
                return best
            self._trust(found.found)  # the wide search was too hopeful: take the ends found here
        return best

    def _trust(self, found: Found) -> None:
        for name, ends in quick.safe_ends(found).items():
            self.ends.setdefault(name, {}).update(ends)
        self.runs = {k: v for k, v in self.runs.items() if len(k) < 2}

    def _grow(self, chosen: Set, allowed: Sequence[Edit], score: Score, afresh: int) -> Set:
        """Add, one after another, the change that eases most what governs.

        What a change does alone says which are tried; where none of those helps any more, all are
        tried on the set as it is, ``afresh`` times.
        """
        now = self.used(chosen)
        while _worst(now) > 1 and len(chosen) < LARGEST:
            free = [e for e in allowed if not any(e.meets(c) for c in chosen)]
            likely = sorted(
                (e for e in free if self._eases(e, now)),
                key=lambda e: (score(_product(now, self.now, self.used((e,)))), e.change.cost),
            )[:TRIED]
            best = self._add(chosen, likely, score)
            if (best is None or best[0] >= score(now)) and afresh:
                afresh -= 1
                best = self._add(chosen, free, score)
            if best is None or best[0] >= score(now):
                return chosen
            chosen, now = (*chosen, best[1]), self.used((*chosen, best[1]))
        return chosen

    def _add(
        self, chosen: Set, edits: Sequence[Edit], score: Score
    ) -> tuple[tuple[float, float], Edit] | None:
        """Run the set with each of some changes more; give the best and its score."""
        best = None
        for edit in edits:
            try:
                found = score(self.used((*chosen, edit)))
            except MountlimitError:
                continue
            if best is None or found < best[0]:
                best = (found, edit)
        return best

    def _eases(self, edit: Edit, now: Used) -> bool:
        """Tell whether a change alone eases any check that is over."""
        alone = self.used((edit,))
        over = (name for name, u in now.items() if u > 1)
        return any(alone.get(n, 0.0) < EASED * self.now.get(n, math.inf) for n in over)

    def _spared(self, chosen: Set) -> Set:
        """Drop the changes that the set does not need, the dearest first."""
        least = _in_all(self.used(chosen))[0] + SPARE
        for edit in sorted(chosen, key=lambda e: -e.change.cost):
            rest = tuple(e for e in chosen if e is not edit)
            try:
                if rest and _in_all(self.used(rest))[0] <= least:
                    chosen = rest
            except MountlimitError:
                continue
        return chosen

    def answer(
        self, singles: tuple[Outcome, ...], fewest: Outcome | None, cheapest: Outcome | None,
        best: Outcome | None,
    ) -> Answer:  # fmt: skip
        """Put the answer together."""
        helps = {
            e.change.name
            for e in self.edits
            if singles or best or cheapest
            if _worst(self.used((e,))) < EASED * _worst(self.now)
        }
        kinds = dict.fromkeys(e.change.name for e in self.edits)
        return Answer(
            wanted=self.wanted, base=self.base, uses=traction.lines(self.base.drive), singles=singles,
            cheapest=cheapest, fewest=fewest, best=best, refused=tuple(self.refused),
            less=tuple(k for k in kinds if k in helps - {o.edits[0].change.name for o in singles}),
            no_gain=tuple(k for k in kinds if k not in helps), tried=len(self.edits),
            pairs=self.pairs, pairs_possible=self.pairs_possible,
        )  # fmt: skip


def _better(one: Outcome | None, other: Outcome | None) -> Outcome | None:
    """Give the one with the larger safe current."""
    return max((o for o in (one, other) if o), key=lambda o: o.safe, default=None)


def _worst(used: Used) -> float:
    return max(used.values())


def _in_all(used: Used) -> tuple[float, float]:
    """Rank a set by how much is over in all, then by what is used up most."""
    return round(sum(math.log(u) for u in used.values() if u > 1), 4), _worst(used)


def _by_worst(used: Used) -> tuple[float, float]:
    """Rank a set by what is used up most, then by how much is over in all."""
    return round(_worst(used), 4), _in_all(used)[0]


def _guess(now: Used, alone: Sequence[Used]) -> float:
    """Guess the most used up with all changes: the product of what each does alone."""
    at = now
    for used in alone:
        at = _product(at, now, used)
    return _worst(at)


def _product(at: Used, now: Used, alone: Used) -> dict[str, float]:
    """Give each check's use with one more change, as if it did what it does alone."""
    found = {}
    for name in at.keys() & alone.keys() if alone else at.keys():
        before = now.get(name, 0.0)
        found[name] = at[name] * (alone[name] / before if before > 0 else 1.0)
    return found or dict(at)
