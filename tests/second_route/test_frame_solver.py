"""Frame member, motor shaft and mount of beams against a general frame solver (PyNiteFEA)."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from random import Random

import numpy as np
import pytest

pytest.importorskip("Pynite", reason="needs the extra 'second'")

import draw
from frame_kit import ALL, Bars
from second_kit import off, told

from conftest import toml_text
from mountlimit import evaluate, frame_member, loads, shaft_line, structure
from mountlimit.drivefile import parse
from mountlimit.errors import InputError
from mountlimit.model import Frame
from mountlimit.mounting import AXES, BoltPlane
from mountlimit.resolve import resolve
from mountlimit.worked import Value

E_MODULUS, NU = 205e9, 0.3
G_MODULUS = E_MODULUS / 2 / (1 + NU)
PLANES = {
    n: BoltPlane(thickness=0.008, towards_motor=1.0, centre=(0.0, 0.0, 0.0), first="x", second=s, normal=n,
                 bolts=((0.0, 0.0),), half_first=0.05, edge_second=0.02)
    for n, s in (("z", "y"), ("y", "z"))
}  # fmt: skip
TWO_WAYS = ("angle", "channel")  # the softer way round is chosen load by load: no spring law
MEMBERS = ("square tube", "rectangular tube", "round tube", "flat bar", "angle")


def drawn_member(chance: Random, kind: str) -> Frame:
    size, wall = chance.uniform(0.025, 0.08), chance.uniform(0.0015, 0.005)
    depth = chance.uniform(0.025, 0.08) if kind in ("rectangular tube", "angle") else None
    return Frame(
        member=kind, size=size, depth=depth, wall=wall, span=chance.uniform(0.2, 1.5),
        place=chance.uniform(0.15, 0.85), ends=chance.choice(("held", "hinged")), elastic_modulus=E_MODULUS,
    )  # fmt: skip


def by_frame_solver(frame: Frame, shape, load: np.ndarray) -> np.ndarray:
    """Give the six movements at the bolts: a bar in two halves, loads and movement carried over rigidly."""
    bars = Bars()
    a, span = frame.span * frame.place, frame.span
    arm = np.array([0.0, *(float(v) for v in shape.from_centroid)])
    tensor = np.array([[float(shape.bends_y), float(shape.product or 0.0)],
                       [float(shape.product or 0.0), float(shape.bends_z)]])  # fmt: skip
    (low, high), turned = np.linalg.eigh(
        tensor
    )  # along which the section bends with low, with high
    # local y is the way that bends with the larger moment: local z axis then carries ``high``
    rotation = np.degrees(np.arctan2(turned[1, 1], turned[0, 1]))
    for name, x in (("left", 0.0), ("load", a), ("right", span)):
        bars.node(name, (x, 0.0, 0.0))
    for one, two in (("left", "load"), ("load", "right")):
        bars.bar(one, two, E_MODULUS, G_MODULUS, low, high, float(shape.torsion_constant), rotation)
    for end in ("left", "right"):
        bars.hold(end, *(ALL if frame.ends == "held" else ("DX", "DY", "DZ", "RX")))
    bars.load("load", load[:3], load[3:] + np.cross(arm, load[:3]))
    bars.solve()
    move, turn = np.split(bars.moved("load"), 2)
    return np.r_[move + np.cross(turn, arm), turn]


@pytest.mark.parametrize("kind", MEMBERS)
@pytest.mark.parametrize("normal", ["z", "y"])
def test_frame_member(kind, normal):
    """Bending both ways, twist, mount beside the axis, anywhere on the span, ends held and hinged.

    Movement along the member comes from its turn alone; the program leaves it out.  Open sections (warping)
    are compared under loads through the shear centre.
    """
    chance = Random(f"{kind} {normal}")
    for _ in range(6):
        frame, plane = drawn_member(chance, kind), PLANES[normal]
        load = np.array([chance.uniform(-1, 1) * s for s in (2e3, 2e3, 2e3, 50, 50, 50)])
        answers = []
        for shape in frame_member.shapes(frame, plane):
            own = load.copy()
            if kind in ("flat bar", "angle"):
                sy, sz = (float(v) for v in shape.from_shear_centre)
                own[3] = -(sy * own[2] - sz * own[1])  # no torque about the shear centre
            if (
                kind == "angle"
            ):  # centroid and shear centre are two lines: bending alone is carried over
                sy, sz = (float(v) for v in shape.from_centroid)
                own[3] = -(sy * own[2] - sz * own[1])
            answers.append((shape, own))
        for shape, own in answers:
            move, turn = frame_member._moved(frame, shape, tuple(own[:3]), tuple(own[3:]))
            ours = np.array([float(v) for v in (*move, *turn)])
            theirs = by_frame_solver(frame, shape, own)
            # of an angle the twist is left over: it turns about its shear centre
            keep = [4, 5] if kind == "angle" else [1, 2, 3, 4, 5]
            for part in ([k for k in keep if k < 3], [k for k in keep if k >= 3]):
                if part:
                    told(f"frame member, {kind}", off(ours[part], theirs[part]))
                    assert off(ours[part], theirs[part]) < 1e-5, (frame, own, ours, theirs)


def drawn_drive(number: int, **changes):
    """Give a drawn drive by beams with some keys set, or None where it is refused."""
    keys = draw.drive(number, draw.BEAMS, "sections")
    keys |= {k.replace("__", "."): v for k, v in changes.items()}
    keys = {k: v for k, v in keys.items() if v is not None}
    try:
        return resolve(parse(toml_text(draw.nested(keys)).encode(), f"drawn {number}"))
    except InputError:
        return None


def drives(first: int, count: int, **changes):
    """Give so many drawn drives that hold together."""
    found = []
    while len(found) < count:
        drive = drawn_drive(first, **changes)
        first += 1
        if drive is not None:
            found.append(drive)
    return found


def shaft_by_frame_solver(drive, load: float, outboard: float) -> Bars:
    """Give the motor shaft under a pull along y: rear and front bearing, sprocket, outboard bearing."""
    s, bars = drive.shaft, Bars()
    places = {"front": 0.0, "rear": -float(s.bearing_span), "sprocket": float(s.face_overhang + s.face_to_bearing)}  # fmt: skip
    if s.outboard is not None:
        places["outboard"] = float(s.outboard.place + s.face_to_bearing)
    for name, z in places.items():
        bars.node(name, (z, 0.0, 0.0))
    row = sorted(places, key=lambda n: places[n])
    second = np.pi * float(s.thinnest) ** 4 / 64
    for one, two in pairwise(row):
        bars.bar(one, two, float(s.elastic_modulus), 8e10, second, second, 2 * second)
    bars.hold("rear", "DX", "DY", "DZ", "RX")
    bars.hold("front", "DY", "DZ")
    bars.load("sprocket", (0.0, load, 0.0))
    if s.outboard is not None:
        bars.load("outboard", (0.0, -outboard, 0.0))
    bars.solve()
    return bars


@pytest.mark.parametrize("third", [False, True])
def test_motor_shaft_on_its_bearings(third):
    """Sag and slope at the sprocket, sag at a third bearing, both reactions, moments at the front bearing.

    With a third bearing its force must be what its stiffness makes of what shaft and mount move there
    past the gap: the movement of the shaft by the frame solver, that of the mount by the beams.
    """
    told_of = {} if third else {"outboard__at": None, "outboard__bearing": None, "outboard__gap": None,
               "outboard__stiffness": None, "outboard__held_by": None, "outboard__static_rating": None, "outboard__dynamic_rating": None}  # fmt: skip
    if third:
        told_of = {"outboard__at": "150 mm", "outboard__held_by": "frame", "outboard__gap": "0.02 mm",
                   "outboard__stiffness": "8 kN/mm", "outboard__bearing": "6002", "shaft__face_overhang": "70 mm"}  # fmt: skip
    for drive in drives(40_000, 12, **told_of):
        if third and drive.shaft.outboard is None:
            continue
        current = float(drive.current.set)
        pick = next(i for i, c in enumerate(loads.case_list(drive)) if c[1] == "pull")
        case = evaluate.case_at(drive, current, pick)
        load = case.loads
        size, back = float(load.shaft_load), float(np.max(load.outboard))
        bars = shaft_by_frame_solver(drive, size, back)
        at = shaft_line.at_sprocket(drive, load)
        sag, slope = np.hypot(float(at.move[0]), float(at.move[1])), np.hypot(float(at.turn[0]), float(at.turn[1]))  # fmt: skip
        moved = bars.moved("sprocket")
        pairs = [("sag", sag, abs(moved[1])), ("slope", slope, abs(moved[5]))]
        pairs += [("front bearing", float(shaft_line.front_reaction(drive, load)), abs(bars.pushed("front")[1]))]  # fmt: skip
        pairs += [("rear bearing", float(shaft_line.rear_reaction(drive, load)), abs(bars.pushed("rear")[1]))]  # fmt: skip
        front = abs(bars.pushed("rear")[1]) * float(drive.shaft.bearing_span)
        pairs += [("moment", abs(float(shaft_line.moments(drive, load)[0][1])), front)]
        if third:
            pairs += [("sag at the third bearing", float(shaft_line.sag_at_outboard(drive, load)), bars.moved("outboard")[1])]  # fmt: skip
        scale = {"sag": 1e-9, "slope": 1e-7, "sag at the third bearing": 1e-9}
        for name, ours, theirs in pairs:
            apart = abs(ours - theirs) / max(abs(theirs), scale.get(name, 1e-3 * size))
            told(f"motor shaft, {'three' if third else 'two'} bearings", apart)
            assert apart < 1e-6, (name, ours, theirs)
        if third and drive.frame.member not in TWO_WAYS:
            _third_bearing(drive, load, back, bars)


def _third_bearing(drive, load, back: float, bars: Bars) -> None:
    """Spring law of the third bearing: force is stiffness times what is past the gap, or nothing."""
    third, angle = drive.shaft.outboard, float(load.pull_angle)
    arm = float(third.place - drive.shaft.face_overhang)
    only_pull = replace(
        load, weight=(0.0, 0.0, 0.0), stator_torque=Value(0.0, "none", "derived", "")
    )
    mount = structure.displacements_of(drive, only_pull)
    there = sum(
        float(p.move[0] + arm * p.turn[1]) * np.cos(angle) + float(p.move[1] - arm * p.turn[0]) * np.sin(angle)
        for p in mount
    )  # fmt: skip
    past = bars.moved("outboard")[1] + there - float(third.gap)
    wanted = max(float(third.stiffness) * past, 0.0)
    apart = abs(back - wanted) / max(wanted, 1e-3 * float(load.shaft_load))
    told("third bearing's force", apart)
    assert apart < 1e-6, (back, wanted)


def _chain_of_bars(drive, force, moment) -> np.ndarray:
    """Give the six movements at the sprocket of the mount's beams, loaded there; links are carried rigidly.

    Each beam is held at its start, loaded by what the frame solver is told at its end, and its end's
    movement goes to the sprocket: the sum over the beams.
    """
    material, sprocket = (
        drive.mount.material,
        np.array([0.0, 0.0, float(drive.shaft.face_overhang)]),
    )
    e, g = float(material.elastic_modulus), float(material.shear_modulus)
    total = np.zeros(6)
    for part in drive.mount.segments:
        start, end = (np.array([float(v) for v in p]) for p in (part.start, part.end))
        along = (end - start) / np.linalg.norm(end - start)
        axes = {name: np.eye(3)[AXES.index(getattr(part, name))] for name in ("across", "normal")}
        bars = (
            Bars()
        )  # in axes of its own: x along the beam, y its normal, z to make them right-handed
        turn = np.array([along, axes["normal"], np.cross(along, axes["normal"])])
        bars.node("start", (0.0, 0.0, 0.0))
        bars.node("end", (float(part.length), 0.0, 0.0))
        b, t = float(part.width), float(part.thickness)
        n = np.arange(1, 400, 2)
        j = (
            b
            * t**3
            / 3
            * (1 - 192 / np.pi**5 * t / b * np.sum(np.tanh(n * np.pi * b / 2 / t) / n**5))
        )
        bars.bar("start", "end", e, g, t * b**3 / 12, b * t**3 / 12, j)
        bars.hold("start", *ALL)
        bars.load("end", turn @ force, turn @ (moment + np.cross(sprocket - end, force)))
        bars.solve()
        move, rotation = (turn.T @ v for v in np.split(bars.moved("end"), 2))
        across = force - along * (along @ force)  # shear: a sixth more than even over the section
        move = move - along * (along @ move) + 1.2 * across * float(part.length) / (g * b * t)
        total += np.r_[move + np.cross(rotation, sprocket - end), rotation]
    return total


def test_mount_of_beams():
    """Every beam of the section route, ends free to warp: movement and turn at the sprocket."""
    for drive in drives(50_000, 25, mount__warping_held=0):
        chance = Random(drive.title)
        angle, pull, torque = (
            chance.uniform(-3, 3),
            chance.uniform(100, 3000),
            chance.uniform(-30, 30),
        )
        load = replace(structure.unit_load(Value(angle, "angle", "given", ""), torque), shaft_load=Value(pull, "pull", "given", ""))  # fmt: skip
        own = {s.name for s in drive.mount.segments}
        parts = [p for p in structure.model_parts(drive, load) if p.name in own]
        if not parts:
            continue
        ours = np.sum([[float(v) for v in (*p.move, *p.turn)] for p in parts], axis=0)
        theirs = _chain_of_bars(drive, pull * np.array([np.cos(angle), np.sin(angle), 0.0]), np.array([0.0, 0.0, torque]))  # fmt: skip
        for half in (slice(0, 3), slice(3, 6)):
            told(f"mount of beams, {drive.mount.form}", off(ours[half], theirs[half]))
            assert off(ours[half], theirs[half]) < 1e-6, (drive.mount.form, ours, theirs)
