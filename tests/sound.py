"""A drive in which nothing is weak, and nearly every input is measured: what is made worse shows at once."""

from __future__ import annotations

from typing import Any

from conftest import CLAMPED

Edit = dict[str, Any]

# A 12 mm steel plate with good bolts, a thick shaft in a large bearing: measured, little is assumed.
SOUND: Edit = {
    "current__wanted": "200 A",
    "motor__bolt_circle": "79 mm", "motor__thread_depth": "12 mm", "motor__preload": "7 kN",
    "motor__face_friction": 0.15, "motor__spigot": "yes", "motor__torque_scatter": 1,
    "motor__thread_strength": "240 MPa", "motor__bore": "50 mm",
    "chain__skew": "0.02 deg", "chain__offset": "0.1 mm", "chain__slack": "2 %", "chain__wear": "0 %",
    "chain__tooth_relief": 0.13, "chain__stretch_ratio": 80, "chain__driving_teeth": 15,
    "chain__pull": "away",
    "shaft__diameter": "25 mm", "shaft__bearing": "6305", "shaft__face_to_bearing": "8 mm",
    "shaft__bearing_span": "110 mm", "shaft__yield_strength": "500 MPa",
    "shaft__ultimate_strength": "700 MPa", "shaft__notch": "shoulder, rounded",
    "shaft__bearing_play": "0.01 mm", "hub__key": "8 x 7 x 30 mm", "hub__key_yield": "350 MPa",
    "mount__route": "sections", "mount__material": "s235", "mount__thickness": "12 mm",
    "mount__width": "130 mm", "mount__warping_held": 1, "mount__softness": 1,
    "fixings__bolts": "4 x M10", "fixings__preload": "24 kN", "fixings__friction": 0.2,
    "fixings__edge": "20 mm", "fixings__joint_stiffness": "400 kN/mm",
    "frame__member": "square tube", "frame__size": "50 mm", "frame__wall": "3 mm",
    "frame__span": "300 mm", "duty__starting_factor": 1.5, "duty__bump": "3 g",
    "duty__rotor_inertia": "10 kg*cm2", "duty__hours": "100 h", "use__grip_low": 0.4,
    "use__grip_high": 0.8, "use__efficiency": 0.9,
}  # fmt: skip
ON_A_TUBE: Edit = {
    **CLAMPED, "mount__form": "saddle", "mount__grip_length": "100 mm", "mount__free_length": "70 mm",
    "mount__route": None, "mount__warping_held": None, "frame__size": "50 mm",
    "frame__yield_strength": "235 MPa", "fixings__clamp_bolts": "2 x M10", "fixings__weld_leg": "8 mm",
    "fixings__weld_quality": 1,
    **dict.fromkeys(f"fixings__{k}" for k in (
        "bolts", "bolt_class", "span_across", "span_along", "preload", "friction", "joint_stiffness", "edge")),
}  # fmt: skip
