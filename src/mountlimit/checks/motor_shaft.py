"""Motor shaft at the front bearing: bending and torsion against yield, and against fatigue."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import endurance, equivalent, give, layout, shaft, statics, stress, usage
from ..model import Number, Shaft
from ..worked import Value

BOOK = "Shigley's Mechanical Engineering Design 9th ed."
MACHINED = tuple(
    Value(v, f"machined, {letter}", "assumed", f"{BOOK} table 6-2 (from memory)")
    for v, letter in zip(endurance.SURFACE["machined"], "ab", strict=True)
)
BENDING = Value(
    endurance.LOAD_FACTOR["bending"], "load factor", "derived", f"{BOOK} eq. 6-26: bending"
)
NO_MEAN = Value(
    0.0, "mean bending", "derived", "the shaft turns under a pull that keeps its direction"
)
NO_REVERSE = Value(0.0, "no reversing", "derived", "a start and a stop, torque one way")
THICK = 0.051  # m, from here the second size factor holds


def _moment(case: Case) -> Number:
    """Give the bending moment of the pull at the front bearing."""
    s = case.drive.shaft
    overhang = layout.bearing_overhang(s.face_overhang, s.face_to_bearing)
    return statics.overhung_moment(case.loads.shaft_load, overhang)


def yield_rows(case: Case) -> list[Row]:
    """Compare the equivalent stress of the round shaft with its yield strength."""
    s, loads = case.drive.shaft, case.loads
    torque = give.peak_torque(loads.torque, loads.starting_factor)
    both = equivalent.von_mises(
        stress.round_bending_stress(_moment(case), s.diameter),
        stress.round_torsion_stress(torque, s.diameter),
    )
    return [Row(station="front bearing", demand=both, capacity=s.yield_strength, quantity="stress",
                utilisation=usage.utilisation(both, s.yield_strength))]  # fmt: skip


def fatigue_rows(case: Case) -> list[Row]:
    """Compare the turning shaft's stress swing with its endurance limit, after Goodman.

    The bending turns over fully with every turn; the torque swings with every start.  Distortion
    energy puts the two together (Shigley eq. 7-4 to 7-7).  Where bending governs, reversing takes
    away more mean stress than it adds to the swing; but a drive that reverses also starts without
    reversing, so both are looked at.
    """
    s, reverse = case.drive.shaft, case.drive.duty.reverse
    kinds = [("starts", NO_REVERSE)] + ([("reversing", reverse)] if reverse > 0 else [])
    bent = stress.round_bending_stress(_moment(case), s.diameter)
    in_bending, in_torsion = _notch_factors(s)
    limit = _endurance_limit(s)
    found = []
    for words, share in kinds:
        swing = shaft.alternating_torque(case.loads.torque, share)
        mean = shaft.mean_torque(case.loads.torque, share)
        alternating = equivalent.von_mises(
            shaft.notched_stress(bent, in_bending), _twist(s, swing, in_torsion)
        )
        middle = equivalent.von_mises(NO_MEAN, _twist(s, mean, in_torsion))
        safety = endurance.goodman_uniaxial(alternating, middle, limit, s.ultimate_strength)
        same = endurance.reversed_stress(limit, safety)
        found.append(
            Row(station=f"front bearing ({s.notch}), {words}", demand=same, capacity=limit,
                quantity="stress", utilisation=usage.utilisation(same, limit), level="safe")
        )  # fmt: skip
    return found


def _twist(s: Shaft, torque: Number, notch_factor: Number) -> Number:
    return shaft.notched_stress(stress.round_torsion_stress(torque, s.diameter), notch_factor)


def _notch_factors(s: Shaft) -> tuple[Number, Number]:
    """Give the fatigue notch factors in bending and in torsion."""
    length = shaft.notch_length(s.ultimate_strength)
    bending = shaft.notch_sensitivity(length, s.notch_radius)
    torsion = shaft.notch_sensitivity(shaft.torsion_notch_length(length), s.notch_radius)
    return (
        shaft.fatigue_notch_factor(bending, s.notch_bending),
        shaft.fatigue_notch_factor(torsion, s.notch_torsion),
    )


def _endurance_limit(s: Shaft) -> Number:
    """Give the endurance limit of the machined steel shaft at its diameter."""
    size = endurance.size_factor if s.diameter <= THICK else endurance.size_factor_thick
    surface = endurance.surface_factor(s.ultimate_strength, *MACHINED)
    return endurance.endurance_limit(s.ultimate_strength, surface, size(s.diameter), BENDING)


CHECKS = (
    Check(
        name="motor_shaft", part="motor shaft", kind="strength", groups=("pull", "reverse"),
        sees="the sprocket wobbles: the motor shaft is bent at its front bearing",
        rows=yield_rows,
    ),
    Check(
        name="shaft_fatigue", part="motor shaft", kind="life", groups=("steady",),
        sees="after many turns at this pull the motor shaft breaks at a notch; no warning before it",
        rows=fatigue_rows,
    ),
)  # fmt: skip
