"""The keys of a drive file: one line per key, with its kind, meaning, allowed range and default.

A default is a range *low, likely, high* with its source; it is used when the key is absent and is
then listed as assumed.  Defaults that depend on other inputs are worked out in ``resolve``.
"""

from __future__ import annotations

from dataclasses import dataclass

COMMON = "common practice, no source"


@dataclass(frozen=True, slots=True, kw_only=True)
class Default:
    """A class default: low, likely, high as text with units, and where it comes from."""

    low: str
    likely: str
    high: str
    source: str = COMMON


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """One key of the drive file."""

    key: str
    kind: str  # a unit kind, or: integer, number, text, choice, flag, bolts, key size, place, hole, slot, heading, thread, card kinds
    meaning: str
    required: bool = False
    default: Default | None = None
    least: str = ""
    most: str = ""
    choices: tuple[str, ...] = ()
    many: bool = False
    example: str = ""


@dataclass(frozen=True, slots=True)
class Section:
    """One table of the drive file with its keys."""

    name: str
    meaning: str
    fields: tuple[Field, ...] = ()


AMPERES = ("motor", "phase peak", "phase rms", "battery", "unknown")


def need(key: str, kind: str, meaning: str, least: str, most: str, example: str) -> Field:
    """Give a key the user must set."""
    return Field(key=key, kind=kind, meaning=meaning, required=True, least=least, most=most,
                 example=example)  # fmt: skip


def may(
    key: str, kind: str, meaning: str, least: str = "", most: str = "",
    default: tuple[str, str, str] | None = None, source: str = COMMON, **more: object,
) -> Field:  # fmt: skip
    """Give a key that may stay out; without ``default`` it is simply absent or derived."""
    known = (
        Default(low=default[0], likely=default[1], high=default[2], source=source)
        if default
        else None
    )
    return Field(key=key, kind=kind, meaning=meaning, least=least, most=most, default=known, **more)  # type: ignore[arg-type]


def choose(key: str, meaning: str, choices: tuple[str, ...]) -> Field:
    """Give a key with a closed list of words."""
    return Field(key=key, kind="choice", meaning=meaning, choices=choices)


TOP = Section("", "the file", (
    Field(key="title", kind="text", meaning="what this drive is", required=True, example="Barrow with a chain drive"),
    choose("units", "units of the printed answer", ("metric", "inch")),
    Field(key="trial", kind="trials", meaning="tables [[trial]] at the end of the file: a motor current that was run, and what was seen (fine, rubs, thrown, slipped, bent, broke), with the part if you know it"),
))  # fmt: skip

MOTOR = Section("motor", "the motor and how it is bolted to the mount", (
    may("motor.torque_constant", "torque_constant", "torque per ampere of motor current", "0.001 N*m/A", "20 N*m/A", example="0.12 N*m/A"),
    may("motor.speed_constant", "speed_constant", "no-load speed per volt (KV)", "1 rpm/V", "20000 rpm/V", example="79 rpm/V"),
    may("motor.rated_torque", "torque", "torque on the nameplate", "0.01 N*m", "2000 N*m"),
    may("motor.rated_current", "current", "current that gives the rated torque", "0.1 A", "5000 A"),
    Field(key="motor.points", kind="points", meaning="measured pairs of current and torque"),
    choose("motor.torque_per", "which ampere the torque constant is quoted in", AMPERES[:3]),
    may("motor.torque_scatter", "ratio", "true torque over the torque worked out", "0.5", "2", ("0.95", "1", "1.05"), "common practice, no source (magnet and winding tolerance)"),
    may("motor.no_load_current", "current", "current that only overcomes the motor's own friction", "0 A", "200 A", ("0 A", "0 A", "0 A"), "none assumed: the safe side"),
    may("motor.speed", "rotational_speed", "shaft speed under load, for bearing life, chain rating and a dead stop", "1 rpm", "60000 rpm", example="2500 rpm"),
    need("motor.mass", "mass", "mass of the motor", "0.05 kg", "300 kg", "5.5 kg"),
    may("motor.centre_of_mass", "length", "centre of mass behind the mounting face", "1 mm", "500 mm"),
    need("motor.bolts", "bolts", "bolts that hold the motor's face", "", "", "4 x M6"),
    need("motor.bolt_circle", "length", "diameter of the circle through the face bolts", "8 mm", "600 mm", "70 mm"),
    Field(key="motor.bolt_class", kind="bolt class", meaning="property class of the face bolts"),
    may("motor.thread_depth", "length", "depth of thread in use in the motor's face", "1 mm", "100 mm"),
    may("motor.thread_strength", "stress", "ultimate strength of the metal the threads are cut in", "50 MPa", "1000 MPa", ("160 MPa", "200 MPa", "240 MPa"), "from memory (die-cast and wrought aluminium end bells)"),
    may("motor.tightening_torque", "torque", "torque each face bolt was tightened to", "0.05 N*m", "2000 N*m"),
    may("motor.preload", "force", "clamping force of each face bolt when it is known", "10 N", "1000 kN"),
    may("motor.face_friction", "ratio", "friction between the motor's face and the mount", "0.01", "1"),
    choose("motor.washer", "washers under the heads of the face bolts", ("standard", "wide", "none")),
    choose("motor.holes", "holes in the mount for the face bolts", ("round", "slotted")),
    choose("motor.spigot", "does a spigot of the motor sit in a close hole of the mount?", ("yes", "no")),
    may("motor.bore", "length", "hole in the mount for the motor's spigot or shaft", "2 mm", "400 mm"),
))  # fmt: skip

CURRENT = Section("current", "the controller", (
    choose("current.kind", "which ampere the controller's limit counts", AMPERES),
    need("current.set", "current", "the limit that is set now", "0.1 A", "5000 A", "80 A"),
    may("current.wanted", "current", "the limit you would like to set", "0.1 A", "5000 A", example="200 A"),
    may("current.continuous", "current", "what the motor may carry for hours", "0.1 A", "5000 A"),
    may("current.motor_limit", "current", "the controller's own motor-side limit when it is set in battery amperes", "0.1 A", "10000 A"),
))  # fmt: skip

CHAIN = Section("chain", "the chain and its two sprockets", (
    Field(key="chain.type", kind="chain", meaning="chain designation", required=True, example="40"),
    need("chain.driving_teeth", "integer", "teeth on the motor", "6", "60", "11"),
    need("chain.driven_teeth", "integer", "teeth on the driven sprocket", "6", "150", "60"),
    need("chain.centre_distance", "length", "between the two sprocket axes", "40 mm", "5 m", "330 mm"),
    Field(key="chain.sprockets", kind="chain", meaning="chain the sprockets were cut for, when you know it", example="40"),
    may("chain.ten_pitches", "length", "length over ten pitches of the chain pulled straight, by caliper", "40 mm", "600 mm"),
    may("chain.roller_diameter", "length", "diameter of its rollers (or bushes), by caliper", "2 mm", "50 mm"),
    may("chain.inner_width", "length", "clear width between its inner plates, by caliper", "1.5 mm", "50 mm"),
    Field(key="chain.pull", kind="direction", many=True, meaning="where the chain pulls the motor: 'across' the mount, 'away' from or 'towards' the frame, or an angle from 'across'"),
    may("chain.slack", "ratio", "mid-span sag of the slack run over its length", "0.1 %", "20 %", ("1 %", "3 %", "5 %")),
    may("chain.wear", "ratio", "elongation since the slack was measured", "0 %", "5 %", ("0 %", "0 %", "0 %"), "none beside the sag as it is now"),
    choose("chain.tooth_sides", "sides of the driving sprocket's teeth", ("chamfered", "flat")),
    may("chain.tooth_relief", "ratio", "side relief of a tooth at its tip over the pitch", "0", "0.3"),
    may("chain.offset", "length", "as-built offset between the sprocket planes", "0 mm", "50 mm"),
    may("chain.skew", "angle", "as-built angle between the sprockets", "0 deg", "10 deg", ("0 deg", "0.1 deg", "0.3 deg"), "common practice, no source (straightedge and eye)"),
    choose("chain.link", "the link that closes the chain: riveted (or press-fit), or with a spring clip", ("rivet", "clip")),
    may("chain.joint_pressure", "stress", "pressure allowed between pin and bush at the motor's speed", "1 MPa", "100 MPa", example="24 MPa"),
    may("chain.stretch_ratio", "ratio", "stretching stiffness of the chain times its length, over its tensile strength", "10", "500", ("40", "80", "120")),
))  # fmt: skip

NOTCHES = ("shoulder, sharp", "shoulder, rounded", "groove", "keyway", "plain")

SHAFT = Section("shaft", "the motor shaft", (
    need("shaft.diameter", "length", "shaft diameter at the front bearing", "3 mm", "120 mm", "12 mm"),
    need("shaft.face_overhang", "length", "mounting face of the motor to the middle of the sprocket", "2 mm", "400 mm", "28 mm"),
    may("shaft.face_to_bearing", "length", "mounting face back to the middle of the front bearing", "0 mm", "200 mm", ("6 mm", "10 mm", "15 mm")),
    may("shaft.bearing_span", "length", "between the two motor bearings", "10 mm", "1 m"),
    Field(key="shaft.bearing", kind="bearing", meaning="front bearing designation"),
    may("shaft.static_rating", "force", "static rating of the front bearing when its number is unknown", "100 N", "500 kN"),
    may("shaft.dynamic_rating", "force", "dynamic rating of the front bearing when its number is unknown", "100 N", "500 kN", example="7.2 kN"),
    Field(key="shaft.rear_bearing", kind="bearing", meaning="rear bearing designation"),
    may("shaft.rear_static_rating", "force", "static rating of the rear bearing when its number is unknown", "100 N", "500 kN", example="2.4 kN"),
    may("shaft.rear_dynamic_rating", "force", "dynamic rating of the rear bearing when its number is unknown", "100 N", "500 kN", example="5.1 kN"),
    may("shaft.yield_strength", "stress", "yield strength of the shaft", "100 MPa", "2000 MPa", ("300 MPa", "370 MPa", "600 MPa"), "from memory (plain to heat-treated medium-carbon shaft steel)"),
    may("shaft.ultimate_strength", "stress", "ultimate strength of the shaft", "150 MPa", "2500 MPa", example="600 MPa"),
    choose("shaft.notch", "the sharpest change of form of the shaft near its front bearing, on the sprocket's side", NOTCHES),
    Field(key="shaft.places", kind="shaft places", meaning="further places where the shaft is thinner or notched, up to the sprocket: rows of form (as shaft.notch), distance from the motor's face, diameter there"),
    may("shaft.bearing_play", "length", "radial play of the front bearing", "0 mm", "1 mm", ("0.005 mm", "0.01 mm", "0.03 mm")),
))  # fmt: skip

OUTBOARD = Section("outboard", "a third bearing on the motor shaft, beyond the sprocket", (
    may("outboard.at", "length", "mounting face of the motor to the middle of the outboard bearing", "5 mm", "600 mm", example="60 mm"),
    choose("outboard.held_by", "what holds it: the frame, or an arm of the mount itself", ("frame", "mount")),
    may("outboard.stiffness", "stiffness", "stiffness of the bearing with what holds it, along the pull", "0.1 kN/mm", "1000 kN/mm", ("2 kN/mm", "10 kN/mm", "50 kN/mm")),
    may("outboard.gap", "length", "how far the shaft moves before this bearing carries: its play and how far it is out of line", "0 mm", "3 mm", ("0 mm", "0.05 mm", "0.2 mm")),
    Field(key="outboard.bearing", kind="bearing", meaning="its designation", example="6001"),
    may("outboard.static_rating", "force", "its static rating when its number is unknown", "100 N", "500 kN", example="2800 N"),
    may("outboard.dynamic_rating", "force", "its dynamic rating when its number is unknown", "100 N", "500 kN", example="5600 N"),
))  # fmt: skip


def sprocket_joint(part: str, sprocket: str) -> tuple[Field, ...]:
    """Give the keys of a sprocket bolted or welded to its hub; the same on both sides."""
    return (
        Field(key=f"{part}.bolts", kind="bolts", meaning=f"bolts on a circle that hold {sprocket} to its hub", example="6 x M5"),
        Field(key=f"{part}.bolt_class", kind="bolt class", meaning="property class of these bolts"),
        may(f"{part}.bolt_circle", "length", "diameter of the circle through these bolts", "8 mm", "1 m", example="50 mm"),
        may(f"{part}.tightening_torque", "torque", "torque each of these bolts was tightened to", "0.05 N*m", "2000 N*m", example="6 N*m"),
        may(f"{part}.preload", "force", "clamping force of each of these bolts when it is known", "10 N", "1000 kN", example="4 kN"),
        may(f"{part}.friction", "ratio", "friction between sprocket and hub where they are bolted", "0.01", "1", ("0.1", "0.15", "0.25"), "from memory (bare, oily or painted metal faces)"),
        choose(f"{part}.pilot", "does a close-fitting shoulder of the hub centre the sprocket and carry the chain's pull?", ("yes", "no")),
        may(f"{part}.weld_diameter", "length", f"diameter of the ring of weld between {sprocket} and its hub", "5 mm", "1 m", example="35 mm"),
        may(f"{part}.weld_leg", "length", "leg of that fillet weld: from its root along either part", "0.5 mm", "30 mm", example="4 mm"),
        may(f"{part}.weld_sides", "integer", "sides of the sprocket that are welded", "1", "2", ("1", "1", "1"), "one side assumed: the safe side"),
        may(f"{part}.weld_share", "ratio", "welded part of the circle, less than 1 for stitches", "5 %", "100 %", ("100 %", "100 %", "100 %"), "welded all round assumed"),
        Field(key=f"{part}.weld_material", kind="material", meaning="what the weaker of the two welded parts is made of", example="s235"),
        Field(key=f"{part}.sprocket_material", kind="material", meaning=f"what {sprocket} is made of; its teeth are checked then", example="6082"),
        may(f"{part}.tooth_width", "length", "width of its teeth along the shaft, by caliper", "1 mm", "50 mm", example="7 mm"),
        may(f"{part}.tooth_share", "ratio", "part of the chain's pull on its most loaded tooth", "20 %", "100 %", example="80 %"),
    )  # fmt: skip


def pin_keys(part: str, sprocket: str) -> tuple[Field, ...]:
    """Give the keys of a pin that turns a sprocket; the same on both sides."""
    return (
        may(f"{part}.pin", "length", f"diameter of the pin that turns {sprocket}: through hub and shaft, or a shear pin in a flange", "1 mm", "40 mm", example="5 mm"),
        choose(f"{part}.pin_kind", "what the pin is; without it mild steel is assumed", ("mild steel", "spring pin", "brass", "hardened dowel")),
        may(f"{part}.pin_shear_strength", "stress", "shear strength of the pin when you know it", "20 MPa", "1500 MPa", example="320 MPa"),
        may(f"{part}.pin_circle", "length", "shear pin in a flange: diameter of the circle it stands on", "8 mm", "1 m", example="60 mm"),
        may(f"{part}.pin_planes", "integer", "sections of pin that must be cut: 2 for a pin through hub and shaft, 1 in a flange", "1", "12", example="2"),
        Field(key=f"{part}.shear_pin", kind="flag", meaning="the pin is meant to go first: say what may give before it"),
    )  # fmt: skip


HUB = Section("hub", "how the driving sprocket is held on the shaft", (
    choose("hub.drive", "what turns the sprocket", ("key", "set screw", "flats", "taper bush", "clamp", "splines", "pin")),
    Field(key="hub.key", kind="key size", meaning="width x height x length of the key", example="4 x 4 x 16 mm"),
    may("hub.key_yield", "stress", "yield strength of the softest of key (or pin), shaft and hub", "20 MPa", "1500 MPa", ("220 MPa", "300 MPa", "400 MPa"), "from memory (bright key steel and mild steel hubs)"),
    Field(key="hub.set_screw", kind="set screws", meaning="number and size of set screws", example="1 x M6"),
    may("hub.flats", "integer", "flats on the shaft: 1 (D shaft) or 2 (double D)", "1", "2", ("1", "1", "1"), "one flat assumed: the safe side"),
    may("hub.flat_depth", "length", "how deep each flat is cut into the round shaft", "0.1 mm", "30 mm", example="1 mm"),
    may("hub.across_flats", "length", "the same by caliper: over the flat and the round of a D shaft, or over both flats", "2 mm", "120 mm", example="11 mm"),
    may("hub.flat_length", "length", "length of the flats inside the hub", "1 mm", "300 mm", example="15 mm"),
    may("hub.rated_torque", "torque", "torque the taper bush or clamping hub holds by its maker's list", "0.1 N*m", "20000 N*m", example="180 N*m"),
    Field(key="hub.screws", kind="bolts", meaning="screws that clamp the taper bush or the split hub", example="2 x M6"),
    Field(key="hub.screw_class", kind="bolt class", meaning="property class of these screws"),
    may("hub.screw_tightening_torque", "torque", "torque each of these screws was tightened to", "0.05 N*m", "2000 N*m", example="9 N*m"),
    may("hub.screw_preload", "force", "clamping force of each of these screws when it is known", "10 N", "1000 kN", example="8 kN"),
    may("hub.shaft_friction", "ratio", "friction between the clamped hub or bush and the shaft", "0.01", "1", ("0.1", "0.15", "0.2"), "from memory (steel or iron on a steel shaft, oily to dry)"),
    may("hub.outer_diameter", "length", "outer diameter of the hub, where a key is let in or a pin goes through", "5 mm", "500 mm", example="25 mm"),
    *pin_keys("hub", "the driving sprocket"),
    *sprocket_joint("hub", "the driving sprocket"),
))  # fmt: skip

SECOND_CHAIN = Section("second_chain", "a second chain, from a jackshaft to the driven side; leave it out where there is one chain", (
    Field(key="second_chain.type", kind="chain", meaning="chain designation", example="40"),
    may("second_chain.driving_teeth", "integer", "teeth on the jackshaft", "6", "60", example="13"),
    may("second_chain.driven_teeth", "integer", "teeth on the driven sprocket", "6", "150", example="40"),
    may("second_chain.centre_distance", "length", "between its two sprocket axes", "40 mm", "5 m", example="500 mm"),
    may("second_chain.slack", "ratio", "mid-span sag of its slack run over its length", "0.1 %", "20 %", ("3 %", "3 %", "3 %"), "usual sag: hardly weighs here"),
    choose("second_chain.link", "the link that closes it: riveted (or press-fit), or with a spring clip", ("rivet", "clip")),
    may("second_chain.joint_pressure", "stress", "pressure allowed between pin and bush at the jackshaft's speed", "1 MPa", "100 MPa", example="24 MPa"),
))  # fmt: skip

JACKSHAFT = Section("jackshaft", "the shaft between two chains; needs [second_chain] too", (
    may("jackshaft.diameter", "length", "its diameter", "5 mm", "120 mm", example="20 mm"),
    may("jackshaft.bearing_span", "length", "between its two bearings", "10 mm", "3 m", example="80 mm"),
    may("jackshaft.first_at", "length", "sprocket of the first chain, from the first bearing towards the second; negative outside the first", "-1 m", "4 m", example="-25 mm"),
    may("jackshaft.second_at", "length", "sprocket of the second chain, measured the same way", "-1 m", "4 m", example="105 mm"),
    may("jackshaft.angle", "angle", "between the ways the two chains pull it: 0 the same way, 180 against each other; all are tried when left out", "0 deg", "180 deg", example="150 deg"),
    may("jackshaft.yield_strength", "stress", "yield strength of the shaft", "100 MPa", "2000 MPa", ("220 MPa", "300 MPa", "400 MPa"), "from memory (mild steel bar, hot rolled to bright)"),
    may("jackshaft.ultimate_strength", "stress", "its ultimate strength", "150 MPa", "2500 MPa", example="500 MPa"),
    choose("jackshaft.notch", "its sharpest change of form", ("shoulder, sharp", "shoulder, rounded", "groove", "keyway", "plain")),
    Field(key="jackshaft.bearing", kind="bearing", meaning="designation of its bearings", example="6004"),
    may("jackshaft.static_rating", "force", "static rating of one bearing when its number is unknown", "100 N", "500 kN", example="5 kN"),
    may("jackshaft.dynamic_rating", "force", "dynamic rating of one bearing when its number is unknown", "100 N", "500 kN", example="9.4 kN"),
    Field(key="jackshaft.first_key", kind="key size", meaning="width x height x length of the key under the first chain's sprocket", example="6 x 6 x 20 mm"),
    Field(key="jackshaft.second_key", kind="key size", meaning="the same under the second chain's sprocket", example="6 x 6 x 20 mm"),
    may("jackshaft.key_yield", "stress", "yield strength of the softest of keys, shaft and hubs", "20 MPa", "1500 MPa", ("220 MPa", "300 MPa", "400 MPa"), "from memory (bright key steel and mild steel hubs)"),
))  # fmt: skip

DRIVEN = Section("driven", "the driven side; what is left out here is not checked", (
    *pin_keys("driven", "the driven sprocket"),
    may("driven.outer_diameter", "length", "outer diameter of the driven hub, where a pin goes through", "5 mm", "500 mm", example="45 mm"),
    *sprocket_joint("driven", "the driven sprocket"),
    Field(key="driven.key", kind="key size", meaning="width x height x length of the key in the driven hub", example="8 x 7 x 40 mm"),
    may("driven.key_yield", "stress", "yield strength of the softest of key (or pin), driven shaft and hub", "20 MPa", "1500 MPa", ("220 MPa", "300 MPa", "400 MPa"), "from memory (bright key steel and mild steel hubs)"),
    may("driven.shaft_diameter", "length", "diameter of the driven shaft, where it turns with the sprocket", "5 mm", "200 mm", example="25 mm"),
    may("driven.overhang", "length", "middle of the driven sprocket to the middle of the nearest bearing", "1 mm", "2 m", example="35 mm"),
    may("driven.bearing_span", "length", "between the two bearings of the driven shaft, for its bearings or a sprocket between them", "10 mm", "5 m", example="400 mm"),
    choose("driven.sprocket_at", "where the driven sprocket sits", ("outside the bearings", "between the bearings")),
    may("driven.shaft_yield", "stress", "yield strength of the driven shaft", "100 MPa", "2000 MPa", ("220 MPa", "300 MPa", "400 MPa"), "from memory (mild steel bar, hot rolled to bright)"),
    may("driven.shaft_ultimate", "stress", "ultimate strength of the driven shaft, for its fatigue", "150 MPa", "2500 MPa", example="450 MPa"),
    choose("driven.notch", "the sharpest change of form of the driven shaft near its sprocket and that bearing, for its fatigue", NOTCHES),
    choose("driven.axle", "does the driven shaft turn with the sprocket, or does the hub turn on a dead axle?", ("turning", "dead")),
    may("driven.weight", "force", "steady force on the driven shaft, square to it: load of a wheel (of two the heavier), pull of a drum's rope", "1 N", "500 kN", example="400 N"),
    may("driven.weight_overhang", "length", "where that force acts: to the middle of the nearest bearing, wherever the sprocket sits", "0 mm", "2 m", example="60 mm"),
    choose("driven.weight_at", "where that force acts", ("outside the bearings", "between the bearings")),
    Field(key="driven.bearing", kind="bearing", meaning="designation of the driven shaft's bearings, the lighter one where they differ", example="6205"),
    may("driven.static_rating", "force", "static rating of the driven shaft's bearings when their number is unknown", "100 N", "500 kN", example="7.8 kN"),
    may("driven.dynamic_rating", "force", "dynamic rating of the driven shaft's bearings when their number is unknown", "100 N", "500 kN", example="14 kN"),
    may("driven.freewheel_torque", "torque", "torque the freewheel, ratchet or one-way clutch holds by its maker's list", "0.1 N*m", "20000 N*m", example="160 N*m"),
))  # fmt: skip

FIXINGS = Section("fixings", "what holds the mount to the frame", (
    need("fixings.bolts", "bolts", "number and size of the frame bolts", "", "", "4 x M8"),
    Field(key="fixings.bolt_class", kind="bolt class", meaning="property class"),
    need("fixings.span_across", "length", "outermost bolt centres, across the mount (0 for one column)", "0 mm", "2 m", "90 mm"),
    may("fixings.span_along", "length", "outermost bolt centres, away from the motor (0 for one row)", "0 mm", "2 m", ("0 mm", "0 mm", "0 mm"), "one row assumed: the softest"),
    may("fixings.edge", "length", "bolt centres to the end of the bearing surface", "2 mm", "500 mm"),
    may("fixings.tightening_torque", "torque", "torque each frame bolt was tightened to", "0.1 N*m", "2000 N*m"),
    may("fixings.preload", "force", "clamping force of each bolt when it is known", "10 N", "1000 kN"),
    choose("fixings.surface", "what the mount is clamped against", ("dry steel", "painted", "oiled", "aluminium on steel", "plastic on steel", "wood on steel")),
    may("fixings.friction", "ratio", "friction of the joint", "0.01", "1"),
    choose("fixings.washer", "washers under the frame bolts", ("standard", "wide", "none")),
    choose("fixings.holes", "holes for the frame bolts", ("round", "slotted")),
    may("fixings.slot_length", "length", "length of the slots, end to end; twice the hole when left out", "2 mm", "300 mm", example="25 mm"),
    choose("fixings.slots_run", "way the slots run: along the row of bolts, or square to it", ("square", "along")),
    Field(key="fixings.jack_screw", kind="thread", meaning="thread of a jack screw that bears on the mount along the slots, against the chain's pull", example="M8"),
    Field(key="fixings.jack_screw_class", kind="bolt class", meaning="property class of the jack screw"),
    may("fixings.jack_screw_tip", "length", "diameter of the jack screw's tip where it bears on the mount", "1 mm", "40 mm", example="5.5 mm"),
    may("fixings.jack_screw_off", "length", "how far the jack screw's line passes from the middle of the frame bolts", "0 mm", "1 m", ("0 mm", "3 mm", "10 mm"), "common practice, no source (set about on the middle)"),
    may("fixings.joint_stiffness", "stiffness", "stiffness of one bolted point, normal to the joint", "1 kN/mm", "10000 kN/mm", ("100 kN/mm", "400 kN/mm", "1600 kN/mm")),
))  # fmt: skip

MEMBERS = ("square tube", "rectangular tube", "round tube", "angle", "channel", "flat bar", "rigid")

FRAME = Section("frame", "the frame member the mount is fixed to", (
    choose("frame.member", "its form", MEMBERS),
    may("frame.size", "length", "outer width of the face the mount lies on, or diameter; of a channel its height", "5 mm", "500 mm", ("30 mm", "40 mm", "50 mm")),
    may("frame.face_width", "length", "width of what the mount bears on, its bolts in the middle, where that is not the member's own face: a pad welded on, a second member beside it", "5 mm", "2 m", example="90 mm"),
    may("frame.depth", "length", "rectangular tube: depth behind that face; channel: width of its flanges; angle: its other leg", "5 mm", "500 mm", example="60 mm"),
    may("frame.wall", "length", "wall thickness; of a flat bar its thickness", "0.5 mm", "50 mm", ("1.5 mm", "2 mm", "3 mm")),
    may("frame.span", "length", "between the places where the member is held", "20 mm", "5 m", ("300 mm", "450 mm", "600 mm")),
    may("frame.place", "ratio", "where along the span the mount sits, from its left end as seen from the sprocket with the frame below", "0.01", "0.99", ("0.5", "0.5", "0.5"), "middle of the span: softest in twist and sag"),
    choose("frame.ends", "its ends: held (welded into corners) or hinged (one bolt each); twist is held either way", ("held", "hinged")),
    choose("frame.open_side", "channel: its open side away from the mount, or to the side (mount on a flange)", ("away", "side")),
    may("frame.elastic_modulus", "stress", "elastic modulus of the member", "1 GPa", "400 GPa", ("205 GPa", "205 GPa", "205 GPa"), "from memory (steel)"),
    may("frame.yield_strength", "stress", "yield strength of the member", "20 MPa", "1500 MPa", example="235 MPa"),
))  # fmt: skip

MACHINES = ("two wheels in line", "three wheels or more", "stands still", "holds a load")

USE = Section("use", "what the drive pushes against", (
    choose("use.machine", "what the drive moves, for what follows when a part gives: a vehicle on two wheels in line or on more, a machine that stands still, or one that holds a load up", MACHINES),
    may("use.wheel_load", "force", "weight on the driven wheels at rest", "1 N", "500 kN"),
    may("use.lifted_load", "force", "weight on the driven wheels when the front lifts", "1 N", "500 kN"),
    choose("use.driven", "driven axle, for the weight that shifts when it pulls", ("rear", "front", "all")),
    may("use.mass", "mass", "of the vehicle with driver and load", "1 kg", "50000 kg"),
    may("use.wheelbase", "length", "between the axles", "50 mm", "10 m"),
    may("use.front_to_centre", "length", "front axle back to the centre of mass", "0 mm", "10 m"),
    may("use.centre_height", "length", "height of the centre of mass", "10 mm", "5 m"),
    may("use.wheel_diameter", "length", "driven wheel", "20 mm", "4 m"),
    may("use.grip_low", "ratio", "tyre friction on the worst ground", "0.02", "2", ("0.2", "0.35", "0.5"), "from memory (wet grass, loose soil)"),
    may("use.grip_high", "ratio", "tyre friction on the best ground", "0.02", "2.5", ("0.6", "0.75", "0.9"), "from memory (dry asphalt)"),
    may("use.gear_after_chain", "number", "further reduction between driven sprocket and wheel", "0.05", "500"),
    may("use.efficiency", "ratio", "chain and everything after it", "10 %", "100 %", ("85 %", "93 %", "97 %")),
))  # fmt: skip

DUTY = Section("duty", "how the torque comes on", (
    may("duty.reverse", "ratio", "reversed or regenerative torque over drive torque", "0 %", "150 %", ("0 %", "0 %", "0 %"), "none assumed"),
    may("duty.ramp", "time", "time the controller takes from nothing to full torque", "0 s", "60 s"),
    may("duty.starting_factor", "number", "peak chain pull over steady pull at a start, when you know it", "1", "10"),
    may("duty.rotor_inertia", "inertia", "moment of inertia of the rotor", "1e-8 kg*m2", "10 kg*m2"),
    may("duty.bump", "acceleration", "knock that the frame sees", "0 g", "50 g", ("2 g", "3 g", "5 g")),
    may("duty.hours", "time", "hours under load in a season", "0.1 h", "100000 h", ("20 h", "100 h", "300 h")),
    may("duty.starts", "number", "starts with the full pull that the welds should stand", "1", "1e12", ("1e4", "1e5", "1e6")),
    may("duty.bearing_hours", "time", "hours of duty that the bearings should last", "1 h", "100000 h", ("500 h", "1000 h", "4000 h"), "from memory (intermittent hand-used machines, 500 to 4000 h)"),
    may("duty.chain_factor", "number", "load on the bearing with the jerk of the chain, over the steady load", "1", "4", ("1.2", "1.3", "1.5"), "bearing makers' catalogues, single chain 1.2 to 1.5 (from memory)"),
    Field(key="duty.spectrum", kind="spectrum", meaning="for the life of bearings: rows of a share of the current, of the hours of duty and, if you know it, of motor.speed; the rest of the hours it stands still"),
))  # fmt: skip

MOUNT = Section("mount", "the mount", (
    Field(key="mount.form", kind="form", meaning="form of the mount", required=True, example="plate"),
    Field(key="mount.material", kind="material", meaning="what it is made of", required=True, example="6061"),
    need("mount.thickness", "length", "thickness of the plate", "0.5 mm", "150 mm", "8 mm"),
    may("mount.temperature", "temperature", "temperature of the mount at work", "-40 degC", "300 degC"),
    choose("mount.grade", "is the grade known and the thickness measured, or is it scrap?", ("known", "scrap")),
    choose("mount.weight_acts", "where down is, seen on the mount", ("towards", "away", "across")),
    choose("mount.route", "how its give is worked out: the plate model, or beams by hand", ("plates", "sections")),
    may("mount.softness", "ratio", "true give of mount and joint over that of the model, when a pull has shown it", "0.05", "20"),
    may("mount.local_stress", "ratio", "true stress round the bolts over that of the plate model", "0.5", "5", example="1.1"),
    may("mount.prying", "ratio", "true tension of the frame bolts over that of the plate model", "0.5", "5", example="1.1"),
    may("mount.warping_held", "ratio", "how far the ends of the twisting length keep their flatness: 0 free, 1 held", "0", "1"),
    may("mount.elastic_modulus", "stress", "elastic modulus when you know it better than the card", "10 MPa", "400 GPa"),
    may("mount.yield_strength", "stress", "yield strength when you know it better than the card", "2 MPa", "2000 MPa"),
    may("mount.fatigue_strength", "stress", "fatigue strength in full reversal (R = -1) when you know it better than the card", "0.5 MPa", "1000 MPa"),
))  # fmt: skip

SECOND = Section("second", "a second material in the mount, where the form has parts of their own", (
    Field(key="second.material", kind="material", meaning="what the other part is made of; the mount's own material when left out", example="s235"),
    may("second.thickness", "length", "thickness of the other part; the mount's own when left out", "0.5 mm", "150 mm"),
    may("second.elastic_modulus", "stress", "its elastic modulus when you know it better than the card", "10 MPa", "400 GPa"),
    may("second.yield_strength", "stress", "its yield strength when you know it better than the card", "2 MPa", "2000 MPa"),
    may("second.fatigue_strength", "stress", "its fatigue strength in full reversal when you know it better than the card", "0.5 MPa", "1000 MPa"),
))  # fmt: skip

PULL_TEST = Section("pull_test", "a pull by hand on the sprocket, chain off, play taken up first (mountlimit pull-test)", (
    may("pull_test.force", "force", "pull on the scale, less the light pull at which the marks were set to nothing", "5 N", "5 kN", example="200 N"),
    may("pull_test.movement", "length", "movement at mark A: the shaft at the sprocket, along the pull", "0.01 mm", "200 mm", example="1.4 mm"),
    may("pull_test.tip_movement", "length", "movement at mark B: the end of the stick, along the pull", "0.01 mm", "500 mm", example="3.0 mm"),
    may("pull_test.stick", "length", "length of the stick, from the middle of the sprocket to mark B", "50 mm", "3 m", example="500 mm"),
    choose("pull_test.stick_on", "what the stick lies on: the motor's case (when left out), or the shaft with its own bending", ("motor", "shaft")),
    Field(key="pull_test.direction", kind="direction", meaning="where it was pulled, in the words of chain.pull; the first of them when left out"),
    may("pull_test.reading_error", "length", "how far a reading may be off, either way", "0.001 mm", "10 mm", ("0.25 mm", "0.25 mm", "0.25 mm"), "common practice, no source (steel rule read against a fine line)"),
    may("pull_test.force_error", "ratio", "how far the scale may be off, either way", "0.1 %", "40 %", ("5 %", "5 %", "5 %"), "common practice, no source (hanging scale)"),
    may("pull_test.model_error", "ratio", "true ratio of lean to movement over that of the model", "0.3", "3", ("0.75", "1", "1.25"), "95 in 100 of 100 hidden mounts on frames of their own, against finer plate models (computed, tests/pull_test)"),
))  # fmt: skip

TORQUE_TEST = Section("torque_test", "the motor's torque held on a lever, rotor locked (mountlimit torque-test)", (
    may("torque_test.current", "current", "current that flowed, as the controller counts it", "0.5 A", "2000 A", example="30 A"),
    may("torque_test.force", "force", "what the scale read, square to the lever", "0.5 N", "10 kN", example="14 N"),
    may("torque_test.lever", "length", "from the shaft axis to the scale", "20 mm", "3 m", example="250 mm"),
    may("torque_test.current_error", "ratio", "how far the current may be off, either way", "0.1 %", "40 %", ("5 %", "5 %", "5 %"), "common practice, no source (controller's own display)"),
    may("torque_test.force_error", "ratio", "how far the scale may be off, either way; the torque differs from place to place of the rotor too", "0.1 %", "40 %", ("5 %", "5 %", "5 %"), "common practice, no source (hanging scale)"),
    may("torque_test.lever_error", "length", "how far the lever's length may be off, either way", "0.1 mm", "50 mm", ("3 mm", "3 mm", "3 mm")),
))  # fmt: skip

POLICY = Section("policy", "your own thresholds and design factors", (
    may("policy.peak_skew", "angle", "angle between chain and sprocket allowed at peak pull", "0.01 deg", "10 deg"),
    may("policy.peak_offset", "ratio", "sprocket offset allowed at peak pull, over the centre distance", "0.01 %", "5 %", ("0.2 %", "0.2 %", "0.2 %"), "chain makers' alignment rules, 2 mm per metre (from memory)"),
    may("policy.running_skew", "angle", "angle allowed in continuous running", "0.01 deg", "5 deg"),
    may("policy.running_offset", "ratio", "offset allowed in continuous running, over the centre distance", "0.01 %", "5 %"),
    may("policy.throw_level", "number", "which edge of the throw criterion: 0 earliest, 1 likely, 2 latest", "0", "2", ("0", "1", "2"), "proposal, no published source (the band of the throw criterion)"),
    Field(key="policy.jam", kind="flag", meaning="count a dead stop of the driven side, from motor.speed, in the safe current"),
))  # fmt: skip

SECTIONS = (
    TOP,
    MOTOR,
    CURRENT,
    CHAIN,
    SHAFT,
    OUTBOARD,
    HUB,
    SECOND_CHAIN,
    JACKSHAFT,
    DRIVEN,
    MOUNT,
    SECOND,
    FIXINGS,
    FRAME,
    USE,
    DUTY,
    PULL_TEST,
    TORQUE_TEST,
    POLICY,
)
