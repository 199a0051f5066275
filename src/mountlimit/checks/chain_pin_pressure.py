"""Chain, wear of its joints: pressure between pin and bush at the current held."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import chain_drive, usage


def rows(case: Case) -> list[Row]:
    """Compare the pressure in the joints of the tight run with the pressure allowed at this speed."""
    chain = case.drive.chain
    pressure = chain_drive.pin_pressure(case.loads.steady_tension, chain.chain.bearing_area)
    return [Row(station="pin and bush", demand=pressure, capacity=chain.joint_pressure,
                quantity="stress", utilisation=usage.utilisation(pressure, chain.joint_pressure),
                level="continuous")]  # fmt: skip


CHECKS = (
    Check(
        name="chain_pin_pressure", part="chain joints", kind="life", groups=("hold",),
        leads_to="notice", sees="the chain grows longer week by week and rides up the teeth of the large sprocket",
        rows=rows, applies=lambda drive: drive.chain.joint_pressure is not None,
    ),
)  # fmt: skip
