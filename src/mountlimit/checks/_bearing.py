"""Rows of a rolling bearing under a radial load: static safety, and hours it lasts."""

from __future__ import annotations

from ..case import Case, Row
from ..formulas import bearings, usage
from ..model import Number
from ..worked import Value

NO_THRUST = Value(0.0, "axial load", "derived", "a chain in line pulls radially")
BALL = Value(3.0, "life exponent", "derived", "ISO 281: ball bearing")
RADIAL = Value(1.0, "radial factor", "derived", "ISO 281: no axial load")
AXIAL = Value(0.0, "axial factor", "derived", "ISO 281: no axial load")
RELIABILITY = Value(0.9, "reliability", "derived", "ISO 281: L10, nine of ten bearings live longer")


def static_row(station: str, reaction: Number, rating: Number) -> Row:
    """Compare the equivalent static load of a bearing with its static rating, both N (ISO 76)."""
    load = bearings.equivalent_static_load(reaction, NO_THRUST)
    return Row(station=station, demand=load, capacity=rating, quantity="force",
               utilisation=usage.utilisation(load, rating))  # fmt: skip


def life_row(case: Case, station: str, reaction: Number, rating: Number, speed: Number) -> Row:
    """Compare the hours wanted of a bearing with its rating life (ISO 281).

    ``reaction`` (N) is that of the chain without a starting factor, ``rating`` (N) the dynamic one,
    ``speed`` (rad/s) that of the bearing's shaft.  Needs ``motor.speed``, since hours wanted and
    chain factor are asked for with it only.
    """
    duty = case.drive.duty
    radial = bearings.jerked_load(reaction, duty.chain_factor)
    load = bearings.equivalent_dynamic_load(radial, NO_THRUST, RADIAL, AXIAL)
    turns = bearings.rating_life_revs(rating, load, BALL)
    rated = bearings.rating_life(turns, speed)
    life = bearings.adjusted_life(rated, bearings.reliability_factor(RELIABILITY))
    return Row(station=station, demand=duty.bearing_hours, capacity=life, quantity="time",
               utilisation=usage.utilisation(duty.bearing_hours, life), level="continuous")  # fmt: skip
