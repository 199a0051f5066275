"""Chain, power rating: power at the current held against what the chain is rated for at its speed."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import chain_rating, torque, usage
from ..model import Drive, Number
from ..worked import Value

SOME_IMPACT = Value(
    1.3,
    "service factor",
    "derived",
    "some impact, electric motor: The Complete Guide to Chain p. 34",
)
OWN_TEETH = Value(1.0, "tooth factor", "derived", "the rating equation counts the teeth itself")
ONE_STRAND = Value(1.0, "strand factor", "derived", "a single strand")


def is_rated(drive: Drive) -> bool:
    """Tell whether the speed is given and the chain has a rating."""
    card = drive.chain.chain
    known = card.link_plate_constant is not None and card.roller_bush_constant is not None
    return drive.motor.speed is not None and known


def ratings(drive: Drive) -> tuple[Number, Number]:
    """Give the rating by the link plates and that by rollers and bushes, W, at the motor's speed."""
    chain, card = drive.chain, drive.chain.chain
    plates: Number = card.link_plate_constant  # there, or the check would not apply
    bushes: Number = card.roller_bush_constant
    turned = (chain.driving_teeth, torque.turns_per_second(drive.motor.speed), card.pitch)
    return (
        chain_rating.link_plate_power(*turned, plates),
        chain_rating.roller_bush_power(*turned, bushes),
    )


def needed(drive: Drive, motor_torque: Number) -> Number:
    """Give the rating the chain must have for a torque at the motor's speed, W."""
    power = torque.shaft_power(motor_torque, drive.motor.speed)
    return chain_rating.required_power_rating(power, SOME_IMPACT, OWN_TEETH, ONE_STRAND)


def rows(case: Case) -> list[Row]:
    """Compare the power held, service factor in it, with both sides of the rating."""
    demand = needed(case.drive, case.loads.torque)
    names = ("link plates", "rollers and bushes")
    return [
        Row(station=name, demand=demand, capacity=rated, quantity="power",
            utilisation=usage.utilisation(demand, rated), level="continuous")
        for name, rated in zip(names, ratings(case.drive), strict=True)
    ]  # fmt: skip


CHECKS = (
    Check(
        name="chain_power", part="chain at speed", kind="life", groups=("hold",),
        leads_to="notice", sees="rollers crack or link plates tire well before the 15 000 hours of the rating",
        rows=rows, applies=is_rated,
    ),
)  # fmt: skip
