"""Pin of either sprocket: sheared, and its holes in shaft and hub crushed."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import pins, usage
from ..held import Pin
from ..model import Number
from . import _torque


def pin_rows(pin: Pin | None, torque: Number, softest: Number) -> list[Row]:
    """Compare shear with the pin's shear strength, crushing with the softest of pin, shaft and hub."""
    if pin is None:
        return []
    shear = pins.pin_shear(torque, pin.diameter, pin.circle, pin.planes)
    found = [_row("pin sheared", shear, pin.shear_strength)]
    if pin.through_shaft:
        in_shaft = pins.shaft_crushing(torque, pin.diameter, pin.circle)
        found.append(_row("hole in the shaft crushed", in_shaft, softest))
    if pin.hub_diameter is not None:
        in_hub = pins.hub_crushing(torque, pin.diameter, pin.circle, pin.hub_diameter)
        found.append(_row("holes in the hub crushed", in_hub, softest))
    return found


def _row(station: str, demand: Number, capacity: Number) -> Row:
    return Row(station=station, demand=demand, capacity=capacity, quantity="stress",
               utilisation=usage.utilisation(demand, capacity))  # fmt: skip


def driving_rows(case: Case) -> list[Row]:
    """Compare the driving sprocket's pin with the torque at a start."""
    hub = case.drive.hub
    return pin_rows(hub.pin, _torque.driving(case), hub.yield_strength)


def driven_rows(case: Case) -> list[Row]:
    """Compare the driven sprocket's pin with the torque at a start."""
    told = case.drive.driven
    return pin_rows(told.pin, _torque.driven(case), told.key_yield)


SEES = "the pin is in two and the sprocket turns free; before that, play on reversing"
CHECKS = (
    Check(
        name="hub_pin", part="pin of the driving sprocket", kind="strength",
        groups=("pull", "reverse"), leads_to="no drive", sees=SEES, applies=lambda drive: drive.hub.pin is not None,
        rows=driving_rows,
    ),
    Check(
        name="driven_pin", part="pin of the driven sprocket", kind="strength",
        groups=("pull", "reverse"), leads_to="no drive", sees=SEES, applies=lambda drive: drive.driven.pin is not None,
        rows=driven_rows,
    ),
)  # fmt: skip
