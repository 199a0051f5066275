"""An upright plate on a lying one, joined by a seam along x; the motor sits on the upright one."""

from __future__ import annotations

from typing import Any

import numpy as np
from plate_kit import rectangle

from mountlimit.plates import Facet, FrameBolt, MotorBolt, PlateModel, Seam

THICK = 0.018
LENGTH = 0.16
AXIAL = 2.0e6
LATERAL = 1.0e6
BED = 5.0e11  # N/m3; common practice, no source
PLACES = (0.02, 0.06, 0.10, 0.14)
TOP = 0.12  # of the motor's centre over the base's mid-plane


def upright(low: float = 0.5 * THICK, **changes: Any) -> Facet:
    """Give the upright plate from a height over the base's mid-plane; its normal is -y."""
    parts: dict[str, Any] = {
        "name": "upright",
        "outline": rectangle(LENGTH, 0.17 - low) + np.array([-0.5 * LENGTH, low]),
        "origin": (0.0, 0.0, 0.0),
        "e1": (1.0, 0.0, 0.0),
        "e2": (0.0, 0.0, 1.0),
        "thickness": THICK,
        "elastic_modulus": 1.0e10,
        "poissons_ratio": 0.3,
    }
    return Facet(**{**parts, **changes})


def base(**changes: Any) -> Facet:
    """Give the lying plate; its normal is z."""
    parts: dict[str, Any] = {
        "name": "base",
        "outline": rectangle(0.2, 0.16) - np.array([0.1, 0.08]),
        "origin": (0.0, 0.0, 0.0),
        "e1": (1.0, 0.0, 0.0),
        "e2": (0.0, 1.0, 0.0),
        "thickness": THICK,
        "elastic_modulus": 1.0e10,
        "poissons_ratio": 0.3,
    }
    return Facet(**{**parts, **changes})


def seam(low: float = 0.5 * THICK, **changes: Any) -> Seam:
    """Give the seam of four fasteners along the upright plate's lower edge."""
    parts: dict[str, Any] = {
        "facets": (0, 1),
        "start": (-0.5 * LENGTH, low),
        "end": (0.5 * LENGTH, low),
        "places": PLACES,
        "axial_stiffness": AXIAL,
        "lateral_stiffness": LATERAL,
        "washer_diameter": 0.012,
        "contact_stiffness": BED,
    }
    return Seam(**{**parts, **changes})


def frame_bolts(**changes: Any) -> list[FrameBolt]:
    """Give four bolts of the base to the frame."""
    parts: dict[str, Any] = {
        "facet": 1, "hole_diameter": 0.008, "washer_diameter": 0.02,
        "normal_stiffness": 4e8, "tangential_stiffness": 2e8,
    }  # fmt: skip
    return [
        FrameBolt(centre=(x, y), **{**parts, **changes})
        for x in (-0.08, 0.08)
        for y in (-0.06, 0.06)
    ]


def motor_bolts() -> list[MotorBolt]:
    """Give four bolts of the upright plate to the motor."""
    return [
        MotorBolt(facet=0, centre=(x, z), hole_diameter=0.006, washer_diameter=0.014)
        for x in (-0.03, 0.03)
        for z in (TOP - 0.03, TOP + 0.03)
    ]


def seam_model(stiff: float = 1.0, low: float = 0.5 * THICK, **changes: Any) -> PlateModel:
    """Give the whole mount; ``stiff`` multiplies the plates' modulus."""
    modulus = 1.0e10 * stiff
    parts: dict[str, Any] = {
        "facets": [upright(low, elastic_modulus=modulus), base(elastic_modulus=modulus)],
        "motor_bolts": motor_bolts(),
        "motor_centre": (0.0, 0.0, TOP),
        "frame_bolts": frame_bolts(),
        "seams": [seam(low)],
    }
    return PlateModel(**{**parts, **changes})
