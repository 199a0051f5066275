"""Motor, chain, shaft, hub, driven side, frame and use of a random drive: what is drawn together."""

from __future__ import annotations

from typing import Any

from chance import Chance
from sizes import Build

from mountlimit import cards

Keys = dict[str, Any]
KINDS = ("motor", "motor", "phase peak", "phase rms", "battery", "unknown")
WAYS = ("across", "away", "towards", "across reversed")
MEMBERS = (
    "square tube",
    "square tube",
    "rectangular tube",
    "round tube",
    "angle",
    "channel",
    "flat bar",
    "rigid",
)
HUBS = (
    "key",
    "key",
    "key",
    "set screw",
    "flats",
    "taper bush",
    "clamp",
    "splines",
    "pin",
    "unsaid",
)


def motor(c: Chance, b: Build) -> Keys:
    """Draw the motor, its bolts and its torque in one of the four ways, and the current set."""
    torque, current = c.between(*b.size.torque), c.between(*b.size.current)
    keys: Keys = {
        "motor.mass": c.amount(*b.size.mass, "kg"), "motor.bolt_circle": c.written(b.circle),
        "motor.bolts": f"{b.face_bolts} x {b.face_thread.id.split()[0]}",
        "current.set": f"{current:.3g} A", "current.kind": c.one_of(KINDS),
        "motor.torque_per": c.one_of(KINDS[1:4]),
    }  # fmt: skip
    if b.face_holes:
        keys["motor.holes"] = b.face_holes
    way = c.one_of(("constant", "constant", "speed", "rated", "points"))
    if way == "constant":
        keys["motor.torque_constant"] = f"{torque:.3g} N*m/A"
    else:
        del keys["motor.torque_per"]
    if way == "speed":
        keys["motor.speed_constant"] = f"{9.55 / torque:.3g} rpm/V"
    elif way == "rated":
        keys |= {
            "motor.rated_torque": f"{torque * current:.3g} N*m",
            "motor.rated_current": f"{current:.3g} A",
        }
    elif way == "points":
        sag = c.between(0.7, 1.0)
        keys["motor.points"] = [
            [f"{current * s:.4g} A", f"{torque * current * s * (1 - (1 - sag) * s**2):.4g} N*m"]
            for s in (0.3, 0.7, 1.0)
        ]
    return keys


def chain(c: Chance, b: Build) -> Keys:
    """Draw chain, teeth and centres that leave the sprockets apart, and where it pulls."""
    name = c.one_of(b.size.chains)
    pitch = 1000 * float(cards.chain(name).pitch)
    small, large = round(c.between(9, 17)), round(c.between(18, 72))
    least = pitch * (small + large) / 6.2
    keys: Keys = {
        "chain.type": name, "chain.driving_teeth": small, "chain.driven_teeth": large,
        "chain.centre_distance": c.length(max(150, 1.1 * least), max(550, 1.6 * least)),
    }  # fmt: skip
    ways = c.one_of(("one", "one", "two", "angle", "unknown"))
    if ways == "one":
        keys["chain.pull"] = c.one_of(WAYS)
    elif ways == "two":
        keys["chain.pull"] = [c.one_of(WAYS), f"{c.between(-90.0, 200.0):.3g} deg"]
    elif ways == "angle":
        keys["chain.pull"] = f"{c.between(-180.0, 180.0):.3g} deg"
    return keys


def shaft(c: Chance, b: Build) -> Keys:
    """Draw diameter, overhang past the plate, and a bearing that goes on the shaft."""
    keys: Keys = {
        "shaft.diameter": c.written(b.shaft),
        "shaft.face_overhang": c.written(1.7 * b.thickness + 6 + c.between(*b.size.overhang)),
    }  # fmt: skip
    fitting = [x.id for x in cards.bearings("deep groove") if abs(1000 * x.bore - b.shaft) < 2.5]
    way = c.one_of(("named", "named", "named", "ratings", "unsaid"))
    if way == "named" and fitting:
        keys["shaft.bearing"] = c.one_of(fitting)
    elif way == "ratings":
        static = c.between(0.04, 0.08) * b.shaft**1.75
        keys |= {
            "shaft.static_rating": f"{static:.3g} kN",
            "shaft.dynamic_rating": f"{1.9 * static:.3g} kN",
        }
    return keys


def hub(c: Chance, b: Build) -> Keys:
    """Draw what turns the sprocket, and bolts or weld between sprocket and hub."""
    kind, d = c.one_of(HUBS), b.shaft
    keys: Keys = {} if kind == "unsaid" else {"hub.drive": kind}
    if kind == "key" and c.happens(0.8):
        size = cards.key_for_shaft(d / 1000, "metric")
        width, high = (1000 * size.width, 1000 * size.height) if size else (2.0, 2.0)
        keys["hub.key"] = f"{width:g} x {high:g} x {d * c.between(0.8, 1.7):.3g} mm"
        if c.happens(0.3):
            keys["hub.outer_diameter"] = c.written(d * c.between(1.5, 2.2))
        if c.happens(0.3):
            keys["hub.key_yield"] = c.spread(90, 450, "MPa")
    if kind == "set screw" or (kind == "key" and c.happens(0.3)):
        keys["hub.set_screw"] = (
            f"{c.one_of((1, 1, 2))} x {c.one_of(('M4', 'M5', 'M6', 'M8', '1/4', '5/16'))}"
        )
    if kind == "flats" and c.happens(0.8):
        number, share = c.one_of((1, 2)), c.between(0.04, 0.2)
        keys["hub.flats"] = number
        if c.happens(0.5):
            keys["hub.flat_depth"] = c.written(share * d)
        else:
            keys["hub.across_flats"] = c.written(d * (1 - number * share))
        if c.happens(0.5):
            keys["hub.flat_length"] = c.written(d * c.between(0.8, 1.6))
    if kind in ("taper bush", "clamp") and (kind == "clamp" or c.happens(0.8)):
        if c.happens(0.4):
            keys["hub.rated_torque"] = f"{0.02 * d**3 * c.between(0.5, 1.5) + 3:.3g} N*m"
        else:
            keys["hub.screws"] = f"{c.one_of((1, 2))} x {c.one_of(('M5', 'M6', 'M8'))}"
            if c.happens(0.5):
                keys["hub.screw_tightening_torque"] = c.amount(5, 9, "N*m")
    return {**keys, **_ring(c, "hub", d)}


def _ring(c: Chance, side: str, bore: float) -> Keys:
    """Draw bolts on a circle, a ring of weld, or nothing told."""
    keys: Keys = {}
    told = c.one_of(("nothing", "bolts", "weld", "nothing"))
    if told == "bolts":
        keys[f"{side}.bolts"] = f"{c.one_of((3, 4, 6))} x {c.one_of(('M5', 'M6', 'M8'))}"
        keys[f"{side}.bolt_circle"] = c.written(bore + c.between(20, 60))
        if c.happens(0.6):
            keys[f"{side}.bolt_class"] = c.one_of(("8.8", "10.9", "A2-70"))
        if c.happens(0.5):
            keys[f"{side}.tightening_torque"] = c.amount(3, 6, "N*m")
        if c.happens(0.5):
            keys[f"{side}.pilot"] = c.one_of(("yes", "no"))
        if c.happens(0.2):
            keys[f"{side}.friction"] = c.spread(0.1, 0.25, "")
    elif told == "weld":
        keys[f"{side}.weld_diameter"] = c.written(bore * c.between(1.4, 2.2))
        keys[f"{side}.weld_leg"] = c.length(2, 6)
        if c.happens(0.4):
            keys[f"{side}.weld_sides"] = c.one_of((1, 2))
        if c.happens(0.4):
            keys[f"{side}.weld_share"] = c.spread(0.3, 1.0, "")
        if c.happens(0.6):
            keys[f"{side}.weld_material"] = c.one_of(("s235", "6061", "s355", "304"))
    return keys


def driven(c: Chance, b: Build) -> Keys:
    """Draw what is told of the driven side; often nothing."""
    if c.happens(0.4):
        return {}
    d = b.shaft * c.between(1.2, 2.2)
    keys: Keys = {**_ring(c, "driven", d)}
    if c.happens(0.7):
        keys["driven.shaft_diameter"] = c.written(d)
        if c.happens(0.7):
            keys["driven.overhang"] = c.length(20, 90)
        if c.happens(0.4):
            keys |= {
                "driven.sprocket_at": "between the bearings",
                "driven.bearing_span": c.length(120, 500),
            }
        size = cards.key_for_shaft(d / 1000, "metric")
        if size and c.happens(0.6):
            keys["driven.key"] = (
                f"{1000 * size.width:g} x {1000 * size.height:g} x {d * c.between(0.8, 1.6):.3g} mm"
            )
        if c.happens(0.3):
            keys["driven.shaft_yield"] = c.spread(250, 600, "MPa")
        if c.happens(0.2):
            keys["driven.key_yield"] = c.spread(200, 400, "MPa")
    if c.happens(0.3):
        keys["driven.freewheel_torque"] = c.amount(40, 400, "N*m")
    axle(c, keys)
    return keys


def axle(c: Chance, keys: Keys) -> None:
    """Add bearings, weight and fatigue of a driven shaft whose diameter and overhang are told."""
    if "driven.overhang" not in keys:
        return
    if "driven.key" not in keys and c.happens(0.3):
        keys["driven.axle"] = c.one_of(("turning", "dead"))
    if keys.get("driven.axle") != "dead" and c.happens(0.4):
        keys["driven.bearing"] = c.one_of(("6204", "6205", "6206", "UC205"))
        keys.setdefault("driven.bearing_span", c.length(120, 500))
    if c.happens(0.3):
        keys["driven.weight"] = c.amount(100, 1500, "N")
        keys["driven.weight_overhang"] = c.length(20, 100)
        keys["driven.weight_at"] = c.one_of(("outside the bearings", "between the bearings"))
        keys.setdefault("driven.bearing_span", c.length(220, 500))
    if c.happens(0.4):
        keys["driven.notch"] = c.one_of(
            ("shoulder, sharp", "shoulder, rounded", "groove", "keyway", "plain")
        )


def second_stage(c: Chance, b: Build) -> Keys:
    """Draw a jackshaft and a second chain, now and then."""
    if c.happens(0.85):
        return {}
    d, span = b.shaft * c.between(1.2, 1.8), c.between(50, 150)
    small, large = round(c.between(9, 16)), round(c.between(20, 60))
    name = c.one_of(("40", "50", "420", "428", "60", "520"))
    least = 1000 * float(cards.chain(name).pitch) * (small + large) / 6.2
    keys: Keys = {
        "second_chain.type": name, "second_chain.driving_teeth": small, "second_chain.driven_teeth": large,
        "second_chain.centre_distance": c.length(max(200, 1.1 * least), max(600, 1.6 * least)),
        "jackshaft.diameter": c.written(d), "jackshaft.bearing_span": c.written(span),
        "jackshaft.first_at": c.written(c.one_of((-1, 0.3)) * c.between(15, 40)),
        "jackshaft.second_at": c.written(span + c.between(15, 40)),
    }  # fmt: skip
    fitting = [x.id for x in cards.bearings("deep groove") if abs(1000 * x.bore - d) < 2.5]
    if fitting:
        keys["jackshaft.bearing"] = c.one_of(fitting)
    else:
        keys |= {"jackshaft.static_rating": "8 kN", "jackshaft.dynamic_rating": "14 kN"}
    if c.happens(0.5):
        keys["jackshaft.angle"] = f"{c.between(0.0, 180.0):.3g} deg"
    if c.happens(0.5):
        keys["jackshaft.notch"] = c.one_of(
            ("shoulder, sharp", "shoulder, rounded", "groove", "keyway", "plain")
        )
    if c.happens(0.6):
        size = cards.key_for_shaft(d / 1000, "metric")
        if size:
            words = f"{1000 * size.width:g} x {1000 * size.height:g} x {d:.3g} mm"
            keys |= {"jackshaft.first_key": words, "jackshaft.second_key": words}
    if c.happens(0.5):
        keys["second_chain.link"] = c.one_of(("rivet", "clip"))
    if c.happens(0.3):
        keys["second_chain.slack"] = c.spread(0.01, 0.05, "")
    return keys


def more_bearings(c: Chance, b: Build) -> Keys:
    """Draw an outboard bearing and the motor's rear one, now and then."""
    keys: Keys = {}
    fitting = [x.id for x in cards.bearings("deep groove") if abs(1000 * x.bore - b.shaft) < 2.5]
    if fitting and c.happens(0.15):
        keys |= {"outboard.at": c.written(1.7 * b.thickness + 6 + b.size.overhang[1] + c.between(12, 40)),
                 "outboard.bearing": c.one_of(fitting), "outboard.held_by": c.one_of(("frame", "mount"))}  # fmt: skip
        if c.happens(0.5):
            keys["outboard.gap"] = c.written(c.between(0.01, 0.3))
        if c.happens(0.5):
            keys["outboard.stiffness"] = c.spread(2, 40, "kN/mm")
    if fitting and c.happens(0.3):
        keys["shaft.rear_bearing"] = c.one_of(fitting)
    return keys


def spectrum(c: Chance) -> Keys:
    """Draw a duty of some steps, now and then."""
    if c.happens(0.85):
        return {}
    first = c.between(0.05, 0.4)
    return {
        "duty.spectrum": [["100 %", f"{100 * first:.3g} %"], ["50 %", f"{60 * (1 - first):.3g} %"]]
    }


def frame(c: Chance) -> Keys:
    """Draw the frame member; clamps bring their own."""
    member = c.one_of(MEMBERS)
    keys: Keys = {"frame.member": member}
    if member == "rigid":
        return keys
    size = c.between(25, 70)
    if c.happens(0.8) or member == "rectangular tube":
        keys["frame.size"] = c.written(size)
    if member == "rectangular tube" or (member in ("angle", "channel") and c.happens(0.5)):
        keys["frame.depth"] = c.written(size * c.between(0.5, 1.3))
    if member == "channel" and c.happens(0.5):
        keys["frame.open_side"] = c.one_of(("away", "side"))
    if c.happens(0.7):
        keys["frame.wall"] = c.length(5, 10) if member == "flat bar" else c.length(1.5, 5)
    if c.happens(0.7):
        keys["frame.span"] = c.length(150, 800)
    if c.happens(0.4):
        keys["frame.ends"] = c.one_of(("held", "hinged"))
    if c.happens(0.2):
        keys["frame.place"] = round(c.between(0.15, 0.85), 2)
    if c.happens(0.2):
        keys["frame.elastic_modulus"] = c.one_of(("70 GPa", "205 GPa"))
    chosen = 1e7 * size % 1.0  # by its digits: one draw more would change every stored mount
    if chosen < 0.3:
        keys["frame.face_width"] = f"{size + 300 * chosen:.4g} mm"
    return keys


def slots(c: Chance, b: Build) -> Keys:
    """Draw slots for the frame bolts, now and then."""
    if c.happens(0.75):
        return {"fixings.holes": "round"} if c.happens(0.3) else {}
    keys: Keys = {"fixings.holes": "slotted", "fixings.slots_run": c.one_of(("square", "along"))}
    if c.happens(0.5):
        keys["fixings.slot_length"] = c.written(
            1000 * float(b.frame_thread.clearance_hole) * c.between(1.3, 2.5)
        )
    return keys


def use(c: Chance) -> Keys:
    """Draw the vehicle, or a machine that stands."""
    if c.happens(0.3):
        return {}
    keys: Keys = {
        "use.wheel_load": c.amount(150, 3000, "N"),
        "use.wheel_diameter": c.amount(150, 600, "mm"),
    }
    if c.happens(0.3):
        keys["use.lifted_load"] = c.amount(1500, 4000, "N")
    if c.happens(0.3):
        keys |= {"use.mass": c.amount(50, 500, "kg"), "use.wheelbase": "1200 mm", "use.driven": c.one_of(("rear", "front", "all")),
                 "use.front_to_centre": c.amount(400, 800, "mm"), "use.centre_height": c.amount(300, 800, "mm")}  # fmt: skip
    if c.happens(0.4):
        keys |= {"use.grip_low": c.spread(0.15, 0.5, ""), "use.grip_high": c.spread(0.5, 1.2, "")}
    return keys


# Keys that the functions here and the layouts draw; left out of a drive on purpose at times.
SPOKEN = (
    "driven.axle", "driven.bearing", "driven.dynamic_rating", "driven.static_rating", "driven.notch", "driven.shaft_ultimate",
    "driven.weight", "driven.weight_at", "driven.weight_overhang", "duty.spectrum", "jackshaft.angle", "jackshaft.bearing",
    "jackshaft.bearing_span", "jackshaft.diameter", "jackshaft.dynamic_rating", "jackshaft.static_rating", "jackshaft.first_at",
    "jackshaft.first_key", "jackshaft.second_at", "jackshaft.second_key", "jackshaft.notch", "jackshaft.key_yield",
    "jackshaft.ultimate_strength", "jackshaft.yield_strength", "outboard.at", "outboard.bearing", "outboard.gap",
    "outboard.held_by", "outboard.stiffness", "outboard.dynamic_rating", "outboard.static_rating", "second_chain.type",
    "second_chain.driving_teeth", "second_chain.driven_teeth", "second_chain.centre_distance", "second_chain.joint_pressure",
    "second_chain.link", "second_chain.slack", "shaft.rear_bearing", "shaft.rear_dynamic_rating", "shaft.rear_static_rating",
    "fixings.weld_leg", "fixings.weld_sides",
    "motor.torque_constant", "motor.speed_constant", "motor.rated_torque", "motor.rated_current", "motor.points",
    "motor.torque_per", "motor.holes", "motor.preload", "current.kind", "shaft.bearing", "shaft.static_rating",
    "shaft.dynamic_rating", "hub.drive", "hub.key", "hub.key_yield", "hub.set_screw", "hub.flats", "hub.flat_depth",
    "hub.across_flats", "hub.flat_length", "hub.rated_torque", "hub.screws", "hub.screw_class",
    "hub.screw_tightening_torque", "hub.screw_preload", "hub.shaft_friction", "hub.outer_diameter",
    *(f"{side}.{key}" for side in ("hub", "driven") for key in (
        "bolts", "bolt_class", "bolt_circle", "tightening_torque", "preload", "friction", "pilot",
        "weld_diameter", "weld_leg", "weld_sides", "weld_share", "weld_material")),
    "driven.key", "driven.key_yield", "driven.shaft_diameter", "driven.overhang", "driven.bearing_span",
    "driven.sprocket_at", "driven.shaft_yield", "driven.freewheel_torque",
    "frame.member", "frame.size", "frame.depth", "frame.wall", "frame.span", "frame.place", "frame.ends",
    "frame.open_side", "frame.elastic_modulus", "frame.face_width", "fixings.span_along", "fixings.holes", "fixings.slot_length",
    "fixings.slots_run", "fixings.preload", "fixings.clamp_preload", "fixings.clamp_friction", "fixings.contact_angle",
    "fixings.weld_ultimate", "use.wheel_load", "use.lifted_load", "use.driven", "use.mass", "use.wheelbase", "use.front_to_centre", "use.centre_height",
    "use.wheel_diameter", "use.grip_low", "use.grip_high", "mount.yield_strength", "mount.fatigue_strength",
    "second.material", "second.thickness", "second.elastic_modulus", "second.yield_strength", "second.fatigue_strength",
    "mount.foot_thickness", "mount.bend_radius", "mount.heel_bears_from", "mount.gussets", "mount.gusset_height", "mount.gusset_depth",
    "mount.gusset_thickness", "mount.base_overhang", "mount.screw_kind", "mount.screw_span", "mount.screw_head",
    "mount.screw_hold", "mount.screw_bearing", "mount.screw_head_pull", "mount.face_to_tube", "mount.tube",
    "mount.tube_depth", "mount.tube_runs", "mount.weld_length", "mount.rests", "mount.rests_up_to", "mount.outline",
    "mount.frame_holes", "mount.motor_holes", "mount.holes", "mount.strut_from", "mount.strut_diameter",
    "mount.strut_bore", "mount.strut_width", "mount.strut_thickness", "mount.strut_start_behind", "mount.strut_start_across",
    "mount.strut_end_across", "mount.sleeve_flange", "mount.motor_sleeve_diameter", "mount.spacers_along",
    "mount.spacers_above", "mount.spacer_bore", "mount.spacer_modulus", "mount.spacer_yield", "mount.body_diameter",
    "mount.motor_hangs", "mount.opening", "mount.frame_lies", "policy.running_skew", "policy.running_offset",
)  # fmt: skip
