"""Key between shaft and driving sprocket: shear and crushing at a start."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import equivalent, shaft, usage
from ..formulas import hub as hub_formulas
from ..held import Key
from ..model import Number
from . import _torque


def rows(case: Case) -> list[Row]:
    """Compare the driving key with the softest of key, shaft and hub."""
    hub = case.drive.hub
    if hub.key is None:
        return []
    return key_rows(hub.key, _torque.driving(case), case.drive.shaft.diameter, hub.yield_strength)


def key_rows(key: Key, torque: Number, diameter: Number, strength: Number) -> list[Row]:
    """Compare shear and crushing of a key with a yield strength."""
    length = hub_formulas.useful_key_length(key.length, diameter)
    shear = shaft.key_shear(torque, diameter, key.width, length)
    crush = shaft.key_crushing(torque, diameter, key.height, length)
    shear_strength = equivalent.shear_yield(strength)
    return [
        Row(station="shear", demand=shear, capacity=shear_strength, quantity="stress",
            utilisation=usage.utilisation(shear, shear_strength)),
        Row(station="crushing", demand=crush, capacity=strength, quantity="stress",
            utilisation=usage.utilisation(crush, strength)),
    ]  # fmt: skip


CHECKS = (
    Check(
        name="key", part="key", kind="strength", groups=("pull", "reverse"),
        leads_to="no drive", sees="a click on reversing, then the sprocket turns on its shaft",
        applies=lambda drive: drive.hub.drive == "key", rows=rows,
    ),
)  # fmt: skip
