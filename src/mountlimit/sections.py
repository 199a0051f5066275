"""Stress in the mount's named cuts: unit stresses of the net section, put together by size."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

import numpy as np

from . import respond
from .case import Case, Loads, SectionForces
from .formulas import equivalent, stress
from .meshed import NetSection, net_section
from .model import Number
from .mounting import Cut
from .worked import DataSheet, Symbol, Value, is_recording, note

_PARTS = (
    ("normal", "normal", "N", "N", "s_N", "1/m^2", "normal force"),
    ("moment_across", "moment_across", "M_w", "N*m", "s_w", "1/m^3", "bending of the thickness"),
    ("moment_normal", "moment_normal", "M_n", "N*m", "s_n", "1/m^3", "bending of the width"),
    ("bimoment", "bimoment", "B", "N*m^2", "s_B", "1/m^4", "held warping"),
)
_SHEARS = (
    ("torque", "torsion", "T", "N*m", "t_T", "1/m^3", "twist"),
    ("shear_across", "shear_across", "V_w", "N", "t_w", "1/m^2", "shear along the width"),
    ("shear_normal", "shear_normal", "V_n", "N", "t_n", "1/m^2", "shear through the thickness"),
)


Raised = Mapping[str, Number]  # load of ``SectionForces`` -> factor on the stress it makes
Criterion = Callable[[Number, Number, Number], Number]
NO_STRESS = Value(0.0, "no stress along the cut", "derived", "the surface is free there")


def as_they_are(_: Cut) -> Raised:
    """Raise no stress: nominal stress of the net section."""
    return {}


def yielding(normal: Number, shear: Number, ratio: Number) -> Number:
    """Give the equivalent stress: von Mises where tension and compression are alike.

    It is pressure-sensitive where the material is stronger in compression (``ratio`` times).
    """
    if ratio == 1:
        return equivalent.von_mises(normal, shear)
    return equivalent.pressure_sensitive(normal, shear, ratio)


def tearing(normal: Number, shear: Number, ratio: Number) -> Number:
    """Give the largest principal stress, by which a brittle material breaks, on the tension scale.

    The contributions are added in size, so tension and compression are alike in size; wood is the
    weaker in compression, and that side counts then.
    """
    largest = equivalent.principal_max(normal, NO_STRESS, shear)
    return equivalent.crushing_first(largest, ratio) if ratio < 1 else largest


def plane_yielding(x: Number, y: Number, xy: Number, ratio: Number) -> Number:
    """Give the equivalent of plane stress, as ``yielding`` for one normal and one shear stress."""
    if ratio == 1:
        return equivalent.plane_von_mises(x, y, xy)
    return equivalent.plane_pressure_sensitive(x, y, xy, ratio)


def plane_tearing(x: Number, y: Number, xy: Number, ratio: Number) -> Number:
    """Give the largest principal stress in size, as ``tearing`` for one normal and one shear stress."""
    largest = equivalent.principal_size(x, y, xy)
    return equivalent.crushing_first(largest, ratio) if ratio < 1 else largest


def always_yielding(_: Cut) -> Criterion:
    """Judge every cut by yielding."""
    return yielding


def stresses(
    case: Case, raised: Callable[[Cut], Raised] = as_they_are, loads: Loads | None = None,
    criterion: Callable[[Cut], Criterion] = always_yielding,
) -> list[tuple[Cut, Number]]:  # fmt: skip
    """Give (cut, largest stress in Pa by ``criterion``) for every cut of the mount.

    Contributions at a point are added in size: every sign of every load is possible.
    ``raised`` gives, for a cut, the factors on the stresses of some of its loads: notches, bends.
    ``loads`` takes the place of the loads of the case, for a part of them.
    """
    mount = case.drive.mount
    found = []
    sections = case.response.sections
    if loads is not None:
        sections = respond.sections(case.drive, loads)
    for cut, forces in zip(mount.cuts, sections, strict=True):
        net, factors = net_section(cut.width, cut.thickness, cut.holes), raised(cut)
        ratio = mount.substance(cut.second).compressive_over_tensile
        largest = _worked if is_recording() else _largest
        found.append((cut, largest(cut, net, forces, factors, ratio, criterion(cut))))
    return found


def _field(net: NetSection, forces: SectionForces, raised: Raised) -> tuple[Number, Number]:
    """Give normal and shear stress at every edge point; points come first."""
    shape = np.broadcast(*(np.asarray(getattr(forces, p[0])) for p in _PARTS + _SHEARS)).shape
    spread = (-1,) + (1,) * len(shape)
    normal = sum(
        float(raised.get(load, 1))
        * getattr(net, unit).reshape(spread)
        * np.abs(getattr(forces, load))
        for load, unit, *_ in _PARTS
    )
    parts = [
        sum(float(raised.get(load, 1)) * getattr(net, unit)[:, k].reshape(spread)
            * np.abs(getattr(forces, load)) for load, unit, *_ in _SHEARS)
        for k in (0, 1)
    ]  # fmt: skip
    return np.asarray(normal), np.hypot(*parts)


def _largest(
    _: Cut, net: NetSection, forces: SectionForces, raised: Raised, ratio: Number,
    criterion: Criterion,
) -> Number:  # fmt: skip
    normal, shear = _field(net, forces, raised)
    return np.max(criterion(normal, shear, ratio), axis=0)


def _worked(
    cut: Cut, net: NetSection, forces: SectionForces, raised: Raised, ratio: Number,
    criterion: Criterion,
) -> Number:  # fmt: skip
    """Give the same number by recorded steps at the governing point."""
    normal, shear = _field(net, forces, raised)
    at = int(np.argmax(criterion(normal, shear, float(ratio))))
    x, y = net.place[at]
    where = (
        f"{cut.name}: point {x * 1000:.1f} mm from the middle and {y * 1000:.2f} mm from the mid-plane, "
        f"net section of {net.elements} elements (sectionproperties)"
    )
    sigma = _sum(where, "normal stress", "sigma", _PARTS, forces, raised, net, at, None)
    both = [_sum(where, f"shear stress, direction {k + 1}", f"tau_{k + 1}", _SHEARS, forces, raised, net, at, k)
            for k in (0, 1)]  # fmt: skip
    tau = stress.shear_resultant(both[0], both[1])
    return criterion(sigma, tau, ratio)


def _sum(
    where: str, title: str, letter: str, parts: tuple[tuple[str, ...], ...], forces: SectionForces,
    raised: Raised, net: NetSection, at: int, component: int | None,
) -> Number:  # fmt: skip
    """Record one stress as a sum of size of load times unit stress."""
    symbols: list[Symbol] = []
    values: dict[str, Any] = {}
    terms: list[str] = []
    total = 0.0
    for load, unit, big, big_unit, small, small_unit, words in parts:
        table = getattr(net, unit)
        per_unit = float(table[at] if component is None else table[at, component])
        size = getattr(forces, load)
        if per_unit == 0 or size == 0:
            continue
        symbols += [Symbol(load, big, big_unit), Symbol(f"{unit} per unit", small, small_unit)]
        solved = Value(
            per_unit, "unit stress", "derived", f"sectionproperties, {net.elements} elements"
        )
        values |= {load: size, f"{unit} per unit": solved}
        term, part = f"abs({big}) * {small}", abs(size) * per_unit
        if load in raised:
            symbols.append(Symbol(f"factor on {words}", f"K_{big}", "-"))
            values[f"factor on {words}"] = raised[load]
            term, part = f"K_{big} * {term}", float(raised[load]) * part
        terms.append(term)
        total += part
    equation = f"{letter} = {' + '.join(terms) or '0'}"
    sheet = DataSheet(f"{title.capitalize()} at {where}", equation, tuple(symbols),
                      Symbol("", letter, "Pa"), "unit stresses by the section solver sectionproperties")  # fmt: skip
    return note(sheet, values, total)
