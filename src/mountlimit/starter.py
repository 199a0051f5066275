"""Writes a commented drive file for a mount form, made from the field table itself."""

from __future__ import annotations

import textwrap
from pathlib import Path

from .drivefile import fields_for
from .errors import MountlimitError, UnknownCard
from .fields import SECTIONS, Field
from .mounts import FORMS
from .writing import write_whole

HEAD = """\
# Drive file for mountlimit: {title}.
# All numbers here are invented; put in your own. Quantities stand in quotes with their unit:
# "6 mm", "1/4 in", "1-3/8 in", "0.12 N*m/A", "20 lbf*ft". Lines that begin with # are optional:
# leave them out and a usual range is assumed and listed; take the # away to set them.
# Check it with:  mountlimit check {file}
"""
WORDS = {
    "bolt class": '"8.8"',
    "key size": '"4 x 4 x 16 mm"',
    "set screws": '"1 x M6"',
    "bearing": '"6201"',
    "points": '[["40 A", "4.6 N*m"], ["80 A", "9.5 N*m"]]',
    "direction": '"across"',
    "shaft places": '[["shoulder, sharp", "18 mm", "10 mm"]]',
    "trials": '[{ current = "20 A", seen = "fine" }]',
    "spectrum": '[["100 %", "10 %"], ["50 %", "40 %"], ["20 %", "30 %", "50 %"]]',
}
# Keys that stand ready in a starter file besides the required ones: what ten minutes with a
# caliper and a straightedge give.
SHOWN = {
    "current.wanted": '"60 A"', "current.kind": '"motor"', "current.continuous": '"20 A"',
    "motor.torque_constant": '"0.12 N*m/A"', "motor.bolt_class": '"8.8"',
    "chain.pull": '"across"', "chain.skew": '"0.05 deg"', "chain.offset": '"0.2 mm"',
    "hub.key": '"4 x 4 x 16 mm"', "shaft.bearing": '"6201"', "fixings.bolt_class": '"8.8"',
    "fixings.span_along": '"40 mm"', "fixings.tightening_torque": '"20 N*m"',
    "fixings.surface": '"dry steel"', "duty.ramp": '"200 ms"',
}  # fmt: skip
# Values of the optional keys that have no default of their own.
EXAMPLES = {
    "motor.rated_torque": "9.6 N*m", "motor.rated_current": "80 A", "motor.centre_of_mass": "60 mm",
    "motor.thread_depth": "8 mm", "motor.bore": "40 mm", "current.motor_limit": "120 A",
    "chain.tooth_relief": "0.13", "shaft.bearing_span": "110 mm", "shaft.static_rating": "3050 N",
    "fixings.edge": "15 mm", "fixings.preload": "12 kN",
    "fixings.friction": "0.15", "motor.tightening_torque": "9 N*m", "motor.preload": "6 kN",
    "motor.face_friction": "0.15", "use.wheel_load": "700 N", "use.lifted_load": "1200 N",
    "use.wheel_diameter": "400 mm", "use.mass": "120 kg", "use.wheelbase": "1.2 m",
    "use.front_to_centre": "0.7 m", "use.centre_height": "0.6 m", "use.gear_after_chain": "1",
    "duty.starting_factor": "2", "duty.rotor_inertia": "10 kg*cm2", "mount.temperature": "40 degC",
    "mount.warping_held": "1", "mount.softness": "1.2", "mount.elastic_modulus": "70 GPa", "mount.yield_strength": "240 MPa",
    "mount.foot_thickness": "8 mm", "policy.peak_skew": "0.67 deg", "policy.running_skew": "0.1 deg",
    "policy.running_offset": "0.1 %",
}  # fmt: skip
REQUIRED_VALUES = {
    "current.set": "25 A",
    "motor.bolt_circle": "79 mm",
    "mount.free_length": "85 mm",
}


def text(form: str, file: str) -> str:
    """Give the text of a starter file for a mount form."""
    parts = [HEAD.format(title=FORMS[form].TITLE, file=file)]
    known = fields_for(form)
    for section in SECTIONS:
        fields = [
            f
            for k, f in known.items()
            if k.rpartition(".")[0] == section.name and "factor_" not in k
        ]
        if not fields:
            continue
        if section.name:
            parts.append(f"\n[{section.name}]  # {section.meaning}")
        own = getattr(FORMS[form], "STARTER", {})
        fields.sort(key=lambda f: not (f.required or f.key in SHOWN or f.key in own))
        parts += [_lines(f, form) for f in fields]
    return "\n".join(parts) + "\n"


def _lines(field: Field, form: str) -> str:
    key = field.key.rpartition(".")[2]
    words = textwrap.fill(field.meaning, 96, initial_indent="# ", subsequent_indent="#   ")
    if field.choices:
        choices = (f'"{c}"' if "," in c else c for c in field.choices)
        words += f"\n#   one of: {', '.join(choices)}"
    if field.required or field.key in SHOWN or field.key in getattr(FORMS[form], "STARTER", {}):
        return f"{words}\n{key} = {_value(field, form)}"
    return f"{words}\n# {key} = {_value(field, form)}"


def _value(field: Field, form: str) -> str:
    if field.key == "mount.form":
        return f'"{form}"'
    own = getattr(FORMS[form], "STARTER", {})
    if field.key in own:
        return _quoted(own[field.key])
    if field.key in SHOWN:
        return SHOWN[field.key]
    if field.kind == "flag":
        return "true"
    if field.kind in WORDS and not field.example:
        return WORDS[field.kind]
    if field.choices:
        return f'"{field.choices[0]}"'
    example = (
        REQUIRED_VALUES.get(field.key)
        or EXAMPLES.get(field.key)
        or field.example
        or (field.default.likely if field.default else field.least)
    )
    return example if field.kind in ("integer", "number") else f'"{example}"'


def _quoted(text: str | tuple[str, ...]) -> str:
    """Write one text, or a list of them."""
    return f'"{text}"' if isinstance(text, str) else f"[{', '.join(_quoted(t) for t in text)}]"


def write(form: str, output: str | None, force: bool) -> str:
    """Write the starter file and give its name.

    Raises
    ------
    MountlimitError
        for an unknown form, with the nearest and a list of all; or when the file is there already.
    """
    import difflib

    if form not in FORMS:
        near = difflib.get_close_matches(form, FORMS, 1, 0.6)
        raise MountlimitError(
            f"{UnknownCard('mount form', form, near)} There are: {', '.join(FORMS)}"
            if near
            else f"no mount form called '{form}'; there are: {', '.join(FORMS)}"
        )
    path = Path(output or f"{form}.toml")
    if path.exists() and not force:
        raise MountlimitError(
            f"{path} is there already; choose another name with -o, or add --force"
        )
    write_whole(path, text(form, str(path)))
    return str(path)
