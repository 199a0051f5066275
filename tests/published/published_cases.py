"""The published cases: place in its source, mark and the functions of the program each one proves.

Ids of the project's published-case list; each stands in the docstring of a test of this folder, in
the one file of its source, which names it in full.  A function is named by its module: ``chain_drive.effective_pull`` is a formula of
``mountlimit.formulas``, ``cards.thread`` a function of ``mountlimit.cards``.  Marks: standard,
handbook (a text book or report), computed (worked anew from the form named), common practice,
from memory.
"""

from __future__ import annotations

# What "confirmed" means in a file of this folder: read in a standard, or in a book or report.
KINDS = {
    "asme_b29_1": "standard", "en_1993_1_1": "standard", "en_1993_1_8": "standard",
    "en_1999_1_1": "standard", "iso_898_1": "standard", "iso_10684": "standard",
    "nist_sp811": "standard", "vdi_2230": "standard",
    "bhandari": "handbook", "machinerys_handbook": "handbook", "mott": "handbook",
    "pilkey": "handbook", "roark": "handbook", "shigley": "handbook",
    "shigley_manual": "handbook", "timoshenko": "handbook",
}  # fmt: skip

PITCH_CIRCLE = "sprocket.pitch_diameter"
LENGTH = "chain_length.chain_length_in_pitches"
CENTRES = "chain_length.centre_distance_from_length"
RATING = ("chain_rating.link_plate_power", "chain_rating.roller_bush_power")
MOMENT = ("statics.moment_x", "statics.moment_y", "statics.moment_z")
ROUND = ("stress.round_bending_stress", "stress.round_torsion_stress", "equivalent.von_mises")
GOODMAN = "endurance.goodman_uniaxial"
KEY = ("shaft.key_shear", "shaft.key_crushing")
LIFE = ("bearings.jerked_load", "bearings.rating_life_revs", "bearings.rating_life")
SCREW = ("tightening.assembly_preload", "tightening.tightening_torque", "threads.stress_diameter")
CONE = ("joint.frustum_stiffness", "joint.spring_series")
BOLTS = ("joint.square_sum", "bolt_group.direct_shear", "bolt_group.torsional_shear")
TWIST = (
    "section.rectangle_torsion_constant", "section.rectangle_torsion_modulus", "meshed.net_section",
)  # fmt: skip

CHANNEL = ("open_section.channel_on_side", "open_section.channel_open_away")

# id -> place in the source, mark, functions
CASES: dict[str, tuple[str, str, tuple[str, ...]]] = {
    "SPK-01": ("table of pitch diameters", "standard", (PITCH_CIRCLE,)),
    "SPK-03": ("example 14.4", "handbook", (PITCH_CIRCLE, LENGTH, CENTRES)),
    "SPK-04": ("chapter 7", "from memory", (PITCH_CIRCLE,)),
    "SPK-05": (
        "chapter 7", "computed",
        (PITCH_CIRCLE, "sprocket.smallest_effective_radius", "chain_drive.effective_pull"),
    ),
    "CHT-02": (
        "example 14.1", "handbook",
        ("chain_drive.chain_speed", "chain_drive.pull_from_power",
         "chain_drive.factor_on_tensile_strength"),
    ),
    "CHD-01": ("dimensions, tensile strength", "standard", ("cards.chain",)),
    "CHD-03": ("B series", "from memory", ("cards.chain",)),
    "CHD-04": ("B series", "from memory", ("cards.chain",)),
    "CHD-05": ("table 1 of the 2015 edition", "from memory", ("cards.chain",)),
    "CHP-01": ("appendix, rating equation", "computed", RATING[:1]),
    "CHP-02": ("appendix, rating equation", "computed", RATING),
    "CHP-03": ("appendix, rating equation", "computed", RATING),
    "CHP-05": (
        "example 14.3", "handbook",
        ("chain_rating.required_power_rating", RATING[0]),
    ),
    "CHL-01": ("example 14.3", "handbook", (LENGTH, CENTRES)),
    "CHL-03": ("chain length", "from memory", (LENGTH,)),
    "STA-01": ("example 4.1", "from memory", MOMENT),
    "STA-02": ("example 4.2", "from memory", MOMENT),
    "STA-03": ("example 4.3", "from memory", MOMENT),
    "STA-05": ("free body of motor, shaft and sprocket", "computed", MOMENT),
    "SHA-01": (
        "line-shaft problem, ASME code", "computed",
        ("chain_drive.effective_pull", "statics.overhung_moment", *ROUND[:2],
         "equivalent.principal_max"),
    ),
    "SHA-03": (
        "chapter 7 (gear shaft)", "handbook",
        ("statics.near_reaction", "statics.far_reaction", "statics.moment_between"),
    ),
    "SHA-04": (
        "table 3-23", "from memory",
        ("statics.front_bearing_reaction", "statics.rear_bearing_reaction",
         "statics.overhung_moment", "spans.overhung_deflection", "section.round_second_moment"),
    ),
    "VMS-01": ("problem 7-1 (Goodman)", "handbook", (*ROUND, GOODMAN)),
    "VMS-03": (
        "problem 5-1(c)", "handbook",
        ("equivalent.principal_max", "equivalent.von_mises"),
    ),
    "KEY-01": ("worked key problem", "from memory", KEY),
    "KEY-03": ("example 7-6", "from memory", (*KEY, "equivalent.shear_yield")),
    "KEY-04": ("table", "from memory", ("cards.key_for_shaft",)),
    "BRG-01": ("problem 11-1", "handbook", LIFE),
    "BRG-02": ("problem 11-2", "handbook", LIFE),
    "BRG-03": ("problem 11-3", "handbook", LIFE[:2]),
    "BRG-04": ("table 12", "from memory", ("bearings.reliability_factor",)),
    "BRG-07": ("chapter 11", "handbook", ("bearings.equivalent_dynamic_load",)),
    "BST-01": ("deep groove bearings", "computed", ("bearings.equivalent_static_load",)),
    "BST-03": ("ratings of 6000, 6200, 6300", "from memory", ("cards.bearing",)),
    "BLT-01": ("stress areas", "standard", ("cards.thread",)),
    "BLT-02": ("stress areas (without M7)", "standard", ("cards.thread",)),
    "BLT-03": ("ultimate loads", "standard", ("cards.thread", "cards.bolt_class")),
    "BLT-05": ("annex", "standard", ("threads.proof_load",)),
    "TRQ-01": (
        "example 8-3 (torques)", "from memory",
        ("tightening.preload_from_torque", "tightening.tightening_torque"),
    ),
    "TRQ-02": ("M8x1", "standard", SCREW),
    "TRQ-04": ("M12x1.25", "standard", SCREW),
    "TRQ-06": ("table 8-15", "handbook", ("cards.torque_coefficient",)),
    "JNT-01": ("example 8-2", "computed", CONE),
    "JNT-02": ("example 8-2(a)", "computed", CONE),
    "JNT-03": ("problem 8-24", "handbook", CONE[1:]),
    "BGP-01": ("example 8-7", "handbook", BOLTS),
    "BGP-02": ("example 7.4", "handbook", BOLTS),
    "BGP-03": (
        "example 7.5", "handbook",
        ("joint.square_sum", "bolt_group.moment_tension", "bolt_group.direct_shear",
         "equivalent.principal_max"),
    ),
    "TEA-01": (
        "table 3.4", "standard",
        ("holes.bearing_k1_edge", "holes.bearing_k1_inner", "holes.bearing_alpha_end",
         "holes.bearing_alpha_inner", "holes.bearing_resistance"),
    ),
    "TEA-03": (
        "table 3.4 (hexagon heads)", "standard",
        ("bolt_group.shear_resistance", "bolt_group.tension_resistance"),
    ),
    "TEA-05": (
        "eq. J3-6a", "from memory",
        ("holes.clear_distance", "holes.tear_out", "holes.bearing_strength"),
    ),
    "TOR-01": ("art. 109", "handbook", TWIST),
    "TOR-02": ("art. 109", "handbook", TWIST),
    "TOR-03": ("example 5.14", "handbook", ("open_section.angle",)),
    "TOR-04": ("example B.2", "handbook", ("open_section.channel_on_side",)),
    "SHC-01": ("example B.2", "handbook", CHANNEL),
    "SEC-09": ("example B.3", "handbook", ("open_section.angle",)),
    "TOR-07": (
        "chapter 6", "computed",
        ("tube.box_torsion_constant", "tube.box_enclosed_area", "stress.bredt_stress"),
    ),
    "WRP-03": (
        "torsion with held warping", "computed",
        ("flexure.shear_modulus", "warping.warping_decay", "warping.twist_held_free",
         "warping.bimoment_held_free", "warping.warping_stress"),
    ),
    "WRP-05": ("example B.2", "handbook", ("open_section.channel_on_side",)),
    "UNB-01": (
        "example 1.1", "handbook", ("open_section.angle", "member_stress.skewed_stress"),
    ),
    "UNB-03": (
        "general bending formula, angle of EN 10056-1", "computed",
        ("member_stress.skewed_stress", "member_stress.bending_stress"),
    ),
    "CRV-01": (
        "p. 275 (inside)", "handbook",
        ("concentration.curved_bar_inside",),
    ),
    "CRV-05": (
        "art. 29 (inside)", "computed",
        ("concentration.curved_bar_inside", "section.rectangle_second_moment"),
    ),
    "KTC-01": ("table 17.1", "handbook", ("concentration.central_hole_tension",)),
    "KTC-02": ("table 17.1", "computed", ("concentration.central_hole_tension",)),
    "KTC-03": ("table 17.1, Goodier", "computed", ("concentration.hole_in_bending",)),
    "KTC-05": ("chapter 7", "handbook", ("shaft.fatigue_notch_factor",)),
    "CMB-01": ("chapter 5", "handbook", ROUND),
    "CMB-03": (
        "T_e and M_e of the overhung line shaft", "computed", (*ROUND, "equivalent.principal_max"),
    ),
    "FAT-01": ("chapter 6 (Goodman)", "handbook", ("equivalent.von_mises", GOODMAN)),
    "FAT-03": ("example 5.20", "handbook", (*ROUND, GOODMAN)),
    "FAT-05": (
        "problem 7-2", "handbook",
        ("endurance.surface_factor", "endurance.size_factor", "endurance.endurance_limit"),
    ),
    "FAT-06": (
        "chapter 6 (Goodman)", "handbook",
        ("endurance.surface_factor", "endurance.endurance_limit", "shaft.fatigue_notch_factor",
         "shaft.alternating_torque", "shaft.mean_torque", "shaft.notched_stress", ROUND[1], GOODMAN),
    ),
    "CRP-01": ("POM copolymer", "from memory", ("cards.material", "endurance.creep_modulus")),
    "CRP-03": (
        "creep-modulus method", "computed",
        ("endurance.creep_strain", "flexure.end_deflection_force", "section.rectangle_second_moment",
         "meshed.net_section"),
    ),
    "WLD-01": (
        "clause 4.5.3.3", "computed",
        ("welds.fillet_strength", "welds.fillet_force_per_length"),
    ),
    "WLD-03": (
        "example 8.12", "handbook",
        ("welds.weld_pair_modulus", "welds.fillet_throat", "equivalent.principal_max"),
    ),
    "FRC-01": (
        "clause 3.9", "standard", ("slip.slip_resistance_design", "slip.slip_resistance"),
    ),
    "FRC-03": (
        "clamp coupling", "from memory",
        ("clamps.clamp_force", "clamps.contact_spread", "clamps.pressure_sum", "clamps.friction_hold",
         "clamps.surface_slip", "hub.clamp_torque"),
    ),
    "FRC-05": ("friction at the screw circle", "common practice", ("slip.friction_torque",)),
    "TYR-01": (
        "lecture example", "computed",
        ("traction.traction_force_rear_drive", "traction.traction_force_front_drive"),
    ),
    "TYR-03": (
        "example 31.7", "computed",
        ("traction.traction_force_rear_drive", "traction.traction_force_front_drive",
         "traction.traction_force_all"),
    ),
    "MOT-01": (
        "motor data, 505 rpm/V", "from memory", ("motor.torque_constant_from_speed_constant",),
    ),
    "MOT-03": (
        "energy balance; phase peak amperes", "from memory",
        ("motor.torque_constant_from_speed_constant", "motor.phase_torque_constant"),
    ),
    "UNT-01": ("appendix B", "standard", ("units.parse",)),
    "UNT-03": ("appendix B", "standard", ("units.parse", "units.convert")),
    "E2E-01": (
        "closed forms in a row", "computed",
        ("motor.torque_constant_from_speed_constant", "motor.linear_torque", PITCH_CIRCLE,
         "chain_drive.effective_pull", "meshed.net_section", TWIST[1], "equivalent.von_mises",
         "crossings.crossing"),
    ),
}  # fmt: skip

RADII = "rolled with root and toe radii; the members of the program have sharp corners"
TWO_WALLS = (
    "web and flanges of two thicknesses, with radii; a channel here has one wall and sharp corners"
)
# id -> why the program does not meet it
LEFT_OUT: dict[str, str] = {
    "TRQ-05": "statistics of one sample; the cards hold the scatter by way of tightening",
    "PRY-01": "prying of a tee hanger; the mounts bear on the frame all over",
    "PRY-03": "prying of a tee hanger; the mounts bear on the frame all over",
    **dict.fromkeys(("SEC-01", "SEC-03", "SEC-12"), RADII),
    **dict.fromkeys(("SHC-03", "SEC-04", "SEC-06", "SEC-08"), TWO_WALLS),
    "SHC-05": "a slit tube: no frame member is one",
    "SEC-10": "a hollow rectangle of two wall thicknesses; tubes here have one",
    "SEC-11": "an I-section: no frame member is one",
    "WRP-01": "a Z-section, with the stress a quarter along it; held warping is worked out at ends and load only",
    **dict.fromkeys(
        ("PLT-01", "PLT-02", "PLT-03", "PLT-04", "PLT-06", "PLT-08"),
        "plates under pressure; the plate engine has its own cases in tests/plates",
    ),
    "CRV-02": "a bent bar of round section",
    "CRV-03": "a hook of trapezium section",
    "KTC-07": "a stepped bar: the mounts have no fillets",
    "KTC-08": "a stepped bar: the mounts have no fillets",
    "KTC-09": "stress of one field beside a hole; cuts take the sharpest hole for all fields",
    "CRP-05": "Findley's law of strain; the cards hold moduli over time",
}

# What a case names that neither check nor why calls, and the command that does.
ELSEWHERE = {
    "chain_drive.pull_from_power": "chains",
    "chain_drive.factor_on_tensile_strength": "chains",
}

# Formulas with their tests that no command calls yet.
WAITING = {
    "starting.inertia_share": "a light driven side, whose inertia is not asked for",
    "starting.series_inertia": "a light driven side, whose inertia is not asked for",
}
