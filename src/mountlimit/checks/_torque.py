"""Torque at a start on either side of the chain, for the checks of hubs and of the driven side."""

from __future__ import annotations

from ..case import Case
from ..formulas import give
from ..formulas import torque as torque_formulas
from ..model import Number


def driving(case: Case) -> Number:
    """Give the torque on the driving sprocket, starting factor in, N*m."""
    return give.peak_torque(case.loads.torque, case.loads.starting_factor)


def driven(case: Case) -> Number:
    """Give the torque on the driven sprocket, starting factor in and no losses, N*m."""
    chain = case.drive.chain
    return torque_formulas.driven_torque(driving(case), chain.driven_teeth, chain.driving_teeth)
