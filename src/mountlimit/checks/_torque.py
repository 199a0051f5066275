"""Torque and pull at a start on either side of the chain, for the checks of hubs and of the driven side."""

from __future__ import annotations

from ..case import Case
from ..formulas import give
from ..formulas import torque as torque_formulas
from ..model import Number
from ..stages import last


def driving(case: Case) -> Number:
    """Give the torque on the driving sprocket, starting factor in, N*m."""
    return give.peak_torque(case.loads.torque, case.loads.starting_factor)


def driven(case: Case) -> Number:
    """Give the torque on the driven sprocket of the last chain, starting factor in, no losses, N*m."""
    end = last(case)
    chain = end.drive.chain
    return torque_formulas.driven_torque(driving(end), chain.driven_teeth, chain.driving_teeth)


def driven_pull(case: Case) -> Number:
    """Give the pull of the last chain on the driven sprocket, both strands, starting factor in, N."""
    return last(case).loads.shaft_load
