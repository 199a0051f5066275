"""More to hold the mount: gussets, a strut, a second plate, a brace beside it, more weld.

Sizes that the drive file does not tell are assumed and stand in the words.
"""

from __future__ import annotations

from collections.abc import Iterator

from ..drivefile import DriveFile
from ..model import Drive
from ..resolve import rests
from ._common import METAL, WORKSHOP, Change, Offer, family, floor_mm, given, knows, mm, speaker

STRUT = 0.012  # m, diameter of a rod that is not asked for
BACK = 0.15  # m, from the start of the strut back to the frame
SPACER = 0.016
ROOM = 0.01  # m, between motor and second plate
BRACED = (0.5,)  # of the span


def gussets(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer two gussets between leg and foot, tall and low."""
    say = speaker(drive)
    if not knows(file, "mount.gussets") or drive.mount.gussets is not None or family(drive) not in METAL:  # fmt: skip
        return
    free = float(given(file, "mount.free_length"))
    foot = float(given(file, "mount.heel_to_bolts") or given(file, "mount.foot_length") or 0.5 * free)  # fmt: skip
    for share in (0.8, 0.5):
        height, depth = floor_mm(share * free), floor_mm(0.9 * foot)
        words = f"two gussets, {say(height)} up the leg and {say(depth)} along the foot"
        keys = {"mount.gussets": 2, "mount.gusset_height": mm(height), "mount.gusset_depth": mm(depth)}  # fmt: skip
        yield words, keys | {"mount.bend_radius": None, "mount.warping_held": None}


def strut(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer a strut from the motor's rear, and one from the plate's top, back to the frame."""
    if given(file, "mount.form") != "plate" or family(drive) not in METAL:
        return
    free = float(given(file, "mount.free_length"))
    rear = floor_mm(1.9 * float(drive.motor.centre_of_mass))
    top = floor_mm(float(drive.motor.bolt_circle) / 2)
    yield _strut(drive, "motor", rear, 0.0, free)
    yield _strut(drive, "plate", 0.0, top, free)


def _strut(drive: Drive, start: str, behind: float, height: float, free: float) -> Offer:
    say = speaker(drive)
    where = f"the motor's rear ({say(behind)} behind its face)" if start == "motor" else f"the plate's top ({say(height)} above the shaft)"  # fmt: skip
    words = f"a steel rod of {say(STRUT)} from {where} to the frame {say(behind + BACK)} behind the face, as low as the bolts"  # fmt: skip
    keys = {
        "mount.form": "plate with strut", "second.material": "s235", "mount.strut_from": start,
        "mount.strut_diameter": mm(STRUT), "mount.strut_start_height": mm(height),
        "mount.strut_end_height": mm(-free), "mount.strut_end_behind": mm(behind + BACK),
    }  # fmt: skip
    return words, keys | ({"mount.strut_start_behind": mm(behind)} if start == "motor" else {})


def second_plate(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer a second plate behind the motor on four spacers, bolted to the frame as the first."""
    say = speaker(drive)
    if given(file, "mount.form") != "plate" or family(drive) not in METAL:
        return
    bolts = drive.fixings.bolts
    gap = floor_mm(2 * float(drive.motor.centre_of_mass) + ROOM)
    across = floor_mm(float(drive.mount.width) - SPACER - 0.004)
    top = floor_mm(float(drive.motor.bolt_circle) / 2)
    clear = (float(drive.fixings.washer_diameter) + SPACER) / 2 + 0.003
    low = max(-top, floor_mm(clear - float(given(file, "mount.free_length"))) + 0.001)
    if top - low < 2 * SPACER:
        return
    words = (
        f"a second plate like the first, {say(gap)} behind it, on four spacers of {say(SPACER)}, {say(across)} apart across, "
        f"{say(top)} above and {say(-low)} below the shaft; {2 * bolts.count} frame bolts in all"
    )
    yield words, {
        "mount.form": "twin plates", "mount.gap": mm(gap), "mount.spacers": 4,
        "mount.spacer_diameter": mm(SPACER), "mount.spacers_across": mm(across),
        "mount.spacers_along": mm(top - low), "mount.spacers_above": mm((top + low) / 2),
        "mount.motor_hangs": "between", "mount.frame_lies": "behind",
        "fixings.bolts": f"{2 * bolts.count} x {bolts.thread.designation}",
    }  # fmt: skip


def brace(_: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer a brace that halves the free span of the frame member."""
    say = speaker(drive)
    frame = drive.frame
    if frame.span is None or frame.member == "rigid":
        return
    for share in BRACED:
        span = floor_mm(share * float(frame.span))
        words = f"frame member braced beside the mount: held every {say(span)} instead of {say(frame.span)}"  # fmt: skip
        yield words, {"frame.span": mm(span)}


def wall(_: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer a frame member with a thicker wall."""
    say = speaker(drive)
    frame = drive.frame
    if frame.wall is None or frame.member in ("rigid", "flat bar"):
        return
    now = float(frame.wall)
    for more in (0.001, 0.002):
        words = f"frame member with a wall of {say(now + more)} instead of {say(now)}, or a sleeve over it"  # fmt: skip
        yield words, {"frame.wall": mm(now + more)}


def pad(_: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer a pad across the frame member, on which the whole mount bears."""
    say = speaker(drive)
    plane = next((p for p in drive.mount.planes if p.face_half is not None), None)
    if plane is None:
        return
    wide = rests.whole(drive.mount, plane, drive.fixings)
    if wide > 2 * float(plane.face_half):
        words = f"a pad {say(wide)} wide under the mount, welded across the frame member"
        yield words, {"frame.face_width": mm(wide)}


def weld(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer a larger weld between mount and frame."""
    say = speaker(drive)
    if not knows(file, "fixings.weld_leg") or not drive.mount.welds:
        return
    leg = 1.5 * float(given(file, "fixings.weld_leg") or 0.7 * float(drive.mount.thickness))
    if leg <= float(drive.mount.thickness):
        yield f"a weld with a leg of {say(leg)}", {"fixings.weld_leg": mm(leg)}


WELDING = "saw, welder"
CHANGES = (
    Change(name="gussets", cost=WORKSHOP, tools=WELDING, offers=gussets),
    Change(name="strut", cost=WORKSHOP, tools="saw, drill, welder or rod ends", offers=strut,
           caution="The strut's sizes are assumed: measure where your frame can take it and put those in the file."),
    Change(name="second plate", cost=WORKSHOP, tools="saw, drill, lathe or cut tube", offers=second_plate,
           caution="The second plate's sizes are assumed: the motor must fit in the gap and the frame must reach behind both plates."),
    Change(name="frame brace", cost=WORKSHOP, tools=WELDING, offers=brace),
    Change(name="thicker frame wall", cost=WORKSHOP, tools=WELDING, offers=wall),
    Change(name="pad under the mount", cost=WORKSHOP, tools=WELDING, offers=pad),
    Change(name="larger weld", cost=WORKSHOP, tools="welder", offers=weld),
)  # fmt: skip
