"""D shaft or double D: pressure on the flats, and torsion of the shaft they leave."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import equivalent, usage
from ..formulas import flats as flat_formulas
from ..formulas import hub as hub_formulas
from . import _torque


def rows(case: Case) -> list[Row]:
    """Compare the pressure at the flats' edges, and the shear stress of the flatted shaft, with yield."""
    hub, shaft, torque = case.drive.hub, case.drive.shaft, _torque.driving(case)
    flats = hub.flats
    if flats is None:
        return []
    width = flat_formulas.flat_width(shaft.diameter, flats.depth)
    length = hub_formulas.useful_key_length(flats.length, shaft.diameter)
    pressure = flat_formulas.flat_pressure(torque, flats.number, width, length)
    one = int(flats.number) == 1
    twist = flat_formulas.one_flat_torsion if one else flat_formulas.two_flat_torsion
    shear = twist(torque, shaft.diameter, flats.depth)
    held = equivalent.shear_yield(shaft.yield_strength)
    return [
        Row(station="pressure on the flat" if one else "pressure on the flats", demand=pressure,
            capacity=hub.yield_strength, quantity="stress",
            utilisation=usage.utilisation(pressure, hub.yield_strength)),
        Row(station="torsion of the flatted shaft", demand=shear, capacity=held, quantity="stress",
            utilisation=usage.utilisation(shear, held)),
    ]  # fmt: skip


CHECKS = (
    Check(
        name="flats", part="flats of the motor shaft", kind="strength", groups=("pull", "reverse"),
        leads_to="no drive", sees="the hub rocks on its flats, more each day, until it turns round on them",
        applies=lambda drive: drive.hub.flats is not None, rows=rows,
    ),
)  # fmt: skip
