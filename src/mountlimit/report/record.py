"""The result record (``--json``): stable, versioned, SI values with the unit beside."""

from __future__ import annotations

from typing import Any

from .. import __version__, evaluate, shaft_line
from ..assess import CAUTIONS, Assessment, AtCurrent, Line, not_checked
from ..case import SectionForces, has_frame_bolts
from ..crosscheck import Both
from ..loads import case_list
from ..structure import wrench
from ..units import KINDS
from .jam_text import record as stops_record
from .quantities import number, quantity
from .upkeep_text import record as upkeep_record

SCHEMA = "mountlimit-result-1"


def _at(seen: AtCurrent | None, factor: float) -> dict[str, Any] | None:
    if seen is None or seen.governing is None:
        return None
    row = seen.governing.row
    return {
        "demand": float(row.demand), "capacity": float(row.capacity), "unit": KINDS[row.quantity].si,
        "factor": factor, "utilisation": seen.utilisation,
    }  # fmt: skip


def _limit(line: Line) -> dict[str, Any]:
    x = line.limit
    gives = None
    if x.gives is not None:
        gives = {
            "low": number(x.gives_low),
            "likely": number(x.gives),
            "high": number(x.gives_high),
            "unit": "A",
        }
    return {
        "check": x.check.name, "part": x.check.part, "kind": x.check.kind, "current": x.current_kind, "counts_for_safe_current": x.counts,
        "case": line.case, "station": line.station, "safe": quantity(x.safe, "A"), "gives": gives,
        "not_reached_below": quantity(x.reach, "A"), "design_factor": x.factor,
        "at_set": _at(line.at_set, x.factor), "at_wanted": _at(line.at_wanted, x.factor),
        "sees": x.check.sees,
        "consequence": {
            "leads_to": x.check.leads_to, "rank": line.consequence.rank, "words": line.consequence.words,
        },
        "source": line.source, "notes": list(line.notes),
        "safe_side_ends": dict(x.corner),
    }  # fmt: skip


def record(a: Assessment) -> dict[str, Any]:
    """Give the result as plain JSON-ready data."""
    current, safe = a.drive.current, a.first_safe.limit
    gives = a.first_gives.limit if a.first_gives else None
    return {
        "schema": SCHEMA, "version": __version__, "title": a.drive.title, "input_sha256": a.file.sha256,
        "safe_current": {**quantity(safe.safe, "A"), "check": safe.check.name, "kind": safe.check.kind},
        "gives_current": None if gives is None else {
            "low": number(gives.gives_low), "likely": number(gives.gives),
            "high": number(gives.gives_high), "unit": "A", "check": gives.check.name,
        },
        "set_current": quantity(float(current.set), "A"),
        "wanted_current": None if current.wanted is None else quantity(float(current.wanted), "A"),
        "limits": [_limit(x) for x in a.lines],
        "loads": _loads(a),
        "load_cases": _load_cases(a), "stations": _stations(a),
        "alignment": _alignment(a),
        "lines": {
            "traction_low": quantity(a.uses.traction_low, "A"),
            "traction_high": quantity(a.uses.traction_high, "A"),
            "jam": None if a.stops is None else stops_record(a.stops), "continuous": quantity(a.uses.continuous, "A"),
        },
        "chain_upkeep": upkeep_record(a.upkeep),
        "second_chain_upkeep": None if a.second_upkeep is None else upkeep_record(a.second_upkeep),
        "assumed": _assumed(a),
        "taken_for_granted": dict(a.drive.words),
        "warnings": list(a.warnings), "not_checked": list(not_checked(a.drive)), "cautions": list(CAUTIONS),
        "routes": {"governs": a.route, "side_by_side": both_routes(a.both)},
        "balance": a.balance,
    }  # fmt: skip


def both_routes(both: tuple[Both, ...]) -> list[dict[str, Any]]:
    """Give the plate model and the section route side by side."""
    return [
        {
            "quantity": b.name, "unit": b.unit, "plate_model": b.plates,
            "section_route": list(b.sections), "governs": b.governs, "disagree": b.disagree,
            "reason": b.reason if b.disagree else "",
        }
        for b in both
    ]  # fmt: skip


def _loads(a: Assessment) -> dict[str, Any]:
    loads = a.at_set.loads
    force, moment = wrench(a.drive, loads, (0.0, 0.0, 0.0))
    front, rear = (
        shaft_line.front_reaction(a.drive, loads),
        shaft_line.rear_reaction(a.drive, loads),
    )
    third = a.drive.shaft.outboard
    return {
        "case": loads.names[0], "torque": quantity(float(loads.torque), "N*m"),
        "tight_side_tension": quantity(float(loads.tight_side_tension), "N"),
        "slack_side_tension": quantity(float(loads.slack_side_tension), "N"),
        "assembly_torque": quantity(float(a.drive.fixings.assembly_torque), "N*m")
        if has_frame_bolts(a.drive)
        else None,
        "starting_factor": float(loads.starting_factor), "starting_factor_from": a.starting_from,
        "bearing_front": quantity(float(front), "N"), "bearing_rear": quantity(float(rear), "N"),
        "bearing_outboard": None if third is None else quantity(float(loads.outboard), "N"),
        "mount_force": {"value": [float(v) for v in force], "unit": "N"},
        "mount_moment": {"value": [float(v) for v in moment], "unit": "N*m"},
    }  # fmt: skip


def _load_cases(a: Assessment) -> list[dict[str, Any]]:
    """Give every load case at the set current: six-component loads at the motor face and the fixings."""
    found = []
    plane = a.drive.mount.plane.centre
    for index, entry in enumerate(case_list(a.drive)):
        case = evaluate.case_at(a.drive, float(a.drive.current.set), index)
        wrenches = {}
        for where, place in (("at_motor_face", (0.0, 0.0, 0.0)), ("at_fixings", plane)):
            force, moment = wrench(a.drive, case.loads, place)
            wrenches[where] = {
                "place": {"value": [float(v) for v in place], "unit": "m"},
                "force": {"value": [float(v) for v in force], "unit": "N"},
                "moment": {"value": [float(v) for v in moment], "unit": "N*m"},
            }
        found.append({
            "case": entry[0], "starting_factor": float(case.loads.starting_factor),
            "shaft_load": quantity(float(case.loads.shaft_load), "N"), **wrenches,
            "bolt_tension": {"value": [float(t) for t in case.response.bolts.tension], "unit": "N"},
            "bolt_shear": {"value": [float(t) for t in case.response.bolts.shear], "unit": "N"},
            "balance": float(case.response.balance),
        })  # fmt: skip
    return found


def _stations(a: Assessment) -> list[dict[str, Any]]:
    """Give the section forces in every named cut, load case of ``loads``, at the set current."""
    found = []
    for cut, forces in zip(a.drive.mount.cuts, a.at_set.response.sections, strict=True):
        values = {name: float(getattr(forces, name)) for name in SectionForces.__slots__}
        found.append({
            "station": cut.name, "place": [float(v) for v in cut.place], "width": cut.width,
            "thickness": cut.thickness, "holes": [list(h) for h in cut.holes], "unit": "m, N, N*m, N*m^2",
            **values,
        })  # fmt: skip
    return found


def _alignment(a: Assessment) -> dict[str, Any]:
    from ..checks.alignment import lean
    from ..formulas import rigid

    yaw, offset, near = (float(v) for v in lean(a.at_set))
    angle = a.at_set.loads.pull_angle
    roll = sum(
        float(rigid.lean_about_chain(p.turn[0], p.turn[1], angle))
        for p in a.at_set.response.displacements
    )
    parts = [
        {
            "part": p.name,
            "yaw": float(rigid.lean_along_chain(p.turn[0], p.turn[1], angle)),
            "unit": "rad",
        }
        for p in a.at_set.response.displacements
    ]
    return {
        "yaw": quantity(yaw, "rad"), "offset": quantity(offset, "m"), "roll": quantity(roll, "rad"),
        "approach": quantity(near, "m"), "skew_with_as_built": quantity(a.skew_at_set[0], "rad"),
        "yaw_by_part": parts,
    }  # fmt: skip


def _assumed(a: Assessment) -> list[dict[str, Any]]:
    known = {e.range.key: e for e in a.effects}
    first = a.first_safe.limit.check.name
    found = []
    for r in a.drive.ranges:
        effect = known.get(r.key)
        found.append({
            "key": r.key, "low": r.low, "likely": r.likely, "high": r.high,
            "unit": KINDS[r.kind].si if r.kind in KINDS else "-", "source": r.source, "origin": r.origin,
            "effect": None if effect is None else {
                "check": first, "with_low": number(effect.low.get(first)),
                "with_high": number(effect.high.get(first)), "unit": "A",
            },
        })  # fmt: skip
    return found
