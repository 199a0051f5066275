"""Each change: where it is offered, what it edits, that the file written by hand is the same drive."""

from __future__ import annotations

import pytest
from edited import rewritten_by_hand

from conftest import ANGLE, WELDED, changed, drive_file
from mountlimit import limits
from mountlimit.changes import CHANGES, COSTS, made
from mountlimit.errors import MountlimitError
from mountlimit.resolve import resolve

SET_SCREW = {"hub__key": None, "hub__set_screw": "1 x M6"}
SLOTS = {"fixings__holes": "slotted"}
PLASTIC = {"mount__material": "hdpe", "mount__thickness": "20 mm", "shaft__face_overhang": "40 mm"}
SADDLE = {
    "mount__form": "saddle", "mount__material": "s235", "mount__thickness": "6 mm",
    "mount__grip_length": "60 mm", "frame__member": "round tube", "frame__size": "40 mm",
    "frame__wall": "3 mm", "fixings__bolts": None, "fixings__bolt_class": None,
    "fixings__span_across": None, "fixings__span_along": None, "fixings__clamp_bolts": "2 x M8",
    "fixings__clamp_surface": "painted", "fixings__clamp_tightening_torque": "8 N*m",
}  # fmt: skip
FEET = {
    "mount__form": "foot motor", "mount__thickness": "10 mm", "mount__free_length": None,
    "motor__bolt_circle": None, "motor__shaft_height": "71 mm", "motor__foot_across": "112 mm",
    "motor__foot_along": "90 mm", "motor__foot_to_face": "45 mm", "mount__width": "200 mm",
    "fixings__span_across": "170 mm", "fixings__span_along": "170 mm",
}  # fmt: skip

# change: a drive it is for, the keys it edits, a drive it is not for (None: it is for every one)
ROWS = {
    "thicker plate": ({}, {"mount.thickness"}, {"mount__thickness": "30 mm", "shaft__face_overhang": "50 mm"}),
    "other material": ({}, {"mount.material"}, {"mount__material": "s355"}),
    "gussets": ({f"mount__{k}": v for k, v in ANGLE.items()}, {"mount.gussets", "mount.gusset_height", "mount.gusset_depth"}, {}),
    "strut": ({}, {"mount.form", "mount.strut_from", "mount.strut_diameter", "mount.strut_end_behind"}, PLASTIC),
    "second plate": ({}, {"mount.form", "mount.gap", "mount.spacers", "fixings.bolts"}, PLASTIC),
    "frame brace": ({}, {"frame.span"}, {"frame__member": "rigid"}),
    "thicker frame wall": ({}, {"frame.wall"}, {"frame__member": "rigid"}),
    "pad under the mount": ({"frame__size": "30 mm", "frame__wall": "2 mm"}, {"frame.face_width"}, {"frame__face_width": "200 mm"}),
    "larger weld": ({**WELDED, "fixings__weld_leg": "3 mm"}, {"fixings.weld_leg"}, {}),
    "bolts apart": ({"fixings__span_across": "70 mm"}, {"fixings.span_across"}, {"fixings__span_across": "98 mm"}),
    "wider mount": ({}, {"mount.width", "fixings.span_across"}, None),
    "longer foot": ({}, {"fixings.span_along"}, WELDED),
    "larger frame bolts": ({}, {"fixings.bolts", "fixings.tightening_torque"}, {"fixings__bolts": "4 x M20", "mount__width": "200 mm", "fixings__span_across": "120 mm"}),
    "more frame bolts": ({}, {"fixings.bolts"}, WELDED),
    "tighten bolts": ({}, {"fixings.tightening_torque", "motor.tightening_torque"}, {"fixings__tightening_torque": "40 N*m", "motor__tightening_torque": "20 N*m"}),
    "better bolts": ({}, {"fixings.bolt_class", "fixings.tightening_torque"}, {"fixings__bolt_class": "10.9"}),
    "bare faces": ({"fixings__surface": "painted"}, {"fixings.surface"}, {"fixings__surface": "aluminium on steel"}),
    "jack screw": (SLOTS, {"fixings.jack_screw", "fixings.jack_screw_class"}, {}),
    "round holes": (SLOTS, {"fixings.holes"}, {}),
    "steel sleeves": (PLASTIC, {"mount.form", "mount.sleeve_diameter", "fixings.washer"}, {}),
    "larger motor bolts": (FEET, {"motor.bolts", "motor.tightening_torque"}, {}),
    "clamp bolts": (SADDLE, {"fixings.clamp_tightening_torque"}, {}),
    "bare tube": (SADDLE, {"fixings.clamp_surface"}, {}),
    "more clamps": (SADDLE, {"fixings.clamp_bolts", "mount.grip_length"}, {}),
    "longer clamp": (SADDLE, {"mount.grip_length"}, {}),
    "sprocket inboard": ({"shaft__face_overhang": "40 mm"}, {"shaft.face_overhang"}, {"shaft__face_overhang": "26 mm"}),
    "more teeth on the motor": ({}, {"chain.driving_teeth"}, None),
    "larger sprockets, same ratio": ({}, {"chain.driving_teeth", "chain.driven_teeth"}, None),
    "other chain": ({}, {"chain.type", "chain.driving_teeth", "chain.driven_teeth"}, None),
    "line up": ({}, {"chain.skew", "chain.offset"}, {"chain__skew": "0.03 deg", "chain__offset": "0.1 mm"}),
    "chain slack": ({}, {"chain.slack"}, {"chain__slack": "1.5 %"}),
    "bearing play": ({}, {"shaft.bearing_play"}, {"shaft__bearing_play": "0.01 mm"}),
    "outboard bearing": ({}, {"outboard.at", "outboard.held_by"}, {"outboard__at": "60 mm"}),
    "ramp": ({}, {"duty.ramp"}, {"duty__ramp": "2 s"}),
    "less regeneration": ({"duty__reverse": "40 %"}, {"duty.reverse"}, {}),
    "longer key": ({"hub__key": "4 x 4 x 10 mm"}, {"hub.key"}, {"hub__key": "4 x 4 x 20 mm"}),
    "key in the hub": (SET_SCREW, {"hub.key", "hub.set_screw"}, {}),
    "more set screws": (SET_SCREW, {"hub.set_screw"}, {}),
    "sprocket bolts": ({"driven__bolts": "6 x M5", "driven__bolt_circle": "50 mm"}, {"driven.tightening_torque"}, {}),
    "thicker pin": ({"driven__pin": "5 mm", "driven__shaft_diameter": "25 mm"}, {"driven.pin"}, {}),
    "larger bush": ({"hub__key": None, "hub__drive": "taper bush", "hub__rated_torque": "60 N*m"}, {"hub.rated_torque"}, {}),
    "larger freewheel": ({"driven__freewheel_torque": "80 N*m"}, {"driven.freewheel_torque"}, {}),
    "thicker driven shaft": ({"driven__shaft_diameter": "20 mm", "driven__overhang": "30 mm"}, {"driven.shaft_diameter"}, {}),
}  # fmt: skip
BY_NAME = {c.name: c for c in CHANGES}


def _edits(name: str, **changes: object) -> list:
    file = drive_file(**changes)
    return BY_NAME[name].edits(file, resolve(file))


def test_every_change_has_its_row():
    """A new change needs a row here; its name is used once; its cost is one of the classes."""
    assert ROWS.keys() == BY_NAME.keys()
    assert len(BY_NAME) == len(CHANGES)
    assert all(0 <= c.cost < len(COSTS) and c.tools for c in CHANGES)


@pytest.mark.parametrize("name", ROWS)
def test_it_applies_and_edits_what_it_says(name):
    """It is offered, edits its keys, and the file written by hand with them reads the same."""
    changes, keys, other = ROWS[name]
    file = drive_file(**changes)
    edits = _edits(name, **changes)
    assert edits
    assert keys <= edits[0].keys.keys()
    fits = 0
    for edit in edits:
        try:
            edited, written = made(file, (edit,))
            resolve(edited)
        except MountlimitError:  # refused in words; one size at least must fit
            continue
        fits += 1
        by_hand = rewritten_by_hand(changed(**changes), written, file.name)
        assert {k: g.value for k, g in by_hand.given.items()} == {
            k: g.value for k, g in edited.given.items()
        }
        assert by_hand.given != file.given
    assert fits
    if other is not None:
        assert not _edits(name, **other)


def test_tightened_to_suit_what_it_is_at_last():
    """Two changes of the frame bolts together take the torque that suits both, not either."""
    file = drive_file()
    drive = resolve(file)
    larger = BY_NAME["larger frame bolts"].edits(file, drive)[0]
    better = BY_NAME["better bolts"].edits(file, drive)[0]
    torques = [
        float(made(file, edits)[1]["fixings.tightening_torque"].split()[0])
        for edits in ((larger,), (better,), (larger, better))
    ]
    # M8 8.8, M10 8.8, M8 10.9, M10 10.9 in VDI 2230 part 1 table A1, friction 0.12: 25, 48, 36, 71
    assert torques == pytest.approx([48, 36, 71], rel=0.06)
    assert not larger.meets(better)


def test_what_cannot_go_together():
    """Two sizes of one kind, and keys at odds, are never put into one set."""
    file = drive_file()
    drive = resolve(file)
    thick = BY_NAME["thicker plate"].edits(file, drive)
    assert thick[0].meets(thick[1])
    strut = BY_NAME["strut"].edits(file, drive)[0]
    assert strut.meets(BY_NAME["second plate"].edits(file, drive)[0])
    assert not strut.meets(thick[0])


@pytest.mark.parametrize(
    ("name", "check", "sign"),
    [("ramp", "bolt_slip", 1), ("more teeth on the motor", "bolt_slip", 1), ("thicker plate", "mount_section", 1),
     ("larger frame bolts", "bolt_slip", 1), ("longer key", "key", 1), ("sprocket inboard", "motor_shaft", 1),
     ("frame brace", "alignment", 1), ("line up", "alignment", 1)],
)  # fmt: skip
def test_it_helps_what_it_is_for(name, check, sign):
    """On the beams' route: the change raises the safe current of the check it is meant for."""
    changes = {"mount__route": "sections", "hub__key": "4 x 4 x 10 mm", "shaft__face_overhang": "40 mm",
               "fixings__tightening_torque": "15 N*m"}  # fmt: skip
    file = drive_file(**changes)
    edit = BY_NAME[name].edits(file, resolve(file))[0]
    before, after = (
        next(x.safe for x in limits.find(f).limits if x.check.name == check and x.counts)
        for f in (file, made(file, (edit,))[0])
    )
    assert sign * after > sign * before
