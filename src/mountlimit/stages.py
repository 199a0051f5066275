"""The stages of a drive with a jackshaft: the second chain seen as a drive of its own.

The jackshaft passes on the torque of the first chain times its ratio of teeth, starting factor and
all, no losses (safe side).  Give and slack of the second chain are left out of the starting factor.
"""

from __future__ import annotations

from dataclasses import fields, replace

from . import loads
from .case import Case
from .formulas import torque as torque_formulas
from .model import ChainRun, Drive


def second_drive(drive: Drive) -> Drive:
    """Give the drive with the second chain in the place of the first, turned by the jackshaft."""
    assert drive.jackshaft is not None
    run, chain, motor = drive.jackshaft.run, drive.chain, drive.motor
    if motor.speed is not None:
        slow = torque_formulas.driven_speed(motor.speed, chain.driving_teeth, chain.driven_teeth)
        motor = replace(motor, speed=slow)
    own = {f.name: getattr(run, f.name) for f in fields(ChainRun)}
    return replace(drive, chain=replace(chain, **own), motor=motor, jackshaft=None)


def second(case: Case) -> Case:
    """Give the case of the second chain; mount and motor shaft do not answer it."""
    drive, chain, held = second_drive(case.drive), case.drive.chain, case.loads
    torque = torque_formulas.driven_torque(held.torque, chain.driven_teeth, chain.driving_teeth)
    found = loads.strands(drive, torque, held.starting_factor)
    own = replace(
        held, torque=torque, effective_pull=found.effective_pull, tight_side_tension=found.tight,
        slack_side_tension=found.slack, steady_tension=found.steady, shaft_load=found.shaft_load,
        outboard=0.0,
    )  # fmt: skip
    return Case(drive=drive, loads=own, response=case.response)


def last(case: Case) -> Case:
    """Give the case of the chain that turns the driven side."""
    return case if case.drive.jackshaft is None else second(case)
