"""Random drives of every mount form: a number gives a drive, as a mapping of keys and as TOML text.

Values lie in the ranges of what people build, so most drives hold together; what does not (a bolt
that leaves the plate) must be refused in words.  What belongs together is drawn together in the
functions of ``machine`` and ``layouts``; every other key is one row of ``ROWS``.  A key without a
row is drawn from the field table itself, so a new one is met without an edit here.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import machine
from chance import Chance
from layouts import LAYOUTS
from sizes import Build, build
from small_parts import SPOKEN as SMALL
from small_parts import small_parts

from conftest import in_words, tellable, toml_text
from mountlimit.drivefile import DriveFile, fields_for, parse
from mountlimit.errors import InputError
from mountlimit.fields import SECTIONS, Field
from mountlimit.resolve import resolve

# forms that beams can work out: the others know no warping of a beam's ends
BEAMS = tuple(f for f in LAYOUTS if {"mount.route", "mount.warping_held"} <= fields_for(f).keys())
CLASSES = ("8.8", "8.8", "10.9", "A2-70", "4.6", "12.9", "5.8")
MEASURED = (
    0.85  # share of drives of a careful user: less is left to assume, so they are quicker too
)
TOLD = 0.85  # share of what could be assumed that such a user tells
NEW = 0.05  # share of drives that hold a key without a row

Row = tuple[float, Callable[[Chance, Build], Any]]


def _word(*words: str) -> Callable[[Chance, Build], Any]:
    return lambda c, _: c.one_of(words)


def _amount(low: float, high: float, unit: str = "") -> Callable[[Chance, Build], Any]:
    return lambda c, _: c.spread(low, high, unit)


def _number(low: float, high: float) -> Callable[[Chance, Build], Any]:
    return lambda c, _: round(c.between(low, high), 3)


# key: (share of drives that have it, how it is drawn)
ROWS: dict[str, Row] = {
    "motor.torque_scatter": (0.1, _amount(0.9, 1.1)),
    "motor.no_load_current": (0.15, _amount(0.5, 6, "A")),
    "motor.speed": (0.5, _amount(500, 5000, "rpm")),
    "motor.centre_of_mass": (0.7, _amount(35, 100, "mm")),
    "motor.bolt_class": (0.8, lambda c, b: _class(c, b.face_thread.system)),
    "motor.thread_depth": (0.5, lambda c, b: c.written(1000 * float(b.face_thread.diameter) * c.between(0.8, 1.6))),
    "motor.thread_strength": (0.1, _amount(150, 400, "MPa")),
    "motor.tightening_torque": (0.4, lambda c, b: _tightening(c, 1000 * float(b.face_thread.diameter))),
    "motor.face_friction": (0.2, _amount(0.1, 0.3)),
    "motor.washer": (0.4, _word("standard", "wide", "none")),
    "motor.spigot": (0.4, _word("yes", "no")),
    "motor.bore": (0.4, lambda c, b: c.written(b.circle * c.between(0.3, 0.7))),
    "current.wanted": (0.8, lambda c, b: c.amount(b.size.current[0], 1.5 * b.size.current[1], "A")),
    "current.continuous": (0.7, lambda c, b: c.amount(0.3 * b.size.current[0], 0.4 * b.size.current[1], "A")),
    "current.motor_limit": (0.1, lambda c, b: c.amount(*b.size.current, "A")),
    "chain.slack": (0.5, _amount(0.01, 0.05)),
    "chain.wear": (0.3, _amount(0.002, 0.03)),
    "chain.tooth_sides": (0.5, _word("chamfered", "flat")),
    "chain.tooth_relief": (0.1, _amount(0.02, 0.15)),
    "chain.offset": (0.5, _amount(0.05, 0.8, "mm")),
    "chain.skew": (0.5, _amount(0.01, 0.3, "deg")),
    "chain.link": (0.5, _word("rivet", "clip")),
    "chain.joint_pressure": (0.1, _amount(12, 35, "MPa")),
    "chain.stretch_ratio": (0.1, _amount(40, 120)),
    "shaft.face_to_bearing": (0.5, _amount(6, 15, "mm")),
    "shaft.bearing_span": (0.5, _amount(50, 160, "mm")),
    "shaft.yield_strength": (0.2, _amount(300, 700, "MPa")),
    "shaft.ultimate_strength": (0.1, _amount(700, 1000, "MPa")),
    "shaft.notch": (0.5, _word("shoulder, sharp", "shoulder, rounded", "groove", "keyway", "plain")),
    "shaft.bearing_play": (0.3, _amount(0.005, 0.05, "mm")),
    "mount.temperature": (0.2, _amount(5, 60, "degC")),
    "mount.grade": (0.3, _word("known", "scrap")),
    "mount.weight_acts": (0.6, _word("towards", "away", "across")),
    "mount.softness": (0.1, _amount(0.7, 1.8)),
    "mount.warping_held": (0.1, _number(0.0, 1.0)),
    "mount.elastic_modulus": (0.0, _amount(1, 200, "GPa")),
    "fixings.bolt_class": (0.8, lambda c, b: _class(c, b.frame_thread.system)),
    "fixings.edge": (0.3, lambda c, b: c.written(b.frame_washer * c.between(0.7, 1.5))),
    "fixings.tightening_torque": (0.5, lambda c, b: _tightening(c, 1000 * float(b.frame_thread.diameter))),
    "fixings.surface": (0.7, _word("dry steel", "painted", "oiled", "aluminium on steel", "plastic on steel", "wood on steel")),
    "fixings.friction": (0.1, _amount(0.08, 0.3)),
    "fixings.washer": (0.5, _word("standard", "wide", "none")),
    "fixings.joint_stiffness": (0.2, _amount(100, 1600, "kN/mm")),
    "fixings.clamp_tightening_torque": (0.6, _amount(4, 15, "N*m")),
    "fixings.clamp_surface": (0.7, _word("dry steel", "painted", "oiled", "aluminium on steel", "rubber lining")),
    "fixings.clamp_class": (0.5, _word("4.6", "8.8")),
    "fixings.clamp": (0.5, _word("u-bolts", "band")),
    "fixings.seat": (0.4, _word("shell", "flat")),
    "fixings.weld_quality": (0.4, _amount(0.5, 1.0)),
    "fixings.weld_lines": (0.6, _word("toe and heel", "both sides", "all round")),
    "mount.foot_points": (0.7, _word("motor", "sprocket")),
    "mount.flanges_point": (0.7, _word("motor", "sprocket")),
    "mount.stand_off": (0.5, _amount(2, 10, "mm")),
    "mount.bolts_to_tube": (0.2, lambda c, _: c.written(c.between(-15.0, 15.0))),
    "mount.strut_joint_stiffness": (0.2, _amount(2, 50, "kN/mm")),
    "mount.screw_stiffness": (0.1, _amount(0.5, 5, "kN/mm")),
    "frame.yield_strength": (0.3, _amount(180, 355, "MPa")),
    "use.efficiency": (0.2, _amount(0.7, 0.97)),
    "use.gear_after_chain": (0.1, _number(1, 25)),
    "duty.reverse": (0.5, _amount(0.1, 1.0)),
    "duty.ramp": (0.6, lambda c, _: c.one_of(("0 s", "20 ms", "150 ms", "300 ms", "0.5 s", "2 s"))),
    "duty.starting_factor": (0.1, _number(1, 8)),
    "duty.rotor_inertia": (0.2, _amount(1, 60, "kg*cm2")),
    "duty.bump": (0.5, _amount(1, 15, "g")),
    "duty.starts": (0.2, lambda c, _: round(c.between(1e3, 1e6))),
    "duty.hours": (0.3, _amount(10, 500, "h")),
    "duty.bearing_hours": (0.2, _amount(300, 5000, "h")),
    "duty.chain_factor": (0.1, _number(1.1, 1.6)),
    "policy.peak_skew": (0.05, _amount(0.3, 1.0, "deg")),
    "policy.peak_offset": (0.05, _amount(0.001, 0.005)),
    "policy.throw_level": (0.05, _number(0, 2)),
    "policy.factor_chain_static": (0.05, _number(1, 8)),
    "policy.factor_mount_section": (0.05, _number(1, 4)),
}  # fmt: skip
# Drawn together with others, or standing in for a whole group; no row of their own.
TOGETHER = ("title", "units", "chain.pull", "mount.route", "policy.jam")
SKIPPED = (
    "mount.drawing", "mount.drawing_units", "mount.frame_layer", "mount.motor_layer",
    "mount.shaft_layer", "mount.frame_at", "mount.motor_at",  # need a drawing beside the file
    "mount.frame_slots", "mount.motor_slots", "mount.slots", "mount.shaft", "mount.away", "mount.seen_from",
    *(k for s in SECTIONS if s.name in ("pull_test", "torque_test") for k in (f.key for f in s.fields)),  # tests/pull_test
    "trial",  # tests/sure
)  # fmt: skip


def _class(c: Chance, system: str) -> str:
    return c.one_of(CLASSES) if system == "metric" else c.one_of(("SAE 2", "SAE 5", "SAE 8"))


def _tightening(c: Chance, diameter: float) -> str:
    """Between hand-tight and the usual torque of class 8.8, N*m."""
    return c.amount(0.35 * 0.05 * diameter**3, 0.05 * diameter**3, "N*m")


def drive(number: int, forms: tuple[str, ...] = tuple(LAYOUTS), route: str = "") -> dict[str, Any]:
    """Give the keys of one drive, flat: ``section.key`` to what stands in the file."""
    c = Chance(number)
    form = c.one_of(forms)
    families, weldable, layout = LAYOUTS[form]
    b = build(c, form, families, weldable)
    keys: dict[str, Any] = {
        "title": f"random drive {number}", "mount.form": form, "mount.material": b.material,
        **machine.motor(c, b), **machine.chain(c, b), **machine.shaft(c, b), **machine.hub(c, b),
        **machine.driven(c, b), **machine.frame(c), **machine.slots(c, b), **machine.use(c),
        **machine.second_stage(c, b), **machine.more_bearings(c, b), **machine.spectrum(c), **layout(c, b),
    }  # fmt: skip
    keys |= small_parts(c, b, keys)
    known = fields_for(form)
    for key, (share, draw) in ROWS.items():
        if c.happens(share) and key in known:
            keys.setdefault(key, draw(c, b))
    _say_nothing_twice(keys)
    _new_keys(c, known, keys)
    if "motor.speed" in keys and c.happens(0.2):
        keys["policy.jam"] = True
    if route and "mount.route" in known:
        keys["mount.route"] = route
    keys["units"] = c.one_of(("metric", "inch"))
    kept = {k: v for k, v in keys.items() if k in known}
    return {**kept, **_measured(c, known, kept)} if c.happens(MEASURED) else kept


def _measured(c: Chance, known: dict[str, Field], keys: dict[str, Any]) -> dict[str, Any]:
    """Give a careful user's drive: most of what would be assumed is told, at its likely value."""
    try:
        assumed = resolve(parse(toml_text(nested(keys)).encode(), "drawn")).ranges
    except InputError:
        return {}
    told = [r for r in tellable(assumed, known) if r.key not in keys]
    told.sort(
        key=lambda r: r.key == "frame.face_width"
    )  # last: it came when drives had been stored
    return {r.key: in_words(r) for r in told if c.happens(TOLD)}


def _say_nothing_twice(keys: dict[str, Any]) -> None:
    """Take out keys that idle or clash beside others."""
    if "duty.starting_factor" in keys:
        keys.pop("duty.ramp", None)
    if keys.get("fixings.holes") != "slotted":
        keys.pop("fixings.slot_length", None)
    if keys["frame.member"] == "square tube":
        keys.pop("fixings.seat", None)
    if keys["mount.form"] == "outline":  # some bear beside the motor, or where they say
        keys.pop("frame.face_width", None)
    if keys.get("mount.screw_kind") == "dowel":
        keys.pop("mount.screw_head", None)


def _new_keys(c: Chance, known: dict[str, Field], keys: dict[str, Any]) -> None:
    """Draw keys that no row and no function speaks of, from what the field table says of them."""
    spoken = {*ROWS, *TOGETHER, *SKIPPED, *machine.SPOKEN, *SMALL}
    for key, field in known.items():
        new = not (key in spoken or key in keys or key.startswith("policy.factor_"))
        if new and c.happens(1.0 if field.required else NEW):
            keys[key] = _from_field(c, field)


def _from_field(c: Chance, field: Field) -> Any:
    if field.choices:
        return c.one_of(field.choices)
    if field.kind == "flag":
        return True
    default = field.default
    text = (
        c.one_of((default.low, default.likely, default.high))
        if default
        else field.example or field.least
    )
    return float(text) if field.kind == "number" else int(text) if field.kind == "integer" else text


def nested(keys: dict[str, Any]) -> dict[str, Any]:
    """Put flat keys into their sections."""
    found: dict[str, Any] = {}
    for key, value in keys.items():
        section, _, last = key.rpartition(".")
        (found.setdefault(section, {}) if section else found)[last] = value
    return found


def text(number: int, forms: tuple[str, ...] = tuple(LAYOUTS), route: str = "") -> str:
    """Give one drive as the text of its file."""
    return toml_text(nested(drive(number, forms, route)))


def read(number: int, forms: tuple[str, ...] = tuple(LAYOUTS), route: str = "") -> DriveFile:
    """Read one drive; raises ``InputError`` where the file is refused."""
    return parse(text(number, forms, route).encode(), f"random {number}")
