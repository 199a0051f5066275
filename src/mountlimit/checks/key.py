"""Key between shaft and driving sprocket: shear and crushing at a start."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import equivalent, give, shaft, usage
from ..formulas import hub as hub_formulas


def rows(case: Case) -> list[Row]:
    """Compare shear and crushing of the key with the softest of key, shaft and hub."""
    hub, diameter = case.drive.hub, case.drive.shaft.diameter
    torque = give.peak_torque(case.loads.torque, case.loads.starting_factor)
    length = hub_formulas.useful_key_length(hub.key_length, diameter)
    shear = shaft.key_shear(torque, diameter, hub.key_width, length)
    crush = shaft.key_crushing(torque, diameter, hub.key_height, length)
    shear_strength = equivalent.shear_yield(hub.key_yield)
    return [
        Row(station="shear", demand=shear, capacity=shear_strength, quantity="stress",
            utilisation=usage.utilisation(shear, shear_strength)),
        Row(station="crushing", demand=crush, capacity=hub.key_yield, quantity="stress",
            utilisation=usage.utilisation(crush, hub.key_yield)),
    ]  # fmt: skip


CHECKS = (
    Check(
        name="key", part="key", kind="strength", groups=("pull", "reverse"),
        sees="a click on reversing, then the sprocket turns on its shaft",
        applies=lambda drive: drive.hub.drive == "key", rows=rows,
    ),
)  # fmt: skip
