"""Frame and motor bolts: further apart, larger, more, better, tightened, cleaner, stopped."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from .. import cards
from ..drivefile import DriveFile
from ..held import BoltSet
from ..model import Drive
from ._common import (
    HAND,
    METAL,
    PARTS,
    TO_SUIT,
    TORQUE,
    WORKSHOP,
    Change,
    Offer,
    family,
    floor_mm,
    given,
    has_frame_bolts,
    knows,
    mm,
    speaker,
    torque_for,
)

EDGE = 1.2  # hole diameters from hole to edge: EN 1993-1-8 table 3.3
SIZES = ("M5", "M6", "M8", "M10", "M12", "M16", "M20")
INCH_SIZES = ("1/4-20", "5/16-18", "3/8-16", "1/2-13", "5/8-11", "3/4-10")
CLASSES = ("8.8", "10.9")


def apart(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer frame bolts as far apart as the plate is wide."""
    say = speaker(drive)
    across = float(drive.fixings.span_across)
    if not has_frame_bolts(drive) or not knows(file, "fixings.span_across") or across == 0:
        return
    most = floor_mm(float(drive.mount.width) - 2 * EDGE * float(drive.fixings.hole_diameter))
    if most > 1.03 * across:
        words = f"frame bolts {say(most)} apart across the mount instead of {say(across)}"
        yield words, {"fixings.span_across": mm(most)}


def wider(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer a wider mount with its frame bolts as much further apart."""
    say = speaker(drive)
    across, width = float(drive.fixings.span_across), float(drive.mount.width)
    if not knows(file, "mount.width"):
        return
    for share in (0.25, 0.5):
        more = floor_mm(share * width)
        keys = {"mount.width": mm(width + more)}
        words = f"mount {say(width + more)} wide instead of {say(width)}"
        if has_frame_bolts(drive) and knows(file, "fixings.span_across") and across > 0:
            keys["fixings.span_across"] = mm(across + more)
            words += f", frame bolts {say(across + more)} apart"
        yield words, keys


def longer_foot(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer the rows of frame bolts further apart, along the pull of the mount on the frame."""
    say = speaker(drive)
    along, count = float(drive.fixings.span_along), drive.fixings.bolts.count
    if not has_frame_bolts(drive) or not knows(file, "fixings.span_along") or count % 2:
        return
    for more in (0.02, 0.04):
        words = f"rows of frame bolts {say(along + more)} apart instead of {say(along)}, on a longer foot"  # fmt: skip
        yield words, {"fixings.span_along": mm(along + more)}


def _loose(file: DriveFile) -> dict[str, object]:
    """Give the keys of bolts tightened to suit; a clamp given for the old ones goes."""
    clear = {"fixings.preload": None} if given(file, "fixings.preload") is not None else {}
    return {TORQUE: TO_SUIT, **clear}


def next_size(thread: cards.Thread) -> str | None:
    """Give the next coarse thread of the same system, or None past the largest."""
    sizes = SIZES if thread.designation.startswith("M") else INCH_SIZES
    now = float(thread.diameter)
    return next((s for s in sizes if float(cards.thread(s).diameter) > 1.1 * now), None)


def larger(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer frame bolts of the next size, tightened to suit."""
    fixings = drive.fixings
    if not has_frame_bolts(drive) or not knows(file, "fixings.bolts"):
        return
    bigger = next_size(fixings.bolts.thread)
    if bigger is None:
        return
    keys = {"fixings.bolts": f"{fixings.bolts.count} x {bigger}", **_loose(file)}
    words = f"{fixings.bolts.count} frame bolts {bigger} instead of {fixings.bolts.thread.designation}"  # fmt: skip
    yield f"{words}, tightened to suit", keys


def more(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer two more frame bolts of the same size; four more where two plates share them."""
    fixings = drive.fixings
    if not has_frame_bolts(drive) or not knows(file, "fixings.span_across"):
        return
    count = fixings.bolts.count + (4 if given(file, "mount.form") == "twin plates" else 2)
    size = fixings.bolts.thread.designation
    words = f"{count} frame bolts {size} instead of {fixings.bolts.count}, over the same spans"
    yield words, {"fixings.bolts": f"{count} x {size}"}


def tighten(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer bolts tightened by a wrench to what suits them, where they are looser or not told."""
    fixings = drive.fixings
    keys: dict[str, object] = {}
    words: list[str] = []
    loose = given(file, "fixings.preload") is None
    if (
        has_frame_bolts(drive)
        and loose
        and _looser(given(file, TORQUE), float(fixings.assembly_torque))
    ):
        keys[TORQUE] = TO_SUIT
        words.append("frame bolts to suit")
    bolts = drive.motor.bolts
    if family(drive) in METAL and given(file, "motor.preload") is None:
        torque = torque_for(bolts)
        if _looser(given(file, "motor.tightening_torque"), float(torque.split()[0])):
            keys["motor.tightening_torque"] = torque
            words.append(f"motor bolts to {torque}")
    if keys:
        yield "tighten by a wrench: " + ", ".join(words), keys


def _looser(now: float | None, full: float) -> bool:
    return now is None or float(now) < 0.95 * full


def better(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer frame bolts of class 10.9, tightened to suit; soft mounts take no more clamp."""
    bolts = drive.fixings.bolts
    if not has_frame_bolts(drive) or family(drive) not in METAL:
        return
    for name in CLASSES:
        grade = cards.bolt_class(name, float(bolts.thread.diameter))
        if float(grade.yield_strength) > 1.05 * float(bolts.grade.yield_strength):
            words = f"frame bolts of class {name}, tightened to suit"
            yield words, {"fixings.bolt_class": name, **_loose(file)}


def clean(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer bare, dry faces under the frame bolts."""
    if not has_frame_bolts(drive) or not knows(file, "fixings.surface"):
        return
    second = drive.mount.second if any(p.of_second for p in drive.mount.planes) else None
    lies = str((second or drive.mount.material).card.family)
    bare = {"steel": "dry steel", "aluminium": "aluminium on steel"}.get(lies)
    if bare and given(file, "fixings.surface") != bare:
        clear = {"fixings.friction": None} if given(file, "fixings.friction") is not None else {}
        words = "paint and grease off the faces under the frame bolts, put together dry"
        yield words, {"fixings.surface": bare, **clear}


def jack(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer a jack screw against the pull, where the bolts have slots."""
    if not drive.fixings.slotted or drive.fixings.jack or not knows(file, "fixings.jack_screw"):
        return
    size = drive.fixings.bolts.thread.designation
    words = f"a jack screw {size} that stops the mount along its slots"
    yield words, {"fixings.jack_screw": size, "fixings.jack_screw_class": "8.8"}


def round_holes(file: DriveFile, _: Drive) -> Iterator[Offer]:
    """Offer round holes instead of slots, where a chain tightener does the tightening."""
    if given(file, "fixings.holes") != "slotted":
        return
    gone = {k: None for k in file.given if k.startswith(("fixings.slot", "fixings.jack"))}
    yield "round holes instead of slots (tighten the chain by an idler)", {"fixings.holes": "round", **gone}  # fmt: skip


def sleeves(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer steel sleeves in the bolt holes of a plate of plastic or wood."""
    if given(file, "mount.form") != "plate" or family(drive) not in ("plastic", "wood"):
        return
    frame, motor = drive.fixings.bolts.thread, drive.motor.bolts.thread
    outer, own = mm(float(frame.diameter) + 0.004), mm(float(motor.diameter) + 0.003)
    words = f"steel sleeves of {outer} in the frame bolts' holes and {own} in the motor's, wide washers, frame bolts tightened to suit"  # fmt: skip
    surface = {"fixings.surface": "painted"} if given(file, "fixings.surface") else {}
    yield words, {
        "mount.form": "sleeved plate", "mount.sleeve_diameter": outer, "fixings.bolt_class": "8.8",
        "mount.motor_sleeve_diameter": own, "fixings.washer": "wide", **surface, **_loose(file),
    }  # fmt: skip


def mount_screws(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer the next size of the bolts of a motor's feet or of a cradle's bands."""
    if drive.motor.feet is None:
        return
    bolts: BoltSet = drive.motor.bolts
    if bigger := next_size(bolts.thread):
        torque = torque_for(replace(bolts, thread=cards.thread(bigger)))
        words = f"{bigger} instead of {bolts.thread.designation} at the motor, tightened to {torque}"  # fmt: skip
        clear = {"motor.preload": None} if given(file, "motor.preload") is not None else {}
        yield words, {"motor.bolts": f"{bolts.count} x {bigger}", "motor.tightening_torque": torque, **clear}  # fmt: skip


LOOK = "See that holes, edges and the frame have room for them."
CHANGES = (
    Change(name="bolts apart", cost=HAND, tools="drill", offers=apart, caution=LOOK),
    Change(name="wider mount", cost=WORKSHOP, tools="saw, drill", offers=wider),
    Change(name="longer foot", cost=WORKSHOP, tools="saw, drill", offers=longer_foot,
           caution="The frame must be wide enough under the longer foot."),
    Change(name="larger frame bolts", cost=PARTS, tools="drill, torque wrench", offers=larger, caution=LOOK),
    Change(name="more frame bolts", cost=PARTS, tools="drill, torque wrench", offers=more, caution=LOOK),
    Change(name="tighten bolts", cost=HAND, tools="torque wrench", offers=tighten,
           caution="Tighten with clean, lightly oiled threads; a thread in soft metal may not bear it."),
    Change(name="better bolts", cost=PARTS, tools="torque wrench", offers=better),
    Change(name="bare faces", cost=HAND, tools="scraper, solvent, gloves", offers=clean,
           caution="Solvent: open air, no flame, gloves."),
    Change(name="jack screw", cost=PARTS, tools="drill, tap or welded nut", offers=jack),
    Change(name="round holes", cost=WORKSHOP, tools="saw, drill; chain idler", offers=round_holes),
    Change(name="steel sleeves", cost=PARTS, tools="drill, saw, file, torque wrench", offers=sleeves),
    Change(name="larger motor bolts", cost=PARTS, tools="drill, torque wrench", offers=mount_screws, caution=LOOK),
)  # fmt: skip
