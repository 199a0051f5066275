"""Mounts made up for the solid check: chosen before either model had seen them. All invented."""

from __future__ import annotations

import numpy as np

from mountlimit.plates import (
    Contact,
    Facet,
    FrameBolt,
    Hole,
    MotorBolt,
    PlateModel,
    SectionLine,
)

MILLI = 1e-3
NORMAL, TANGENTIAL = 4.0e8, 2.0e8  # N/m a bolt; common practice, no source
BEARING = 2.0e12  # N/m3, frame against plate; common practice, no source


def _mm(*values: object) -> np.ndarray:
    return np.array(values, float) * MILLI


def _box(left: float, right: float, low: float, high: float) -> np.ndarray:
    return _mm((left, low), (right, low), (right, high), (left, high))


def _motor(facet: int, x: float, y: float, circle: float, washer: float) -> list[MotorBolt]:
    reach = circle / np.sqrt(8.0)
    return [
        MotorBolt(
            facet=facet,
            centre=_mm(x + i * reach, y + j * reach),
            hole_diameter=7 * MILLI,
            washer_diameter=washer * MILLI,
        )
        for i, j in ((1, 1), (-1, 1), (-1, -1), (1, -1))
    ]


def _frame(facet: int, places: list[tuple[float, float]], washer: float, side: int) -> list:
    return [
        FrameBolt(
            facet=facet,
            centre=_mm(*place),
            hole_diameter=9 * MILLI,
            washer_diameter=washer * MILLI,
            normal_stiffness=NORMAL,
            tangential_stiffness=TANGENTIAL,
            frame_side=side,
        )
        for place in places
    ]


def _facet(
    name: str, outline: np.ndarray, e2: tuple[float, ...], t: float, material: tuple[float, float],
    bore: tuple[float, float, float] | None = None,
) -> Facet:  # fmt: skip
    return Facet(
        name=name,
        outline=outline,
        origin=(0.0, 0.0, 0.0),
        e1=(1.0, 0.0, 0.0),
        e2=e2,
        thickness=t * MILLI,
        elastic_modulus=material[0],
        poissons_ratio=material[1],
        holes=[Hole(centre=_mm(*bore[:2]), diameter=bore[2] * MILLI)] if bore else (),
    )


def strap() -> PlateModel:
    """Aluminium, 8 mm, 90 mm wide, across two rails: two bolts on each, contact on both."""
    y = (0.0, 1.0, 0.0)
    return PlateModel(
        facets=[_facet("strap", _box(-45, 45, -112, 112), y, 8, (70e9, 0.33), (0, 8, 38))],
        frame_bolts=_frame(0, [(-28, -95), (28, -95), (28, 95), (-28, 95)], 16, -1),
        motor_bolts=_motor(0, 0, 8, 66, 12),
        motor_centre=_mm(0, 8, 0),
        contacts=[
            Contact(facet=0, side=-1, stiffness=BEARING, region=_box(-45, 45, low, low + 34))
            for low in (-112, 78)
        ],
        section_lines=[
            SectionLine(facet=0, start=_mm(-44, at), end=_mm(44, at)) for at in (-58, 62)
        ],
    )


def angle() -> PlateModel:
    """Steel, 6 mm, unequal legs, square inner corner; the foot points to the sprocket."""
    y, z, steel = (0.0, 1.0, 0.0), (0.0, 0.0, 1.0), (210e9, 0.3)
    return PlateModel(
        facets=[
            _facet("face", _box(-50, 50, 0, 125), y, 6, steel, (0, 78, 36)),
            _facet("foot", _box(-50, 50, 0, 68), z, 6, steel),
        ],
        frame_bolts=_frame(1, [(-33, 22), (33, 22), (-33, 50), (33, 50)], 16, 1),
        motor_bolts=_motor(0, 0, 78, 62, 12),
        motor_centre=_mm(0, 78, 0),
        contacts=[Contact(facet=1, side=1, stiffness=BEARING)],
        section_lines=[
            SectionLine(facet=0, start=_mm(-49, 32), end=_mm(49, 32)),
            SectionLine(facet=1, start=_mm(-49, 36), end=_mm(49, 36)),
        ],
    )


def block() -> PlateModel:
    """Acetal (POM), 20 mm, bolts at the corners, contact along both sides."""
    y = (0.0, 1.0, 0.0)
    return PlateModel(
        facets=[_facet("block", _box(-85, 85, -80, 80), y, 20, (2.8e9, 0.38), (4, 6, 44))],
        frame_bolts=_frame(0, [(-68, -62), (68, -62), (68, 62), (-68, 62)], 24, -1),
        motor_bolts=_motor(0, 4, 6, 72, 14),
        motor_centre=_mm(4, 6, 0),
        contacts=[
            Contact(facet=0, side=-1, stiffness=BEARING, region=_box(left, left + 34, -80, 80))
            for left in (-85, 51)
        ],
        section_lines=[
            SectionLine(facet=0, start=_mm(at, -79), end=_mm(at, 79)) for at in (-46, 46)
        ],
    )


MOUNTS = {"strap": strap, "angle": angle, "block": block}
LOADS = {  # force at the sprocket [N]
    "strap": {"along": (0.0, 3000.0, 0.0), "across": (3000.0, 0.0, 0.0)},
    "angle": {"opening": (0.0, 1500.0, 0.0), "across": (1500.0, 0.0, 0.0)},
    "block": {"along": (0.0, 600.0, 0.0), "across": (600.0, 0.0, 0.0)},
}
OVERHANG = np.array([0.0, 0.0, 0.060])  # m, motor centre to sprocket


def sprocket(model: PlateModel) -> np.ndarray:
    """Give the point the chain pulls at."""
    return np.asarray(model.motor_centre, float) + OVERHANG
