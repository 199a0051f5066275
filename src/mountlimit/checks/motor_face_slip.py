"""Motor in slots: does it turn or slide on the mount against the clamp of its face bolts?

In round holes the bolts stop it after their clearance; then shear of the bolts counts.
"""

from __future__ import annotations

from ..case import Case, Check, Row, has_face_bolts
from ..formulas import layout, slip, tipping, usage
from ..worked import Value
from .motor_bolts import loads_on

# EN 1993-1-8 clause 3.9.2(2): the tilting moment presses one side as much as it relieves the other.
NO_LOSS = Value(0.0, "tension", "derived", "EN 1993-1-8 clause 3.9.2(2): clamp kept in a moment")


def rows(case: Case) -> list[Row]:
    """Compare the motor's torque, and torque with the radial pull, with the friction of the face.

    A spigot takes the radial pull but not the torque.
    """
    face, motor = case.drive.face, case.drive.motor
    torque = tipping.size_of(case.loads.stator_torque)
    held = slip.friction_torque(
        face.friction, motor.bolts.number, face.preload, layout.half(motor.bolt_circle)
    )
    turning = Row(station="motor turns on its face", demand=torque, capacity=held,
                  quantity="torque", utilisation=usage.utilisation(torque, held))  # fmt: skip
    if face.spigot:
        return [turning]
    hold = slip.slip_resistance(face.friction, face.preload, NO_LOSS)
    sliding = [
        Row(station=f"motor slides at its worst face bolt{name}", demand=shear, capacity=hold,
            quantity="force", utilisation=usage.utilisation(shear, hold))
        for name, _, shear in loads_on(case)
    ]  # fmt: skip
    return [turning, *sliding]


CHECKS = (
    Check(
        name="motor_face_slip", part="motor face", kind="grip",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="chain off", sees="the motor has turned or moved on the mount: scratches round its bolts, wires pulled tight",
        applies=lambda drive: has_face_bolts(drive) and drive.face.slotted, rows=rows,
    ),
)  # fmt: skip
