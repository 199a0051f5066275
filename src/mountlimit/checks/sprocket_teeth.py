"""Teeth of either sprocket: the most loaded one bent and sheared at its root, pressed by its roller."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..factors import DESIGN_FACTORS, MOUNT_FACTORS
from ..formulas import equivalent, sprocket, teeth, usage
from ..held import Sprocket
from ..model import Drive, Number
from ..stages import last


def tooth_rows(case: Case, told: Sprocket | None) -> list[Row]:
    """Compare the most loaded tooth with the yield strength of the sprocket."""
    if told is None:
        return []
    card, strength = case.drive.chain.chain, told.material.yield_strength
    load = teeth.tooth_load(told.share, case.loads.tight_side_tension)
    seat = teeth.seat_radius_max(card.roller_diameter)
    across = sprocket.pitch_diameter(card.pitch, told.teeth)
    rise = teeth.roller_rise(across, case.drive.chain.wear)
    angle = teeth.pressure_angle_least(told.teeth)

    root = teeth.root_width(card.pitch, seat)
    arm = teeth.bending_arm(seat, card.roller_diameter, angle, rise)
    bending = teeth.root_bending(load, arm, told.tooth_width, root)
    both = equivalent.von_mises(bending, teeth.mean_shear(load, told.tooth_width, root))

    neck = teeth.neck_width(card.pitch, seat, rise, angle)
    sheared = teeth.mean_shear(load, told.tooth_width, neck)
    pressed = teeth.roller_pressure(load, told.tooth_width, card.roller_diameter)
    return [
        _row("root of the tooth", both, strength),
        _row("tooth sheared off", sheared, equivalent.shear_yield(strength)),
        _row("pressed by the roller", pressed, strength),
    ]


def _row(station: str, demand: Number, capacity: Number) -> Row:
    return Row(station=station, demand=demand, capacity=capacity, quantity="stress",
               utilisation=usage.utilisation(demand, capacity))  # fmt: skip


def factor_for(told: Sprocket | None, name: str) -> tuple[float, str]:
    """Give a check's own factor for wrought metals; other materials take that of a mount of them."""
    kind = told.material.design_class if told else "metal"
    return DESIGN_FACTORS[name] if kind == "metal" else MOUNT_FACTORS[kind]


def _driving(drive: Drive) -> Sprocket | None:
    return drive.hub.sprocket


def _driven(drive: Drive) -> Sprocket | None:
    return drive.driven.sprocket


SEES = "chips below the sprocket, teeth missing; the chain slips with a crack under load"
CHECKS = (
    Check(
        name="sprocket_teeth", part="teeth of the driving sprocket", kind="strength",
        groups=("pull", "reverse"), leads_to="chain off", sees=SEES, applies=lambda drive: _driving(drive) is not None,
        rows=lambda case: tooth_rows(case, _driving(case.drive)),
        choose_factor=lambda drive: factor_for(_driving(drive), "sprocket_teeth"),
    ),
    Check(
        name="driven_teeth", part="teeth of the driven sprocket", kind="strength",
        groups=("pull", "reverse"), leads_to="chain off", sees=SEES, applies=lambda drive: _driven(drive) is not None,
        rows=lambda case: tooth_rows(last(case), _driven(case.drive)),
        choose_factor=lambda drive: factor_for(_driven(drive), "driven_teeth"),
    ),
)  # fmt: skip
