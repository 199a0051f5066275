"""Design factors of the checks: one table, each with its source. The user may set each in [policy]."""

from __future__ import annotations

from .worked import Value

COMMON = "common practice, no source"
AT_THE_END = Value(1.0, "partial factor", "derived", "the design factor is applied at the end")

GAMMA_MF = (1.35, "EN 1993-1-9 gamma_Mf, table 3.1: safe life, high consequence")

DESIGN_FACTORS: dict[str, tuple[float, str]] = {
    "chain_static": (3.0, COMMON),
    "chain_fatigue": (1.0, "ASME B29.1 minimum dynamic strength is itself the allowable"),
    "chain_power": (1.0, "the service factor is in the power asked for"),
    "chain_pin_pressure": (1.0, "the pressure allowed is itself the limit"),
    "motor_shaft": (1.5, COMMON),
    "shaft_fatigue": (1.5, COMMON),
    "bearing_life": (1.0, "the life wanted is itself the limit"),
    "front_bearing": (1.5, "bearing makers' catalogues: least static safety with impact (from memory)"),
    "outboard_bearing": (1.5, "bearing makers' catalogues: least static safety with impact (from memory)"),
    "outboard_bearing_life": (1.0, "the life wanted is itself the limit"),
    "rear_bearing": (1.5, "bearing makers' catalogues: least static safety with impact (from memory)"),
    "rear_bearing_life": (1.0, "the life wanted is itself the limit"),
    "key": (1.5, COMMON),
    "set_screw": (4.0, "shaft-component makers' rule, dynamic load 4 to 8 (from memory)"),
    "flats": (1.5, COMMON),
    "taper_bush": (1.5, COMMON),
    "hub_bolts": (1.25, "EN 1993-1-8 gamma_M2"),
    "hub_bolt_slip": (1.25, "EN 1993-1-8 gamma_M3"),
    "hub_bolt_loosening": (1.25, "EN 1993-1-8 gamma_M3"),
    "hub_weld_fatigue": GAMMA_MF,
    "hub_weld": (2.5, "common practice, no source (welds nobody has looked into)"),
    "second_chain_static": (3.0, COMMON),
    "second_chain_fatigue": (1.0, "ASME B29.1 minimum dynamic strength is itself the allowable"),
    "second_chain_power": (1.0, "the service factor is in the power asked for"),
    "second_chain_pin_pressure": (1.0, "the pressure allowed is itself the limit"),
    "jackshaft": (1.5, COMMON),
    "jackshaft_fatigue": (1.5, COMMON),
    "jackshaft_bearings": (1.5, "bearing makers' catalogues: least static safety with impact (from memory)"),
    "jackshaft_bearing_life": (1.0, "the life wanted is itself the limit"),
    "jackshaft_keys": (1.5, COMMON),
    "hub_pin": (1.5, COMMON),
    "driven_pin": (1.5, COMMON),
    "hub_bolt_holes": (1.25, "EN 1993-1-8 gamma_M2"),
    "sprocket_teeth": (2.0, COMMON),
    "driven_teeth": (2.0, COMMON),
    "driven_bolt_holes": (1.25, "EN 1993-1-8 gamma_M2"),
    "driven_bolts": (1.25, "EN 1993-1-8 gamma_M2"),
    "driven_bolt_slip": (1.25, "EN 1993-1-8 gamma_M3"),
    "driven_bolt_loosening": (1.25, "EN 1993-1-8 gamma_M3"),
    "driven_weld_fatigue": GAMMA_MF,
    "driven_weld": (2.5, "common practice, no source (welds nobody has looked into)"),
    "driven_key": (1.5, COMMON),
    "driven_shaft": (1.5, COMMON),
    "driven_shaft_fatigue": (1.5, COMMON),
    "driven_bearings": (1.5, "bearing makers' catalogues: least static safety with impact (from memory)"),
    "driven_bearing_life": (1.0, "the life wanted is itself the limit"),
    "freewheel": (1.5, COMMON),
    "motor_bolts": (1.25, "EN 1993-1-8 gamma_M2"),
    "motor_threads": (2.0, COMMON),
    "motor_face_slip": (1.25, "EN 1993-1-8 gamma_M3"),
    "foot_bolts": (1.25, "EN 1993-1-8 gamma_M2"),
    "foot_slip": (1.25, "EN 1993-1-8 gamma_M3"),
    "band_grip": (1.25, "EN 1993-1-8 gamma_M3"),
    "band_screw": (1.25, "EN 1993-1-8 gamma_M2"),
    "mount_section": (2.0, COMMON),
    "mount_fatigue": (1.5, COMMON),
    "mount_strain": (1.0, "the strain limit is already an allowable (Crawford, Plastics Engineering 3rd ed.)"),
    "spacer_strength": (2.0, COMMON),
    "bolt_slip": (1.25, "EN 1993-1-8 gamma_M3"),
    "jack_screw": (1.5, COMMON),
    "bolt_strength": (1.25, "EN 1993-1-8 gamma_M2"),
    "tube_grip": (1.25, "EN 1993-1-8 gamma_M3"),
    "tube_crush": (1.0, "EN 1993-1-8 gamma_M5"),
    "bolt_bearing": (1.25, "EN 1993-1-8 gamma_M2"),
    "pull_through": (1.25, "EN 1993-1-8 gamma_M2"),
    "frame_weld_fatigue": GAMMA_MF,
    "frame_member": (2.0, COMMON),
    "frame_weld": (1.25, "EN 1993-1-8 gamma_M2"),
    "seam_screws": (4.0, COMMON),
    "strut": (2.0, COMMON),
    "alignment": (1.0, "the alignment allowances are themselves the limit"),
    "running_alignment": (1.0, "the alignment allowances are themselves the limit"),
}  # fmt: skip

# The mount's own factor depends on what is known of it.
MOUNT_FACTORS: dict[str, tuple[float, str]] = {
    "metal, known": (2.0, COMMON),
    "metal, scrap": (2.5, COMMON),
    "welded": (2.5, COMMON),
    "cast": (4.0, COMMON),
    "plastic": (3.0, COMMON),
    "printed in layer": (4.0, COMMON),
    "printed across layers": (6.0, COMMON),
    "wood": (4.0, COMMON),
}

SET_SCREW_REVERSING = (8.0, "shaft-component makers' rule, dynamic load 4 to 8 (from memory)")
