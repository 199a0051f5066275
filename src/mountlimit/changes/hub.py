"""What holds the sprockets on their shafts: keys, screws, bolts, bush, freewheel."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from .. import cards
from ..drivefile import DriveFile
from ..held import BoltRing
from ..model import Drive
from ._common import HAND, PARTS, WORKSHOP, Change, Offer, given, mm, speaker, torque_for

LONG = 1.5  # diameters of the shaft: longer keys do not carry along their length (common practice)
USUAL = 1.1
STEPS = (1.5, 2.0, 3.0, 5.0)  # times the rated torque


def longer_key(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer keys as long as 1.5 shaft diameters, on either side."""
    sides = [("hub", drive.hub.key, float(drive.shaft.diameter))]
    if drive.driven.shaft_diameter is not None:
        sides.append(("driven", drive.driven.key, float(drive.driven.shaft_diameter)))
    for part, key, diameter in sides:
        if key is None:
            continue
        known = given(file, f"{part}.key") is not None
        if known and float(key.length) > LONG * diameter / 1.05:
            continue
        length = round(1000 * LONG * diameter)
        where = "motor" if part == "hub" else "driven"
        words = f"a key {length} mm long in the {where} sprocket's hub, if hub and shaft are that long"  # fmt: skip
        yield words, {f"{part}.key": f"{_sides(key.width, key.height)} x {length} mm"}


def _sides(*sizes: float) -> str:
    return " x ".join(f"{1000 * float(s):.4g}" for s in sizes)


def key_instead(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer a key in place of set screws, flats, a clamp, a bush or a pin."""
    diameter = float(drive.shaft.diameter)
    size = cards.key_for_shaft(diameter, "metric")
    if drive.hub.drive in ("key", "splines") or size is None:
        return
    length = round(1000 * USUAL * diameter)
    gone = ("drive", "set_screw", "flats", "flat_depth", "across_flats", "flat_length", "rated_torque",
            "screws", "screw_class", "screw_tightening_torque", "screw_preload", "shaft_friction", "pin",
            "pin_kind", "pin_shear_strength", "pin_circle", "pin_planes", "shear_pin")  # fmt: skip
    words = f"a key {_sides(size.width, size.height)} x {length} mm instead of the {drive.hub.drive}"  # fmt: skip
    clear = {f"hub.{k}": None for k in gone if f"hub.{k}" in file.given}
    yield words, {**clear, "hub.key": f"{_sides(size.width, size.height)} x {length} mm"}


def more_screws(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer two set screws instead of one."""
    found = given(file, "hub.set_screw")
    if drive.hub.drive == "set screw" and found and found[0] == 1:
        size = file.given["hub.set_screw"].text.lower().split("x", 1)[1].strip().upper()
        yield f"two set screws {size}, a quarter turn apart", {"hub.set_screw": f"2 x {size}"}


def sprocket_bolts(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer the bolts between a sprocket and its hub tightened, of class 10.9, and a size larger."""
    for part, ring, where in (("hub", drive.hub.bolts, "motor"), ("driven", drive.driven.bolts, "driven")):  # fmt: skip
        if ring is not None:
            yield from _ring(file, part, ring, where)


def _ring(file: DriveFile, part: str, ring: BoltRing, where: str) -> Iterator[Offer]:
    bolts, whose = ring.bolts, f"the {where} sprocket's bolts"
    clear = {f"{part}.preload": None} if given(file, f"{part}.preload") is not None else {}
    key = f"{part}.tightening_torque"
    torque = torque_for(bolts)
    now = given(file, key)
    if now is None or float(now) < 0.95 * float(torque.split()[0]):
        yield f"{whose} tightened to {torque}", {key: torque, **clear}
    strong = replace(bolts, grade=cards.bolt_class("10.9", float(bolts.thread.diameter)))
    if float(strong.grade.yield_strength) > 1.05 * float(bolts.grade.yield_strength):
        torque = torque_for(strong)
        yield f"{whose} of class 10.9, tightened to {torque}", {f"{part}.bolt_class": "10.9", key: torque, **clear}  # fmt: skip
    sizes = [cards.thread(s) for s in ("M5", "M6", "M8", "M10", "M12", "M16")]
    thread = next((t for t in sizes if float(t.diameter) > 1.1 * float(bolts.thread.diameter)), None)  # fmt: skip
    if thread is not None:
        size = thread.designation
        strong = replace(bolts, thread=thread, grade=cards.bolt_class("10.9", float(thread.diameter)))  # fmt: skip
        torque = torque_for(strong)
        words = f"{whose} {size} of class 10.9, tightened to {torque}"
        yield words, {f"{part}.bolts": f"{bolts.count} x {size}", f"{part}.bolt_class": "10.9", key: torque, **clear}  # fmt: skip


def thicker_pin(_: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer thicker pins through hub and shaft."""
    say = speaker(drive)
    for part, where in (("hub", "motor"), ("driven", "driven")):
        pin = getattr(drive, part).pin
        for times in (1.25, 1.6) if pin is not None and not pin.fuse else ():
            size = round(1000 * times * float(pin.diameter)) / 1000
            words = f"a pin of {say(size)} through the {where} sprocket's hub instead of {say(pin.diameter)}"
            yield words, {f"{part}.pin": mm(size)}


def bush(_: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer a taper bush or clamping hub rated for more."""
    grip = drive.hub.grip
    if grip is None or grip.rated_torque is None:
        return
    for times in STEPS[:3]:
        rated = f"{times * float(grip.rated_torque):.3g} N*m"
        yield f"a {grip.words} rated for {rated}", {"hub.rated_torque": rated}


def freewheel(file: DriveFile, _: Drive) -> Iterator[Offer]:
    """Offer a freewheel rated for more."""
    now = given(file, "driven.freewheel_torque")
    for times in STEPS if now is not None else ():
        rated = f"{times * float(now):.3g} N*m"
        yield f"a freewheel rated for {rated}", {"driven.freewheel_torque": rated}


def shaft(_: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer a thicker driven shaft or jackshaft with bearings to suit."""
    say = speaker(drive)
    for key, now, what in (
        ("driven.shaft_diameter", drive.driven.shaft_diameter, "driven shaft"),
        ("jackshaft.diameter", drive.jackshaft.diameter if drive.jackshaft else None, "jackshaft"),
    ):
        if now is None:
            continue
        for more in (0.005, 0.01):
            size = mm(float(now) + more)
            yield f"a {what} of {size} instead of {say(now)}, its bearings and hubs to suit", {key: size}  # fmt: skip


CHANGES = (
    Change(name="longer key", cost=PARTS, tools="file, saw", offers=longer_key),
    Change(name="key in the hub", cost=WORKSHOP, tools="keyway cutter or broach, mill", offers=key_instead,
           caution="A keyway weakens a thin shaft: see shaft.places."),
    Change(name="more set screws", cost=HAND, tools="drill, tap", offers=more_screws),
    Change(name="sprocket bolts", cost=PARTS, tools="torque wrench, drill", offers=sprocket_bolts,
           caution="See that holes and rim have room for larger bolts."),
    Change(name="thicker pin", cost=PARTS, tools="drill, reamer", offers=thicker_pin,
           caution="A larger hole through the shaft weakens it."),
    Change(name="larger bush", cost=PARTS, tools="torque wrench", offers=bush),
    Change(name="larger freewheel", cost=WORKSHOP, tools="by its maker", offers=freewheel),
    Change(name="thicker driven shaft", cost=WORKSHOP, tools="lathe, bearings", offers=shaft,
           caution="Bearings of another bore: give their designation or rating anew."),
)  # fmt: skip
