"""One drive for every way these drives are known to fail, in which that way comes first.

Each is the same sound drive made unsound: ``also`` sets the scene (another form, a thinner shaft),
``worse`` is what makes the failure come first, ``cure`` is what a mechanic would do, after which
something else comes first.  The drives are constructed; no real machine.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from functools import cache
from typing import Any

import pytest

from conftest import ANGLE, drive_file
from mountlimit import evaluate, limits
from mountlimit.limits import Found, Limit
from mountlimit.resolve import resolve
from sound import ON_A_TUBE, SOUND, Edit

BENT: Edit = {f"mount__{k}": v for k, v in ANGLE.items()}
THIN_SHAFT: Edit = {
    "shaft__diameter": "15 mm",
    "shaft__bearing": "6303",
    "hub__key": "5 x 5 x 25 mm",
}
TIGHTENED: Edit = {  # by the wrench: what the clamp is depends on what is clamped
    "fixings__preload": None, "fixings__friction": None, "fixings__bolts": "4 x M12",
    "fixings__tightening_torque": "80 N*m", "fixings__surface": "dry steel",
}  # fmt: skip


@dataclass(frozen=True)
class Mode:
    """One way of failing: what is seen, the check it is, and the drive in which it comes first."""

    seen: str
    check: str
    worse: Edit
    cure: Edit
    also: Edit = field(default_factory=dict)
    gives: bool = True  # the part gives: it also gives first

    @property
    def drive(self) -> Edit:
        """The drive that fails so."""
        return {**SOUND, **self.also, **self.worse}

    @property
    def cured(self) -> Edit:
        """The same after the cure."""
        return {**self.drive, **self.cure}


MODES = {
    "chain walks off by lean": Mode(
        "in line when parked; at full pull the chain runs to one side and climbs off, nothing stays bent",
        "alignment", {"mount__thickness": "4 mm"}, {"mount__thickness": "20 mm"},
        {"mount__material": "7075", "chain__driving_teeth": 21, "chain__slack": "1 %", "chain__tooth_relief": 0.03}),
    "bolts slip in their slots": Mode(
        "the chain goes slack in steps, bright marks beside the washers",
        "bolt_slip", {"fixings__preload": "5 kN"}, {"fixings__preload": "24 kN"},
        {"fixings__holes": "slotted"}),
    "clamp turns on its tube": Mode(
        "the bracket has turned, paint is rubbed off in a band",
        "tube_grip", {"fixings__clamp_preload": "1.5 kN"},
        {"fixings__clamp_preload": "6 kN", "fixings__clamp_surface": "dry steel"}, ON_A_TUBE),
    "set screw lets go": Mode(
        "the sprocket wanders on the shaft or turns on it",
        "set_screw", {"hub__drive": "set screw", "hub__set_screw": "1 x M6", "hub__key": None},
        {"hub__drive": "key", "hub__set_screw": None, "hub__key": "8 x 7 x 30 mm"}),
    "key crushes": Mode(
        "a click at every reversal, then the shaft spins free",
        "key", {"hub__key": "8 x 7 x 8 mm"}, {"hub__key": "8 x 7 x 30 mm"}),
    "motor shaft bends": Mode(
        "the sprocket wobbles; later the shaft breaks flush with the housing",
        "motor_shaft", {"shaft__yield_strength": "300 MPa"},
        {"shaft__yield_strength": "700 MPa", "shaft__ultimate_strength": "900 MPa"}, THIN_SHAFT),
    "front bearing is dented": Mode(
        "growl and play at the sprocket after hard starts",
        "front_bearing", {"shaft__bearing": "6005"}, {"shaft__bearing": "6305"}),
    "mount yields": Mode(
        "the plate stays bent after a hard start",
        "mount_section", {"mount__material": "1050"}, {"mount__material": "6061"},
        {"mount__thickness": "8 mm", "chain__pull": "across"}),
    "hole tears out": Mode(
        "the plate rips open from a bolt hole to its edge",
        "bolt_bearing", {"fixings__edge": "6 mm"}, {"fixings__edge": "20 mm"},
        {"mount__material": "1050", "fixings__bolts": "2 x M8", "fixings__bolt_class": "10.9",
         "fixings__span_along": "0 mm", "fixings__preload": "18 kN", "fixings__friction": 0.25,
         "chain__pull": "20 deg"}),
    "frame bolt breaks": Mode(
        "a bolt is found in two; soft ones were tightened like good ones",
        "bolt_strength", {"fixings__bolt_class": "4.6"},
        {"fixings__bolt_class": "8.8", "fixings__preload": "7 kN"},
        {"fixings__bolts": "2 x M5", "fixings__preload": "4.5 kN", "fixings__span_along": "0 mm",
         "fixings__edge": "10 mm", "fixings__friction": 0.3, "shaft__face_overhang": "45 mm"}),
    "threads in the motor's face strip": Mode(
        "the motor nods, its bolts turn without getting tight",
        "motor_threads", {"motor__thread_depth": "3 mm"}, {"motor__thread_depth": "10 mm"},
        {"motor__bolts": "3 x M5", "motor__thread_strength": "100 MPa", "motor__preload": "4 kN"}),
    "fatigue at a bend": Mode(
        "a hairline inside a bend, then a sudden break on an ordinary day",
        "mount_fatigue", {"mount__material": "1050"}, {"mount__material": "s235"},
        {**BENT, "duty__reverse": 1, "mount__bend_radius": "1 mm", "fixings__preload": "30 kN"}, gives=False),
    "chain breaks": Mode(
        "a bang and no drive",
        "chain_static", {"chain__type": "25"}, {"chain__type": "50"}),
    "chain jumps teeth": Mode(
        "cracking noise at full pull, hooked teeth",
        "alignment", {"chain__slack": "10 %"}, {"chain__slack": "3 %"}, {"chain__driving_teeth": 11}),
    "teeth shear off": Mode(
        "aluminium chips below the sprocket, teeth missing",
        "driven_teeth", {"driven__sprocket_material": "pom_c"}, {"driven__sprocket_material": "c75s"},
        {"driven__tooth_share": 0.8}),
    "sprocket's bolts let go": Mode(
        "play at reversal, later the sprocket falls off its hub",
        "hub_bolt_slip", {"hub__bolts": "3 x M5"}, {"hub__bolts": "6 x M8", "hub__bolt_circle": "70 mm", "hub__preload": "15 kN"},
        {"hub__bolt_circle": "45 mm", "hub__bolt_class": "8.8", "hub__preload": "6 kN", "hub__friction": 0.15, "duty__reverse": 1}),
    "driving sprocket's weld lets go": Mode(
        "a short fillet between sprocket and hub cracks",
        "hub_weld", {"hub__weld_share": 0.25}, {"hub__weld_share": 1, "hub__weld_sides": 2},
        {"hub__weld_diameter": "40 mm", "hub__weld_leg": "3 mm", "hub__weld_material": "s235"}),
    "driven sprocket's weld lets go": Mode(
        "the same on the axle, where the torque is larger",
        "driven_weld", {"driven__weld_share": 0.3}, {"driven__weld_share": 1, "driven__weld_sides": 2, "driven__weld_leg": "6 mm"},
        {"driven__weld_diameter": "50 mm", "driven__weld_leg": "3 mm", "driven__weld_material": "s235"}),
    "freewheel breaks": Mode(
        "a crunch, and no drive one way",
        "freewheel", {"driven__freewheel_torque": "80 N*m"}, {"driven__freewheel_torque": "900 N*m"}),
    "driven shaft bends": Mode(
        "the wheel wobbles, the chain goes loose once a turn",
        "driven_shaft", {"driven__overhang": "60 mm"}, {"driven__overhang": "25 mm", "driven__shaft_diameter": "40 mm"},
        {"driven__shaft_diameter": "20 mm"}),
    "plywood loses its clamp": Mode(
        "tight on the first day, slack after a week",
        "bolt_slip", {"mount__material": "birch_ply", "mount__thickness": "18 mm"},
        {"mount__material": "s235", "mount__thickness": "12 mm"}, TIGHTENED),
}  # fmt: skip
EVERY = pytest.mark.parametrize("name", MODES)


@cache
def _found(edit: tuple[tuple[str, Any], ...]) -> Found:
    return limits.find(drive_file(**dict(edit)))


def found(edit: Edit) -> Found:
    """Find every limit of an edited drive, once."""
    return _found(tuple(edit.items()))


def lowest(of: Found) -> Limit:
    """Give the lowest of all lines, life and current held for hours included."""
    return min(of.limits, key=lambda x: x.safe)


def limit(of: Found, check: str) -> Limit:
    """Give the line of a check."""
    return next(x for x in of.limits if x.check.name == check)


def governing(of: Found, line: Limit, level: str = "safe") -> evaluate.Governing:
    """Give the row and load case that governs a line at its own current."""
    drive, current = (resolve(of.file, dict(line.corner)), line.safe)
    if level == "gives":
        drive, current = of.drive, line.gives
    seen = evaluate.governing(drive, line.check, current, level)
    assert seen is not None
    return seen


def test_the_sound_drive_is_sound():
    """Nothing that counts is used up below twice the wanted current; the chain is its weakest part."""
    of = found(SOUND)
    assert of.first_safe.safe > 2 * float(of.drive.current.wanted)
    assert of.first_safe.check.name == "chain_static"


@EVERY
def test_it_comes_first(name):
    """The smallest safe current is that of the mode; a part that gives, gives first too."""
    mode = MODES[name]
    of = found(mode.drive)
    first = of.first_safe if mode.gives else lowest(of)
    assert first.check.name == mode.check
    if mode.gives:
        assert of.first_gives is not None
        assert of.first_gives.check.name == mode.check


@EVERY
def test_what_was_done_brought_it_on(name):
    """Without the one thing the safe current of that part is higher, or nothing asks for it."""
    mode = MODES[name]
    better = {x.check.name: x.safe for x in found(mode.cured).limits}
    assert better.get(mode.check, math.inf) > 1.2 * limit(found(mode.drive), mode.check).safe


@EVERY
def test_after_the_cure_something_else_comes_first(name):
    """The cure takes the mode off the top of the list and raises the safe current."""
    mode = MODES[name]
    before, after = found(mode.drive), found(mode.cured)
    if mode.gives:
        assert after.first_safe.check.name != mode.check
        assert after.first_safe.safe > 1.2 * before.first_safe.safe
    else:
        assert lowest(after).check.name != mode.check
        assert lowest(after).safe > 1.2 * lowest(before).safe


def test_the_chain_walks_off_before_the_mount_yields():
    """It gives by walking off sideways; the plate would stay bent only at a larger current."""
    of = found(MODES["chain walks off by lean"].drive)
    line = limit(of, "alignment")
    assert governing(of, line, "gives").row.station == "walks off by skew"
    assert limit(of, "mount_section").gives > 1.2 * line.gives


def test_the_chain_jumps_by_its_slack():
    """It gives by jumping teeth, and the line of sprockets has nothing to do with it."""
    of = found(MODES["chain jumps teeth"].drive)
    line = limit(of, "alignment")
    assert governing(of, line, "gives").row.station == "jumps teeth by slack"
    assert line.safe < line.gives


WEAK = {"driven__freewheel_torque": "80 N*m"}  # so that in steel the freewheel is the lowest line


def test_wood_creeps_out_of_line():
    """Held for hours a plywood plate leans out of line below every other current; steel does not."""
    wood = found({**SOUND, **WEAK, "mount__material": "birch_ply", "mount__thickness": "18 mm"})
    assert lowest(wood).check.name == "running_alignment"
    steel = found({**SOUND, **WEAK})
    assert lowest(steel).check.name == "freewheel"
    assert limit(steel, "running_alignment").safe > 2 * limit(wood, "running_alignment").safe


STOPS = {"motor__speed": "750 rpm", "policy__jam": True}


def test_a_dead_stop_comes_first():
    """The driven side jams: the rotor running on sets the first limit, far below that of a start."""
    running, slow = found({**SOUND, **STOPS}), found({**SOUND, **STOPS, "motor__speed": "150 rpm"})
    assert governing(running, running.first_safe).case.startswith("jam")
    assert running.first_safe.safe < float(running.drive.current.wanted)
    never = found({**SOUND, "motor__speed": "750 rpm"})
    assert not governing(never, never.first_safe).case.startswith("jam")
    assert running.first_safe.safe < 0.5 * never.first_safe.safe
    assert slow.first_safe.safe > 2 * float(slow.drive.current.wanted)
