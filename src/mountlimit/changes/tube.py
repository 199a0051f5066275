"""A mount clamped on a tube: pull of the clamp, its face, the length it grips."""

from __future__ import annotations

from collections.abc import Iterator

from ..drivefile import DriveFile
from ..model import Drive
from ._common import (
    HAND,
    PARTS,
    WORKSHOP,
    Change,
    Offer,
    floor_mm,
    given,
    mm,
    newton_metres,
    speaker,
)

SHARES = (0.5, 0.7, 1.4, 2.0)
BARE = "dry steel"


def pull(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer clamp bolts looser (a dented tube) and tighter (a sliding clamp), up to their yield."""
    from ._common import torque_for

    if drive.mount.clamp is None or given(file, "fixings.clamp_preload") is not None:
        return
    full = float(torque_for(drive.mount.clamp.bolts).split()[0])
    now = given(file, "fixings.clamp_tightening_torque")
    for torque in (full,) if now is None else (s * float(now) for s in SHARES):
        if torque <= full:
            words = newton_metres(torque)
            yield f"clamp bolts tightened to {words}", {"fixings.clamp_tightening_torque": words}


def bare(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer a bare, dry tube under the clamp."""
    if drive.mount.clamp is None or given(file, "fixings.clamp_surface") == BARE:
        return
    clear = {k: None for k in ("fixings.clamp_friction",) if given(file, k) is not None}
    yield "paint and grease off the tube under the clamp", {"fixings.clamp_surface": BARE, **clear}


def more(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer one or two more U-bolts, bands or pairs of bolts, gripping as much more of the tube."""
    say = speaker(drive)
    clamp = drive.mount.clamp
    if clamp is None:
        return
    count = clamp.bolts.count
    for added in (1, 2) if given(file, "mount.form") == "saddle" else (2,):
        grip = floor_mm(float(clamp.length) * (count + added) / count)
        size = clamp.bolts.thread.designation
        words = f"{count + added} clamp bolts {size} instead of {count}, gripping {say(grip)} of the tube"  # fmt: skip
        yield words, {"fixings.clamp_bolts": f"{count + added} x {size}", "mount.grip_length": mm(grip)}  # fmt: skip


def longer(_: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer a clamp that grips more of the tube."""
    say = speaker(drive)
    if drive.mount.clamp is None:
        return
    now = float(drive.mount.clamp.length)
    for share in (1.5, 2.0):
        grip = floor_mm(share * now)
        yield f"a clamp that grips {say(grip)} of the tube instead of {say(now)}", {"mount.grip_length": mm(grip)}  # fmt: skip


CHANGES = (
    Change(name="clamp bolts", cost=HAND, tools="torque wrench", offers=pull),
    Change(name="bare tube", cost=HAND, tools="scraper, solvent, gloves", offers=bare,
           caution="Solvent: open air, no flame, gloves."),
    Change(name="more clamps", cost=PARTS, tools="drill, torque wrench", offers=more),
    Change(name="longer clamp", cost=WORKSHOP, tools="saw, drill, welder", offers=longer),
)  # fmt: skip
