"""How much of a plate model's contact bears: past the heel of an angle, on the face of the frame member.

Where both ends are known the contact's region ends there.  Where they hang on an uncertain input it is
cut into pieces: one that bears whatever the input, and strips that bear as far as a drive lets them
(`Family.at`), so that one mesh serves every value.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from itertools import pairwise, product

import numpy as np
import shapely
from shapely.geometry import Polygon

from .model import Drive, Frame, Range
from .mounting import BoltPlane
from .mounts import _heel
from .plates import Contact, PlateModel
from .resolve import rests

NARROWEST = 0.004  # m, of a strip
NOTHING = 1e-9  # of a contact's stiffness, where none must stand out of the mesh
FAR = 1e3  # m, past any mount
Reach = tuple[float, float]  # from where to where a facet bears, along its second axis, m


@dataclass(frozen=True, slots=True)
class Seat:
    """The bolt plane a contact belongs to, and where the middle of its bolts is along the facet's second axis, m.

    The places are those of the model, which stay where they are when the thickness is changed.
    """

    plane: BoltPlane
    middle: float

    def reach(self, drive: Drive, half: float | None, heel: float | None) -> Reach:
        """Give what bears for a face and a heel; an angle's foot is measured from the leg's mid-plane."""
        out = FAR if half is None else float(half)
        start = -FAR if heel is None else heel - float(drive.mount.thickness) / 2
        return max(start, self.middle - out), self.middle + out


def on_face(model: PlateModel, drive: Drive) -> PlateModel:
    """Cut the contacts of a model to what may bear, in pieces where that is uncertain."""
    whole: list[Contact] = []
    strips: list[Contact] = []
    for number, contact in enumerate(model.contacts):
        seat = _seat(model, drive, contact, number)
        if seat is None:
            whole.append(contact)
            continue
        first, *rest = _pieces(model, contact, number, _reaches(drive, seat))
        whole.append(first)
        strips += rest
    return replace(model, contacts=[*whole, *strips])


def bearing(model: PlateModel, drive: Drive) -> tuple[float, ...] | None:
    """Give the share of each contact that bears on a drive; None where that is all of them."""
    if not any(c.strip for c in model.contacts):
        return None
    heel, shares = _heel_of(drive), []
    for place, contact in enumerate(model.contacts):
        seat = _seat(model, drive, contact, contact.number(place)) if contact.strip else None
        if seat is None:
            shares.append(1.0)
            continue
        start, end = seat.reach(drive, seat.plane.face_half, heel)
        along = np.asarray(contact.region, float)[:, 1]
        low, high = along.min(), along.max()
        bears = min(high, end) - max(low, start)
        shares.append(round(float(min(max(bears / (high - low), 0.0), 1.0)), 12))
    return tuple(shares)


def as_bearing(model: PlateModel, drive: Drive) -> PlateModel:
    """Give a model whose contacts that do not bear on a drive press with next to nothing."""
    shares = bearing(model, drive)
    if shares is None:
        return model
    pairs = zip(model.contacts, shares, strict=True)
    softened = [replace(c, stiffness=c.stiffness * max(share, NOTHING)) for c, share in pairs]
    return replace(model, contacts=softened)


def _heel_of(drive: Drive) -> float | None:
    return None if drive.mount.heel is None else float(drive.mount.heel)


def _seat(model: PlateModel, drive: Drive, contact: Contact, number: int) -> Seat | None:
    """Give where a contact sits; None where nothing ends it before the plate does, or it is no one plane's."""
    found, first = [], 0
    for plane in drive.mount.planes:
        if plane.bolts and number in plane.contacts:
            found.append((plane, first))
        first += len(plane.bolts)
    if len(found) != 1:
        return None
    plane, first = found[0]
    if plane.face_half is None and drive.mount.heel is None:
        return None
    way = model.facets[contact.facet].axes[1]["xyz".index(plane.second)]
    middle = float(model.frame_bolts[first].centre[1]) - way * float(plane.bolts[0][1])
    return Seat(plane, middle)


def _reaches(drive: Drive, seat: Seat) -> list[Reach]:
    """Give the reaches at the values of the uncertain inputs they hang on."""
    ranges = {r.key: r for r in drive.ranges}
    halves = [rests.half(seat.plane, frame, drive.fixings) for frame in _frames(drive, ranges)]
    heels = [_heel_of(drive)]
    if _heel.KEY in ranges:
        r = ranges[_heel.KEY]
        heels = [r.low, (r.low + r.likely) / 2, r.likely, (r.likely + r.high) / 2, r.high]
    return [seat.reach(drive, half, heel) for half, heel in product(halves, heels)]


def _frames(drive: Drive, ranges: dict[str, Range]) -> list[Frame]:
    """Give the frame as it is, and with its face at both ends where that is not told."""
    if rests.KEY not in ranges:
        return [drive.frame]
    own = ranges[rests.KEY]
    return [replace(drive.frame, face_width=width) for width in (own.low, own.likely, own.high)]


def _pieces(
    model: PlateModel, contact: Contact, number: int, reaches: list[Reach]
) -> list[Contact]:  # fmt: skip
    """Give what of a contact bears for certain, then its strips."""
    facet = model.facets[contact.facet]
    region = Polygon(np.asarray(facet.outline if contact.region is None else contact.region, float))
    low, high = region.bounds[1], region.bounds[3]
    if all(start <= low and end >= high for start, end in reaches):
        return [contact]
    lows = _apart((min(max(start, low), high) for start, _ in reaches), -1)
    highs = _apart((max(min(end, high), low) for _, end in reaches), 1)
    certain = [
        replace(contact, region=part, part_of=number) for part in _parts(region, lows[0], highs[0])
    ]
    strips = [
        replace(contact, region=part, part_of=number, strip=True)
        for a, b in (*pairwise(lows), *pairwise(highs))
        for part in _parts(region, min(a, b), max(a, b))
    ]
    return [*certain, *strips] or [contact]


def _apart(ends: Iterable[float], way: int) -> list[float]:
    """Give the ends from the innermost out, those nearer than a strip's least width left out."""
    found: list[float] = []
    for end in sorted(set(ends), key=lambda e: way * e):
        if not found or abs(end - found[-1]) >= NARROWEST:
            found.append(end)
    return found


def _parts(region: Polygon, low: float, high: float) -> list[list[tuple[float, float]]]:
    """Give the corners of what of a region lies between two heights."""
    left, _, right, _ = region.bounds
    cut = shapely.intersection(region, shapely.box(left - 1.0, low, right + 1.0, high))
    return [
        list(part.exterior.coords)[:-1]
        for part in shapely.get_parts(cut)
        if isinstance(part, Polygon) and part.area > 0.0
    ]
