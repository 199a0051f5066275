"""What trials say: every sample counts by how well it agrees with what was seen (Bayes).

A sample is one possible truth of the drive: values of its uncertain inputs and the error of the
model for each part.  Its weight is the probability of all that was seen, were it the truth.
Trials that cannot both be true are told, and the one that gave counts, not the one that held.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from .checks import BY_NAME
from .errors import InputError, Mistake
from .model import Array, Number
from .trial_entries import Trial, near

if TYPE_CHECKING:
    from .sampling import Samples

KNOWN_TO = 0.05  # relative, of the current that flowed (common practice, no source)
UNLIKELY = 0.01  # chance of what was seen, below which the estimate itself is in doubt
FEWEST = 200.0  # samples that must still count
EVENTS = {
    "thrown": ("stiffness",),
    "slipped": ("grip",),
    "bent": ("strength",),
    "broke": ("strength",),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """Weights of the samples, and what was found about the trials."""

    weights: Array
    effective: float
    used: tuple[Trial, ...]
    chances: tuple[float, ...]  # of each trial used, by the estimate before any trial
    left_out: tuple[tuple[Trial, str], ...]
    flags: tuple[str, ...]
    starved: bool  # too few samples agree: the weights are all alike


def refuse_unknown(file: str, trials: Sequence[Trial]) -> None:
    """Refuse a trial that names a part nobody knows.

    Raises
    ------
    InputError
        with one line for each.
    """
    known = [*BY_NAME, *dict.fromkeys(c.part for c in BY_NAME.values())]
    wrong = [
        Mistake(file, "trial", f"'{t.part}'", "part: no such part; use a name that check prints", near(t.part, known))
        for t in trials if t.part and t.part not in known
    ]  # fmt: skip
    if wrong:
        raise InputError(wrong)


def weigh(trials: Sequence[Trial], taken: Samples) -> Verdict:
    """Weigh the samples by the trials."""
    count = len(taken.values)
    used, left_out = _told_apart(trials, taken)
    each = [_chance(trial, taken) for trial in used]
    weights = np.prod(each, axis=0) if each else np.ones(count)
    chances = tuple(float(e.mean()) for e in each)
    flags = [f"{trial}, although {why}" for trial, why in left_out]
    flags += [
        f"{trial}: the estimate gave this {_in_words(chance)}. Something is not as the file says, "
        "or another part gave."
        for trial, chance in zip(used, chances, strict=True) if chance < UNLIKELY
    ]  # fmt: skip
    total = weights.sum()
    effective = float(total**2 / np.sum(weights**2)) if total > 0 else 0.0
    starved = bool(used) and effective < FEWEST
    if starved:
        flags.append(
            f"Only {effective:.0f} of {count} samples agree with what was seen: the estimate stays as it "
            "was without the trials. Take more samples, or look for what the file does not tell."
        )
        weights, effective, used, chances = np.ones(count), float(count), [], ()
    return Verdict(
        weights=weights, effective=effective, used=tuple(used), chances=chances,
        left_out=tuple(left_out), flags=tuple(flags), starved=starved,
    )  # fmt: skip


def _in_words(chance: float) -> str:
    return f"about 1 time in {1 / chance:.0f}" if chance > 1e-6 else "no chance"


def _told_apart(
    trials: Sequence[Trial], taken: Samples
) -> tuple[list[Trial], list[tuple[Trial, str]]]:
    """Part the trials that can all be true from those that held above a current at which it gave."""
    given = [t for t in trials if t.seen in EVENTS]
    used, left_out = [], []
    for trial in trials:
        known = trial.seen not in EVENTS or _parts(trial, taken)
        lower = [
            t
            for t in given
            if t.current * (1 + KNOWN_TO) <= trial.current and trial.seen not in EVENTS
        ]
        if not known:
            left_out.append(
                (trial, "no part that this file tells of gives so below the currents looked at")
            )
        elif lower:
            why = f"it was {min(lower, key=lambda t: t.current)}: not one drive; what changed between them?"
            left_out.append((trial, f"{why} The lower one counts"))
        else:
            used.append(trial)
    return used, left_out


def _parts(trial: Trial, taken: Samples) -> list[int]:
    """Give the columns of the parts that what was seen can mean."""
    kinds = EVENTS[trial.seen]
    return [
        k for k, name in enumerate(taken.parts)
        if BY_NAME[name].kind in kinds and trial.part in ("", name, BY_NAME[name].part)
    ]  # fmt: skip


def _chance(trial: Trial, taken: Samples) -> Array:
    """Give the probability of what was seen in each sample."""
    if trial.seen in EVENTS:
        holds = [_holds(taken.gives[:, k], trial.current) for k in _parts(trial, taken)]
        return np.asarray(1.0 - np.prod(holds, axis=0))
    all_hold = _holds(taken.gives.min(axis=1, initial=math.inf), trial.current)
    if trial.seen == "fine":
        return np.asarray(all_hold)
    return np.asarray(all_hold * (1.0 - _holds(taken.rubs, trial.current)))


def _holds(limit: Number, current: float) -> Number:
    """Give the chance that a limit lies over a current that is known to a few per cent."""
    from scipy.special import ndtr

    with np.errstate(divide="ignore"):
        return np.asarray(ndtr(np.log(np.asarray(limit, float) / current) / KNOWN_TO))
