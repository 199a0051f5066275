"""What a broken part's look means: which checks can have done it, and what the look itself says.

One table, read by ``failure``.  Names of checks stand here as words only.
"""

from __future__ import annotations

# A look, and what people call it.
LOOKS: dict[str, tuple[str, ...]] = {
    "bent": ("twisted", "bowed", "buckled", "crooked", "stretched"),
    "snapped": ("broken", "broke", "parted", "torn", "in two"),
    "sheared": ("shorn", "cut", "cut off"),
    "stripped": ("pulled out", "threads gone", "torn out"),
    "slipped": ("crept", "loose", "moved", "turned", "spun", "slid"),
    "thrown": ("off", "came off", "jumped", "derailed", "thrown off"),
    "worn": ("rough", "loud", "longer", "elongated", "worn out"),
    "cracked": ("beach marks", "cracked with beach marks", "fatigue", "tired", "crack", "hairline"),
    "crushed": ("wallowed", "oval", "dented", "rolled over", "mushroomed", "hammered"),
}

# What a look says of how it happened, and where that is from.
SAYS: dict[str, tuple[str, str]] = {
    "bent": ("one pull or knock took it past its yield strength; nothing tired", "common practice, no source"),
    "snapped": ("dull grey with shear lips or a cup and cone: torn in one pull, and a tough steel is bent and necked first; "
                "flat with rings: tired (look again, and say cracked)", "Shigley's Mechanical Engineering Design ch. 6 for the rings; the rest from memory"),
    "sheared": ("smeared one way: cut in one pull; of a bolt, the joint had slipped on to it first", "from memory"),
    "stripped": ("thread of the nut or the soft part torn out in one pull, or bolted in too little of it", "from memory"),
    "slipped": ("friction was passed: too little clamp, paint or oil between, or a knock", "common practice, no source"),
    "thrown": ("the chain left its line: mount bent over under load, sprocket crept, or chain slack", "common practice, no source"),
    "worn": ("a matter of hours and dirt, not of one pull", "common practice, no source"),
    "cracked": ("rings like those on a beach: the crack grew start by start or turn by turn, from a notch; the rough rest tore at the "
                "end, and the smaller it is the lower the load was", "Shigley's Mechanical Engineering Design ch. 6"),
    "crushed": ("pressed past what the softer piece bears, or hammered by play, often both", "common practice, no source"),
}  # fmt: skip

_SHAFT, _KEY, _BOLTS = "bent snapped", "sheared crushed", "snapped sheared bent"
_TIRED, _WORN, _DENTED = "cracked snapped", "worn cracked", "crushed worn"

# Check -> the looks it can have made.
MADE_BY: dict[str, str] = {
    "alignment": "thrown", "running_alignment": "worn", "axial_hold": "slipped thrown",
    "band_grip": "slipped", "band_screw": "snapped stripped bent",
    "bearing_life": _WORN, "rear_bearing_life": _WORN, "outboard_bearing_life": _WORN,
    "driven_bearing_life": _WORN, "jackshaft_bearing_life": _WORN,
    "front_bearing": _DENTED, "rear_bearing": _DENTED, "outboard_bearing": _DENTED,
    "driven_bearings": _DENTED, "jackshaft_bearings": _DENTED,
    "bolt_bearing": "crushed snapped sheared", "hub_bolt_holes": "crushed", "driven_bolt_holes": "crushed",
    "bolt_slip": "slipped cracked", "motor_face_slip": "slipped cracked", "foot_slip": "slipped cracked",
    "hub_bolt_slip": "slipped", "driven_bolt_slip": "slipped",
    "hub_bolt_loosening": "slipped cracked", "driven_bolt_loosening": "slipped cracked",
    "bolt_strength": f"{_BOLTS} stripped", "motor_bolts": _BOLTS, "foot_bolts": _BOLTS,
    "hub_bolts": _BOLTS, "driven_bolts": _BOLTS, "motor_threads": "stripped",
    "chain_static": "snapped bent", "second_chain_static": "snapped bent",
    "chain_fatigue": _TIRED, "second_chain_fatigue": _TIRED,
    "chain_power": _WORN, "second_chain_power": _WORN,
    "chain_pin_pressure": "worn", "second_chain_pin_pressure": "worn",
    "motor_shaft": _SHAFT, "driven_shaft": _SHAFT, "jackshaft": _SHAFT,
    "shaft_fatigue": _TIRED, "driven_shaft_fatigue": _TIRED, "jackshaft_fatigue": _TIRED,
    "key": _KEY, "driven_key": _KEY, "jackshaft_keys": _KEY,
    "hub_pin": "sheared snapped bent", "driven_pin": "sheared snapped bent",
    "set_screw": "slipped sheared", "taper_bush": "slipped", "tube_grip": "slipped", "tube_crush": "crushed",
    "flats": "crushed slipped", "freewheel": "snapped stripped slipped",
    "hub_weld": "snapped bent", "driven_weld": "snapped bent", "frame_weld": "snapped bent",
    "hub_weld_fatigue": _TIRED, "driven_weld_fatigue": _TIRED, "frame_weld_fatigue": _TIRED,
    "mount_section": "bent snapped", "mount_fatigue": _TIRED, "mount_strain": "bent cracked",
    "frame_member": "bent snapped", "pull_through": "crushed bent", "seam_screws": "stripped snapped bent",
    "spacer_strength": "bent crushed", "strut": "bent snapped", "jack_screw": "bent crushed",
    "sprocket_teeth": "sheared snapped bent", "driven_teeth": "sheared snapped bent",
}  # fmt: skip

# What people call a part -> its checks, where the part's own words do not say it.
CALLED: dict[str, tuple[str, ...]] = {
    "shaft": ("motor_shaft", "shaft_fatigue"),
    "motor shaft": ("motor_shaft", "shaft_fatigue"),
    "plate": ("mount_section", "mount_fatigue", "mount_strain", "pull_through", "bolt_bearing"),
    "mount": ("mount_section", "mount_fatigue", "mount_strain", "pull_through", "bolt_slip"),
    "bracket": ("mount_section", "mount_fatigue", "mount_strain"),
    "chain": ("chain_static", "chain_fatigue", "chain_power", "chain_pin_pressure", "alignment", "axial_hold"),
    "frame bolts": ("bolt_strength", "bolt_slip"),
    "motor bolts": ("motor_bolts", "motor_threads", "motor_face_slip", "foot_bolts", "foot_slip"),
    "motor face bolts": ("motor_bolts", "motor_threads", "motor_face_slip"),
    "motor foot bolts": ("foot_bolts", "foot_slip"),
    "bolt holes": ("bolt_bearing", "hub_bolt_holes", "driven_bolt_holes"),
    "weld": ("frame_weld", "frame_weld_fatigue", "hub_weld", "hub_weld_fatigue", "driven_weld", "driven_weld_fatigue",
             "mount_fatigue"),
    "sprocket": ("sprocket_teeth", "hub_bolts", "hub_bolt_slip", "hub_bolt_loosening", "hub_weld", "hub_weld_fatigue", "axial_hold"),
    "sprocket bolts": ("hub_bolts", "hub_bolt_slip", "hub_bolt_loosening"),
    "hub": ("set_screw", "taper_bush", "key", "flats", "hub_pin", "axial_hold"),
    "teeth": ("sprocket_teeth", "driven_teeth"),
    "bearing": ("front_bearing", "bearing_life"),
    "clamp": ("tube_grip", "tube_crush"),
    "frame": ("frame_member",),
}  # fmt: skip

# What to look at next, by look.
NEXT: dict[str, str] = {
    "bent": "Lay a straight edge on it, and look for a rub mark that says which way it was pulled.",
    "snapped": "Clean both faces of the break with a soft brush and spirit, and look for rings with a lamp from the side.",
    "sheared": "Look which face is smeared and which way, and whether the joint shows bright marks of slipping.",
    "stripped": "Count the turns of thread that were in, and look at the torn thread: which of the two is it?",
    "slipped": "Look for paint, oil or scale between the faces, and tighten a sample bolt by torque wrench.",
    "thrown": "Lay a long straight edge on both sprockets, motor off: at rest, then with the motor pressed over by a lever, fingers away from the chain.",
    "worn": "Measure ten pitches or shake the bearing, and write the hours down.",
    "cracked": "Find where the rings are smallest: the notch there began it. Do not run parts of the same age and shape.",
    "crushed": "Measure the play, and look whether the softer of the two pieces gave.",
}  # fmt: skip

# Checks that count to where a part stays bent; to snap it takes more.
TO_YIELD = ("motor_shaft", "driven_shaft", "jackshaft", "mount_section", "frame_member")
