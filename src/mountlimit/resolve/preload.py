"""Clamping force of bolts as it will really be there, and the torque that suits them."""

from __future__ import annotations

import math
from dataclasses import dataclass

from .. import cards
from ..formulas import threads, tightening
from ..held import BoltSet
from ..model import Number
from ..mounting import Substance
from ..picking import Picker
from ..worked import Value

COMMON = "common practice, no source"
CLAMP_SHARE = (0.3, 0.5, 0.9)  # of three quarters of proof load, hand-tightened
PRESSURE_SHARE = (0.15, 0.33, 1.0)  # of the pressure a soft material bears for a short time
GUIDELINE = "VDI 2230 part 1 (from memory)"
YIELD_SHARE = Value(0.9, "share of yield", "assumed", GUIDELINE)
THREAD_FRICTION = Value(
    0.12, "thread friction", "assumed", f"{GUIDELINE}: friction class B, 0.08 to 0.16"
)

SLEEVE_YIELD = (235e6, 300e6, 400e6)  # Pa, welded to cold-drawn steel tube (from memory)


@dataclass(frozen=True, slots=True)
class Kept:
    """Clamping forces that stay for good on what lies under a bolt's head, N, and why no more."""

    forces: tuple[float, float, float]
    why: str


def greatest(bolts: BoltSet) -> Number:
    """Give the clamping force at which tightening uses 90 % of the bolt's yield strength."""
    thread = bolts.thread
    return tightening.assembly_preload(
        bolts.grade.yield_strength, YIELD_SHARE, threads.stress_diameter(thread.stress_area),
        thread.pitch_diameter, thread.pitch, THREAD_FRICTION,
    )  # fmt: skip


def pressed(material: Substance, washer: float, hole: float) -> Kept | None:
    """Give the clamping forces a soft material keeps for good under a washer; None for metals."""
    limit = material.card.washer_pressure_limit
    if limit is None:
        return None
    area = math.pi / 4 * (washer**2 - hole**2)
    low, likely, high = (share * float(limit) * area for share in PRESSURE_SHARE)
    family = material.card.family
    why = f"the pressure the {family} can bear under the washer: {limit.source}"
    return Kept((low, likely, high), why)


def sleeved(outer: float, hole: float) -> Kept:
    """Give the clamping forces a steel sleeve bears without yielding."""
    area = math.pi / 4 * (outer**2 - hole**2)
    low, likely, high = (stress * area for stress in SLEEVE_YIELD)
    return Kept((low, likely, high), "the wall of the steel sleeve, 235 to 400 MPa (from memory)")


def assembly_torque(bolts: BoltSet, kept: Kept | None, hole: Value) -> Number:
    """Give the torque to tighten to: 90 % of yield, or what lies under the head keeps for good."""
    thread = bolts.thread
    force = greatest(bolts)
    if kept is not None and kept.forces[1] < force:
        force = Value(kept.forces[1], "washer pressure", "derived", "what the mount bears for good")
    ring = tightening.mean_head_diameter(thread.head_diameter, hole)
    return tightening.tightening_torque(
        force, thread.pitch, thread.pitch_diameter, THREAD_FRICTION, ring, THREAD_FRICTION
    )


def preload(picker: Picker, keys: str, bolts: BoltSet, kept: Kept | None = None) -> Value:
    """Give each bolt's clamping force: given, or from its torque, or the usual share of proof.

    ``keys`` is what its keys begin with, such as "fixings."; without ``kept`` the bolts clamp metal.
    """
    if f"{keys}preload" in picker.given:
        return picker.number(f"{keys}preload")
    top = float(greatest(bolts))
    low, mid, high, source = _tightened(picker, keys, bolts, top)
    if high > top:
        source += f"; not over 90 % of yield, {GUIDELINE}"
        low, mid, high = (min(v, top) for v in (low, mid, high))
    if kept is not None:
        low, mid, high = (min(v, m) for v, m in zip((low, mid, high), kept.forces, strict=True))
        source += f"; capped by {kept.why}"
    return picker.between(f"{keys}preload", low, mid, high, source)


def _tightened(
    picker: Picker, keys: str, bolts: BoltSet, top: float
) -> tuple[float, float, float, str]:
    """Give the force by the given torque, else by hand, low to high, and its source."""
    thread, grade = bolts.thread, bolts.grade
    key = f"{keys}tightening_torque"
    if key not in picker.given:
        full = 0.75 * threads.proof_load(grade.proof_stress, thread.stress_area)
        low, mid, high = (float(share * full) for share in CLAMP_SHARE)
        words = f"{COMMON} (hand-tightened: 30 to 90 % of three quarters of proof load)"
        return low, mid, high, words
    torque = picker.number(key)
    k = cards.torque_coefficient("unknown")
    wrench = cards.tightening_scatter("torque wrench")
    mid = tightening.preload_from_torque(torque, k.likely, thread.diameter)
    low = tightening.lowest_preload(
        tightening.preload_from_torque(torque, k.high, thread.diameter), wrench.high
    )
    high = tightening.preload_from_torque(torque, k.low, thread.diameter)
    if mid > top:
        picker.warnings.append(
            f"{key} would stretch {thread.designation} bolts of class {grade.designation} past 90 % "
            "of yield: they stay long and lose their clamp. Tighten less or take a better class."
        )
    words = f"T / (K d), K {float(k.low):g} to {float(k.high):g}: {k.source}"
    return float(low), float(mid), float(high), words
