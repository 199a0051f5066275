"""The jackshaft between two chains: bending and torsion, fatigue, bearings and keys.

Both pulls act on a shaft on two bearings, at every angle between them that is told or tried.  The
whole torque is taken to run along the whole shaft.
"""

from __future__ import annotations

from collections.abc import Iterator

from ..case import Case, Check, Row
from ..formulas import jackshaft as formulas
from ..formulas import statics
from ..model import Drive, Jackshaft, Number
from ..stages import second
from ..worked import Value
from . import _shaft, _torque
from ._bearing import life_row, static_row
from .key import key_rows

FIRST = Value(0.0, "first bearing", "derived", "places are measured from it")


def _moments(jack: Jackshaft, one: Number, two: Number) -> Iterator[tuple[str, Number]]:
    """Give the bending moment where it can be largest, for every angle, N*m, with its place.

    Beyond a sprocket outside the bearings there is none.
    """
    span, places = jack.bearing_span, (jack.first_at, jack.second_at)
    stations = [("first bearing", FIRST)] if min(places) < 0 else []
    stations += [("second bearing", span)] if max(places) > span else []
    named = zip(("first chain's sprocket", "second chain's sprocket"), places, strict=True)
    stations += [(words, place) for words, place in named if 0 < place < span]
    for where, place in stations:
        a = formulas.moment_at(place, one, jack.first_at, jack.bearing_span)
        b = formulas.moment_at(place, two, jack.second_at, jack.bearing_span)
        for words, angle in jack.angles:
            yield f"{where}, {words}", formulas.moments_together(a, b, angle)


def _supports(jack: Jackshaft, one: Number, two: Number) -> Iterator[tuple[str, Number]]:
    """Give the force on either bearing for every angle, N, with its place."""
    for where, on in (("first", statics.near_reaction), ("second", statics.far_reaction)):
        a = on(one, jack.first_at, jack.bearing_span)
        b = on(two, jack.second_at, jack.bearing_span)
        for words, angle in jack.angles:
            yield (
                f"{where} bearing ({jack.bearing}), {words}",
                formulas.forces_together(a, b, angle),
            )


def strength_rows(case: Case) -> list[Row]:
    """Compare the equivalent stress of the jackshaft with its yield strength."""
    jack = case.drive.jackshaft
    if jack is None:
        return []
    out = second(case)
    found = _moments(jack, case.loads.shaft_load, out.loads.shaft_load)
    return [_shaft.strength_row(w, m, _torque.driving(out), jack) for w, m in found]


def fatigue_rows(case: Case) -> list[Row]:
    """Compare the turning jackshaft's stress swing with its endurance limit, after Goodman."""
    jack, reverse = case.drive.jackshaft, case.drive.duty.reverse
    if jack is None:
        return []
    out = second(case).loads
    return [
        row
        for where, moment in _moments(jack, case.loads.shaft_load, out.shaft_load)
        for row in _shaft.fatigue_rows(where, moment, out.torque, reverse, jack)
    ]


def bearing_rows(case: Case) -> list[Row]:
    """Compare the force on either bearing with its static rating."""
    jack = case.drive.jackshaft
    if jack is None:
        return []
    found = _supports(jack, case.loads.shaft_load, second(case).loads.shaft_load)
    return [static_row(where, force, jack.static_rating) for where, force in found]


def life_rows(case: Case) -> list[Row]:
    """Compare the hours wanted with the rating life of either bearing."""
    jack = case.drive.jackshaft
    if jack is None:
        return []
    out = second(case)  # the jackshaft stands for its motor
    found = _supports(jack, case.loads.shaft_load, out.loads.shaft_load)
    return [
        life_row(case, where, force, jack.dynamic_rating, out.drive.motor.speed)
        for where, force in found
    ]


def keys_rows(case: Case) -> list[Row]:
    """Compare the keys under both sprockets with the softest of key, shaft and hub."""
    jack = case.drive.jackshaft
    if jack is None:
        return []
    torque = _torque.driving(second(case))
    named = (
        ("first chain's sprocket", jack.first_key),
        ("second chain's sprocket", jack.second_key),
    )
    return [
        Row(station=f"{row.station}, {words}", demand=row.demand, capacity=row.capacity,
            quantity=row.quantity, utilisation=row.utilisation)
        for words, key in named if key is not None
        for row in key_rows(key, torque, jack.diameter, jack.key_yield)
    ]  # fmt: skip


def _there(drive: Drive) -> bool:
    return drive.jackshaft is not None


def _turns_at_speed(drive: Drive) -> bool:
    return _there(drive) and drive.motor.speed is not None


def _has_keys(drive: Drive) -> bool:
    return drive.jackshaft is not None and drive.jackshaft.key_yield is not None


CHECKS = (
    Check(
        name="jackshaft", part="jackshaft", kind="strength", groups=("pull", "reverse"),
        leads_to="notice", sees="the jackshaft is bent: both chains slacken once in every turn",
        applies=_there, rows=strength_rows,
    ),
    Check(
        name="jackshaft_fatigue", part="jackshaft", kind="life", groups=("steady",),
        leads_to="chain off", sees="after many turns at this pull the jackshaft breaks at a notch; no warning before it",
        applies=_there, rows=fatigue_rows,
    ),
    Check(
        name="jackshaft_bearings", part="jackshaft bearings", kind="strength", groups=("pull", "reverse"),
        leads_to="notice", sees="the jackshaft growls: the balls of a bearing have dented their track",
        applies=_there, rows=bearing_rows,
    ),
    Check(
        name="jackshaft_bearing_life", part="jackshaft bearings", kind="life", groups=("hold",),
        leads_to="notice", sees="a bearing of the jackshaft grows rough and loud long before the hours you want are run",
        applies=_turns_at_speed, rows=life_rows,
    ),
    Check(
        name="jackshaft_keys", part="keys of the jackshaft", kind="strength", groups=("pull", "reverse"),
        leads_to="no drive", sees="a click on reversing, then a sprocket turns on the jackshaft",
        applies=_has_keys, rows=keys_rows,
    ),
)  # fmt: skip
