"""Face bolts of the motor: tension from the tilting moment, shear, and their threads."""

from __future__ import annotations

from ..case import Case, Check, Row, has_face_bolts
from ..factors import AT_THE_END
from ..formulas import bolt_group, equivalent, threads, tipping, usage
from ..model import Number
from ..structure import wrench

FACE = (0.0, 0.0, 0.0)


def loads_on(case: Case) -> list[tuple[str, Number, Number]]:
    """Give name, tension and shear of the worst face bolt, by statics of the motor.

    Of every one by the plate model where a strut holds the motor as well.
    """
    if case.drive.mount.motor_held:
        return [
            (f" {i}, beside the strut", force.tension, force.shear)
            for i, force in enumerate(case.response.motor_bolts, 1)
        ]
    motor = case.drive.motor
    force, moment = wrench(case.drive, case.loads, FACE)
    tension = tipping.face_bolt_tension(moment[0], moment[1], motor.bolts.number, motor.bolt_circle)
    shear = tipping.face_bolt_shear(
        force[0], force[1], case.loads.stator_torque, motor.bolts.number, motor.bolt_circle
    )
    return [("", tension, shear)]


def bolt_rows(case: Case) -> list[Row]:
    """Compare combined tension and shear of the worst face bolt with EN 1993-1-8 table 3.4.

    By statics all bolts share alike; by the plate model, which stands beside, those nearer the frame
    take more of the shear.
    """
    bolts = case.drive.motor.bolts
    found = [combined_row(f"face bolt{n}", bolts, t, v) for n, t, v in loads_on(case)]
    if case.drive.mount.motor_held:
        return found
    return found + [
        combined_row(f"face bolt {i}, by the plate model", bolts, force.tension, force.shear)
        for i, force in enumerate(case.response.motor_bolts, 1)
    ]


def combined_row(station: str, bolts: object, tension: Number, shear: Number) -> Row:
    """Give the row of a bolt in tension and shear, thread in the shear plane."""
    area, grade = bolts.thread.stress_area, bolts.grade  # type: ignore[attr-defined]
    pull = bolt_group.tension_resistance(grade.ultimate_strength, area, AT_THE_END)
    cut = bolt_group.shear_resistance(grade.shear_factor, grade.ultimate_strength, area, AT_THE_END)
    both = bolt_group.shear_tension_interaction(shear, cut, tension, pull)
    return Row(station=station, demand=both, capacity=1.0, quantity="ratio", utilisation=both)


def thread_rows(case: Case) -> list[Row]:
    """Compare the tension of the worst face bolt with what the motor's tapped threads hold."""
    motor = case.drive.motor
    thread = motor.bolts.thread
    area = threads.strip_area_internal(
        motor.thread_depth, thread.pitch, thread.diameter, thread.pitch_diameter
    )
    hold = threads.strip_force(equivalent.shear_yield(motor.thread_strength), area)
    return [
        Row(station=f"tapped hole{name}", demand=tension, capacity=hold, quantity="force",
            utilisation=usage.utilisation(tension, hold))
        for name, tension, _ in loads_on(case)
    ]  # fmt: skip


CHECKS = (
    Check(
        name="motor_bolts", part="motor face bolts", kind="strength",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="chain off", sees="a face bolt stretches or shears; the motor nods at pull-away",
        applies=has_face_bolts, rows=bolt_rows,
    ),
    Check(
        name="motor_threads", part="threads in the motor face", kind="strength",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="chain off", sees="the threads pull out of the motor's face; the bolts spin",
        applies=has_face_bolts, rows=thread_rows,
    ),
)  # fmt: skip
