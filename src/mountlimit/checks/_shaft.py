"""Rows of a round shaft in bending and torsion: against yield, and against fatigue while it turns."""

from __future__ import annotations

from ..case import Row
from ..formulas import endurance, equivalent, stress, usage
from ..formulas import shaft as shafts
from ..held import RoundBar, RoundShaft
from ..model import Number
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


def strength_row(station: str, moment: Number, torque: Number, shaft: RoundBar) -> Row:
    """Compare the equivalent stress of a round shaft with its yield strength.

    ``moment`` and ``torque`` (N*m) hold the starting factor.
    """
    both = equivalent.von_mises(
        stress.round_bending_stress(moment, shaft.diameter),
        stress.round_torsion_stress(torque, shaft.diameter),
    )
    return Row(station=station, demand=both, capacity=shaft.yield_strength, quantity="stress",
               utilisation=usage.utilisation(both, shaft.yield_strength))  # fmt: skip


def fatigue_rows(
    station: str, moment: Number, torque: Number, reverse_share: Number, shaft: RoundShaft
) -> list[Row]:
    """Compare the stress swing of a turning shaft with its endurance limit, after Goodman.

    The bending ``moment`` (N*m) turns over fully with every turn; the ``torque`` (N*m) swings with
    every start, to ``reverse_share`` of it the other way.  Distortion energy puts the two together
    (Shigley eq. 7-4 to 7-7).  Where bending governs, reversing takes away more mean stress than it
    adds to the swing; but a drive that reverses also starts without reversing, so both are looked at.
    """
    kinds = [("starts", NO_REVERSE)] + ([("reversing", reverse_share)] if reverse_share > 0 else [])
    bent = stress.round_bending_stress(moment, shaft.diameter)
    in_bending, in_torsion = notch_factors(shaft)
    turning = shafts.notched_stress(bent, in_bending)
    found = []
    for words, share in kinds:
        swing = _twist(shaft, shafts.alternating_torque(torque, share), in_torsion)
        mean = _twist(shaft, shafts.mean_torque(torque, share), in_torsion)
        found.append(
            goodman_row(
                f"{station} ({shaft.notch}), {words}", equivalent.von_mises(turning, swing),
                equivalent.von_mises(NO_MEAN, mean), shaft,
            )
        )  # fmt: skip
    return found


def goodman_row(station: str, alternating: Number, mean: Number, shaft: RoundShaft) -> Row:
    """Compare alternating and mean stress (Pa, notch in) with the endurance limit of the shaft."""
    limit = endurance_limit(shaft)
    safety = endurance.goodman_uniaxial(alternating, mean, limit, shaft.ultimate_strength)
    same = endurance.reversed_stress(limit, safety)
    return Row(station=station, demand=same, capacity=limit, quantity="stress",
               utilisation=usage.utilisation(same, limit), level="safe")  # fmt: skip


def _twist(shaft: RoundShaft, torque: Number, notch_factor: Number) -> Number:
    return shafts.notched_stress(stress.round_torsion_stress(torque, shaft.diameter), notch_factor)


def notch_factors(shaft: RoundShaft) -> tuple[Number, Number]:
    """Give the fatigue notch factors in bending and in torsion."""
    length = shafts.notch_length(shaft.ultimate_strength)
    bending = shafts.notch_sensitivity(length, shaft.notch_radius)
    torsion = shafts.notch_sensitivity(shafts.torsion_notch_length(length), shaft.notch_radius)
    return (
        shafts.fatigue_notch_factor(bending, shaft.notch_bending),
        shafts.fatigue_notch_factor(torsion, shaft.notch_torsion),
    )


def endurance_limit(shaft: RoundShaft) -> Number:
    """Give the endurance limit of a machined steel shaft at its diameter, Pa."""
    size = endurance.size_factor if shaft.diameter <= THICK else endurance.size_factor_thick
    surface = endurance.surface_factor(shaft.ultimate_strength, *MACHINED)
    return endurance.endurance_limit(
        shaft.ultimate_strength, surface, size(shaft.diameter), BENDING
    )
