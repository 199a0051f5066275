"""Plates: flat facets of six-node triangles, their bolts, contact and stress (SI floats throughout).

``solve(model)`` meshes and solves a ``PlateModel`` once; its ``response(wrench, point)`` answers any
load on the motor. ``sweep`` does so for many thicknesses.
"""

from .error import PlateError
from .model import (
    Bend,
    Contact,
    Facet,
    FrameBolt,
    Hole,
    LineWeld,
    MotorBolt,
    PlateModel,
    Seam,
    SectionLine,
    Slot,
    Spacer,
    Strut,
)
from .solution import PlateResponse, PlateSolution, solve
from .stress import StressSamples, equivalent
from .thickness import SweepResponse, sweep

__all__ = [
    "Bend",
    "Contact",
    "Facet",
    "FrameBolt",
    "Hole",
    "LineWeld",
    "MotorBolt",
    "PlateError",
    "PlateModel",
    "PlateResponse",
    "PlateSolution",
    "Seam",
    "SectionLine",
    "Slot",
    "Spacer",
    "StressSamples",
    "Strut",
    "SweepResponse",
    "equivalent",
    "solve",
    "sweep",
]
