"""The chain line: sprocket nearer the motor, other teeth, other chain, lined up and measured."""

from __future__ import annotations

from collections.abc import Iterator

from .. import cards
from ..chains import OF_THE_OLD_CHAIN, teeth_for
from ..drivefile import DriveFile
from ..model import Drive
from ._common import FREE, HAND, PARTS, WORKSHOP, Change, Offer, mm, speaker

INBOARD = (0.005, 0.01)
CLEAR = 0.003  # m, between chain and plate
CHAIN_WIDE = 1.0  # of the pitch, half the width of a chain over its pins, about (common practice)
SKEW = 0.05  # deg, what a good straightedge and patience give (common practice, no source)
OFFSET = 0.0005  # of the centre distance
SLACK = 0.02
PLAY = 0.00001  # m
BEYOND = 0.025  # m, from the sprocket out to a third bearing
LEAST_KNOWN = 1.02


def inboard(_: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer the sprocket nearer the motor's face, as far as chain and plate clear each other."""
    say = speaker(drive)
    now = float(drive.shaft.face_overhang)
    plate = float(drive.mount.thickness) if drive.mount.flat_face else 0.0
    least = plate + CHAIN_WIDE * float(drive.chain.chain.pitch) + CLEAR
    for nearer in INBOARD:
        if now - nearer >= least:
            words = f"sprocket {say(nearer)} nearer the motor ({say(now - nearer)} from its face), the driven one as far"  # fmt: skip
            yield words, {"shaft.face_overhang": mm(now - nearer)}


def more_teeth(_: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer one to three teeth more on the motor."""
    now = int(drive.chain.driving_teeth)
    for more in (1, 2, 3):
        ratio = 100 * (1 - now / (now + more))
        words = f"{now + more} teeth on the motor instead of {now}: {ratio:.0f} % less pull at the wheel, {100 * more / now:.0f} % more speed"  # fmt: skip
        yield words, {"chain.driving_teeth": now + more}


def larger_pair(_: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer larger sprockets on both sides, at about the same ratio."""
    now, driven = int(drive.chain.driving_teeth), int(drive.chain.driven_teeth)
    for more in (2, 4):
        other = round(driven * (now + more) / now)
        words = f"sprockets of {now + more} and {other} teeth instead of {now} and {driven}, about the same ratio"  # fmt: skip
        yield words, {"chain.driving_teeth": now + more, "chain.driven_teeth": other}  # fmt: skip


def other_chain(_: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer everyday chains: the two next in strength, and the two that stand most skew."""
    own = drive.chain.chain
    strength = float(own.minimum_tensile_strength)
    known = [c for c in cards.chains() if c.availability != "rare" and c.id != own.id]
    able = [c for c in known if float(c.minimum_tensile_strength) > LEAST_KNOWN * strength]
    able.sort(key=lambda c: float(c.minimum_tensile_strength))
    loose = sorted(able, key=lambda c: -float(c.inner_width / c.pitch))
    for card in dict.fromkeys(c.id for c in (*able[:2], *loose[:2])):
        chain = cards.chain(card)
        driving, driven = teeth_for(drive, chain)
        words = f"chain {chain.designation} on sprockets of {driving} and {driven} teeth"
        old = {k.replace("__", "."): None for k in OF_THE_OLD_CHAIN}
        yield words, {"chain.type": card, "chain.driving_teeth": driving, "chain.driven_teeth": driven, **old}  # fmt: skip


def line_up(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer sprockets lined up and measured, where the file tells nothing as good."""
    offset = max(1e-4, round(OFFSET * float(drive.chain.centre_distance), 4))
    keys: dict[str, object] = {}
    if _worse(file, "chain.skew", SKEW * 3.14159265 / 180):
        keys["chain.skew"] = f"{SKEW:g} deg"
    if _worse(file, "chain.offset", offset):
        keys["chain.offset"] = mm(offset)
    if keys:
        words = " and ".join(f"{k.split('.')[1]} {v}" for k, v in keys.items())
        yield f"line the sprockets up with a straightedge and measure: {words}, if it measures this well", keys  # fmt: skip


def _worse(file: DriveFile, key: str, good: float) -> bool:
    """Tell whether a key is not given, or given worse than ``good`` (at its high end)."""
    found = file.given.get(key)
    return found is None or float(found.high or found.value) > 1.02 * good


def slack(file: DriveFile, _: Drive) -> Iterator[Offer]:
    """Offer a chain set to a sag that is then kept."""
    if _worse(file, "chain.slack", SLACK):
        yield f"chain set to a sag of {100 * SLACK:g} % of its free run, and kept there", {"chain.slack": f"{100 * SLACK:g} %"}  # fmt: skip


def play(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer the play of the front bearing measured."""
    say = speaker(drive)
    if _worse(file, "shaft.bearing_play", PLAY):
        yield f"measure the play of the motor's front bearing: {say(PLAY)}, if it measures this well (a new bearing if not)", {"shaft.bearing_play": mm(PLAY)}  # fmt: skip


def outboard(_: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer a third bearing beyond the sprocket, held by the frame."""
    say = speaker(drive)
    if drive.shaft.outboard is not None:
        return
    at = float(drive.shaft.face_overhang) + BEYOND
    words = f"a third bearing beyond the sprocket, {say(at)} from the motor's face, held by the frame"  # fmt: skip
    yield words, {"outboard.at": mm(at), "outboard.held_by": "frame"}


def ramp(_: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer a slower rise of the torque."""
    if drive.duty.starting_factor is not None:
        return
    now = 0.0 if drive.duty.ramp is None else float(drive.duty.ramp)
    for seconds in (0.5, 1.0):
        if seconds > 1.02 * now:
            yield f"ramp of {seconds:g} s in the controller", {"duty.ramp": f"{seconds:g} s"}


def reverse(_: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer less regeneration or reversed torque, and none."""
    now = float(drive.duty.reverse)
    if now > 0:
        half = f"{50 * now:.3g} %"
        yield f"regeneration or reversed torque at {half} of the drive torque", {"duty.reverse": half}  # fmt: skip
        yield "no regeneration, no reversed torque", {"duty.reverse": "0 %"}


GEARING = "Other teeth change the gearing: pull at the wheel falls, speed rises. Check the chain's length."
CHANGES = (
    Change(name="sprocket inboard", cost=HAND, tools="hexagon key, straightedge", offers=inboard,
           caution="Turn the drive by hand: chain, sprocket and hub must clear the plate all round."),
    Change(name="more teeth on the motor", cost=PARTS, tools="chain tool", offers=more_teeth, caution=GEARING),
    Change(name="larger sprockets, same ratio", cost=PARTS, tools="chain tool", offers=larger_pair,
           caution="See that the larger driven sprocket clears ground and guard."),
    Change(name="other chain", cost=PARTS, tools="chain tool", offers=other_chain,
           caution="Chain and both sprockets change together."),
    Change(name="line up", cost=HAND, tools="straightedge, feeler gauge or caliper", offers=line_up,
           caution="Battery off and chain still while you measure: fingers and chain do not mix."),
    Change(name="chain slack", cost=HAND, tools="rule", offers=slack,
           caution="Battery off and chain still while you measure: fingers and chain do not mix."),
    Change(name="bearing play", cost=HAND, tools="dial gauge", offers=play),
    Change(name="outboard bearing", cost=WORKSHOP, tools="bearing block, drill or welder", offers=outboard,
           caution="The shaft must reach that far, and the third bearing must be in line with the other two."),
    Change(name="ramp", cost=FREE, tools="controller settings", offers=ramp),
    Change(name="less regeneration", cost=FREE, tools="controller settings", offers=reverse,
           caution="Less regeneration means less braking by the motor: the brakes must do it."),
)  # fmt: skip
